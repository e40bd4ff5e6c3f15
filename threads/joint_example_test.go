package threads_test

import (
	"fmt"

	"handtight/threads"
)

// The hand-tight engagement of 1/2 NPT is L1 = 0.320 in, 4.48 turns (ASME
// B1.20.1 table 2), a turn either way for each end.
func ExampleMate() {
	npt, _ := threads.Find(threads.NPT, "1/2")
	rc, _ := threads.Find(threads.Rc, "1/2")
	like := threads.Mate(threads.Threaded(npt, threads.Male), threads.Threaded(npt, threads.Female))
	fmt.Printf("%s: %.2f to %.2f turns by hand\n", like.Verdict, like.Hand.Tightest, like.Hand.Loosest)
	cross := threads.Mate(threads.Threaded(npt, threads.Male), threads.Threaded(rc, threads.Female))
	fmt.Println(cross.Verdict)
	fmt.Println(cross.Remedy())
	// Output:
	// seals-with: 2.48 to 6.48 turns by hand
	// leaks
	// Do not force it. Buy an adaptor 1/2-14 NPT female x R 1/2 male, or another part: R 1/2 male in place of 1/2-14 NPT male, or 1/2-14 NPT female in place of Rc 1/2 female.
}
