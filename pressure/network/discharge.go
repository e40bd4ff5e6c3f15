package network

import "handtight/pressure/quantity"

// The ways out of each zone, as the reliefs on them add up: without a throttle, and with
// one or more. The hand holds the duty over all the throttles that the water passes, so
// that two in a line drop it once.
type waysOut struct{ free, throttled []quantity.Pressure }

// leave finds the pressure at which each zone finds its way out. At the inlet of a running
// positive pump that is what the feed gives there, and 0 as long as it is not known.
func (s *solver) leave(links []link) {
	s.spent = nil
	for again := true; again; again = s.sized && s.spend(links) {
		s.findWaysOut(links)
	}
}

func (s *solver) findWaysOut(links []link) {
	n := len(s.feed)
	w := waysOut{fill(n, quantity.NoBound()), fill(n, quantity.NoBound())}
	for _, l := range links {
		if l.is == PositivePump && !s.spent[l.edge.ID] {
			lower(&w.free[l.from], s.feed[l.from])
		}
	}
	for zone, takes := range s.takes {
		if takes {
			w.free[zone] = 0
		}
	}
	s.propagate(links, func(l link) bool { return s.dischargePressure(w, l) })
	s.discharge = make([]quantity.Pressure, n)
	for zone := range s.discharge {
		s.discharge[zone] = min(w.free[zone], s.duty+w.throttled[zone])
	}
}

// dischargePressure lowers what the zones of a link find their way out at.
func (s *solver) dischargePressure(w waysOut, l link) bool {
	from, to := l.from, l.to
	through := func(from, to int) bool {
		return lower(&w.throttled[from], min(w.free[to], w.throttled[to]))
	}
	switch l.is {
	case OneWay, FeedPump:
		a := lower(&w.free[from], w.free[to])
		return lower(&w.throttled[from], w.throttled[to]) || a
	case Throttle:
		a := through(from, to)
		return through(to, from) || a
	case Relief:
		if s.spent[l.edge.ID] {
			return false
		}
		set := s.stands(l.edge)
		a := lower(&w.free[from], set+w.free[to])
		return lower(&w.throttled[from], set+w.throttled[to]) || a
	case Regulator:
		if !l.edge.Holds.Known {
			return through(from, to)
		}
		set := l.edge.Holds.Value
		a := lower(&w.free[from], set+w.free[to])
		return lower(&w.throttled[from], set+w.throttled[to]) || a
	case Recovery:
		return lower(&w.free[from], s.drivenAt(w, l))
	}
	return false
}

// comesBack reports whether water that was under pressure, from a relief, a throttle, a membrane or a
// pump, goes on to the inlet of a running positive pump at which feed pressure stands: it
// then stands on top of that.
func (s *solver) comesBack(links []link) bool {
	inlets := make([]bool, len(s.feed))
	some := false
	for _, l := range links {
		if l.is == PositivePump && s.feed[l.from] > 0 && !s.takes[l.from] {
			inlets[l.from], some = true, true
		}
	}
	if !some {
		return false
	}
	s.propagate(links, func(l link) bool {
		switch l.is {
		case OneWay, FeedPump, Relief, Regulator:
			return inlets[l.to] && !inlets[l.from] && set(&inlets[l.from])
		case Throttle:
			return inlets[l.to] != inlets[l.from] && set(&inlets[l.from]) && set(&inlets[l.to])
		}
		return false
	})
	for _, l := range links {
		switch l.is {
		case Relief, Regulator, PositivePump, Membrane:
			some = inlets[l.to]
		case Recovery:
			some = inlets[l.to] || inlets[l.waste]
		case Throttle:
			some = inlets[l.to] || inlets[l.from]
		default:
			some = false
		}
		if some {
			return true
		}
	}
	return false
}
