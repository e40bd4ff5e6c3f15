package money

import (
	"testing"

	"github.com/bojanz/currency"
	"github.com/stretchr/testify/require"
)

func TestCheckCode(t *testing.T) {
	rows := []struct{ why, code, want string }{
		{"small letters", "eur", `"eur" is not a currency code: write EUR`},
		{"the currency's name", "EURO", `"EURO" is not a currency code: write EUR`},
		{"the plural", "euros", `"euros" is not a currency code: write EUR`},
		{"a swap of neighbours is one edit", "ERU", `"ERU" is not a currency code: write EUR`},
		{"a letter short", "US", `"US" is not a currency code: write USD`},
		{"a slip of the finger", "NZF", `"NZF" is not a currency code: write NZD`},
		{"blanks around", " GBP ", `" GBP " is not a currency code: write GBP`},
		{"the yen's name is one letter from YER", "YEN", `"YEN" is not a currency code: write JPY`},
		{"a trade name", "RMB", `"RMB" is not a currency code: write CNY`},
		{"a name of the pound", "STG", `"STG" is not a currency code: write GBP`},
		{"a name of Taiwan's dollar", "NTD", `"NTD" is not a currency code: write TWD`},
		{"a sign is near to nothing", "€", `"€" is not a currency code: write three letters of ISO 4217, such as EUR`},
		{"a long word is near to nothing", "kroner and øre", `"kroner and øre" is not a currency code: write three letters of ISO 4217, such as EUR`},
		{"nothing", "", `"" is not a currency code: write three letters of ISO 4217, such as EUR`},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			require.EqualError(t, CheckCode(row.code), row.want)
			_, err := ParseAmount("1", row.code)
			require.EqualError(t, err, row.want, "a price is refused for its currency")
		})
	}
}

func TestEveryCodeIsTakenAndNearestToItself(t *testing.T) {
	for _, code := range currency.GetCurrencyCodes() {
		require.NoError(t, CheckCode(code))
		require.Equal(t, code, likeliest(code))
	}
}

func TestMinorUnits(t *testing.T) {
	// ISO 4217 list one; the same in datasets/currency-codes, data/codes-all.csv.
	rows := map[string]uint8{
		"JPY": 0, "KRW": 0, "VND": 0, "XPF": 0, "ISK": 0, "CLP": 0,
		"EUR": 2, "NZD": 2, "USD": 2, "FJD": 2, "IDR": 2,
		"KWD": 3, "BHD": 3, "TND": 3, "OMR": 3, "JOD": 3, "IQD": 3,
	}
	for code, want := range rows {
		got, ok := currency.GetDigits(code)
		require.True(t, ok, code)
		require.Equal(t, want, got, code)
	}
}
