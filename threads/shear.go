package threads

import "math"

// ShearArea returns the areas that would have to shear before the joint pulls
// apart, in mm2: across the external threads at the internal crests, and across the
// internal threads at the external crests.
//
// Formula, for a length L engaged, a pitch p and half flank angles a:
//
//	external = pi (L/p) K (p/2 + tan a (E - K))
//	internal = pi (L/p) D (p/2 + tan a (D - F))
//
// with K the internal minor and F the internal pitch diameter at their largest, E
// the external pitch and D the external major diameter at their least: the loosest
// parts. A taper is taken at the middle of what is engaged. L is the hand-tight
// engagement of the loosest parts; of parallel threads it is [Form.FullTurns]. No
// turns of the wrench are counted, so that it is a lower bound where the thread is
// cut to its full length. tan a is each thread's own: 0.577 of 60 degrees, 0.521 of 55.
//
// ok is false for ends without threads or of one sex, for threads of two pitches,
// and where the crests do not reach past each other.
//
// Source: FED-STD-H28/2; the internal form by ASME B1.1 appendix B (memory).
func (m *Mating) ShearArea() (external, internal SquareMillimetres, ok bool) {
	e, i, engaged, ok := m.engaged()
	if !ok {
		return 0, 0, false
	}
	minor, major := i.dia-2*i.crest, e.dia+2*e.crest
	turns := engaged / e.pitch
	external = SquareMillimetres(math.Pi * turns * minor * (e.pitch/2 + e.tan*(e.dia-minor)))
	internal = SquareMillimetres(math.Pi * turns * major * (i.pitch/2 + i.tan*(major-i.dia)))
	if !(major > minor && external > 0 && internal > 0) {
		return 0, 0, false
	}
	return external, internal, true
}

// EngagedTurns is how many turns of thread hold each other at the loosest parts,
// screwed together by hand. ok is false as for [Mating.ShearArea].
func (m *Mating) EngagedTurns() (turns Turns, ok bool) {
	e, _, engaged, ok := m.engaged()
	if !ok {
		return 0, false
	}
	return Turns(engaged / e.pitch), true
}

// engaged gives both profiles of the loosest parts at the middle of the length
// that they are engaged, and that length.
func (m *Mating) engaged() (e, i profile, length float64, ok bool) {
	male, female := m.male(), m.female()
	if male.Form == nil || female.Form == nil || m.Verdict == SameSex || m.Verdict == WillNotStart || m.Verdict == 0 ||
		math.Abs(float64(male.Form.Pitch-female.Form.Pitch)) >= 0.003*float64(male.Form.Pitch) {
		return e, i, 0, false
	}
	e, i = male.Form.external(male.Form.outside.loose), female.Form.internal(female.Form.inside.loose)
	full := float64(min(male.Form.FullTurns(), female.Form.FullTurns())) * e.pitch
	if male.Short {
		e.cutShort(1)
		full -= e.pitch
	}
	if female.Short {
		i.cutShort(-1)
		full -= e.pitch
	}
	depth, _ := meet(e, i).first()
	length = min(depth, full)
	gap := i.dia - e.dia
	if taper := max(e.taper, i.taper); taper > 0 {
		gap = max(0, gap-taper*length)
	}
	e.dia += e.taper * length / 2
	i.dia = e.dia + gap
	return e, i, length, length > 0
}
