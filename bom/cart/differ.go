package cart

import (
	"math"

	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

// aspect is one thing in which a line can be other than its place needs it.
type aspect uint8

const (
	inKind aspect = iota
	inEnds
	inRating
	inSpec
	inMaterial
	inSet
	inScale
	inBore
	inLength
	inVolts
	inFlow
	inMicron
	inTall
	inElement
	inGrips
	inCut
	inHull
	inUse
	inBranch
	inPort
	aspects
)

// aspectSet is a set of aspects.
type aspectSet uint32

func (s aspectSet) has(a aspect) bool { return s&(1<<a) != 0 }

func (s aspectSet) count() int {
	n := 0
	for a := range aspects {
		if s.has(a) {
			n++
		}
	}
	return n
}

func (s *aspectSet) add(a aspect) { *s |= 1 << a }

// How near figures must be, as shares (judgement).
const (
	figureSlack = 0.02 // a scale or a setting: 940 psi is 65 bar
	lengthSlack = 0.03 // 36 inches are 0.9 m
	longer      = 1.25 // a hose that is longer by less is asked about
	flowShort   = 0.9  // less than this share of the planned flow is too little
	flowOver    = 1.5  // more than this is asked about
	meterApart  = 2.0  // two meters whose full scales are further apart are not one
	outerSlack  = 0.1  // millimetres between the outsides of two tubes
)

// compareFigures notes in what a line is other than a place needs it, and what of it must be
// asked. What the line does not say is neither.
func (m *match) compareFigures(l *facts, n *need) {
	f := &n.facts
	for _, pair := range []struct {
		a, b  float64
		slack float64
		in    aspect
	}{
		{float64(l.micron), float64(f.micron), 0.01, inMicron}, {float64(l.set), float64(f.set), figureSlack, inSet},
		{l.tall, f.tall, 0.01, inTall}, {float64(l.hull), float64(f.hull), 0.01, inHull}, {l.element.across*100 + l.element.long, f.element.across*100 + f.element.long, 0.001, inElement},
	} {
		m.figure(pair.a, pair.b, pair.slack, pair.in, n)
	}
	m.compareScale(l, n)
	m.compareBore(l, f)
	m.compareFlow(l, n)
	m.compareVolts(l, f)
	m.compareCut(l, f)
	m.compareGrips(l, f)
	if l.spec != "" && f.spec != "" {
		if l.spec == f.spec {
			m.add(bySpec)
		} else {
			m.differs.add(inSpec)
		}
	}
	if isA(n.facts.kind, catalog.Hose) {
		m.compareLength(l, f)
	}
	if _, _, differ := l.traits.differ(f.traits); differ {
		m.differs.add(inUse)
	}
	if shared := l.traits & f.traits; shared != 0 {
		m.add(byTrait)
	}
	if holds, ok := l.holds(n); ok && n.place != nil && quantity.Pressure(float64(holds)*n.place.left) < n.place.worst-pressure.Slack {
		if !l.gives(n) {
			m.differs.add(inRating)
		}
	}
	m.compareMaterial(l, n)
}

// figure compares one figure where both say it. The fineness of a housing is that of the
// cartridge that is put into it.
func (m *match) figure(a, b, slack float64, in aspect, n *need) {
	switch {
	case a == 0 || b == 0 || in == inMicron && !n.fine():
	case math.Abs(a-b) <= b*slack:
		m.add(byFigure)
	default:
		m.differs.add(in)
		m.add(byFigureDiffers)
		m.apart += math.Abs(math.Log(a / b))
	}
}

// fine reports whether the fineness is the part's own: that of a housing is its cartridge's,
// unless the build has none for it, and the housing is to come with it.
func (n *need) fine() bool {
	return isA(n.facts.kind, catalog.Cartridge|catalog.Strainer) || isA(n.facts.kind, catalog.Filter) && n.filled
}

// compareScale holds a gauge to what it sees: it reads past the worst, and the running
// pressure is not in the first quarter of its dial (common practice).
func (m *match) compareScale(l *facts, n *need) {
	f := &n.facts
	if l.scale == 0 || !isA(n.Kind, catalog.Gauge) {
		return
	}
	same := f.scale > 0 && math.Abs(float64(l.scale-f.scale)) <= float64(f.scale)*0.04
	switch {
	case n.place != nil && l.scale < n.place.worst-pressure.Slack && !same:
		m.differs.add(inScale)
		m.add(byFigureDiffers)
	case same:
		m.add(byFigure)
	case f.scale > 0 && float64(l.scale) > float64(f.scale)*1.7:
		if m.asks.add(inScale); float64(l.scale) > float64(f.scale)*5 {
			m.differs.add(inScale) // one of the other side
			m.add(byFigureDiffers)
		}
	case f.scale > 0 && float64(l.scale) < float64(f.scale)*0.9:
		m.differs.add(inScale)
		m.add(byFigureDiffers)
	}
}

// compareBore compares the bores of hoses, and the outsides of tubes. One of the next size
// is taken for the right one and does not fit.
func (m *match) compareBore(l, n *facts) {
	if l.bore == 0 || n.bore == 0 || isA(n.kind, catalog.Clamp) {
		return
	}
	if m.otherSide(l, n) {
		return
	}
	bore := l.bore
	if m.need.Item != nil && m.need.Item.Outside != nil && l.outer > 0 {
		bore = l.outer
	}
	apart, slack := math.Abs(float64(bore-n.bore)), tubeSlack
	if l.orBore > 0 {
		apart = min(apart, math.Abs(float64(l.orBore-n.bore)))
	}
	if m.need.Item != nil && m.need.Item.Outside != nil {
		slack = outerSlack
	}
	switch {
	case apart <= slack:
		m.add(byFigure)
	case apart <= nextBore && isA(l.kind, catalog.HoseStock) && n.kind == l.kind:
		m.fit = fitNear
		m.differs.add(inBore)
		m.add(byBoreNear)
	default:
		m.differs.add(inBore)
		m.add(byFigureDiffers)
	}
}

// otherSide compares where the line says the inside only and the build the outside, or the other
// way round: of one figure they are two sizes, and of two the missing one is asked for.
func (m *match) otherSide(l, n *facts) bool {
	outside := m.need.Item != nil && m.need.Item.Outside != nil
	if outside && !(l.outer == 0 && l.inside) || !outside && !l.onlyOuter() {
		return false
	}
	apart := float64(l.bore - n.bore)
	if outside {
		apart = -apart
	}
	if apart > tubeSlack && apart <= twoWalls+nextBore && isA(l.kind, catalog.HoseStock) && n.kind == l.kind {
		m.asks.add(inBore)
		m.add(byBoreNear)
	} else {
		m.differs.add(inBore)
		m.add(byFigureDiffers)
	}
	return true
}

// onlyOuter reports whether a hose or a tube is said by its outside and not by its bore.
func (f *facts) onlyOuter() bool { return f.outer > 0 && !f.inside }

// nextBore is how far apart two bores are that are taken for one another, in
// millimetres (judgement: 19 and 20, 12 and 13).
const nextBore = 1.6

func (m *match) compareLength(l, n *facts) {
	if l.length == 0 || n.length == 0 {
		return
	}
	switch ratio := float64(l.length / n.length); {
	case math.Abs(ratio-1) <= lengthSlack:
		m.add(byLength)
	case ratio > 1 && ratio <= longer:
		m.add(byLengthDiffers)
		m.asks.add(inLength)
	default:
		m.add(byLengthDiffers)
		m.differs.add(inLength)
	}
}

// compareFlow holds a pump to what the build plans, a relief valve to what it must pass, and
// a meter to its range.
func (m *match) compareFlow(l *facts, n *need) {
	f := &n.facts
	if l.flow.to == 0 || f.flow.to == 0 {
		return
	}
	ratio := float64(l.flow.to / f.flow.to)
	switch {
	case isA(n.Kind, catalog.FlowMeter):
		if ratio > meterApart || ratio < 1/meterApart {
			m.differs.add(inFlow)
			return
		}
	case isA(n.Kind, catalog.Relieves|catalog.Supplies):
		if ratio < flowShort {
			m.differs.add(inFlow)
			return
		}
	case isA(n.Kind, catalog.DrivesHigh|catalog.DrivesFeed):
		if ratio < flowShort || isA(n.Kind, catalog.DrivesHigh) && ratio > 2-flowShort {
			m.differs.add(inFlow)
			return
		}
		if ratio > flowOver {
			m.asks.add(inFlow)
			return
		}
	default:
		return
	}
	m.add(byFigure)
}

// compareVolts holds a pump or a coil to the voltage that it is to run on.
func (m *match) compareVolts(l, n *facts) {
	if l.volts[0] == 0 || n.volts[0] == 0 {
		return
	}
	for _, a := range l.volts {
		for _, b := range n.volts {
			if a == b && a > 0 && l.current.runsOn(n.current, b) {
				return
			}
		}
	}
	m.differs.add(inVolts)
}

// compareCut holds the pressure at which a feed pump stops to the planned one: one a little off is
// asked about, and one far off is another pump.
func (m *match) compareCut(l, n *facts) {
	if l.cut == 0 || n.cut == 0 || !isA(n.kind, catalog.DrivesFeed) {
		return
	}
	switch ratio := float64(l.cut / n.cut); {
	case ratio < cutFar || ratio > 1/cutFar:
		m.differs.add(inCut)
	case ratio < cutNear || ratio > 1/cutNear:
		m.asks.add(inCut)
	}
}

// How far the pressure at which a feed pump stops may be from the planned one, as shares (judgement).
const (
	cutNear = 0.75
	cutFar  = 0.5
)

// What a clamp must close on: the hose with its two walls. The thinnest of a hose for water has
// 1.5 mm each, and the usual ones some 3 mm (judgement). A clamp that begins between the two may
// be too large for a thin hose, and is asked about.
const (
	thinWalls = 3.0
	twoWalls  = 6.0
)

// compareGrips holds a clamp to the hose that it is for.
func (m *match) compareGrips(l, n *facts) {
	if !isA(n.kind, catalog.Clamp) || n.bore == 0 || !isA(l.kind, catalog.Clamp) {
		return
	}
	switch {
	case l.grips.to > 0 && l.grips.from <= n.bore && l.grips.to >= n.bore+twoWalls && l.grips.to < 3*n.bore:
		m.add(byFigure)
	case l.grips.to > 0 && l.grips.from <= n.bore+thinWalls && l.grips.to >= n.bore+twoWalls && l.grips.to < 3*n.bore:
		m.add(byGrips)
	case l.grips.to >= n.bore+thinWalls && l.grips.from <= n.bore+twoWalls && l.grips.to < 3*n.bore:
		m.asks.add(inGrips)
	case l.grips.to > 0:
		m.differs.add(inGrips)
	case l.bore > 0 && math.Abs(float64(l.bore-n.bore)) <= tubeSlack:
		m.add(byFigure)
	case l.bore > 0:
		m.differs.add(inGrips)
	}
}
