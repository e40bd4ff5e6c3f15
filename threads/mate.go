package threads

import (
	"math"

	"handtight/pressure/quantity"
)

// Span is a figure at both ends of the tolerances: the loosest parts and the
// tightest. Known is false where the figure does not exist, such as the
// hand-tight turns of two parallel threads, which run free.
type Span struct {
	Loosest, Tightest Turns
	Known             bool
}

// Mating is what becomes of two ends joined. It holds no text: [Mating.Reason]
// and [Mating.Remedy] write it.
type Mating struct {
	A, B     End
	Verdict  Verdict
	Hand     Span              // turns by hand before a surface meets
	Binding  Span              // turns before a pitch difference jams; unknown for one pitch
	First    Surface           // what meets first
	Depth    float64           // radial thread engaged, as a share of the full thread; 0 without threads
	Virtual  Length            // virtual effective diameter of the external thread; 0 without threads
	Limit    quantity.Pressure // that the joint is held to, whatever its parts hold; see HasLimit
	HasLimit bool

	typical float64 // turns to first contact of middling parts
	why     cause
	seal    *sealRule
	flipped bool // B is the external end
}

// cause says why a verdict was reached, for the texts.
type cause uint8

const (
	bySeal cause = iota + 1 // the row of table/seal.csv
	bySex
	byStart
	bySlack
	byPitch
	byPitchSlack
	byAngle
	byNoSeal
	byDiameter
	byTube
	byTubeTight
	byNature
	byUnknown
	byHand
	byFlange
	byFlangeOff
	bySockets
	byRing
	byRingSize
	byShort
)

// Judgements of the geometry, not figures of a standard.
const (
	startTurns   = 0.5  // fewer turns than this at the loosest: it does not start by hand
	slackDepth   = 0.4  // less of the thread's height engaged than this: it pulls out
	likeDiameter = 0.12 // pitches by which the basic pitch diameters of alike threads may differ
)

// Mate joins two ends and judges the joint by their geometry and their seals.
// The order of the ends does not matter to the verdict. An end whose sex is not
// said is taken as the one that fits the other; of two, the first is the male.
//
// It needs no allocation; the texts are written only when asked for.
func Mate(a, b End) Mating {
	m := Mating{A: a, B: b}
	if !a.Family.Threaded() || !b.Family.Threaded() {
		m.mateTubes()
		return m
	}
	if a.Form == nil || b.Form == nil {
		m.Verdict, m.why = Leaks, byUnknown
		return m
	}
	sexA, sexB := sexes(a.Sex, b.Sex)
	if sexA == sexB {
		m.Verdict, m.why = SameSex, bySex
		return m
	}
	m.flipped = sexA == Female
	switch {
	case a.Left != b.Left:
		m.Verdict, m.why = WillNotStart, byHand
	case (a.Family == PG) != (b.Family == PG):
		m.Verdict, m.why = WillNotStart, byNature
	default:
		m.mateThreads()
	}
	return m
}

// sexes fills in a sex that is not said from the other.
func sexes(a, b Sex) (Sex, Sex) {
	if a == NoSex && b == NoSex {
		return Male, Female
	}
	if a == NoSex {
		a = b.Other()
	}
	if b == NoSex {
		b = a.Other()
	}
	return a, b
}

// male and female give the ends in the order external, internal.
func (m *Mating) male() *End {
	if m.flipped {
		return &m.B
	}
	return &m.A
}

func (m *Mating) female() *End {
	if m.flipped {
		return &m.A
	}
	return &m.B
}

// Male gives the external end of two with threads; of other ends, the first.
func (m *Mating) Male() End { return *m.male() }

// Female gives the internal end of two with threads; of other ends, the second.
func (m *Mating) Female() End { return *m.female() }

// Makes names the kind of joint, by which its make-up is looked up: "taper",
// "washer", "cone", "hose", "ring"; "" where nothing closes.
func (m *Mating) Makes() string {
	switch {
	case !m.closes():
		return ""
	case m.seal != nil:
		return m.seal.makes
	case m.why == byRing:
		return "ring"
	case clamps(&m.A, &m.B):
		return "hose"
	case m.A.Family == Ferrule:
		return "ferrule"
	case m.pushed():
		return "push"
	}
	return "compression"
}

// pushed reports whether the socket of two tube ends is a push-in one; of a tube
// and a socket whose words do not say which is which, either decides.
func (m *Mating) pushed() bool {
	a, b := &m.A, &m.B
	switch {
	case a.Sex == Female || b.Sex == Male:
		return a.Family == Push
	case b.Sex == Female || a.Sex == Male:
		return b.Family == Push
	}
	return a.Family == Push || b.Family == Push
}

// TypicalTurns is how far middling parts screw together before a surface meets; ok
// is false for parallel threads of one pitch, which run free, and without threads.
func (m *Mating) TypicalTurns() (turns Turns, ok bool) {
	return Turns(m.typical), m.A.Form != nil && m.B.Form != nil && !math.IsInf(m.typical, 1) && m.Verdict != SameSex
}

// Alike reports whether two forms are one thread but for taper and tolerance: one
// pitch, one flank angle, one pitch diameter to within an eighth of the pitch.
func Alike(a, b *Form) bool { return alike(a, b) }

func (m *Mating) mateThreads() {
	male, female := m.male(), m.female()
	e, i := male.Form, female.Form
	eTight, eLoose := e.external(e.outside.tight), e.external(e.outside.loose)
	iTight, iLoose := i.internal(i.inside.tight), i.internal(i.inside.loose)
	if male.ClassA && e.Family == G {
		// class A has half of class B's tolerance on the pitch diameter (ISO 228-1)
		eLoose.dia = (eTight.dia + eLoose.dia) / 2
	}
	cut := 0.0
	if male.Short {
		eTight.cutShort(1)
		eLoose.cutShort(1)
		cut++
	}
	if female.Short {
		iTight.cutShort(-1)
		iLoose.cutShort(-1)
		cut++
	}
	tight, loose := meet(eTight, iTight), meet(eLoose, iLoose)
	eMid, iMid := middle(eTight, eLoose), middle(iTight, iLoose)
	mid := meet(eMid, iMid)
	depth, surface := mid.first()
	m.First = surface
	full := float64(min(e.FullTurns(), i.FullTurns())) - cut
	m.Depth = depthShare(eMid, iMid, min(depth, full*mid.pitch), float64(min(e.height, i.height)))
	m.typical = mid.turns()
	m.Virtual = Length(virtualDiameter(eMid, iMid, float64(e.Flank), float64(i.Flank), min(full, mid.turns())))
	m.setTurns(tight, loose, e.Pitch != i.Pitch)
	if alike(e, i) {
		m.judgeSeal()
		return
	}
	m.judgeStrangers(e, i, mid.turns(), loose.turns(), full)
}

func (m *Mating) setTurns(tight, loose contact, pitchDiffers bool) {
	t, l := tight.turns(), loose.turns()
	if !math.IsInf(t, 1) && !math.IsInf(l, 1) {
		m.Hand = Span{Loosest: Turns(l), Tightest: Turns(t), Known: true}
	}
	if pitchDiffers {
		m.Binding = Span{Loosest: Turns(loose.flank / loose.pitch), Tightest: Turns(tight.flank / tight.pitch), Known: true}
	}
}

// alike reports whether two forms are one thread but for taper and tolerance.
func alike(e, i *Form) bool {
	return math.Abs(float64(e.Pitch-i.Pitch)) < 0.003*float64(e.Pitch) && e.Flank == i.Flank &&
		math.Abs(float64(e.PitchDia-i.PitchDia)) < likeDiameter*float64(e.Pitch)
}

// judgeSeal judges threads that are alike: they go together, so what closes?
func (m *Mating) judgeSeal() {
	m.seal = sealOf(m.male(), m.female())
	if m.seal == nil {
		m.Verdict, m.why = Leaks, byNoSeal
		return
	}
	m.Verdict, m.why = m.seal.verdict, bySeal
	if m.A.Short && m.B.Short {
		m.Verdict, m.why, m.seal = Leaks, byShort, nil
		return
	}
	m.Limit, m.HasLimit = m.seal.limit, m.seal.limit > 0
	if m.First == NoSurface && m.Verdict <= LowPressureOnly {
		m.First = Face
	}
}

// judgeStrangers judges threads that are not alike, by how they meet.
func (m *Mating) judgeStrangers(e, i *Form, mid, loose, full float64) {
	pitchDiffers := math.Abs(float64(e.Pitch-i.Pitch)) >= 0.003*float64(e.Pitch)
	switch {
	case m.Depth < slackDepth && loose >= startTurns:
		m.Verdict, m.why = Loose, bySlack
	case loose < startTurns:
		m.Verdict, m.why = WillNotStart, byStart
	case pitchDiffers && mid < full:
		m.Verdict, m.why = Binds, byPitch
	case pitchDiffers:
		m.Verdict, m.why = Loose, byPitchSlack
	case e.Flank != i.Flank:
		m.Verdict, m.why = Leaks, byAngle
	default:
		m.Verdict, m.why = Loose, byDiameter
	}
}

// Worst mates every reading of two ends and returns the worst joint; open
// reports whether the readings differ in verdict.
func Worst(a, b EndReading) (worst Mating, open bool) {
	for _, x := range a.Candidates {
		for _, y := range b.Candidates {
			m := Mate(x, y)
			if worst.Verdict == 0 {
				worst = m
				continue
			}
			open = open || m.Verdict != worst.Verdict
			if m.Verdict.Worse(worst.Verdict) {
				worst = m
			}
		}
	}
	return worst, open
}
