package main

import (
	"github.com/bojanz/currency"
)

// amount writes a sum with its currency: "12.50 EUR".
func amount(a currency.Amount) string { return a.Number() + " " + a.CurrencyCode() }
