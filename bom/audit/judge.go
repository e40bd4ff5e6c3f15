package audit

import (
	"fmt"
	"math"
	"strings"
	"time"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/graph"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/evidence"
)

// proofFactor is how far above its worst pressure a segment is proved: ASME B31.3, 345.4, gives
// 1.5 times the design pressure for a hydrostatic test (memory).
const proofFactor = 1.5

// testSlack is the lack of a test that is taken for none: gauges of a test are read no closer (a judgement).
const testSlack = 0.01 * quantity.Bar

// Judge puts one joint into its section on a day; a zero day counts no time. It is taken that the
// joint stands.
func Judge(s *bom.System, j *graph.Joint, on time.Time) *Joint {
	worst, _ := s.States.PortLoad(j.A).Worst()
	harm := harmOf(s, j)
	x := &Joint{
		Joint: j, Cost: harm.Value, Harm: harm.Words, Worst: worst,
		High: s.Segments.SegmentOf(j.A).High(), Below: j.Run.Below, Prior: recorded(s, j),
	}
	h := x.history(s, on)
	x.Fit, x.Read = s.Graph.FitOf(j, true)
	if !x.Read {
		x.Belief = evidence.Unread(h)
		x.Section = Measure
		x.Why = fmt.Sprintf("nothing is known of %s", strings.Join(x.untold(s), " and "))
		return x
	}
	at := x.site()
	x.Belief = evidence.Believe(x.Fit.Pairs, h, at)
	x.classify(s, &h)
	if x.Section == Watch && !on.IsZero() {
		x.Look = nextLook(j.Note, on)
	}
	return x
}

// untold names the ends of which nothing is known.
func (x *Joint) untold(s *bom.System) []string {
	var out []string
	for _, p := range []int{x.Joint.A, x.Joint.B} {
		if n := &s.Graph.Ports[p]; len(n.Port.End.Candidates) == 0 {
			out = append(out, n.Name())
		}
	}
	if len(out) == 0 {
		return []string{"the size of an end"}
	}
	return out
}

// history is what became of the joint, as far as it counts.
func (x *Joint) history(s *bom.System, on time.Time) evidence.History {
	n := x.Joint.Note
	if n == nil {
		return evidence.History{}
	}
	h := evidence.History{Wept: n.Wept != "", Sealant: n.Sealant, DryYears: dryDays(n, on) / 365.25}
	h.Tested = n.Tested != nil && x.Worst > 0 && n.Tested.Pressure >= x.provedFrom(s)-testSlack
	return h
}

// provedFrom is the pressure from which a test of the joint's segment counts.
func (x *Joint) provedFrom(s *bom.System) quantity.Pressure {
	worst, _ := s.Segments.SegmentOf(x.Joint.A).Load.Worst()
	return proofFactor * worst
}

// dryDays is how long a joint has been dry on a day: from the last day on which that may have
// begun, and not before it last wept.
func dryDays(n *build.JointNote, on time.Time) float64 {
	if n == nil || !n.DrySince.Known() || on.IsZero() {
		return 0
	}
	since := n.DrySince.To
	if n.WeptIn.Known() && n.WeptIn.To.After(since) {
		since = n.WeptIn.To
	}
	return max(0, on.Sub(since).Hours()/24)
}

// nextLook is the day of the next look: after half of the time that it has been dry, twelve
// months at most; after a month where no time is known.
func nextLook(n *build.JointNote, on time.Time) time.Time {
	days := dryDays(n, on)
	if days <= 0 {
		return on.AddDate(0, 1, 0)
	}
	year := on.AddDate(1, 0, 0)
	if half := on.AddDate(0, 0, max(1, int(math.Round(days/2)))); half.Before(year) {
		return half
	}
	return year
}

// bad reports whether a pair is wrong where the joint stands. A low-pressure one is right within
// its limit, above the waterline.
func (x *Joint) bad(m *threads.Mating) bool {
	return !x.site().Bears(m)
}

func (x *Joint) site() evidence.Site { return evidence.Site{Worst: x.Worst, Below: x.Below} }

// surely are the pairs that are reckoned with. Dry years do not tell which thread it is where a
// mistake bursts or floods.
func (x *Joint) surely(h *evidence.History) []evidence.Pair {
	careful := *h
	if x.High || x.Below {
		careful.DryYears = 0
	}
	b := evidence.Believe(x.Fit.Pairs, careful, x.site())
	return b.Pairs
}

// tally is how the readings that are reckoned with stand to the place of the joint.
type tally struct {
	reckoned, bad, missing, holding int
	right                           float64 // the probability of what is right here
	asked                           bool    // a bad one turns on a question
}

func (x *Joint) tally(pairs []evidence.Pair, sealant string) (t tally) {
	for i := range pairs {
		p := &pairs[i]
		wrong := x.bad(&p.Mating)
		if !wrong {
			t.right += p.Probability
		}
		if p.Probability < evidence.Reckoned() {
			continue
		}
		t.reckoned++
		if wrong {
			t.bad++
			t.asked = t.asked || p.Mating.Question() != ""
			continue
		}
		t.holding++
		if evidence.Missing(&p.Mating, sealant) {
			t.missing++
		}
	}
	return t
}

// classify puts the joint into its section, and says why it is there.
func (x *Joint) classify(s *bom.System, h *evidence.History) {
	pairs := x.surely(h)
	t := x.tally(pairs, h.Sealant)
	conflict := x.conflict(s)
	switch {
	case x.Fit.NothingFits():
		x.Section = Open
		x.Why = "the turns are those of no thread that its ends may be: one is worn, cut wrong or another than is thought; not the nearest is meant"
	case t.holding > 0 && t.missing == t.holding && t.bad+t.missing == t.reckoned:
		x.Section = Wrong
		m := holdingPair(x, pairs)
		x.Why = fmt.Sprintf("what closes it is missing: %s is due, and nothing was found", m.Closes())
	case t.reckoned > 0 && t.bad == t.reckoned && !t.asked:
		x.wrong(&t, h, conflict)
	case t.right < evidence.Cleared() || t.asked || conflict:
		x.Section = Measure
		x.Why = "it is not known what it is"
		if conflict {
			x.Why = "the words and the figures differ: measure again"
		}
		if x.Belief.Pairs[0].Probability >= 0.5 && x.bad(&x.Belief.Pairs[0].Mating) {
			x.Why += "; the likeliest is wrong here, so the shorter way may be to change the part"
		}
	default:
		x.rightPair(pairs, h)
	}
	x.Why += x.felt()
}

// wrong puts a joint of which every reading is wrong; dry years clear it where a drip does no harm.
func (x *Joint) wrong(t *tally, h *evidence.History, conflict bool) {
	dry := x.Joint.Note != nil && x.Joint.Note.DrySince.Known()
	if dry && !x.High && !x.Below && x.Worst <= quantity.Bar.Times(cost("low")) && !h.Wept {
		x.Section = Watch
		x.Why = "a wrong pair, dry for a time at low pressure and above the waterline: a drip there does no harm where it is seen"
		return
	}
	x.Section = Wrong
	x.Why = "every reading of it is wrong here"
	if t.reckoned == 1 {
		x.Why = "it is a wrong pair"
	}
	if conflict {
		x.Why += ", and the words and the figures of it differ: measure again"
	}
	if dry {
		x.Why += "; that it was dry clears nothing " + x.where()
	}
}

// rightPair puts a joint that is known to be right by what became of it and where it stands.
func (x *Joint) rightPair(pairs []evidence.Pair, h *evidence.History) {
	switch n := x.Joint.Note; {
	case h.Wept:
		x.Section = Open
		x.Why = "a right pair that wept: look at what closes it, and do not turn it tighter"
	case wrongSealant(pairs, h.Sealant):
		x.Section = Open
		x.Why = fmt.Sprintf("it was found closed with %s, which does not close such a pair: either the reading is wrong, or what closes it is missing", h.Sealant)
	case x.High && h.Tested:
		x.Section = Fine
		x.Why = fmt.Sprintf("proved: %s on %s is %s times its worst pressure or more. It says nothing of what was opened since", n.Tested.Pressure, n.Tested.On.Text, quantity.Exact(proofFactor))
	case x.High:
		x.Section = Prove
		x.Why = "a right pair that no test has proved"
	case lowOnly(x, pairs):
		x.Section = Watch
		x.Why = "a pair for low pressure only, within its limit"
	case x.Risk() >= cost("tight"):
		x.Section = Watch
		x.Why = "a right pair, of which a weep would cost much"
	default:
		x.Section = Fine
		x.Why = "a right pair, within what it may carry"
	}
}

// felt says what the turns say, if they were counted.
func (x *Joint) felt() string {
	if x.Joint.Note == nil || !x.Joint.Note.Turned.Known || x.Fit.NothingFits() {
		return ""
	}
	n := x.Joint.Note
	if !x.Fit.Decides {
		return fmt.Sprintf(". %s turns do not decide it: the readings go in about as far", n.Turns)
	}
	m := &x.Fit.Pairs[0].Mating
	if n.Turned.Face || !m.Hand.Known {
		return ""
	}
	return fmt.Sprintf(". %s turns by hand are those of %s in %s (%s to %s)", n.Turns, m.A, m.B, quantity.Decimals(float64(m.Hand.Tightest), 1), quantity.Decimals(float64(m.Hand.Loosest), 1))
}

func (x *Joint) where() string {
	if x.High {
		return "at high pressure"
	}
	if x.Below {
		return "below the waterline"
	}
	return "at this pressure"
}

// conflict reports whether what was measured of an end is none of what its words say.
func (x *Joint) conflict(s *bom.System) bool {
	for _, p := range []int{x.Joint.A, x.Joint.B} {
		if n := s.Graph.Ports[p].Note; n != nil && (n.Found.Conflict || n.Found.NothingFits()) {
			return true
		}
	}
	return false
}

func holdingPair(x *Joint, pairs []evidence.Pair) *threads.Mating {
	for i := range pairs {
		if !x.bad(&pairs[i].Mating) {
			return &pairs[i].Mating
		}
	}
	return &pairs[0].Mating
}

// lowOnly reports whether the joint is, by its likeliest reading, one for low pressure only.
func lowOnly(x *Joint, pairs []evidence.Pair) bool {
	return len(pairs) > 0 && pairs[0].Mating.Verdict == threads.LowPressureOnly && !x.bad(&pairs[0].Mating)
}

func wrongSealant(pairs []evidence.Pair, sealant string) bool {
	return len(pairs) > 0 && evidence.WrongSealant(&pairs[0].Mating, sealant)
}

// recorded is what an earlier audit said of a joint.
func recorded(s *bom.System, j *graph.Joint) *build.AuditedJoint {
	if s.Build.Audited == nil {
		return nil
	}
	a, b := s.Graph.Ports[j.A].Name(), s.Graph.Ports[j.B].Name()
	for i := range s.Build.Audited.Joints {
		r := &s.Build.Audited.Joints[i]
		if x, y := r.At[0].Name(), r.At[1].Name(); x == a && y == b || x == b && y == a {
			return r
		}
	}
	return nil
}
