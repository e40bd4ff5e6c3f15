package choose

import (
	"slices"

	"handtight/bom/build"
	"handtight/threads"
)

// standardOf are the two standards of pipe threads that a plant is built in, by family.
// Source: ASME B1.20.1; ISO 7-1 and ISO 228-1.
var standardOf = map[threads.Family]string{
	threads.NPT: "NPT", threads.NPTF: "NPT", threads.NPSM: "NPT", threads.NPS: "NPT",
	threads.G: "BSP", threads.R: "BSP", threads.Rc: "BSP", threads.Rp: "BSP",
}

// Standards are those that a plant may be built in throughout.
var Standards = []string{"NPT", "BSP"}

// standards lists those that an item's ends have, by every reading of each.
func standards(it *build.Item) []string {
	var out []string
	for i := range it.Ports {
		for _, e := range it.Ports[i].End.Candidates {
			if s := standardOf[e.Family]; s != "" && !slices.Contains(out, s) {
				out = append(out, s)
			}
		}
	}
	slices.Sort(out)
	return out
}

// of reports whether an item belongs to a standard: its pipe threads are all of it, or it has
// none. said is what its option says.
func of(it *build.Item, said, standard string) bool {
	if said != "" {
		return said == standard
	}
	for _, s := range standards(it) {
		if s != standard {
			return false
		}
	}
	return true
}
