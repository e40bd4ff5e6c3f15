package network

import "handtight/pressure/quantity"

// An energy-recovery pump by the forces on its piston: of area 1, with a rod of r (its ratio).
// The feed on the whole and the brine on what the rod leaves push one way; what goes out high
// and the waste push back:
//
//	feed + (1-r) brine = high + (1-r) waste
//
// It lets the feed through to its high side by check valves, driven or not, so that the high
// side stands no lower than the feed unless it is open. Where the waste or the brine's return is
// shut the piston stands still, and all that drives it goes through. What a shut valve holds
// caught is not looked at, as nowhere else.

// drivenAt is the pressure at which the zone that drives an energy-recovery pump finds its way
// out by it: no more than the high side does, since it lets the feed through.
func (s *solver) drivenAt(w waysOut, l link) quantity.Pressure {
	high := min(w.free[l.to], s.duty+w.throttled[l.to])
	waste := min(w.free[l.waste], s.duty+w.throttled[l.waste])
	if r, ok := l.ratio(); ok && s.returns[l.edge.ID] && !high.Unbounded() {
		return min(high, high.Times(r)+waste.Times(1-r))
	}
	return high
}

// ratio is what of the piston the rod takes.
func (l *link) ratio() (r float64, ok bool) {
	r = l.edge.Ratio.Value
	return r, l.edge.Ratio.Known && r > 0 && r < 1
}

// findReturns notes the energy-recovery pumps whose brine comes back from the high side at the
// pressure that stands there: what lies between drops nothing.
func (s *solver) findReturns(links []link) {
	for _, l := range links {
		if l.is != Recovery {
			continue
		}
		if s.returns == nil {
			s.returns = map[int]bool{}
		}
		reached := make([]bool, len(s.takes))
		reached[l.to] = true
		s.propagate(links, func(o link) bool {
			return (o.is == OneWay || o.is == FeedPump) && reached[o.from] && !reached[o.to] && set(&reached[o.to])
		})
		s.returns[l.edge.ID] = reached[l.brine]
	}
}

// moves reports whether the piston of an energy-recovery pump can move.
func (s *solver) moves(l link) bool {
	return s.returns[l.edge.ID] && !s.discharge[l.waste].Unbounded()
}

// recover lifts what drives the energy-recovery pumps: one may drive another. Where they drive
// each other round nothing bounds them but their ways out.
func (s *solver) recover(links []link) {
	pumps := 0
	for _, l := range links {
		if l.is == Recovery {
			pumps++
		}
	}
	for round := 0; ; round++ {
		some := false
		for _, l := range links {
			if l.is != Recovery {
				continue
			}
			high, waste := s.drivesTo(l)
			if round > 2*pumps && (high > s.pumped[l.to] || waste > s.pumped[l.waste]) {
				high, waste = quantity.NoBound(), quantity.NoBound()
			}
			some = raise(&s.pumped[l.to], min(high, s.discharge[l.to])) || some
			some = raise(&s.pumped[l.waste], min(waste, s.discharge[l.waste])) || some
		}
		if !some {
			return
		}
		s.propagate(links, s.pass)
	}
}

// drivesTo is what stands at most on the high side of an energy-recovery pump, its membrane
// passing nothing, and at its waste. Without a ratio nothing bounds the first but what its high
// side finds a way out at. A brine that comes back too low, or not at all, can only lessen what
// it was driven to; one that another pump pushes can raise it.
func (s *solver) drivesTo(l link) (high, waste quantity.Pressure) {
	drives := s.highest(l.from)
	var brine quantity.Pressure
	if l.brine != l.to {
		brine = s.highest(l.brine)
	}
	if drives <= 0 && brine <= 0 {
		return 0, 0
	}
	r, known := l.ratio()
	least := min(drives, s.discharge[l.to]) // on the high side
	switch {
	case s.discharge[l.waste].Unbounded():
		high = drives
	case known:
		high = drives.Times(1 / r)
	default:
		high = quantity.NoBound()
	}
	switch {
	case least >= drives:
		waste = drives
	case known:
		waste = (drives - least.Times(r)).Times(1 / (1 - r))
	default:
		waste = quantity.NoBound()
	}
	if brine > high { // none that came back from there
		if known || least >= drives {
			waste = (drives - least).Times(1/(1-r)) + brine
		}
		if !s.discharge[l.waste].Unbounded() {
			high = max(high, drives+brine.Times(1-r))
		}
	}
	return high, waste
}
