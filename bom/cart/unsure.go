package cart

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom/request"
	"handtight/catalog"
	"handtight/threads"
)

// likely gives what an unsure line may be: what is still short first, or else all.
func likely(list, open []match) []match {
	var out []match
	for _, from := range [][]match{open, list} {
		for _, m := range from {
			if m.differs == 0 && !m.kindAlone() && !m.endAlone() && (m.points >= ask || m.alikeOnly()) && m.points >= from[0].points-behind && len(out) < mostChoices {
				out = append(out, m)
			}
		}
		if len(out) > 0 {
			break
		}
	}
	return out
}

// nearly keeps the matches that are the part but for one thing, or two that its ends do not
// speak of.
func nearly(l *facts, list []match) []match {
	var out, strangers []match
	for _, m := range list {
		switch {
		case !m.nearly(l):
		case m.differs.has(inKind):
			strangers = append(strangers, m)
		default:
			out = append(out, m)
		}
	}
	if len(out) == 0 && !slices.ContainsFunc(list, func(m match) bool { return m.has(byKind) }) {
		return strangers
	}
	return out
}

// nearly reports whether a line is the part but for what is wrong with it.
func (m *match) nearly(l *facts) bool {
	n, faults := &m.need.facts, m.differs.count()
	if faults == 0 || faults > 2 || m.differs.has(inKind) && (m.differs&^(1<<inKind|1<<inRating) != 0 || len(n.ends) < 2) || m.differs.has(inEnds) && faults > 1 {
		return false
	}
	switch {
	case isA(n.kind, catalog.Washer) && m.differs.has(inUse):
		return false
	case len(n.ends) > 0 && m.differs.has(inEnds):
		return m.has(byKind) && !m.has(byMaterialDiffers) && (m.fit == fitNear && m.points >= nearSure || m.others == 1 && !m.sorts && len(n.ends) > 1 && len(l.ends) == len(n.ends))
	case len(n.ends) > 0:
		return (m.fit == fitSame || m.fit == fitOpen && m.differs.has(inKind)) && (m.has(byKind) || m.differs.has(inKind) || l.kind == "" && len(n.ends) > 1)
	case !m.has(byKind) || m.differs.has(inUse) && (faults > 1 || l.traits.otherTrade() && !m.has(byTrait)):
		return false
	}
	switch {
	case isA(n.kind, catalog.Cartridge):
		return !m.differs.has(inUse) && (m.has(byFigure) || m.has(byTrait))
	case isA(n.kind, catalog.Element):
		return m.has(byOnly)
	case isA(n.kind, catalog.HoseStock):
		return !m.differs.has(inBore) && m.has(byFigure) || m.has(byBoreNear) || m.differs.has(inBore) && m.has(byTrait)
	}
	return false
}

// kindAlone reports whether nothing but the word for a hose or a tape speaks for a match: that
// is said of many things.
func (m *match) kindAlone() bool {
	kind := m.need.facts.kind
	return isA(kind, catalog.HoseStock|catalog.Tape) && !m.has(byTrait) && !m.has(byFigure)
}

// endAlone reports whether nothing but one end speaks for a match, and the material against it: a
// ring of copper for half-inch tube is no skin fitting.
func (m *match) endAlone() bool {
	return len(m.need.facts.ends) == 1 && !m.has(byKind) && m.has(byMaterialDiffers)
}

// alikeOnly reports whether a line names the kind of something that has no ends, and
// little else: a clamp, a cartridge. It is asked about, for nobody else would.
func (m *match) alikeOnly() bool {
	loose := m.need.Item == nil || m.need.Item.Kind.Loose
	return loose && m.fit == fitUnsaid && m.has(byKind) && m.points >= evidence()[byKind].Points
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
	what := article(orWords(strings.Replace(kind, "other", "", 1), "part"))
	var ends []string
	for i := range r.Ends {
		if len(r.Ends[i].Candidates) > 0 {
			ends = append(ends, openText(r.Ends[i].Candidates))
		}
	}
	if len(ends) > 0 {
		what += " with " + strings.Join(ends, " and ")
	}
	v.Status, v.Reason = NotNeeded, fmt.Sprintf("It reads as %s, and nothing in the build is like it.", what)
}

// openText names an end; one that the words leave open by all that it may be.
func openText(readings []threads.End) string {
	var out []string
	for i := range readings[:min(len(readings), mostChoices)] {
		if text := readings[i].String(); !slices.Contains(out, text) {
			out = append(out, text)
		}
	}
	return strings.Join(out, " or ")
}

func article(word string) string {
	if word == "other" {
		return "something of another sort"
	}
	if strings.ContainsAny(word[:1], "aeioAEIO") {
		return "an " + word
	}
	return "a " + word
}

// notNeeded is a line like something that is covered already.
func (j *judge) notNeeded(v *Verdict, m *match) {
	v.Status, v.Confidence, v.Evidence = NotNeeded, m.total(), m.list()
	v.Items = []string{m.need.Key}
	v.Reason = fmt.Sprintf("It is like %s (%s), which is covered already.", m.need.Key, orWords(says(m.list()), "little speaks for it"))
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
	v.Ask = j.asks(v, m)
	v.Remedy = "Confirm it, or ask the shop: " + v.Ask
}

// asks is the question that settles an unsure line.
func (j *judge) asks(v *Verdict, m *match) string {
	if said := v.Line.facts.said; len(said) > 0 {
		return capital(strings.Join(said, "; ")) + "?"
	}
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

// describe says what to order, in the words that the order itself has for a shop: all that
// the place needs, with the boat's voltage where the item names none.
func describe(n *need) string {
	text := request.Words(n.line.Need)
	if v := n.facts.volts[0]; v > 0 && voltsIn(text)[0] == 0 {
		text += ", " + v.String()
	}
	return text
}

// says lists evidence in words; its points are in the JSON and with --why: "the code is the
// offer's, the same kind of part".
func says(list []Evidence) string {
	var out []string
	for _, e := range list {
		if e.Points != 0 {
			out = append(out, e.Says)
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

// What an unsure line is asked about: five choices, and none far behind the first.
const (
	mostChoices = 5
	behind      = 25
)
