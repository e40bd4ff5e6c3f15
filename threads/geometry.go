package threads

import "math"

// profile is one thread cut at one end of its tolerance, in the axial plane.
// Radial figures are distances from the pitch line.
type profile struct {
	pitch  float64
	taper  float64
	tan    float64 // of the half flank angle
	dia    float64 // pitch diameter where the thread begins
	crest  float64
	root   float64
	flankC float64 // straight flank towards the crest
	flankR float64 // straight flank towards the root
}

func (f *Form) external(l limits) profile {
	p := f.profile(l)
	p.flankC, p.flankR = min(float64(f.straight[0]), p.crest), min(float64(f.straight[1]), p.root)
	return p
}

func (f *Form) internal(l limits) profile {
	p := f.profile(l)
	p.flankC, p.flankR = min(float64(f.straight[1]), p.crest), min(float64(f.straight[0]), p.root)
	return p
}

func (f *Form) profile(l limits) profile {
	return profile{
		pitch: float64(f.Pitch), taper: f.Taper, tan: halfTan(float64(f.Flank)),
		dia: float64(l.pitch), crest: float64(l.crestAdd), root: float64(l.rootAdd),
	}
}

// cutShort takes one turn off the entering end of a taper: a male thread then begins thicker (by is
// 1), a female one narrower (-1), and two that meet do so a turn sooner. Source: ASME B1.20.3, the
// short form PTF-SAE SHORT, as memory has it; a tap maker's page of technical tips agrees on the
// lengths of the full form.
func (p *profile) cutShort(by float64) { p.dia += by * p.taper * p.pitch }

// halfTan is the tangent of half a flank angle. The two angles in use are kept
// as constants: this stands in the way of every verdict.
func halfTan(flank float64) float64 {
	switch flank {
	case 60:
		return 0.5773502691896257
	case 55:
		return 0.5205670505517458
	}
	return math.Tan(flank / 2 * math.Pi / 180)
}

// middle is the profile half way between two ends of tolerance.
func middle(a, b profile) profile {
	a.dia, a.crest, a.root = (a.dia+b.dia)/2, (a.crest+b.crest)/2, (a.root+b.root)/2
	a.flankC, a.flankR = (a.flankC+b.flankC)/2, (a.flankR+b.flankR)/2
	return a
}

// Surface names what meets first when two ends are screwed together.
type Surface uint8

// The surfaces. The zero value is: nothing meets.
const (
	NoSurface Surface = iota
	Flank             // flank on flank
	Crest             // external crest on internal root
	Root              // external root on internal crest
	Face              // the faces or seats, before any thread
)

// String gives the surface's name as it stands in JSON.
func (s Surface) String() string { return [...]string{"none", "flank", "crest", "root", "face"}[s] }

// contact is how far an external end goes into an internal one before a surface
// meets, as an axial length; infinite when it runs free.
type contact struct {
	flank, crest, root float64
	pitch              float64 // mean pitch, to turn lengths into turns
}

// meet slides the external profile into the internal one.
//
// The clearance on pitch diameter falls by the taper times the depth (at the
// worst place where only one end is tapered). Crest and root meet when their own
// clearances are gone. Flanks meet when the axial gap is gone that is left at the
// tightest point of the straight flanks, after the pitch difference has drifted
// over the turns engaged: the closed form of the metrologist's virtual effective
// diameter (pitch error x cot of the half angle; angle error x depth).
func meet(e, i profile) contact {
	taper := max(e.taper, i.taper)
	gap := i.dia - e.dia
	pitch := (e.pitch + i.pitch) / 2
	return contact{
		flank: flankDepth(e, i, gap, taper),
		crest: closing(gap+2*(i.root-e.crest), taper),
		root:  closing(gap+2*(e.root-i.crest), taper),
		pitch: pitch,
	}
}

// closing is the depth at which a diametral clearance is used up.
func closing(clearance, taper float64) float64 {
	switch {
	case clearance < 0:
		return 0
	case taper == 0:
		return math.Inf(1)
	}
	return clearance / taper
}

// takeHold is the share of the two crests' rounding (on diameter) that must reach
// past each other before the flanks of a taper work as straight ones. Any value from
// 0.4 to 0.5 keeps the closed form within half a turn of the two profiles drawn and
// pushed together (oracle_test.go).
const takeHold = 0.45

// flankDepth is the depth at which the flanks meet.
//
// Where the crests do not reach past each other nothing can meet: a taper closes
// that first. A rounded crest takes hold later than its height says, so the
// straight flanks count from part of the way through the rounding, unless the
// tips themselves jam before.
func flankDepth(e, i profile, gap, taper float64) float64 {
	if taper == 0 {
		return parallelDepth(e, i, gap)
	}
	p := play{taper: taper, alike: e.taper == i.taper}
	p.drift = math.Abs(e.pitch-i.pitch) / ((e.pitch + i.pitch) / 2)
	p.wide = min(0, i.pitch-e.pitch) / 4
	tips := 2 * (e.crest + i.crest)
	straights := tips - takeHold*(e.crest-e.flankC+i.crest-i.flankC)
	if gap <= straights {
		return p.ends(e, i, gap, 0)
	}
	reach := max(0, closing(gap-tips, taper))
	jam := reach + p.ends(e, i, min(gap, tips), reach)
	hold := closing(gap-straights, taper)
	if jam <= hold {
		return jam
	}
	return hold + p.ends(e, i, straights, hold)
}

// parallelDepth is the depth at which the flanks of two parallel threads meet. On the
// way round, at one distance from the axis, the external tooth fills a share of the
// turn and the internal one another. What both leave open lets one lie ahead of the
// other, and each pitch of depth uses some of it up; where the two fill most, they meet.
func parallelDepth(e, i profile, gap float64) float64 {
	open := func(y float64) float64 { return 2 * (e.cutAway(y)/e.pitch + i.cutAway(gap/2-y)/i.pitch) }
	from, to := max(gap/2-i.flankC, -e.flankR), min(e.flankC, gap/2+i.flankR)
	switch {
	case gap >= 2*(e.crest+i.crest):
		return math.Inf(1)
	case from > to: // only the rounded tips reach past each other
		from, to = least(open, max(to, gap/2-i.crest), min(from, e.crest))
	}
	room := min(open(from), open(to))
	if room < 0 {
		return 0
	}
	return quotient(room, math.Abs(1/i.pitch-1/e.pitch))
}

// cutAway is by how much half a tooth is narrower at a height above its pitch line than
// there: the flank, then the arc that rounds the crest off and meets it without a corner.
func (p profile) cutAway(y float64) float64 {
	if y <= p.flankC {
		return y * p.tan
	}
	slant := math.Sqrt(1 + p.tan*p.tan)
	radius := (p.pitch/4 - p.flankC*p.tan) * slant
	above := y - p.flankC + radius*p.tan/slant // the arc's centre
	return p.pitch/4 - math.Sqrt(max(0, radius*radius-above*above))
}

// least closes in on the least value of a function that falls and then rises.
func least(f func(float64) float64, from, to float64) (float64, float64) {
	for range 32 { // 2e-6 of the rounding is left
		third := (to - from) / 3
		if f(from+third) < f(to-third) {
			to -= third
		} else {
			from += third
		}
	}
	return from, to
}

// ends takes the tighter end of the straight flank that both have: the internal
// crest or the external one. The gap there is a line in the clearance; which of
// the two profiles ends first decides which line, the larger.
func (p play) ends(e, i profile, gap, before float64) float64 {
	p.gap = gap
	if p.alike {
		p.engaged = before // two tapers meet along their whole length at once
	}
	skew, lead := e.tan-i.tan, p.drift*e.tan
	if e.pitch > i.pitch {
		lead = -lead
	}
	inner := max(
		p.depth(-i.flankC*skew, -i.flankC*lead, e.tan/2),
		p.depth(-e.flankR*skew, -e.flankR*lead, i.tan/2),
	)
	outer := max(
		p.depth(i.flankR*skew, i.flankR*lead, e.tan/2),
		p.depth(e.flankC*skew, e.flankC*lead, i.tan/2),
	)
	return min(inner, outer)
}

// play is what the flanks may use up: the clearance, the taper that takes it
// away with depth, and the drift of one pitch against the other.
type play struct {
	gap, taper, drift float64
	engaged           float64 // length already side by side where the crests first reach
	wide              float64 // by which a coarser external tooth is wider than the groove
	alike             bool    // both ends tapered
}

// depth solves one line of flankDepth: the two flanks together have twice
// skew + b x clearance, and the drift over the depth may use it up. lead moves
// the first and the last point of contact along the thread.
func (p play) depth(skew, lead, b float64) float64 {
	tooth := skew + p.wide + b*p.gap // one tooth in its groove
	if tooth < 0 {
		return 0
	}
	half := skew + lead + b*p.gap - p.drift*p.engaged/2
	if half < 0 {
		return 0
	}
	if p.alike {
		return min(quotient(2*half, p.drift+2*b*p.taper), quotient(tooth, b*p.taper))
	}
	return min(quotient(2*half, p.drift+b*p.taper), quotient(half, b*p.taper), quotient(tooth, b*p.taper))
}

func quotient(a, b float64) float64 {
	if b == 0 {
		return math.Inf(1)
	}
	return a / b
}

// first is the least depth and the surface that meets there.
func (c contact) first() (float64, Surface) {
	depth, surface := c.flank, Flank
	if c.crest < depth {
		depth, surface = c.crest, Crest
	}
	if c.root < depth {
		depth, surface = c.root, Root
	}
	if math.IsInf(depth, 1) {
		surface = NoSurface
	}
	return depth, surface
}

// turns is the first contact in turns.
func (c contact) turns() float64 {
	d, _ := c.first()
	return d / c.pitch
}

// depthShare is how much of the thread's height is engaged, at a given depth of
// an end in another, as a share of the lower of the two basic heights.
func depthShare(e, i profile, depth, height float64) float64 {
	gap := i.dia - e.dia
	if taper := max(e.taper, i.taper); taper > 0 && !math.IsInf(depth, 1) {
		gap -= taper * depth
	}
	return max(0, min(1, (e.crest+i.crest-gap/2)/height))
}

// virtualDiameter is the external pitch diameter enlarged by the pitch and the
// angle difference over the turns engaged: the effective diameter of the perfect
// thread that would fit as tightly.
//
// Formula: pitch difference x turns x cot of the half angle, and depth of
// straight flank x sum of the half angle differences (radians) / sin of the
// angle, which is 0.0105 p a degree for Whitworth and 0.0098 p for ISO form.
// Source: Machinery's Handbook, "Effect of lead and angle errors on effective
// diameter"; BS 84 appendix (formulas: common practice of thread metrology).
func virtualDiameter(e, i profile, flankE, flankI, turns float64) float64 {
	half := (flankE + flankI) / 4 * math.Pi / 180
	straight := min(e.flankC+e.flankR, i.flankC+i.flankR)
	angle := math.Abs(flankE-flankI) * math.Pi / 180 // both half angles differ by half of it
	return e.dia + math.Abs(e.pitch-i.pitch)*turns/math.Tan(half) + straight*angle/math.Sin(2*half)
}
