package cart

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom/money"
	"handtight/pressure"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// wrong judges in what a matched line is other than its place needs it: its ends, its
// rating, its standard. The line then covers nothing. The worst is said first. Words that
// disagree with the shop's own code are a conflict, and asked about.
func (j *judge) wrong(v *Verdict, m *match) bool {
	spoiled := j.spoiled(v.Line, m)
	if spoiled != nil {
		m.differs.add(inEnds)
	}
	if m.differs == 0 {
		return false
	}
	for a := range aspects {
		if m.differs.has(a) {
			status, reason := j.explain(v.Line, m, a, spoiled)
			j.fault(v, status, reason, m.need)
		}
	}
	for _, q := range v.Line.facts.said {
		v.Reason += " It is not clear besides: " + q + "?"
	}
	if v.Status == LowRating && plannedSo(v.Line, m.need) {
		v.Remedy = fmt.Sprintf("The build plans %s so: run `check` and mend the build first, then buy what holds it.", m.need.Key)
	}
	switch {
	case m.named() && !m.has(byAccepted):
		j.conflict(v, m)
	case v.Status == Unsure:
		j.asked(v, m, "Confirm that this is meant, or order: "+j.instead(m.need))
	}
	return true
}

// conflict asks about what is wrong by the words and right by the code.
func (j *judge) conflict(v *Verdict, m *match) {
	v.Reason = fmt.Sprintf("Its code or id is that of %s, but its words are not: %s", m.need.Key, v.Reason)
	text := fmt.Sprintf("Ask the shop which is right, the code or the words; wanted is %s", j.instead(m.need))
	if v.Status == LowRating && plannedSo(v.Line, m.need) {
		text = v.Remedy
	}
	j.asked(v, m, text)
}

// asked turns a line into a question.
func (j *judge) asked(v *Verdict, m *match, remedy string) {
	v.Remedy, v.Ask = remedy, strings.TrimPrefix(remedy, "Confirm it, or ask the shop: ")
	j.unsure[m.need.index] = append(j.unsure[m.need.index], v.Line.Where())
}

// explain says what of a line is wrong, and what it would spoil.
func (j *judge) explain(l *Line, m *match, a aspect, spoiled *spoil) (Status, string) {
	n, f, want := m.need, &l.facts, &m.need.facts
	where := j.where(n)
	switch a {
	case inKind:
		return Unsure, fmt.Sprintf("It reads as %s, and %s is %s%s.", article(f.kind), n.Key, article(want.kind), where)
	case inEnds:
		return j.wrongEnd(l, m, spoiled)
	case inRating:
		return LowRating, j.lowRating(l, n)
	case inScale:
		return LowRating, j.wrongScale(f, n, where)
	case inSpec:
		return WrongStandard, fmt.Sprintf("It is a hose of %s, and %s is to be of %s%s.", f.spec, n.Key, want.spec, where)
	case inMaterial:
		return WrongMaterial, fmt.Sprintf("It is of %s, and %s is to be of %s%s.", f.madeOf(want.kind), n.Key, want.madeOf(want.kind), where)
	case inSet:
		return WrongSetting, fmt.Sprintf("It is set to %s, and %s is to be set to %s%s.", bars(f.set), n.Key, bars(want.set), where)
	case inBore:
		what, is := "bore", f.bore
		switch outside := n.Item != nil && n.Item.Outside != nil; {
		case !outside && f.onlyOuter():
			return WrongSize, fmt.Sprintf("It is like %s, but %s is its outside, and %s is to be its bore%s.", n.Key, f.outer, want.bore, where)
		case outside && f.outer == 0 && f.inside:
			return WrongSize, fmt.Sprintf("It is like %s, but %s is its bore, and %s is to be its outside%s.", n.Key, f.bore, want.bore, where)
		case outside:
			what, is = "outside", max(f.bore, f.outer)
		}
		return WrongSize, fmt.Sprintf("It is like %s, but its %s is %s in place of %s%s.", n.Key, what, is, want.bore, where)
	case inLength:
		return WrongLength, fmt.Sprintf("It is %s long, and %s is to be %s%s.", f.length, n.Key, want.length, where)
	case inVolts:
		return WrongVoltage, fmt.Sprintf("It is for %s%s, and %s runs on %s%s%s.", f.volts[0], f.current, n.Key, want.volts[0], want.current, where)
	case inBranch:
		return WrongSize, fmt.Sprintf("Its branch is %s, and that of %s is %s%s.", openText(f.ends[f.branch-1].readings), n.Key, openText(want.ends[want.branch-1].readings), where)
	case inPort:
		return WrongSize, f.swapped(n, where)
	case inFlow:
		return WrongFlow, fmt.Sprintf("It is for %s, and %s is for %s%s.", f.flow.to, n.Key, want.flow.to, where)
	case inMicron:
		return WrongFineness, fmt.Sprintf("It holds back %s micron, and %s is to be of %s micron%s.", quantity.Significant(float64(f.micron/quantity.Micron), 4), n.Key, quantity.Significant(float64(want.micron/quantity.Micron), 4), where)
	case inTall:
		return WrongSize, fmt.Sprintf("It is %s inches long, and %s is %s inches%s.", quantity.Significant(f.tall, 4), n.Key, quantity.Significant(want.tall, 4), where)
	case inElement:
		return WrongSize, fmt.Sprintf("It is %s x %s inches, and %s is %s x %s inches%s.", quantity.Significant(f.element.across, 4), quantity.Significant(f.element.long, 4), n.Key, quantity.Significant(want.element.across, 4), quantity.Significant(want.element.long, 4), where)
	case inHull:
		return WrongSize, fmt.Sprintf("It is of %s, and %s is of %s%s.", inches(f.hull), n.Key, inches(want.hull), where)
	case inCut:
		return WrongSetting, fmt.Sprintf("It stops at %s, and %s is to stop at %s%s.", bars(f.cut), n.Key, bars(want.cut), where)
	case inGrips:
		return WrongSize, fmt.Sprintf("It closes on %s, and %s is for a hose of %s bore with its wall%s.", f.gripsText(), n.Key, want.bore, where)
	}
	has, wants, _ := f.traits.differ(want.traits)
	return WrongUse, fmt.Sprintf("Its words say %s, and %s is %s%s.", has, n.Key, orWords(wants, "not"), where)
}

// where names the place that a fault would spoil: of what stands in a joint that one, of contents
// what they are in, of washers and clamps the first of their joints.
func (j *judge) where(n *need) string {
	switch {
	case n.place != nil && n.place.joint != nil:
		return " (" + n.place.at(j.sys) + ")"
	case n.Item != nil && n.Item.Inside != "":
		return " (in " + n.Item.Inside + ")"
	case len(n.Joints) > 0:
		first := j.sys.Graph.Joints[n.Joints[0]-1]
		text := fmt.Sprintf(" (J%d, %s", first.Number, j.sys.Graph.JointName(first))
		if more := len(n.Joints) - 1; more > 0 {
			text += fmt.Sprintf(", and %d more", more)
		}
		return text + ")"
	}
	return ""
}

func inches(l quantity.Length) string {
	return quantity.Significant(float64(l/quantity.Inch), 4) + " inch"
}

func (f *facts) gripsText() string {
	if f.grips.to > 0 {
		return fmt.Sprintf("%s to %s mm", quantity.Significant(float64(f.grips.from), 4), quantity.Significant(float64(f.grips.to), 4))
	}
	return f.bore.String()
}

// wrongScale says what of a gauge's scale is wrong.
func (j *judge) wrongScale(f *facts, n *need, where string) string {
	if f.scale < n.facts.scale {
		return fmt.Sprintf("Its scale ends at %s, and %s is to read to %s%s.", bars(f.scale), n.Key, bars(n.facts.scale), where)
	}
	return fmt.Sprintf("Its scale reads to %s, too coarse for %s, which is to read to %s%s.", bars(f.scale), n.Key, bars(n.facts.scale), where)
}

// fault notes one thing that is wrong.
func (j *judge) fault(v *Verdict, s Status, reason string, n *need) {
	if v.Status != "" {
		v.Also = append(v.Also, s)
		v.Reason += " " + reason
		return
	}
	v.Status, v.Reason = s, reason
	v.Remedy = "Order instead: " + j.instead(n)
}

// spare takes back what was said to order in place of a wrong line where other lines
// bring it.
func (j *judge) spare() {
	for _, v := range j.report.Lines {
		if slices.Contains(Wrong(), v.Status) {
			if n := j.match.byID[codeKey(v.Item())]; n != nil && !j.lacks(n) {
				v.Remedy = fmt.Sprintf("Take it out of the cart: %s is covered by other lines.", n.Key)
			}
		}
	}
}

// count says how many of a part to order, in the packs of the shop: "13 packs of 2 (26 pc)".
func (n *need) count(q money.Quantity) string {
	o := n.line.Offer
	if o == nil || o.Pack <= money.Piece || n.Unit != "pc" {
		return amount(q, n.Unit)
	}
	all, err := q.CeilTo(o.Pack)
	if err != nil {
		return amount(q, n.Unit)
	}
	packs, word := all/o.Pack, orWords(o.Unit, "pack")
	if packs != 1 {
		word += "s"
	}
	return fmt.Sprintf("%d %s of %s (%s)", packs, word, o.Pack, amount(all, n.Unit))
}

// instead says what to order, with an offer if there is one.
func (j *judge) instead(n *need) string {
	text := describe(n)
	if o := n.line.Offer; o != nil {
		text += "; " + o.Vendor.Name
		if o.Code != "" {
			text += ", code " + o.Code
		}
		if o.Price != nil {
			text += ", " + o.Price.Number() + " " + o.Price.CurrencyCode()
		}
	}
	return text + "."
}

// wrongEnd names the joint that a line's ends would spoil. An end that is not the
// planned one but seals at every joint is asked about.
func (j *judge) wrongEnd(l *Line, m *match, spoiled *spoil) (Status, string) {
	n := m.need
	if spoiled == nil {
		if m.fit == fitNear {
			return Unsure, fmt.Sprintf("It is like %s, but %s; the joints would still seal.", n.Key, j.differs(l, m))
		}
		return WrongSize, fmt.Sprintf("It is like %s, but %s%s.", n.Key, j.differs(l, m), j.where(n))
	}
	status := WrongThread
	reason := fmt.Sprintf("It is like %s, but %s. It would spoil J%d, %s: %s", n.Key, j.differs(l, m),
		spoiled.joint.Number, j.sys.Graph.JointName(spoiled.joint), spoiled.mating.Reason())
	switch {
	case spoiled.mating.Verdict == threads.SameSex:
		status = WrongSex
	case spoiled.sameFamily:
		status = WrongSize
	}
	if spoiled.more > 0 {
		reason += fmt.Sprintf(" So with %d more.", spoiled.more)
	}
	if n.place != nil && n.place.high {
		reason += fmt.Sprintf(" Up to %s stands there.", bars(n.place.worst))
	}
	return status, reason
}

// lowRating compares what a line says that it holds with the hardest of the places that the
// item stands in.
func (j *judge) lowRating(l *Line, n *need) string {
	holds, _ := l.facts.holds(n)
	by := ""
	if n.place.failure {
		by = " by a failure"
	}
	text := fmt.Sprintf("It holds %s", bars(holds))
	if n.place.left < 1 && holds >= n.place.worst {
		text += fmt.Sprintf(" cold, and %s in the heat of its place", bars(quantity.Pressure(float64(holds)*n.place.left)))
	}
	return fmt.Sprintf("%s, and the segment of %s sees %s%s: %s (%s).", text, n.Key, bars(n.place.worst), by, n.place.cause, n.place.at(j.sys))
}

// plannedSo reports whether the build's own part holds no more than the line, whose class or
// standard may hold less than its figure.
func plannedSo(l *Line, n *need) bool {
	holds, known := l.facts.holds(n)
	return known && n.facts.rated > 0 && !pressure.Above(n.facts.rated, holds)
}
