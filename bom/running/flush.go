package running

import (
	"slices"

	"handtight/bom/circuit"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/pressure/network"
)

// LostFlush is an intake that the fresh-water flush runs back out by.
type LostFlush struct {
	Intake *graph.Unit
	Pump   *graph.Unit // the feed pump that stands still and lets it pass; nil where there is none
}

// LostFlushes lists the intakes at which house water that flushes a pump stands with nothing
// to hold it: it runs back to the sea there and not through the pump and the membrane. Each
// flush valve is looked at by itself, so that a line that rinses the intake on purpose is
// none.
func (s *Running) LostFlushes() []LostFlush {
	var out []LostFlush
	for part, list := range s.Circuit.LinksOf {
		if s.States.Normal(part) == nil {
			continue
		}
		said := map[*graph.Unit]bool{}
		for _, i := range list {
			if !s.Circuit.Links[i].ForFlush() {
				continue
			}
			cond := circuit.Condition{Opened: s.Circuit.Links[i].Unit, Stopped: true, Still: true}
			f := s.States.Field(part, &cond)
			if !s.pressed(&f, part, func(u *graph.Unit, port int) bool {
				in, _ := circuit.PumpEnds(u)
				return port == in && u.Item.Kind.Is(catalog.DrivesHigh)
			}) {
				continue
			}
			for _, u := range s.Circuit.UnitsOf(part) {
				if s.Waters.Intake(u) && !said[u] && s.pressed(&f, part, func(v *graph.Unit, _ int) bool { return v == u }) {
					said[u] = true
					out = append(out, LostFlush{u, s.passesStill(cond, part, u)})
				}
			}
		}
	}
	return out
}

// pressed reports whether water stands under pressure at some port that is asked for.
func (s *Running) pressed(f *network.Field, part int, which func(u *graph.Unit, port int) bool) bool {
	for _, u := range s.Circuit.UnitsOf(part) {
		for i := range u.Item.Ports {
			if which(u, i) && f.High(s.Circuit.Local[s.Circuit.JunctionOf[u.First+i]]) > 0 {
				return true
			}
		}
	}
	return false
}

// Unflushed lists the pressure vessels that the fresh-water flush does not reach, in parts of
// the build that have a flush valve and a house supply.
func (s *Running) Unflushed() []*graph.Unit {
	var out []*graph.Unit
	for _, st := range s.Segments.States.All {
		if st.Name != "flush" {
			continue
		}
		units := s.Circuit.UnitsOf(st.Net())
		if !slices.ContainsFunc(units, func(u *graph.Unit) bool { return u.Item.Kind.Supply }) {
			continue
		}
		for _, u := range units {
			if feed := u.Item.PortIndex("feed"); feed >= 0 && u.Item.Kind.Is(catalog.Separates) && !s.Waters.Rinsed(u.First+feed) {
				out = append(out, u)
			}
		}
	}
	return out
}

// Waterless lists the running pumps that no water reaches in normal running, those of one
// connected part of the build together, where that part has an opening to the sea: something
// is shut or stands the wrong way round.
func (s *Running) Waterless() [][]*graph.Unit {
	var out [][]*graph.Unit
	for part := range s.Circuit.Nets {
		st := s.States.Normal(part)
		if st == nil || !slices.ContainsFunc(s.Circuit.UnitsOf(part), circuit.OpenToSea) {
			continue
		}
		var dry []*graph.Unit
		for _, u := range s.Circuit.UnitsOf(part) {
			in, _ := circuit.PumpEnds(u)
			if in < 0 || s.Graph.Port(u, in).Joint == nil {
				continue
			}
			if _, low, ok := s.States.Pressure(st, u.First+in); ok && low < 0 {
				dry = append(dry, u)
			}
		}
		if len(dry) > 0 {
			out = append(out, dry)
		}
	}
	return out
}

// Runaways lists the house supplies whose water runs out in normal running: overboard, into
// a tank, or into a pump.
func (s *Running) Runaways() []*graph.Unit {
	var out []*graph.Unit
	for _, u := range s.Graph.Units {
		if u.Item.Kind.Supply && !s.Circuit.DischargeOf(u.First).Closed() {
			out = append(out, u)
		}
	}
	return out
}

// passesStill finds the centrifugal feed pump without which no flush water stands at an intake.
func (s *Running) passesStill(cond circuit.Condition, part int, intake *graph.Unit) *graph.Unit {
	for _, i := range s.Circuit.LinksOf[part] {
		e := &s.Circuit.Links[i]
		if e.Is != catalog.FeedPump || e.Unit.Item.Type != "centrifugal" {
			continue
		}
		cond.Shut = map[int]bool{i: true}
		f := s.States.Field(part, &cond)
		if !s.pressed(&f, part, func(u *graph.Unit, _ int) bool { return u == intake }) {
			return e.Unit
		}
	}
	return nil
}
