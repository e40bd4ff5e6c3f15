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

// Turns by hand tell 1/4 NPT from the British threads: it goes into its like by 2.1 to
// 6.1 turns at the tolerances of ASME B1.20.1, R by 1.4 to 3.3.
func ExampleByTurns() {
	end := func(family threads.Family, sex threads.Sex) threads.End {
		form, _ := threads.Find(family, "1/4")
		return threads.Threaded(form, sex)
	}
	felt := identify.ByTurns(
		[]threads.End{end(threads.R, threads.Male), end(threads.NPT, threads.Male)},
		[]threads.End{end(threads.NPT, threads.Female)}, 4.5)
	fmt.Println(felt.Pairs[0].Mating.A, felt.Decides)
	// Output: 1/4-18 NPT male true
}

// The chance of a count falls off by the bell about the middle of 2.1 to 6.1 turns.
func ExampleTurnsDensity() {
	npt, _ := threads.Find(threads.NPT, "1/4")
	m := threads.Mate(threads.Threaded(npt, threads.Male), threads.Threaded(npt, threads.Female))
	fmt.Printf("%.2f at 4, %.2f at 7 turns\n", identify.TurnsDensity(&m, 4), identify.TurnsDensity(&m, 7))
	// Output: 0.36 at 4, 0.01 at 7 turns
}

// JIC -6 and ORB -6 are one thread with two seats.
func ExampleEqual() {
	jic, _ := threads.Find(threads.JIC, "-6")
	orb, _ := threads.Find(threads.ORB, "-6")
	g, _ := threads.Find(threads.G, "1/4")
	fmt.Println(identify.Equal(jic, orb), identify.Equal(jic, g))
	// Output: true false
}

// 3/8 pipe is sold in every shop; M17x1.5 is not (a judgement).
func ExampleCommon() {
	g, _ := threads.Find(threads.G, "3/8")
	m, _ := threads.Find(threads.M, "M16x1.5")
	fmt.Println(identify.Common(g) > identify.Common(m))
	// Output: true
}

// What somebody has in mind may be any pipe thread of that size.
func ExampleInMind() {
	npt, _ := threads.Find(threads.NPT, "1/2")
	for _, e := range identify.InMind([]threads.End{threads.Threaded(npt, threads.Male)}) {
		fmt.Println(e)
	}
	// Output:
	// 1/2-14 NPT male
	// G 1/2 male
	// R 1/2 male
}

// 14.2 mm at 18 an inch is one thread of several systems.
func ExampleIdentification_Threads() {
	found, err := identify.Identify(identify.Measured{Sex: threads.Male, Diameter: identify.Gauge(14.2), Pitch: identify.Gauge(25.4 / 18)})
	if err != nil {
		fmt.Println(err)
		return
	}
	first := found.Threads()[0]
	fmt.Println(first.Candidates[0].Form.Designation, "and", first.Candidates[1].Form.Designation, "told apart by", first.ToldBy())
	// Output: 9/16-18 JIC -6 and 9/16-18 ORB -6 told apart by the seat
}
