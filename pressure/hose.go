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
	series                 bool // of one maker's series, and not the standard's own
	status                 Status
}

var hoseRows = sync.OnceValue(func() []hoseRow {
	var out []hoseRow
	for _, r := range eachRow("hose") {
		dash, _ := r.number("dash")
		bore, _ := r.number("bore_in")
		bend, _ := r.number("min_bend_mm")
		out = append(out, hoseRow{
			spec: r["spec"], standard: r["standard"], source: r["source"], dash: int(dash),
			bore: quantity.Length(bore) * quantity.Inch, bend: quantity.Length(bend),
			wp: r.printed("wp_bar", "wp_psi"), burst: r.printed("burst_bar", "burst_psi"),
			series: r["basis"] == "product series", status: statusNamed(r["status"]),
		})
	}
	return out
})

// HoseRating returns the working pressure of a hose by its standard and bore.
//
// The bore is matched to the nearest standard one within 0.6 mm. Of all rows for
// that standard and bore the lowest rules, and no hose is rated above a smaller
// one of its standard. A remembered row lowers a seen one only by more than
// 2 %. What the standard says of the size decides what the figure rests on: a
// remembered row of the standard is [Memory] whatever makers print; without a row
// of the standard a maker's figure is [MakersSeries], and a smaller size's that rules is
// [OtherSize]: neither clears a high-pressure segment. ok is false for an
// unknown standard and for a bore that its tables do not hold: see [HoseGap].
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

// HoseGap says in words why [HoseRating] knows no figure: "the table of SAE 100R5 has no
// bore of 9.2 mm". It is "" where a figure is known, and where no standard is named.
func HoseGap(spec Spec, bore quantity.Length) string {
	if _, known := HoseRating(spec, bore); known || len(spec.parts()) == 0 {
		return ""
	}
	return fmt.Sprintf("size not in the table: %s has no bore of %s", spec, bore)
}

func oneHose(spec string, bore quantity.Length) (Rating, bool) {
	standard, ok := nearestBore(spec, bore)
	if !ok {
		return Rating{}, false
	}
	var seen, remembered, own *hoseRow // own: the standard's row for this very size, a seen one first
	rows := hoseRows()
	for i := range rows {
		r := &rows[i]
		if r.spec != spec || r.bore > standard+boreTolerance/10 {
			continue
		}
		if !r.series && r.bore > standard-boreTolerance/10 && (own == nil || r.status < own.status) {
			own = r
		}
		best := &seen
		if r.status == Memory {
			best = &remembered
		}
		if *best == nil || r.wp.inBar() <= (*best).wp.inBar() { // on a tie the row nearest to the bore asked for
			*best = r
		}
	}
	rules := seen
	if seen == nil || remembered != nil && remembered.wp.inBar() < seen.wp.inBar()*(1-rounding) {
		rules = remembered
	}
	return rules.rating(standard, own), true
}

// rating gives the row that rules a bore, and what the standard's own row says of how well
// the figure is known; own is nil where the standard has none.
func (r *hoseRow) rating(bore quantity.Length, own *hoseRow) Rating {
	basis, status, p := HoseStandard, r.status, r.wp.inBar()
	smaller := r.bore < bore-boreTolerance
	switch {
	case own != nil:
		status = max(status, own.status)
		if r.series && status == Memory { // it is the standard's own row that counts, and nobody has seen it
			r, p = own, min(p, own.wp.inBar())
		}
	case smaller:
		basis = OtherSize
	default:
		basis = MakersSeries
	}
	text := fmt.Sprintf("%s -%d, bore %s, %s", r.standard, r.dash, r.bore, r.wp.figure(false))
	if smaller {
		text += fmt.Sprintf("; bore %s is not rated above it", bore)
	}
	if status == Memory {
		text += " (from memory)"
	}
	return Rating{Pressure: p, Basis: basis, Text: text, Source: sourceText(r.source), Status: status}
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
