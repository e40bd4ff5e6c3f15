package cart

import (
	"cmp"
	"slices"
)

// The bounds of a match, in hundredths (judgement): of two that a line may be, the one ahead
// by lead is taken; below ask nothing is asked about; from nearSure on a line that is wrong
// in one thing is named with what it is like.
const (
	lead     = 10
	ask      = 40
	nearSure = 50
)

// match is a line held against one of the build's needs.
type match struct {
	need *need
	score
	differs aspectSet       // in what the line is wrong there
	asks    aspectSet       // what must be asked of it
	fit     fit             // of the ends
	others  int             // ends that are of another size or sort
	metals  bool            // the one material is a metal, and the other none
	apart   float64         // how far figures are off, as the logarithm of their ratio
	sorts   bool            // the one other end is of another sort, and not of another size
	laid    [mostEnds]uint8 // see laying
}

// end gives which of the line's ends lies on one of the item's; -1 for none.
func (m *match) end(at int) int {
	if at >= mostEnds {
		return -1
	}
	return int(m.laid[at]) - 1
}

// candidates holds a line against every need that it has something in common with, best
// first: those that differ in least, then by evidence; ties stay in the order of the build.
func (m *matcher) candidates(l *Line) []match {
	key := l.Code + "\x00" + l.Item + "\x00" + l.Text + "\x00" + l.added
	if got, ok := m.seen[key]; ok {
		return got
	}
	names := namesOf(l)
	var out []match
	exact := m.byEnds[exactly(l.facts.ends)]
	for _, n := range m.called(&names) {
		if c := compareWith(l, n, &names); !c.byChance(&names) {
			out = append(out, c)
		}
	}
	for _, n := range exact {
		out = m.weighIn(out, l, n, &names)
	}
	if !slices.ContainsFunc(out, func(c match) bool { return c.differs == 0 }) {
		for _, n := range m.pool(l) {
			if !slices.Contains(exact, n) {
				out = m.weighIn(out, l, n, &names)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b match) int {
		return cmp.Or(cmp.Compare(a.faults(), b.faults()), cmp.Compare(b.points, a.points), cmp.Compare(a.apart, b.apart), cmp.Compare(a.need.index, b.need.index))
	})
	out = out[:min(len(out), mostKept)]
	m.seen[key] = out
	return out
}

// byChance reports whether a short code is another shop's for another thing: FH-10 is a
// housing here, and a fuel hose there.
func (m *match) byChance(names *names) bool {
	return len(names.code) <= 4 && m.differs.has(inKind) && !m.has(byItem) && m.fit != fitSame && !m.has(byFigure) && !m.has(byMaterial)
}

// faults counts in how many things a line is wrong; another sort of material, metal for
// plastic, is two, since nobody takes one for the other. Beyond three it does not matter.
func (m *match) faults() int {
	n := m.differs.count()
	if m.differs.has(inMaterial) && m.metals {
		n++
	}
	return min(n, 3)
}

// weighIn adds what a line comes to against a need, if it has anything of it.
func (m *matcher) weighIn(out []match, l *Line, n *need, names *names) []match {
	if names.of(n) && slices.ContainsFunc(out, func(c match) bool { return c.need == n }) {
		return out // called by its name already
	}
	if one := compareWith(l, n, names); one.points > 0 && (!one.named() || !one.byChance(names)) {
		out = append(out, one)
	}
	return out
}

// mostKept is how many of the best matches are kept for a line.
const mostKept = 12

// called lists the needs that a line names by their id or an offer's code.
func (m *matcher) called(names *names) []*need {
	var out []*need
	if names.code != "" {
		out = append(out, m.byCode[names.code]...)
	}
	for _, id := range []string{names.item, names.code, names.text} {
		if n, ok := m.byID[id]; ok && id != "" {
			out = append(out, n)
		}
	}
	slices.SortStableFunc(out, func(a, b *need) int { return cmp.Compare(a.index, b.index) })
	return slices.Compact(out)
}

// pool lists the needs worth comparing: those of the line's kind, or of a size that few
// have, one end of which may be another.
func (m *matcher) pool(l *Line) []*need {
	var out []*need
	sizes := 0
	for _, k := range endKeys(l.facts.ends) {
		list := m.byEnd[k]
		if sizes++; len(list) > mostAlike {
			for _, n := range list {
				if mayFit(&l.facts, n) {
					out = append(out, n)
				}
			}
			continue
		}
		out = append(out, list...)
	}
	if kin := m.byKind[l.facts.kind]; sizes == 0 || len(kin) <= mostAlike {
		out = append(out, kin...)
	}
	slices.SortStableFunc(out, func(a, b *need) int { return cmp.Compare(a.index, b.index) })
	return slices.Compact(out)
}

// mostAlike is how many needs of one size, or of one kind, are looked at for a line that is
// wrong in one end; of more only those are, of which every size is right.
const mostAlike = 100

// names are what a line may name an item by, as codes compare.
type names struct{ code, item, text string }

func namesOf(l *Line) names { return names{codeKey(l.Code), codeKey(l.Item), codeKey(l.Text)} }

// of reports whether the names are the need's.
func (names *names) of(n *need) bool {
	return names.code != "" && slices.Contains(n.codes, names.code) || n.id != "" && (names.item == n.id || names.code == n.id || names.text == n.id)
}

// mayFit is a quick look before the weighing: every end of the line has a size that the
// need has too, or the line has ends to spare.
func mayFit(l *facts, n *need) bool {
	if len(n.facts.ends) == 0 || len(l.ends) > len(n.facts.ends) {
		return true
	}
	for i := range l.ends {
		if !slices.ContainsFunc(l.ends[i].keys, func(k string) bool { return slices.Contains(n.keys, k) }) {
			return false
		}
	}
	return true
}

// compare holds a line against a need.
func compare(l *Line, n *need) match {
	names := namesOf(l)
	return compareWith(l, n, &names)
}

func compareWith(l *Line, n *need, names *names) match {
	m := match{need: n}
	if names.code != "" && slices.Contains(n.codes, names.code) {
		m.add(byCode)
	}
	if n.id != "" && (names.item == n.id || names.code == n.id || names.text == n.id) {
		m.add(byItem)
	}
	m.kind(&l.facts, n)
	m.compareEnds(&l.facts, &n.facts)
	m.compareBeside(&l.facts, &n.facts)
	m.comparePorts(&l.facts, &n.facts)
	m.compareFigures(&l.facts, n)
	m.ownWords(&l.facts, n)
	return m
}

// ownWords compares the item's own words with the line's: a few shared ones say little
// where an item has many.
func (m *match) ownWords(l *facts, n *need) {
	own := len(n.facts.words)
	if own == 0 {
		return
	}
	common, least := sharedWords(n.facts.words, l.words), 3
	if n.Item == nil {
		least = 1 // its name says all of it: tape 12 mm
	}
	m.share(common, max(least, own))
	if common == own && own >= 3 {
		m.add(byAllWords)
	}
}
