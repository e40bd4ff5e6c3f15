package cart

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/graph"
	"handtight/bom/money"
	"handtight/bom/order"
)

// Judge holds carts against what a build needs. The order is the system's own
// ([bom.System.Order]), so that both count alike; accepted may be nil.
//
// Lines that are sure are taken first: by the shop's code or the build's id, then by
// ends, kind, figures and material. Only then are lines with a wrong thread laid to
// what is still short, so that a right part is never displaced by a wrong one.
func Judge(sys *bom.System, order *order.Order, carts []*Cart, accepted *Accepted) *Report {
	j := &judge{
		sys: sys, report: &Report{Build: sys.Build.Name, Carts: carts}, accepted: accepted,
		match: newMatcher(sys, order), units: unitsOf(sys),
	}
	j.in = make([]money.Quantity, len(j.match.needs))
	j.byCart = make([]map[string]money.Quantity, len(j.match.needs))
	j.unsure = make([][]string, len(j.match.needs))
	j.bring = make([][]*Verdict, len(j.match.needs))
	for _, c := range carts {
		for i := range c.Lines {
			j.report.Lines = append(j.report.Lines, &Verdict{Line: &c.Lines[i]})
		}
	}
	for _, pass := range []func(*Verdict){j.aside, j.called, j.plain, j.rest} {
		for _, v := range j.report.Lines {
			if v.Status == "" {
				pass(v)
			}
		}
	}
	j.tally()
	j.spare()
	j.ask()
	return j.report
}

type judge struct {
	sys      *bom.System
	report   *Report
	accepted *Accepted
	match    *matcher
	units    map[*build.Item][]*graph.Unit
	in       []money.Quantity            // of good lines, by need
	byCart   []map[string]money.Quantity // the same, by cart
	unsure   [][]string
	bring    [][]*Verdict // the good lines of each need
}

func unitsOf(sys *bom.System) map[*build.Item][]*graph.Unit {
	out := map[*build.Item][]*graph.Unit{}
	for _, u := range sys.Graph.Units {
		out[u.Item] = append(out[u.Item], u)
		if of, ok := sys.Build.Item(u.Item.Of); ok {
			out[of] = append(out[of], u)
		}
	}
	return out
}

// aside takes out what does not count.
func (j *judge) aside(v *Verdict) {
	if v.Line.Out != "" {
		v.Status, v.Reason, v.Remedy = Out, capital(v.Line.Out)+".", "Nothing to do; take the mark off if it is to be bought."
	}
}

// called takes lines that a person confirmed, or that name the item or its code.
func (j *judge) called(v *Verdict) {
	if item, ok := j.accepted.find(v.Line); ok {
		n := j.match.byID[codeKey(item)]
		switch {
		case item == "":
			v.Status, v.Reason, v.Remedy = NotNeeded, "It was confirmed that it is nothing of the build's.", "Nothing to do, or leave it out of the cart."
			return
		case n != nil:
			m := compare(v.Line, n)
			m.add(byAccepted)
			m.asks, m.differs = 0, m.differs&^(1<<inKind|1<<inUse) // the person has the part's word for it
			if m.fit < fitNear || j.spoiled(v.Line, &m) == nil {
				m.fit, m.differs = fitSame, m.differs&^(1<<inEnds)
			}
			j.take(v, []match{m})
			return
		}
	}
	if list := named(j.match.candidates(v.Line)); len(list) > 0 {
		j.take(v, list)
	}
}

// named keeps the matches by code or id. One code may be the offer of several items: those
// that the words agree with, or else the first.
func named(list []match) []match {
	var out []match
	for _, m := range list {
		if m.named() && (len(out) == 0 || m.differs == 0 && m.fit < fitNear) {
			out = append(out, m)
		}
	}
	return out
}

// named reports whether the line names the item or its code.
func (m *match) named() bool { return m.has(byCode) || m.has(byItem) }

// plain takes lines that are sure by their words, with nothing wrong in them.
func (j *judge) plain(v *Verdict) {
	list, certain := best(v.Line, j.match.candidates(v.Line))
	if certain && j.spoiled(v.Line, &list[0]) == nil {
		j.take(v, list)
	}
}

// best gives the part that a line's words alone identify, and what nothing tells from it;
// certain when no other comes near it.
func best(l *Line, list []match) ([]match, bool) {
	var alike []match
	for i := range list {
		m := &list[i]
		switch {
		case !m.identified(&l.facts):
		case len(alike) == 0 || m.need.alike == alike[0].need.alike:
			alike = append(alike, *m)
		case alike[0].points-m.points < lead:
			return alike, false
		}
	}
	return alike, len(alike) > 0
}

// rest names what is like something still short but wrong, asks about the unsure, and
// says of the others that nothing needs them.
func (j *judge) rest(v *Verdict) {
	list := j.match.candidates(v.Line)
	if alike, certain := best(v.Line, list); certain {
		j.take(v, alike)
		return
	}
	near := nearly(&v.Line.facts, list)
	for i := range near {
		if j.lacks(near[i].need) || near[i].differs&perilous != 0 {
			j.take(v, near[i:i+1])
			return
		}
	}
	if len(near) > 0 && !slices.ContainsFunc(list, func(m match) bool { return m.differs == 0 && j.lacks(m.need) }) {
		j.apart(v, &near[0])
		return
	}
	var open []match
	for _, m := range list {
		if j.lacks(m.need) {
			open = append(open, m)
		}
	}
	if len(open) == 0 && len(list) > 0 && list[0].differs == 0 && (list[0].points >= ask || list[0].alikeOnly()) {
		j.notNeeded(v, &list[0])
		return
	}
	if likely := likely(list, open); len(likely) > 0 {
		j.unsureOf(v, likely)
		return
	}
	if !j.namedApart(v) {
		j.strange(v)
	}
}

// perilous is what is said of a line also where others cover what it is like: too weak a part
// is taken for the right one when it lies beside it.
const perilous aspectSet = 1<<inRating | 1<<inSpec | 1<<inSet | 1<<inScale

func (j *judge) lacks(n *need) bool { return j.in[n.index] < n.Buy() }

// take judges a line that is matched: to one need, or to several that are bought alike.
func (j *judge) take(v *Verdict, list []match) {
	m := &list[0]
	v.Confidence, v.Evidence = m.total(), m.list()
	for i := range list {
		v.Items = append(v.Items, list[i].need.Key)
	}
	if p := m.need.place; p != nil {
		v.Joint, v.Worst = p.joint, p.worst
	}
	if j.wrong(v, m) || j.open(v, m) {
		return
	}
	q, how, doubt := v.Line.Quantity(m.need.Unit, j.offered(v.Line, m.need))
	if doubt != "" {
		v.Status, v.Reason = NoQuantity, fmt.Sprintf("It is %s, but how many is not known: %s.", m.need.Key, doubt)
		v.Remedy = "Write the quantity into the cart, as a number."
		for i := range list {
			j.unsure[list[i].need.index] = append(j.unsure[list[i].need.index], v.Line.Where())
		}
		return
	}
	v.Quantity, v.Unit, v.Known = q, m.need.Unit, true
	v.Status, v.Reason = Covers, fmt.Sprintf("It is %s: %s.", strings.Join(v.Items, " or "), says(m.list()))
	v.PassedOver = passedOver(v.Line, m.need)
	if how != "" {
		v.Reason += " " + capital(how) + "."
	}
	j.allot(v, list, q)
	j.price(v, m.need)
}
