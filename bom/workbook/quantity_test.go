package workbook

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestParseQuantity(t *testing.T) {
	for _, tc := range []struct {
		why, text string
		want      thousandth
		bad       bool
	}{
		{why: "none", text: "", want: 0},
		{why: "pieces", text: "12", want: 12000},
		{why: "metres to the millimetre", text: "1.405", want: 1405},
		{why: "needless zeros", text: "1.40", want: 1400},
		{why: "finer than a thousandth", text: "1.4051", bad: true},
		{why: "a sign", text: "-1", bad: true},
		{why: "a plus", text: "+1", bad: true},
		{why: "a sign behind the point", text: "1.-5", bad: true},
		{why: "no digits before the point", text: ".5", bad: true},
		{why: "no digits behind it", text: "1.", bad: true},
		{why: "a decimal comma", text: "1,5", bad: true},
		{why: "an exponent", text: "1e9", bad: true},
		{why: "more than anyone buys", text: "1000000001", bad: true},
	} {
		t.Run(tc.why, func(t *testing.T) {
			got, err := parseQuantity(tc.text)
			if tc.bad {
				require.ErrorContains(t, err, "write digits with at most three decimals")
				return
			}
			require.NoError(t, err)
			require.Equal(t, tc.want, got)
		})
	}
}

func TestQuantityProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q := thousandth(rapid.Int64Range(0, maxWhole*1000).Draw(t, "q"))
		back, err := parseQuantity(q.String())
		require.NoError(t, err)
		require.Equal(t, q, back)
	})
}

func TestCountLineProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, least int64) string {
			return thousandth(rapid.Int64Range(least, 100_000).Draw(t, name)).String()
		}
		l := Line{Placed: draw("placed", 0), Planned: draw("planned", 0), Spare: draw("spare", 0), Extra: draw("extra", 0),
			Have: draw("have", 0), Pack: draw("pack", 1)}
		q, err := countLine(&l)
		require.NoError(t, err)
		require.GreaterOrEqual(t, q.order, max(q.need, 0), "enough is ordered")
		require.Zero(t, q.order%q.pack, "in whole packs")
		require.Less(t, q.order-max(q.need, 0), q.pack, "and not a pack too many")
	})
}
