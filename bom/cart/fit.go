package cart

import (
	"math"
	"strconv"
	"strings"

	"handtight/catalog"
	"handtight/threads"
)

// fit says how a line's ends stand to those of an item. The zero value is: the line
// says no end, or the item has none.
type fit uint8

const (
	fitUnsaid fit = iota
	fitSame
	fitOpen // the words leave it open, and what is planned is among the readings
	fitSome // some are the same, and the others are not said
	fitNear // the sizes are the same, and a thread or a sex is not
	fitOther
)

// How far a tail and a hose may be apart and still be sold as one size, in
// millimetres: that of a barb in a bore (design: 0.6 mm, judgement).
const tubeSlack = 0.6

// compareEnds finds the best way to lay a line's ends on an item's.
func (m *match) compareEnds(l, n *facts) {
	switch {
	case len(n.ends) == 0:
		return
	case len(l.ends) == 0:
		m.add(byEndsUnsaid)
		return
	case len(l.ends) > mostEnds || len(n.ends) > mostEnds:
		m.fit = fitOther
		m.differs.add(inEnds)
		m.add(byEndsDiffer)
		return
	}
	best := laying{score: -1}
	layAll(l.ends, n.ends, 0, 0, &laying{}, &best)
	m.laid = best.on
	m.fit = fitOf(l.ends, n.ends, &best.on)
	if m.fit == fitSome && (allAlike(n.ends) || isA(n.kind, catalog.SkinFitting)) && toOne(l.ends, n.ends) {
		m.fit = fitSame
	}
	m.others = othersOf(l.ends, n.ends, &best.on)
	m.sorts = m.others == 1 && !oneSort(l.ends, n.ends, &best.on)
	if m.fit >= fitNear {
		m.differs.add(inEnds)
	}
	switch {
	case m.fit == fitOther && m.others == 1 && len(n.ends) > 1 && len(l.ends) == len(n.ends):
		m.add(byEndsNear)
	case m.fit == fitSame && len(n.ends) == 1:
		m.add(byEnd)
	case m.fit == fitSame:
		m.add(byEnds)
	case m.fit == fitOpen && len(n.ends) == 1:
		m.add(byEndOpen)
	case m.fit == fitOpen:
		m.add(byEndsOpen)
	case m.fit == fitSome:
		m.add(byEndsSome)
	case m.fit == fitNear && len(n.ends) == 1:
		m.add(byEndNear)
	case m.fit == fitNear:
		m.add(byEndsNear)
	default:
		m.add(byEndsDiffer)
	}
}

// mostEnds is the most ends of a part that are laid on each other: a manifold has six.
const mostEnds = 6

// laying is one way to lay ends on ends: for each of the item's ends which of the
// line's it gets, counted from 1; 0 for none.
type laying struct {
	on    [mostEnds]uint8
	score int
}

// layAll tries every way; parts have four ends at most, so they are few.
func layAll(line, item []ending, at int, used uint, now, best *laying) {
	if at == len(item) {
		if now.score > best.score {
			*best = *now
		}
		return
	}
	for k := range line {
		if used&(1<<k) != 0 {
			continue
		}
		worth := endWorth[fitEnd(&line[k], &item[at])]
		now.on[at], now.score = uint8(k+1), now.score+worth
		layAll(line, item, at+1, used|1<<k, now, best)
		now.score -= worth
	}
	if now.on[at] = 0; len(line) < len(item) {
		layAll(line, item, at+1, used, now, best)
	}
}

// endWorth ranks how two ends fit, so that the best way to lay all of them is found.
var endWorth = [...]int{fitSame: 9, fitOpen: 6, fitNear: 3, fitOther: 0}

// fitOf is the worst of all ends; some may be missing.
func fitOf(line, item []ending, on *[mostEnds]uint8) fit {
	out, missing := fitSame, false
	for i := range item {
		if on[i] == 0 {
			missing = true
			continue
		}
		out = max(out, fitEnd(&line[on[i]-1], &item[i]))
	}
	switch {
	case !missing && len(line) <= len(item):
		return out
	case out < fitNear:
		return fitSome // the line says less, or speaks of the hull or the hose too
	}
	return fitOther
}

// allAlike reports whether the ends of a part are one end several times over: said once, it
// is said of all.
func allAlike(ends []ending) bool {
	for i := range ends[1:] {
		a, b := ends[0].readings, ends[i+1].readings
		if len(a) != 1 || len(b) != 1 || a[0].Family != b[0].Family || a[0].Sex != b[0].Sex || ends[0].keys[0] != ends[i+1].keys[0] {
			return false
		}
	}
	return true
}

// toOne reports whether one end at least of a line is an item's and wholly said.
func toOne(line, item []ending) bool {
	for i := range line {
		for k := range item {
			if fitEnd(&line[i], &item[k]) == fitSame {
				return true
			}
		}
	}
	return false
}

// othersOf counts the ends that are of another size or sort.
func othersOf(line, item []ending, on *[mostEnds]uint8) int {
	n := 0
	for i := range item {
		if on[i] == 0 || fitEnd(&line[on[i]-1], &item[i]) == fitOther {
			n++
		}
	}
	return n
}

// oneSort reports whether the end that is of another size is of the planned sort: a tail for
// another hose, a cone of the next dash.
func oneSort(line, item []ending, on *[mostEnds]uint8) bool {
	for i := range item {
		if on[i] == 0 {
			return false
		}
		a, b := line[on[i]-1].readings, item[i].readings
		if fitEnd(&line[on[i]-1], &item[i]) == fitOther {
			return len(a) == 1 && len(b) > 0 && a[0].Family == b[0].Family && (a[0].Sex == b[0].Sex || !a[0].Family.Threaded())
		}
	}
	return false
}

// fitEnd compares the readings of two ends.
func fitEnd(line, item *ending) fit {
	best := fitOther
	for i := range line.readings {
		for k := range item.readings {
			f := fitOne(&line.readings[i], &item.readings[k], line.keys[i] == item.keys[k])
			sexless := item.readings[k].Sex == threads.NoSex // a washer
			if f == fitSame && (len(line.readings) > 1 || line.open && !sexless) {
				f = fitOpen
			}
			best = better(best, f)
		}
	}
	return best
}

func better(a, b fit) fit {
	if b < a {
		return b
	}
	return a
}

// fitOne compares two ends: family, size, hand and sex. Seal and plastic are seldom said, and
// a swivel is no other thread.
func fitOne(a, b *threads.End, sameKey bool) fit {
	if !sameSize(a, b, sameKey) {
		return fitOther
	}
	if a.Family != b.Family {
		if likeFamilies(a.Family, b.Family) {
			return fitNear
		}
		return fitOther
	}
	switch {
	case a.Left != b.Left:
		return fitNear
	case !a.Family.Threaded() || a.Sex == b.Sex:
		return fitSame
	case a.Sex == threads.NoSex || b.Sex == threads.NoSex:
		return fitOpen
	}
	return fitNear
}

// likeFamilies reports whether two families are taken for one another: two threads, or
// two ends without one.
func likeFamilies(a, b threads.Family) bool { return a.Threaded() == b.Threaded() }

// sexOf is the sex of a thread: what a tail or a push-in end has of one is said of some and of others
// not.
func sexOf(e *threads.End) threads.Sex {
	if e.Family.Threaded() {
		return e.Sex
	}
	return threads.NoSex
}

// sameSize compares sizes as shops call them: 1/2 is 1/2 whatever the thread; a thread
// sized by dash or in millimetres by its diameter.
func sameSize(a, b *threads.End, sameKey bool) bool {
	if a.Family.Threaded() != b.Family.Threaded() {
		return false
	}
	if !a.Family.Threaded() {
		slack := tubeSlack
		if a.Family == threads.Push || a.Family == threads.Compression {
			slack = outerSlack
		}
		return math.Abs(float64(a.Diameter-b.Diameter)) <= slack && a.Diameter > 0 || a.Size == b.Size
	}
	return sameKey
}

// sizeKey is the size in a form that alike sizes share.
func sizeKey(e *threads.End) string {
	switch {
	case !e.Family.Threaded() && e.Diameter > 0:
		return tubeKey(float64(e.Diameter))
	case !e.Family.Threaded():
		return "tube " + e.Size
	case e.Form == nil:
		return "thread " + e.Size
	case strings.ContainsAny(e.Size, "-M"):
		return "diameter " + strconv.Itoa(int(math.Round(float64(e.Form.Major))))
	}
	return "inch " + e.Size
}

func tubeKey(mm float64) string { return "tube " + strconv.Itoa(int(math.Round(mm))) }
