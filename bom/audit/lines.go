package audit

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"handtight/bom/segment"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/evidence"
	"handtight/threads/identify"
)

// lines writes the order of work.
func (p *Plan) lines() {
	for _, x := range byRisk(p.In(Wrong)) {
		p.add(x, p.wrongDo(x))
	}
	open := p.In(Open)
	for _, x := range p.In(Measure) {
		if x.Joint.Note != nil && x.Joint.Note.Wept != "" && (x.High || x.Below) {
			open = append(open, x)
		}
	}
	for _, x := range byRisk(open) {
		if x.Section == Open {
			p.add(x, p.openDo(x))
		} else {
			p.Lines = append(p.Lines, Line{
				Section: Open, Joints: []*Joint{x}, At: p.name(x), Cost: p.atStake(x), Stay: x.Stay(),
				Do:  "Open it, without pressure, before anything else is measured: it weeps, and nobody knows what it is. Read and measure both ends, or put in a pair that is known.",
				Why: p.why(x),
			})
		}
	}
	p.measureLines()
	p.proveLines()
	for _, x := range p.In(Watch) {
		do := "Leave it, and look at it again."
		if x.Look.IsZero() {
			do = "Leave it, and look at it at the first start and a month after."
		}
		if x.Prior != nil && x.Prior.Look.Known() && p.On.After(x.Prior.Look.To) {
			do += " The look of " + x.Prior.Look.Text + " is overdue unless this is it."
		}
		p.add(x, do)
	}
	for _, x := range p.In(Fine) {
		p.add(x, "")
	}
}

// add makes the line of one joint.
func (p *Plan) add(x *Joint, do string) {
	l := Line{Section: x.Section, Joints: []*Joint{x}, At: p.name(x), Do: do, Why: p.why(x), Look: x.Look}
	if x.Section != Fine {
		l.Cost = p.atStake(x)
		l.Stay = x.Stay()
	}
	p.Lines = append(p.Lines, l)
}

// atStake is what it would cost to be wrong, and how likely that is.
func (p *Plan) atStake(x *Joint) string {
	return fmt.Sprintf("%s (bad: %s)", x.Harm, percent(x.Belief.Bad))
}

func (p *Plan) name(x *Joint) string {
	return fmt.Sprintf("J%d %s", x.Joint.Number, p.sys.Graph.JointName(x.Joint))
}

// why says what the section rests on, with what was seen, in the words of the file.
func (p *Plan) why(x *Joint) string {
	out := []string{sentence(x.Why)}
	if x.Read && len(x.Belief.Pairs) > 0 {
		m := &x.worst().Mating
		switch {
		case x.Section == Fine || x.Section == Prove:
		case x.Section == Watch && m.Verdict.Holds():
		default:
			if first := &x.Belief.Pairs[0].Mating; first.A != m.A || first.B != m.B {
				out = append(out, "Likeliest: "+first.Reason(), "The worst that is not excluded:")
			}
			out = append(out, m.Reason())
			if m.HasLimit {
				out = append(out, fmt.Sprintf("Limit %s; here at most %s.", m.Limit, bars(x.Worst)))
			}
		}
	}
	for _, port := range []int{x.Joint.A, x.Joint.B} {
		if n := &p.sys.Graph.Ports[port]; n.Note != nil && n.Note.Found.Measured && len(n.Note.Found.List) > 0 {
			first := n.Note.Found.List[0]
			out = append(out, fmt.Sprintf("As measured, %s is %s (%s), %s.", n.Name(), first.End, first.End.Family.Facts().Title, percent(first.Probability)))
		}
	}
	if n := x.Joint.Note; n != nil {
		if n.Wept != "" {
			out = append(out, fmt.Sprintf("It wept: %s.", strings.TrimSuffix(n.Wept, ".")))
		}
		if n.MadeUp.Known() {
			out = append(out, fmt.Sprintf("Made up %s.", n.MadeUp.Text))
		}
		if n.DrySince.Known() {
			out = append(out, fmt.Sprintf("Dry since %s.", n.DrySince.Text))
		}
		if n.Tested != nil && x.Section != Fine {
			out = append(out, fmt.Sprintf("Tested to %s on %s.", n.Tested.Pressure, n.Tested.On.Text))
		}
	}
	return strings.Join(out, " ")
}

// worst is the worst pair that is reckoned with.
func (x *Joint) worst() *evidence.Pair {
	w := &x.Belief.Pairs[0]
	for i := range x.Belief.Pairs {
		if p := &x.Belief.Pairs[i]; p.Probability >= evidence.Reckoned() && p.Mating.Verdict.Worse(w.Mating.Verdict) {
			w = p
		}
	}
	return w
}

// Stay answers whether the joint may be left as it is.
func (x *Joint) Stay() string {
	if !x.Read || len(x.Belief.Pairs) == 0 {
		return "Not known: nothing may be left that nobody has looked at."
	}
	m := &x.worst().Mating
	switch x.Section {
	case Open:
		if m.Verdict.Holds() {
			return "Not as it is: a right pair that weeps, or is closed by the wrong thing, has a cause that is to be found."
		}
	case Wrong:
		if m.Verdict.Holds() {
			return "No: what closes it is not there."
		}
	case Watch:
		if !m.Verdict.Holds() {
			return "For a time, where it can be seen, at no more than it has borne: " + m.MayStay()
		}
	case Prove:
		return "Until the test, if it is not run. " + m.MayStay()
	}
	return m.MayStay()
}

func (p *Plan) wrongDo(x *Joint) string {
	for _, m := range []*threads.Mating{&x.Belief.Pairs[0].Mating, &x.worst().Mating} {
		if x.bad(m) {
			return "Do not run it. Open this first. " + m.Remedy()
		}
	}
	return "Do not run it. Open this first, and put in what closes it."
}

func (p *Plan) openDo(x *Joint) string {
	if x.Fit.NothingFits() {
		return "Open it, without pressure, and measure both threads: do not force it."
	}
	m := &x.worst().Mating
	switch m.Makes() {
	case "cone", "flare", "seat", "nipple", "ring", "edge":
		return "Open it, without pressure. Look at both cones for scratches, salt and a cracked flare; turning it tighter spoils the cone."
	case "taper", "taper-bsp", "taper-metric", "taper-plastic", "dryseal":
		return "Open it, without pressure. Look at the first threads and at the sealant, clean both, and make it up anew; never turn it back or tighter in place."
	}
	return "Open it, without pressure. Look at the face, and at the washer or ring that closes it; put in a new one."
}

// measureLines lists what to look at, the look first that is worth most.
func (p *Plan) measureLines() {
	seen := map[*Joint]bool{}
	for _, l := range p.measures() {
		g := l.group
		var list []*Joint
		for _, u := range g.joints {
			if !slices.Contains(list, u.joint) {
				list = append(list, u.joint)
			}
			seen[u.joint] = true
		}
		first := byRisk(list)[0]
		why := p.why(first)
		r := p.readingsOf(g, first)
		if text := readingsText(r); text != "" {
			why += " It may be " + text + "."
		}
		do := l.words() + " "
		if len(list) == 1 {
			do += fmt.Sprintf("It settles J%d.", list[0].Joint.Number)
		} else {
			do += fmt.Sprintf("It settles %d joints: %s.", len(list), numbers(list))
		}
		p.Lines = append(p.Lines, Line{
			Section: Measure, Joints: list, At: g.name, Do: do, Why: why, Worth: l.worth,
			Cost: p.atStake(first), Stay: first.Stay(),
		})
	}
	for _, x := range p.In(Measure) {
		if !seen[x] {
			p.add(x, "Read the marks on both parts, or ask who sold them: "+x.worst().Mating.Question())
		}
	}
}

// readingsOf is what an end may be, with what its joint tells of it.
func (p *Plan) readingsOf(g *group, x *Joint) []evidence.Reading {
	second := false
	for i, u := range g.joints {
		if u.joint == x {
			second = g.sides[i]
		}
	}
	at := map[threads.End]int{}
	var out []evidence.Reading
	for _, pair := range x.Belief.Pairs {
		e := pair.Mating.A
		if second {
			e = pair.Mating.B
		}
		i, ok := at[e]
		if !ok {
			i = len(out)
			at[e] = i
			out = append(out, evidence.Reading{End: e})
		}
		out[i].Probability += pair.Probability
	}
	identify.LikeliestFirst(out, func(r *evidence.Reading) float64 { return r.Probability })
	return out
}

// proveLines asks for a test of each segment that has a joint to be proved.
func (p *Plan) proveLines() {
	for _, g := range p.sys.Segments.All {
		var list []*Joint
		for _, x := range p.In(Prove) {
			if p.sys.Segments.SegmentOf(x.Joint.A) == g {
				list = append(list, x)
			}
		}
		if len(list) > 0 {
			p.Lines = append(p.Lines, p.proof(g, list))
		}
	}
}

// proof is the test of one segment: to 1.5 times its worst pressure, and never above what its
// weakest member holds.
func (p *Plan) proof(g *segment.Segment, list []*Joint) Line {
	worst, state := g.Load.Worst()
	first := byRisk(list)[0]
	l := Line{Section: Prove, Joints: list, At: g.Name, Cost: p.atStake(first), Stay: first.Stay()}
	joints := fmt.Sprintf("It proves %s.", numbers(list))
	due := proofFactor * worst
	holds := g.Allowable.Rating.Pressure
	weakest := g.Allowable.What
	switch {
	case worst.Unbounded():
		l.Do = "It cannot be proved: nothing bounds its pressure. Put in a relief first."
		l.Why = fmt.Sprintf("In one state, %s, nothing opens.", state.Cause)
		return l
	case !g.Rated():
		var names []string
		for _, u := range slices.Concat(g.Unrated, g.Guessed) {
			names = append(names, u.Name)
		}
		l.Do = fmt.Sprintf("Find the rating first of %s: no test may go above it.", orUnknown(names))
		l.Why = fmt.Sprintf("%s times its worst pressure (%s) is %s, and it is not known whether its parts hold that.", quantity.Exact(proofFactor), bars(worst), bars(due))
		return l
	case holds < worst:
		l.Do = fmt.Sprintf("It cannot be proved: %s holds %s, less than the %s that it may see. Replace it, or derate the plant.", weakest, bars(holds), bars(worst))
		l.Why = joints
		return l
	case holds < due-testSlack:
		l.Pressure = holds
		l.Do = fmt.Sprintf("Prove by test to %s and no more: %s holds no more, and it cannot be proved to %s here. For that, replace %s, or derate the plant. %s", bars(holds), weakest, bars(due), weakest, testCare)
	default:
		l.Pressure = due
		l.Do = fmt.Sprintf("Prove by test to %s. %s", bars(due), testCare)
	}
	l.Why = fmt.Sprintf("%s times its worst pressure (%s, %s). %s", quantity.Exact(proofFactor), bars(worst), state.Cause, joints)
	if older := tests(list); older != "" {
		l.Why += " " + older
	}
	return l
}

// testCare is how a test is made: as in ASME B31.3, 345 (memory), and common practice.
const testCare = "With fresh water, the air bled off, a hand pump and a gauge; the membrane out of the line, or its own limit kept; nobody in line with the joints; and no joint touched under pressure."

// tests says what was tested before, and not far enough.
func tests(list []*Joint) string {
	var out []string
	for _, x := range list {
		if n := x.Joint.Note; n != nil && n.Tested != nil {
			out = append(out, fmt.Sprintf("J%d was tested to %s on %s, which is less than is due.", x.Joint.Number, n.Tested.Pressure, n.Tested.On.Text))
		}
	}
	return strings.Join(out, " ")
}

func orUnknown(names []string) string {
	if len(names) == 0 {
		return "each part"
	}
	return strings.Join(names, ", ")
}

func numbers(list []*Joint) string {
	var out []string
	for _, x := range list {
		out = append(out, fmt.Sprintf("J%d", x.Joint.Number))
	}
	return strings.Join(out, ", ")
}

// bars writes a pressure for people.
func bars(p quantity.Pressure) string {
	if p.Unbounded() {
		return "no bound"
	}
	return quantity.Bar.Times(math.Round(p.Bar()*10) / 10).String()
}

func sentence(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:] + "."
}

// DayText writes a day; "" for none.
func DayText(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.Format(time.DateOnly)
}
