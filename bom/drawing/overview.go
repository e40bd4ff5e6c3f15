package drawing

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/pressure/quantity"
)

// Overview draws what is bought as equipment, and tees that branch; hoses and small
// fittings shrink into the line, which says the joints and the length of hose that it
// stands for. ok is false if the build has no such state.
func Overview(sys *bom.System, marks Marks, state string) (Panel, bool) {
	p, ok := newPlan(sys, marks, state)
	if !ok {
		return Panel{}, false
	}
	s := &Scheme{}
	at := map[*graph.Unit]int{}
	for _, u := range sys.Graph.Units {
		if !p.shrinks(u) {
			at[u] = len(s.Parts)
			s.Parts = append(s.Parts, p.part(u))
		}
	}
	done := map[*graph.Joint]bool{}
	for _, j := range sys.Graph.Joints {
		if done[j] {
			continue
		}
		s.stretch(p, j, at, done)
	}
	s.back()
	s.Title = fmt.Sprintf("Overview: %d of %d parts; hoses and small fittings stand in the lines", len(s.Parts), len(sys.Graph.Units))
	s.Desc = s.describe()
	return Panel{Name: "overview", Scheme: s}, true
}

// shrinks reports whether a unit is a small fitting or hose with a joint at either end.
func (p *plan) shrinks(u *graph.Unit) bool {
	if !u.Item.Kind.Is(catalog.InLine) || len(u.Item.Ports) != 2 {
		return false
	}
	return p.sys.Graph.Port(u, 0).Joint != nil && p.sys.Graph.Port(u, 1).Joint != nil
}

// stretch makes one link of a joint and all that follows it up to the next part drawn.
func (s *Scheme) stretch(p *plan, j *graph.Joint, at map[*graph.Unit]int, done map[*graph.Joint]bool) {
	first, last := j, j
	metres, mark, joints := 0.0, Mark{}, 0
	add := func(x *graph.Joint) {
		done[x] = true
		joints++
		if m := p.marks.Joints[x.Number]; m.Severity != NoMark {
			mark = gravest(mark, m)
		}
	}
	add(j)
	// from one end to the other; back to the start, at the latest, in a ring of fittings
	walk := func(port int) (int, *graph.Joint) {
		end := j
		for {
			u := p.sys.Graph.Ports[port].Unit
			if !p.shrinks(u) {
				return port, end
			}
			if u.Item.Length != nil {
				metres += u.Item.Length.Metres()
			}
			if m := p.marks.Units[u.Name]; m.Severity != NoMark {
				mark = gravest(mark, m)
			}
			far := u.First + 1 - p.sys.Graph.Ports[port].Index
			next := p.sys.Graph.Ports[far].Joint
			if done[next] {
				return -1, end
			}
			add(next)
			end = next
			port = next.A
			if next.A == far {
				port = next.B
			}
		}
	}
	a, endA := walk(j.A)
	b, endB := walk(j.B)
	if a < 0 || b < 0 {
		return
	}
	first, last = endA, endB
	l := p.link(first.Number-1, first)
	if joints > 1 {
		l.Name = fmt.Sprintf("J%d-%d", min(first.Number, last.Number), max(first.Number, last.Number))
		l.Size = ""
	}
	if metres > 0 {
		l.Along = quantity.Decimals(metres, 2) + " m"
	}
	l.Mark = mark
	l.From, l.To = at[p.sys.Graph.Ports[a].Unit], at[p.sys.Graph.Ports[b].Unit]
	l.FromSide, l.ToSide = lean(&p.sys.Graph.Ports[a]), lean(&p.sys.Graph.Ports[b])
	l.Still = p.still(&p.sys.Graph.Ports[a]) || p.still(&p.sys.Graph.Ports[b])
	s.Links = append(s.Links, l)
}
