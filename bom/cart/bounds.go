package cart

import (
	"fmt"
	"strings"

	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// bounds lists what the pressures of a line that are no rating leave open at a place: a range that ends below what comes or
// begins above it, a burst or a test where no working pressure is said, a vacuum less than planned. What a relief valve
// passes is the code's to say, as what a pump gives, where the line is named by it.
func (l *Line) bounds(n *need, named bool) []string {
	var out []string
	p := n.place
	if p == nil || n.Item == nil {
		return nil
	}
	f := &l.facts
	ask := func(yes bool, form string, args ...any) {
		if yes {
			out = append(out, fmt.Sprintf(form, args...))
		}
	}
	holds, rated := f.holds(n)
	below := func(bar quantity.Pressure) bool { return bar > 0 && bar < p.worst-pressure.Slack }
	for _, s := range l.Reading.Pressures {
		said := s.What + " " + bars(s.Pressure)
		if s.What == threads.Unclear {
			said = fmt.Sprintf("%q", s.Words)
		}
		switch {
		case s.What == "full scale" && isA(n.Kind, catalog.Gauge):
			ask(below(s.Pressure) && s.Pressure < f.scale-pressure.Slack, "up to what pressure may it be used (its words say %s)", bars(s.Pressure))
		case s.What == "full scale" && !isA(n.Kind, catalog.Relieves|catalog.DrivesFeed):
			ask(below(s.Pressure), "what does it hold (its words say a range to %s)", bars(s.Pressure))
		case s.Bounds() && s.What != threads.Unclear && !isA(n.Kind, catalog.Gauge):
			ask(!rated || s.Pressure < holds+pressure.Slack, "what does it hold (its words say %s)", said)
		case s.What == threads.Unclear && isA(n.Kind, catalog.Relieves) && f.set > 0 && alike(s.Pressure, f.set): // it lifts at 65 bar
		case s.What == threads.Unclear && f.vacuum > 0 && alike(s.Pressure, f.vacuum): // onderdruk 0,9 bar
		case s.Bounds():
			ask(below(s.Pressure), "what does it hold (its words say %s)", said)
		}
	}
	ask(isA(n.Kind, catalog.Gauge) && below(f.rated), "up to what pressure may it be used (its words say %s)", bars(f.rated))
	if isA(n.Kind, catalog.StopsReturn) {
		opens := max(f.set, opensIn(l.Text))
		ask(opens > p.worst+pressure.Slack, "at what pressure does it open (its words say %s)", bars(opens))
	}
	if from := leastIn(l.Text, n.Kind); from > p.worst+pressure.Slack {
		ask(true, "does it work where no more than %s comes (its words say %s at least)", bars(p.worst), bars(from))
	}
	if isA(n.Kind, catalog.Relieves) && p.high {
		full := p.worst
		if n.Item.FullFlow != nil {
			full = *n.Item.FullFlow
		}
		ask(f.full > full+pressure.Slack && !alike(f.full, full), "at what pressure does it pass all its flow (its words say %s, and %s is to do so at %s)", bars(f.full), n.Key, bars(full))
		ask(!named && f.flow.to == 0 && n.facts.flow.to > 0, "how much does it pass (%s is to pass %s)", n.Key, n.facts.flow.to)
	}
	if v := n.Item.Vacuum; v != nil && f.vacuum > 0 {
		ask(float64(f.vacuum) < float64(*v)*(1-vacuumSlack), "what vacuum does it stand (its words say %s, and %s is to stand %s)", bars(f.vacuum), n.Key, bars(*v))
	}
	ask(f.gives(n), "does it hold what its place sees, %s (its words say %s, which may be what it gives)", bars(p.worst), bars(f.rated))
	return out
}

// vacuumSlack is how much less vacuum than planned is taken for the same, as a share (judgement: 25 inHg are 0.85 bar).
const vacuumSlack = 0.06

// opensIn gives the pressure that a valve opens at; 0 for none.
func opensIn(text string) quantity.Pressure {
	if m := statedForms()["set"].FindStringSubmatch(text); m != nil {
		return quantity.Pressure(decimal(m[3])) * perPressure[strings.ToLower(m[4])]
	}
	return 0
}

// leastIn gives the least pressure that the words of a valve ask for which works by it; 0 for none. The least of a burst or a
// test is none.
func leastIn(text, kind string) quantity.Pressure {
	if !isA(kind, catalog.Electric|catalog.StopsReturn) || isA(kind, catalog.DrivesFeed|catalog.DrivesHigh) || !saysAny(strings.ToLower(text), "bar", "psi", "mpa") {
		return 0
	}
	var least quantity.Pressure
	if m := statedForms()["least"].FindStringSubmatch(text); m != nil && !pressureNext.MatchString(strings.TrimLeft(m[0][len(m[1]):], " .:")) {
		least = quantity.Pressure(decimal(orWords(m[2], m[3]))) * perPressure[strings.ToLower(m[4])]
	}
	if m := rangeBar.FindStringSubmatch(text); m != nil && decimal(m[2]) > decimal(m[1]) {
		least = max(least, quantity.Pressure(decimal(m[1]))*perPressure[strings.ToLower(m[3])])
	}
	return least
}

// rangeBar is a range of pressures that does not begin at nothing.
var rangeBar = pattern.New(`(?i)(?:^|[^0-9.,/-])([0-9]+(?:[.,][0-9]+)?)\s*(?:-|–|—|÷|\.\.\.?|…|to|bis|à|al|tot)\s*([0-9]+(?:[.,][0-9]+)?)\s*(bar|psi|mpa)`)

// gives reports whether the one pressure of a feed pump may be what it gives, and no rating: it is the planned one.
func (l *facts) gives(n *need) bool {
	return isA(n.Kind, catalog.DrivesFeed) && l.rated > 0 && l.cut == 0 && l.class == "" && n.facts.cut > 0 && l.rated < n.place.worst && float64(l.rated) >= float64(n.facts.cut)*cutNear
}
