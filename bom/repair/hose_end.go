package repair

import (
	"cmp"
	"fmt"
	"slices"

	"handtight/bom"
	"handtight/bom/graph"
	"handtight/catalog/stock"
	"handtight/threads"
)

// otherEnds lists the ends that a hose could be made up with at a joint, so that it closes with what
// stays. A hose that is aboard, or of which several are placed, stays as it is.
func otherEnds(sys *bom.System, j *graph.Joint, port int, o Options) []Remedy {
	n := &sys.Graph.Ports[port]
	it := n.Unit.Item
	if !it.IsHose() || it.Of != "" || it.Have > 0 || !n.Port.Said || placed(sys, it) != 1 {
		return nil
	}
	stays := sys.Graph.Ports[j.A+j.B-port].Port.End
	closes := func(e threads.End) bool {
		return len(stays.Candidates) > 0 && !slices.ContainsFunc(stays.Candidates, func(c threads.End) bool {
			m := threads.Mate(e, c)
			return !m.Verdict.Holds()
		})
	}
	var out []Remedy
	seen := map[string]bool{}
	for _, s := range stock.Items() {
		if s.Rule != crimped || seen[s.Texts[0]] || !closes(s.Ends[0]) || s.Ends[0].Size != n.Port.End.Candidates[0].Size {
			continue
		}
		seen[s.Texts[0]] = true
		out = append(out, Remedy{Do: "change", At: n.Unit.Name, Unit: n.Unit, Joint: j, End: s, Port: n.Index, Before: 1, Joints: 1, Needs: o.Pressure,
			Why: fmt.Sprintf("%s is made up with an end that fits", n.Unit.Name)})
	}
	return out
}

// crimped is the rule of the stock that makes the ends of made-up hoses.
const crimped = "S16"

// HoseEnds are the two ends of the hose that is changed, quoted as a build file has them.
func (r *Remedy) HoseEnds() []string {
	var out []string
	for i := range r.Unit.Item.Ports {
		text := cmp.Or(r.Unit.Item.Ports[i].Text, r.Unit.Item.Ports[i].Words())
		if i == r.Port {
			text = r.End.Texts[0]
		}
		out = append(out, "'"+text+"'")
	}
	return out
}
