package money

import (
	"fmt"

	"github.com/bojanz/currency"
	"github.com/cockroachdb/apd/v3"
)

// Lack answers by how much an order of goods falls short of the vendor's minimum, and,
// where toFree is asked, of the value from which its freight is free: the larger of the
// two. False when it lacks nothing, or when there are no goods: nobody orders nothing.
//
//	lack = max(minimum, free-from if asked) - goods
//
// Errors: goods or thresholds in two currencies; a line that is not rounded, not finite
// or below zero.
func (t Terms) Lack(goods []currency.Amount, toFree bool) (currency.Amount, bool, error) {
	if len(goods) == 0 {
		return currency.Amount{}, false, nil
	}
	sum, err := sumLines(goods, goods[0].CurrencyCode())
	if err != nil {
		return currency.Amount{}, false, err
	}
	aims := []currency.Amount{t.Minimum}
	if toFree {
		aims = append(aims, t.FreeFrom)
	}
	most, err := zero(sum.CurrencyCode())
	if err != nil {
		return currency.Amount{}, false, err
	}
	for _, aim := range aims {
		lack, err := below(sum, aim)
		if err != nil {
			return currency.Amount{}, false, err
		}
		if lack.Sign() > 0 {
			d, err := currency.NewAmount(lack.Text('f'), sum.CurrencyCode())
			if err != nil {
				return currency.Amount{}, false, err
			}
			digits, _ := currency.GetDigits(sum.CurrencyCode())
			d = d.RoundTo(digits, currency.RoundUp) // a threshold between two cents is reached by the upper one
			if c, err := d.Cmp(most); err == nil && c > 0 {
				most = d
			}
		}
	}
	return most, most.IsPositive(), nil
}

// free answers whether goods are worth enough to be sent free.
func (t Terms) free(goods currency.Amount) (bool, error) {
	if t.FreeFrom.CurrencyCode() == "" {
		return false, nil
	}
	lack, err := below(goods, t.FreeFrom)
	if err != nil {
		return false, err
	}
	return lack.Sign() <= 0, nil
}

// below gives how far a sum lies below an aim; without an aim it is at it.
func below(sum, aim currency.Amount) (*apd.Decimal, error) {
	d := new(apd.Decimal)
	if aim.CurrencyCode() == "" {
		return d, nil
	}
	if aim.CurrencyCode() != sum.CurrencyCode() {
		return nil, fmt.Errorf("the goods are in %s and a threshold is in %s: one vendor has one currency", sum.CurrencyCode(), aim.CurrencyCode())
	}
	x, err := charge(sum)
	if err != nil {
		return nil, err
	}
	y, err := charge(aim)
	if err != nil {
		return nil, err
	}
	if _, err := apd.BaseContext.Sub(d, y, x); err != nil {
		return nil, fmt.Errorf("%s less %s: %w", aim, sum, err)
	}
	return d, nil
}
