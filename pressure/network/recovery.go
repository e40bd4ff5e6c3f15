package network

import "math"

// recover lifts what drives an energy-recovery pump by the ratio of its rod: its high side
// stands at most at the driving pressure over that ratio, when its membrane passes nothing.
// Where its waste finds no way out it stops, and lets no more on than what drives it. Without
// a ratio nothing bounds it but what its high side finds a way out at.
func (s *solver) recover(links []link) {
	some := false
	for _, l := range links {
		if l.is != Recovery || math.IsInf(s.discharge[l.waste], 1) {
			continue
		}
		drives := s.highest(l.from)
		if drives <= 0 {
			continue
		}
		high := math.Inf(1)
		if l.edge.Ratio.Known && l.edge.Ratio.Value > 0 {
			high = drives / l.edge.Ratio.Value
		}
		some = raise(&s.pumped[l.to], min(high, s.discharge[l.to])) || some
	}
	if some {
		s.propagate(links, s.pass)
	}
}
