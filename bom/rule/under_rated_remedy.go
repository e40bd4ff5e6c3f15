package rule

import (
	"fmt"
	"strings"

	"handtight/bom"
	"handtight/bom/graph"
	"handtight/bom/rating"
	"handtight/bom/segment"
	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

// remedyFor says what to buy in place of a group, the weakest first, or how to take away
// what overloads it. What is done as it says checks clear.
func remedyFor(s *bom.System, group []overload) string {
	o := &group[0]
	need := reliefsNeed(s, o.segment)
	for i := range group {
		need = max(need, group[i].seen)
	}
	var better, other []rating.Allowable // what a better data sheet clears, and what it does not
	clamps, washers := false, 0
	for i := range group {
		switch h := group[i].hold; {
		case clamped(h):
			clamps = true
		case closing(h):
			washers++
		case standardRules(h, need) || elsewhere(s, &group[i], need):
			other = append(other, h)
		default:
			better = append(better, h)
		}
	}
	if o.gauge() {
		return fmt.Sprintf("Buy another gauge %s; it should read to about %s.", forBar(s, better, need), bars(gaugeScale(max(o.load.Act, o.load.Fail))))
	}
	if washers == len(group) {
		return fmt.Sprintf("Join it by a thread that seals at %s, or keep the pressure there to %s.", barsUp(need), bars(o.holds()))
	}
	what := "it"
	if len(group) > 1 {
		what = "them"
	}
	var text string
	switch {
	case o.castClass():
		text = fmt.Sprintf("Buy %s in forged class 3000, or with a data sheet %s", what, forBar(s, other, need))
		other = nil
	case len(other) == len(group):
		text = fmt.Sprintf("Buy %s of another sort or class, for %s or more", what, barsUp(need))
		if other[0].Derated {
			text += fmt.Sprintf(" at %s", s.Ratings.Hottest())
		}
		if len(group) == 1 && o.unit != nil && o.unit.Item.IsHose() && o.unit.Item.Of == "" {
			text += ", its end fittings too"
		}
		other = nil
	default:
		text = fmt.Sprintf("Buy %s %s", what, forBar(s, better, need))
	}
	text += instead(s, o) + "."
	if len(other) > 0 {
		text += fmt.Sprintf(" Take another sort or class of %s: the standard of such parts gives less, whatever a data sheet says.", whats(other))
	}
	if washers > 0 {
		text += fmt.Sprintf(" A coupling that its washer closes holds %s: join it by another thread.", bars(o.holds()))
	}
	if clamps {
		text += " Clamps on a tail do not hold that: take a hose that is made up with ends."
	}
	return text
}

// instead says how a person's act can be kept from overloading the part; nothing where it
// is no act, or where the part is too weak without one.
func instead(s *bom.System, o *overload) string {
	u := o.state.Unit
	if u == nil || o.running() || o.state.Failure {
		return ""
	}
	if relief := reliefThatBounds(s, o); relief != nil {
		if to, ok := lowered(s, relief, o.segment, o.hold); ok {
			return fmt.Sprintf(", or set %s to %s", relief.Name, to)
		}
		return ""
	}
	own := ""
	if to, ok := lowered(s, nil, o.segment, o.hold); ok {
		own = fmt.Sprintf(", or give the line its own relief, set to %s, with a free outlet", to)
	}
	switch {
	case o.state.Name == u.Name+" open":
		return fmt.Sprintf(", or see that %s cannot be left open%s", u.Name, own)
	case o.state.Name == u.Name+" between":
		return fmt.Sprintf(", or take a selector that is open between its positions, and write between = \"open\" on `%s`", u.Item.ID)
	case u.Item.Kind.Selector:
		return fmt.Sprintf(", or see that %s cannot be left that way%s", u.Name, own)
	case u.Item.Kind.Is(catalog.Throttles): // it must be able to shut
		return own
	}
	return fmt.Sprintf(", or see that %s cannot be left shut%s", u.Name, own)
}

// reliefThatBounds is the relief of the part's line that lifts and so gives the pressure
// that the part sees; nil where there is none.
func reliefThatBounds(s *bom.System, o *overload) *graph.Unit {
	for _, u := range reliefs(s) {
		if s.Segments.SegmentOf(u.First+u.Item.PortIndex("in")) == o.segment && o.seen <= standsOpen(u)+pressure.Slack {
			return u
		}
	}
	return nil
}

// reliefsNeed is what the reliefs of a line ask of its parts; 0 where it has none.
func reliefsNeed(s *bom.System, g *segment.Segment) quantity.Pressure {
	var need quantity.Pressure
	for _, u := range reliefs(s) {
		if s.Segments.SegmentOf(u.First+u.Item.PortIndex("in")) == g {
			need = max(need, reliefNeeds(u))
		}
	}
	return need
}

// castClass reports whether it is a fitting of class 150 on high pressure, bought for its
// number.
func (o *overload) castClass() bool {
	return o.segment.High() && strings.Contains(strings.ToLower(o.hold.Rating.Text), "class 150")
}

// elsewhere reports whether the standard of another end of the part gives less than it needs: a
// data sheet for more clears the weakest end, and that one would be too weak next.
func elsewhere(s *bom.System, o *overload, need quantity.Pressure) bool {
	if o.unit == nil {
		return false
	}
	for i := range o.unit.Item.Ports {
		p := o.unit.First + i
		if h := s.Ratings.Port(p); s.Segments.SegmentOf(p) == o.segment && h.Known && standardRules(h, need) {
			return true
		}
	}
	return false
}
