package workbook

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/bojanz/currency"
)

// zero is nothing, in a currency; without a currency it is the zero Amount.
func zero(code string) currency.Amount {
	a, err := currency.NewAmountFromInt64(0, code)
	if err != nil {
		return currency.Amount{}
	}
	return a
}

// whole gives an amount its currency when it was left as the zero Amount.
func whole(a currency.Amount, code string) currency.Amount {
	if a.CurrencyCode() == "" && a.IsZero() {
		return zero(code)
	}
	return a
}

// add adds b to a; amounts of two currencies are an error.
func add(a, b currency.Amount) (currency.Amount, error) {
	return a.Add(whole(b, a.CurrencyCode()))
}

// percentOf takes that percentage of an amount, rounded half up; "" is none.
func percentOf(a currency.Amount, percent string) (currency.Amount, error) {
	if percent == "" {
		return zero(a.CurrencyCode()), nil
	}
	if !plainDecimal.MatchString(percent) {
		return a, fmt.Errorf("%q is not a percentage; write a decimal such as 5 or 12.5", percent)
	}
	part, err := a.Mul(percent)
	if err != nil {
		return a, err
	}
	if part, err = part.Mul("0.01"); err != nil {
		return a, err
	}
	return part.Round(), nil
}

// same fails unless the amount found is the amount due.
func same(where, what string, found, due currency.Amount) error {
	found = whole(found, due.CurrencyCode())
	if err := fits(where, what, found, due.CurrencyCode()); err != nil {
		return err
	}
	if !found.Equal(due) {
		return &ContentError{where, fmt.Sprintf("%s is %s, but its parts make %s", what, found, due)}
	}
	return nil
}

// fits fails unless the amount is of that currency, not below zero, and short
// enough for a spreadsheet to keep every digit.
func fits(where, what string, a currency.Amount, code string) error {
	a = whole(a, code)
	switch {
	case a.CurrencyCode() != code:
		return &ContentError{where, fmt.Sprintf("%s is %s, due in %s", what, a, code)}
	case a.IsNegative():
		return &ContentError{where, fmt.Sprintf("%s is %s, below zero", what, a)}
	case significant(a.Number()) > maxDigits:
		return &ContentError{where, fmt.Sprintf("%s is %s, and a spreadsheet keeps only %d digits", what, a, maxDigits)}
	}
	return nil
}

// significant counts the digits that matter in a decimal; a number that is not
// finite, or beyond any price, has too many.
func significant(number string) int {
	if f, err := strconv.ParseFloat(number, 64); err != nil || !(math.Abs(f) < 1e15) {
		return maxDigits + 1
	}
	mantissa, _, _ := strings.Cut(strings.ToUpper(number), "E")
	digits := strings.TrimLeft(strings.ReplaceAll(strings.TrimLeft(mantissa, "-"), ".", ""), "0")
	return len(digits)
}

// toCell is the last step from a decimal to a cell's binary number.
func toCell(a currency.Amount) float64 { return textToCell(a.Number()) }

// textToCell is toCell for a decimal that count has checked; "" is 0.
func textToCell(number string) float64 {
	f, err := strconv.ParseFloat(number, 64)
	if err != nil {
		return 0
	}
	return f
}

// moneyFormat is a number format that shows the currency's code, because several
// currencies share a sign, and that many decimals.
func moneyFormat(code string, decimals int) string {
	if decimals == 0 {
		return `#,##0\ [$` + code + `]`
	}
	return `#,##0.` + strings.Repeat("0", decimals) + `\ [$` + code + `]`
}

// priceDecimals tells how many decimals a unit price shows: its currency's, or
// as many as it has been given with.
func priceDecimals(a currency.Amount, digits uint8) int {
	_, part, _ := strings.Cut(a.Number(), ".")
	return min(max(int(digits), len(strings.TrimRight(part, "0"))), 9)
}
