package facts

import (
	"math"

	"handtight/bom"
	"handtight/bom/graph"
	"handtight/bom/joint"
	"handtight/pressure"
	"handtight/threads"
)

// Joint is two ports that meet, as the make-up card has it.
type Joint struct {
	Number    int     `json:"number"` // also written on a tag
	A         string  `json:"a"`
	B         string  `json:"b"`
	EndA      string  `json:"end_a"`
	EndB      string  `json:"end_b"`
	Verdict   *string `json:"verdict"` // null where an end is not known
	Worst     Number  `json:"worst_bar"`
	Unbounded bool    `json:"unbounded,omitempty"`
	Makeup    string  `json:"makeup"` // "" where it does not hold
	Care      string  `json:"care,omitempty"`
	Thread    Number  `json:"thread_bar"`      // what its threads bear; null without threads
	Estimate  bool    `json:"thread_estimate"` // that figure is an estimate, which it always is; false without one
	Run       string  `json:"run"`
	Reason    string  `json:"reason"`
	Remedy    string  `json:"remedy"` // "" where it holds, or is not judged
	Turns     *Turns  `json:"hand_turns"`
	Below     bool    `json:"below_waterline"`
}

// Turns is how many turns by hand a joint takes: at the loosest and the tightest parts. One
// that is null never comes to it: the loosest may run free where the tightest bind.
type Turns struct {
	Loosest  Number `json:"loosest"`
	Tightest Number `json:"tightest"`
}

// TurnsOf is nil where the turns do not exist.
func TurnsOf(s threads.Span) *Turns {
	finite := func(v float64) Number { return Number{v, !math.IsInf(v, 0) && !math.IsNaN(v)} }
	t := Turns{finite(float64(s.Loosest)), finite(float64(s.Tightest))}
	if !s.Known || !t.Loosest.Known && !t.Tightest.Known {
		return nil
	}
	return &t
}

func jointOf(sys *bom.System, j *graph.Joint) Joint {
	a, b := &sys.Graph.Ports[j.A], &sys.Graph.Ports[j.B]
	worst, _ := sys.States.PortLoad(j.A).Worst()
	row := Joint{
		Number: j.Number, A: a.Name(), B: b.Name(), EndA: a.Port.Words(), EndB: b.Port.Words(),
		Worst: bars(worst), Unbounded: worst.Unbounded(), Makeup: joint.MakeupText(sys.Graph, j), Care: joint.MakeupCare(sys.Graph, j),
		Run: j.Run.Name, Reason: "an end is not known", Below: j.Run.Below,
	}
	if r, ok := joint.JointEstimate(sys.Graph, j); ok {
		row.Thread, row.Estimate = bars(r.Pressure), r.Basis == pressure.Estimate
	}
	if j.Known {
		m := &j.Mating
		verdict := m.Verdict.String()
		row.Verdict, row.Reason, row.Turns = &verdict, m.Reason(), TurnsOf(m.Hand)
		if row.Makeup == "" {
			row.Remedy = m.Remedy()
		}
	}
	return row
}
