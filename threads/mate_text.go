package threads

import (
	"fmt"
	"math"
	"strings"
)

// Reason says in one sentence, for a newcomer, why the joint is as it is.
func (m *Mating) Reason() string { return sentence(m.reason()) }

func (m *Mating) reason() string {
	switch m.why {
	case bySeal:
		reason := strings.ReplaceAll(m.seal.reason, "{turns}", m.turnsWords(m.Hand))
		return fmt.Sprintf("%s in %s: %s", m.male(), m.female(), reason)
	case bySex:
		return m.sexReason()
	case byStart, bySlack, byPitch, byPitchSlack, byAngle, byDiameter:
		return m.threadReason()
	case byHand:
		left, right := m.A, m.B
		if right.Left {
			left, right = right, left
		}
		return fmt.Sprintf("%s is a left-hand thread and %s a right-hand one: neither starts in the other.", left.name()+" LH", right.name())
	case bySockets:
		return fmt.Sprintf("%s and %s are both sockets: each takes a tube, and neither goes into the other.", m.A, m.B)
	case byRing:
		return fmt.Sprintf("%s and %s are of one tube size: the ring bites the tube and closes on the cone.", m.A, m.B)
	case byRingSize:
		return m.ringReason()
	case byFlange, byFlangeOff:
		return m.flangeReason()
	case byNoSeal:
		return fmt.Sprintf("%s and %s share a thread, but nothing closes the joint: %s.", m.A, m.B, m.noSeal())
	case byShort:
		return fmt.Sprintf("%s and %s are both of the short form: loose parts meet after %s by hand, and neither form is made for the other.", m.A, m.B, m.turnsWords(m.Hand))
	case byTube, byTubeTight:
		return m.tubeReason()
	case byNature:
		return fmt.Sprintf("%s and %s are ends of different sorts: they do not join.", m.A, m.B)
	}
	return fmt.Sprintf("the size of %s or of %s is not known, so the joint cannot be judged.", m.A, m.B)
}

func (m *Mating) noSeal() string {
	return m.male().Family.Facts().Note + "; " + m.female().Family.Facts().Note
}

func (m *Mating) sexReason() string {
	if !m.A.Family.Threaded() {
		return fmt.Sprintf("%s and %s are the same half of a joint: neither goes into the other.", m.A, m.B)
	}
	return fmt.Sprintf("%s and %s are both %s: neither screws into the other.", m.A.name(), m.B.name(), m.A.Sex)
}

// threadReason explains threads that are not alike, by the figures that differ.
func (m *Mating) threadReason() string {
	e, i := m.male().Form, m.female().Form
	switch m.why {
	case byStart:
		return fmt.Sprintf("%s is too large for %s: it does not start by hand.", e.Designation, i.Designation)
	case bySlack:
		if m.Depth < 0.005 {
			return fmt.Sprintf("%s is too small for %s: it slips in without a thread taking hold.", e.Designation, i.Designation)
		}
		return fmt.Sprintf("%s is too small for %s: only %.0f %% of the thread's height is engaged and it pulls out.",
			e.Designation, i.Designation, 100*m.Depth)
	case byPitch:
		return fmt.Sprintf("%s has a pitch of %.3f mm, %s one of %.3f mm%s: it binds after %s and never seals.",
			e.Designation, float64(e.Pitch), i.Designation, float64(i.Pitch), m.angleToo(), m.turnsWords(m.Binding))
	case byPitchSlack:
		return fmt.Sprintf("%s has a pitch of %.3f mm, %s one of %.3f mm: it runs in slack, a thread or two carry all the load, and it lets go.",
			e.Designation, float64(e.Pitch), i.Designation, float64(i.Pitch))
	case byDiameter:
		return fmt.Sprintf("%s and %s have one pitch but not one diameter: the threads touch by a part of their height.", e.Designation, i.Designation)
	}
	return fmt.Sprintf("%s has %.0f degree flanks, %s has %.0f: it screws in %s, seems to tighten, and never seals.",
		e.Designation, e.Flank, i.Designation, i.Flank, m.turnsWords(m.Hand))
}

func (m *Mating) angleToo() string {
	e, i := m.male().Form, m.female().Form
	if e.Flank == i.Flank {
		return ""
	}
	return fmt.Sprintf(", and the flanks are %.0f and %.0f degrees", e.Flank, i.Flank)
}

// HandWords gives the turns by hand as people say them: "about 3 turns (1 to 6 as
// parts vary)"; "a few turns" where threads run free.
func (m *Mating) HandWords() string { return m.turnsWords(m.Hand) }

// turnsWords gives turns as people say them: "about 3 turns (1 to 6 as parts vary)".
func (m *Mating) turnsWords(s Span) string {
	lo, hi := float64(min(s.Loosest, s.Tightest)), float64(max(s.Loosest, s.Tightest))
	switch {
	case !s.Known || math.IsInf(m.typical, 1):
		return "a few turns"
	case m.typical < 0.5 && hi >= 0.5:
		return fmt.Sprintf("less than a turn (up to %.1f as parts vary)", hi)
	case hi-lo < 1:
		return fmt.Sprintf("about %.1f turns", m.typical)
	}
	unit := "turns"
	if m.typical < 1.5 {
		unit = "turn"
	}
	return fmt.Sprintf("about %.0f %s (%.0f to %.0f as parts vary)", m.typical, unit, lo, hi)
}

func (m *Mating) tubeReason() string {
	off := math.Abs(float64(m.A.Diameter - m.B.Diameter))
	switch {
	case m.Verdict.Holds():
		return fmt.Sprintf("%s and %s are one size.", m.A, m.B)
	case m.Verdict == LowPressureOnly:
		return fmt.Sprintf("%s and %s differ by %.1f mm: a clamp hides it at tank pressure only (judgement).", m.A, m.B, off)
	case m.Verdict == WillNotStart:
		return fmt.Sprintf("%s and %s differ by %.1f mm: it does not go on.", m.A, m.B, off)
	}
	return fmt.Sprintf("%s and %s differ by %.1f mm: no clamp closes that gap.", m.A, m.B, off)
}

func (m *Mating) ringReason() string {
	tube, body := m.A, m.B
	if tube.Form != nil {
		tube, body = body, tube
	}
	if m.Verdict == WillNotStart {
		return fmt.Sprintf("%s is larger than the tube of %s that %s takes: it does not go in.", tube, body.Form.Tube, body.name())
	}
	return fmt.Sprintf("%s is smaller than the tube of %s that %s takes: the ring does not bite it.", tube, body.Form.Tube, body.name())
}

func (m *Mating) flangeReason() string {
	a, b := m.flangeWords(m.A), m.flangeWords(m.B)
	switch {
	case m.why == byFlangeOff:
		return fmt.Sprintf("%s and %s: the flanges differ, and no clamp closes them.", a, b)
	case m.A.Size != m.B.Size:
		return fmt.Sprintf("%s and %s: one clamp and one gasket close them, with a step in the bore.", a, b)
	}
	return fmt.Sprintf("%s and %s are one size.", m.A, m.B)
}

func (m *Mating) flangeWords(e End) string {
	if flange, ok := FlangeOf(e.Size); ok {
		return fmt.Sprintf("%s has a flange of %s", e, flange)
	}
	return e.String()
}

// Question is what must be asked before the joint is cleared, in plain words: the
// seat of a swivel, the nose of a coupling. "" if nothing is open.
func (m *Mating) Question() string {
	if m.seal == nil {
		return ""
	}
	return m.seal.ask
}

// Remedy says what to do or to buy.
func (m *Mating) Remedy() string {
	switch m.why {
	case bySeal:
		return sentence(m.seal.remedy)
	case bySex:
		if !m.A.Family.Threaded() {
			return "Put the hose or tube between them, or the tail that fits it."
		}
		if m.bolt() {
			return boltRemedy
		}
		if m.A.Form != m.B.Form {
			return fmt.Sprintf("Buy an adaptor %s x %s, %s.", counterpart(m.A), counterpart(m.B), m.another())
		}
		return fmt.Sprintf("Buy one of the two as %s, or a %s of %s.", m.A.Sex.Other(), m.gender(), m.A.name())
	case byHand:
		return fmt.Sprintf("Buy the part of one hand: %s.", m.handWords())
	case bySockets:
		if m.A.Size == m.B.Size {
			return fmt.Sprintf("Put a piece of %s tube between them.", m.A.Size)
		}
		return fmt.Sprintf("Buy the reducing piece between tubes of %s and of %s.", m.A.Size, m.B.Size)
	case byRing:
		return "Oil the thread; push the tube home, mark the nut and turn it as the ring's maker says."
	case byRingSize:
		return "Use body, nut, ring and tube of one size."
	case byFlange:
		return "Clean faces, a new gasket, the clamp pulled even."
	case byFlangeOff:
		return "Buy the two ferrules of one flange, or a reducer with a ferrule of each."
	case byTube, byTubeTight:
		if m.Verdict.Holds() {
			return "Push it home; clamp a tail behind its first ridge."
		}
		what := "the tail and the hose"
		if grips(m.A.Family) || grips(m.B.Family) {
			what = "the fitting and the tube"
		}
		return fmt.Sprintf("Buy %s of one size: both %s, or both %s.", what, m.A.Size, m.B.Size)
	case byNature:
		return m.between()
	case byShort:
		return fmt.Sprintf("Take one of the two in the full form: %s.", counterpart(m.A))
	case byNoSeal:
		return "Use two ends of one system, so that both bring the same seal."
	case byUnknown:
		return "Write the end with its standard and size, such as `1/2 NPT female` or `19 mm barb`."
	}
	if m.bolt() {
		return "Do not force it. " + boltRemedy
	}
	return fmt.Sprintf("Do not force it. Buy an adaptor %s x %s, %s.", counterpart(m.A), counterpart(m.B), m.another())
}

// another names what to order where one of the two parts is bought again.
func (m *Mating) another() string {
	return fmt.Sprintf("or another part: %s in place of %s, or %s in place of %s", counterpart(m.B), m.A, counterpart(m.A), m.B)
}

// bolt reports whether an end is a thread of bolts, on which nothing closes.
func (m *Mating) bolt() bool { return m.A.Family == UN || m.B.Family == UN }

const boltRemedy = "A thread of bolts closes on nothing, so no adaptor helps: buy the part with an end that seals, and ask what this one is."

// handWords names the right-hand counterpart of the left-hand end.
func (m *Mating) handWords() string {
	left, right := m.A, m.B
	if right.Left {
		left, right = right, left
	}
	return fmt.Sprintf("right hand in place of %s LH, or left hand in place of %s", left.name(), right.name())
}

// between says what joins ends of different sorts: a tail onto a thread for a hose, a hose
// and a tail for a tail.
func (m *Mating) between() string {
	thread, other := m.A, m.B
	if !thread.Family.Threaded() {
		thread, other = other, thread
	}
	if thread.Family.Threaded() && thread.Form != nil && other.Size != "" {
		switch other.Family {
		case Bore:
			return fmt.Sprintf("Buy a hose tail %s x %s barb.", counterpart(thread), other.Size)
		case Barb:
			return fmt.Sprintf("Put hose of %s bore between them, and a hose tail %s x %s barb.", other.Size, counterpart(thread), other.Size)
		case Push:
			return fmt.Sprintf("Buy a push-in fitting %s x %s.", counterpart(thread), other.Size)
		}
	}
	return "Buy the adaptor between the two, or one part with the other's end."
}

func (m *Mating) gender() string {
	if m.A.Sex == Male {
		return "socket (female both ends)"
	}
	return "nipple (male both ends)"
}

func (e End) name() string {
	if e.Form != nil {
		return e.Form.Designation
	}
	return e.String()
}

// counterpart is the end that mates with e, as words.
func counterpart(e End) string {
	c := e
	taper := e.Form != nil && e.Form.Taper > 0
	c.Seal, c.Swivel, c.Plastic, c.ClassA, c.Nose, c.Short = NoSeal, false, e.Plastic && e.Sex == Female && taper, false, 0, false // metal splits a plastic taper
	if e.Seal == Cone60 && e.Sex == Female {
		c.Seal = Chamfer
	}
	c.Sex = e.Sex.Other()
	switch e.Family {
	case R:
		c.Family = Rc
	case Rc, Rp:
		c.Family = R
	}
	if f, ok := Find(c.Family, e.Size); ok {
		c.Form = f
	}
	return c.String()
}

// Closes says what closes the joint, in a few words; "" if nothing does.
func (m *Mating) Closes() string {
	switch {
	case !m.closes():
		return ""
	case m.seal != nil:
		return m.seal.closes
	}
	return plainCloses[m.Makes()]
}

// plainCloses says what closes ends of which one at least has no thread.
var plainCloses = map[string]string{
	"ring": "the cutting ring on the tube", "hose": "hose clamp", "ferrule": "the gasket under the clamp",
	"push": "the grip on the tube", "compression": "the olive on the tube",
}

// closes reports whether anything closes the joint, at some pressure.
func (m *Mating) closes() bool { return m.Verdict >= Seals && m.Verdict <= LowPressureOnly }

// Source names where the judgement of the seal comes from; "" for geometry.
func (m *Mating) Source() string {
	if m.seal != nil {
		return m.seal.source
	}
	return ""
}

func sentence(s string) string {
	if s == "" {
		return s
	}
	s = strings.ToUpper(s[:1]) + s[1:]
	if s[len(s)-1] == '.' {
		return s
	}
	return s + "."
}

// Slug names why the joint is as it is, in words joined by hyphens: "same-sex",
// "flank-angles-differ", "parallel-in-taper"; "" for a joint that holds.
func (m *Mating) Slug() string {
	switch {
	case m.Verdict.Holds():
		return ""
	case m.seal != nil && m.seal.ask != "" && m.Verdict == LowPressureOnly:
		return "seat-not-said"
	case m.Verdict == LowPressureOnly && m.why == bySeal:
		return "makeshift-joint"
	}
	switch m.why {
	case bySex, bySockets:
		return "same-sex"
	case byHand:
		return "hands-differ"
	case byStart:
		return "thread-does-not-start"
	case bySlack, byPitchSlack, byDiameter:
		return "thread-too-slack"
	case byPitch:
		return "pitches-differ"
	case byAngle:
		return "flank-angles-differ"
	case byTube, byTubeTight, byRingSize:
		return "barb-and-bore-differ"
	case byFlangeOff:
		return "flanges-differ"
	case byNature:
		return "ends-of-different-sorts"
	case bySeal:
		return m.sealSlug()
	}
	return "nothing-seals"
}

// sealSlug tells apart the ways in which alike threads fail to close.
func (m *Mating) sealSlug() string {
	male, female := m.male().Family.Facts(), m.female().Family.Facts()
	switch {
	case !male.Tapered && female.Tapered:
		return "parallel-in-taper"
	case male.Tapered && !female.Tapered:
		return "taper-in-parallel"
	case m.male().Seal != NoSeal || m.female().Seal != NoSeal || male.Closes == "cone" && female.Closes == "cone":
		return "seats-differ"
	}
	return "nothing-seals"
}
