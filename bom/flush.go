package bom

import (
	"slices"

	"handtight/catalog"
)

// LostFlush is an intake that the fresh-water flush runs back out by.
type LostFlush struct {
	Intake *Unit
	Pump   *Unit // the feed pump that stands still and lets it pass; nil where there is none
}

// LostFlushes lists the intakes at which house water that flushes a pump stands with nothing
// to hold it: it runs back to the sea there and not through the pump and the membrane. Each
// flush valve is looked at by itself, so that a line that rinses the intake on purpose is
// none.
func (s *System) LostFlushes() []LostFlush {
	var out []LostFlush
	for part, list := range s.cells.wires {
		if s.normal[part] == nil {
			continue
		}
		said := map[*Unit]bool{}
		for _, i := range list {
			if !s.cells.edges[i].forFlush() {
				continue
			}
			z := s.newZoning(part, &condition{opened: s.cells.edges[i].unit, stopped: true, still: true})
			f := z.shut(-1, true)
			if !s.pressed(&f, part, func(u *Unit, port int) bool {
				in, _ := pumpEnds(u)
				return port == in && u.Item.Kind.Name == "plunger pump"
			}) {
				continue
			}
			for _, u := range s.partUnits[part] {
				if s.intake(u) && !said[u] && s.pressed(&f, part, func(v *Unit, _ int) bool { return v == u }) {
					said[u] = true
					out = append(out, LostFlush{u, s.letsPass(z, part, u)})
				}
			}
		}
	}
	return out
}

// pressed reports whether water stands under pressure at some port that is asked for.
func (s *System) pressed(f *field, part int, which func(u *Unit, port int) bool) bool {
	for _, u := range s.partUnits[part] {
		for i := range u.Item.Ports {
			if which(u, i) && f.high(s.cells.local[s.cells.of[u.First+i]]) > 0 {
				return true
			}
		}
	}
	return false
}

// Unflushed lists the pressure vessels that the fresh-water flush does not reach, in parts of
// the build that have a flush valve and a house supply.
func (s *System) Unflushed() []*Unit {
	var out []*Unit
	for _, st := range s.States {
		if st.Name != "flush" {
			continue
		}
		units := s.partUnits[st.part]
		if !slices.ContainsFunc(units, func(u *Unit) bool { return u.Item.Kind.Supply }) {
			continue
		}
		for _, u := range units {
			if feed := u.Item.PortIndex("feed"); feed >= 0 && u.Item.Kind.Name == "pressure vessel" && !s.waters.Rinsed(u.First+feed) {
				out = append(out, u)
			}
		}
	}
	return out
}

// Waterless lists the running pumps that no water reaches in normal running, those of one
// connected part of the build together, where that part has an opening to the sea: something
// is shut or stands the wrong way round.
func (s *System) Waterless() [][]*Unit {
	var out [][]*Unit
	for part, st := range s.normal {
		if st == nil || !slices.ContainsFunc(s.partUnits[part], openToSea) {
			continue
		}
		var dry []*Unit
		for _, u := range s.partUnits[part] {
			in, _ := pumpEnds(u)
			if in < 0 || s.Node(u, in).Joint == nil {
				continue
			}
			if _, low, ok := s.Pressure(st, u.First+in); ok && low < 0 {
				dry = append(dry, u)
			}
		}
		if len(dry) > 0 {
			out = append(out, dry)
		}
	}
	return out
}

func openToSea(u *Unit) bool {
	return u.Item.Kind.Name == "sea" || u.Item.Kind.Name == "through-hull" || u.Item.Kind.Name == "seacock"
}

// Runaways lists the house supplies whose water runs out in normal running: overboard, into
// a tank, or into a pump.
func (s *System) Runaways() []*Unit {
	var out []*Unit
	for _, u := range s.Units {
		if u.Item.Kind.Supply && !s.DischargeOf(u.First).Closed() {
			out = append(out, u)
		}
	}
	return out
}

// intake reports whether a unit lets sea water in: the sea, or a skin fitting from which
// water reaches a pump; where no pump stands, the one that a run begins at.
func (s *System) intake(u *Unit) bool {
	switch u.Item.Kind.Name {
	case "sea":
		return true
	case "through-hull", "seacock":
	default:
		return false
	}
	inboard := u.First + len(u.Item.Ports) - 1
	pumps := 0
	var from *reached
	for _, i := range s.cells.wires[s.cells.part[s.cells.of[inboard]]] {
		e := &s.cells.edges[i]
		if e.is != catalog.FeedPump && e.is != catalog.PositivePump {
			continue
		}
		if from == nil {
			from = s.reach(s.cells.of[inboard], func(e *edge, back bool) bool { return flows(e, back, true) })
		}
		if pumps++; from.cell(e.from) {
			return true
		}
	}
	return pumps == 0 && s.begins(u)
}

// letsPass finds the centrifugal feed pump without which no flush water stands at an intake.
func (s *System) letsPass(z *zoning, part int, intake *Unit) *Unit {
	for _, i := range s.cells.wires[part] {
		e := &s.cells.edges[i]
		if e.is != catalog.FeedPump || e.unit.Item.Type != "centrifugal" {
			continue
		}
		f := z.shut(i, true)
		if !s.pressed(&f, part, func(u *Unit, _ int) bool { return u == intake }) {
			return e.unit
		}
	}
	return nil
}
