package cart

import (
	"fmt"
	"slices"
	"strings"

	"handtight/catalog"
)

// A line that is a part of a kind that the build buys, and that differs from all of them, is told
// what it differs in from the one that it is most like: people buy it for that one. A fitting has
// to have an end of it: of those every boat has others.

// akin gives the need of the line's own kind that it differs from in least; nil for none.
func (j *judge) akin(l *Line) *match {
	f := &l.facts
	if f.traits.otherTrade() || isA(f.kind, catalog.Hose) && f.spec == "" && f.length == 0 {
		return nil
	}
	var pool []*need
	for _, n := range j.match.needs {
		kind := n.facts.kind
		if f.kind == kind && kind != "" || len(f.ends) > 1 && (f.kind == "" || onShelf(f.kind)) && onShelf(kind) {
			pool = append(pool, n)
		}
	}
	names := namesOf(l)
	var best *match
	for _, n := range pool {
		m := compareWith(l, n, &names)
		if j.spoiled(l, &m) != nil {
			m.differs.add(inEnds)
		}
		if m.differs == 0 || m.differs.has(inKind) || m.differs.has(inUse) && isA(f.kind, catalog.Oil|catalog.SealKit|catalog.Tape) || m.faults() > 2 || !m.comparable(f) || !m.beyondKind() {
			continue
		}
		if best == nil || j.closer(&m, best) {
			best = &m
		}
	}
	return best
}

// beyondKind reports whether more than the name of the kind speaks for a match: two filters with
// nothing else in common are two things, and an engine has filters, gauges and hoses too.
func (m *match) beyondKind() bool {
	if !isA(m.need.facts.kind, catalog.Filter|catalog.Gauge|catalog.Hose|catalog.HoseStock) {
		return true
	}
	for _, s := range []sort{byEnds, byEnd, byEndsOpen, byEndOpen, byEndsSome, byEndsNear, byEndNear, byEndsUnsaid, byMaterial, byFigure, byBoreNear, bySpec, byLength, byTrait, byOnly, byGrips} {
		if m.has(s) {
			return true
		}
	}
	return len(m.need.facts.ends) == 0
}

// closer ranks by faults, then by what is still short, by ends of the same sort, by evidence and by how far figures are off.
func (j *judge) closer(a, b *match) bool {
	if x, y := a.faults(), b.faults(); x != y {
		return x < y
	}
	if x, y := j.lacks(a.need), j.lacks(b.need); x != y {
		return x
	}
	if a.sorts != b.sorts {
		return b.sorts
	}
	if a.points != b.points {
		return a.points > b.points
	}
	return a.apart < b.apart
}

// comparable reports whether a line may be told what it differs in: a fitting by an end that is
// the same, a washer by its sort or its size, a ring by what it is for, all else by what it says.
func (m *match) comparable(l *facts) bool {
	n := &m.need.facts
	switch {
	case isRing(n.kind):
		return len(l.ends) == 1
	case isA(n.kind, catalog.Washer):
		return len(l.ends) == 1 && (m.has(byTrait) || m.fit == fitSame)
	case !onShelf(n.kind):
		return true
	}
	if len(n.ends) == 1 && len(l.ends) == 1 {
		return fitEnd(&l.ends[0], &n.ends[0]) == fitNear
	}
	if general(n.kind) || l.kind != n.kind {
		return toOne(l.ends, n.ends) && len(l.ends) == len(n.ends) && m.others <= 1 && !m.sorts && !m.has(byMaterialDiffers)
	}
	return toOne(l.ends, n.ends) || sameSorts(l.ends, n.ends)
}

// onShelf reports whether a kind is a fitting, of which shops have shelves and whose names they mix.
func onShelf(kind string) bool {
	return general(kind) || isA(kind, catalog.Commodity|catalog.Adapts|catalog.HoseTail|catalog.Plug)
}

// sameSorts reports whether a fitting has the item's sorts of end, in other sizes: a tee for another
// tube.
func sameSorts(line, item []ending) bool {
	sorts := func(list []ending) string {
		var out []string
		for _, e := range list {
			if len(e.readings) != 1 {
				return ""
			}
			r := &e.readings[0]
			out = append(out, fmt.Sprint(r.Family, " ", sexOf(r)))
		}
		slices.Sort(out)
		return strings.Join(out, "|")
	}
	mine := sorts(line)
	return len(line) > 1 && mine != "" && mine == sorts(item)
}

// otherTrade reports whether words say that a thing is for fuel, gas, heating or a garden: a boat
// has them too, elsewhere. Tube for air is bought for water (common practice), and is told so.
func (t traits) otherTrade() bool {
	for i, one := range traitWords().list {
		if one.group == "use" && one.name != "air" && t&(1<<i) != 0 {
			return true
		}
	}
	return false
}

// namedApart tells what a line of a kind that the build buys is other in. Where other lines cover the
// part it is said beside that.
func (j *judge) namedApart(v *Verdict) bool {
	m := j.akin(v.Line)
	if m == nil {
		return false
	}
	if j.lacks(m.need) || m.differs&perilous != 0 {
		j.take(v, []match{*m})
		return true
	}
	j.apart(v, m)
	return true
}

// apart says what a line is other in, of a part that others cover.
func (j *judge) apart(v *Verdict, m *match) {
	apart := Verdict{Line: v.Line}
	j.take(&apart, []match{*m})
	j.notNeeded(v, m)
	v.Reason = fmt.Sprintf("%s %s is covered already.", apart.Reason, m.need.Key)
}
