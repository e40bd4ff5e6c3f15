package cart

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestDecimalSignIsLearnedFromTheCart(t *testing.T) {
	for why, row := range map[string]struct {
		texts []string
		want  byte
	}{
		"two decimals behind a comma":               {[]string{"1.234", "6,35"}, ','},
		"two decimals behind a point":               {[]string{"1,234", "6.35"}, '.'},
		"both signs in one number":                  {[]string{"1.234,50"}, ','},
		"a sign that is repeated is not decimal":    {[]string{"1.234.567"}, ','},
		"three digits may be either":                {[]string{"1,234", "2,500"}, 0},
		"a nought before three digits is a decimal": {[]string{"0,125"}, ','},
		"a cart that does both tells nothing":       {[]string{"1,50", "2.75"}, 0},
		"words and blanks tell nothing":             {[]string{"", "??", "auf Anfrage"}, 0},
	} {
		t.Run(why, func(t *testing.T) { require.Equal(t, string(row.want), string(learn(row.texts).decimal)) })
	}
}

func TestNumber(t *testing.T) {
	for why, row := range map[string]struct {
		sign byte
		text string
		want string // "" if it is refused
	}{
		"plain":                              {'.', "12.50", "12.5"},
		"a comma":                            {',', "12,50", "12.5"},
		"its own form is louder":             {'.', "12,50", "12.5"},
		"thousands by what the cart does":    {',', "1.234", "1234"},
		"decimals by what the cart does":     {',', "1,234", "1.234"},
		"either, and nothing tells":          {0, "1,234", ""},
		"blank between thousands":            {',', "1 234,50", "1234.5"},
		"apostrophe between thousands":       {'.', "1'234.50", "1234.5"},
		"thousands where none can stand":     {'.', "1,2345.5", ""},
		"two decimal signs":                  {',', "1,2,3", ""},
		"no number":                          {'.', "abc", ""},
		"more digits than a spreadsheet has": {'.', "0.1234567891", "0.123457"},
	} {
		t.Run(why, func(t *testing.T) {
			got, ok := marks{row.sign}.number(row.text)
			require.Equal(t, row.want != "", ok, got)
			if ok {
				require.Equal(t, row.want, got)
			}
		})
	}
}

func TestNumbersOfWorkbooksLoseTheirBinaryTail(t *testing.T) {
	for text, want := range map[string]string{
		"17.600000000000001": "17.6", "6.3499999999999996": "6.35", "1E-3": "0.001", "5": "5", "1.5E2": "150", "-2": "-2", "0": "0", "0.0000001": "0",
	} {
		got, ok := decimalText(text)
		require.True(t, ok, text)
		require.Equal(t, want, got, text)
	}
	for _, text := range []string{"1E999999999", "NaN", "Infinity", "1E-999999999", "", "x"} {
		_, ok := decimalText(text)
		require.False(t, ok, text)
	}
}

func TestNumbersNeverPanic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[0-9.,' eE+-]{0,20}`).Draw(t, "text")
		m := marks{rapid.SampledFrom([]byte{0, '.', ','}).Draw(t, "sign")}
		if n, ok := m.number(text); ok {
			_, again := decimalText(n)
			require.True(t, again, "%q became %q", text, n)
		}
	})
}
