package rule

import (
	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/bom/state"
	"handtight/pressure/quantity"
)

func ofUnit(u *graph.Unit) finding.Subject {
	return finding.Subject{Kind: finding.Unit, Unit: u.Name}
}

func ofUnits(list []*graph.Unit) []finding.Subject {
	var out []finding.Subject
	for _, u := range list {
		out = append(out, ofUnit(u))
	}
	return out
}

func ofItem(it *build.Item) finding.Subject {
	return finding.Subject{Kind: finding.Item, Item: it.ID}
}

func ofPort(n *graph.Port) finding.Subject {
	return finding.Subject{Kind: finding.Port, Unit: n.Unit.Name, Port: n.Port.Name}
}

func ofJoint(s *bom.System, j *graph.Joint) finding.Subject {
	a, b := &s.Graph.Ports[j.A], &s.Graph.Ports[j.B]
	return finding.Subject{Kind: finding.Joint, Joint: j.Number, Unit: a.Unit.Name, Port: a.Port.Name, Unit2: b.Unit.Name, Port2: b.Port.Name}
}

func ofState(st *state.State) finding.Subject {
	x := finding.Subject{Kind: finding.State, State: st.Name}
	if st.Unit != nil {
		x.Unit = st.Unit.Name
	}
	return x
}

// portsOf lists the ports that a subject speaks of; none where it stands nowhere.
func portsOf(s *bom.System, x finding.Subject) []int {
	if x.Kind == finding.Joint {
		j := s.Graph.Joints[x.Joint-1]
		return []int{j.A, j.B}
	}
	u, ok := s.Graph.Unit(x.Unit)
	if !ok || x.Kind != finding.Unit && x.Kind != finding.Port {
		return nil
	}
	if i := u.Item.PortIndex(x.Port); x.Kind == finding.Port && i >= 0 {
		return []int{u.First + i}
	}
	var out []int
	for i := range u.Item.Ports {
		out = append(out, u.First+i)
	}
	return out
}

// stake is the highest pressure that a subject sees; of a state the highest in it.
func stake(s *bom.System, x finding.Subject) finding.Stake {
	var out finding.Stake
	add := func(p quantity.Pressure) {
		if !out.Known || p > out.Pressure {
			out = finding.Stake{Pressure: p, Known: true}
		}
	}
	for _, p := range portsOf(s, x) {
		if worst, by := s.States.PortLoad(p).Worst(); by != nil {
			add(worst)
		}
	}
	if x.Kind == finding.State {
		for _, st := range s.States.All {
			for _, j := range s.Graph.Joints {
				if st.Name != x.State {
					break
				}
				if high, _, ok := s.States.Pressure(st, j.A); ok {
					add(high)
				}
			}
		}
	}
	return out
}

// harmAt is what comes of a bad joint where a subject stands: below the waterline the sea
// comes in, high pressure lets go, and the rest leaks.
func harmAt(s *bom.System, x finding.Subject) finding.Consequence {
	high := false
	for _, p := range portsOf(s, x) {
		if j := s.Graph.Ports[p].Joint; j != nil && j.Run.Below {
			return finding.Floods
		}
		high = high || s.Segments.SegmentOf(p).High()
	}
	if high {
		return finding.LetsGo
	}
	return finding.Leaks
}
