package rule

import (
	"fmt"
	"time"

	"handtight/bom"
	"handtight/bom/audit"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/threads/evidence"
)

// standing are the joints that stand and of which something is known, as an audit judges them
// on the day that the build itself names.
func standing(s *bom.System) []*audit.Joint {
	var out []*audit.Joint
	day, _ := audit.Day(s.Build)
	for _, j := range s.Graph.Joints {
		if j.Note != nil || s.Graph.Ports[j.A].Note != nil || s.Graph.Ports[j.B].Note != nil {
			out = append(out, audit.Judge(s, j, day))
		}
	}
	return out
}

// ofStanding makes the finding of a joint that stands.
func ofStanding(s *bom.System, x *audit.Joint, severity finding.Severity, reason, remedy string) finding.Finding {
	place := at(x.Joint.Mark)
	if x.Joint.Note != nil {
		place = at(x.Joint.Note.Place)
	}
	return finding.Finding{Severity: severity, Subject: ofJoint(s, x.Joint), Place: place, Reason: reason, Remedy: remedy}
}

// grave is a stop where a bad joint floods or lets go, else a caution.
func grave(x *audit.Joint) finding.Severity { return cautionUnless(x.High || x.Below) }

// watched lowers the stop of a wrong pair that may be left and watched: dry for a time, at low
// pressure, above the waterline.
func watched(s *bom.System, j *graph.Joint, f *finding.Finding) {
	if j.Note == nil || f.Severity != finding.Stop || f.NotKnown {
		return
	}
	day, _ := audit.Day(s.Build)
	x := audit.Judge(s, j, day)
	if x.Section != audit.Watch {
		return
	}
	f.Severity = finding.Caution
	f.Reason += fmt.Sprintf(" It has been dry since %s, at no more than %s and above the waterline: it may be left and watched.", j.Note.DrySince.Text, bars(x.Worst))
	until := "at each start"
	if !x.Look.IsZero() {
		until = "by " + x.Look.Format(time.DateOnly)
	}
	f.Remedy = fmt.Sprintf("Look at it again %s, where it can be seen; when it weeps: %s", until, f.Remedy)
}

// wrongWhateverItIs reports whether every reading of an open joint that is reckoned with is wrong
// where it stands: then it is known to be wrong, and not only not known.
func wrongWhateverItIs(s *bom.System, j *graph.Joint) bool {
	fit := j.Fit
	if fit == nil {
		made, ok := s.Graph.FitOf(j, false)
		if !ok {
			return false
		}
		fit = &made
	}
	if fit.NothingFits() {
		return false
	}
	worst, _ := s.States.PortLoad(j.A).Worst()
	for i := range fit.Pairs {
		m := &fit.Pairs[i].Mating
		if fit.Pairs[i].Probability < evidence.Reckoned() {
			continue
		}
		if m.Question() != "" || (evidence.Site{Worst: worst, Below: j.Run.Below}).Bears(m) {
			return false
		}
	}
	return len(fit.Pairs) > 0
}
