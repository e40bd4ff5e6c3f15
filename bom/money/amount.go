package money

import (
	"errors"
	"fmt"

	"github.com/bojanz/currency"
	"github.com/cockroachdb/apd/v3"
)

// A price stays below a thousand milliards, and may be given to a millionth.
var priceForm = form{whole: 12, places: 6, example: "12.50"}

// ParseAmount reads a price or a charge of the currency that code names.
//
// A unit price may have more decimals than its currency ("0.125" a piece), up to 6;
// it is [LineTotal] that rounds. The text is digits with a decimal point and nothing
// else: no sign, thousands marks, currency or power of ten.
//
// Errors: *[CodeError] for an unknown code; *[InputError], with what to write instead,
// for a text that is no plain number, is below zero, has more than 12 digits before
// the point or more than 6 after it.
func ParseAmount(text, code string) (currency.Amount, error) {
	if err := CheckCode(code); err != nil {
		return currency.Amount{}, err
	}
	d, err := priceForm.read(text, text)
	if err != nil {
		return currency.Amount{}, err
	}
	return currency.NewAmount(d.Text('f'), code)
}

// LineTotal answers what count of something costs: unitPrice times count, rounded
// half up to the minor unit of the price's currency.
//
// The count is of what the price is for: pieces, metres or packs.
//
// Errors: a price without a currency or that is not a finite number of 0 or more;
// a count below zero.
func LineTotal(unitPrice currency.Amount, count Quantity) (currency.Amount, error) {
	price, err := charge(unitPrice)
	if err != nil {
		return currency.Amount{}, fmt.Errorf("unit price: %w", err)
	}
	if count < 0 {
		return currency.Amount{}, fmt.Errorf("the count %s is below zero", count)
	}
	return product(price, apd.New(int64(count), -3), unitPrice.CurrencyCode())
}

// zero is nothing, in a currency.
func zero(code string) (currency.Amount, error) { return currency.NewAmountFromInt64(0, code) }

// charge gives the number of an amount that someone has to pay: finite, not below
// zero, and in some currency.
func charge(a currency.Amount) (*apd.Decimal, error) {
	if a.CurrencyCode() == "" {
		return nil, errors.New("an amount without a currency")
	}
	d, _, err := apd.NewFromString(a.Number())
	if err != nil || d.Form != apd.Finite {
		return nil, fmt.Errorf("the amount %s is not a number", a)
	}
	if d.Sign() < 0 {
		return nil, fmt.Errorf("the amount %s is below zero", a)
	}
	return d, nil
}

// product multiplies without loss, then rounds once.
func product(a, b *apd.Decimal, code string) (currency.Amount, error) {
	var d apd.Decimal
	if _, err := apd.BaseContext.Mul(&d, a, b); err != nil {
		return currency.Amount{}, fmt.Errorf("%s times %s: %w", a, b, err)
	}
	return round(&d, code)
}

// round takes d to the minor unit of code, half up.
//
// The currency library's own Round allows 39 digits at most and its Mul rounds to
// that first; here the precision follows the number, so nothing is rounded twice.
func round(d *apd.Decimal, code string) (currency.Amount, error) {
	digits, ok := currency.GetDigits(code)
	if !ok {
		return currency.Amount{}, CheckCode(code)
	}
	needed := d.NumDigits() + int64(max(d.Exponent, 0)) + int64(digits) + 1
	context := apd.BaseContext.WithPrecision(uint32(needed))
	context.Rounding = apd.RoundHalfUp
	var rounded apd.Decimal
	if _, err := context.Quantize(&rounded, d, -int32(digits)); err != nil {
		return currency.Amount{}, fmt.Errorf("rounding %s %s: %w", d, code, err)
	}
	return currency.NewAmount(rounded.Text('f'), code)
}
