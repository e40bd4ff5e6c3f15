package title_test

import (
	"fmt"

	"handtight/threads"
	"handtight/threads/makeup"
	"handtight/threads/title"
)

// A program judges a joint from what a shop writes: read both ends, mate them by their
// worst readings, and say how the joint is made. ASME B1.20.1: NPT needs a sealant and
// is turned past hand tight.
func ExampleReadEnd() {
	male, err := title.ReadEnd(`1/2" NPT male`)
	if err != nil {
		fmt.Println(err)
		return
	}
	female, err := title.ReadEnd("1/2 NPT female")
	if err != nil {
		fmt.Println(err)
		return
	}
	joint, open := threads.Worst(male, female)
	fmt.Println(joint.Verdict, open)
	fmt.Println(makeup.Of(&joint))
	// Output:
	// seals-with false
	// 4 wraps of 12 mm tape (about 290 mm), 1.5 to 3 turns past hand tight
}

// A list is read on all processors, in its order.
func ExampleReadAll() {
	for _, r := range title.ReadAll([]string{"Hex nipple 1/2 NPT", "Plug G 1/4 with bonded seal"}) {
		fmt.Println(r.Kind, len(r.Ends))
	}
	// Output:
	// nipple 2
	// plug 1
}

// A shop's whole line gives the kind of part, its material and its ends.
func ExampleRead() {
	r := title.Read("Hose tail 3/4 BSPP female swivel 60 cone x 19 mm barb, bronze")
	fmt.Println(r.Kind, r.Material)
	for _, e := range r.Ends {
		fmt.Println(e.Candidates[0])
	}
	// Output:
	// hose tail bronze
	// G 3/4 female swivel 60 cone
	// 19 mm barb
}
