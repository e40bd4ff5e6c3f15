package network

// suction marks zones that water reaches, and zones that a running pump draws from,
// itself or through a zone that it has emptied.
func (s *solver) suction(links []link) {
	for _, l := range links {
		if l.is == PositivePump || l.is == FeedPump {
			s.suctioned[l.from] = true
		}
	}
	s.propagate(links, func(l link) bool {
		return forward(l.is) && !s.supplied[l.to] && s.supplied[l.from] && set(&s.supplied[l.to])
	})
	s.outrun(links)
	s.propagate(links, func(l link) bool {
		starved := s.suctioned[l.to] && !s.supplied[l.to]
		return forward(l.is) && starved && !s.suctioned[l.from] && set(&s.suctioned[l.from])
	})
}

func forward(is Kind) bool {
	return is == OneWay || is == FeedPump || is == PositivePump || is == Throttle || is == Regulator || is == Recovery
}
