package quantity_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

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

func TestDecimals(t *testing.T) {
	for v, want := range map[float64]string{14: "14", 11.5: "11.5", 19.999: "20", 0.126: "0.13", -1.266: "-1.27", -0.004: "0"} {
		require.Equal(t, want, quantity.Decimals(v, 2))
	}
	require.Equal(t, "100", quantity.Decimals(99.6, 0))
}
