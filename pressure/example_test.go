package pressure_test

import (
	"fmt"

	"handtight/pressure"
	"handtight/pressure/quantity"
)

func ExampleHoseRating() {
	spec, _ := pressure.HoseSpec("DIN EN 853 2SN")
	bore, _ := quantity.ParseLength(`1/2"`)
	r, ok := pressure.HoseRating(spec, bore)
	fmt.Println(r.Pressure, r.Basis, r.Status, ok)
	// Output: 275 bar hose standard seen true
}

func ExampleFittingRating() {
	r, ok := pressure.FittingRating("SP-114 class 150", "316", "NPT", false, "1/2")
	fmt.Println(r.Pressure, r.Basis, r.Status, ok)
	// Output: 20.7 bar fitting class seen true
}

func ExampleClampJoint() {
	r, _ := pressure.ClampJoint(19*quantity.Millimetre, "PVC suction hose")
	fmt.Println(r.Pressure)
	// Output: 8.62 bar
}

func ExampleDerateMaterial() {
	f, _ := pressure.DerateMaterial("PVC", 48.9)
	fmt.Printf("%.2f\n", f.Value)
	// Output: 0.40
}

func ExampleWaterPower() {
	power := pressure.WaterPower(800*quantity.PSI, 2.1*quantity.USGPM)
	draw, _ := pressure.PumpCurrent(power, 24*quantity.Volt, 60*quantity.Percent)
	fmt.Println(power, draw)
	// Output: 730.8 W 50.7 A
}
