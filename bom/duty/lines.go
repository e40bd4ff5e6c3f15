package duty

import (
	"math"
	"slices"

	"handtight/bom"
	"handtight/bom/circuit"
	"handtight/bom/graph"
	"handtight/pressure/process/flow"
	"handtight/pressure/process/line"
	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

// Lines are what runs in each unit in normal running, and what it costs.
type Lines struct {
	Solved   bool
	WhyNot   string
	Hoses    []Hose
	Flow     map[*graph.Unit]span.Span[quantity.Flow] // through every unit that water passes, in its main way
	Middle   map[*graph.Unit]quantity.Flow            // the same at the middle of what is said
	Inlets   []Inlet
	Pressure map[int]span.Span[quantity.Pressure] // at each port, friction and lift counted, filters clean
	Back     span.Span[quantity.Pressure]         // on the product side of the vessels, over the pump's height
}

// Hose is a hose with what runs in it.
type Hose struct {
	Unit    *graph.Unit
	Flow    span.Span[quantity.Flow]
	Speed   span.Span[quantity.Velocity] // of a hose whose bore is known
	Loss    span.Span[quantity.Pressure] // of the hose alone
	Judged  Judged
	Known   bool
	Where   Where
	Unknown string // why nothing is known of its loss
}

// Judged is a hose at the flow that a caution is judged by: the middle of what is said, and where an
// engine's speeds are said the greatest, since it runs at each of them.
type Judged struct {
	Speed quantity.Velocity
	Loss  quantity.Pressure
}

// Where says on which side of the plant a line lies.
type Where uint8

// The sides.
const (
	Suction  Where = iota + 1 // before the piston pump
	HighSide                  // from the pump to the throttle
	Brine                     // behind the throttle
	Product
	Other
)

// Inlet is what a piston pump finds before it.
type Inlet struct {
	Pump       *graph.Unit
	Pressure   span.Span[quantity.Pressure] // filters clean: the lower curve at the greatest flow, to the upper at the least
	Middle     quantity.Pressure            // filters clean at their least, the lower curve, the middle flow
	Dirty      quantity.Pressure            // with every filter at the end of its life, at the middle flow
	OneDirty   span.Span[quantity.Pressure] // at the middle flow with one filter at the end of its life, of each in turn
	OneKnown   bool                         // several filters stand in one line, each with the whole flow
	HasFeed    bool
	FeedKnown  bool
	Filters    []*graph.Unit
	May        quantity.Pressure          // what all losses together may be until 0.2 bar are left; with a feed pump
	NPSH       span.Span[quantity.Length] // of water
	NPSHKnown  bool
	Needs      span.Span[quantity.Length]
	NeedsSaid  bool
	LineLoss   quantity.Pressure // of the line without its filters, at the middle flow
	TurnsKnown bool
}

// Losses that nobody said.
var (
	smoothRough   = 0.005 * quantity.Millimetre                        // memory: smooth hose 0.0015 to 0.01 mm
	cleanFilter   = span.Between(0.03*quantity.Bar, 0.15*quantity.Bar) // memory: 10 inch, 5 to 20 micron, at a small plant's flow
	dirtyFilter   = span.Between(0.7*quantity.Bar, 1.0*quantity.Bar)   // seen: when cartridges are changed
	filterFlow    = 8 * quantity.LitrePerMinute
	cleanStrainer = span.Between(0.005*quantity.Bar, 0.03*quantity.Bar)
	blindStrainer = 4.0                                              // times the clean loss with half the holes blind (computed: K about 1/a2)
	usualNPSH     = span.Between(quantity.Metre, 2.5*quantity.Metre) // memory
	usualLift     = span.Between(-500.0, 1000.0)                     // mm
	tailShare     = 0.75                                             // bore of a hose tail over its hose's (judgement)
	leastLeft     = 0.2 * quantity.Bar                               // before a pump
)

// net is the flow network of one plant, in one case.
type net struct {
	s      *bom.System
	m      *Making
	water  line.Water
	node   map[int]int // of each port
	nodes  int
	pumpQ  float64 // share of the feed's span: 0 the least, 1 the greatest
	upper  bool    // feed pump by its upper curve
	dirty  bool
	flush  bool          // the flush valves and the throttles are open, the feed pumps stand
	turns  bool          // and the piston pumps run in the flush
	drain  bool          // the product's selectors stand at their second way
	prod   quantity.Flow // product of all rows
	links  []flow.Link
	unitOf []*graph.Unit
	n      flow.Network

	throttleOf []*graph.Unit
	lift       quantity.Length
}

// linesOf solves the flows of normal running.
func linesOf(s *bom.System, m *Making) *Lines {
	out := &Lines{Flow: map[*graph.Unit]span.Span[quantity.Flow]{}, Middle: map[*graph.Unit]quantity.Flow{}, Pressure: map[int]span.Span[quantity.Pressure]{}}
	if !m.FeedKnown || m.Feed.Hi <= 0 {
		out.WhyNot = "the pump's flow is not known"
		return out
	}
	if m.Recovery != nil && (m.Recovered == nil || !m.Made) {
		out.WhyNot = "what " + m.Recovery.Name + " takes is not known"
		return out
	}
	lift := liftOf(s, m)
	type corner struct {
		pumpQ        float64
		upper, dirty bool
		prod         quantity.Flow
		lift         quantity.Length
	}
	product := span.Span[quantity.Flow]{}
	middle := quantity.Flow(0)
	if m.Made {
		product, middle = m.All.Product, m.Middle.Product
	}
	most, least := product.Lo, product.Hi // of the brine
	if m.Recovery != nil {
		most, least = least, most // a rod's product goes with its feed
	}
	cases := []corner{{1, false, false, most, lift.Hi}, {0, true, false, least, lift.Lo}, {0.5, false, true, middle, lift.Middle()}, {0.5, false, false, middle, lift.Middle()}}
	var answers []*flow.Answer
	var nets []*net
	for _, c := range cases {
		n := &net{s: s, m: m, water: m.water, pumpQ: c.pumpQ, upper: c.upper, dirty: c.dirty, prod: c.prod, lift: c.lift}
		a, err := n.solve()
		if err != nil {
			out.WhyNot = err.Error()
			return out
		}
		answers, nets = append(answers, a), append(nets, n)
	}
	out.Solved = true
	out.gather(nets, answers)
	out.inlets(nets, answers, lift)
	out.pressures(nets, answers)
	return out
}

// liftOf is the pump above the water: as said, below it where the graph says that its line
// lies under the waterline, else the usual range.
func liftOf(s *bom.System, m *Making) span.Span[quantity.Length] {
	if l := s.Build.Duty.Lift; l != nil {
		return span.Exactly(*l)
	}
	for _, u := range m.Pumps {
		if u.Below {
			return span.Exactly(quantity.Length(0))
		}
	}
	return span.Between(quantity.Length(usualLift.Lo), quantity.Length(usualLift.Hi))
}

// gather takes the flows of the clean cases as ranges.
func (l *Lines) gather(nets []*net, answers []*flow.Answer) {
	before := map[*graph.Unit]bool{}
	for _, p := range nets[0].m.pistons() {
		if in, _ := circuit.PumpEnds(p); in >= 0 {
			for _, k := range upstream(nets[0], answers[0], nets[0].node[p.First+in]) {
				before[nets[0].unitOf[k]] = true
			}
		}
	}
	for i, u := range nets[0].unitOf {
		q := span.Empty[quantity.Flow]()
		for c := range answers {
			if !nets[c].dirty {
				q = q.Reach(quantity.Flow(math.Abs(float64(answers[c].Flow[i]))))
			}
		}
		if old, ok := l.Flow[u]; !ok || q.Hi > old.Hi {
			l.Flow[u] = q
			l.Middle[u] = quantity.Flow(math.Abs(float64(answers[len(answers)-1].Flow[i])))
		}
		if !u.Item.IsHose() {
			continue
		}
		h := Hose{Unit: u, Flow: q, Where: nets[0].where(u, before[u])}
		bore, ok := BoreOf(nets[0].s.Build, u.Item)
		if p, isPipe := nets[0].links[i].Law.(flow.Pipe); ok && isPipe {
			h.Known = true
			h.Speed = span.Between(line.Bore{Diameter: bore}.Speed(q.Lo), line.Bore{Diameter: bore}.Speed(q.Hi))
			lo, _ := p.Loss(q.Lo)
			hi, _ := p.Loss(q.Hi)
			h.Loss = span.Between(lo, hi)
			at := quantity.Flow(math.Abs(float64(answers[len(answers)-1].Flow[i])))
			if nets[0].m.engineDriven() {
				at = q.Hi
			}
			h.Judged.Speed = line.Bore{Diameter: bore}.Speed(at)
			h.Judged.Loss, _ = p.Loss(at)
		} else {
			h.Unknown = "its bore is not said"
		}
		l.Hoses = append(l.Hoses, h)
	}
}

// engineDriven reports whether a pump turns with an engine between speeds that are said.
func (m *Making) engineDriven() bool {
	return slices.ContainsFunc(m.Pumps, func(u *graph.Unit) bool {
		s := u.Item.Process.EngineSpeed
		return s != nil && s.Hi > s.Lo
	})
}

// where says on which side a hose lies, by the waters that wet it and by the pressure.
func (n *net) where(u *graph.Unit, before bool) Where {
	switch {
	case before:
		return Suction
	case n.s.Waters.Product(u.First):
		return Product
	case n.s.Segments.SegmentOf(u.First) != nil && n.s.Segments.SegmentOf(u.First).High():
		return HighSide
	case n.s.Waters.Sea(u.First):
		return Brine
	}
	return Other
}
