package card_test

import (
	"fmt"

	"handtight/threads"
	"handtight/threads/card"
)

// ISO 228-1: the major diameter of G 1/2 is 20.955 mm less 0.284.
func ExampleOf() {
	g, _ := threads.Find(threads.G, "1/2")
	c, ok := card.Of(threads.Threaded(g, threads.Male))
	fmt.Println(ok, c.Crest.Least, c.Crest.Most)
	fmt.Println("goes with", c.Mates[0].B, "-", c.Mates[0].Verdict)
	fmt.Println("taken for", c.LookAlikes[0].Form.Designation+":", c.LookAlikes[0].Tell[0])
	// Output:
	// true 20.67 mm 20.95 mm
	// goes with G 1/2 female - seals-with
	// taken for 1/2-14 NPSM: 60 degree flanks, not 55
}
