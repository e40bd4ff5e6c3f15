package cart

import (
	"fmt"
	"strings"

	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// open asks for what a line that may be right leaves open: what of it is other than planned
// and may do, and what a place needs and the line is silent on. On a high-pressure place
// silence is asked about whatever the code says. A person's word is taken for all of it.
func (j *judge) open(v *Verdict, m *match) bool {
	if m.has(byAccepted) {
		return false
	}
	open := j.other(v.Line, m)
	open = append(open, silent(v.Line, m)...)
	if len(open) == 0 {
		return false
	}
	n := m.need
	v.Status = Unsure
	v.Reason = fmt.Sprintf("It is like %s (%s), but not all that its place needs is said.", n.Key, orWords(says(m.list()), "little speaks for it"))
	text := capital(strings.Join(open, "; ")) + "?"
	switch p := n.place; {
	case p == nil || !p.high:
	case p.worst > 0:
		text += fmt.Sprintf(" Up to %s stands at %s (%s).", bars(p.worst), n.Key, p.at(j.sys))
	default: // behind a throttle that the high-pressure side does not end at
		text += fmt.Sprintf(" %s is on the high-pressure side (%s).", n.Key, p.at(j.sys))
	}
	j.asked(v, m, "Confirm it, or ask the shop: "+text)
	return true
}

// other lists what of a line is other than planned, and may do.
func (j *judge) other(l *Line, m *match) []string {
	var out []string
	f, want := &l.facts, &m.need.facts
	for a := range aspects {
		if !m.asks.has(a) {
			continue
		}
		switch a {
		case inEnds:
			out = append(out, f.turns(m))
		case inMaterial:
			said, planned := f.madeOf(want.kind), want.madeOf(want.kind)
			if vague[said] != nil {
				if !m.named() {
					out = append(out, fmt.Sprintf("which %s is it (%s is to be of %s)", said, m.need.Key, planned))
				}
				continue
			}
			out = append(out, fmt.Sprintf("may it be of %s in place of %s", said, planned))
		case inScale:
			out = append(out, fmt.Sprintf("may it read to %s in place of %s", bars(f.scale), bars(want.scale)))
		case inLength:
			out = append(out, fmt.Sprintf("may it be %s long in place of %s", f.length, want.length))
		case inFlow:
			out = append(out, fmt.Sprintf("may it give %s in place of %s", f.flow.to, want.flow.to))
		case inCut:
			out = append(out, fmt.Sprintf("may it stop at %s in place of %s", bars(f.cut), bars(want.cut)))
		case inBore:
			if f.onlyOuter() {
				out = append(out, fmt.Sprintf("what is its bore (it is %s outside, and %s is to have %s)", f.outer, m.need.Key, want.bore))
			} else {
				out = append(out, fmt.Sprintf("what is its outside (it is %s inside, and %s is to have %s)", f.bore, m.need.Key, want.bore))
			}
		case inGrips:
			out = append(out, fmt.Sprintf("does it close on the hose of %s bore (it begins at %s mm)", want.bore, quantity.Significant(float64(f.grips.from), 4)))
		}
	}
	return out
}

// silent lists what a line does not say of what its place needs.
func silent(l *Line, m *match) []string {
	var out []string
	f, n := &l.facts, m.need
	want := &n.facts
	if n.Item == nil || m.named() && n.About != "" && strings.Contains(l.Text, n.Key) && strings.Contains(l.Text, n.About) {
		return nil // the line is the build's own
	}
	high := n.place != nil && n.place.high
	ask := func(yes bool, text string) {
		if yes {
			out = append(out, text)
		}
	}
	if high {
		ask(len(want.ends) > 0 && (m.fit == fitUnsaid || m.fit == fitOpen || m.fit == fitSome), "what are its ends ("+n.Item.Ends()+")")
		_, rated := f.holds(n)
		relieves := isA(n.Kind, catalog.Relieves) && f.full > 0 && f.full >= n.place.worst-pressure.Slack // it passes all its flow at that
		ask(!rated && !relieves && !isA(n.Kind, catalog.Gauge), "what pressure does it hold")
		what := "of what material is it"
		if isA(n.Kind, catalog.Hose) {
			what = "of what metal are its ends"
		}
		ask(f.madeOf(want.kind) == "" && want.madeOf(want.kind) != "" && metalCounts(n.Kind), what)
		ask(f.scale == 0 && want.scale > 0 && isA(n.Kind, catalog.Gauge), "how far does its scale read")
		ask(f.set == 0 && want.set > 0, "what is it set to")
		ask(f.bore == 0 && want.bore > 0, "what is its bore")
		ask(f.length == 0 && want.length > 0 && isA(n.Kind, catalog.Hose), "how long is it")
	}
	for _, q := range f.said {
		ask(true, q)
	}
	ask(f.pieceOf != "" && want.madeOf(want.kind) != "" && metalCounts(n.Kind), fmt.Sprintf("of what is the part itself (its words say %q)", f.pieceOf))
	ask(f.plain != "" && want.madeOf(want.kind) != "" && metalCounts(n.Kind), fmt.Sprintf("of what is the part itself (its words say %q)", f.plain))
	if other := n.unsuited(f); other != "" {
		ask(true, fmt.Sprintf("is it of %s or of %s", f.material, other))
	}
	if words := wordsOfEnds(l); isA(n.Kind, catalog.HoseStock) && len(words) > 0 {
		ask(true, fmt.Sprintf("is it sold by length, without the ends that its words speak of (%s)", strings.Join(words, ", ")))
	}
	for _, limit := range l.Reading.Limits {
		if otherUse(limit.Words) {
			continue // not for fuel
		}
		ask(high || !limit.LowPressure, fmt.Sprintf("may it be used here (its words say %q)", limit.Words))
	}
	out = append(out, l.bounds(n, m.named())...)
	for _, u := range l.Reading.Unread {
		end, more := strings.CutSuffix(u, " (an end of which no size is said)")
		ask(more && high && !isA(n.Kind, catalog.Hose), fmt.Sprintf("has it one more end (its words say %q)", end))
	}
	for _, u := range l.Reading.NotUsed {
		ask(strings.HasPrefix(u.Why, "it plugs into an end"), fmt.Sprintf("does it take a tube (its words say %q)", u.Words))
		ask(u.Why == threads.LooksOnly && want.madeOf(want.kind) != "" && metalCounts(n.Kind), fmt.Sprintf("of what is it made (its words only say that it looks like %s)", u.Words))
		ask(u.Why == threads.HoseOutside, fmt.Sprintf("what is the inside of the hose that it takes (its words give the outside: %q)", u.Words))
		ask(u.Why == threads.NoEndTakesIt, fmt.Sprintf("which of its ends does %q speak of", u.Words))
	}
	if m.named() {
		return out
	}
	ask(f.volts[0] == 0 && want.volts[0] > 0 && isA(n.Kind, catalog.Electric), fmt.Sprintf("is it for %s", want.volts[0]))
	ask(f.flow.to == 0 && want.flow.to > 0 && isA(n.Kind, catalog.DrivesFeed|catalog.DrivesHigh), fmt.Sprintf("does it give %s", want.flow.to))
	ask(f.tall == 0 && want.tall > 0 && isA(n.Kind, catalog.Cartridge), fmt.Sprintf("is it %s inches long", quantity.Significant(want.tall, 4)))
	ask(f.micron == 0 && want.micron > 0 && (isA(n.Kind, catalog.Cartridge) || isA(n.Kind, catalog.Filter) && n.filled), fmt.Sprintf("is it of %s", want.micron))
	ask(f.element.across == 0 && want.element.across > 0, fmt.Sprintf("is it %s x %s inches", quantity.Significant(want.element.across, 4), quantity.Significant(want.element.long, 4)))
	ask(n.Item.Vacuum != nil && !f.traits.has("suction"), "does it stand suction")
	ask(n.place != nil && n.place.product && want.traits.has("drinking") && !f.traits.has("drinking"), "is it fit for drinking water")
	return out
}

// wordsOfEnds lists the words of a line that speak of an end, where what it names has none.
func wordsOfEnds(l *Line) []string {
	var out []string
	for _, u := range l.Reading.NotUsed {
		if u.Why == threads.SpeaksOfAnEnd {
			out = append(out, u.Words)
		}
	}
	return out
}

// metalCounts reports whether the material of a kind is one of the facts that it is bought
// by.
func metalCounts(kind string) bool {
	return !isA(kind, catalog.HoseStock|catalog.Separates)
}
