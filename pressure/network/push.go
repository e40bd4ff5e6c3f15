package network

import "handtight/pressure/quantity"

// holdFeed notes what the reliefs hold feed pressure to.
func (s *solver) holdFeed(links []link) {
	s.reliefCeiling = fill(len(s.discharge), quantity.NoBound())
	for _, l := range links {
		if l.is == Relief && !s.discharge[l.to].Unbounded() && !s.spent[l.edge.ID] && s.holdsFeed(l, links) {
			lower(&s.reliefCeiling[l.from], s.stands(l.edge)+s.discharge[l.to])
		}
	}
}

// push finds the ways out and what the pumps and the supplies push. A pump pushes to the
// way out, and no further than its stall. A relief that the feed opens lets it on, which
// may open another.
func (s *solver) push(links []link) {
	s.leave(links)
	s.holdFeed(links)
	s.opened = nil
	for again := true; again; again = s.openMore(links) {
		s.bound(links)
		s.give(links)
	}
}

// opensAt is what a relief or a regulator opens at; false for other links, and where it is not said.
func (l *link) opensAt() (set quantity.Pressure, ok bool) {
	switch {
	case l.is == Relief && l.edge.Set.Known:
		return l.edge.Set.Value, true
	case l.is == Regulator && l.edge.Holds.Known:
		return l.edge.Holds.Value, true
	}
	return 0, false
}

// openMore notes the reliefs and regulators that the feed pressure has opened; false if there are no more.
func (s *solver) openMore(links []link) bool {
	more := false
	for _, l := range links {
		if set, ok := l.opensAt(); ok && !s.opened[l.edge.ID] && s.feed[l.from] >= set {
			if s.opened == nil {
				s.opened = map[int]bool{}
			}
			s.opened[l.edge.ID], more = true, true
		}
	}
	return more
}

// give sets the zones behind the pumps and the supplies, and hands on what they push.
func (s *solver) give(links []link) {
	clear(s.pumped)
	clear(s.feed)
	for z, push := range s.gives {
		s.feed[z] = s.given(push, z)
	}
	for _, z := range s.looped {
		s.feed[z] = s.given(s.ceiling[z], z)
	}
	for _, l := range links {
		if l.is != PositivePump {
			continue
		}
		p := s.discharge[l.to]
		if l.edge.Stall.Known {
			p = min(p, l.edge.Stall.Value)
		}
		s.pumped[l.to] = max(s.pumped[l.to], p)
	}
	s.propagate(links, s.pass)
	s.recover(links)
}

// head is what a feed pump adds.
func (l *link) head() quantity.Pressure {
	if l.is != FeedPump || !l.edge.Shutoff.Known {
		return 0
	}
	return l.edge.Shutoff.Value
}

// given is what of a feed pressure a zone takes: no more than its relief holds.
func (s *solver) given(push quantity.Pressure, to int) quantity.Pressure {
	if s.ceiling != nil {
		push = min(push, s.ceiling[to])
	}
	return min(push, s.reliefCeiling[to])
}
