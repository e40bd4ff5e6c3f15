package threads

import (
	"fmt"

	"handtight/pressure/quantity"
)

// Bears reports whether a joint is right at a pressure: one that holds up to its limit, where it has
// one, and one for low pressure only within its limit and where a drip may be (strict: it may not).
func (m *Mating) Bears(p quantity.Pressure, strict bool) bool {
	if m.HasLimit && p > m.Limit {
		return false
	}
	return m.Verdict.Holds() || m.Verdict == LowPressureOnly && m.HasLimit && !strict
}

// MayStay answers what people ask of a joint that they have made already: may I leave
// it? By pressure and by place, with the reason in a few words.
func (m *Mating) MayStay() string {
	switch m.Verdict {
	case Seals, SealsWith:
		if m.HasLimit {
			return fmt.Sprintf("Yes, up to %s, if it is closed as it should be.", m.Limit)
		}
		return "Yes: it holds at the parts' own ratings, if it is closed as it should be."
	case LowPressureOnly:
		limit := "at tank pressure"
		if m.HasLimit {
			limit = fmt.Sprintf("up to %s", m.Limit)
		}
		return "Only " + limit + ", where a drip does no harm and it can be seen; never below the waterline."
	case Leaks:
		return "No. With tape it may stay dry at tank pressure for a while; under a pump it weeps, and below the waterline it must never be left."
	case Binds:
		return "No. It hangs by the few threads that jammed: it may hold for a time, and then it is thrown out. Never below the waterline."
	case Loose:
		return "No. It holds by the tips of the threads and is pulled out under pressure. Never below the waterline."
	}
	return "No: it cannot be made."
}
