package pressure

import (
	"fmt"
	"strings"
	"sync"

	"handtight/pressure/quantity"
)

type jointRow struct {
	hose, shank, source, note string
	bore                      quantity.Length
	max                       printed
	status                    Status
}

var jointRows = sync.OnceValue(func() []jointRow {
	var out []jointRow
	for _, r := range eachRow("joint") {
		bore, _ := r.number("size_in")
		out = append(out, jointRow{
			hose: r["hose"], shank: r["shank"], source: r["source"], note: r["note"],
			bore: quantity.Length(bore) * quantity.Inch, max: r.printed("max_bar", "max_psi"), status: statusNamed(r["status"]),
		})
	}
	return out
})

// ClampJoint returns the most that a hose clamped on a barb may hold.
//
// It is 200 psi (13.8 bar) for any barb with worm-drive clamps, or less where a
// crimped shank in that kind of hose is rated less: a clamp is no better than a
// crimp. hose is in words; PVC, rubber and chemical hose are known, others have
// only the general limit. A bore between two sizes takes the larger one's
// figure, a bore below half an inch that of half an inch. It is an upper
// bound: the hose's own rating may be lower. ok is false above 2 inch, where
// nothing is known, and for a bore of nothing.
//
// Source: page "Working with hose clamps"; coupling selection guide, joints
// tested to ASTM D380.
func ClampJoint(bore quantity.Length, hose ...string) (Rating, bool) {
	kind := hoseKind(strings.Join(hose, " "))
	const largest = 2*quantity.Inch + boreTolerance
	if bore <= 0 || bore > largest {
		return Rating{}, false
	}
	var all []Rating
	var shank *jointRow
	rows := jointRows()
	for i := range rows {
		r := &rows[i]
		switch {
		case r.hose == "any":
			all = append(all, r.rating())
		case r.hose == kind && r.bore >= bore-boreTolerance && (shank == nil || r.bore < shank.bore):
			shank = r
		}
	}
	if shank != nil {
		all = append(all, shank.rating())
	}
	return Lower(all...)
}

func hoseKind(text string) string {
	words := " " + separator.ReplaceAllString(strings.ToLower(text), " ") + " "
	for _, k := range [][2]string{{"pvc", "PVC"}, {"vinyl", "PVC"}, {"chemical", "chemical"}, {"rubber", "rubber"}, {"epdm", "rubber"}} {
		if strings.Contains(words, " "+k[0]+" ") {
			return k[1]
		}
	}
	return ""
}

func (r *jointRow) rating() Rating {
	text := fmt.Sprintf("%s: %s; %s", r.shank, r.max.figure(true), r.note)
	if r.bore > 0 {
		text = fmt.Sprintf("%s hose on a %s, bore %s: %s; %s", r.hose, r.shank, r.bore, r.max.figure(true), r.note)
	}
	return Rating{Pressure: r.max.inPSI(), Basis: HoseJoint, Text: text, Source: sourceText(r.source), Status: r.status}
}
