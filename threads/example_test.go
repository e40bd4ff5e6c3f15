package threads_test

import (
	"fmt"

	"handtight/pressure/quantity"
	"handtight/threads"
)

// end makes an end of a family's size, as the examples need it.
func end(family threads.Family, size string, sex threads.Sex) threads.End {
	form, ok := threads.Find(family, size)
	if !ok {
		panic(size)
	}
	return threads.Threaded(form, sex)
}

// ISO 228-1 prints G 1/2 with 14 threads an inch on a major diameter of 20.955 mm.
func ExampleFind() {
	form, ok := threads.Find(threads.G, "1/2")
	fmt.Println(ok, form.Designation, form.TPI, form.Major)
	_, ok = threads.Find(threads.NPT, "5/8")
	fmt.Println(ok)
	// Output:
	// true G 1/2 14 20.96 mm
	// false
}

// The 24 degree cone ends of the light series begin with tubes of 6 and 8 mm.
func ExampleForms() {
	for _, f := range threads.Forms(threads.Cone24L)[:2] {
		fmt.Println(f.Designation, f.Tube)
	}
	// Output:
	// 6L M12x1.5 6 mm
	// 8L M14x1.5 8 mm
}

// ASME B1.20.1: 1/2 NPT is hand tight at 0.320 in, 4.48 turns of 14 an inch.
func ExampleForm_HandTightTurns() {
	form, _ := threads.Find(threads.NPT, "1/2")
	fmt.Printf("%.2f turns over %.3f in\n", form.HandTightTurns(), form.HandTight.Inches())
	// Output: 4.48 turns over 0.320 in
}

// The useful thread of 1/2 NPT is L2 = 0.5337 in (ASME B1.20.1), 7.47 turns.
func ExampleForm_FullTurns() {
	form, _ := threads.Find(threads.NPT, "1/2")
	fmt.Printf("%.2f turns, %.4f in\n", form.FullTurns(), form.Full().Inches())
	// Output: 7.47 turns, 0.5337 in
}

// Height of the Whitworth thread of G 1/2: 0.640327 x 1.814 mm = 1.162 mm (ISO 228-1).
func ExampleForm_Height() {
	form, _ := threads.Find(threads.G, "1/2")
	fmt.Printf("%.3f mm\n", form.Height().Millimetres())
	// Output: 1.162 mm
}

// ISO 228-1: outside of G 1/2 20.955 less 0.284 mm, inside 18.631 plus 0.541.
func ExampleForm_CrestAt() {
	form, _ := threads.Find(threads.G, "1/2")
	male, female := form.CrestAt(threads.Male, 0), form.CrestAt(threads.Female, 0)
	fmt.Printf("%.3f to %.3f, %.3f to %.3f\n", male.Least, male.Most, female.Least, female.Most)
	// Output: 20.671 to 20.955, 18.631 to 19.172
}

// ISO 228-1: pitch diameter of G 1/2 inside, 19.793 plus 0.142 mm.
func ExampleForm_PitchLimits() {
	form, _ := threads.Find(threads.G, "1/2")
	limits := form.PitchLimits(threads.Female)
	fmt.Printf("%.3f to %.3f, middle %.3f\n", limits.Least, limits.Most, limits.Middle())
	// Output: 19.793 to 19.935, middle 19.864
}

// NPT and NPSM share pitch, angle and pitch diameter; G has another angle.
func ExampleAlike() {
	npt, _ := threads.Find(threads.NPT, "1/2")
	npsm, _ := threads.Find(threads.NPSM, "1/2")
	g, _ := threads.Find(threads.G, "1/2")
	fmt.Println(threads.Alike(npt, npsm), threads.Alike(npt, g))
	// Output: true false
}

// 1 and 1 1/2 inch hygienic ferrules share a flange of 1.988 in.
func ExampleFlangeOf() {
	small, _ := threads.FlangeOf("1 in")
	large, _ := threads.FlangeOf("1 1/2 in")
	fmt.Println(small, large)
	// Output: 50.5 mm 50.5 mm
}

func ExampleSizeInches() {
	fmt.Println(threads.SizeInches("1 1/4"))
	// Output: 1.25
}

// Why a joint is as it is, in one sentence for a newcomer.
func ExampleMating_Reason() {
	m := threads.Mate(end(threads.G, "1/2", threads.Male), end(threads.Rc, "1/2", threads.Female))
	fmt.Println(m.Reason())
	// Output: G 1/2 male in Rc 1/2 female: a parallel male in a taper female touches at its first thread only.
}

func ExampleMating_Remedy() {
	m := threads.Mate(end(threads.NPT, "1/2", threads.Male), end(threads.NPT, "1/2", threads.Male))
	fmt.Println(m.Remedy())
	// Output: Buy one of the two as female, or a socket (female both ends) of 1/2-14 NPT.
}

func ExampleMating_Closes() {
	m := threads.Mate(end(threads.JIC, "-6", threads.Male), end(threads.JIC, "-6", threads.Female))
	fmt.Println(m.Verdict, "-", m.Closes())
	// Output: seals - metal cone, 37 degree
}

// What people ask of a joint that they have made already.
func ExampleMating_MayStay() {
	m := threads.Mate(end(threads.NPT, "1/4", threads.Male), end(threads.Rc, "1/4", threads.Female))
	fmt.Println(m.MayStay())
	// Output: No. It hangs by the few threads that jammed: it may hold for a time, and then it is thrown out. Never below the waterline.
}

// A garden hose's washer closes, and not at every pressure.
func ExampleMating_Bears() {
	m := threads.Mate(end(threads.NH, "3/4", threads.Male), end(threads.NH, "3/4", threads.Female))
	fmt.Println(m.Verdict, m.Bears(4*quantity.Bar, true), m.Bears(12*quantity.Bar, true))
	// Output: seals-with true false
}

// A swivel without a seat is asked about.
func ExampleMating_Question() {
	swivel := end(threads.G, "1/2", threads.Female)
	swivel.Swivel = true
	m := threads.Mate(end(threads.G, "1/2", threads.Male), swivel)
	fmt.Println(m.Verdict)
	fmt.Println(m.Question())
	// Output:
	// low-pressure-only
	// Has the swivel a 60 degree cone or a flat face with a gasket inside? Look into the nut; and has the male the 30 degree chamfer?
}

// Middling parts of 1/2 NPT meet at the standard's 4.48 turns.
func ExampleMating_TypicalTurns() {
	m := threads.Mate(end(threads.NPT, "1/2", threads.Male), end(threads.NPT, "1/2", threads.Female))
	turns, ok := m.TypicalTurns()
	fmt.Printf("%.2f %v\n", turns, ok)
	fmt.Println(m.HandWords())
	// Output:
	// 4.48 true
	// about 4 turns (2 to 6 as parts vary)
}

// G 1/2 in G 1/2 over seven turns, by the formulas of FED-STD-H28/2 and the limits of ISO
// 228-1: external = pi x 7 x 19.172 (0.907 + 0.5206 (19.509 - 19.172)) = 456 mm2.
func ExampleMating_ShearArea() {
	m := threads.Mate(end(threads.G, "1/2", threads.Male), end(threads.G, "1/2", threads.Female))
	external, internal, ok := m.ShearArea()
	turns, _ := m.EngagedTurns()
	fmt.Printf("%.0f and %.0f mm2 over %.0f turns, %v\n", external, internal, turns, ok)
	// Output: 456 and 586 mm2 over 7 turns, true
}

// ASME B1.20.1: hand-tight 4.48 turns of 1/2 NPT, the loosest parts one turn of each gauge further.
func ExampleMating_EngagedTurns() {
	m := threads.Mate(end(threads.NPT, "1/2", threads.Male), end(threads.NPT, "1/2", threads.Female))
	turns, ok := m.EngagedTurns()
	fmt.Printf("%.2f %v\n", turns, ok)
	// Output: 6.48 true
}

// Of two readings the worst rules.
func ExampleWorst() {
	said := threads.EndReading{Candidates: []threads.End{end(threads.G, "1/2", threads.Male), end(threads.R, "1/2", threads.Male)}}
	port := threads.EndReading{Candidates: []threads.End{end(threads.Rc, "1/2", threads.Female)}}
	worst, open := threads.Worst(said, port)
	fmt.Println(worst.Verdict, open)
	// Output: leaks true
}

// A hose that bursts at 20 bar holds no more, whatever else is said of it; a gauge that reads to 20 bar may.
func ExampleStatedPressure_Bounds() {
	burst := threads.StatedPressure{What: "burst", Pressure: 20 * quantity.Bar, Words: "20 bar"}
	scale := threads.StatedPressure{What: "full scale", Pressure: 20 * quantity.Bar, Words: "20 bar"}
	fmt.Println(burst.Bounds(), scale.Bounds())
	// Output: true false
}
