package bom

import "handtight/catalog"

// LostFlush is an intake that the fresh-water flush runs back out by.
type LostFlush struct {
	Intake *Unit
	Pump   *Unit // the feed pump that stands still and lets it pass; nil where there is none
}

// LostFlushes lists the intakes at which, in the flush, the house water stands with nothing
// to hold it: it runs back to the sea there and not through the pump and the membrane.
func (s *System) LostFlushes() []LostFlush {
	var out []LostFlush
	for _, st := range s.States {
		if st.Name != "flush" {
			continue
		}
		for _, u := range s.partUnits[st.part] {
			if !s.intake(u) {
				continue
			}
			for i := range u.Item.Ports {
				if high, _, ok := s.Pressure(st, u.First+i); ok && high > 0 {
					out = append(out, LostFlush{u, s.letsPass(st)})
					break
				}
			}
		}
	}
	return out
}

// intake reports whether a unit lets sea water in: the sea, or the skin fitting that a run
// begins at.
func (s *System) intake(u *Unit) bool {
	switch u.Item.Kind.Name {
	case "sea":
		return true
	case "through-hull", "seacock":
		return s.begins(u)
	}
	return false
}

// letsPass finds the centrifugal feed pump at whose inlet flush water stands.
func (s *System) letsPass(st *State) *Unit {
	for _, u := range s.partUnits[st.part] {
		in, _ := pumpEnds(u)
		if in < 0 || u.Item.Type != "centrifugal" || u.passages()[0].Is != catalog.FeedPump {
			continue
		}
		if high, _, ok := s.Pressure(st, u.First+in); ok && high > 0 {
			return u
		}
	}
	return nil
}
