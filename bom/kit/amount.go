package kit

import (
	"strconv"

	"github.com/bojanz/currency"
)

// amount gives a sum as a number to divide by: a ranking is no money.
func amount(a currency.Amount) (float64, error) { return strconv.ParseFloat(a.Number(), 64) }
