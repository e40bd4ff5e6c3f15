package money

import (
	"math/big"
	"testing"

	"github.com/bojanz/currency"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// amount is a test's own amount, taken as the library takes it.
func amount(t require.TestingT, number, code string) currency.Amount {
	a, err := currency.NewAmount(number, code)
	require.NoError(t, err)
	return a
}

func TestParseAmountTakes(t *testing.T) {
	rows := []struct{ why, text, code, want string }{
		{"a price as shops print it", "1240.00", "EUR", "1240.00 EUR"},
		{"a whole number", "48", "NZD", "48 NZD"},
		{"a unit price finer than the currency: only the line is rounded", "0.125", "EUR", "0.125 EUR"},
		{"a price in a currency without minor unit", "18500", "JPY", "18500 JPY"},
		{"a currency of three decimals", "3.250", "KWD", "3.250 KWD"},
		{"free is a price", "0", "USD", "0 USD"},
		{"blanks around do no harm", " 12.50 ", "EUR", "12.50 EUR"},
		{"a room number's zeros do no harm", "007.50", "EUR", "7.50 EUR"},
		{"the most that is taken", "999999999999.999999", "IDR", "999999999999.999999 IDR"},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			got, err := ParseAmount(row.text, row.code)
			require.NoError(t, err)
			require.Equal(t, row.want, got.String())
		})
	}
}

func TestParseAmountRefuses(t *testing.T) {
	rows := []struct{ why, text, want string }{
		{"thousands marks of the English", "1,240.00", `"1,240.00" has thousands marks: write 1240.00`},
		{"thousands marks of India", "1,24,000.00", `"1,24,000.00" has thousands marks: write 124000.00`},
		{"millions", "1,240,000", `"1,240,000" has thousands marks: write 1240000`},
		{"thousands marks of the Swiss", "1'240.50", `"1'240.50" has thousands marks: write 1240.50`},
		{"thousands marks of the French", "1 240,50", `"1 240,50" has thousands marks: write 1240.50`},
		{"a no-break space shows itself", "1\u00a0240,50", `"1\u00a0240,50" has thousands marks: write 1240.50`},
		{"an underscore as in programs", "1_240", `"1_240" has thousands marks: write 1240`},
		{"points as thousands marks", "1.240,50", `"1.240,50" has points between thousands: write 1240.50`},
		{"points alone", "1.240.000", `"1.240.000" has points between thousands: write 1240000`},
		{"a decimal comma", "12,50", `"12,50" has a decimal comma: write 12.50`},
		{"a decimal comma below one", "0,125", `"0,125" has a decimal comma: write 0.125`},
		{"a comma that could be either is not guessed", "1,240",
			`"1,240" has a comma that may mark thousands or decimals: write 1240, or 1.240`},
		{"a price below zero", "-12.50", `"-12.50" is below zero: write 0 or more`},
		{"a printed minus", "\u221212.50", "\"\u221212.50\" is below zero: write 0 or more"},
		{"nothing", "", `"" holds no number: write 12.50`},
		{"blanks", "  ", `"  " holds no number: write 12.50`},
		{"not a number", "NaN", `"NaN" is not a number: write 12.50`},
		{"no end", "+Inf", `"+Inf" is not a number: write 12.50`},
		{"powers of ten", "1e3", `"1e3" is written in powers of ten: write it out in full`},
		{"a currency behind: it is the shop's", "12.50 EUR", `"12.50 EUR" holds more than the number: write 12.50`},
		{"a sign before", "€12.50", `"€12.50" holds more than the number: write 12.50`},
		{"a plus", "+5", `"+5" holds more than the number: write 5`},
		{"no digit before the point", ".50", `".50" has no digit before the point: write 0.50`},
		{"no digit after the point", "12.", `"12." has no digit after the point: write 12`},
		{"a range", "12-15", `"12-15" is not a plain number: write digits with a decimal point, such as 12.50`},
		{"a word", "on request", `"on request" is not a plain number: write digits with a decimal point, such as 12.50`},
		{"digits of another script", "١٢", `"١٢" is not a plain number: write digits with a decimal point, such as 12.50`},
		{"a bar code in the price column", "4006381333931", `"4006381333931" is too large: write a number of at most 12 digits before the point`},
		{"more decimals than any price", "0.1234567", `"0.1234567" has 7 decimals: write at most 6`},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			_, err := ParseAmount(row.text, "EUR")
			require.EqualError(t, err, row.want)
			var input *InputError
			require.ErrorAs(t, err, &input)
			require.Equal(t, row.text, input.Text)
		})
	}
}

func TestLineTotalRoundsHalfUp(t *testing.T) {
	const library = "bojanz/currency v1.4.2, amount_test.go, TestAmount_Round and TestAmount_RoundTo"
	const euro = "evro.si, Rounding rules"
	const iso = "ISO 4217 list one, minor units"
	rows := []struct {
		why, price, code string
		count            Quantity
		want, source     string
	}{
		{"a half of a cent goes up", "12.345", "USD", 1 * Piece, "12.35", library},
		{"a yen has no minor unit", "12.345", "JPY", 1 * Piece, "12", library},
		{"below the half goes down", "12.343", "USD", 1 * Piece, "12.34", library},
		{"above the half goes up", "12.347", "USD", 1 * Piece, "12.35", library},
		{"the third decimal is 4", "24.784", "EUR", 1 * Piece, "24.78", euro},
		{"the third decimal is 5", "24.785", "EUR", 1 * Piece, "24.79", euro},
		{"half up, where half to even would give 2.34", "2.345", "EUR", 1 * Piece, "2.35", "half up by definition"},
		{"half a yen is a yen", "0.5", "JPY", 1 * Piece, "1", "half up by definition; " + iso},
		{"a dinar of Kuwait has 1000 fils", "1.2345", "KWD", 1 * Piece, "1.235", "half up by definition; " + iso},
		{"two decimals are always shown", "7", "EUR", 2 * Piece, "14.00", iso},
		{"rounded after the count, not before: 0.13 each would make 1.04", "0.125", "EUR", 8 * Piece, "1.00", "8 x 0.125 = 1"},
		{"hose by the metre", "9.95", "EUR", 1400 * Millimetre, "13.93", "1.4 x 9.95 = 13.93"},
		{"a millimetre counts", "9.95", "EUR", 1401 * Millimetre, "13.94", "1.401 x 9.95 = 13.93995"},
		{"none costs nothing", "9.95", "EUR", 0, "0.00", "0 x 9.95 = 0"},
		{"long numbers keep every digit", "999999999999.999999", "IDR", 9000000000000000 * Millimetre,
			"8999999999999999991000000.00", "9e12 x (1e12 - 1e-6) = 9e24 - 9e6"},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			got, err := LineTotal(amount(t, row.price, row.code), row.count)
			require.NoError(t, err, row.source)
			require.Equal(t, row.want+" "+row.code, got.String(), row.source)
		})
	}
}

func TestLineTotalRefuses(t *testing.T) {
	rows := []struct {
		why   string
		price currency.Amount
		count Quantity
		want  string
	}{
		{"no currency", currency.Amount{}, Piece, "unit price: an amount without a currency"},
		{"no number", amount(t, "NaN", "EUR"), Piece, "unit price: the amount NaN EUR is not a number"},
		{"no end", amount(t, "Infinity", "EUR"), Piece, "unit price: the amount Infinity EUR is not a number"},
		{"a price below zero", amount(t, "-1", "EUR"), Piece, "unit price: the amount -1 EUR is below zero"},
		{"a count below zero", amount(t, "1", "EUR"), -Piece, "the count -1 is below zero"},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			_, err := LineTotal(row.price, row.count)
			require.EqualError(t, err, row.want)
		})
	}
}

func TestNumbersBeyondTheDecimalsRangeAreErrors(t *testing.T) {
	huge := amount(t, "9E+100000", "EUR") // the decimal library's greatest power of ten
	_, err := LineTotal(huge, 9000*Piece)
	require.ErrorContains(t, err, "out of range")
	_, err = LandedCost([]currency.Amount{huge, huge}, Terms{})
	require.Error(t, err)
	_, err = rates(t, "NZD", "EUR", "100").Convert(huge)
	require.Error(t, err)

	got, err := LineTotal(amount(t, "1E-100000", "EUR"), 1*Piece)
	require.Error(t, err, got)
}

// halfUp is the second opinion: exact fractions, floor of x + 1/2 in minor units.
func halfUp(x *big.Rat, digits int) *big.Rat {
	scale := new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(digits)), nil))
	shifted := new(big.Rat).Mul(x, scale)
	shifted.Add(shifted, big.NewRat(1, 2))
	floor := new(big.Int).Div(shifted.Num(), shifted.Denom())
	return new(big.Rat).Quo(new(big.Rat).SetInt(floor), scale)
}

// priceText draws a price as people write it.
func priceText() *rapid.Generator[string] { return rapid.StringMatching(`[0-9]{1,12}(\.[0-9]{1,6})?`) }

// anyCode draws a currency among those with 0, 2, 3 and 4 decimals.
func anyCode() *rapid.Generator[string] {
	return rapid.SampledFrom([]string{"EUR", "NZD", "JPY", "KWD", "TND", "CLF", "VND"})
}

func TestLineTotalAgreesWithFractions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, code := priceText().Draw(t, "price"), anyCode().Draw(t, "code")
		count := Quantity(rapid.Int64Range(0, 1e15).Draw(t, "count"))
		price, err := ParseAmount(text, code)
		require.NoError(t, err)
		got, err := LineTotal(price, count)
		require.NoError(t, err)

		exact, _ := new(big.Rat).SetString(text)
		exact.Mul(exact, big.NewRat(int64(count), 1000))
		digits, _ := currency.GetDigits(code)
		want := halfUp(exact, int(digits)).FloatString(int(digits))
		require.Equal(t, want, got.Number())
	})
}

func FuzzParseAmount(f *testing.F) {
	for _, seed := range []string{"1240.00", "1,240.00", "12,50", "-1", "1e3", "NaN", "12.50 EUR", ".5", "5.", "", "€", "1 240"} {
		f.Add(seed, "EUR")
	}
	f.Add("1", "EURO")
	f.Fuzz(func(t *testing.T, text, code string) {
		a, err := ParseAmount(text, code)
		if err != nil {
			require.NotEmpty(t, err.Error())
			require.Equal(t, currency.Amount{}, a)
			return
		}
		require.False(t, a.IsNegative())
		again, err := ParseAmount(a.Number(), code)
		require.NoError(t, err, "what is printed can be read")
		require.True(t, again.Equal(a))
	})
}
