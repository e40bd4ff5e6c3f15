package main

import (
	"github.com/bojanz/currency"

	"handtight/bom/money"
)

// inPieces is pieces or metres.
func inPieces(q money.Quantity) number { return known(float64(q) / float64(money.Piece)) }

// amount writes a sum with its currency: "12.50 EUR".
func amount(a currency.Amount) string { return a.Number() + " " + a.CurrencyCode() }
