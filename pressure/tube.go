package pressure

import (
	"fmt"
	"math"
	"sync"

	"handtight/pressure/quantity"
)

var tubeRows = sync.OnceValue(func() []row { return readTable("tube") })

// TubeRating returns the rating of seamless 316 or 304 tube by its outside
// diameter (within 0.05 mm of the table's) and wall. A wall between two
// takes the thinner one's figure. ok is false for other materials,
// diameters, and walls thinner than the table's.
//
// Source: page "NPT pipe end pressure ratings", table 1; a second table agrees within 8 %.
func TubeRating(material string, outside, wall quantity.Length) (Rating, bool) {
	made := materialNamed(material)
	if made != "316" && made != "304" {
		return Rating{}, false
	}
	var best Rating
	thickest := quantity.Length(0)
	for _, r := range tubeRows() {
		od, _ := r.number("od_in")
		t, _ := r.number("wall_in")
		w := quantity.Length(t) * quantity.Inch
		near := math.Abs(float64(quantity.Length(od)*quantity.Inch-outside)) <= 0.05
		if !near || w > wall+0.01 || w < thickest {
			continue
		}
		p := r.printed("max_bar", "max_psi")
		thickest = w
		best = Rating{
			Pressure: p.inPSI(), Basis: TubeTable, Source: sourceText(r["source"]), Status: statusNamed(r["status"]),
			Text: fmt.Sprintf("tube %g in, wall %g in: %s; %s", od, t, p.figure(true), r["note"]),
		}
	}
	return best, best.Basis != 0
}

// TubeGap says in words why [TubeRating] knows no figure: the material, the diameter or
// the wall that its table does not hold. It is "" where a figure is known.
func TubeGap(material string, outside, wall quantity.Length) string {
	if _, known := TubeRating(material, outside, wall); known {
		return ""
	}
	if made := materialNamed(material); made != "316" && made != "304" {
		return fmt.Sprintf("the table of tube is for 316 and 304, and says nothing of `%s`", material)
	}
	thinnest := quantity.Length(0)
	for _, r := range tubeRows() {
		od, _ := r.number("od_in")
		t, _ := r.number("wall_in")
		if w := quantity.Length(t) * quantity.Inch; math.Abs(float64(quantity.Length(od)*quantity.Inch-outside)) <= 0.05 && (thinnest == 0 || w < thinnest) {
			thinnest = w
		}
	}
	if thinnest == 0 {
		return fmt.Sprintf("size not in the table: no tube has an outside of %s", outside)
	}
	return fmt.Sprintf("size not in the table: tube of %s has a wall of %s or more there", outside, thinnest)
}
