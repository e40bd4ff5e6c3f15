package cart

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// spoil is a joint that a line's end would spoil.
type spoil struct {
	joint      *graph.Joint
	mating     threads.Mating
	sameFamily bool
	more       int
}

// spoiled finds the first joint that does not hold with the line's ends in place of
// the planned ones.
func (j *judge) spoiled(l *Line, m *match) *spoil {
	var first *spoil
	if m.need.Item == nil {
		return nil
	}
	for _, u := range j.units[m.need.Item] {
		said := -1
		for p := range u.Item.Ports {
			node := &j.sys.Graph.Ports[u.First+p]
			if !node.Port.Said || len(node.Port.End.Candidates) == 0 {
				continue
			}
			said++
			end, ok := l.endAt(m, said)
			if node.Joint == nil || !ok {
				continue
			}
			if same(end.Candidates, node.Port.End.Candidates) || l.leavesOpen(m, said) {
				continue
			}
			mating, _ := threads.Worst(asPlanned(l, end, node.Port.End), j.across(node).Port.End)
			if mating.Verdict == 0 || mating.Verdict.Holds() || !worse(mating, node.Joint) {
				continue
			}
			if first != nil {
				first.more++
				continue
			}
			planned, got := node.Port.End.Candidates[0], end.Candidates[0]
			first = &spoil{joint: node.Joint, mating: mating, sameFamily: got.Family == planned.Family && (got.Sex == planned.Sex || !got.Family.Threaded())}
		}
	}
	return first
}

// same reports whether two ends are one.
func same(a, b []threads.End) bool { return len(a) == 1 && len(b) == 1 && a[0] == b[0] }

// asPlanned gives an end what the planned one has and a line seldom says: a plastic thread
// where no other material is named, a long tail, a seat.
func asPlanned(l *Line, end, plan threads.EndReading) threads.EndReading {
	out := end
	out.Candidates = slices.Clone(end.Candidates)
	want := &plan.Candidates[0]
	for i := range out.Candidates {
		c := &out.Candidates[i]
		if l.facts.material == "" && c.Family == want.Family {
			c.Plastic = want.Plastic
		}
		if c.Family == want.Family && c.Seal == threads.NoSeal {
			c.Seal = want.Seal
		}
		c.Long = c.Long || want.Long
	}
	return out
}

// leavesOpen reports whether the words leave an end open, with the planned one among what
// it may be: that is asked about, or the code decides it.
func (l *Line) leavesOpen(m *match, at int) bool {
	k := m.end(at)
	return k >= 0 && k < len(l.facts.ends) && at < len(m.need.facts.ends) && fitEnd(&l.facts.ends[k], &m.need.facts.ends[at]) == fitOpen
}

// endAt gives the line's end in place of one of the item's: that which was laid on it,
// or the bore of a hose, which is at both its ends.
func (l *Line) endAt(m *match, at int) (threads.EndReading, bool) {
	if isA(m.need.facts.kind, catalog.HoseStock) {
		if !m.differs.has(inBore) {
			return threads.EndReading{}, false
		}
		d := threads.Length(l.facts.bore)
		return threads.EndReading{Candidates: []threads.End{{Family: threads.Bore, Size: quantity.Significant(float64(l.facts.bore), 4) + " mm", Diameter: d}}}, l.facts.bore > 0
	}
	k := m.end(at)
	if k < 0 || k >= len(l.facts.ends) || len(l.facts.ends[k].readings) == 0 {
		return threads.EndReading{}, false
	}
	return threads.EndReading{Candidates: l.facts.ends[k].readings}, true
}

// worse reports whether a mating is worse than what the joint has by plan.
func worse(m threads.Mating, joint *graph.Joint) bool {
	return !joint.Known || m.Verdict != joint.Mating.Verdict && m.Verdict.Worse(joint.Mating.Verdict)
}

// across gives the port on the other side of a joint.
func (j *judge) across(node *graph.Port) *graph.Port {
	a, b := &j.sys.Graph.Ports[node.Joint.A], &j.sys.Graph.Ports[node.Joint.B]
	if a == node {
		return b
	}
	return a
}

// differs tells the first end that is not the planned one.
func (j *judge) differs(l *Line, m *match) string {
	if isA(m.need.facts.kind, catalog.HoseStock) {
		return fmt.Sprintf("its bore is %s in place of %s", l.facts.bore, m.need.facts.bore)
	}
	for i := range m.need.facts.ends {
		planned, k := &m.need.facts.ends[i], m.end(i)
		if k < 0 || len(l.facts.ends[k].readings) == 0 || fitEnd(&l.facts.ends[k], planned) < fitNear {
			continue
		}
		return fmt.Sprintf("%s in place of %s", openText(l.facts.ends[k].readings), openText(planned.readings))
	}
	var ends []string
	for _, e := range l.facts.ends {
		if len(e.readings) > 0 {
			ends = append(ends, openText(e.readings))
		}
	}
	return "the line says " + strings.Join(ends, " and ")
}
