package title

import "testing"

// The threads an inch stand behind an x or a blank too, and are no length and no tube.
// Written down before any was read.
func TestThreadsAnInchApartFromTheSize(t *testing.T) {
	readTitled(t, []titled{
		{"Hex nipple 1/2 x 14 NPT", "NPT 1/2 male; NPT 1/2 male", "nipple", ""},
		{"Bush 3/4 x 14 NPT x 1/2 x 14 NPT", "NPT 3/4 male; NPT 1/2 female", "bush", ""},
		{`Coupling 1" x 11 1/2 NPT brass`, "NPT 1 female; NPT 1 female", "coupling", "brass"},
		{"Plug 1/4 - 18 NPT 316", "NPT 1/4 male", "plug", "316"},
		{"Hose tail 1/2 BSP male x 14 mm", "BSP 1/2 male; BARB 14 mm", "hose tail", ""},
	})
}
