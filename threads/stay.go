package threads

import "fmt"

// MayStay answers what people ask of a joint that they have made already: may I leave
// it? By pressure and by place, with the reason in a few words.
func (m *Mating) MayStay() string {
	switch m.Verdict {
	case Seals, SealsWith:
		return "Yes: it holds at the parts' own ratings, if it is closed as it should be."
	case LowPressureOnly:
		limit := "at tank pressure"
		if m.HasLimit {
			limit = fmt.Sprintf("up to %.0f bar", m.Limit.Bar())
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
