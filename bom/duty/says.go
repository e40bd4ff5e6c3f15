package duty

import (
	"fmt"
	"math"
	"strings"

	"handtight/pressure/quantity"
)

// ElementsAge is the age of the elements at the middle, in words.
func (m *Making) ElementsAge() string {
	if age := m.plan.Duty.Age; age != nil {
		return "elements of " + age.String()
	}
	return "new elements"
}

// MiddleOf is a fact at the middle of what is said, with elements of the age that is said, else new.
func (m *Making) MiddleOf(name string) (v float64, ok bool) {
	if m.Made && m.Recovered != nil { // where its feed pump's curve and the membrane meet
		switch name {
		case "feed_flow":
			return m.Recovered.Middle.High.LitresPerMinute(), true
		case "feed_taken":
			return m.Recovered.Middle.Feed.LitresPerMinute(), true
		case "feed_pressure":
			return m.Recovered.Middle.Inlet.Bar(), true
		}
	}
	if name == "feed_flow" && m.FeedKnown {
		return m.Feed.Middle().LitresPerMinute(), true
	}
	if m.Power != nil && m.Power.Battery && name == "current" {
		return float64(m.Power.MidAmps) + float64(m.Power.Feeder.Middle())*b2f(!m.Power.feederAlone(m)), true
	}
	if !m.Made {
		return 0, false
	}
	r := &m.Middle
	v, ok = map[string]float64{
		"product": r.Product.LitresPerHour(), "product_salinity": float64(r.Salt), "recovery": r.Recovery.Percent(),
		"recovery_first": r.First.Recovery.Percent(), "recovery_last": r.Last.Recovery.Percent(), "brine": r.Brine.LitresPerMinute(),
		"brine_salinity": float64(r.BrineSalinity), "ndp": r.Drive.Bar(), "flux": r.Flux.LitresPerSquareMetreHour(),
		"polarisation": r.Polarisation, "vessel_drop": r.Loss.Bar(), "held_pressure": m.mid.Pressure.Bar(),
	}[name]
	return v, ok
}

func (p *Power) feederAlone(m *Making) bool { return m.Recovery != nil }

func b2f(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// sentences are what is told to people, one after the other.
type sentences []string

func (s *sentences) say(format string, args ...any) { *s = append(*s, fmt.Sprintf(format, args...)) }

// Says is what follows from the figures for people, a sentence each.
func (m *Making) Says() []string {
	var out sentences
	if l := m.Lines; l != nil && !l.Solved && l.WhyNot != "" && m.FeedKnown {
		out.say("What runs in its hoses, and the pressure before its pumps, are not reckoned: %s.", l.WhyNot)
	}
	for _, u := range m.Unsolved {
		out.say("Not reckoned: %s.", u)
	}
	if !m.Made {
		if m.WhyNot != "" {
			out.say("Its fresh water is not reckoned: %s.", m.WhyNot)
		}
		return out
	}
	out.water(m)
	out.filters(m)
	if m.Power != nil {
		out.power(m)
	}
	if r := m.Recovered; r != nil {
		out.say("Its pressure is not set by hand: a rod of %s gives %s of the feed as fresh water, and the membrane comes to the pressure at which that passes. Each 1 %% of leak takes %.0f %% of the fresh water.",
			r.Device.Ratio, r.Device.Ratio-r.Device.Leak, 1/r.Device.Ratio.Fraction())
	}
	return out
}

// water says whether what is wanted comes, and how sure the reckoning of it is.
func (s *sentences) water(m *Making) {
	if w := m.plan.Duty.Product; w != nil {
		switch {
		case m.All.Product.Lo >= *w:
			s.say("The %s wanted come in the coldest and saltiest water named, and with old elements.", w)
		case m.Middle.Product >= *w:
			s.say("The %s wanted come at the middle of what is said; in %s water of %s with old elements it is %.0f L/h.", w, m.in.water.Lo, m.in.salinity.Hi, m.All.Product.Lo.LitresPerHour())
		}
	}
	if low, high, ok := m.FilmSpread(); ok && math.Max(-low, high) > 0.005 {
		s.say("The model itself is sure to %.0f to %+.0f %% of the product: how salt builds up at the membrane is known no better.", 100*low, 100*high)
	}
	if m.in.water.Lo < 16 {
		s.say("Makers' temperature factors differ by 4 %% at 15 C and by 10 %% at 10 C: so much either way in the coldest water.")
	}
	if m.in.salinity.Lo < 10 {
		s.say("Below 10 g/kg it is river or harbour water: its ions are not those of the sea, and neither is its osmotic pressure.")
	}
}

// filters says when to change the cartridges, or what becomes of the plant as they fill.
func (s *sentences) filters(m *Making) {
	if m.Lines == nil || !m.Lines.Solved {
		return
	}
	for _, i := range m.Lines.Inlets {
		switch {
		case len(i.Filters) == 0:
		case m.Recovered != nil:
			s.say("%s", m.Recovered.dirtyText(i.Pump.Name))
		case i.HasFeed && i.FeedKnown && i.May > 0:
			s.say("Change the cartridges before %s when all losses before it come to %.2f bar: 0.2 bar are then left at it.", i.Pump.Name, i.May.Bar())
		}
	}
}

// power says what the current rests on, what the engine's alternator leaves of it, and what the cable loses.
func (s *sentences) power(m *Making) {
	p := m.Power
	if p.Why != "" {
		s.say("No current is reckoned: %s.", p.Why)
	}
	switch {
	case !p.Battery:
	case p.Drain != "":
		s.say("No battery drives its piston pump: the current is that of %s.", p.Drain)
	case !p.Plate:
		s.say("The current is reckoned and not from a plate: %s. At a sagging %s it is up to %.0f A.", p.Basis, sagging(p.Volts), float64(p.Sagged+p.Feeder.Hi))
	}
	if ps := m.plan.Power; p.Battery && ps != nil && ps.Alternator != nil {
		if left := float64(*ps.Alternator - p.All.Hi); left >= 0 {
			s.say("While the engine runs, its alternator of %s carries the plant, and %.0f A of it are left at the least.", ps.Alternator, left)
		} else {
			s.say("While the engine runs, its alternator of %s carries part of it: up to %.0f A come from the battery.", ps.Alternator, -left)
		}
	}
	if c := p.Cable; c != nil {
		s.say("The cable drops %.1f to %.1f %%; for 3 %% it takes %.1f mm2, for 10 %% %.1f. What current a cable may carry, and its fuse, are for the local code and a licensed electrician.",
			c.Share.Lo.Percent(), c.Share.Hi.Percent(), float64(c.Strict), float64(c.Common))
	}
}

// LongerText is what one element more does for a plant whose rod sets its recovery; "" for another.
func (m *Making) LongerText() string {
	if !m.Made || m.Recovered == nil || !m.Recovered.LongerKnown {
		return ""
	}
	r := m.Recovered
	text := fmt.Sprintf("One element more in the row makes %.0f L/h in place of %.0f, since the rod sets the share of the feed, but at %.0f bar in place of %.0f, and of %.0f mg/L in place of %.0f.",
		r.Longer.Product.LitresPerHour(), m.Middle.Product.LitresPerHour(), r.LongerHeld.Bar(), r.Middle.Held.Bar(), float64(r.Longer.Salt), float64(m.Middle.Salt))
	if r.Longer.Salt > m.Middle.Salt {
		return text + " It eases the feed pump in cold water, and lets more salt through."
	}
	return text
}

// UpgradeText is what one element more asks for; "" where it is not reckoned.
func (m *Making) UpgradeText() string {
	u, ok := m.Upgrade()
	if !ok {
		return ""
	}
	var b strings.Builder
	fmt.Fprintf(&b, "One element more in the row needs at least %s of feed (15 %% an element, the least brine)", litresMinute(u.Least))
	if u.MostKnown {
		fmt.Fprintf(&b, ", %s by the strict limits (10 %%)", litresMinute(u.Most))
	}
	fmt.Fprintf(&b, "; it would make %.0f to %.0f L/h of %.0f to %.0f mg/L. ", u.Makes.Lo.LitresPerHour(), u.Makes.Hi.LitresPerHour(), float64(u.SaltWith.Lo), float64(u.SaltWith.Hi))
	if u.EnoughAsItIs {
		fmt.Fprintf(&b, "The pump as it is gives that.")
		return b.String()
	}
	fmt.Fprintf(&b, "At the flow of now it would make %.0f L/h of %.0f mg/L and push one element to %.1f %%. ", u.AtNow.Product.LitresPerHour(), float64(u.SaltAtNow), u.FirstAtNow.Percent())
	fmt.Fprintf(&b, "Such a pump takes %.0f to %.0f W", float64(u.Power.Lo), float64(u.Power.Hi))
	if u.HasCurrent {
		fmt.Fprintf(&b, ", %.0f to %.0f A", float64(u.Current.Lo), float64(u.Current.Hi))
	}
	fmt.Fprintf(&b, ", and suction hose from %s bore.", u.Bore)
	return b.String()
}

func litresMinute(q quantity.Flow) string { return fmt.Sprintf("%.1f L/min", q.LitresPerMinute()) }

// dirtyText is what becomes of it as its filters fill: it takes less, and makes less.
func (r *Recovered) dirtyText(name string) string {
	switch {
	case r.Curve == nil:
		return "What " + name + " makes with filters at the end of their life is not reckoned: its feed pump's curve is not said."
	case r.DirtyErr != nil:
		return "With all its filters at the end of their life " + name + " stands still: the feed pump cannot push so much. Change the cartridges before that."
	}
	return fmt.Sprintf("With all its filters at the end of their life %s takes %s and makes %.0f L/h at the middle, in place of %.0f.",
		name, r.Dirty.Feed, r.Dirty.Product.LitresPerHour(), r.Middle.Product.LitresPerHour())
}
