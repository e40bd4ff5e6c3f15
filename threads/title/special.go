package title

import (
	"handtight/pressure/quantity"
	"handtight/threads"
)

// special reads threads that are called by letters of their own: PG16 of cable
// glands, W21.8x1/14 of gas bottles, Rd 44x1/6 of dairy unions, S60x6 of tank valves.
// 0 if none begins at i.
func (sc *scanner) special(i int, glued bool) int {
	if alnum(byteAt(sc.norm, i-1)) {
		return 0
	}
	for k := range specials {
		s := &specials[k]
		if s.letters[0] != sc.norm[i] {
			continue
		}
		if end, v := sc.lettered(i, s.letters, s.x); end > 0 && s.has(v) {
			return sc.addFigure(i, end, glued, &figure{kind: specialSize, v: v, special: s.name})
		}
	}
	return 0
}

// specials are the letters, whether an x must follow the figure, the name of an end
// that is not judged ("" for a family of the tables), and the figures that it comes in.
var specials = []struct {
	letters string
	x       bool
	name    string
	has     func(float64) bool
}{
	{"pg", false, "", func(v float64) bool { _, ok := threads.Find(threads.PG, "PG"+quantity.Exact(v)); return ok }},
	{"w", true, "gas bottle thread", func(v float64) bool { return v >= 15 && v <= 35 }},
	{"rd", true, "round thread of a dairy union", func(v float64) bool { return v >= 28 && v <= 160 }},
	{"s", true, "coarse thread of a tank valve", func(v float64) bool { return v >= 50 && v <= 100 }},
}

// lettered reads letters, a number and, where x is set, an x with another figure
// behind it.
func (sc *scanner) lettered(i int, letters string, x bool) (end int, v float64) {
	for k := range len(letters) {
		if byteAt(sc.norm, i+k) != letters[k] {
			return 0, 0
		}
	}
	at := i + len(letters)
	if c := byteAt(sc.norm, at); c == ' ' || c == '-' {
		at++
	}
	if !digit(byteAt(sc.norm, at)) {
		return 0, 0
	}
	f := &figure{}
	end = sc.value(at, f)
	if f.frac || f.kind != bare {
		return 0, 0
	}
	if x {
		from := sc.blanks(end)
		if byteAt(sc.norm, from) != 'x' && byteAt(sc.norm, from) != '-' || !digit(byteAt(sc.norm, sc.blanks(from+1))) {
			return 0, 0
		}
		end = sc.value(sc.blanks(from+1), &figure{})
	} else if alnum(byteAt(sc.norm, end)) {
		return 0, 0
	}
	return end, f.v
}
