package worth

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/money"
)

// A lira that costs 48.8 euro is a euro that costs 48.8 lira.
func TestRatesWrittenTheWrongWayRound(t *testing.T) {
	for why, row := range map[string]struct {
		base, code, rate string
		inverted         bool
	}{
		"liras for a euro":               {"EUR", "TRY", "48.8", true},
		"euros for a lira":               {"EUR", "TRY", "0.0205", false},
		"the lira has fallen by half":    {"EUR", "TRY", "0.011", false},
		"yen for a dollar":               {"USD", "JPY", "151", true},
		"dollars for a yen":              {"USD", "JPY", "0.0066", false},
		"dollars for a yen, base yen":    {"JPY", "USD", "0.0066", true},
		"crowns for a euro":              {"EUR", "SEK", "11.4", true},
		"euro and dollar are near":       {"EUR", "USD", "1.08", false},
		"so that either way may be":      {"USD", "EUR", "0.92", false},
		"a dollar of ours, written well": {"NZD", "EUR", "1.92", false},
		"a currency that is not known":   {"EUR", "BTN", "98", false},
	} {
		require.Equal(t, row.inverted, Inverted(row.base, row.code, row.rate), why)
	}
}

func TestWorthsAreOfKnownCurrencies(t *testing.T) {
	for code, v := range worth() {
		require.NoError(t, money.CheckCode(code))
		require.Greater(t, v, 0.0)
	}
	require.Len(t, worth(), 39, "all from memory: they name no price, and only ask")
}
