package duty

import (
	"fmt"
	"strings"
)

// Beside says in words what a change does: what is made before and after, which limits are left
// or come to hold, and where the elements change, what pump they ask for.
func Beside(now, then *Making) []string {
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	switch {
	case !now.Made && !then.Made:
		say("Neither is reckoned: %s.", then.WhyNot)
		return out
	case !then.Made:
		say("So it is not reckoned: %s.", then.WhyNot)
		return out
	case !now.Made:
		say("So it is reckoned; as it stands it is not: %s.", now.WhyNot)
	default:
		by := ""
		if q := float64(now.Middle.Product); q > 0 {
			by = fmt.Sprintf(" (%+.0f %%)", 100*(float64(then.Middle.Product)/q-1))
		}
		say("At the middle it makes %.0f L/h%s of %.0f mg/L, in place of %.0f L/h of %.0f mg/L.", then.Middle.Product.LitresPerHour(), by, float64(then.Middle.Salt), now.Middle.Product.LitresPerHour(), float64(now.Middle.Salt))
	}
	var broken, held []string
	for _, l := range then.Limits {
		old, ok := now.Limit(l.Name)
		text := fmt.Sprintf("%s %.3g %s, and it comes to %.3g", l.Words, l.Strict, l.Unit, l.Middle)
		switch {
		case l.Doubtful() && !(ok && old.Doubtful()):
			broken = append(broken, text)
		case !l.Doubtful() && ok && old.Doubtful():
			held = append(held, l.Words)
		case l.Doubtful():
			broken = append(broken, text+", as before")
		}
	}
	switch {
	case len(broken) > 0:
		say("Beyond a limit: %s.", strings.Join(broken, "; "))
	case len(held) > 0:
		say("What was beyond a limit holds: %s.", strings.Join(held, "; "))
	default:
		say("Every limit of the elements holds at the middle.")
	}
	if then.Elements != now.Elements {
		if text := then.needs(); text != "" {
			say("%s", text)
		}
	}
	return out
}

// needs is what pump the elements ask for: "2 elements need 8.1 to 14.3 L/min at 57 bar and the
// pump delivers 6.7 at the middle: another pump, 1.0 to 1.3 kW, 42 to 54 A".
func (m *Making) needs() string {
	u, ok := m.Needs()
	if !ok {
		return ""
	}
	var b strings.Builder
	verb := "elements need"
	if m.Elements == 1 {
		verb = "element needs"
	}
	fmt.Fprintf(&b, "%d %s %s", m.Elements, verb, litresMinute(u.Least))
	if u.MostKnown {
		fmt.Fprintf(&b, " (15 %% an element, the least brine) to %s (10 %%, the strict limits)", litresMinute(u.Most))
	} else {
		b.WriteString(" or more (15 % an element, the least brine)")
	}
	fmt.Fprintf(&b, " at %.0f bar, and the pump delivers %.1f at the middle: ", m.mid.Pressure.Bar(), m.mid.Feed.LitresPerMinute())
	if u.EnoughAsItIs {
		b.WriteString("it is enough as it is.")
		return b.String()
	}
	fmt.Fprintf(&b, "another pump, %.2g to %.2g kW", float64(u.Power.Lo)/1000, float64(u.Power.Hi)/1000)
	if u.HasCurrent {
		fmt.Fprintf(&b, ", %.0f to %.0f A at %s", float64(u.Current.Lo), float64(u.Current.Hi), m.Power.Volts)
	}
	fmt.Fprintf(&b, ", and suction hose from %s bore; it then makes %.0f to %.0f L/h.", u.Bore, u.Makes.Lo.LitresPerHour(), u.Makes.Hi.LitresPerHour())
	return b.String()
}
