package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/bom/running"
	"handtight/bom/wetting"
	"handtight/catalog"
)

// inSea is how one material of a unit stands the sea water that wets it.
type inSea struct {
	material *catalog.Material
	water    catalog.Water       // where it stands worst
	answer   catalog.Suitability // of the table, while the water runs
	standing running.Standing
}

// standsIn judges a material at the port of its unit where it stands worst; wet is false
// where no sea water comes, or the table says nothing. A unit is flushed where the flush
// runs through any way of it: a tee is no dead end for the branch that leads to one.
func standsIn(s *bom.System, waters *wetting.Waters, standings []running.Standing, u *graph.Unit, m *catalog.Material) (x inSea, wet bool) {
	x = inSea{material: m, answer: catalog.Suitable, standing: running.DeadEnd}
	for i := range u.Item.Ports {
		p := u.First + i
		if !waters.Sea(p) {
			continue
		}
		switch {
		case standings[p] == running.Flushed || x.standing == running.Flushed:
			x.standing = running.Flushed
		case standings[p] == running.Stands:
			x.standing = running.Stands
		}
		water := catalog.RawSea
		switch k := u.Item.Kind; {
		case s.Segments.SegmentOf(p).High():
			water = catalog.PressedSea
		case k.Fixed && len(k.Boundary) > 0 && s.Segments.SegmentOf(p).Below && m.In(catalog.Hull) != catalog.NotKnown:
			water = catalog.Hull // it stands between the sea and the boat
		}
		if a := m.In(water); a != catalog.NotKnown && (a < x.answer || a == x.answer && water > x.water) {
			x.answer, x.water = a, water
		}
	}
	return x, x.water != 0
}

// hurtByStanding reports whether it matters to the material that water stands in the
// part. What running water attacks as well is not saved by a rinse; stainless is.
func (x inSea) hurtByStanding() bool {
	a := x.material.In(catalog.StandingSea)
	return x.answer != catalog.No && (a == catalog.No || a == catalog.Caution) && (a < x.answer || x.material.Stainless())
}

// bad reports whether there is anything to say of it.
func (x inSea) bad() bool {
	return x.answer == catalog.No || x.answer == catalog.Caution || x.standing != running.Flushed && x.hurtByStanding()
}

// severity judges by the table. What standing water alone does is a step milder than what
// running water does, since a flush mends it; in a dead end it is a note, since a gauge or
// a relief valve is always in one (a judgement).
func (x inSea) severity() finding.Severity {
	switch {
	case x.answer == catalog.No:
		return finding.Stop
	case x.answer == catalog.Caution && !x.material.Stainless():
		return finding.Caution
	case x.water == catalog.PressedSea && x.material.NoGrade():
		return finding.Caution
	case x.standing == running.Stands && (x.answer == catalog.Caution || x.material.In(catalog.StandingSea) == catalog.No):
		return finding.Caution
	}
	return finding.Note
}

// key groups what has one cause and one remedy: a material, as bad in one part as in
// another. Which grade a stainless is, is one question whatever hangs on the answer.
func (x inSea) key() string {
	if x.material.NoGrade() {
		return x.material.Name
	}
	return fmt.Sprintf("%d %s", x.severity(), x.material.Name)
}

// where says what the part is in, as far as that matters to the material.
func (x inSea) where() string {
	high := x.water == catalog.PressedSea
	switch {
	case x.hurtByStanding() && x.standing == running.Stands && high:
		return "in a high-pressure line in which sea water stands between uses"
	case x.hurtByStanding() && x.standing == running.Stands:
		return "in sea water that stands there between uses"
	case x.hurtByStanding() && x.standing == running.DeadEnd && high:
		return "in a dead end of a high-pressure line, where sea water stands"
	case x.hurtByStanding() && x.standing == running.DeadEnd:
		return "in a dead end, where sea water stands"
	case high:
		return "in sea water, at high pressure"
	case x.water == catalog.Hull:
		return "between the sea and the boat, below the waterline"
	}
	return "in sea water"
}
