package threads

import "math"

// How far a tail may differ from the bore of its hose, in millimetres
// (judgements, shown as such).
const (
	barbSnug = 0.6 // fits
	barbPoor = 1.5 // goes on, at tank pressure; beyond it does not hold
	tubeSnug = 0.1 // a tube in a ring or a grip
	poorBar  = 10  // limit of a poor fit, bar
)

// mateTubes judges ends of which one at least has no thread.
func (m *Mating) mateTubes() {
	a, b := &m.A, &m.B
	switch {
	case clamps(a, b):
		m.byFit(barbSnug, barbPoor)
	case grips(a.Family) && grips(b.Family):
		m.mateGrips()
	case a.Family == Ferrule && b.Family == Ferrule:
		m.mateFerrules()
	case a.Family == b.Family && a.Family != 0:
		m.Verdict, m.why = SameSex, bySex
	default:
		m.Verdict, m.why = WillNotStart, byNature
	}
}

func clamps(a, b *End) bool {
	return a.Family == Barb && b.Family == Bore || a.Family == Bore && b.Family == Barb
}

func grips(f Family) bool { return f == Push || f == Compression }

// mateGrips judges a tube (male) in a push-in or compression end.
func (m *Mating) mateGrips() {
	if m.A.Sex == m.B.Sex && m.A.Sex != NoSex {
		m.Verdict, m.why = SameSex, bySex
		return
	}
	m.byFit(tubeSnug, tubeSnug)
}

// mateFerrules judges two clamp ferrules, which are alike: one size or none.
func (m *Mating) mateFerrules() {
	a, b := float64(m.A.Diameter), float64(m.B.Diameter)
	switch {
	case a == 0 || b == 0:
		m.Verdict, m.why = Leaks, byUnknown
	case math.Abs(a-b) <= tubeSnug+1e-9:
		m.Verdict, m.why = SealsWith, byTube
	default:
		m.Verdict, m.why = Leaks, byTubeTight
	}
}

// byFit compares diameters: outside of what goes in, inside of what goes over.
// Of two grips without a sex the first is the tube, as with threads.
func (m *Mating) byFit(snug, poor float64) {
	inner, outer := &m.A, &m.B
	if sexA, _ := sexes(m.A.Sex, m.B.Sex); outer.Family == Barb || grips(outer.Family) && sexA == Female {
		inner, outer = outer, inner
	}
	if inner.Diameter == 0 || outer.Diameter == 0 {
		m.Verdict, m.why = Leaks, byUnknown
		return
	}
	off := float64(inner.Diameter - outer.Diameter)
	switch {
	case math.Abs(off) <= snug+1e-9:
		m.Verdict, m.why = SealsWith, byTube
		if grips(outer.Family) {
			m.Verdict = Seals
		}
	case math.Abs(off) <= poor+1e-9:
		m.Verdict, m.why, m.Limit, m.HasLimit = LowPressureOnly, byTube, poorBar, true
	case off > 0:
		m.Verdict, m.why = WillNotStart, byTubeTight
	default:
		m.Verdict, m.why = Leaks, byTubeTight
	}
}
