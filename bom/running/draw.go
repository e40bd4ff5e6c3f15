package running

import (
	"slices"

	"handtight/bom/circuit"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/pressure/network/connected"
	"handtight/pressure/quantity"
)

// Draw is a suction hose and the pumps whose water it carries.
type Draw struct {
	Hose  *graph.Unit
	Pumps []*graph.Unit // those whose flow is known, in the build's order
	Flow  quantity.Flow // of them together
}

// Draws lists the hoses that pumps draw through in normal running, and whose water is sea
// water: of several pumps on one line a hose carries the flow of those behind it. A hose
// that others lie beside carries a share that is not known, and is left out; so is a dead
// end, and a hose behind the last pump.
func (s *Running) Draws() []Draw {
	edges := make([]connected.Edge, 0, len(s.Graph.Joints)+len(s.Graph.Units))
	for _, j := range s.Graph.Joints {
		edges = append(edges, connected.Edge{From: j.A, To: j.B})
	}
	through := make([]int, len(s.Graph.Units)) // the edge through each unit; 0, which is a joint, for none
	for i, u := range s.Graph.Units {
		for position, p := range u.Passages() {
			if drawsThrough(u, p, position) {
				through[i] = len(edges)
				edges = append(edges, connected.Edge{From: u.First + p.From, To: u.First + p.To})
			}
		}
	}
	w := connected.Search(len(s.Graph.Ports), edges)
	sources, flows := s.drawn(w)
	pumps := s.pumpsDrawing()
	var out []Draw
	for i, u := range s.Graph.Units {
		if !u.Item.IsHose() || through[i] == 0 || !s.Waters.Sea(u.First) {
			continue
		}
		cut, bridge := w.Bridge(through[i])
		if !bridge {
			continue
		}
		whole := w.Spans[w.Piece[u.First]]
		far := sources.over(cut) > 0                    // beyond the hose there is water
		near := sources.over(whole) > sources.over(cut) // and on this side
		carries := quantity.Flow(0)
		side := cut
		if near {
			carries = quantity.Flow(flows.over(cut))
		}
		if back := quantity.Flow(flows.over(whole) - flows.over(cut)); far && back > carries {
			carries, side = back, whole
		}
		if carries <= 0 {
			continue
		}
		d := Draw{Hose: u, Pumps: s.first(within(pumps, w, side, cut))}
		for _, p := range d.Pumps {
			d.Flow += *p.Item.Flow // anew: the running sums are rounded
		}
		if d.Flow > 0 {
			out = append(out, d)
		}
	}
	return out
}

// drawsThrough reports whether a pump can draw through a passage in normal running.
func drawsThrough(u *graph.Unit, p catalog.Passage, position int) bool {
	e := circuit.Link{Unit: u, Is: p.Is, Closable: p.Closable, Position: position}
	return !e.ShutNormally() && (p.Is == catalog.Open || p.Is == catalog.OneWay) && (!u.Item.Kind.Selector || position == 0)
}

// sums are running sums along a walk.
type sums []float64

// over is the sum over the places of a span.
func (s sums) over(c connected.Span) float64 { return s[c.Last+1] - s[c.First] }

func (s sums) run() {
	for i := 1; i < len(s); i++ {
		s[i] += s[i-1]
	}
}

// drawn sums, along a walk through the ports, where water can come from (the sea, a tank,
// the outlet of a pump) and what the pumps draw.
func (s *Running) drawn(w *connected.Walk) (sources, flows sums) {
	sources, flows = make(sums, len(s.Graph.Ports)+1), make(sums, len(s.Graph.Ports)+1)
	for p := range s.Graph.Ports {
		n := &s.Graph.Ports[p]
		at := w.Order[p] + 1
		switch in, out := circuit.PumpEnds(n.Unit); {
		case n.Index == in && n.Unit.Item.Flow != nil:
			flows[at] += float64(*n.Unit.Item.Flow)
		case n.Index == out, s.Graph.Boundary(n.Unit, n.Index) && (n.Unit.Item.Kind.Gives || !n.Unit.Item.Kind.Boats):
			sources[at]++
		}
	}
	sources.run()
	flows.run()
	return sources, flows
}

// pumpsDrawing lists the pumps of a known flow.
func (s *Running) pumpsDrawing() []*graph.Unit {
	var out []*graph.Unit
	for _, u := range s.Graph.Units {
		if in, _ := circuit.PumpEnds(u); in >= 0 && u.Item.Flow != nil {
			out = append(out, u)
		}
	}
	return out
}

// first leaves out the pumps that another of the list feeds: what they take has been drawn
// already.
func (s *Running) first(list []*graph.Unit) []*graph.Unit {
	var out []*graph.Unit
	for _, u := range list {
		in, _ := circuit.PumpEnds(u)
		if !slices.ContainsFunc(list, func(other *graph.Unit) bool {
			_, from := circuit.PumpEnds(other)
			return other != u && s.Circuit.Reaches(other.First+from, u.First+in, true)
		}) {
			out = append(out, u)
		}
	}
	return out
}

// within keeps the pumps whose inlets lie beyond a cut, or else in the rest of a span
// that is larger.
func within(pumps []*graph.Unit, w *connected.Walk, side, cut connected.Span) []*graph.Unit {
	var out []*graph.Unit
	for _, u := range pumps {
		in, _ := circuit.PumpEnds(u)
		if at := w.Order[u.First+in]; side.Holds(at) && (side == cut || !cut.Holds(at)) {
			out = append(out, u)
		}
	}
	return out
}
