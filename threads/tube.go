package threads

import (
	"math"

	"handtight/pressure/quantity"
)

// How far a tail may differ from the bore of its hose, in millimetres
// (judgements, shown as such).
const (
	barbSnug = 0.6 // fits
	barbPoor = 1.5 // goes on, at tank pressure; beyond it does not hold
	tubeSnug = 0.1 // a tube in a ring or a grip
)

// poorLimit is what a poor fit is held to.
const poorLimit = 10 * quantity.Bar

// mateTubes judges ends of which one at least has no thread.
func (m *Mating) mateTubes() {
	a, b := &m.A, &m.B
	if grips(a.Family) && grips(b.Family) && (a.Sex == NoSex) != (b.Sex == NoSex) {
		a.Sex, b.Sex = sexes(a.Sex, b.Sex) // a tube end is taken as the half that fits the other
	}
	switch {
	case clamps(a, b):
		m.byFit(barbSnug, barbPoor)
	case grips(a.Family) && grips(b.Family):
		m.mateGrips()
	case inCone(a, b) || inCone(b, a):
		m.mateRing()
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

// inCone reports whether the first end is a tube and the second a body with a 24
// degree cone, which takes a tube of its own size with a nut and a ring.
func inCone(tube, body *End) bool {
	return tube.IsTube() && body.Form != nil && body.Sex != Female && (body.Family == Cone24L || body.Family == Cone24S)
}

// mateRing judges a tube in the cone of a body: the ring needs the body's own tube.
func (m *Mating) mateRing() {
	tube, body := &m.A, &m.B
	if tube.Form != nil {
		tube, body = body, tube
	}
	tube.Sex = Male
	switch off := tube.Diameter - body.Form.Tube; {
	case tube.Diameter == 0:
		m.Verdict, m.why = Leaks, byUnknown
	case off > tubeSnug+1e-9:
		m.Verdict, m.why = WillNotStart, byRingSize
	case off < -tubeSnug-1e-9:
		m.Verdict, m.why = Leaks, byRingSize
	default:
		m.Verdict, m.why = Seals, byRing
	}
}

// mateGrips judges a tube (male) in a push-in or compression end.
func (m *Mating) mateGrips() {
	if m.A.Sex == m.B.Sex && m.A.Sex != NoSex {
		m.Verdict, m.why = SameSex, bySex
		if m.A.Sex == Female {
			m.why = bySockets
		}
		return
	}
	m.byFit(tubeSnug, tubeSnug)
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
		m.Verdict, m.why, m.Limit, m.HasLimit = LowPressureOnly, byTube, poorLimit, true
	case off > 0:
		m.Verdict, m.why = WillNotStart, byTubeTight
	default:
		m.Verdict, m.why = Leaks, byTubeTight
	}
}
