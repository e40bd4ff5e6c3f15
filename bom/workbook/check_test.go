package workbook

import (
	"bytes"
	"testing"

	"github.com/bojanz/currency"
	"github.com/stretchr/testify/require"
)

func TestWriteRefusesAContentThatContradictsItself(t *testing.T) {
	for _, tc := range []struct {
		why    string
		spoil  func(c *Content)
		reason string
	}{
		{"line total", func(c *Content) { c.Shops[0].Lines[1].Total = price(t, "69.53", "EUR") },
			"shop hamburg, line elbow-38: total is 69.53 EUR, but its parts make 69.54 EUR"},
		{"order not a whole number of packs", func(c *Content) { c.Shops[0].Lines[1].Order = "5" },
			`shop hamburg, line elbow-38: the order is "5", but its parts and packs make 4`},
		{"goods", func(c *Content) { c.Shops[0].Goods = price(t, "1", "EUR") }, "shop hamburg: goods is 1 EUR"},
		{"customs", func(c *Content) { c.Shops[0].CustomsSum = price(t, "5.87", "EUR") }, "customs is 5.87 EUR, but its parts make 5.88 EUR"},
		{"tax", func(c *Content) { c.Shops[0].TaxSum = price(t, "0", "EUR") }, "tax is 0 EUR"},
		{"shop total", func(c *Content) { c.Shops[0].Sum = price(t, "0", "EUR") }, "shop hamburg: total is 0 EUR"},
		{"conversion", func(c *Content) { c.Shops[1].InBuild = price(t, "1077.65", "NZD") }, "total in NZD is 1077.65 NZD"},
		{"grand total", func(c *Content) { c.Total = price(t, "1397.76", "NZD") }, "the whole order: total is 1397.76 NZD"},
		{"another currency's price", func(c *Content) { c.Shops[0].Lines[1].Price = price(t, "1", "USD") }, "price is 1 USD, due in EUR"},
		{"a price below zero", func(c *Content) { c.Shops[0].Lines[1].Price = price(t, "-1", "EUR") }, "below zero"},
		{"a price that is no number", func(c *Content) { c.Shops[0].Lines[1].Price = price(t, "NaN", "EUR") }, "a spreadsheet keeps only 15 digits"},
		{"a price longer than a spreadsheet keeps", func(c *Content) { c.Shops[0].Lines[1].Price = price(t, "1.0000000000000001", "EUR") },
			"a spreadsheet keeps only 15 digits"},
		{"a price beyond all bounds", func(c *Content) { c.Shops[0].Lines[1].Price = price(t, "1E+40000", "EUR") }, "a spreadsheet keeps only 15 digits"},
		{"a price where no currency is", func(c *Content) { c.Shops[3].Lines[0].HasPrice = true }, "its shop has no currency"},
		{"two lines of one key", func(c *Content) { c.Shops[0].Lines[1].Key = "hp-pump" }, "each line of a shop has a key of its own"},
		{"a line without a key", func(c *Content) { c.Shops[0].Lines[1].Key = "" }, "each line of a shop has a key of its own"},
		{"a quantity in words", func(c *Content) { c.Shops[0].Lines[1].Spare = "two" }, `spare: "two" is not a quantity`},
		{"an empty pack", func(c *Content) { c.Shops[0].Lines[1].Pack = "0" }, "0 is not a pack"},
		{"no such currency", func(c *Content) { c.Currency = "NZ$" }, `"NZ$" is not a currency; write an ISO 4217 code`},
		{"no such currency of a shop", func(c *Content) { c.Shops[0].Currency = "EURO" }, `shop hamburg: "EURO" is not a currency`},
		{"no rate", func(c *Content) { c.Rates = c.Rates[1:] }, "there is no rate for EUR; give one of it in NZD"},
		{"a rate of nothing", func(c *Content) { c.Rates[0].Rate = "0.00" }, `"0.00" is not a rate; write a decimal above 0`},
		{"a rate twice", func(c *Content) { c.Rates = append(c.Rates, Rate{"EUR", "2"}) }, "given twice"},
		{"a rate of the own currency", func(c *Content) { c.Rates = append(c.Rates, Rate{"NZD", "2"}) }, "its rate is 1"},
		{"a percentage with its sign", func(c *Content) { c.Shops[0].Tax = "15 %" }, `tax: "15 %" is not a percentage`},
		{"a date in words", func(c *Content) { c.RatesDate = "today" }, `"today" is not a date; write it as 2026-11-20`},
	} {
		t.Run(tc.why, func(t *testing.T) {
			c := sample(t)
			tc.spoil(&c)
			var buf bytes.Buffer
			err := Write(&buf, c)
			var wrong *ContentError
			require.ErrorAs(t, err, &wrong)
			require.ErrorContains(t, err, tc.reason)
			require.Zero(t, buf.Len(), "nothing is written")
		})
	}
}

func TestCountTakesWhatIsLeftOut(t *testing.T) {
	c := Content{Currency: "EUR", Shops: []Shop{{ID: "a", Currency: "EUR", Lines: []Line{{Key: "x", Placed: "1", Order: "1"}}}}}
	k, err := count(c)
	require.NoError(t, err, "zero Amounts, and percentages left out are nothing, packs are not known")
	require.Equal(t, 1, k.unpriced)
	require.Equal(t, zero("EUR"), k.shops[0].freight)
}

// The half-up cases of the library's own default mode, and of currencies with
// none and with three decimals (ISO 4217).
func TestPercentOf(t *testing.T) {
	for _, tc := range []struct{ why, of, code, percent, want string }{
		{"a half cent goes up", "0.30", "EUR", "15", "0.05"},
		{"a half yen goes up", "5", "JPY", "10", "1"},
		{"a third decimal stays", "0.100", "KWD", "12.5", "0.013"},
		{"none given", "10.00", "EUR", "", "0.00"},
	} {
		t.Run(tc.why, func(t *testing.T) {
			got, err := percentOf(price(t, tc.of, tc.code), tc.percent)
			require.NoError(t, err)
			require.Equal(t, tc.want, got.Number())
		})
	}
}

func TestMoneyFormat(t *testing.T) {
	for code, want := range map[string]string{"JPY": `#,##0\ [$JPY]`, "EUR": `#,##0.00\ [$EUR]`, "KWD": `#,##0.000\ [$KWD]`} {
		digits, ok := currency.GetDigits(code)
		require.True(t, ok)
		require.Equal(t, want, moneyFormat(code, int(digits)))
	}
	require.Equal(t, 3, priceDecimals(price(t, "17.385", "EUR"), 2), "a price finer than a cent shows all of it")
	require.Equal(t, 2, priceDecimals(price(t, "17.5000", "EUR"), 2))
}
