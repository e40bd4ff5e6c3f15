package bom

import (
	"math"

	"handtight/catalog"
)

// hold notes what the reliefs hold feed pressure to.
func (s *solver) hold(links []link) {
	s.held = fill(len(s.out), math.Inf(1))
	for _, l := range links {
		if l.is == catalog.Relief && !math.IsInf(s.out[l.to], 1) {
			lower(&s.held[l.from], s.set(l.unit)+s.out[l.to])
		}
	}
}

// push sets the zones behind the pumps and the supplies, and hands on what they push.
// A pump pushes to the way out, and no further than its stall.
func (s *solver) push(links []link) bool {
	s.pos, s.feed = make([]float64, len(s.out)), make([]float64, len(s.out))
	for z, bar := range s.gives {
		s.feed[z] = s.given(bar, z)
	}
	for _, l := range links {
		if l.is != catalog.PositivePump {
			continue
		}
		p := s.out[l.to]
		if l.unit.Item.Stall != nil {
			p = min(p, l.unit.Item.Stall.Bar())
		}
		s.pos[l.to] = max(s.pos[l.to], p)
	}
	return s.settle(links, s.pass)
}

// head is what a feed pump adds.
func (l *link) head() float64 {
	if l.unit.Item.Shutoff == nil {
		return 0
	}
	return l.unit.Item.Shutoff.Bar()
}

// bound says what each zone can see at most where water goes round through a feed
// pump: each pump that reaches the zone counts once, and the strongest supply.
func (s *solver) bound(links []link) {
	heads, supplies := make([]float64, len(s.out)), make([]float64, len(s.out))
	for z, bar := range s.gives {
		if bar > 0 {
			s.reach(links, z, func(at int) { supplies[at] = max(supplies[at], bar) })
		}
	}
	for _, l := range links {
		if l.is == catalog.FeedPump {
			s.reach(links, l.to, func(at int) { heads[at] += l.head() })
		}
	}
	s.most = heads
	for z := range s.most {
		s.most[z] += supplies[z]
	}
}

// reach calls back once for every zone that feed pressure in a zone can come to.
func (s *solver) reach(links []link, from int, at func(zone int)) {
	reached := make([]bool, len(s.out))
	reached[from] = true
	s.settle(links, func(l link) bool {
		there := reached[l.from] && l.is != catalog.Relief && !reached[l.to] && set(&reached[l.to])
		return l.is == catalog.Throttle && reached[l.to] && !reached[l.from] && set(&reached[l.from]) || there
	})
	for z, yes := range reached {
		if yes {
			at(z)
		}
	}
}

// given is what of a feed pressure a zone takes: no more than its relief holds.
func (s *solver) given(bar float64, to int) float64 {
	if s.most != nil {
		bar = min(bar, s.most[to])
	}
	return min(bar, s.held[to])
}
