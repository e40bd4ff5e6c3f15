package money

import (
	"fmt"
	"slices"
	"time"

	"github.com/bojanz/currency"
	"github.com/cockroachdb/apd/v3"
)

// Rate is what one unit of a foreign currency is worth in the build's currency,
// exactly as written. Its zero value is no rate.
type Rate struct{ number apd.Decimal }

// Number gives the rate as written: "1.92".
func (r Rate) Number() string { return r.number.Text('f') }

// String is the same as Number.
func (r Rate) String() string { return r.Number() }

// known answers whether there is a rate: whether it is above zero.
func (r Rate) known() bool { return r.number.Sign() > 0 }

// Twelve decimals serve a weak foreign currency in a strong build's: 1 VND in KWD is 0.0000117.
var rateForm = form{whole: 10, places: 12, example: "1.92"}

// ParseRate reads a rate of exchange: "1.92" under EUR in a build in NZD says that
// 1 EUR costs 1.92 NZD.
//
// Errors: *[InputError], with what to write instead, for a text that is no plain
// number, is 0 or below, is above 1e9, or has more than 12 decimals.
func ParseRate(text string) (Rate, error) {
	d, err := rateForm.read(text, text)
	if err != nil {
		return Rate{}, err
	}
	if d.IsZero() {
		return Rate{}, &InputError{text, "is no rate", "write what one of the foreign currency costs, above 0"}
	}
	if d.Cmp(apd.New(1, 9)) > 0 {
		return Rate{}, &InputError{text, "is too large",
			"write what one of the foreign currency costs, at most 1000000000"}
	}
	return Rate{*d}, nil
}

// Rates is what foreign currencies are worth in the build's currency on a day.
type Rates struct {
	Base string          // the build's currency, a code of ISO 4217
	Date time.Time       // the day of the rates; zero if unknown
	Of   map[string]Rate // by foreign code; Base is not among them
}

// RateError says that a currency is needed and has no rate.
type RateError struct{ Code, Base string }

func (e *RateError) Error() string {
	return fmt.Sprintf("no rate for %[1]s: add the line %[1]s = \"…\" under [rates], with what 1 %[1]s costs in %[2]s",
		e.Code, e.Base)
}

// Codes gives the foreign codes in alphabetical order.
func (r Rates) Codes() []string {
	codes := make([]string, 0, len(r.Of))
	for code := range r.Of {
		codes = append(codes, code)
	}
	slices.Sort(codes)
	return codes
}

// Rate answers what one of code costs in Base: exactly 1 for Base itself, false if unknown.
func (r Rates) Rate(code string) (Rate, bool) {
	if code == r.Base && code != "" {
		return Rate{*apd.New(1, 0)}, true
	}
	rate := r.Of[code]
	return rate, rate.known()
}

// Convert answers what a is worth in the build's currency: a times the rate, rounded
// half up to the minor unit of Base, once.
//
// Errors: *[RateError] with the line to write if a's currency has no rate;
// *[CodeError] if Base is no currency; an amount without a currency, not finite or below zero.
// Source: Council Regulation (EC) No 1103/97, articles 4 (the rate is not rounded or
// truncated when converting) and 5 (the result is, half up).
func (r Rates) Convert(a currency.Amount) (currency.Amount, error) {
	number, err := charge(a)
	if err != nil {
		return currency.Amount{}, err
	}
	if err := CheckCode(r.Base); err != nil {
		return currency.Amount{}, err
	}
	rate, ok := r.Rate(a.CurrencyCode())
	if !ok {
		return currency.Amount{}, &RateError{a.CurrencyCode(), r.Base}
	}
	return product(number, &rate.number, r.Base)
}

// Total answers what several vendors' totals come to in the build's currency: each is
// converted once, and the converted sums are added, so that the column adds up.
// No totals make 0.
//
// Errors: those of [Rates.Convert].
func (r Rates) Total(totals []currency.Amount) (currency.Amount, error) {
	sum, err := zero(r.Base)
	if err != nil {
		return currency.Amount{}, CheckCode(r.Base)
	}
	for _, total := range totals {
		converted, err := r.Convert(total)
		if err != nil {
			return currency.Amount{}, err
		}
		if sum, err = add(sum, converted); err != nil {
			return currency.Amount{}, err
		}
	}
	return sum, nil
}
