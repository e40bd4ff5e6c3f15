package cart

import (
	"fmt"
	"strings"

	"github.com/bojanz/currency"

	"handtight/bom"
	"handtight/threads"
)

// wrong judges what a matched line is made of: its ends, its rating, its material. The
// line then covers nothing. The worst is said first.
func (j *judge) wrong(v *Verdict, m *match) bool {
	if m.fit >= fitNear {
		j.wrongEnd(v, m)
	}
	if reason, ok := j.lowRating(v.Line, m.need); ok {
		j.fault(v, LowRating, reason, m.need)
		if v.Status == LowRating && plannedSo(v.Line, m.need) {
			v.Remedy = fmt.Sprintf("The build plans %s so: run `check` and mend the build first, then buy what holds it.", m.need.Key)
		}
	}
	if j.wrongMaterial(v.Line, m.need) {
		j.fault(v, WrongMaterial, fmt.Sprintf("It is of %s, and %s is to be of %s.", v.Line.facts.material, m.need.Key, m.need.facts.material), m.need)
	}
	return v.Status != ""
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
		switch v.Status {
		case WrongThread, WrongSex, WrongSize, LowRating, WrongMaterial:
			if n := j.match.byID[codeKey(v.Item())]; n != nil && !j.lacks(n) {
				v.Remedy = fmt.Sprintf("Take it out of the cart: %s is covered by other lines.", n.Key)
			}
		}
	}
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
func (j *judge) wrongEnd(v *Verdict, m *match) {
	n := m.need
	spoiled := j.spoiled(v.Line, m)
	if m.fit == fitOther {
		v.Status = Unsure
		v.Reason = fmt.Sprintf("Its code or id is that of %s, but its words are not: %s.", n.Key, j.differs(v.Line, m))
		v.Remedy = fmt.Sprintf("Ask the shop which is right, the code or the words; wanted is %s", j.instead(n))
		j.unsure[n.index] = append(j.unsure[n.index], v.Line.Where())
		return
	}
	if spoiled == nil {
		v.Status = Unsure
		v.Reason = fmt.Sprintf("It is like %s, but %s; the joints would still seal.", n.Key, j.differs(v.Line, m))
		v.Remedy = "Confirm that this is meant, or order: " + j.instead(n)
		j.unsure[n.index] = append(j.unsure[n.index], v.Line.Where())
		return
	}
	status := WrongThread
	reason := fmt.Sprintf("It is like %s, but %s. It would spoil J%d, %s: %s", n.Key, j.differs(v.Line, m),
		spoiled.joint.Number, j.sys.JointName(spoiled.joint), spoiled.mating.Reason())
	switch {
	case spoiled.mating.Verdict == threads.SameSex:
		status = WrongSex
	case spoiled.sameFamily:
		status = WrongSize
	}
	if spoiled.more > 0 {
		reason += fmt.Sprintf(" So with %d more.", spoiled.more)
	}
	j.fault(v, status, reason, n)
	if m.named() {
		v.Remedy += " Its code is the right one's: ask the shop whether the code or the words hold."
	}
}

// spoil is a joint that a line's end would spoil.
type spoil struct {
	joint      *bom.Joint
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
			node := &j.sys.Ports[u.First+p]
			if !node.Port.Said || len(node.Port.End.Candidates) == 0 {
				continue
			}
			said++
			end, ok := l.endAt(m, said)
			if node.Joint == nil || !ok {
				continue
			}
			mating, _ := threads.Worst(end, j.across(node).Port.End)
			if mating.Verdict == 0 || mating.Verdict.Holds() || !worse(mating, node.Joint) {
				continue
			}
			if first != nil {
				first.more++
				continue
			}
			planned, got := node.Port.End.Candidates[0], end.Candidates[0]
			first = &spoil{joint: node.Joint, mating: mating, sameFamily: got.Family == planned.Family && got.Sex == planned.Sex}
		}
	}
	return first
}

// endAt gives the line's end in place of one of the item's: that which was laid on it,
// or the bore of a hose, which is at both its ends.
func (l *Line) endAt(m *match, at int) (threads.EndReading, bool) {
	if m.need.facts.kind == "hose stock" {
		d := threads.Length(l.facts.bore)
		return threads.EndReading{Candidates: []threads.End{{Family: threads.Bore, Size: fmt.Sprintf("%.4g mm", l.facts.bore), Diameter: d}}}, l.facts.bore > 0
	}
	k := m.end(at)
	if k < 0 || k >= len(l.facts.ends) || len(l.facts.ends[k].readings) == 0 {
		return threads.EndReading{}, false
	}
	return threads.EndReading{Candidates: l.facts.ends[k].readings}, true
}

// worse reports whether a mating is worse than what the joint has by plan.
func worse(m threads.Mating, joint *bom.Joint) bool {
	return !joint.Known || m.Verdict != joint.Mating.Verdict && m.Verdict.Worse(joint.Mating.Verdict)
}

// across gives the port on the other side of a joint.
func (j *judge) across(node *bom.Node) *bom.Node {
	a, b := &j.sys.Ports[node.Joint.A], &j.sys.Ports[node.Joint.B]
	if a == node {
		return b
	}
	return a
}

// differs tells the first end that is not the planned one.
func (j *judge) differs(l *Line, m *match) string {
	if m.need.facts.kind == "hose stock" {
		return fmt.Sprintf("its bore is %.4g mm in place of %.4g mm", l.facts.bore, m.need.facts.bore)
	}
	for i := range m.need.facts.ends {
		planned, k := &m.need.facts.ends[i], m.end(i)
		if k < 0 || len(l.facts.ends[k].readings) == 0 || fitEnd(&l.facts.ends[k], planned) < fitNear {
			continue
		}
		return fmt.Sprintf("%s in place of %s", l.facts.ends[k].readings[0], planned.readings[0])
	}
	var ends []string
	for _, e := range l.facts.ends {
		if len(e.readings) > 0 {
			ends = append(ends, e.readings[0].String())
		}
	}
	return "the line says " + strings.Join(ends, " and ")
}

// pressureSlack keeps a rating that equals the pressure from being a fault by a rounding
// of units, in bar.
const pressureSlack = 0.001

// lowRating compares what a line says that it holds with the pressures of the segments
// that the item stands in. A gauge's figure is its scale.
func (j *judge) lowRating(l *Line, n *need) (string, bool) {
	holds := l.facts.rated
	if n.Kind == "gauge" {
		if l.facts.scale > 0 && n.facts.scale > 0 && l.facts.scale < n.facts.scale*0.98 {
			return fmt.Sprintf("Its scale ends at %g bar, and %s is to read to %g bar.", l.facts.scale, n.Key, n.facts.scale), true
		}
		return "", false
	}
	if holds == 0 {
		return "", false
	}
	load := &n.Load
	switch {
	case load.Act > holds+pressureSlack && load.ByAct != nil:
		return fmt.Sprintf("It holds %.4g bar, and the segment of %s sees %.4g bar: %s.", holds, n.Key, load.Act, load.ByAct.Cause), true
	case load.Fail > holds+pressureSlack && load.ByFail != nil:
		return fmt.Sprintf("It holds %.4g bar, and the segment of %s sees %.4g bar by a failure: %s.", holds, n.Key, load.Fail, load.ByFail.Cause), true
	}
	return "", false
}

// plannedSo reports whether the build's own part holds no more than the line.
func plannedSo(l *Line, n *need) bool {
	return n.Kind != "gauge" && n.facts.rated > 0 && n.facts.rated <= l.facts.rated*1.001
}

// wrongMaterial reports whether a line names another material than the item's.
func (j *judge) wrongMaterial(l *Line, n *need) bool {
	a, b := l.facts.material, n.facts.material
	if a == "" || b == "" {
		return false
	}
	same, open := sameMaterial(a, b)
	return !same && !open
}

// price compares a line's price with the offer's: by the line's code, else the one
// that the order chose, and only in one currency.
func (j *judge) price(v *Verdict, n *need) {
	l := v.Line
	if !l.Adds {
		v.Also = append(v.Also, SumDiffers)
		v.Reason += fmt.Sprintf(" %s x %s is not the total %s.", l.Amount, l.Price, l.Total)
		if v.Remedy == "" {
			v.Remedy = "Ask the shop which of quantity, price and total is right."
		}
	}
	o := j.offer(l, n)
	if l.Price == "" || o == nil || o.Price == nil {
		return
	}
	if l.Currency == "" || l.Currency != o.Price.CurrencyCode() {
		return
	}
	found, ok := l.each(n, o.Price.Number())
	if !ok {
		return
	}
	a, err := currency.NewAmount(found, l.Currency)
	if err != nil || near(a.Number(), o.Price.Number()) {
		return
	}
	word := "more"
	if c, err := a.Cmp(*o.Price); err == nil && c < 0 {
		word = "less"
	}
	v.Also = append(v.Also, OtherPrice)
	v.Reason += fmt.Sprintf(" It costs %s than the offer: %s and not %s %s.", word, shown(a), shown(*o.Price), l.Currency)
	if v.Status == Covers {
		v.Status, v.Also = OtherPrice, v.Also[:len(v.Also)-1]
		v.Remedy = "Ask the shop which price holds, and write it into the offer."
	}
}

// shown writes a price with its currency's decimals, or all that it has.
func shown(a currency.Amount) string {
	if r := a.Round(); r.Equal(a) {
		return r.Number()
	}
	return a.Number()
}

// each gives the price of one as the build counts. The price of a pack or coil is
// divided, unless the line's own figure is the offer's.
func (l *Line) each(n *need, offered string) (string, bool) {
	by := l.Pack
	if n.Unit == "m" {
		by = 0
		if l.Unit != "m" && !l.PerMetre {
			by = l.Length
		}
	}
	if n.Unit == "roll" || by == 0 || by == 1000 || near(l.Price, offered) {
		return l.Price, true
	}
	return quotient(l.Price, by.String())
}

// offer is the one with the line's code, else the one that the order chose.
func (j *judge) offer(l *Line, n *need) *bom.Offer {
	if code := codeKey(l.Code); code != "" {
		for _, o := range n.offers {
			if codeKey(o.Code) == code {
				return o
			}
		}
	}
	return n.line.Offer
}

// offered is the offer's price of one; "" if none is known in the line's currency.
func (j *judge) offered(l *Line, n *need) string {
	o := j.offer(l, n)
	if o == nil || o.Price == nil || l.Currency != "" && l.Currency != o.Price.CurrencyCode() {
		return ""
	}
	return o.Price.Number()
}
