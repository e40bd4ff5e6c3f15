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

// push finds the ways out and what the pumps and the supplies push. A pump pushes to the
// way out, and no further than its stall. A relief that the feed opens lets it on, which
// may open another.
func (s *solver) push(links []link) {
	s.leave(links)
	s.hold(links)
	s.lifted = nil
	for again := true; again; again = s.liftMore(links) {
		s.bound(links)
		s.give(links)
	}
}

// liftMore notes the reliefs that the feed pressure has opened; false if there are no more.
func (s *solver) liftMore(links []link) bool {
	more := false
	for _, l := range links {
		if set := l.unit.Item.Set; l.is == catalog.Relief && set != nil && !s.lifted[l.edge] && s.feed[l.from] >= set.Bar() {
			if s.lifted == nil {
				s.lifted = map[int]bool{}
			}
			s.lifted[l.edge], more = true, true
		}
	}
	return more
}

// give sets the zones behind the pumps and the supplies, and hands on what they push.
func (s *solver) give(links []link) {
	clear(s.pos)
	clear(s.feed)
	for z, bar := range s.gives {
		s.feed[z] = s.given(bar, z)
	}
	for _, z := range s.round {
		s.feed[z] = s.given(s.most[z], z)
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
	s.settle(links, s.pass)
}

// head is what a feed pump adds.
func (l *link) head() float64 {
	if l.is != catalog.FeedPump || l.unit.Item.Shutoff == nil {
		return 0
	}
	return l.unit.Item.Shutoff.Bar()
}

// given is what of a feed pressure a zone takes: no more than its relief holds.
func (s *solver) given(bar float64, to int) float64 {
	if s.most != nil {
		bar = min(bar, s.most[to])
	}
	return min(bar, s.held[to])
}
