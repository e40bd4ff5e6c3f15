package read

import (
	"fmt"
	"strconv"

	"handtight/bom/build"
	"handtight/catalog"
)

// vessels checks that each vessel can hold what is put inside it, by the sizes that are written
// with `size`, and by how many it takes. What only the words of a title say is a reading, and
// so a finding of the check; and so is an element that a vessel holds without filling it.
func (r *reader) vessels() {
	inside := map[string][]*build.Item{}
	for _, it := range r.build.Items {
		if it.Inside != "" && it.Kind.Is(catalog.Element) {
			inside[it.Inside] = append(inside[it.Inside], it)
		}
	}
	for _, v := range r.build.Items {
		if v.Kind.Is(catalog.Separates) {
			r.vessel(v, inside[v.ID])
		}
	}
}

func (r *reader) vessel(v *build.Item, elements []*build.Item) {
	across, room, sized := sizeFigures(v.Process.Size)
	takes := v.Process.Elements
	if takes != nil {
		room *= *takes
	}
	count, long := 0, 0
	for _, e := range elements {
		each := max(e.Each, 1)
		if count += each; takes != nil && count > *takes {
			r.faultAt(e.Place, "inside", fmt.Sprintf("vessel `%s` takes %d of elements, and this makes %d inside it", v.ID, *takes, count),
				fmt.Sprintf("put it into another vessel, write `each` as it is, or elements = %d at `%s` if it is that long", count, v.ID))
			return
		}
		wide, length, ok := sizeFigures(e.Process.Size)
		if !ok || !sized {
			continue
		}
		if wide > across {
			r.faultAt(e.Place, "size", fmt.Sprintf("an element %s inches across does not go into vessel `%s`, which takes %s", tenths(wide), v.ID, tenths(across)),
				fmt.Sprintf("write size = \"%02d%02d\" if that is the element, or the vessel's true size", across, length))
			continue
		}
		if long += length * each; long > room {
			r.faultAt(e.Place, "size", fmt.Sprintf("vessel `%s` is %d inches long inside, and with this %d inches of elements are in it", v.ID, room, long),
				fmt.Sprintf("write a shorter element or a smaller `each`, or give `%s` its true size; for one that takes several, say how many with `elements`", v.ID))
			return
		}
	}
}

// sizeFigures takes "2540" apart: tenths of an inch across, inches long.
func sizeFigures(code string) (across, long int, ok bool) {
	n, err := strconv.Atoi(code)
	if err != nil || len(code) != 4 {
		return 0, 0, false
	}
	return n / 100, n % 100, true
}

func tenths(n int) string { return strconv.FormatFloat(float64(n)/10, 'f', -1, 64) }
