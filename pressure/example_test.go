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
	power := pressure.WaterPower(40*quantity.Bar, 12*quantity.LitrePerMinute)
	draw, _ := pressure.PumpCurrent(power, 24*quantity.Volt, 60*quantity.Percent)
	fmt.Println(power, draw)
	// Output: 800 W 55.6 A
}

func ExamplePipeRating() {
	r, ok := pressure.PipeRating("PE100 SDR 11")
	fmt.Println(r.Pressure, r.Status, ok)
	// Output: 16 bar seen true
}

func ExampleSurge() {
	rise := pressure.Surge(1000, 1200, 2)
	fmt.Printf("%.0f bar\n", rise.Bar())
	// Output: 24 bar
}

func ExampleCriticalTime() {
	fmt.Printf("%.3f s\n", float64(pressure.CriticalTime(6000*quantity.Millimetre, 1200)/quantity.Second))
	// Output: 0.010 s
}

func ExampleEndLoad() {
	fmt.Printf("%.0f N\n", float64(pressure.EndLoad(100*quantity.Bar, 20*quantity.Millimetre)))
	// Output: 3142 N
}

func ExampleLineSpeed() {
	v, ok := pressure.LineSpeed(30*quantity.LitrePerMinute, 20*quantity.Millimetre)
	fmt.Printf("%.2f m/s %v\n", float64(v), ok)
	// Output: 1.59 m/s true
}

func ExampleReliefWindow() {
	from, to, ok := pressure.ReliefWindow(40*quantity.Bar, 50*quantity.Bar)
	fmt.Println(from, to, ok)
	// Output: 44 bar 50 bar true
}

func ExampleWallRating() {
	r, ok := pressure.WallRating(20*quantity.Millimetre, 2*quantity.Millimetre, 1000*quantity.Bar)
	fmt.Printf("%.0f bar %v\n", r.Pressure.Bar(), ok)
	// Output: 217 bar true
}

func ExampleGoverning() {
	class, _ := pressure.FittingRating("SP-114 class 150", "316", "NPT", false, "1/2")
	r, ok := pressure.Governing(class, pressure.OfDataSheet(16*quantity.Bar, "a maker's sheet"))
	fmt.Println(r.Pressure, ok)
	// Output: 16 bar true
}

func ExampleClassGap() {
	fmt.Println(pressure.ClassGap("150", "316", "NPT", false, "1/2"))
	// Output: `150` is no class that is known: write "class 150"
}

func ExampleAllowableStress() {
	s, ok := pressure.AllowableStress("duplex")
	fmt.Printf("%.0f MPa %v\n", s.Value.MPa(), ok)
	// Output: 207 MPa true
}
