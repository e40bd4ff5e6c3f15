package money

import (
	"errors"
	"fmt"

	"github.com/bojanz/currency"
	"github.com/cockroachdb/apd/v3"
)

// Terms is what a vendor and the border add to the goods.
type Terms struct {
	Freight  currency.Amount // once an order; the zero value is no freight
	Customs  Percent         // on goods and freight
	Tax      Percent         // on goods, freight and customs
	Minimum  currency.Amount // of goods, below which the vendor takes no order; the zero value is none
	FreeFrom currency.Amount // value of goods from which there is no freight; the zero value is never
}

// Sums is what one vendor's order comes to, all in the vendor's currency.
// Total is exactly the sum of the other four.
type Sums struct {
	Goods, Freight, Customs, Tax, Total currency.Amount
}

// LandedCost answers what a vendor's order comes to, landed.
//
//	customs = customs rate x (goods + freight)
//	tax     = tax rate x (goods + freight + customs)
//	total   = goods + freight + customs + tax
//
// Freight, customs and tax are each rounded half up to the minor unit. The goods are
// line totals, as [LineTotal] rounds them; with none, nothing is shipped and all sums
// are 0, freight too. A line of 0.00 is still a line. Goods of FreeFrom or more are
// sent free. The minimum is not looked at: see [Terms.Lack].
//
// Errors: lines or freight in two currencies; a line that is not rounded, not finite
// or below zero; neither a line nor a freight to tell the currency by.
// Source: the CIF basis of export.gov, "Duty and Tax Calculation Methods": customs on
// the invoice with its freight, tax on that and the customs.
func LandedCost(goods []currency.Amount, terms Terms) (Sums, error) {
	code, err := currencyOf(goods, terms.Freight)
	if err != nil {
		return Sums{}, err
	}
	var s Sums
	if s.Goods, err = sumLines(goods, code); err != nil {
		return Sums{}, err
	}
	free, err := terms.free(s.Goods)
	if err != nil {
		return Sums{}, err
	}
	if s.Freight, err = freight(terms.Freight, len(goods) > 0 && !free, code); err != nil {
		return Sums{}, err
	}
	return s.levy(terms, code)
}

// levy puts customs, tax and the total on goods and freight.
func (s Sums) levy(terms Terms, code string) (Sums, error) {
	landed, err := add(s.Goods, s.Freight)
	if err != nil {
		return Sums{}, err
	}
	if s.Customs, landed, err = charged(landed, terms.Customs, code); err != nil {
		return Sums{}, err
	}
	if s.Tax, s.Total, err = charged(landed, terms.Tax, code); err != nil {
		return Sums{}, err
	}
	return s, nil
}

// charged gives the share of base, and base with the share on it.
func charged(base currency.Amount, rate Percent, code string) (share, both currency.Amount, err error) {
	number, err := charge(base)
	if err != nil {
		return share, both, err
	}
	if share, err = rate.of(number, code); err != nil {
		return share, both, err
	}
	both, err = add(base, share)
	return share, both, err
}

// currencyOf gives the one currency of an order.
func currencyOf(goods []currency.Amount, freight currency.Amount) (string, error) {
	code := freight.CurrencyCode()
	if len(goods) > 0 {
		code = goods[0].CurrencyCode()
	}
	if code == "" {
		return "", errors.New("neither goods nor freight tell the vendor's currency")
	}
	if freight.CurrencyCode() != "" && freight.CurrencyCode() != code {
		return "", fmt.Errorf("the freight is in %s and the goods are in %s: one vendor has one currency",
			freight.CurrencyCode(), code)
	}
	return code, nil
}

// sumLines adds line totals, each checked to be rounded and in the one currency.
func sumLines(goods []currency.Amount, code string) (currency.Amount, error) {
	sum, err := zero(code)
	if err != nil {
		return currency.Amount{}, err
	}
	for i, line := range goods {
		if line.CurrencyCode() != code {
			return currency.Amount{}, fmt.Errorf("line %d is in %q and line 1 in %s: one vendor has one currency",
				i+1, line.CurrencyCode(), code)
		}
		number, err := charge(line)
		if err != nil {
			return currency.Amount{}, fmt.Errorf("line %d: %w", i+1, err)
		}
		rounded, err := round(number, code)
		if err != nil {
			return currency.Amount{}, fmt.Errorf("line %d: %w", i+1, err)
		}
		if !rounded.Equal(line) {
			return currency.Amount{}, fmt.Errorf("line %d: %s has more decimals than %s: round the line first",
				i+1, line, code)
		}
		if sum, err = add(sum, rounded); err != nil {
			return currency.Amount{}, err
		}
	}
	return sum, nil
}

// freight gives what is charged for carriage: nothing when nothing is bought.
func freight(f currency.Amount, bought bool, code string) (currency.Amount, error) {
	if !bought || f.CurrencyCode() == "" {
		return zero(code)
	}
	number, err := charge(f)
	if err != nil {
		return currency.Amount{}, fmt.Errorf("freight: %w", err)
	}
	return round(number, code)
}

// add gives a + b in a's currency; both are rounded sums of one order.
func add(a, b currency.Amount) (currency.Amount, error) {
	x, err := charge(a)
	if err != nil {
		return currency.Amount{}, err
	}
	y, err := charge(b)
	if err != nil {
		return currency.Amount{}, err
	}
	var d apd.Decimal
	if _, err := apd.BaseContext.Add(&d, x, y); err != nil {
		return currency.Amount{}, fmt.Errorf("adding %s and %s: %w", a, b, err)
	}
	return round(&d, a.CurrencyCode())
}
