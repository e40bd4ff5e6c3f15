package quantity

// Velocity is how fast water or a wave in it runs, in metres a second.
type Velocity float64

// MetrePerSecond is the unit of velocity.
const MetrePerSecond Velocity = 1

// MetresPerSecond returns the velocity as a plain number of metres a second.
func (v Velocity) MetresPerSecond() float64 { return float64(v) }

// String prints metres a second.
func (v Velocity) String() string { return Figures(float64(v)) + " m/s" }

// Density is the mass of a volume of water, in kilograms a cubic metre.
type Density float64

// KilogramPerCubicMetre is the unit of density.
const KilogramPerCubicMetre Density = 1

// KilogramsPerCubicMetre returns the density as a plain number.
func (d Density) KilogramsPerCubicMetre() float64 { return float64(d) }

// String prints kilograms a cubic metre.
func (d Density) String() string { return Figures(float64(d)) + " kg/m3" }

// Force is a force in newtons.
type Force float64

// Newton is the unit of force.
const Newton Force = 1

// Newtons returns the force as a plain number of newtons.
func (f Force) Newtons() float64 { return float64(f) }

// String prints newtons.
func (f Force) String() string { return Figures(float64(f)) + " N" }

// Second is a second of time.
const Second = Hour / 3600

// Seconds returns the duration as a plain number of seconds.
func (d Duration) Seconds() float64 { return float64(d / Second) }

// SquareMM is a square millimetre of area.
const SquareMM Area = 1e-6

// SquareMM returns the area as a plain number of square millimetres.
func (a Area) SquareMM() float64 { return float64(a / SquareMM) }
