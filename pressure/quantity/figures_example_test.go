package quantity_test

import (
	"fmt"

	"handtight/pressure/quantity"
)

// At most so many decimals, and none that say nothing.
func ExampleDecimals() {
	fmt.Println(quantity.Decimals(9.525, 2), quantity.Decimals(58.0, 1), quantity.Decimals(-0.04, 1))
	// Output: 9.53 58 0
}

// As many figures as the number has.
func ExampleExact() {
	fmt.Println(quantity.Exact(0.0000125), quantity.Exact(11.5), quantity.Exact(1e6))
	// Output: 0.0000125 11.5 1000000
}
