package makeup_test

import (
	"fmt"

	"handtight/threads"
	"handtight/threads/makeup"
)

// A taper joint of 1/2 NPT. Tape: four wraps round the pipe's 21.3 mm, which is
// the middle of the wraps that the sources of table/makeup.csv print.
func ExampleOf() {
	npt, _ := threads.Find(threads.NPT, "1/2")
	joint := threads.Mate(threads.Threaded(npt, threads.Male), threads.Threaded(npt, threads.Female))
	fmt.Println(makeup.Of(&joint))
	// Output: 4 wraps of 12 mm tape (about 290 mm), 1.5 to 3 turns past hand tight
}

// A flare of dash 6 is printed as 20 to 30 N m in steel; half of it where a part is not
// steel (engine workshop manual).
func ExampleMakeup_ForMetals() {
	jic, _ := threads.Find(threads.JIC, "-6")
	joint := threads.Mate(threads.Threaded(jic, threads.Male), threads.Threaded(jic, threads.Female))
	fmt.Println(makeup.Of(&joint).ForMetals("brass", "brass"))
	// Output: no tape, 10 to 15 N m in brass or bronze
}
