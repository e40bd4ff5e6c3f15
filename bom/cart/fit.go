package cart

import (
	"math"
	"strconv"
	"strings"

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

// compareEnds finds the best way to lay a line's ends on an item's, and notes for each
// of the item's ends which of the line's it got; -1 for none.
func (m *match) compareEnds(l, n *facts) {
	m.ends = make([]int, len(n.ends))
	for i := range m.ends {
		m.ends[i] = -1
	}
	switch {
	case len(n.ends) == 0:
		return
	case len(l.ends) == 0:
		m.add("ends-unsaid")
		return
	case len(l.ends) > mostEnds || len(n.ends) > mostEnds:
		m.fit = fitOther
		m.add("ends-differ")
		return
	}
	best := laying{}
	best.score = -1
	trial := laying{on: make([]int, len(n.ends))}
	layAll(l.ends, n.ends, 0, 0, &trial, &best)
	m.ends = best.on
	m.fit = fitOf(l.ends, n.ends, best.on)
	switch {
	case m.fit == fitSame && len(n.ends) == 1:
		m.add("end")
	case m.fit == fitSame:
		m.add("ends")
	case m.fit == fitOpen && len(n.ends) == 1:
		m.give("ends-open", evidence()["ends-open"].Points*2/3)
	case m.fit == fitOpen:
		m.add("ends-open")
	case m.fit == fitSome:
		m.add("ends-some")
	case m.fit == fitNear && len(n.ends) == 1:
		m.give("ends-near", evidence()["ends-near"].Points*2/3)
	case m.fit == fitNear:
		m.add("ends-near")
	default:
		m.add("ends-differ")
	}
}

// mostEnds is the most ends of a part that are laid on each other: a manifold has six.
const mostEnds = 6

// laying is one way to lay ends on ends.
type laying struct {
	on    []int
	score int
}

// layAll tries every way; parts have four ends at most, so they are few.
func layAll(line, item []ending, at int, used uint, now, best *laying) {
	if at == len(item) {
		if now.score > best.score {
			best.score, best.on = now.score, append([]int(nil), now.on...)
		}
		return
	}
	for k := range line {
		if used&(1<<k) != 0 {
			continue
		}
		worth := [...]int{fitSame: 9, fitOpen: 6, fitNear: 3, fitOther: 0}[fitEnd(line[k], item[at])]
		now.on[at], now.score = k, now.score+worth
		layAll(line, item, at+1, used|1<<k, now, best)
		now.score -= worth
	}
	if len(line) < len(item) {
		now.on[at] = -1
		layAll(line, item, at+1, used, now, best)
	}
}

// fitOf is the worst of all ends; some may be missing.
func fitOf(line, item []ending, on []int) fit {
	out, missing := fitSame, false
	for i, k := range on {
		if k < 0 {
			missing = true
			continue
		}
		out = max(out, fitEnd(line[k], item[i]))
	}
	switch {
	case !missing && len(line) <= len(item):
		return out
	case out < fitNear:
		return fitSome // the line says less, or speaks of the hull or the hose too
	}
	return fitOther
}

// fitEnd compares the readings of two ends.
func fitEnd(line, item ending) fit {
	best := fitOther
	for i := range line.readings {
		for k := range item.readings {
			f := fitOne(&line.readings[i], &item.readings[k])
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

// fitOne compares two ends: family, size and sex. Seal and plastic are seldom said, and
// a swivel is no other thread.
func fitOne(a, b *threads.End) fit {
	if !sameSize(a, b) {
		return fitOther
	}
	if a.Family != b.Family {
		if likeFamilies(a.Family, b.Family) {
			return fitNear
		}
		return fitOther
	}
	switch {
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

// sameSize compares sizes as shops call them: 1/2 is 1/2 whatever the thread; a thread
// sized by dash or in millimetres by its diameter.
func sameSize(a, b *threads.End) bool {
	if a.Family.Threaded() != b.Family.Threaded() {
		return false
	}
	if !a.Family.Threaded() {
		return math.Abs(float64(a.Diameter-b.Diameter)) <= tubeSlack && a.Diameter > 0 || a.Size == b.Size
	}
	return sizeKey(a) == sizeKey(b)
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
