package quantity

import "strconv"

// Volume is a volume of water in litres.
type Volume float64

// Litre is the unit of volume.
const Litre Volume = 1

// Litres returns the volume as a plain number of litres.
func (v Volume) Litres() float64 { return float64(v) }

// String prints litres.
func (v Volume) String() string { return Figures(float64(v)) + " L" }

// ParseVolume reads a volume: L or US gallons. The error is an *Error.
func ParseVolume(text string) (Volume, error) { return read[Volume](text, volume) }

// Area is an area in square metres.
type Area float64

// SquareMetre is the unit of area.
const SquareMetre Area = 1

// SquareMetres returns the area as a plain number of square metres.
func (a Area) SquareMetres() float64 { return float64(a) }

// String prints square metres.
func (a Area) String() string { return Figures(float64(a)) + " m2" }

// ParseArea reads an area: m2 or ft2. The error is an *Error.
func ParseArea(text string) (Area, error) { return read[Area](text, area) }

// Section is the section of a conductor in square millimetres.
type Section float64

// SquareMillimetre is the unit of a conductor's section.
const SquareMillimetre Section = 1

// SquareMillimetres returns the section as a plain number.
func (s Section) SquareMillimetres() float64 { return float64(s) }

// String prints square millimetres.
func (s Section) String() string { return Figures(float64(s)) + " mm2" }

// ParseSection reads a conductor's section in mm2. The error is an *Error.
func ParseSection(text string) (Section, error) { return read[Section](text, section) }

// Speed is how fast a shaft turns, in turns a minute.
type Speed float64

// TurnPerMinute is the unit of speed.
const TurnPerMinute Speed = 1

// TurnsPerMinute returns the speed as a plain number.
func (s Speed) TurnsPerMinute() float64 { return float64(s) }

// String prints turns a minute as they are written on plates.
func (s Speed) String() string { return strconv.FormatFloat(float64(s), 'f', 0, 64) + " rpm" }

// ParseSpeed reads a speed in rpm. The error is an *Error.
func ParseSpeed(text string) (Speed, error) { return read[Speed](text, speed) }

// Concentration is the mass of salt in a volume of water, in grams a litre. ppm is taken as
// mg/L here, as data sheets of elements mean it.
type Concentration float64

// GramPerLitre is the unit of concentration.
const GramPerLitre Concentration = 1

// GramsPerLitre returns the concentration as a plain number.
func (c Concentration) GramsPerLitre() float64 { return float64(c) }

// String prints g/L.
func (c Concentration) String() string { return Figures(float64(c)) + " g/L" }

// ParseConcentration reads a concentration: g/L, mg/L or ppm. The error is an *Error.
func ParseConcentration(text string) (Concentration, error) {
	return read[Concentration](text, concentration)
}

var (
	volume        = kind{name: "volume", called: "a volume", example: "120 L"}
	area          = kind{name: "area", called: "an area", example: "2.8 m2"}
	section       = kind{name: "section", called: "a conductor's section", example: "16 mm2"}
	speed         = kind{name: "speed", called: "a speed", example: "1450 rpm"}
	concentration = kind{name: "concentration", called: "a concentration", example: "32 g/L"}
)
