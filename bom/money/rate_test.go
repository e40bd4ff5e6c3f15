package money

import (
	"math/big"
	"testing"
	"time"

	"github.com/bojanz/currency"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// rates is a test's own list of rates, by code and text in turn.
func rates(t require.TestingT, base string, pairs ...string) Rates {
	r := Rates{Base: base, Date: time.Date(2026, 11, 20, 0, 0, 0, 0, time.UTC), Of: map[string]Rate{}}
	for i := 0; i < len(pairs); i += 2 {
		rate, err := ParseRate(pairs[i+1])
		require.NoError(t, err)
		r.Of[pairs[i]] = rate
	}
	return r
}

func TestParseRate(t *testing.T) {
	rows := []struct{ why, text, want string }{
		{"as written, zeros and all", "1.920", "1.920"},
		{"a weak foreign currency", "0.0000117", "0.0000117"},
		{"the most", "1000000000", "1000000000"},
		{"the least", "0.000000000001", "0.000000000001"},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			got, err := ParseRate(row.text)
			require.NoError(t, err)
			require.True(t, got.known())
			require.Equal(t, row.want, got.String())
		})
	}
	require.False(t, Rate{}.known(), "no rate is not a rate of 0")
}

func TestParseRateRefuses(t *testing.T) {
	rows := []struct{ why, text, want string }{
		{"nought", "0.00", `"0.00" is no rate: write what one of the foreign currency costs, above 0`},
		{"below zero", "-1.92", `"-1.92" is below zero: write 0 or more`},
		{"above any rate", "1000000000.1", `"1000000000.1" is too large: write what one of the foreign currency costs, at most 1000000000`},
		{"far above", "99999999999", `"99999999999" is too large: write a number of at most 10 digits before the point`},
		{"a decimal comma", "1,92", `"1,92" has a decimal comma: write 1.92`},
		{"not a number", "nan", `"nan" is not a number: write 1.92`},
		{"no end", "Infinity", `"Infinity" is not a number: write 1.92`},
		{"a quotient", "1/1.92", `"1/1.92" is not a plain number: write digits with a decimal point, such as 1.92`},
		{"a pair", "1.92 NZD", `"1.92 NZD" holds more than the number: write 1.92`},
		{"too fine", "0.0000000000001", `"0.0000000000001" has 13 decimals: write at most 12`},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			_, err := ParseRate(row.text)
			require.EqualError(t, err, row.want)
		})
	}
}

func TestConvertPublished(t *testing.T) {
	const receipts = "docs.oracle.com, JD Edwards Financials 9.2, " +
		"Example: Slight Rounding Differences Recorded by the Receipt Post"
	const cargo = "cargo.link knowledge base, Conversion of currencies"
	const invoices = "help.invoiceocean.com, Different ways to convert values on the invoice based on currency exchange rate"
	rows := []struct{ why, number, code, base, rate, want, source string }{
		{"one invoice of three", "1250.00", "CAD", "EUR", "0.73429", "917.86", receipts},
		{"the three at once: a cent more than three times 917.86", "3750.00", "CAD", "EUR", "0.73429", "2753.59", receipts},
		{"a rate of six figures is not cut", "27", "USD", "EUR", "0.840054", "22.68", cargo},
		// The page states the rate without its two currencies: EUR into PLN is ours.
		{"a tax sum", "908.64", "EUR", "PLN", "4.5803", "4161.84", invoices},
		{"a gross sum", "4859.27", "EUR", "PLN", "4.5803", "22256.91", invoices},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			got, err := rates(t, row.base, row.code, row.rate).Convert(amount(t, row.number, row.code))
			require.NoError(t, err, row.source)
			require.Equal(t, row.want+" "+row.base, got.String(), row.source)
		})
	}
}

func TestConvertByHand(t *testing.T) {
	rows := []struct{ why, number, code, base, rate, want string }{
		{"a half goes up: 1.25 x 1.5 = 1.875", "1.25", "EUR", "NZD", "1.5", "1.88 NZD"},
		{"into a currency without minor unit: 12.50 x 163.4 = 2042.5", "12.50", "EUR", "JPY", "163.4", "2043 JPY"},
		{"out of one: 18500 x 0.0117 = 216.45", "18500", "JPY", "NZD", "0.0117", "216.45 NZD"},
		{"into three decimals: 100 x 0.33335 = 33.335", "100", "EUR", "KWD", "0.33335", "33.335 KWD"},
		{"the build's own currency needs no rate", "48.00", "NZD", "NZD", "", "48.00 NZD"},
		{"and is rounded too", "48.005", "NZD", "NZD", "", "48.01 NZD"},
		{"nothing is nothing", "0", "EUR", "NZD", "1.92", "0.00 NZD"},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			r := rates(t, row.base)
			if row.rate != "" {
				r = rates(t, row.base, row.code, row.rate)
			}
			got, err := r.Convert(amount(t, row.number, row.code))
			require.NoError(t, err)
			require.Equal(t, row.want, got.String())
		})
	}
}

func TestConvertRefuses(t *testing.T) {
	r := rates(t, "NZD", "EUR", "1.92")
	_, err := r.Convert(amount(t, "10", "USD"))
	require.EqualError(t, err, `no rate for USD: add the line USD = "…" under [rates], with what 1 USD costs in NZD`)
	var missing *RateError
	require.ErrorAs(t, err, &missing)
	require.Equal(t, RateError{"USD", "NZD"}, *missing)

	_, err = r.Convert(currency.Amount{})
	require.EqualError(t, err, "an amount without a currency")
	_, err = r.Convert(amount(t, "-1", "EUR"))
	require.EqualError(t, err, "the amount -1 EUR is below zero")
	_, err = Rates{}.Convert(amount(t, "10", "EUR"))
	require.EqualError(t, err, `"" is not a currency code: write three letters of ISO 4217, such as EUR`)
	_, err = Rates{Base: "NZD", Of: map[string]Rate{"EUR": {}}}.Convert(amount(t, "10", "EUR"))
	require.ErrorAs(t, err, &missing, "a rate of 0 is no rate")
}

func TestRateOf(t *testing.T) {
	r := rates(t, "NZD", "USD", "1.68", "EUR", "1.92")
	require.Equal(t, []string{"EUR", "USD"}, r.Codes())
	own, ok := r.Rate("NZD")
	require.True(t, ok)
	require.Equal(t, "1", own.Number())
	_, ok = r.Rate("JPY")
	require.False(t, ok)
	_, ok = Rates{}.Rate("")
	require.False(t, ok, "no currency has no rate")
}

func TestTotalConvertsEachVendorOnce(t *testing.T) {
	r := rates(t, "NZD", "EUR", "1.92", "USD", "1.68")
	got, err := r.Total([]currency.Amount{
		amount(t, "100.01", "EUR"), // 192.0192: 192.02
		amount(t, "10.03", "USD"),  // 16.8504: 16.85
		amount(t, "5.00", "NZD"),
	})
	require.NoError(t, err)
	require.Equal(t, "213.87 NZD", got.String())

	none, err := r.Total(nil)
	require.NoError(t, err)
	require.Equal(t, "0.00 NZD", none.String())
	_, err = r.Total([]currency.Amount{amount(t, "1", "CHF")})
	require.ErrorContains(t, err, "no rate for CHF")
	_, err = Rates{Base: "nzd"}.Total(nil)
	require.EqualError(t, err, `"nzd" is not a currency code: write NZD`)
}

func TestConvertAgreesWithFractions(t *testing.T) {
	rateText := rapid.StringMatching(`[0-9]{1,8}\.[0-9]{0,11}[1-9]`)
	rapid.Check(t, func(t *rapid.T) {
		number, rate := priceText().Draw(t, "amount"), rateText.Draw(t, "rate")
		base := anyCode().Draw(t, "base")
		got, err := rates(t, base, "USD", rate).Convert(amount(t, number, "USD"))
		require.NoError(t, err)

		exact, _ := new(big.Rat).SetString(number)
		factor, _ := new(big.Rat).SetString(rate)
		digits, _ := currency.GetDigits(base)
		require.Equal(t, halfUp(exact.Mul(exact, factor), int(digits)).FloatString(int(digits)), got.Number())
	})
}

func FuzzParseRate(f *testing.F) {
	for _, seed := range []string{"1.92", "0", "1,92", "-1", "Inf", "1/2", "1e9", "1000000000"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		r, err := ParseRate(text)
		require.Equal(t, err == nil, r.known(), "a rate or a reason")
		if err == nil {
			again, err := ParseRate(r.Number())
			require.NoError(t, err, "what is printed can be read")
			require.Equal(t, r.Number(), again.Number())
		}
	})
}
