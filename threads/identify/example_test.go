package identify_test

import (
	"fmt"

	"handtight/threads"
	"handtight/threads/identify"
)

// 13.1 mm over 19 threads an inch: ISO 228-1 gives G 1/4 a major diameter of 12.907
// to 13.157 mm at 19 threads an inch, and no other standard cuts that pitch there.
func ExampleIdentify() {
	found, err := identify.Identify(identify.Measured{
		Sex: threads.Male, Diameter: identify.Gauge(13.1), Pitch: identify.Gauge(25.4 / 19), Taper: identify.NoTaper,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s, %.0f %%\n", found.Candidates[0].Form.Designation, 100*found.Candidates[0].Probability)
	fmt.Println(found.Next.Text)
	// Output:
	// G 1/4, 96 %
	// Nothing more need be measured: it is G 1/4.
}

// Of a pipe thread of 14 an inch the taper tells most: two families are parallel
// and three are not.
func ExampleGains() {
	gains, err := identify.Gains(identify.Measured{
		Sex: threads.Male, Diameter: identify.Gauge(20.9), Pitch: identify.Gauge(25.4 / 14),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(gains[0].Ask, "before", gains[1].Ask)
	// Output: taper before flank-angle
}

// A seat gauge shows a cone by its angle to the axis or across.
func ExampleNoseOfCone() {
	nose, ok := identify.NoseOfCone(74)
	fmt.Println(nose, ok)
	// Output: cone-37 true
}
