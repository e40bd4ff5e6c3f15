package card

import (
	"cmp"
	"math"
	"slices"

	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/identify"
	"handtight/threads/makeup"
)

// Card is what a fitter looks up of one end: its limits, what it is mistaken for,
// what it goes with, and how that joint is made.
type Card struct {
	End        threads.End
	Crest      threads.Band // across the crests where the thread begins: the outside of a male, the inside of a female
	PitchDia   threads.Band // there too
	LookAlikes []LookAlike
	Mates      []threads.Mating // best first: End is A
	Makeup     string           // of its own kind of joint, the one that needs fewest words; "" if none holds
	Source     string           // of the figures of the make-up
}

// Of looks an end up. False for an end without a thread, or without a sex: a
// male and a female of one size are two cards.
//
// The limits are those of the thread's standard where it begins: at the small end
// of a taper male, at the open face of a taper female.
func Of(e threads.End) (Card, bool) {
	if e.Form == nil || e.Sex == threads.NoSex {
		return Card{}, false
	}
	c := Card{End: e, LookAlikes: lookAlikes(e), Mates: matesOf(e)}
	c.Crest, c.PitchDia = e.Form.CrestAt(e.Sex, 0), e.Form.PitchLimits(e.Sex)
	if m, ok := usualJoint(c.Mates); ok {
		mk := makeup.Of(&m)
		c.Makeup, c.Source = mk.String(), mk.Source
	}
	return c, true
}

// LookAlike is another family's thread that a calliper does not tell apart.
type LookAlike struct {
	Form *threads.Form
	Tell []string // how to tell; empty when no measurement does
}

// How near a look-alike is (judgements).
const (
	alikeGap   = 2 * identify.CalliperError // mm between the crests of the two at their nearest
	alikePitch = 0.2                        // of the pitch: more is seen at a glance
	clearlyOff = 0.3                        // mm between the middles: worth telling
)

// lookAlikes lists the threads of other families within reach of the calliper,
// nearest first.
func lookAlikes(e threads.End) []LookAlike {
	type near struct {
		LookAlike
		off float64
	}
	var found []near
	for _, family := range threads.Families() {
		only := family.Facts().Only
		if family == e.Family || only != threads.NoSex && only != e.Sex {
			continue
		}
		for _, f := range threads.Forms(family) {
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
func nearness(e threads.End, f *threads.Form) (float64, bool) {
	pitch := math.Abs(math.Log(float64(f.Pitch / e.Form.Pitch)))
	a, b := identify.Reach(e.Form, e.Sex), identify.Reach(f, e.Sex)
	if pitch > alikePitch || max(a.Least-b.Most, b.Least-a.Most) > alikeGap {
		return 0, false
	}
	off := pitch/identify.GaugeError + math.Abs(float64(a.Middle()-b.Middle()))/float64(identify.CalliperError)
	if f.Flank != e.Form.Flank {
		off++
	}
	if f.Taper != e.Form.Taper {
		off += 2
	}
	return off, true
}

// tells says by what a thread differs from an end, surest first.
func tells(e threads.End, f *threads.Form) []string {
	var out []string
	if math.Abs(float64(f.Pitch-e.Form.Pitch)) >= samePitch*float64(e.Form.Pitch) {
		out = append(out, identify.PitchWords(f)+", not "+identify.PitchWords(e.Form))
	}
	if f.Taper != e.Form.Taper {
		if f.Taper > 0 {
			out = append(out, "it tapers")
		} else {
			out = append(out, "it is parallel")
		}
	}
	if f.Flank != e.Form.Flank {
		out = append(out, quantity.Exact(float64(f.Flank))+" degree flanks, not "+quantity.Exact(float64(e.Form.Flank)))
	}
	off := float64(identify.Reach(f, e.Sex).Middle() - identify.Reach(e.Form, e.Sex).Middle())
	if f.Taper == e.Form.Taper && math.Abs(off) >= clearlyOff {
		word := " mm larger"
		if off < 0 {
			word = " mm smaller"
		}
		out = append(out, "about "+quantity.Decimals(math.Abs(off), 1)+word)
	}
	a, b := identify.UsualNose(e.Family), identify.UsualNose(f.Family)
	if a != b {
		out = append(out, "it has "+b.Words(e.Sex))
	}
	if len(out) == 0 && f.Tube > 0 && e.Form.Tube > 0 && f.Tube != e.Form.Tube {
		out = append(out, "it takes a tube of "+f.Tube.String()+", not "+e.Form.Tube.String())
	}
	return out
}

// samePitch is the share of a pitch within which two are the same.
const samePitch = 0.003

// matesOf joins an end with every partner of its own size or its own thread, in
// all the ways a partner may close, and keeps one joint of each outcome: the one
// that needs the fewest words.
func matesOf(e threads.End) []threads.Mating {
	var out []threads.Mating
	for _, family := range threads.Families() {
		if only := family.Facts().Only; only == e.Sex {
			continue
		}
		for _, f := range threads.Forms(family) {
			if f.Size == e.Size && f.Pitch > 0 && isPipe(family) == isPipe(e.Family) || threads.Alike(e.Form, f) {
				out = append(out, pairings(e, threads.Threaded(f, e.Sex.Other()))...)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b threads.Mating) int {
		return cmp.Or(cmp.Compare(grade(a), grade(b)), cmp.Compare(kinship(a), kinship(b)),
			cmp.Compare(wordsOf(a), wordsOf(b)), cmp.Compare(a.Verdict, b.Verdict))
	})
	return out
}

// grade sorts joints into those that hold, those that hold a little, and the rest.
func grade(m threads.Mating) int {
	switch {
	case m.Verdict.Holds():
		return 0
	case m.Verdict == threads.LowPressureOnly:
		return 1
	}
	return 2
}

// usualJoint is the joint that holds with the nearest kin and the fewest words.
func usualJoint(list []threads.Mating) (threads.Mating, bool) {
	best := -1
	for i, m := range list {
		if m.Verdict.Holds() && (best < 0 || cmp.Or(cmp.Compare(kinship(m), kinship(list[best])), cmp.Compare(wordsOf(m), wordsOf(list[best]))) < 0) {
			best = i
		}
	}
	if best < 0 {
		return threads.Mating{}, false
	}
	return list[best], true
}

// isPipe reports whether a family's sizes are those of pipe: 1/2 of one is meant
// to go with 1/2 of another, and often does not.
func isPipe(f threads.Family) bool { return f >= threads.NPT && f <= threads.Rp }

// kinship puts the partner of the same standard first: same family, same size.
func kinship(m threads.Mating) int {
	switch {
	case m.A.Family == m.B.Family && m.A.Size == m.B.Size:
		return 0
	case m.A.Family.Facts().Standard == m.B.Family.Facts().Standard:
		return 1
	}
	return 2
}

// wordsOf counts what a joint needs said beyond its threads.
func wordsOf(m threads.Mating) int {
	n := 0
	for _, said := range []bool{m.A.Seal != threads.NoSeal, m.B.Seal != threads.NoSeal, m.A.Swivel, m.B.Swivel} {
		if said {
			n++
		}
	}
	return n
}

// pairings tries the seals of both ends, and a swivel on the female.
func pairings(a, b threads.End) []threads.Mating {
	type outcome struct {
		verdict threads.Verdict
		closes  string
	}
	seen := map[outcome]bool{}
	var out []threads.Mating
	for _, x := range closings(a) {
		for _, y := range closings(b) {
			m := threads.Mate(x, y)
			if o := (outcome{m.Verdict, m.Closes()}); !seen[o] {
				seen[o] = true
				out = append(out, m)
			}
		}
	}
	return out
}

// closings lists an end as it is, then with each seal, if it names none, and
// with a nut that turns, if it is a female.
func closings(e threads.End) []threads.End {
	out := []threads.End{e}
	if e.Sex == threads.Female && !e.Swivel {
		turning := e
		turning.Swivel = true
		out = append(out, turning)
	}
	if e.Seal != threads.NoSeal {
		return out
	}
	for _, plain := range slices.Clone(out) {
		for _, s := range threads.AllSeals() {
			sealed := plain
			sealed.Seal = s
			out = append(out, sealed)
		}
	}
	return out
}
