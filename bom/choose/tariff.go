package choose

import (
	"fmt"
	"math"
	"strconv"

	"github.com/bojanz/currency"

	"handtight/bom/build"
	"handtight/bom/money"
)

// tariff is what goods at one shop come to, landed, in the build's currency. Whole
// numbers are minor units: cents, yen.
type tariff struct {
	vendor *build.Vendor
	rates  *money.Rates
	modes  []mode
	slope  float64 // of the build's minor units for one of the shop's
	slack  float64 // how far roundings may take the cost below the straight line
	known  map[int64]landed
}

// mode is one way of paying freight: once goods are bought, the cost is at least
// charge + slope x max(goods, least).
type mode struct{ charge, least float64 }

// landed is the exact cost of goods.
type landed struct {
	cost   int64
	toFree bool // it is cheaper to fill the order up to free freight
}

// newTariff works out the straight lines that bound the exact cost.
func newTariff(v *build.Vendor, rates *money.Rates) (*tariff, error) {
	rate, ok := rates.Rate(v.Currency)
	if !ok {
		return nil, &money.RateError{Code: v.Currency, Base: rates.Base}
	}
	customs, tax, perUnit := fraction(v.Terms.Customs), fraction(v.Terms.Tax), number(rate.Number())
	perUnit *= math.Pow10(digits(rates.Base) - digits(v.Currency))
	t := &tariff{vendor: v, rates: rates, known: map[int64]landed{}}
	t.slope = perUnit * (1 + customs) * (1 + tax)
	if customs > 0 {
		t.slack += 0.5 * (1 + tax) * perUnit
	}
	if tax > 0 {
		t.slack += 0.5 * perUnit
	}
	if v.Currency != rates.Base {
		t.slack += 0.5
	}
	return t, t.straighten()
}

// straighten makes the modes: freight paid, and freight free.
func (t *tariff) straighten() error {
	terms := &t.vendor.Terms
	freight, err := minor(terms.Freight, currency.RoundHalfUp) // as an order counts it
	if err != nil {
		return err
	}
	least, err := minor(terms.Minimum, currency.RoundUp)
	if err != nil {
		return err
	}
	free, err := minor(terms.FreeFrom, currency.RoundUp)
	if err != nil {
		return err
	}
	offered := terms.FreeFrom.CurrencyCode() != ""
	if freight == 0 || !offered || free > least {
		t.modes = append(t.modes, mode{charge: float64(freight) * t.slope, least: float64(least)})
	}
	if freight > 0 && offered {
		t.modes = append(t.modes, mode{least: float64(max(least, free))})
	}
	return nil
}

// of gives the exact cost of goods that come to so many minor units.
func (t *tariff) of(goods int64) (landed, error) {
	if l, ok := t.known[goods]; ok {
		return l, nil
	}
	best, err := t.fill(goods, false)
	if err != nil {
		return landed{}, err
	}
	if t.vendor.Terms.FreeFrom.CurrencyCode() != "" {
		filled, err := t.fill(goods, true)
		if err != nil {
			return landed{}, err
		}
		if filled.cost < best.cost {
			best = filled
		}
	}
	t.known[goods] = best
	return best, nil
}

// fill lands goods that are filled up to what the shop asks, as an order is.
func (t *tariff) fill(goods int64, toFree bool) (landed, error) {
	sum, err := currency.NewAmountFromInt64(goods, t.vendor.Currency)
	if err != nil {
		return landed{}, err
	}
	list := []currency.Amount{sum}
	lack, lacks, err := t.vendor.Terms.Lack(list, toFree)
	if err != nil {
		return landed{}, err
	}
	if lacks {
		list = append(list, lack)
	}
	sums, err := money.LandedCost(list, t.vendor.Terms)
	if err != nil {
		return landed{}, err
	}
	here, err := t.rates.Convert(sums.Total)
	if err != nil {
		return landed{}, err
	}
	cost, err := minor(here, currency.RoundUp)
	return landed{cost, toFree}, err
}

// minor gives an amount in minor units; 0 for the zero value.
func minor(a currency.Amount, round currency.RoundingMode) (int64, error) {
	if a.CurrencyCode() == "" {
		return 0, nil
	}
	n, err := a.RoundTo(uint8(digits(a.CurrencyCode())), round).Int64()
	if err != nil || n > math.MaxInt64/1024 {
		return 0, fmt.Errorf("the sum %s is too large to choose shops by", a)
	}
	return n, nil
}

// digits is how many decimals a currency has.
func digits(code string) int {
	d, _ := currency.GetDigits(code)
	return int(d)
}

// number reads a decimal for a bound, which is not exact.
func number(text string) float64 {
	f, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return 0
	}
	return f
}

func fraction(p money.Percent) float64 { return number(p.Fraction()) }
