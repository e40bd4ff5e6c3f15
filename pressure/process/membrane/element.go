package membrane

import (
	"errors"
	"fmt"
	"math"

	"handtight/pressure/process/sea"
	"handtight/pressure/quantity"
)

// Test is how a data sheet's product was measured, always with cooking salt at 25 C.
type Test struct {
	Product   quantity.Flow
	Pressure  quantity.Pressure
	Salt      float64 // g/L of cooking salt
	Recovery  quantity.Share
	Rejection quantity.Share
}

// Element is what a data sheet says.
type Element struct {
	Area   SquareMetre
	Long   quantity.Length // over all
	Spacer quantity.Length // height of the feed channel
	Void   quantity.Share  // open share of the channel
	Test   Test
}

// Element of a class: its usual figures and the usual test.
func (c Class) Element() Element {
	usual := func(name string) float64 { u := common()[name]; return u.Low }
	return Element{
		Area: c.Area, Long: c.Long, Spacer: quantity.Length(usual("spacer")), Void: quantity.Share(usual("spacer_void")),
		Test: Test{Product: c.Product, Pressure: quantity.Pressure(usual("test_pressure")) * quantity.Bar, Salt: usual("test_salt"),
			Recovery: quantity.Share(usual("test_recovery")) * quantity.Percent, Rejection: c.Rejection},
	}
}

// Permeability is a volume of water through an area in a time: of water for a pressure
// (m/(s Pa)), or of salt (m/s).
type Permeability float64

// PerBar is the permeability of water in L/m2/h/bar.
func (p Permeability) PerBar() float64 { return float64(p) * 3.6e6 * 1e5 }

// LitresPerSquareMetreHour is the permeability of salt, or a flux, in L/m2/h.
func (p Permeability) LitresPerSquareMetreHour() float64 { return float64(p) * 3.6e6 }

// Unit is an element made ready: its permeabilities at 25 C and its channel.
type Unit struct {
	Water, Salt Permeability // A and B at 25 C
	Area        SquareMetre
	active      float64 // length of the channel, m
	section     float64 // open, m2
	hydraulic   float64 // diameter, m
}

// deadEnds is how much of an element's length has no membrane (judgement).
const deadEnds = 100 * quantity.Millimetre

// Channel is the active length, the open section and the hydraulic diameter: d_h = 4 e /
// (2/h + (1 - e) 8/h), with e the open share and h the height.
func (u *Unit) Channel() (active quantity.Length, section SquareMetre, hydraulic quantity.Length) {
	return quantity.Length(u.active) * quantity.Metre, SquareMetre(u.section), quantity.Length(u.hydraulic) * quantity.Metre
}

// Calibrate finds the permeabilities that give the sheet's product and rejection in the
// sheet's test, in closed form: J = Qp/area, the bulk at the log mean of the concentration,
// the film at the mean flow, and half the loss along the channel.
//
// Errors: if a figure of the sheet is missing or cannot be, or the test's pressure does not
// overcome its own salt.
// Source: log mean CF = ln(1/(1-Y))/Y, solution and diffusion as in the package's text.
func (e Element) Calibrate() (Unit, error) { return e.CalibrateFilm(1) }

// CalibrateFilm is [Element.Calibrate] with the film coefficient multiplied: for what the
// film's own uncertainty does. The march must be run with the same factor.
//
// Errors: those of [Element.Calibrate].
func (e Element) CalibrateFilm(film float64) (Unit, error) {
	t := e.Test
	switch {
	case !(e.Area > 0 && e.Long > deadEnds && e.Spacer > 0 && e.Void > 0 && e.Void < 1):
		return Unit{}, errors.New("an element needs an area, a length over 100 mm and a spacer")
	case !(t.Product > 0 && t.Pressure > 0 && t.Salt > 0 && t.Salt < 100 && t.Recovery > 0 && t.Recovery < 0.9 && t.Rejection > 0.5 && t.Rejection < 1):
		return Unit{}, errors.New("an element's test needs its product, pressure, salt below 100 g/L, recovery below 90 % and a rejection between 50 and 100 %")
	}
	u := Unit{Area: e.Area, active: (e.Long - deadEnds).Metres()}
	h, void := e.Spacer.Metres(), e.Void.Fraction()
	u.section = float64(e.Area) / (2 * u.active) * h * void
	u.hydraulic = 4 * void / (2/h + (1-void)*8/h)

	j, y := float64(t.Product)/float64(e.Area), t.Recovery.Fraction()
	bulk := t.Salt * math.Log(1/(1-y)) / y
	salt, err := sea.NaCl(sea.NaClShare(bulk))
	if err != nil {
		return Unit{}, err
	}
	k, loss := u.film(float64(t.Product)/y*(1-y/2), float64(salt.Density), float64(salt.Viscosity), Diffusivity25)
	through := (1 - t.Rejection.Fraction()) * t.Salt
	wall := through + (bulk-through)*math.Exp(j/(k*film))
	before, err := sea.NaCl(sea.NaClShare(wall))
	if err != nil {
		return Unit{}, fmt.Errorf("the test's flux puts more salt on the membrane than can be dissolved: %w", err)
	}
	behind, err := sea.NaCl(sea.NaClShare(through))
	if err != nil {
		return Unit{}, err
	}
	drive := float64(t.Pressure) - loss*u.active/2 - float64(before.OsmoticPressure) + float64(behind.OsmoticPressure)
	if drive <= 0 {
		return Unit{}, fmt.Errorf("a test at %s cannot give that product: the salt on the membrane holds back %s", t.Pressure, before.OsmoticPressure)
	}
	u.Water, u.Salt = Permeability(j/drive), Permeability(j*through/(wall-through))
	return u, nil
}

// Diffusivity25 is how fast salt spreads in water at 25 C, in m2/s (memory; sea salt and
// cooking salt alike).
const Diffusivity25 = 1.5e-9

// film gives the film coefficient in m/s and the loss in Pa a metre, for a flow in m3/s.
func (u *Unit) film(flow, rho, mu, diffusivity float64) (k, loss float64) {
	v := flow / u.section
	re := rho * v * u.hydraulic / mu
	if re <= 0 {
		return 0, 0
	}
	sc := mu / (rho * diffusivity)
	log := math.Log(re)
	k = 0.065 * math.Exp(0.875*log) * math.Sqrt(math.Sqrt(sc)) * diffusivity / u.hydraulic
	return k, 6.23 * math.Exp(-0.3*log) * rho * v * v / (2 * u.hydraulic)
}

// TCF is how much more water passes at a temperature than at 25 C, for the same net
// driving pressure: exp(K (1/298 - 1/(273 + T))), K 3020 up to 25 C and 2640 above. Some
// sheets print its reciprocal. Makers' tables differ by 10 % at 10 C and 4 % at 15.
//
// Source: element design equations as coded in fscontrol/cwtlib.
func TCF(t quantity.Temperature) float64 {
	k := 3020.0
	if t > 25 {
		k = 2640
	}
	return math.Exp(k * (1.0/298 - 1/(273+t.Celsius())))
}
