package rule

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/evidence"
)

// joints judges every joint once, for all the rules that speak of joints.
func joints(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, j := range s.Graph.Joints {
		if f, ok := judgeJoint(s, j); ok {
			f.Subject = ofJoint(s, j)
			f.Place = at(j.Mark)
			out = append(out, f)
		}
	}
	return out
}

func judgeJoint(s *bom.System, j *graph.Joint) (finding.Finding, bool) {
	load := s.States.PortLoad(j.A)
	high := s.Segments.SegmentOf(j.A).High()
	if !j.Known {
		return unsaid(s, j, high)
	}
	m := &j.Mating
	if m.Verdict.Holds() {
		return finding.Finding{}, false
	}
	f := finding.Finding{Severity: finding.Stop, Slug: m.Slug(), Cause: pairOf(s, j), Reason: named(s, j, m.Reason()), Remedy: m.Remedy()}
	if _, other, ok := strings.Cut(f.Remedy, "or another part: "); ok && onTheHull(s, j) {
		f.Remedy = "Do not force it. Buy another part, " + strings.TrimSuffix(other, ".") + ", and put nothing between a skin fitting and its valve."
	}
	if f.Slug == barbAndBoreDiffer.Slug {
		if hose, tail, fits := fitsElsewhere(s, j); fits {
			f.Remedy = fmt.Sprintf("Buy %s with an end for %s, not another hose: at its other end %s fits.", s.Graph.Ports[tail].Unit.Name, s.Graph.Ports[hose].Port.Words(), s.Graph.Ports[hose].Unit.Name)
		}
	}
	switch {
	case j.Open:
		f.Slug, f.NotKnown = endLeftOpen.Slug, true
		f.Severity = cautionUnless(high)
		f.Reason = fmt.Sprintf("the words leave it open what these ends are: %s with %s. At the worst reading: %s",
			s.Graph.Ports[j.A].Port.Words(), s.Graph.Ports[j.B].Port.Words(), m.Reason())
		f.Remedy = question(s, j)
		if wrongWhateverItIs(s, j) {
			f.NotKnown, f.Severity = false, finding.Stop
			f.Reason = "whatever these ends are of what their words leave open, it is wrong: " + strings.TrimPrefix(f.Reason, "the words leave it open what these ends are: ")
		}
	case m.Verdict == threads.LowPressureOnly:
		worst, _ := load.Worst()
		if m.Question() != "" {
			if worst <= m.Limit {
				return finding.Finding{}, false // it is asked, and holds either way at this pressure
			}
			f.NotKnown = true
		}
		f.Severity = cautionUnless(!evidence.Site{Worst: worst, Below: j.Run.Below}.Bears(m))
		f.Reason += fmt.Sprintf(" Limit %s; here at most %s%s.", bars(m.Limit), bars(worst), map[bool]string{true: ", below the waterline, where no joint stands that only may hold"}[j.Run.Below])
	}
	watched(s, j, &f)
	return f, true
}

// fitsElsewhere finds the hose of a joint whose other end is right: hose and tail are ports.
func fitsElsewhere(s *bom.System, j *graph.Joint) (hose, tail int, fits bool) {
	for _, side := range [2][2]int{{j.A, j.B}, {j.B, j.A}} {
		u := s.Graph.Ports[side[0]].Unit
		if !u.Item.IsHose() || s.Graph.Ports[side[1]].Unit.Item.IsHose() {
			continue
		}
		for _, other := range s.Graph.Joints {
			if other != j && (s.Graph.Ports[other.A].Unit == u || s.Graph.Ports[other.B].Unit == u) {
				return side[0], side[1], other.Known && !other.Open && other.Mating.Verdict.Holds()
			}
		}
	}
	return 0, 0, false
}

// onTheHull reports whether a joint is that of a skin fitting and the valve on it, below the waterline:
// one more thread there is one more that a knock breaks.
func onTheHull(s *bom.System, j *graph.Joint) bool {
	a, b := s.Graph.Ports[j.A].Unit, s.Graph.Ports[j.B].Unit
	hull := func(u *graph.Unit) bool { return u.Item.Kind.Is(catalog.SkinFitting) && !u.Item.Kind.Closable() }
	if hull(b) {
		a, b = b, a
	}
	return j.Run.Below && hull(a) && slices.ContainsFunc(b.Passages(), func(p catalog.Passage) bool { return p.Closable })
}

// pairOf names both ends of a joint, the same from either side: joints of one pair of ends
// have one fault.
func pairOf(s *bom.System, j *graph.Joint) string {
	a, b := s.Graph.Ports[j.A].Port.Words(), s.Graph.Ports[j.B].Port.Words()
	return min(a, b) + " with " + max(a, b)
}

func cautionUnless(stop bool) finding.Severity {
	if stop {
		return finding.Stop
	}
	return finding.Caution
}

// named puts both ends before a reason that does not name them itself.
func named(s *bom.System, j *graph.Joint, reason string) string {
	if strings.Contains(reason, j.Mating.A.String()) && strings.Contains(reason, j.Mating.B.String()) {
		return reason
	}
	return fmt.Sprintf("%s with %s: %s", s.Graph.Ports[j.A].Port.Words(), s.Graph.Ports[j.B].Port.Words(), reason)
}

// unsaid speaks of a joint whose ends are not both known. A pipe that is led into
// a drain or a tank without an end said is no joint to judge.
func unsaid(s *bom.System, j *graph.Joint, high bool) (finding.Finding, bool) {
	for _, p := range []int{j.A, j.B} {
		n := &s.Graph.Ports[p]
		if n.Unit.Item.Kind.Boats && !n.Port.Said && !n.Unit.Item.Kind.Is(catalog.Supplies) {
			return finding.Finding{}, false
		}
	}
	f := finding.Finding{Slug: endNotSaid.Slug, NotKnown: true, Severity: cautionUnless(high)}
	var write []string
	for _, p := range []int{j.A, j.B} {
		n := &s.Graph.Ports[p]
		if n.Port.Said && graph.Sized(n.Port.End) {
			continue
		}
		reason := fmt.Sprintf("nothing says what the end of %s is, so the joint is not judged.", n.Name())
		switch {
		case n.Port.End.Torn:
			reason = fmt.Sprintf("the words %q of the end of %s contradict each other, so the joint is not judged.", n.Port.Text, n.Name())
		case n.Port.Said && len(n.Port.End.Candidates) > 0:
			reason = fmt.Sprintf("the words %q give the end of %s no size, so the joint is not judged.", n.Port.Text, n.Name())
		case n.Port.Said:
			reason = fmt.Sprintf("the end of %s was seen in the words %q but not read, so the joint is not judged.", n.Name(), n.Port.Text)
		}
		f.Reason = cmp.Or(f.Reason, reason)
		if n.Unit.Item.IsHose() {
			write = append(write, fmt.Sprintf("ends = ['…', '…'] on the [[hose]] `%s`", n.Unit.Item.ID))
		} else {
			write = append(write, fmt.Sprintf("ports = { %s = '…' } on `%s`", n.Port.Name, n.Unit.Item.ID))
		}
	}
	f.Remedy = fmt.Sprintf("Ask the shop, or measure it, and write %s.", strings.Join(write, ", and "))
	return f, true
}

// question is the one that settles an open joint.
func question(s *bom.System, j *graph.Joint) string {
	for _, p := range []int{j.A, j.B} {
		if q := s.Graph.Ports[p].Port.End.Question; q != "" {
			return q
		}
	}
	return "Ask the shop which of the readings it is, and write that."
}

// bars writes a pressure for people.
func bars(p quantity.Pressure) string {
	if p.Unbounded() {
		return "no bound"
	}
	return p.String()
}
