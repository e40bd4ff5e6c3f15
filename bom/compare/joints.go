package compare

import (
	"handtight/bom"
	"handtight/bom/graph"
)

// joints compares the joints between units that both builds have, in their order.
func (c *comparer) joints() {
	pair := func(a, b *graph.Unit) [2]*graph.Unit {
		if b.First < a.First {
			a, b = b, a
		}
		return [2]*graph.Unit{a, b}
	}
	was := map[[2]*graph.Unit][]*graph.Joint{}
	for _, j := range c.old.Graph.Joints {
		a, b := c.to[c.old.Graph.Ports[j.A].Unit], c.to[c.old.Graph.Ports[j.B].Unit]
		if a != nil && b != nil {
			was[pair(a, b)] = append(was[pair(a, b)], j)
		}
	}
	for _, j := range c.new.Graph.Joints {
		k := pair(c.new.Graph.Ports[j.A].Unit, c.new.Graph.Ports[j.B].Unit)
		row := Joint{New: c.new.Graph.JointName(j), Number: j.Number, NewVerdict: verdict(j)}
		if len(was[k]) == 0 {
			if row.Worse = !j.Known || !j.Mating.Verdict.Holds(); row.Worse && !boats(c.new, j) {
				c.report.Joints = append(c.report.Joints, row)
			}
			continue
		}
		o := was[k][0]
		was[k] = was[k][1:]
		row.Old, row.OldVerdict, row.Worse = c.old.Graph.JointName(o), verdict(o), worse(o, j)
		if row.OldVerdict != row.NewVerdict {
			c.report.Joints = append(c.report.Joints, row)
		}
	}
}

// boats reports whether a joint is a pipe led into the boat's own without an end said,
// which is no joint to judge.
func boats(s *bom.System, j *graph.Joint) bool {
	for _, p := range []int{j.A, j.B} {
		if n := &s.Graph.Ports[p]; !j.Known && n.Unit.Item.Kind.Boats && !n.Port.Said {
			return true
		}
	}
	return false
}

func verdict(j *graph.Joint) string {
	if !j.Known {
		return "not judged"
	}
	return j.Mating.Verdict.String()
}

// worse reports whether a joint became worse; two that close are equally good.
func worse(old, now *graph.Joint) bool {
	switch {
	case !now.Known:
		return old.Known
	case now.Mating.Verdict.Holds():
		return false
	case !old.Known || old.Mating.Verdict.Holds():
		return true
	}
	return now.Mating.Verdict.Worse(old.Mating.Verdict)
}
