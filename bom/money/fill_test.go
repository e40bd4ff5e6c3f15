package money

import (
	"testing"

	"github.com/bojanz/currency"
	"github.com/stretchr/testify/require"
)

func TestLack(t *testing.T) {
	eur := func(text string) currency.Amount { return amount(t, text, "EUR") }
	for _, row := range []struct {
		why    string
		goods  []string
		terms  Terms
		toFree bool
		want   string // "" for nothing lacking
	}{
		{"no thresholds", []string{"1.00"}, Terms{}, true, ""},
		{"below the minimum", []string{"12.50", "7.50"}, Terms{Minimum: eur("50.00")}, false, "30.00"},
		{"at the minimum", []string{"50.00"}, Terms{Minimum: eur("50.00")}, false, ""},
		{"nothing is ordered, so nothing lacks", nil, Terms{Minimum: eur("50.00")}, true, ""},
		{"free freight only where it is asked for", []string{"250.00"}, Terms{FreeFrom: eur("300")}, false, ""},
		{"up to free freight", []string{"250.00"}, Terms{FreeFrom: eur("300")}, true, "50.00"},
		{"the larger of the two", []string{"10.00"}, Terms{Minimum: eur("50.00"), FreeFrom: eur("30.00")}, true, "40.00"},
		{"a threshold finer than a cent is reached by a whole one", []string{"10.00"}, Terms{Minimum: eur("10.005")}, false, "0.01"},
	} {
		t.Run(row.why, func(t *testing.T) {
			got, lacks, err := row.terms.Lack(amounts(t, "EUR", row.goods...), row.toFree)
			require.NoError(t, err)
			require.Equal(t, row.want != "", lacks)
			if lacks {
				require.Equal(t, row.want, got.Number())
			}
		})
	}
	_, _, err := Terms{Minimum: amount(t, "50", "USD")}.Lack(amounts(t, "EUR", "1.00"), false)
	require.EqualError(t, err, "the goods are in EUR and a threshold is in USD: one vendor has one currency")
	_, err = LandedCost(amounts(t, "EUR", "1.00"), Terms{FreeFrom: amount(t, "50", "USD")})
	require.EqualError(t, err, "the goods are in EUR and a threshold is in USD: one vendor has one currency")
}

// Freight falls away at the threshold itself, and customs and tax with it.
func TestLandedCostFreeFreight(t *testing.T) {
	terms := Terms{
		Freight: amount(t, "48.00", "EUR"), Customs: percent(t, "5 %"), Tax: percent(t, "15 %"),
		FreeFrom: amount(t, "300.00", "EUR"),
	}
	for _, row := range []struct{ goods, freight, total, why string }{
		{"299.99", "48.00", "420.20", "customs 17.3995 -> 17.40; tax 15 % of 365.39 = 54.8085 -> 54.81; sum worked by hand"},
		{"300.00", "0.00", "362.25", "customs 15.00; tax 15 % of 315.00 = 47.25"},
	} {
		got, err := LandedCost(amounts(t, "EUR", row.goods), terms)
		require.NoError(t, err)
		require.Equal(t, row.freight, got.Freight.Number(), row.why)
		require.Equal(t, row.total, got.Total.Number(), row.why)
	}
}
