package bom

import (
	"slices"

	"handtight/catalog"
	"handtight/pressure/quantity"
)

// Draw is a suction hose and the pumps whose water it carries.
type Draw struct {
	Hose  *Unit
	Pumps []*Unit       // those whose flow is known, in the build's order
	Flow  quantity.Flow // of them together
}

// Draws lists the hoses that pumps draw through in normal running, and whose water is sea
// water: of several pumps on one line a hose carries the flow of those behind it. A hose
// that others lie beside carries a share that is not known, and is left out; so is a dead
// end, and a hose behind the last pump.
func (s *System) Draws() []Draw {
	var bonds []bond
	for _, j := range s.Joints {
		bonds = append(bonds, bond{-1, j.A, j.B})
	}
	for i, u := range s.Units {
		for way, p := range u.passages() {
			if drawsThrough(u, p, way) {
				bonds = append(bonds, bond{i, u.First + p.From, u.First + p.To})
			}
		}
	}
	w := weave(len(s.Ports), bonds)
	springs, flows := s.drawn(w)
	pumps := s.pumpsDrawing()
	var out []Draw
	for i, u := range s.Units {
		if !u.Item.IsHose() || !s.waters.Sea(u.First) {
			continue
		}
		cut, bridge := w.cuts[i]
		if !bridge {
			continue
		}
		whole := w.spans[w.piece[u.First]]
		far := springs.over(cut) > 0                    // beyond the hose there is water
		near := springs.over(whole) > springs.over(cut) // and on this side
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
func drawsThrough(u *Unit, p catalog.Passage, way int) bool {
	e := edge{unit: u, is: p.Is, closable: p.Closable, way: way}
	return !e.shutNormally() && (p.Is == catalog.Open || p.Is == catalog.OneWay) && (!u.Item.Kind.Selector || way == 0)
}

// sums are running sums along a walk.
type sums []float64

// over is the sum over the places of a span.
func (s sums) over(c cutOff) float64 { return s[c.last+1] - s[c.first] }

func (s sums) run() {
	for i := 1; i < len(s); i++ {
		s[i] += s[i-1]
	}
}

// drawn sums, along a walk through the ports, where water can come from (the sea, a tank,
// the outlet of a pump) and what the pumps draw.
func (s *System) drawn(w *woven) (springs, flows sums) {
	springs, flows = make(sums, len(s.Ports)+1), make(sums, len(s.Ports)+1)
	for p := range s.Ports {
		n := &s.Ports[p]
		at := w.order[p] + 1
		switch in, out := pumpEnds(n.Unit); {
		case n.Index == in && n.Unit.Item.Flow != nil:
			flows[at] += float64(*n.Unit.Item.Flow)
		case n.Index == out, s.boundary(n.Unit, n.Index) && (n.Unit.Item.Kind.Gives || !n.Unit.Item.Kind.Boats):
			springs[at]++
		}
	}
	springs.run()
	flows.run()
	return springs, flows
}

// pumpEnds are the inlet and the outlet of a pump; -1 of anything else.
func pumpEnds(u *Unit) (in, out int) {
	for _, p := range u.passages() {
		if p.Is == catalog.FeedPump || p.Is == catalog.PositivePump {
			return p.From, p.To
		}
	}
	return -1, -1
}

// pumpsDrawing lists the pumps of a known flow.
func (s *System) pumpsDrawing() []*Unit {
	var out []*Unit
	for _, u := range s.Units {
		if in, _ := pumpEnds(u); in >= 0 && u.Item.Flow != nil {
			out = append(out, u)
		}
	}
	return out
}

// first leaves out the pumps that another of the list feeds: what they take has been drawn
// already.
func (s *System) first(list []*Unit) []*Unit {
	var out []*Unit
	for _, u := range list {
		in, _ := pumpEnds(u)
		if !slices.ContainsFunc(list, func(other *Unit) bool {
			_, from := pumpEnds(other)
			return other != u && s.Reaches(other.First+from, u.First+in, true)
		}) {
			out = append(out, u)
		}
	}
	return out
}

// within keeps the pumps whose inlets lie beyond a cut, or else in the rest of a span
// that is larger.
func within(pumps []*Unit, w *woven, side, cut cutOff) []*Unit {
	var out []*Unit
	for _, u := range pumps {
		in, _ := pumpEnds(u)
		if at := w.order[u.First+in]; side.holds(at) && (side == cut || !cut.holds(at)) {
			out = append(out, u)
		}
	}
	return out
}
