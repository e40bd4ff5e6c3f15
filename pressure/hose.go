package pressure

import (
	"fmt"
	"math"
	"sync"

	"handtight/pressure/quantity"
)

// boreTolerance is how far a stated bore may be from a standard one: people say
// 9.5, 10 and 3/8 of one hose (a judgement, the same as for a barb in a bore).
const boreTolerance = 0.6 * quantity.Millimetre

// rounding is how much lower a remembered figure must be before it lowers a
// seen one: bar and psi columns of one table differ by up to this much.
const rounding = 0.02

type hoseRow struct {
	spec, standard, source string
	dash                   int
	bore, bend             quantity.Length
	wp, burst              printed
	status                 Status
}

var hoseRows = sync.OnceValue(func() []hoseRow {
	var out []hoseRow
	for _, r := range readTable("hose") {
		dash, _ := r.number("dash")
		bore, _ := r.number("bore_in")
		bend, _ := r.number("min_bend_mm")
		out = append(out, hoseRow{
			spec: r["spec"], standard: r["standard"], source: r["source"], dash: int(dash),
			bore: quantity.Length(bore) * quantity.Inch, bend: quantity.Length(bend),
			wp: r.printed("wp_bar", "wp_psi"), burst: r.printed("burst_bar", "burst_psi"),
			status: statusNamed(r["status"]),
		})
	}
	return out
})

// HoseRating returns the working pressure of a hose by its standard and bore.
//
// The bore is matched to the nearest standard one within 0.6 mm. Of all rows for
// that standard and bore the lowest rules, and no hose is rated above a smaller
// one of its standard. A remembered row lowers a seen one only by more than
// 2 %, and is marked [Memory] when it does or stands alone. ok is false for an
// unknown standard and for a bore that its tables do not hold.
//
// Source: the Source of the rating, from table/hose.csv.
func HoseRating(spec Spec, bore quantity.Length) (Rating, bool) {
	var all []Rating
	for _, f := range spec.parts() {
		if r, ok := oneHose(f.spec, bore); ok {
			all = append(all, r)
		}
	}
	return Lower(all...)
}

func oneHose(spec string, bore quantity.Length) (Rating, bool) {
	standard, ok := nearestBore(spec, bore)
	if !ok {
		return Rating{}, false
	}
	var seen, remembered *hoseRow
	rows := hoseRows()
	for i := range rows {
		r := &rows[i]
		if r.spec != spec || r.bore > standard+boreTolerance/10 {
			continue
		}
		best := &seen
		if r.status == Memory {
			best = &remembered
		}
		if *best == nil || r.wp.inBar() <= (*best).wp.inBar() { // on a tie the row nearest to the bore asked for
			*best = r
		}
	}
	if seen == nil || remembered != nil && remembered.wp.inBar() < seen.wp.inBar()*(1-rounding) {
		return remembered.rating(standard), true
	}
	return seen.rating(standard), true
}

func (r *hoseRow) rating(bore quantity.Length) Rating {
	text := fmt.Sprintf("%s -%d, bore %s, %s", r.standard, r.dash, r.bore, r.wp.figure(false))
	if r.bore < bore-boreTolerance {
		text += fmt.Sprintf("; bore %s is not rated above it", bore)
	}
	if r.status == Memory {
		text += " (from memory)"
	}
	return Rating{Pressure: r.wp.inBar(), Basis: HoseStandard, Text: text, Source: sourceText(r.source), Status: r.status}
}

// nearestBore finds the standard bore that a stated one means.
func nearestBore(spec string, bore quantity.Length) (best quantity.Length, ok bool) {
	gap := float64(boreTolerance) + 1e-9
	for _, r := range hoseRows() {
		if d := math.Abs(float64(r.bore - bore)); r.spec == spec && d < gap {
			best, gap, ok = r.bore, d, true
		}
	}
	return best, ok
}

// BoreOfDash returns the bore of a dash size, such as 9.53 mm for -6. The dash is
// sixteenths of an inch of bore, but of the tube's outside for 100R5, whose bore is
// a step smaller. ok is false where the standard's table has no such dash, and
// where two standards of one hose disagree.
func BoreOfDash(spec Spec, dash int) (bore quantity.Length, ok bool) {
	for _, f := range spec.parts() {
		for _, r := range hoseRows() {
			if r.spec != f.spec || r.dash != dash {
				continue
			}
			if ok && math.Abs(float64(bore-r.bore)) > float64(boreTolerance) {
				return 0, false
			}
			bore, ok = r.bore, true
		}
	}
	return bore, ok
}

// MinBend returns the smallest radius that a hose may be bent to at its rating:
// the largest that its tables print for that bore. ok is false if none does.
func MinBend(spec Spec, bore quantity.Length) (radius quantity.Length, ok bool) {
	for _, f := range spec.parts() {
		standard, known := nearestBore(f.spec, bore)
		if !known {
			continue
		}
		for _, r := range hoseRows() {
			if r.spec == f.spec && r.bore == standard && r.bend > radius {
				radius, ok = r.bend, true
			}
		}
	}
	return radius, ok
}

// VacuumRating returns how far below the air's pressure a suction hose may go: a
// Pressure of 0.85 bar is a vacuum of 0.85 bar. Only 100R4 states one, to 2 inch;
// for all others ok is false, since a delivery hose has none unless its maker says so.
//
// Source: SAE J517 100R4, 25 inches of mercury, from memory.
func VacuumRating(spec Spec, bore quantity.Length) (Rating, bool) {
	for _, f := range spec.parts() {
		standard, ok := nearestBore(f.spec, bore)
		if !ok || f.vacuum == 0 || standard > f.vacuumTo {
			continue
		}
		return Rating{
			Pressure: f.vacuum, Basis: HoseStandard, Status: Memory, Source: sourceText(f.source),
			Text: fmt.Sprintf("%s: vacuum of %s, %s (from memory)", f.title, f.vacuum, f.note),
		}, true
	}
	return Rating{}, false
}
