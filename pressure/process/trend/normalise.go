package trend

import (
	"fmt"
	"math"

	"handtight/pressure/process/membrane"
	"handtight/pressure/process/sea"
	"handtight/pressure/quantity"
)

// Conditions are what a product depends on besides the membrane.
type Conditions struct {
	Pressure quantity.Pressure // at the inlet
	Loss     quantity.Pressure // along the vessel
	Back     quantity.Pressure // on the product side
	Salinity quantity.Salinity
	Water    quantity.Temperature
	Recovery quantity.Share
	Salt     membrane.MilligramPerLitre // in the product
}

// LogMean is how much saltier the feed is on average along the membrane: ln(1/(1-Y))/Y.
//
// Source: element design equations as coded in fscontrol/cwtlib; 1.0653 at 12 %.
func LogMean(recovery quantity.Share) float64 {
	y := recovery.Fraction()
	if y < 1e-9 {
		return 1
	}
	return math.Log(1/(1-y)) / y
}

// Drive is the net driving pressure: P - loss/2 - back - (pi feed x log mean - pi product).
//
// Errors: [*sea.OutsideError]; a recovery outside 0 to below 100 %.
func (c Conditions) Drive() (quantity.Pressure, error) {
	if !(c.Recovery >= 0 && c.Recovery < 1) {
		return 0, fmt.Errorf("a recovery is from 0 to below 100 %%; found %s", c.Recovery)
	}
	feed, err := sea.OsmoticPressure(c.Water, c.Salinity)
	if err != nil {
		return 0, err
	}
	product, err := sea.OsmoticPressure(c.Water, quantity.Salinity(c.Salt)/1000)
	if err != nil {
		return 0, err
	}
	return c.Pressure - c.Loss/2 - c.Back - feed*quantity.Pressure(LogMean(c.Recovery)) + product, nil
}

// Normalise is what a product would be at other conditions:
// Q (NDP standard / NDP actual) (TCF standard / TCF actual).
//
// Errors: those of [Conditions.Drive]; a driving pressure that is not above zero.
// Source: the way of ASTM D4516, by its formula in published plant codes and manuals.
func Normalise(product quantity.Flow, actual, standard Conditions) (quantity.Flow, error) {
	now, err := actual.Drive()
	if err != nil {
		return 0, err
	}
	then, err := standard.Drive()
	if err != nil {
		return 0, err
	}
	if !(now > 0 && then > 0) {
		return 0, fmt.Errorf("the pressure does not overcome the salt: %s is left of %s", now, actual.Pressure)
	}
	return quantity.Flow(float64(product) * float64(then/now) * membrane.TCF(standard.Water) / membrane.TCF(actual.Water)), nil
}

// Passage is the share of the salt that comes through: product over the mean along the feed.
//
// Errors: [*sea.OutsideError]; water without salt.
func (c Conditions) Passage() (quantity.Share, error) {
	iso, err := sea.At(c.Water)
	if err != nil {
		return 0, err
	}
	mean := iso.Concentration(c.Salinity) * 1000 * LogMean(c.Recovery)
	if !(mean > 0) {
		return 0, fmt.Errorf("a salt passage needs a feed with salt; found %s", c.Salinity)
	}
	return quantity.Share(float64(c.Salt) / mean), nil
}

// NormalisePassage is the salt passage at another product and temperature:
// SP (Q actual / Q standard) (TCF standard / TCF actual).
//
// Errors: those of [Conditions.Passage]; a standard product that is not above zero.
// Source: the form of ASTM D4516, from memory.
func NormalisePassage(product, standardProduct quantity.Flow, actual, standard Conditions) (quantity.Share, error) {
	sp, err := actual.Passage()
	if err != nil {
		return 0, err
	}
	if !(standardProduct > 0) {
		return 0, fmt.Errorf("a salt passage is brought to a product above zero; found %s", standardProduct)
	}
	return quantity.Share(float64(sp) * float64(product/standardProduct) * membrane.TCF(standard.Water) / membrane.TCF(actual.Water)), nil
}
