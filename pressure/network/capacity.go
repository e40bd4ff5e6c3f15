package network

import "handtight/pressure/quantity"

// Ways out that pass no more than their capacity. Those of a zone open in the order of what
// they stand at; the pressure climbs to the first that passes, with all before it, the whole
// flow of the pumps that push there. What has no stated capacity is taken to pass it all, and
// so is everything where the flow of one of those pumps is not stated: then nobody can say
// that it does not.

// capacity is what a link passes as a way out: a relief what it says, the inlet of a positive
// pump what the pump delivers.
func (l *link) capacity() Figure[quantity.Flow] {
	switch l.is {
	case Relief:
		return l.edge.Capacity
	case PositivePump:
		return l.edge.Flow
	}
	return Figure[quantity.Flow]{}
}

// spend marks, of the ways out that rule where they stand and do not pass the flow, the one that
// stands lowest: the pressure climbs from one to the next, and one that stands higher may pass
// the rest. False if there is none.
func (s *solver) spend(links []link) bool {
	pushes := s.pushed(links)
	lowest, at := -1, quantity.NoBound()
	for _, l := range links {
		capacity := l.capacity()
		if !capacity.Known || s.spent[l.edge.ID] {
			continue
		}
		opens, rules := s.rules(l)
		if !rules || opens >= at {
			continue
		}
		flow, known := flowTo(pushes, l.from)
		if !known || flow == 0 {
			continue
		}
		passes := capacity.Value
		for _, o := range links {
			if s.spent[o.edge.ID] && alike(pushes, o.from, l.from) {
				passes += o.capacity().Value
			}
		}
		if float64(passes) < float64(flow)*(1-flowSlack) {
			lowest, at = l.edge.ID, opens
		}
	}
	if lowest < 0 {
		return false
	}
	if s.spent == nil {
		s.spent = map[int]bool{}
	}
	s.spent[lowest] = true
	return true
}

// flowSlack is the share of a flow that is taken for nothing: it comes of turning one unit
// into another.
const flowSlack = 1e-9

// pressureSlack is the difference of two pressures that comes of adding the same ones up in another order.
const pressureSlack = 1e-4 * quantity.Pascal

// rules reports whether the zone of a link finds its way out by it, and where that stands.
func (s *solver) rules(l link) (at quantity.Pressure, ok bool) {
	at = s.feed[l.from]
	switch {
	case l.is == Relief:
		at = s.stands(l.edge) + s.discharge[l.to]
	case s.takes[l.from]:
		return at, false
	}
	return at, !at.Unbounded() && at <= s.discharge[l.from]+pressureSlack
}

// reach is where a positive pump pushes water, or a side of an energy-recovery pump.
type reach struct {
	flow   Figure[quantity.Flow]
	zones  []bool
	beside []bool // without going through a relief: ways out here stand beside each other
}

// pushed says of each positive pump to which zones it pushes water: through what lets it on, an
// opened relief too, and not through another pump. An energy-recovery pump pushes on what comes
// to it: the rod's share to its high side and the rest to its waste, or all of it to its high
// side where its piston stands still.
func (s *solver) pushed(links []link) []reach {
	var out []reach
	to := func(zone int, flow Figure[quantity.Flow]) {
		out = append(out, reach{flow, s.spread(links, zone, true), s.spread(links, zone, false)})
	}
	var driven []link
	for _, l := range links {
		switch l.is {
		case PositivePump:
			to(l.to, l.edge.Flow)
		case Recovery:
			driven = append(driven, l)
		}
	}
	pumps := len(out)
	comes := make([]Figure[quantity.Flow], len(driven))
	for range driven { // one may drive another
		for i, l := range driven {
			comes[i] = s.drivenBy(out, links, l)
		}
		out = out[:pumps]
		for i, l := range driven {
			high, waste := comes[i], Figure[quantity.Flow]{Known: comes[i].Known}
			if r, ok := l.ratio(); ok && s.moves(l) {
				high.Value, waste.Value = quantity.Flow(r)*high.Value, quantity.Flow(1-r)*high.Value
			}
			to(l.to, high)
			if waste.Value > 0 {
				to(l.waste, waste)
			}
		}
	}
	return out
}

// drivenBy is the flow that comes to an energy-recovery pump.
func (s *solver) drivenBy(pushes []reach, links []link, l link) Figure[quantity.Flow] {
	flow, known := flowTo(pushes, l.from)
	feed, ok := s.feedTo(l, links, false)
	return Figure[quantity.Flow]{Value: flow + feed, Known: known && ok}
}

// spread marks the zones that water comes to from one, through reliefs too or not.
func (s *solver) spread(links []link, from int, reliefs bool) []bool {
	zones := make([]bool, len(s.feed))
	zones[from] = true
	s.propagate(links, func(l link) bool {
		switch {
		case l.is == OneWay, l.is == FeedPump, l.is == Regulator, l.is == Relief && reliefs:
			return zones[l.from] && !zones[l.to] && set(&zones[l.to])
		case l.is == Throttle:
			return zones[l.from] != zones[l.to] && set(&zones[l.from]) && set(&zones[l.to])
		}
		return false
	})
	return zones
}

// flowTo is what all pumps that push to a zone deliver; known is false where one of them does
// not say.
func flowTo(pushes []reach, zone int) (sum quantity.Flow, known bool) {
	known = true
	for _, r := range pushes {
		if r.zones[zone] {
			sum += r.flow.Value
			known = known && r.flow.Known
		}
	}
	return sum, known
}

// alike reports whether some pump pushes to both zones, so that what leaves at one need not
// leave at the other.
func alike(pushes []reach, a, b int) bool {
	for _, r := range pushes {
		if r.beside[a] && r.beside[b] {
			return true
		}
	}
	return false
}

// holdsFeed reports whether a relief passes what the feed pumps next before it deliver
// together; it is taken to where either is not said.
func (s *solver) holdsFeed(relief link, links []link) bool {
	if !relief.edge.Capacity.Known {
		return true
	}
	flow, known := s.feedTo(relief, links, true)
	return !known || float64(relief.edge.Capacity.Value) >= float64(flow)*(1-flowSlack)
}

// feedTo is what the feed pumps next before a link deliver together, those also that feed another
// pump before it or not; known is false where one of them does not say.
func (s *solver) feedTo(to link, links []link, through bool) (flow quantity.Flow, known bool) {
	before := make([]bool, len(s.feed))
	before[to.from] = true
	s.propagate(links, func(l link) bool {
		switch l.is {
		case PositivePump, Recovery:
			return through && before[l.to] && !before[l.from] && set(&before[l.from])
		case OneWay, Regulator, Relief:
			return l.edge.ID != to.edge.ID && before[l.to] && !before[l.from] && set(&before[l.from])
		case Throttle:
			return before[l.from] != before[l.to] && set(&before[l.from]) && set(&before[l.to])
		}
		return false
	})
	known = true
	for _, l := range links {
		if l.is == FeedPump && before[l.to] {
			flow += l.edge.Flow.Value
			known = known && l.edge.Flow.Known
		}
	}
	return flow, known
}

// outrun marks zones that positive pumps draw more from than other positive pumps, which
// alone bring water there, deliver: they stand at a vacuum.
func (s *solver) outrun(links []link) {
	for zone, drawn := range s.suctioned {
		if !drawn || !s.supplied[zone] {
			continue
		}
		var comes, goes quantity.Flow
		known := true
		for _, l := range links {
			switch {
			case l.is == PositivePump && l.from == zone:
				goes += l.edge.Flow.Value
				known = known && l.edge.Flow.Known
			case l.is == PositivePump && l.to == zone && s.supplied[l.from]:
				comes += l.edge.Flow.Value
				known = known && l.edge.Flow.Known
			case forward(l.is) && l.to == zone && s.supplied[l.from], l.is == Throttle && l.from == zone:
				known = false // more may come
			}
		}
		if known && comes > 0 && float64(comes) < float64(goes)*(1-flowSlack) {
			s.supplied[zone] = s.sources[zone]
		}
	}
}
