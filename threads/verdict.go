package threads

// Verdict is what becomes of a joint. The zero value is invalid.
type Verdict uint8

// The verdicts, best first.
const (
	Seals Verdict = iota + 1
	SealsWith
	LowPressureOnly
	Leaks
	Binds
	Loose
	WillNotStart
	SameSex
)

var verdictNames = [...]string{"no verdict", "seals", "seals-with", "low-pressure-only", "leaks", "binds", "loose", "will-not-start", "same-sex"}

// String gives the verdict's name as it stands in JSON.
func (v Verdict) String() string {
	if int(v) >= len(verdictNames) {
		v = 0
	}
	return verdictNames[v]
}

// VerdictNamed finds a verdict by its JSON name.
func VerdictNamed(name string) (Verdict, bool) {
	for v, n := range verdictNames {
		if n == name && v > 0 {
			return Verdict(v), true
		}
	}
	return 0, false
}

// Holds reports whether the joint closes at its parts' own rating.
func (v Verdict) Holds() bool { return v == Seals || v == SealsWith }

// danger ranks verdicts for an end with several readings: the worst is the one
// that fools the fitter longest, since it goes together and then lets go.
var danger = [...]uint8{0, 1, 2, 3, 8, 7, 9, 6, 5}

// Worse reports whether v is worse than w.
func (v Verdict) Worse(w Verdict) bool { return danger[v] > danger[w] }
