package draft

import (
	"fmt"
	"slices"
	"sync"

	"handtight/bom/draft/assign"
	"handtight/catalog"
	"handtight/catalog/stock"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// endClass is a sort of end that the solver tells apart: its readings, or what is taken of an
// end that nobody said.
type endClass struct {
	readings []threads.End
	question bool
	boat     string // "led", "thread", "open": the boat's own; "" else
	device   bool   // of equipment, not of a fitting
	madeUp   bool   // of a hose with end fittings
}

// ends numbers the sorts of end.
type ends struct {
	list []endClass
	of   map[string]int
}

func newEnds() *ends { return &ends{of: map[string]int{}} }

// number gives the number of a sort of end.
func (x *ends) number(c endClass) int {
	key := fmt.Sprint(c.boat, c.device, c.madeUp, c.question)
	for _, e := range c.readings {
		key += "|" + e.String()
	}
	if n, ok := x.of[key]; ok {
		return n
	}
	x.of[key] = len(x.list)
	x.list = append(x.list, c)
	return len(x.list) - 1
}

// reading makes a sort of end of what was read.
func readingClass(r threads.EndReading, device bool) endClass {
	return endClass{readings: r.Candidates, question: r.Question != "" || len(r.Candidates) > 1, device: device}
}

// join judges two sorts of end at a pressure. Open ends take part with all their readings:
// where some of them join, the joint is asked about.
func join(a, b *endClass, p quantity.Pressure) assign.Joint {
	if a.boat != "" || b.boat != "" {
		return joinBoat(a, b)
	}
	if len(a.readings) == 0 || len(b.readings) == 0 {
		return assign.Asks
	}
	good, all, asks := false, true, a.question || b.question
	for _, x := range a.readings {
		for _, y := range b.readings {
			m := threads.Mate(x, y)
			switch {
			case m.Bears(p, false):
				good = true
				asks = asks || !m.Verdict.Holds() || m.Question() != ""
			default:
				all = false
			}
		}
	}
	switch {
	case !good:
		return assign.No
	case !all || asks:
		return assign.Asks
	}
	return assign.Joins
}

// joinBoat judges the boat's own end, which no list says: a hose is led to a tank, a thread is
// taken for the house's water. What else is put there is asked about.
func joinBoat(a, b *endClass) assign.Joint {
	boat, other := a, b
	if boat.boat == "" {
		boat, other = b, a
	}
	switch {
	case other.boat != "" || len(other.readings) == 0:
		return assign.Asks
	case other.device && boat.boat == "led" && other.readings[0].Family.Threaded():
		return assign.No // no thread of a device meets a tank's hose
	case other.device:
		return assign.Asks
	}
	e := other.readings[0]
	tube := e.Family == threads.Bore || e.IsTube()
	switch {
	case other.madeUp:
		return assign.No // a pressure hose is for the pressure side
	case boat.boat == "thread" && e.Sex != threads.Female, boat.boat != "thread" && !tube: // taps end in a male thread (common practice)
		return assign.Asks
	}
	return assign.Joins
}

// table judges every two sorts of end, and how many pieces could be bought between them.
func (x *ends) table(p quantity.Pressure, high bool) assign.Table {
	n := len(x.list)
	t := assign.Table{Joints: make([]assign.Joint, n*n), Buy: make([]uint8, n*n)}
	for a := range n {
		for b := range a + 1 {
			j := join(&x.list[a], &x.list[b], p)
			t.Joints[a*n+b], t.Joints[b*n+a] = j, j
		}
	}
	s := shelfFor(high)
	mates := make([][]int, n)
	for a := range n {
		mates[a] = s.mates(&x.list[a])
	}
	for a := range n {
		far := s.far(mates[a])
		for b := range a + 1 {
			best := uint8(0)
			for _, c := range mates[b] {
				if v := far[c]; v > 0 && (best == 0 || v < best) {
					best = v
				}
			}
			t.Buy[a*n+b], t.Buy[b*n+a] = best, best
		}
	}
	return t
}

// shelf is the sorts of end of what can be bought: generic fittings of materials that sea
// water leaves alone, and, at low pressure, hose.
type shelf struct {
	ends     []threads.End
	partners [][]int // the other ends of pieces with this one
	joins    [][]int // sorts that it joins with
	hoses    []int   // sorts of [hoseEnds], for high pressure
}

var shelves = [2]func() *shelf{sync.OnceValue(func() *shelf { return newShelf(false) }), sync.OnceValue(func() *shelf { return newShelf(true) })}

func shelfFor(high bool) *shelf { return shelves[boolToInt(high)]() }

// boughtBores are the bores in mm of hose, and boughtTubes the outsides of tube, that shops
// carry (common practice).
var (
	boughtBores = []float64{6, 8, 10, 13, 16, 19, 25, 32, 38, 50}
	boughtTubes = []float64{6, 8, 10, 12, 15}
)

func newShelf(high bool) *shelf {
	s := &shelf{}
	of := map[threads.End]int{}
	number := func(e threads.End) int {
		if n, ok := of[e]; ok {
			return n
		}
		of[e] = len(s.ends)
		s.ends, s.partners = append(s.ends, e), append(s.partners, nil)
		return len(s.ends) - 1
	}
	pair := func(a, b threads.End) {
		x, y := number(a), number(b)
		if !slices.Contains(s.partners[x], y) {
			s.partners[x] = append(s.partners[x], y)
		}
		if !slices.Contains(s.partners[y], x) {
			s.partners[y] = append(s.partners[y], x)
		}
	}
	for _, it := range stock.Items() {
		if len(it.Ends) == 2 && !catalog.IsKind(it.Kind, catalog.Elbow) && !(high && catalog.IsKind(it.Kind, catalog.HoseTail)) && standsSea(it.Material) {
			pair(it.Ends[0], it.Ends[1])
		}
	}
	if !high {
		for _, d := range boughtBores {
			e := boreOf(d)
			pair(e, e)
		}
		for _, d := range boughtTubes {
			e := tubeOf(d)
			pair(e, e)
		}
	}
	if high {
		for _, h := range hoseEnds() {
			s.hoses = append(s.hoses, number(h.end))
		}
	}
	s.joins = make([][]int, len(s.ends))
	for a := range s.ends {
		for b := range a + 1 {
			if m := threads.Mate(s.ends[a], s.ends[b]); m.Verdict.Holds() {
				s.joins[a] = append(s.joins[a], b)
				if a != b {
					s.joins[b] = append(s.joins[b], a)
				}
			}
		}
	}
	return s
}

func boreOf(mm float64) threads.End {
	d := quantity.Length(mm)
	return threads.End{Family: threads.Bore, Size: d.String(), Diameter: threads.Length(mm)}
}

func tubeOf(mm float64) threads.End {
	d := quantity.Length(mm)
	return threads.End{Family: threads.Push, Size: d.String(), Diameter: threads.Length(mm), Sex: threads.Male}
}

// standsSea reports whether what a text names may be wetted by raw sea water.
func standsSea(material string) bool {
	for _, m := range catalog.MaterialsIn(material) {
		if m.In(catalog.RawSea) == catalog.No {
			return false
		}
	}
	return true
}

// mates lists the sorts that an end joins with, in every reading.
func (s *shelf) mates(c *endClass) []int {
	var out []int
	for i, e := range s.ends {
		ok := true
		switch {
		case c.boat != "":
			ok = joinBoat(c, &endClass{readings: []threads.End{e}}) == assign.Joins
		case len(c.readings) == 0:
			ok = false
		}
		for _, r := range c.readings {
			m := threads.Mate(r, e)
			ok = ok && m.Verdict.Holds()
		}
		if ok {
			out = append(out, i)
		}
	}
	return out
}

// mostBought is how many pieces to buy in a row are looked for: a tail, a hose and a tail.
const mostBought = 3

// far is, of each sort of end, with how few pieces a chain comes to offer it that begins with
// one of the given sorts; 0: not with that many.
func (s *shelf) far(from []int) []uint8 {
	out := make([]uint8, len(s.ends))
	begun := make([]bool, len(s.ends))
	now := slices.Clone(from)
	for _, c := range now {
		begun[c] = true
	}
	for n := uint8(1); n <= mostBought; n++ {
		var next []int
		for _, c := range now {
			for _, o := range s.partners[c] {
				if out[o] > 0 {
					continue
				}
				out[o] = n
				for _, j := range s.joins[o] {
					if !begun[j] {
						begun[j] = true
						next = append(next, j)
					}
				}
			}
		}
		now = next
	}
	return out
}
