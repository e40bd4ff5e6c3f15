package draft

import (
	"fmt"
	"slices"

	"handtight/bom/draft/assign"
	"handtight/pressure/quantity"
)

// misfit tells why a piece that nothing takes stands in no place: it is kept out of all of
// them, or it is like what is missing in one, and its end or its make is another.
func (s *solved) misfit(p *Part, r *router) (why, at string) {
	k := slices.IndexFunc(s.classes, func(c class) bool { return slices.Contains(c.parts, p) })
	if k < 0 {
		return "", ""
	}
	c := &s.classes[k]
	for i := range s.places {
		for _, gap := range s.gaps(i) {
			if why := s.against(i, c, gap, r.p); why != "" {
				return why, s.where(i)
			}
		}
	}
	return s.refused[c.parts[0]], ""
}

// against tells why a class does not fill a gap that it nearly fills: all of it fits but one
// end, or it is kept out of the place.
func (s *solved) against(place int, c *class, gap [2]int, p pressures) string {
	for in, a := range c.ends {
		for out, b := range c.ends {
			if in == out {
				continue
			}
			left, right := s.joinsAt(place, a, gap[0]) != assign.No, s.joinsAt(place, b, gap[1]) != assign.No
			switch {
			case left && right:
				if _, why := gradeOf(c.parts[0], s.places[place].line, s.needOf(place, p)); why != "" {
					return why
				}
			case left && s.alike(b, gap[1]):
				return fmt.Sprintf("its %s does not join %s", s.endWords(b), s.endWords(gap[1]))
			case right && s.alike(a, gap[0]):
				return fmt.Sprintf("its %s does not join %s", s.endWords(a), s.endWords(gap[0]))
			}
		}
	}
	return ""
}

// alike reports whether two ends are of one sort, thread or hose, so that one is likely to have
// been meant for the other.
func (s *solved) alike(a, b int) bool {
	x, y := &s.ends.list[a], &s.ends.list[b]
	if len(x.readings) == 0 || len(y.readings) == 0 {
		return false
	}
	return x.readings[0].Family.Threaded() == y.readings[0].Family.Threaded()
}

// needOf is the pressure that a place is judged at.
func (s *solved) needOf(place int, p pressures) quantity.Pressure {
	if s.places[place].line.Pressure == "high" {
		return p.high
	}
	return p.low
}

// gaps lists the pairs of ends of a place between which something is to buy.
func (s *solved) gaps(i int) [][2]int {
	m, p := &s.answer.Places[i], &s.problem.Places[i]
	open := p.From
	if m.Host >= 0 {
		st := s.answer.Places[m.Host].Chain[m.HostAt]
		open = s.classes[st.Class].ends[m.Side]
	}
	var out [][2]int
	if !m.OK {
		if open >= 0 {
			out = append(out, [2]int{open, p.To})
		}
		return out
	}
	for _, st := range m.Chain {
		if st.Buy > 0 {
			out = append(out, [2]int{open, s.classes[st.Class].ends[st.In]})
		}
		open = s.classes[st.Class].ends[st.Out]
	}
	if m.Buy > 0 {
		out = append(out, [2]int{open, p.To})
	}
	return out
}
