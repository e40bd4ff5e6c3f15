package money_test

import (
	"fmt"

	"handtight/bom/money"

	"github.com/bojanz/currency"
)

// The figures are those of export.gov, "Duty and Tax Calculation Methods": an invoice of
// 932, freight and insurance of 68, 7 % customs, 18 % tax.
func ExampleLandedCost() {
	price, _ := money.ParseAmount("932.00", "USD")
	line, _ := money.LineTotal(price, 1*money.Piece)
	freight, _ := money.ParseAmount("68.00", "USD")
	customs, _ := money.ParsePercent("7 %")
	tax, _ := money.ParsePercent("18 %")

	sums, err := money.LandedCost([]currency.Amount{line}, money.Terms{Freight: freight, Customs: customs, Tax: tax})
	fmt.Println(sums.Customs, sums.Tax, sums.Total, err)
	// Output: 70.00 USD 192.60 USD 1262.60 USD <nil>
}

func ExampleParseAmount() {
	_, err := money.ParseAmount("12,50", "EUR")
	fmt.Println(err)
	// Output: "12,50" has a decimal comma: write 12.50
}
