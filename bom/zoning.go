package bom

import "handtight/catalog"

// zoning is the cells of one part of the build in one condition, made into zones by the
// passages that are open. It is made once for a condition; a state that shuts one
// passage more is answered on it: the zone that this cuts in two is known by the span
// of the cells beyond the cut, and states that cut the same things off share an answer.
// Each piece of the walk is a zone; the zone of the next number is what a cut takes off,
// empty without one.
type zoning struct {
	*woven
	cond  *condition
	links []link
	ends  []end
	held  []int // how many links and ends hold on to the cells before a place

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

// question is all that an answer depends on, in one zoning.
type question struct {
	without  int // the link that is shut, by its edge; -1 for none
	from, to int // the links' ends and the water's ends that are cut off
	fullFlow bool
}

func (s *System) newZoning(part int, cond *condition) *zoning {
	c := s.cells
	cells := c.parts[part]
	z := &zoning{cond: cond, answers: map[question]*answer{}}
	if s.Build.Duty.Pressure != nil {
		z.duty = s.Build.Duty.Pressure.Bar()
	}
	var open []bond
	for _, i := range c.wires[part] {
		e := &c.edges[i]
		from, to := c.local[e.from], c.local[e.to]
		switch is := cond.flow(i, e); is {
		case catalog.Open:
			open = append(open, bond{i, from, to})
		case catalog.Shut:
		default:
			z.links = append(z.links, link{edge: i, from: from, to: to, is: is, unit: e.unit})
		}
	}
	for i, cell := range cells {
		if c.takes[cell] || c.gives[cell] || c.push[cell] > 0 {
			z.ends = append(z.ends, end{i, c.takes[cell], c.givesBeside(cell, cond.dry), c.push[cell]})
		}
	}
	z.woven = weave(len(cells), open)
	z.hold(len(cells))
	return z
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
	if cut.holds(z.order[cell]) {
		return z.pieces
	}
	return z.piece[cell]
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
