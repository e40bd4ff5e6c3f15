// Package quantity reads and prints what people measure, with the unit always written.
//
// Each quantity is a named float64 in one unit: [ParsePressure] and its
// siblings take it from what people write ("850 psi", `1-1/2"`, "1,5 bar"),
// accessors such as [Pressure.Bar] give plain numbers, and String prints the
// figures that people use. Two quantities of one kind may be compared and
// added; the types keep a pressure from being added to a flow.
//
// # Units
//
// The factors are in unit.csv, each with its source; [Units] lists them. A bare
// number, an unknown unit, or a unit of another kind is an [Error] that says
// what to write instead.
//
// # What it does not do
//
// It knows no absolute pressure, no difference of temperatures and no sign
// where none is due: only a temperature may be below zero.
package quantity

import "math"

// Pressure is a gauge pressure in pascals: 0 is the air around us.
type Pressure float64

// Units of pressure. Bar, KPa, MPa and KgfPerCm2 convert exactly; PSI is
// the 1 lbf over 1 in2 that NIST SP 811 (2008) appendix B.8 gives.
const (
	Pascal    Pressure = 1
	KPa       Pressure = 1e3
	Bar       Pressure = 1e5
	MPa       Pressure = 1e6
	PSI       Pressure = 6894.757293168361
	KgfPerCm2 Pressure = 98066.5
)

// NoBound is the pressure that nothing bounds: infinite.
func NoBound() Pressure { return Pressure(math.Inf(1)) }

// Unbounded reports whether nothing bounds the pressure from above.
func (p Pressure) Unbounded() bool { return math.IsInf(float64(p), 1) }

// Times returns a multiple or a share of the pressure.
func (p Pressure) Times(factor float64) Pressure { return Pressure(float64(p) * factor) }

// Pascals returns the pressure as a plain number of pascals.
func (p Pressure) Pascals() float64 { return float64(p) }

// Bar returns the pressure as a plain number of bar.
func (p Pressure) Bar() float64 { return float64(p / Bar) }

// PSI returns the pressure as a plain number of pounds per square inch.
func (p Pressure) PSI() float64 { return float64(p / PSI) }

// MPa returns the pressure as a plain number of megapascals.
func (p Pressure) MPa() float64 { return float64(p / MPa) }

// Flow is a volume flow in cubic metres a second.
type Flow float64

// Units of flow, all exact. USGPM and USGPH are US gallons of 231 cubic inches.
const (
	CubicMetrePerSecond Flow = 1
	CubicMetrePerHour   Flow = 1.0 / 3600
	LitrePerMinute      Flow = 0.001 / 60
	LitrePerHour        Flow = 0.001 / 3600
	USGPM               Flow = 0.003785411784 / 60
	USGPH               Flow = 0.003785411784 / 3600
	ImpGPM              Flow = 0.00454609 / 60
	ImpGPH              Flow = 0.00454609 / 3600
)

// LitresPerHour returns the flow as a plain number of litres an hour.
func (f Flow) LitresPerHour() float64 { return float64(f / LitrePerHour) }

// LitresPerMinute returns the flow as a plain number of litres a minute.
func (f Flow) LitresPerMinute() float64 { return float64(f / LitrePerMinute) }

// CubicMetresPerSecond returns the flow as a plain number of m3/s.
func (f Flow) CubicMetresPerSecond() float64 { return float64(f) }

// USGallonsPerHour returns the flow as a plain number of US gallons an hour.
func (f Flow) USGallonsPerHour() float64 { return float64(f / USGPH) }

// Temperature is a temperature in degrees Celsius.
type Temperature float64

// Celsius is one degree on the Celsius scale, counted from freezing water.
const Celsius Temperature = 1

// AbsoluteZero is the lowest temperature there is.
const AbsoluteZero Temperature = -273.15

// Celsius returns the temperature as a plain number of degrees Celsius.
func (t Temperature) Celsius() float64 { return float64(t) }

// Fahrenheit returns the temperature in degrees Fahrenheit: 1.8 t + 32.
func (t Temperature) Fahrenheit() float64 { return float64(t)*1.8 + 32 }

// Kelvin returns the absolute temperature in kelvin: t + 273.15.
func (t Temperature) Kelvin() float64 { return float64(t - AbsoluteZero) }

// Length is a length or a diameter in millimetres.
type Length float64

// Units of length, all exact.
const (
	Micron     Length = 1.0 / 1000
	Millimetre Length = 1
	Centimetre Length = 10
	Inch       Length = 25.4
	Foot       Length = 304.8
	Metre      Length = 1000
)

// Millimetres returns the length as a plain number of millimetres.
func (l Length) Millimetres() float64 { return float64(l) }

// Inches returns the length as a plain number of inches.
func (l Length) Inches() float64 { return float64(l / Inch) }

// Metres returns the length as a plain number of metres.
func (l Length) Metres() float64 { return float64(l / Metre) }

// Microns returns the length as a plain number of microns.
func (l Length) Microns() float64 { return float64(l / Micron) }

// Voltage is an electric voltage in volts.
type Voltage float64

// Volt is the unit of voltage.
const Volt Voltage = 1

// Volts returns the voltage as a plain number of volts.
func (v Voltage) Volts() float64 { return float64(v) }

// Current is an electric current in amperes.
type Current float64

// Ampere is the unit of current.
const Ampere Current = 1

// Amperes returns the current as a plain number of amperes.
func (c Current) Amperes() float64 { return float64(c) }

// Power is a power in watts.
type Power float64

// Units of power. Horsepower is 550 foot pounds-force a second.
const (
	Watt       Power = 1
	Kilowatt   Power = 1000
	Horsepower Power = 745.6998715822702
)

// Watts returns the power as a plain number of watts.
func (p Power) Watts() float64 { return float64(p) }

// Horsepower returns the power as a plain number of horsepower.
func (p Power) Horsepower() float64 { return float64(p / Horsepower) }

// Charge is a battery's charge in ampere hours.
type Charge float64

// AmpereHour is the unit of charge.
const AmpereHour Charge = 1

// AmpereHours returns the charge as a plain number of ampere hours.
func (c Charge) AmpereHours() float64 { return float64(c) }

// Salinity is the mass of salt in a mass of water, in grams a kilogram.
//
// ppm is taken as milligrams a kilogram. mg/L is divided by the water's density
// at 25 C, which rises with the salinity s in g/kg as 997.04796 + 0.75129 s
// kg/m3: the two published densities at 0 and 35 joined by a line (UNESCO
// Technical Papers in Marine Science 44 (1983) p.19).
type Salinity float64

// Units of salinity.
const (
	GramPerKilogram Salinity = 1
	PPM             Salinity = 1.0 / 1000
)

// Density at 25 C in kg/L, and how it rises with each g/kg; see [Salinity].
const (
	freshDensity = 0.99704796
	densityRise  = (1.02334306 - 0.99704796) / 35
)

// GramsPerKilogram returns the salinity as a plain number of g/kg.
func (s Salinity) GramsPerKilogram() float64 { return float64(s) }

// PPM returns the salinity in parts per million by mass.
func (s Salinity) PPM() float64 { return float64(s) * 1000 }

// MilligramsPerLitre returns the salinity in mg/L at 25 C.
func (s Salinity) MilligramsPerLitre() float64 {
	return float64(s) * (freshDensity + densityRise*float64(s)) * 1000
}

// fromMilligramsPerLitre solves s (fresh + rise s) = mg/1000 for s.
func fromMilligramsPerLitre(mg float64) float64 {
	root := math.Sqrt(freshDensity*freshDensity + 4*densityRise*mg/1000)
	return (root - freshDensity) / (2 * densityRise)
}

// Duration is a length of time in hours.
type Duration float64

// Units of time. A month is a twelfth of 365.25 days, which is 30.4375 days.
const (
	Hour  Duration = 1
	Day   Duration = 24
	Week  Duration = 168
	Month Duration = 730.5
	Year  Duration = 8766
)

// Hours returns the duration as a plain number of hours.
func (d Duration) Hours() float64 { return float64(d) }

// Days returns the duration as a plain number of days.
func (d Duration) Days() float64 { return float64(d / Day) }

// Months returns the duration as a plain number of months of 30.4375 days.
func (d Duration) Months() float64 { return float64(d / Month) }

// Share is a part of a whole: 1 is all of it.
type Share float64

// Percent is a hundredth of the whole.
const Percent Share = 0.01

// Percent returns the share as a plain number of percent.
func (s Share) Percent() float64 { return float64(s) * 100 }

// Fraction returns the share as a plain number, 1 being the whole.
func (s Share) Fraction() float64 { return float64(s) }

// Torque is a turning moment in newton metres.
type Torque float64

// NewtonMetre is the unit of torque.
const NewtonMetre Torque = 1

// NewtonMetres returns the torque as a plain number of newton metres.
func (t Torque) NewtonMetres() float64 { return float64(t) }
