package pressure_test

import (
	"fmt"

	"handtight/pressure"
	"handtight/pressure/quantity"
)

func ExampleAbove() {
	fmt.Println(pressure.Above(50.0005*quantity.Bar, 50*quantity.Bar), pressure.Above(50.1*quantity.Bar, 50*quantity.Bar))
	// Output: false true
}

// 1/2 x 0.049 in: 3500 psi, page "NPT pipe end pressure ratings", table 1.
func ExampleTubeRating() {
	r, ok := pressure.TubeRating("316", quantity.Inch/2, 0.049*quantity.Inch)
	fmt.Printf("%.0f psi, %s %v\n", r.Pressure.PSI(), r.Basis, ok)
	// Output: 3500 psi, tube table true
}

func ExampleTubeGap() {
	fmt.Println(pressure.TubeGap("copper", quantity.Inch/2, 0.049*quantity.Inch))
	// Output: the table of tube is for 316 and 304, and says nothing of `copper`
}

// 1/2 pipe of schedule 40 has a wall of 0.109 in (ASME B36.10M), its thread a depth of 0.8 of
// a pitch of 1/14 in (ASME B1.20.1): 0.875 x 2.769 - 1.451 mm.
func ExampleNetWall() {
	fmt.Printf("%.2f mm\n", pressure.NetWall(0.109*quantity.Inch, 0.8*quantity.Inch/14).Millimetres())
	// Output: 0.97 mm
}

// 100 mm2 of brass at 68.9 MPa x 0.577 bear 3978 N; a seal of 20 mm is 314.2 mm2.
func ExampleJointStrength() {
	r, ok := pressure.JointStrength(pressure.ThreadedJoint{
		External: 100 * quantity.SquareMM, Internal: 150 * quantity.SquareMM,
		Male: "brass", Female: "316", Seal: 20 * quantity.Millimetre,
	})
	fmt.Printf("%.0f bar, %s %v\n", r.Pressure.Bar(), r.Basis, ok)
	// Output: 127 bar, estimate true
}

func ExampleStressGap() {
	fmt.Println(pressure.StressGap("oak"))
	// Output: `oak` is no material whose allowable stress is known
}

// 2 rho L dv / t = 2 x 1000 x 3 x 2 / 0.02 Pa, where the critical time is 5 ms.
func ExampleClosingSurge() {
	rise, ok := pressure.ClosingSurge(1000, 1200, 2, 3*quantity.Metre, 0.02*quantity.Second)
	fmt.Println(rise, ok)
	// Output: 6 bar true
}

// Steel tube of 12.7 mm with a wall of 2 mm, by the formula of the page "Water hammer":
// sqrt(2.07e6 / (1 + 0.01035 x 6.35)) = 1393.6.
func ExampleWaveSpeed() {
	v, ok := pressure.WaveSpeed(2070*quantity.MPa, 1000, 12.7*quantity.Millimetre, 2*quantity.Millimetre, 200000*quantity.MPa)
	fmt.Printf("%.0f m/s %v\n", v.MetresPerSecond(), ok)
	// Output: 1394 m/s true
}

// sqrt(21.22 x 20 / 1.2) mm, the other way round of [pressure.LineSpeed].
func ExampleBoreFor() {
	bore, ok := pressure.BoreFor(20*quantity.LitrePerMinute, 1.2*quantity.MetrePerSecond)
	fmt.Printf("%.1f mm %v\n", bore.Millimetres(), ok)
	// Output: 18.8 mm true
}

func ExamplePumpCurrent() {
	draw, err := pressure.PumpCurrent(600*quantity.Watt, 24*quantity.Volt, 50*quantity.Percent)
	fmt.Println(draw, err)
	// Output: 50 A <nil>
}

func ExampleOfDataSheet() {
	r := pressure.OfDataSheet(16*quantity.Bar, "strainer")
	fmt.Println(r.Pressure, r.Source, r.Status)
	// Output: 16 bar strainer stated
}

func ExampleOfClosing() {
	r := pressure.OfClosing(3*quantity.Bar, "the gasket", "a table of seals")
	fmt.Println(r, r.Status)
	// Output: 3 bar (what closes it: the gasket: 3 bar) judgement
}

func ExampleLower() {
	hose := pressure.OfDataSheet(275*quantity.Bar, "hose")
	end := pressure.OfDataSheet(207*quantity.Bar, "its end")
	r, ok := pressure.Lower(hose, pressure.Rating{}, end) // what is not known is passed over
	fmt.Println(r.Source, r.Pressure, ok)
	// Output: its end 207 bar true
}

// Twice the rating for hose: SAE J517, 1 : 2 : 4; 275 bar is 2SN of half an inch by EN 853.
func ExampleProof() {
	hose, _ := pressure.HoseRating("2SN", quantity.Inch/2)
	p, ok := pressure.Proof(hose)
	fmt.Println(p, ok)
	// Output: 550 bar true
}

// EN 853:2015, scope: water of 0 to 70 C.
func ExampleDerateHose() {
	f, err := pressure.DerateHose("2SN", 20, 45)
	fmt.Println(f.Value, err)
	_, err = pressure.DerateHose("2SN", 75, 45)
	fmt.Println(err)
	// Output:
	// 1 <nil>
	// EN 853 2SN (SAE 100R2AT) in water is not rated at 75 C, only from 0 C to 70 C; choose another material or bring the temperature inside
}

// Machinery's Handbook, 31st edition, p.2770: PVC keeps 0.62 at 100 F.
func ExampleDeratePlastic() {
	f, err := pressure.DeratePlastic("reinforced PVC, brass ends", 37.8)
	fmt.Printf("%.2f %v\n", f.Value, err)
	// Output: 0.62 <nil>
}

func ExampleLeastFactor() {
	pvc, err := pressure.DerateMaterial("PVC", 37.8)
	f, none := pressure.LeastFactor(pressure.Derated{Factor: pressure.Factor{Value: 0.9}}, pressure.Derated{Factor: pvc, Err: err})
	fmt.Printf("%.2f %v\n", f.Value, none)
	// Output: 0.62 <nil>
}

func ExampleFactor_Apply() {
	r := pressure.Factor{Value: 0.5, Text: "at 50 C"}.Apply(pressure.OfDataSheet(16*quantity.Bar, "pipe"))
	fmt.Println(r.Pressure, r.Text)
	// Output: 8 bar data sheet: 16 bar, times 0.5 (at 50 C)
}

// SAE J517 100R4: 25 inches of mercury, from memory.
func ExampleVacuumRating() {
	r, ok := pressure.VacuumRating("100R4", 0.75*quantity.Inch)
	fmt.Println(r.Pressure, r.Status, ok)
	_, ok = pressure.VacuumRating("2SN", 0.75*quantity.Inch) // a delivery hose
	fmt.Println(ok)
	// Output:
	// 0.85 bar memory true
	// false
}

// EN 853:2015: 180 mm for 2SN of half an inch.
func ExampleMinBend() {
	radius, ok := pressure.MinBend("2SN", quantity.Inch/2)
	fmt.Println(radius, ok)
	// Output: 180 mm true
}

// A dash is a sixteenth of an inch: of bore in EN 853.
func ExampleBoreOfDash() {
	bore, ok := pressure.BoreOfDash("2SN", 8)
	fmt.Println(bore, ok)
	// Output: 12.7 mm true
}

func ExampleHoseGap() {
	fmt.Println(pressure.HoseGap("2SN", 14*quantity.Millimetre))
	// Output: size not in the table: EN 853 2SN (SAE 100R2AT) has no bore of 14 mm
}

func ExamplePipeGap() {
	fmt.Println(pressure.PipeGap("PE100 SDR 12"))
	// Output: SDR 12 of PE100 is in no table that is known
}

func ExampleHoseSpec() {
	spec, ok := pressure.HoseSpec("DIN EN 857 2SC hose")
	fmt.Println(spec, ok)
	// Output: EN 857 2SC true
}

func ExampleNearestSpec() {
	spec, ok := pressure.NearestSpec("2NS")
	fmt.Println(string(spec), ok)
	// Output: 2SN true
}

// MSS SP-114 class 150: 300 psi to 65.6 C.
func ExampleCastClassTrap() {
	fmt.Println(pressure.CastClassTrap(50 * quantity.Bar))
	// Output: Class 150 is a name and not a pressure: the best cast 316 fitting of class 150 is rated 20.7 bar in cold water, far less than the duty.
}

// A maker's figure for his own sort of fitting is a claim, and no standard's.
func ExampleFittingStandard() {
	_, claimed := pressure.FittingRating("", "PP", "PUSH", false, "1/4")
	_, standard := pressure.FittingStandard("", "PP", "PUSH", false, "1/4")
	fmt.Println(claimed, standard)
	// Output: true false
}
