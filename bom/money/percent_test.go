package money

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestParsePercentTakes(t *testing.T) {
	rows := []struct{ why, text, want, fraction string }{
		{"with a space", "5 %", "5 %", "0.05"},
		{"without", "15%", "15 %", "0.15"},
		{"a part of a percent", "2.5 %", "2.5 %", "0.025"},
		{"nothing to pay", "0 %", "0 %", "0.00"},
		{"a tariff meant to keep goods out", "250 %", "250 %", "2.50"},
		{"exact where a binary fraction is not", "0.1 %", "0.1 %", "0.001"},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			got, err := ParsePercent(row.text)
			require.NoError(t, err)
			require.Equal(t, row.want, got.String())
			require.Equal(t, row.fraction, got.Fraction())
		})
	}
}

func TestPercentZeroValue(t *testing.T) {
	require.Equal(t, "0 %", Percent{}.String(), "a vendor without customs pays none")
}

func TestParsePercentRefuses(t *testing.T) {
	rows := []struct{ why, text, want string }{
		{"a bare number", "5", `"5" has no percent sign: write 5 %`},
		{"a fraction of one", "0.15", `"0.15" has no percent sign: write 15 % if a fraction was meant, else 0.15 %`},
		{"a small fraction", "0.025", `"0.025" has no percent sign: write 2.5 % if a fraction was meant, else 0.025 %`},
		{"a bare nought", "0", `"0" has no percent sign: write 0 %`},
		{"the sign spelt out", "12.5 per cent", `"12.5 per cent" spells the percent sign out: write 12.5 %`},
		{"a decimal comma", "12,5 %", `"12,5 %" has a decimal comma: write 12.5 %`},
		{"below zero", "-5 %", `"-5 %" is below zero: write 0 % or more`},
		{"no number", "%", `"%" holds no number: write 5 %`},
		{"not a number", "NaN %", `"NaN %" is not a number: write 5 %`},
		{"no percentage at all", "exempt", `"exempt" is not a percentage: write 5 %, for instance`},
		{"too much", "1000 %", `"1000 %" is too large: write a number of at most 3 digits before the point`},
		{"a number twice", "5 6 %", `"5 6 %" is not a plain number: write digits with a decimal point, such as 5 %`},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			_, err := ParsePercent(row.text)
			require.EqualError(t, err, row.want)
		})
	}
}

func FuzzParsePercent(f *testing.F) {
	for _, seed := range []string{"5 %", "12.5%", "0.15", "5 percent", "-1 %", "%", "NaN %", "1,5 %"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		p, err := ParsePercent(text)
		if err != nil {
			require.NotEmpty(t, err.Error())
			return
		}
		again, err := ParsePercent(p.String())
		require.NoError(t, err, "what is printed can be read")
		require.Equal(t, p.Fraction(), again.Fraction())
	})
}
