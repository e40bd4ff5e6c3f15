package cart

import (
	"fmt"
	"strings"

	"handtight/bom"
	"handtight/bom/money"
)

// Judge holds carts against what a build needs. The order is the system's own
// ([bom.System.Order]), so that both count alike; accepted may be nil.
//
// Lines that are sure are taken first: by the shop's code or the build's id, then by
// ends, kind, figures and material. Only then are lines with a wrong thread laid to
// what is still short, so that a right part is never displaced by a wrong one.
func Judge(sys *bom.System, order *bom.Order, carts []*Cart, accepted *Accepted) *Report {
	j := &judge{
		sys: sys, report: &Report{Build: sys.Build.Name, Carts: carts}, accepted: accepted,
		match: newMatcher(order, sys.Build.Offers), units: unitsOf(sys),
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
	for _, pass := range []func(*Verdict) bool{j.aside, j.settled, j.plain, j.rest} {
		for _, v := range j.report.Lines {
			if v.Status == "" {
				pass(v)
			}
		}
	}
	j.tally()
	j.ask()
	return j.report
}

type judge struct {
	sys      *bom.System
	report   *Report
	accepted *Accepted
	match    *matcher
	units    map[*bom.Item][]*bom.Unit
	in       []money.Quantity            // of good lines, by need
	byCart   []map[string]money.Quantity // the same, by cart
	unsure   [][]string
	bring    [][]*Verdict // the good lines of each need
}

func unitsOf(sys *bom.System) map[*bom.Item][]*bom.Unit {
	out := map[*bom.Item][]*bom.Unit{}
	for _, u := range sys.Units {
		out[u.Item] = append(out[u.Item], u)
		if of, ok := sys.Build.Item(u.Item.Of); ok {
			out[of] = append(out[of], u)
		}
	}
	return out
}

// aside takes out what does not count.
func (j *judge) aside(v *Verdict) bool {
	if v.Line.Out == "" {
		return false
	}
	v.Status, v.Reason, v.Remedy = Out, capital(v.Line.Out)+".", "Nothing to do; take the mark off if it is to be bought."
	return true
}

// settled takes lines that a person confirmed, or that name the item or its code.
func (j *judge) settled(v *Verdict) bool {
	if item, ok := j.accepted.find(v.Line); ok {
		n := j.match.byID[codeKey(item)]
		switch {
		case item == "":
			v.Status, v.Reason, v.Remedy = NotNeeded, "It was confirmed that it is nothing of the build's.", "Nothing to do, or leave it out of the cart."
			return true
		case n != nil:
			m := compare(v.Line, n)
			m.add(byAccepted)
			if m.fit < fitNear || j.spoiled(v.Line, &m) == nil {
				m.fit = fitSame // the person has the part's word for it
			}
			j.take(v, []match{m})
			return true
		}
	}
	list := named(j.match.candidates(v.Line))
	if len(list) == 0 {
		return false
	}
	j.take(v, list)
	return true
}

// named keeps the matches by code or id. One code may be the offer of several items.
func named(list []match) []match {
	var out []match
	for _, m := range list {
		if m.named() {
			out = append(out, m)
		}
	}
	return out
}

// named reports whether the line names the item or its code.
func (m *match) named() bool {
	return m.has(byCode) || m.has(byItem)
}

// plain takes lines that are sure by their words, with all ends right and the material
// not wrong.
func (j *judge) plain(v *Verdict) bool {
	list, certain := j.best(j.match.candidates(v.Line))
	if !certain || list[0].fit >= fitNear || j.wrongMaterial(v.Line, list[0].need) {
		return false
	}
	j.take(v, list)
	return true
}

// best gives the likeliest match and what nothing tells from it; certain when it is
// sure and clear of the next.
func (j *judge) best(list []match) ([]match, bool) {
	if len(list) == 0 {
		return nil, false
	}
	first := list[0]
	alike := []match{first}
	certain := first.points >= sure
	for _, m := range list[1:] {
		if m.need.alike == first.need.alike {
			alike = append(alike, m)
		} else if first.points-m.points < lead && !(first.has(byMaterial) && m.has(byMaterialDiffers)) {
			certain = false
		}
	}
	return alike, certain && (first.fit == fitSame || first.fit == fitUnsaid && len(first.need.facts.ends) == 0 || first.fit >= fitNear)
}

// rest names what is like something still short but wrong, asks about the unsure, and
// says of the others that nothing needs them.
func (j *judge) rest(v *Verdict) bool {
	list := j.match.candidates(v.Line)
	var open []match
	for _, m := range list {
		if j.lacks(m.need) {
			open = append(open, m)
		}
	}
	if alike, certain := j.best(list); certain && (j.lacks(alike[0].need) || alike[0].fit < fitNear) {
		j.take(v, alike)
		return true
	}
	if len(open) > 0 && open[0].fit == fitNear && open[0].points >= nearSure && (len(open) == 1 || open[0].points-open[1].points >= lead) {
		j.take(v, open[:1])
		return true
	}
	if len(open) == 0 && len(list) > 0 && list[0].points >= sure {
		j.notNeeded(v, &list[0])
		return true
	}
	if likely := likely(list, open); len(likely) > 0 {
		j.unsureOf(v, likely)
		return true
	}
	j.strange(v)
	return true
}

// likely gives what an unsure line may be: what is still short first, or else all.
func likely(list, open []match) []match {
	var out []match
	for _, from := range [][]match{open, list} {
		for _, m := range from {
			if (m.points >= ask || m.alikeOnly()) && m.points >= from[0].points-behind && len(out) < mostChoices {
				out = append(out, m)
			}
		}
		if len(out) > 0 {
			break
		}
	}
	return out
}

// What an unsure line is asked about: five choices, and none far behind the first.
const (
	mostChoices = 5
	behind      = 25
)

// alikeOnly reports whether a line names the kind of something that has no ends, and
// little else: a clamp, a cartridge. It is asked about, for nobody else would.
func (m *match) alikeOnly() bool {
	return m.points >= evidence()[byKind].Points && len(m.need.facts.ends) == 0 && m.has(byKind)
}

func (j *judge) lacks(n *need) bool { return j.in[n.index] < n.Buy() }

// take judges a line that is matched: to one need, or to several that are bought alike.
func (j *judge) take(v *Verdict, list []match) {
	m := &list[0]
	v.Confidence, v.Evidence = m.total(), m.list()
	for i := range list {
		v.Items = append(v.Items, list[i].need.Key)
	}
	if j.wrong(v, m) {
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
	v.Quantity, v.Known = q, true
	v.Status, v.Reason = Covers, fmt.Sprintf("It is %s: %s.", strings.Join(v.Items, " or "), says(m.list()))
	if how != "" {
		v.Reason += " " + capital(how) + "."
	}
	j.allot(v, list, q)
	j.price(v, m.need)
}

// allot lays a line's quantity to its needs in turn; what is left is surplus.
func (j *judge) allot(v *Verdict, list []match, q money.Quantity) {
	left := q
	for i := range list {
		n := list[i].need
		gets := min(left, max(0, n.Buy()-j.in[n.index]))
		if i == len(list)-1 {
			gets = left
		}
		others := j.others(n, v.Line.Cart)
		j.bring[n.index] = append(j.bring[n.index], v)
		j.in[n.index] += gets
		if j.byCart[n.index] == nil {
			j.byCart[n.index] = map[string]money.Quantity{}
		}
		j.byCart[n.index][v.Line.Cart] += gets
		left -= gets
		if i < len(list)-1 {
			continue
		}
		over := j.in[n.index] - max(n.Buy(), j.packed(n, v.Line))
		if over <= 0 {
			return
		}
		over = min(over, q)
		v.Status = Surplus
		v.Reason += fmt.Sprintf(" %s more than is needed (%s with spares).", amount(over, n.Unit), amount(n.Buy(), n.Unit))
		v.Remedy = fmt.Sprintf("Take %s out of the cart, or keep it as a further spare.", amount(over, n.Unit))
		if len(others) > 0 {
			v.Status = BoughtTwice
			v.Reason += fmt.Sprintf(" %s buys it too.", strings.Join(others, " and "))
		}
	}
}

// packed rounds what is needed up to the packs that the line or the offer is sold in.
func (j *judge) packed(n *need, l *Line) money.Quantity {
	most := n.line.Order
	pack := l.Pack
	if n.Unit == "m" {
		pack = l.Length
	}
	if pack > 0 && n.Unit != "roll" {
		if up, err := n.Buy().CeilTo(pack); err == nil {
			most = max(most, up)
		}
	}
	return most
}

// others lists the other carts that bring some of it.
func (j *judge) others(n *need, this string) []string {
	var out []string
	for _, c := range j.report.Carts {
		if c.Name != this && j.byCart[n.index][c.Name] > 0 {
			out = append(out, c.Name)
		}
	}
	return out
}

// says lists evidence: "the code is the offer's (90), the same kind of part (20)".
func says(list []Evidence) string {
	var out []string
	for _, e := range list {
		if e.Points != 0 {
			out = append(out, fmt.Sprintf("%s (%+d)", e.Says, e.Points))
		}
	}
	return strings.Join(out, ", ")
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// strange is a line that nothing in the build is like.
func (j *judge) strange(v *Verdict) {
	r := &v.Line.Reading
	v.Remedy = "Leave it out of the cart, or put it into the build if it is to be joined."
	kind := v.Line.facts.kind
	bare := !v.Line.Counted && v.Line.Price == "" && v.Line.Code == "" // a heading, a shop's name
	if len(r.Ends) == 0 && (kind == "" || bare) {
		v.Status, v.Reason = NoEnd, "No end was found in its words, and nothing in the build is clearly like it."
		v.Remedy = "Look at it yourself: if it belongs to the build, confirm which item it is, or write the item's id or code into the line."
		return
	}
	what := article(orWords(kind, "part"))
	var ends []string
	for i := range r.Ends {
		if c := r.Ends[i].Candidates; len(c) > 0 {
			ends = append(ends, c[0].String())
		}
	}
	if len(ends) > 0 {
		what += " with " + strings.Join(ends, " and ")
	}
	v.Status, v.Reason = NotNeeded, fmt.Sprintf("It reads as %s, and nothing in the build is like it.", what)
}

func article(word string) string {
	if strings.ContainsAny(word[:1], "aeioAEIO") {
		return "an " + word
	}
	return "a " + word
}

// notNeeded is a line like something that is covered already.
func (j *judge) notNeeded(v *Verdict, m *match) {
	v.Status, v.Confidence, v.Evidence = NotNeeded, m.total(), m.list()
	v.Items = []string{m.need.Key}
	v.Reason = fmt.Sprintf("It is like %s (%s), which is covered already.", m.need.Key, says(m.list()))
	v.Remedy = "Take it out of the cart, or say what it is for."
}

// unsureOf asks about a line.
func (j *judge) unsureOf(v *Verdict, list []match) {
	m := &list[0]
	v.Status, v.Confidence, v.Evidence = Unsure, m.total(), m.list()
	for i := range list {
		n := list[i].need
		v.Items = append(v.Items, n.Key)
		j.unsure[n.index] = append(j.unsure[n.index], v.Line.Where())
	}
	v.Reason = fmt.Sprintf("It may be %s: %s.", strings.Join(v.Items, " or "), orWords(says(m.list()), "little speaks for it"))
	v.Remedy = "Confirm it, or ask the shop: " + j.asks(v, m)
}

// asks is the question that settles an unsure line.
func (j *judge) asks(v *Verdict, m *match) string {
	for i := range v.Line.Reading.Ends {
		if q := v.Line.Reading.Ends[i].Question; q != "" && (m.fit == fitOpen || m.fit == fitSome) {
			return q
		}
	}
	if len(v.Items) > 1 {
		return fmt.Sprintf("Which is it: %s?", strings.Join(v.Items, ", "))
	}
	return fmt.Sprintf("Is it %s (%s)?", m.need.Key, describe(m.need))
}

// describe says what to order: the ends, the material, the rating.
func describe(n *need) string {
	if n.Item == nil {
		return n.Key
	}
	words := []string{n.Kind}
	if ends := n.Item.Ends(); ends != "" {
		words = append(words, ends)
	} else if n.About != "" {
		words = []string{n.About}
	}
	if n.Item.Material != "" {
		words = append(words, n.Item.Material)
	}
	if n.Item.Rated != nil {
		words = append(words, n.Item.Rated.String())
	}
	return strings.Join(words, ", ")
}
