package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/catalog"
)

var elementAndVesselDiffer = Rule{
	Slug:  "element-and-vessel-differ",
	Title: "The membrane element does not fit its pressure vessel.",
	Why: `Elements and vessels are sold by the inch across and long: 2.5 x 21 and 2521 are the
same. One that is wider does not go in; one that is narrower, or shorter, lets the water run
past it. Two elements of 21 inches do not fill a vessel of 40. Both sizes are read from the
words; where one is not said, it is not judged. Where both are written with ` + "`size`" + ` and the element
cannot go in at all, the file is at fault and nothing is checked.`,
	Wrong: `
[[item]]
id = "element"
kind = "membrane element"
about = "seawater element 2.5 x 40"   # the vessel is 21 inches long
inside = "vessel"
`,
	mend:  []string{`about = "seawater element 2.5 x 40"   # the vessel is 21 inches long`, `about = "seawater element 2.5 x 21"`},
	block: "element",
	plant: "flushed",
	harm:  finding.DoesNotGoTogether,
	check: findWrongElement,
}

func findWrongElement(s *bom.System) []finding.Finding {
	var out []finding.Finding
	said := map[*build.Item]bool{}
	for _, u := range vessels(s) {
		across, long, ok := sizeOf(u.Item)
		if n := u.Item.Process.Elements; n != nil && u.Item.Process.Size != "" {
			long *= float64(*n) // the size is then that of one element
		}
		if !ok || said[u.Item] {
			continue
		}
		said[u.Item] = true
		filled, whole := 0.0, true
		var last *build.Item
		reason := ""
		for _, it := range contents(s, u.Item, catalog.Element) {
			width, length, known := sizeOf(it)
			if !known {
				whole = false
				continue
			}
			last = it
			filled += length * float64(it.Each)
			if width != across {
				reason = fmt.Sprintf("%s is %g inches across, and %s takes an element of %g.", it.ID, width, u.Item.ID, across)
			}
		}
		if reason == "" && last != nil && (filled > long || whole && filled < long) {
			reason = fmt.Sprintf("%s takes %g inches of elements, and %g are in it.", u.Item.ID, long, filled)
		}
		if reason == "" {
			continue
		}
		out = append(out, finding.Finding{
			Severity: finding.Stop, Subject: ofItem(last), Place: at(last.Place), Reason: reason,
			Remedy: fmt.Sprintf("Buy an element of %g x %g inches, or another vessel; and see that the list has each of them once, with `each` for several in one vessel.", across, long),
		})
	}
	return out
}
