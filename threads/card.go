package threads

import (
	"cmp"
	"math"
	"slices"
)

// Card is what a fitter looks up of one end: its limits, what it is mistaken for,
// what it goes with, and how that joint is made.
type Card struct {
	End        End
	Crest      Band // across the crests where the thread begins: the outside of a male, the inside of a female
	PitchDia   Band // there too
	LookAlikes []LookAlike
	Mates      []Mating // best first: End is A
	Makeup     string   // of its own kind of joint, the one that needs fewest words; "" if none holds
	Source     string   // of the figures of the make-up
}

// Band is a diameter at both ends of its tolerance.
type Band struct{ Least, Most Length }

// CardOf looks an end up. False for an end without a thread, or without a sex: a
// male and a female of one size are two cards.
//
// The limits are those of the thread's standard where it begins: at the small end
// of a taper male, at the open face of a taper female.
func CardOf(e End) (Card, bool) {
	if e.Form == nil || e.Sex == NoSex {
		return Card{}, false
	}
	c := Card{End: e, LookAlikes: lookAlikes(e), Mates: matesOf(e)}
	c.Crest = CrestBand(e.Form, e.Sex)
	c.PitchDia = Band{e.Form.outside.loose.pitch, e.Form.outside.tight.pitch}
	if e.Sex == Female {
		c.PitchDia = Band{e.Form.inside.tight.pitch, e.Form.inside.loose.pitch}
	}
	if m, ok := usualJoint(c.Mates); ok {
		mk := m.Makeup()
		c.Makeup, c.Source = mk.String(), mk.Source
	}
	return c, true
}

// CrestBand gives the limits of a thread across its crests where it begins: the
// outside of a male, the inside of a female. A sex that the family does not come
// in has no limits of a standard: its figures are then of no use.
func CrestBand(f *Form, sex Sex) Band {
	s := crestAt(f, sex, 0)
	return Band{Length(s.least), Length(s.most)}
}

// LookAlike is another family's thread that a calliper does not tell apart.
type LookAlike struct {
	Form *Form
	Tell []string // how to tell; empty when no measurement does
}

// How near a look-alike is (judgements).
const (
	alikeGap   = 2 * calliperError // mm between the crests of the two at their nearest
	alikePitch = 0.2               // of the pitch: more is seen at a glance
	clearlyOff = 0.3               // mm between the middles: worth telling
)

// lookAlikes lists the threads of other families within reach of the calliper,
// nearest first.
func lookAlikes(e End) []LookAlike {
	type near struct {
		LookAlike
		off float64
	}
	var found []near
	for _, family := range Families() {
		only := family.Facts().Only
		if family == e.Family || only != NoSex && only != e.Sex {
			continue
		}
		for _, f := range Forms(family) {
			if off, ok := nearness(e, f); ok {
				found = append(found, near{LookAlike{f, tells(e, f)}, off})
			}
		}
	}
	slices.SortStableFunc(found, func(a, b near) int { return cmp.Compare(a.off, b.off) })
	out := make([]LookAlike, 0, len(found))
	for _, n := range found {
		out = append(out, n.LookAlike)
	}
	return out
}

// nearness is how many errors of the tools lie between an end and a thread; false
// when they are not taken for each other.
func nearness(e End, f *Form) (float64, bool) {
	pitch := math.Abs(math.Log(float64(f.Pitch / e.Form.Pitch)))
	a, b := span(e.Form, e.Sex), span(f, e.Sex)
	if pitch > alikePitch || max(a.least-b.most, b.least-a.most) > alikeGap {
		return 0, false
	}
	off := pitch/gaugeError + math.Abs(middleOf(a)-middleOf(b))/calliperError
	if f.Flank != e.Form.Flank {
		off++
	}
	if f.Taper != e.Form.Taper {
		off += 2
	}
	return off, true
}

// span is all that the crests of a thread may measure, wear apart.
func span(f *Form, sex Sex) stretch {
	a, b := crestAt(f, sex, 0), crestAt(f, sex, 1)
	return stretch{min(a.least, b.least), max(a.most, b.most)}
}

func middleOf(s stretch) float64 { return (s.least + s.most) / 2 }

// tells says by what a thread differs from an end, surest first.
func tells(e End, f *Form) []string {
	var out []string
	if math.Abs(float64(f.Pitch-e.Form.Pitch)) >= samePitch*float64(e.Form.Pitch) {
		out = append(out, pitchWords(f)+", not "+pitchWords(e.Form))
	}
	if f.Taper != e.Form.Taper {
		if f.Taper > 0 {
			out = append(out, "it tapers")
		} else {
			out = append(out, "it is parallel")
		}
	}
	if f.Flank != e.Form.Flank {
		out = append(out, trim(f.Flank)+" degree flanks, not "+trim(e.Form.Flank))
	}
	off := middleOf(span(f, e.Sex)) - middleOf(span(e.Form, e.Sex))
	if f.Taper == e.Form.Taper && math.Abs(off) >= clearlyOff {
		word := " mm larger"
		if off < 0 {
			word = " mm smaller"
		}
		out = append(out, "about "+trim(math.Round(math.Abs(off)*10)/10)+word)
	}
	a, b := usualNose(e.Family), usualNose(f.Family)
	if a != b {
		out = append(out, "it has "+noseNames[b][e.Sex])
	}
	if len(out) == 0 && f.Tube > 0 && e.Form.Tube > 0 && f.Tube != e.Form.Tube {
		out = append(out, "it takes a tube of "+f.Tube.String()+", not "+e.Form.Tube.String())
	}
	return out
}

// samePitch is the share of a pitch within which two are the same.
const samePitch = 0.003

// usualNose is the nose that most ends of a family have.
func usualNose(f Family) Nose {
	best := PlainNose
	for n := PlainNose; n < noseEnd; n++ {
		if noseShares()[f][n] > noseShares()[f][best] {
			best = n
		}
	}
	return best
}

// matesOf joins an end with every partner of its own size or its own thread, in
// all the ways a partner may close, and keeps one joint of each outcome: the one
// that needs the fewest words.
func matesOf(e End) []Mating {
	var out []Mating
	for _, family := range Families() {
		if only := family.Facts().Only; only == e.Sex {
			continue
		}
		for _, f := range Forms(family) {
			if f.Size == e.Size && f.Pitch > 0 && isPipe(family) == isPipe(e.Family) || alike(e.Form, f) {
				out = append(out, waysToMate(e, Threaded(f, e.Sex.Other()))...)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Mating) int {
		return cmp.Or(cmp.Compare(grade(a), grade(b)), cmp.Compare(kinship(a), kinship(b)),
			cmp.Compare(a.Verdict, b.Verdict), cmp.Compare(wordsOf(a), wordsOf(b)))
	})
	return out
}

// grade sorts joints into those that hold, those that hold a little, and the rest.
func grade(m Mating) int {
	switch {
	case m.Verdict.Holds():
		return 0
	case m.Verdict == LowPressureOnly:
		return 1
	}
	return 2
}

// usualJoint is the joint that holds with the nearest kin and the fewest words.
func usualJoint(list []Mating) (Mating, bool) {
	best := -1
	for i, m := range list {
		if m.Verdict.Holds() && (best < 0 || cmp.Or(cmp.Compare(kinship(m), kinship(list[best])), cmp.Compare(wordsOf(m), wordsOf(list[best]))) < 0) {
			best = i
		}
	}
	if best < 0 {
		return Mating{}, false
	}
	return list[best], true
}

// isPipe reports whether a family's sizes are those of pipe: 1/2 of one is meant
// to go with 1/2 of another, and often does not.
func isPipe(f Family) bool { return f >= NPT && f <= Rp }

// kinship puts the partner of the same standard first: same family, same size.
func kinship(m Mating) int {
	switch {
	case m.A.Family == m.B.Family && m.A.Size == m.B.Size:
		return 0
	case m.A.Family.Facts().Standard == m.B.Family.Facts().Standard:
		return 1
	}
	return 2
}

// wordsOf counts what a joint needs said beyond its threads.
func wordsOf(m Mating) int {
	n := 0
	for _, said := range []bool{m.A.Seal != NoSeal, m.B.Seal != NoSeal, m.A.Swivel, m.B.Swivel} {
		if said {
			n++
		}
	}
	return n
}

// waysToMate tries the seals of both ends, and a swivel on the female.
func waysToMate(a, b End) []Mating {
	type outcome struct {
		verdict Verdict
		closes  string
	}
	seen := map[outcome]bool{}
	var out []Mating
	for _, x := range waysToClose(a) {
		for _, y := range waysToClose(b) {
			m := Mate(x, y)
			if o := (outcome{m.Verdict, m.Closes()}); !seen[o] {
				seen[o] = true
				out = append(out, m)
			}
		}
	}
	return out
}

// waysToClose lists an end as it is, then with each seal, if it names none, and
// with a nut that turns, if it is a female.
func waysToClose(e End) []End {
	out := []End{e}
	if e.Sex == Female && !e.Swivel {
		turning := e
		turning.Swivel = true
		out = append(out, turning)
	}
	if e.Seal != NoSeal {
		return out
	}
	for _, plain := range slices.Clone(out) {
		for s := NoSeal + 1; s < sealEnd; s++ {
			sealed := plain
			sealed.Seal = s
			out = append(out, sealed)
		}
	}
	return out
}
