package stock_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/catalog/stock"
)

func TestCounts(t *testing.T) {
	n := 0
	for rule, c := range stock.Counts() {
		t.Log(rule, c)
		n += c
	}
	t.Log(n, "items; unread:", stock.Unread())
	require.Equal(t, len(stock.Items()), n)
}
