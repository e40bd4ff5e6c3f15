package segment

import (
	"cmp"
	"slices"

	"handtight/bom/graph"
	"handtight/bom/rating"
	"handtight/bom/state"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

// Part is what one placed unit sees over all states, and what it holds. All figures but
// the lowest are those of one port: where the unit lacks most, else where what it holds
// is not known, else where it has the least margin.
type Part struct {
	Unit      *graph.Unit
	Port      int               // that port, an index into [graph.Graph.Ports]
	Segment   *Segment          // what the port stands in; nil where nothing is joined to it
	Normal    quantity.Pressure // in the normal state
	Worst     quantity.Pressure // the highest of all states; infinite where nothing opens
	Cause     *state.State      // what gives the worst; nil where nothing can push
	Low       quantity.Pressure // at most 0: the lowest at any port of the unit, below 0 a vacuum
	LowBy     *state.State      // what gives the lowest; nil where there is no vacuum
	Allowable rating.Allowable  // what the port holds
	driven    bool
}

// Parts lists what each placed unit sees and holds, in the order in which the runs place
// them. Left out are units without a port to rate: what the boat has already.
//
// Ports that a unit's rating does not speak for, such as the inlet of a plunger pump,
// count for the lowest pressure only. The time it takes grows with the ports.
func (s *Segments) Parts() []Part {
	out := make([]Part, 0, len(s.Graph.Units))
	for _, u := range s.Graph.Units {
		if p, ok := s.part(u); ok {
			out = append(out, p)
		}
	}
	return out
}

// part takes a unit's ports together; ok is false where none is to be rated.
func (s *Segments) part(u *graph.Unit) (worst Part, ok bool) {
	var low quantity.Pressure
	var lowBy *state.State
	for i := range u.Item.Ports {
		load := s.States.PortLoad(u.First + i)
		if load.Low < low {
			low, lowBy = load.Low, load.ByLow
		}
		if u.Item.Exempt(i) {
			continue
		}
		p := Part{Unit: u, Port: u.First + i, Normal: load.Normal, Allowable: s.Ratings.Port(u.First + i), driven: s.States.Driven(u.First + i)}
		p.Worst, p.Cause = load.Worst()
		if g := s.SegmentOf(p.Port); len(g.Joints) > 0 {
			p.Segment = g
		}
		if !ok || p.before(&worst) < 0 {
			worst, ok = p, true
		}
	}
	worst.Low, worst.LowBy = low, lowBy
	return worst, ok
}

// before orders the ports of one unit: the worse first, and of like ones the port that is
// joined and has the higher normal pressure, as the inlet of a valve and not its outlet.
func (p *Part) before(o *Part) int {
	joined := func(p *Part) int {
		if p.Segment == nil {
			return 1
		}
		return 0
	}
	return cmp.Or(worse(p, o), cmp.Compare(joined(p), joined(o)), cmp.Compare(o.Normal, p.Normal))
}

// Margin is what the part holds beyond its worst pressure, below 0 where it holds
// less; ok is false where either is not known or the pressure has no bound.
func (p *Part) Margin() (m quantity.Pressure, ok bool) {
	if !p.Allowable.Known || p.Worst.Unbounded() {
		return 0, false
	}
	return p.Allowable.Rating.Pressure - p.Worst, true
}

// High reports whether the part stands in high pressure.
func (p *Part) High() bool {
	if p.Segment != nil {
		return p.Segment.High()
	}
	return p.driven
}

// Over reports whether the part is known to see more than it holds; what has no bound
// is more than any rating.
func (p *Part) Over() bool {
	stands := p.standing()
	return stands == standsOver || stands == standsUnbounded && p.Allowable.Known
}

// standing sorts parts by how ill they stand.
type standing uint8

// The standings, the worst first.
const (
	standsUnbounded standing = iota // nothing bounds the pressure
	standsOver                      // it sees more than it holds
	standsUnknown                   // nothing says what it holds, or only an estimate on high pressure
	standsHolding
)

func (p *Part) standing() standing {
	margin, known := p.Margin()
	switch {
	case p.Worst.Unbounded():
		return standsUnbounded
	case known && margin < -pressure.Slack:
		return standsOver
	case !known || p.Allowable.Estimate && p.High():
		return standsUnknown
	}
	return standsHolding
}

// WorstFirst gives the parts in the order in which they need looking at: those whose
// pressure has no bound, by what they hold (what is not known before all that is); those
// that see more than they hold, the greatest lack first; those of which nothing is known,
// or on high pressure only an estimate, the highest pressure first; then those that hold,
// the least margin first. Like ones keep their order.
func WorstFirst(parts []Part) []Part {
	out := slices.Clone(parts)
	slices.SortStableFunc(out, func(a, b Part) int { return worse(&a, &b) })
	return out
}

// worse compares by standing, and within one by what tells its members apart.
func worse(a, b *Part) int {
	stands := a.standing()
	if c := cmp.Compare(stands, b.standing()); c != 0 {
		return c
	}
	switch stands {
	case standsUnbounded:
		return cmp.Compare(a.allowable(), b.allowable())
	case standsUnknown:
		return cmp.Compare(b.Worst, a.Worst)
	}
	am, _ := a.Margin()
	bm, _ := b.Margin()
	return cmp.Compare(am, bm)
}

// allowable is what the part holds; nothing where it is not known.
func (p *Part) allowable() quantity.Pressure {
	if !p.Allowable.Known {
		return 0
	}
	return p.Allowable.Rating.Pressure
}
