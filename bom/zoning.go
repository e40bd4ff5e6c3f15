package bom

import "handtight/catalog"

// zoning is the cells of one part of the build in one condition, made into zones by the
// passages that are open. It is made once for a condition; a state that shuts one
// passage more is answered on it: the zone that this cuts in two is known by the span
// of the cells beyond the cut, and states that cut the same things off share an answer.
type zoning struct {
	cond  *condition
	of    []int // zone of each cell of the part
	count int   // the zone of this number is what a cut takes off, empty without one
	links []link
	ends  []end
	order []int          // place of each cell on a walk through the open passages
	cuts  map[int]cutOff // what the shutting of an open passage takes off its zone, by edge
	held  []int          // how many links and ends hold on to the cells before a place

	duty    float64
	answers map[question]*answer
}

// link is a passage that is neither open nor shut.
type link struct {
	edge     int
	from, to int // cells of the part
	is       catalog.Flow
	unit     *Unit
}

// end is a cell of the part where water comes in or goes out.
type end struct {
	cell         int
	takes, gives bool
	push         float64
}

// cutOff is the cells of a zone that a shut passage takes off it: those of the places
// from first to last on the walk. None where first is after last.
type cutOff struct{ first, last int }

var noCut = cutOff{0, -1}

// question is all that an answer depends on, in one zoning.
type question struct {
	without  int // the link that is shut, by its edge; -1 for none
	from, to int // the links' ends and the water's ends that are cut off
	fullFlow bool
}

func (s *System) newZoning(part int, cond *condition) *zoning {
	c := s.cells
	cells := c.parts[part]
	z := &zoning{cond: cond, cuts: map[int]cutOff{}, answers: map[question]*answer{}}
	if s.Build.Duty.Pressure != nil {
		z.duty = s.Build.Duty.Pressure.Bar()
	}
	var open []link
	for _, i := range c.wires[part] {
		e := &c.edges[i]
		l := link{edge: i, from: c.local[e.from], to: c.local[e.to], is: cond.flow(i, e), unit: e.unit}
		switch l.is {
		case catalog.Open:
			open = append(open, l)
		case catalog.Shut:
		default:
			z.links = append(z.links, l)
		}
	}
	for i, cell := range cells {
		if c.takes[cell] || c.gives[cell] || c.push[cell] > 0 {
			z.ends = append(z.ends, end{i, c.takes[cell], c.gives[cell], c.push[cell]})
		}
	}
	z.walk(len(cells), open)
	z.hold(len(cells))
	return z
}

// walk goes through the open passages from cell to cell, depth first: each tree of the
// walk is a zone. A passage that leads to cells from which no other passage leads back
// is a bridge: shut, it cuts them off (Tarjan's method, without recursion).
func (z *zoning) walk(cells int, open []link) {
	leads := newLeads(cells, open)
	z.of, z.order = make([]int, cells), make([]int, cells)
	low := make([]int, cells)
	for i := range z.order {
		z.order[i] = -1
	}
	type frame struct{ cell, by, next int } // by is the passage that it was entered by
	var stack []frame
	place := 0
	enter := func(cell, by int) {
		z.of[cell], z.order[cell], low[cell] = z.count, place, place
		place++
		stack = append(stack, frame{cell, by, leads.first[cell]})
	}
	for root := range cells {
		if z.order[root] >= 0 {
			continue
		}
		enter(root, -1)
		for len(stack) > 0 {
			top := &stack[len(stack)-1]
			if top.next < leads.first[top.cell+1] {
				by := leads.list[top.next]
				top.next++
				other := open[by].from + open[by].to - top.cell
				switch {
				case by == top.by:
				case z.order[other] < 0:
					enter(other, by)
				default:
					low[top.cell] = min(low[top.cell], z.order[other])
				}
				continue
			}
			done := *top
			stack = stack[:len(stack)-1]
			if len(stack) == 0 {
				continue
			}
			above := stack[len(stack)-1].cell
			low[above] = min(low[above], low[done.cell])
			if low[done.cell] > z.order[above] {
				z.cuts[open[done.by].edge] = cutOff{z.order[done.cell], place - 1}
			}
		}
		z.count++
	}
}

// leads lists the passages at each cell: those of a cell are list[first[cell]:first[cell+1]].
type leads struct{ first, list []int }

func newLeads(cells int, open []link) leads {
	l := leads{make([]int, cells+1), make([]int, 2*len(open))}
	for _, o := range open {
		l.first[o.from]++
		l.first[o.to]++
	}
	sum := 0
	for i, n := range l.first {
		sum += n
		l.first[i] = sum
	}
	for i := len(open) - 1; i >= 0; i-- {
		for _, cell := range [2]int{open[i].from, open[i].to} {
			l.first[cell]--
			l.list[l.first[cell]] = i
		}
	}
	return l
}

// hold counts what holds on to the cells, along the walk.
func (z *zoning) hold(cells int) {
	z.held = make([]int, cells+1)
	for _, l := range z.links {
		z.held[z.order[l.from]+1]++
		z.held[z.order[l.to]+1]++
	}
	for _, e := range z.ends {
		z.held[z.order[e.cell]+1]++
	}
	for i := range cells {
		z.held[i+1] += z.held[i]
	}
}

// zone is the zone of a cell of the part when something is cut off.
func (z *zoning) zone(cell int, cut cutOff) int {
	if at := z.order[cell]; cut.first <= at && at <= cut.last {
		return z.count
	}
	return z.of[cell]
}

// shut answers the state in which one passage is shut beside what the condition does;
// -1 for none.
func (z *zoning) shut(edge int, fullFlow bool) field {
	cut, cuts := z.cuts[edge]
	if !cuts {
		cut = noCut
	}
	q := question{without: -1, from: z.held[cut.first], to: z.held[cut.last+1], fullFlow: fullFlow}
	if q.from == q.to {
		q.from, q.to = 0, 0 // nothing but a dead end is cut off
	}
	for i := range z.links {
		if z.links[i].edge == edge {
			q.without = edge
		}
	}
	a, ok := z.answers[q]
	if !ok {
		a = z.solve(q, cut)
		z.answers[q] = a
	}
	return field{z, cut, a}
}

// field is the pressures of one state on the cells of one part of the build.
type field struct {
	zones *zoning
	cut   cutOff
	*answer
}

// high is the highest pressure of a cell, by its number in the part.
func (f *field) high(cell int) float64 { return f.highest(f.zones.zone(cell, f.cut)) }

// low is the lowest pressure of a cell.
func (f *field) low(cell int) float64 { return f.lowest(f.zones.zone(cell, f.cut)) }

// wayOut is the least pressure at which a cell's water finds a way out.
func (f *field) wayOut(cell int) float64 { return f.out[f.zones.zone(cell, f.cut)] }
