package bom

import "handtight/pressure"

// PumpPulls is the vacuum in bar that a suction hose must stand: that of the one hose
// standard that asks for any. The last of an atmosphere is lost to vapour and leaks (a
// judgement).
//
// Source: SAE J517 100R4, 25 inches of mercury, from memory.
const PumpPulls = 0.85

// StandsVacuum is the vacuum in bar that a hose stands by its data sheet, else by its
// standard; ok is false where nothing says that it stands any.
func StandsVacuum(i *Item) (bar float64, ok bool) {
	if i.Vacuum != nil {
		return i.Vacuum.Bar(), true
	}
	if spec, known := pressure.HoseSpec(i.Spec); known && i.Bore != nil {
		if r, rated := pressure.VacuumRating(spec, *i.Bore); rated {
			return r.Pressure.Bar(), true
		}
	}
	return 0, false
}

// Collapse is a hose that a vacuum may flatten.
type Collapse struct {
	Hose    *Unit
	Segment *Segment
	Stands  float64 // bar below the air's pressure
	Known   bool    // something says what it stands
}

// collapses lists the hoses that stand less than the vacuum of a state.
func (s *System) collapses(sees func(port int) (high, low float64)) []Collapse {
	var out []Collapse
	for _, u := range s.Units {
		if !u.Item.IsHose() {
			continue
		}
		if _, low := sees(u.First); low >= 0 {
			continue
		}
		if bar, known := StandsVacuum(u.Item); !known || bar < PumpPulls {
			out = append(out, Collapse{u, s.SegmentOf(u.First), bar, known})
		}
	}
	return out
}
