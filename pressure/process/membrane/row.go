package membrane

import (
	"errors"
	"fmt"
	"math"

	"handtight/pressure/process/sea"
	"handtight/pressure/quantity"
)

// Row is elements that the brine passes one after the other, in as many equal ways
// side by side as Parallel says (0 is 1).
type Row struct {
	Units    []Unit
	Parallel int
	// Others are rows side by side with this one that differ from it. All share one inlet and one
	// outlet, and the feed parts so that each loses the same. They have no Others themselves.
	Others []Row
}

// Running is how a row is run.
type Running struct {
	Pressure    quantity.Pressure // at the inlet of the first element
	Feed        quantity.Flow     // of all ways together
	Temperature quantity.Temperature
	Salinity    quantity.Salinity
	Back        quantity.Pressure // on the product side
	Water, Salt float64           // factors on both permeabilities for age and tolerance; 0 is 1
	Film        float64           // factor on the film coefficient; 0 is 1
}

// Each is what one element of a row does; flows are of one way.
type Each struct {
	Feed, Product, Brine quantity.Flow
	Recovery             quantity.Share
	Drive                quantity.Pressure // mean net driving pressure
	Loss                 quantity.Pressure
	Polarisation         float64 // greatest cm/cb
}

// Result is what a row makes.
type Result struct {
	Product       quantity.Flow
	Salt          MilligramPerLitre // in the product
	Recovery      quantity.Share
	Brine         quantity.Flow
	BrineSalinity quantity.Salinity
	Drive         quantity.Pressure // mean net driving pressure
	Flux          Permeability      // mean
	Polarisation  float64           // greatest cm/cb anywhere
	Loss          quantity.Pressure // along the row
	First, Last   Each
	LeastBrine    quantity.Flow     // of the way that keeps least
	MostFeed      quantity.Flow     // of the way that gets most
	MostRecovery  quantity.Share    // of any one element
	MostLoss      quantity.Pressure // of any one element
	MassIn        float64           // kg/s, of water and salt, for the balances
	MassOut       float64           // kg/s, of brine
	SaltIn        float64           // kg/s
	SaltOut       float64           // kg/s, in brine
}

// MilligramPerLitre is salt in product water.
type MilligramPerLitre float64

// ErrTooSalty says that the brine, or the layer of it that lies on the membrane, left the
// range of the osmotic correlation.
var ErrTooSalty = errors.New("the brine at the membrane grows saltier than the correlation for osmotic pressure knows (120 g/kg)")

// ErrUsedUp says that an element would pass all that it is fed: no brine is left to carry
// the salt away.
var ErrUsedUp = errors.New("an element would pass all the water that it is fed, and leave no brine to carry the salt away")

// Slices is how many parts an element is marched in.
const Slices = 4

// productDensity is the density that product is counted with, in kg/m3.
const productDensity = 1000

// Solve marches along the row. each, where it is not nil, receives what every element does,
// up to its length; with [Row.Others] it receives nothing, and First and Last are the hardest
// pressed of all.
//
// Errors: no element, a feed or a pressure that is not above zero, water below freezing or
// above 45 C, [ErrTooSalty] where the brine goes beyond the correlation, [ErrUsedUp] where
// nothing of the feed is left, [ErrUnparted] where unlike rows find no common loss.
func (r Row) Solve(run Running, each []Each) (Result, error) { return r.solve(&run, each, Slices) }

func (run *Running) check() (sea.Isotherm, error) {
	switch {
	case !(run.Pressure > 0) || math.IsInf(float64(run.Pressure), 1):
		return sea.Isotherm{}, fmt.Errorf("a membrane needs a pressure above zero; found %s", run.Pressure)
	case !(run.Feed > 0) || math.IsInf(float64(run.Feed), 1):
		return sea.Isotherm{}, fmt.Errorf("a membrane needs a feed above zero; found %s", run.Feed)
	case !(run.Salinity >= 0 && run.Salinity < sea.MostOsmotic):
		return sea.Isotherm{}, &sea.OutsideError{What: "osmotic pressure", Temperature: run.Temperature, Salinity: run.Salinity, Most: sea.MostOsmotic}
	case !(run.Temperature <= hottest):
		return sea.Isotherm{}, fmt.Errorf("water of %s is warmer than an element bears (%s)", run.Temperature, hottest)
	}
	if run.Temperature < 0 {
		ice, err := sea.Freezing(run.Salinity)
		if err != nil || run.Temperature < ice {
			return sea.Isotherm{}, fmt.Errorf("water of %s is frozen or nearly so", run.Temperature)
		}
	}
	return sea.At(max(run.Temperature, sea.Coldest))
}

// hottest is the temperature up to which the model is asked (product sheet: 113 F).
const hottest quantity.Temperature = 45

// march is the state along a row, in SI units.
type march struct {
	iso               *sea.Isotherm
	mass, salt        float64 // kg/s of water with its salt, kg/s of salt
	pressure, back    float64
	diffusivity, film float64
	a, b              float64 // permeabilities here
	last              fluxes  // of the last slices, where the next one begins to look
	slope             float64 // and how steeply the gap fell there
}

func (r Row) solve(run *Running, each []Each, slices int) (Result, error) {
	if len(r.Units) == 0 {
		return Result{}, errors.New("a vessel without an element makes no water")
	}
	if len(r.Others) > 0 {
		return r.parted(run, nil, slices)
	}
	iso, err := run.check()
	if err != nil {
		return Result{}, err
	}
	ways := float64(max(r.Parallel, 1))
	m := march{
		iso: &iso, pressure: float64(run.Pressure), back: float64(run.Back),
		diffusivity: diffusivity(&iso, run.Temperature), film: orOne(run.Film),
	}
	feed := float64(run.Feed) / ways
	m.mass = feed * float64(iso.Density(run.Salinity))
	m.salt = m.mass * float64(run.Salinity) / 1000
	out := Result{MassIn: m.mass * ways, SaltIn: m.salt * ways}
	tcf := TCF(run.Temperature)
	var area, drive, product, through float64
	for i := range r.Units {
		u := &r.Units[i]
		m.a, m.b = float64(u.Water)*tcf*orOne(run.Water), float64(u.Salt)*tcf*orOne(run.Salt)
		e, salt, err := m.element(u, slices)
		if err != nil {
			return Result{}, err
		}
		product += float64(e.Product)
		through += salt
		area += float64(u.Area)
		drive += float64(e.Drive) * float64(u.Area)
		out.Polarisation = max(out.Polarisation, e.Polarisation)
		out.MostRecovery, out.MostLoss = max(out.MostRecovery, e.Recovery), max(out.MostLoss, e.Loss)
		if i == 0 {
			out.First = e
		}
		out.Last = e
		if i < len(each) {
			each[i] = e
		}
	}
	out.Product = quantity.Flow(product * ways)
	out.Recovery = quantity.Share(product / feed)
	out.Brine = quantity.Flow(m.mass / float64(iso.Density(m.salinity())) * ways)
	out.LeastBrine, out.MostFeed = out.Brine/quantity.Flow(ways), quantity.Flow(feed)
	out.BrineSalinity = m.salinity()
	out.Drive, out.Flux = quantity.Pressure(drive/area), Permeability(product/area)
	out.Loss = run.Pressure - quantity.Pressure(m.pressure)
	out.MassOut, out.SaltOut = m.mass*ways, m.salt*ways
	if product > 0 {
		out.Salt = MilligramPerLitre(through / product * 1000)
	}
	return out, nil
}

func (m *march) salinity() quantity.Salinity { return quantity.Salinity(m.salt / m.mass * 1000) }

func orOne(factor float64) float64 {
	if factor == 0 {
		return 1
	}
	return factor
}

// diffusivity of salt by Stokes and Einstein: with the temperature over the viscosity.
func diffusivity(iso *sea.Isotherm, t quantity.Temperature) float64 {
	return Diffusivity25 * t.Kelvin() / 298.15 * muPure25 / float64(iso.Viscosity(0))
}

// muPure25 is the viscosity of pure water at 25 C in Pa s, of [sea.Viscosity].
const muPure25 = 8.901394914e-4
