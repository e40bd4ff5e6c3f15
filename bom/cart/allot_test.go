package cart

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom/money"
	"handtight/bom/order"
)

// alloting is a judge of some needs, each of so many pieces.
func alloting(buys ...money.Quantity) (*judge, []match) {
	j := &judge{report: &Report{Carts: []*Cart{{Name: "a"}, {Name: "b"}}}}
	var list []match
	for i, buy := range buys {
		n := &order.Need{Key: fmt.Sprintf("n%d", i), Unit: "pc", Placed: buy}
		list = append(list, match{need: &need{Need: n, index: i, line: &order.Line{Need: n, Order: buy}}})
	}
	j.in, j.byCart, j.bring = make([]money.Quantity, len(buys)), make([]map[string]money.Quantity, len(buys)), make([][]*Verdict, len(buys))
	return j, list
}

func pieces(n int64) money.Quantity { return money.Quantity(n) * money.Piece }

// A line for two needs that are bought alike fills the first only up to what other lines have not
// brought, and the rest goes to the second.
func TestAllotCountsWhatOthersBrought(t *testing.T) {
	j, list := alloting(pieces(3), pieces(4))
	first := &Verdict{Line: &Line{Cart: "a"}}
	j.allot(first, list[:1], pieces(2))
	require.Equal(t, []money.Quantity{pieces(2), 0}, j.in)
	second := &Verdict{Line: &Line{Cart: "b"}}
	j.allot(second, list, pieces(5))
	require.Equal(t, []money.Quantity{pieces(3), pieces(4)}, j.in)
	require.Zero(t, second.Status, "nothing is left over")
	third := &Verdict{Line: &Line{Cart: "b"}}
	j.allot(third, list, pieces(1))
	twice := &Verdict{Line: &Line{Cart: "a"}}
	j.allot(twice, list, pieces(1))
	require.Equal(t, BoughtTwice, twice.Status, "cart b brought it already")
	require.Equal(t, Surplus, third.Status, "only cart b brings the second need")
}

// Whatever lines bring: nothing is lost, no need but the last of a line gets more than it lacks,
// and where all that is brought is enough for all, each has enough.
func TestAllotLosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		buys := rapid.SliceOfN(rapid.Int64Range(0, 9), 1, 4).Draw(t, "buys")
		var want []money.Quantity
		var all money.Quantity
		for _, b := range buys {
			want = append(want, pieces(b))
			all += pieces(b)
		}
		j, list := alloting(want...)
		var brought money.Quantity
		for range rapid.IntRange(1, 5).Draw(t, "lines") {
			q := pieces(rapid.Int64Range(0, 12).Draw(t, "q"))
			v := &Verdict{Line: &Line{Cart: rapid.SampledFrom([]string{"a", "b"}).Draw(t, "cart")}}
			j.allot(v, list, q)
			brought += q
		}
		var sum money.Quantity
		for i, in := range j.in {
			sum += in
			if i < len(want)-1 {
				require.LessOrEqual(t, in, want[i])
			}
			if brought >= all {
				require.GreaterOrEqual(t, in, want[i])
			}
		}
		require.Equal(t, brought, sum)
	})
}
