package rule

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/bom/rating"
	"handtight/bom/segment"
	"handtight/bom/state"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

var underRated = Rule{
	Slug:  "under-rated",
	Title: "A part sees more pressure than it holds.",
	Why: `The weakest part decides, and it decides in the worst state: not only in normal
running, but with a valve left shut. A cast fitting of class 150 holds 20.7 bar of
cold water and stands in shops beside others that look alike; a clamped hose holds
under 14. A person's act that overloads a part is a stop; a part's failure that does is
a caution, and a stop above the proof pressure.`,
	Wrong: `
[[hose]]
id = "hose"
spec = "SAE 100R6"   # 28 bar in this bore, and the duty is 56
bore = '3/8"'
length = "1 m"
ends = ['3/8 NPT male', '3/8 NPT female swivel']
`,
	mend:  []string{`spec = "SAE 100R6"   # 28 bar in this bore, and the duty is 56`, `spec = "SAE 100R8"   # 276 bar`},
	block: "hose",
	harm:  finding.Bursts,
	check: findUnderRated,
}

// findUnderRated looks at each unit once, at the port where it lacks most, and at
// each joint. What is too weak in normal running is its own fault and is reported for
// itself; what one act or failure overloads together is one report.
func findUnderRated(s *bom.System) []finding.Finding {
	var list []overload
	closed := closedProducts(s)
	for _, u := range s.Graph.Units {
		var worst *overload
		for i := range u.Item.Ports {
			p := u.First + i
			hold := s.Ratings.Port(p)
			o := overloaded(hold, s.States.PortLoad(p))
			if o == nil || worst != nil && o.lack() <= worst.lack() || reliefSaysIt(s, p, hold) || o.running() && closed(p) {
				continue
			}
			o.subject, o.mark, o.segment, o.unit = ofUnit(u), u.Mark, s.Segments.SegmentOf(p), u
			worst = o
		}
		if worst != nil {
			list = append(list, *worst)
		}
	}
	for _, j := range s.Graph.Joints {
		if o := overloaded(s.Ratings.Joint(j), s.States.PortLoad(j.A)); o != nil && !reliefSaysIt(s, j.A, o.hold) && !(o.running() && closed(j.A)) {
			if closing(o.hold) {
				o.severity = finding.Caution // the limit is a judgement
			}
			o.subject, o.mark, o.segment = ofJoint(s, j), j.Mark, s.Segments.SegmentOf(j.A)
			list = append(list, *o)
		}
	}
	var out []finding.Finding
	for _, group := range together(list) {
		out = append(out, weak(s, group))
	}
	return out
}

// overload is a unit or a joint that sees more than it holds.
type overload struct {
	hold     rating.Allowable
	load     *state.Load
	seen     quantity.Pressure
	state    *state.State
	severity finding.Severity
	subject  finding.Subject
	unit     *graph.Unit // nil for a joint
	mark     build.Mark
	segment  *segment.Segment
}

func (o *overload) holds() quantity.Pressure { return o.hold.Rating.Pressure }
func (o *overload) lack() quantity.Pressure  { return o.seen - o.holds() }

// running reports whether it is too weak in normal running already.
func (o *overload) running() bool { return o.load.Normal > o.holds()+pressure.Slack }

// gauge reports whether it is a gauge whose dial is known.
func (o *overload) gauge() bool { return o.unit != nil && o.unit.Item.Scale != nil && isGauge(o.unit) }

// overloaded compares what a part holds with what it sees; nil when it holds it, or
// when nothing is known.
func overloaded(hold rating.Allowable, load *state.Load) *overload {
	if !hold.Known {
		return nil
	}
	seen, state, severity := load.Act, load.ByAct, finding.Stop
	holds := hold.Rating.Pressure
	if seen-holds <= pressure.Slack {
		seen, state, severity = load.Fail, load.ByFail, finding.Caution
		if proof, ok := pressure.Proof(hold.Rating); ok && seen > proof {
			severity = finding.Stop
		}
	}
	if seen-holds <= pressure.Slack || state == nil {
		return nil
	}
	return &overload{hold: hold, load: load, seen: seen, state: state, severity: severity}
}

// together groups what one state overloads in one segment, the weakest first. A gauge is one
// to itself: it is bought by its dial too.
func together(list []overload) [][]overload {
	var groups [][]overload
	for _, o := range list {
		i := slices.IndexFunc(groups, func(g []overload) bool {
			first := &g[0]
			return !o.running() && !first.running() && !o.gauge() && !first.gauge() && first.state == o.state && first.severity == o.severity && first.segment == o.segment
		})
		if i < 0 {
			groups = append(groups, []overload{o})
			continue
		}
		groups[i] = append(groups[i], o)
	}
	for _, g := range groups {
		slices.SortStableFunc(g, func(a, b overload) int { return cmp.Compare(a.holds(), b.holds()) })
	}
	return groups
}

// weak writes the finding for a group: it is placed at the weakest.
func weak(s *bom.System, group []overload) finding.Finding {
	o := &group[0]
	f := finding.Finding{Severity: o.severity, Subject: o.subject, Place: at(o.mark)}
	f.Reason = fmt.Sprintf("%s holds %s (%s) and sees %s: %s.", o.hold.What, bars(o.holds()), basis(o.hold), bars(o.seen), o.state.Cause)
	if o.running() {
		f.Reason = fmt.Sprintf("%s holds %s (%s) and sees %s in normal running", o.hold.What, bars(o.holds()), basis(o.hold), bars(o.load.Normal))
		if o.seen > o.load.Normal+pressure.Slack {
			f.Reason += fmt.Sprintf(", up to %s with %s", bars(o.seen), o.state.Cause)
		}
		f.Reason += "."
	}
	if duty := s.Build.Duty.Pressure; duty != nil && o.castClass() {
		f.Reason += " " + pressure.CastClassTrap(*duty)
	}
	if len(group) > 1 {
		f.Subject.Segment = o.segment.Name
		f.Reason += fmt.Sprintf(" It overloads as well: %s.", others(group[1:], &f))
	}
	f.Remedy = remedyFor(s, group)
	return f
}

// others lists the further members of a group with what each holds, and notes their
// places.
func others(group []overload, f *finding.Finding) string {
	var out []string
	for i := range group {
		out = append(out, fmt.Sprintf("%s (%s)", group[i].hold.What, bars(group[i].holds())))
		f.Also, f.Related = append(f.Also, group[i].subject), append(f.Related, at(group[i].mark))
	}
	return strings.Join(out, ", ")
}

// basis says where a rating comes from, and what lowered it; of a data sheet that nothing
// lowered the figure is said already.
func basis(h rating.Allowable) string {
	word := h.Rating.Basis.String()
	switch {
	case !strings.HasPrefix(h.Rating.Text, word):
		return word + ": " + h.Rating.Text
	case h.Derated:
		return h.Rating.Text
	}
	return word
}

// reliefSaysIt reports whether the part is overloaded only because the relief is set
// above it, which is found by its own rule.
func reliefSaysIt(s *bom.System, port int, hold rating.Allowable) bool {
	g := s.Segments.SegmentOf(port)
	for _, u := range g.Units {
		if u.Item.Set != nil && *u.Item.Set > hold.Rating.Pressure && s.Segments.SegmentOf(u.First) == g && g.Load.Normal <= hold.Rating.Pressure {
			return true
		}
	}
	return false
}
