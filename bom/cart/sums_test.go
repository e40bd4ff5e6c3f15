package cart

import (
	"testing"

	"github.com/cockroachdb/apd/v3"
	"github.com/stretchr/testify/require"

	"handtight/bom/money"
)

func TestQuotients(t *testing.T) {
	for _, row := range []struct{ a, b, want string }{
		{"8", "4", "2"}, {"10", "3", "3.333333"}, {"2", "3", "0.666667"}, {"0", "3", "0"}, {"12.50", "2.5", "5"}, {"1", "8000000", "0"}, {"1", "0", ""}, {"", "2", ""}, {"2", "", ""}, {"x", "2", ""},
	} {
		got, ok := quotient(row.a, row.b)
		require.Equal(t, row.want != "", ok, "%s / %s", row.a, row.b)
		require.Equal(t, row.want, got, "%s / %s", row.a, row.b)
	}
}

// Two prices are one where they are the same at two decimals.
func TestNearPrices(t *testing.T) {
	for _, row := range []struct {
		a, b string
		want bool
	}{
		{"1.00", "1", true}, {"1.004", "1.00", true}, {"1.005", "1.00", false}, {"1.005", "1.01", true}, {"2.664", "2.66", true}, {"1.01", "1.00", false}, {"0", "0.004", true}, {"", "1", false}, {"1", "", false}, {"x", "x", false},
		{"1E12", "1E12", true}, {"1E13", "1E13", false}, {"NaN", "NaN", false},
	} {
		require.Equal(t, row.want, near(row.a, row.b), "%s and %s", row.a, row.b)
	}
}

func TestThousandths(t *testing.T) {
	for _, row := range []struct {
		text string
		want money.Quantity
		ok   bool
	}{
		{"1", 1000, true}, {"0", 0, true}, {"1.5", 1500, true}, {"0.001", 1, true}, {"0.0001", 0, false}, {"-1", 0, false}, {"", 0, false}, {"x", 0, false}, {"1000000", 1_000_000_000, true}, {"1000000.001", 0, false}, {"1E20", 0, false},
	} {
		got, ok := thousandths(row.text)
		require.Equal(t, row.ok, ok, row.text)
		require.Equal(t, row.want, got, row.text)
	}
}

// Where thousands stand, and where none can.
func TestGroups(t *testing.T) {
	for _, row := range []struct {
		text, sign string
		want       bool
	}{
		{"1,234", ",", true}, {"12,345,678", ",", true}, {"123", ",", true}, {"1234", ",", true}, {"1234,567", ",", false}, {"1,23", ",", false}, {"1,2345", ",", false}, {",123", ",", false}, {"1,,234", ",", false}, {"", ",", false}, {"123,456", ",", true},
	} {
		require.Equal(t, row.want, grouped(row.text, row.sign), row.text)
	}
	for _, row := range []struct {
		n    string
		want byte
	}{
		{"1.5", '.'}, {"1,5", ','}, {"1.234", 0}, {"1234.567", '.'}, {"123.456", 0}, {"0.125", '.'}, {"1.2345", '.'}, {"1,234,567", '.'}, {"1.234,5", ','}, {"1,234.5", '.'}, {"12.", 0}, {"12", 0}, {"1.2.3", 0}, {"1.234.56", 0},
	} {
		require.Equal(t, string(row.want), string(speaks(row.n)), row.n)
	}
	require.Equal(t, byte('.'), other(','))
	require.Equal(t, byte(','), other('.'))
}

// The most that a number may have: digits, decimals, length.
func TestNumbersAtTheirBounds(t *testing.T) {
	for _, row := range []struct{ text, want string }{
		{"1.123456", "1.123456"}, {"1.1234564", "1.123456"}, {"1.1234565", "1.123457"}, {"123456789012345", "123456789012345"}, {"1E12", "1000000000000"}, {"-0", "0"}, {"0.000001", "0.000001"}, {"0.0000004", "0"}, {"10", "10"},
	} {
		got, ok := decimalText(row.text)
		require.True(t, ok, row.text)
		require.Equal(t, row.want, got, row.text)
	}
	digit := func(n int) string {
		out := make([]byte, n)
		for i := range out {
			out[i] = '1'
		}
		return string(out)
	}
	for _, text := range []string{"1E13", "1E-331", digit(61)} {
		_, ok := decimalText(text)
		require.False(t, ok, text)
	}
	_, ok := decimalText("0." + digit(58)) // sixty in all
	require.True(t, ok)
}

// A count that ends in three noughts is a whole one, where a boat takes no thousands.
func TestWholeOnes(t *testing.T) {
	for text, want := range map[string]string{"2,000": "2", "2.000": "2", "12.000": "12", "12,000": "12", "112.000": "", "2,500": "", ",000": "", "000": "", "2;000": "", "2000": ""} {
		got, ok := wholeOf(text)
		require.Equal(t, want != "", ok, text)
		require.Equal(t, want, got, text)
	}
}

func TestWhatIsAPrice(t *testing.T) {
	b := builder{numbers: marks{'.'}}
	for _, row := range []struct {
		c    cell
		want string
	}{
		{cell{text: "12.50"}, "12.5"}, {cell{text: "€ 12.50"}, "12.5"}, {cell{text: "12.50 EUR"}, "12.5"}, {cell{text: "1,250.00"}, "1250"}, {cell{text: "12.5", number: true}, "12.5"},
		{cell{text: "0"}, ""}, {cell{text: "0.00"}, ""}, {cell{text: "-5"}, ""}, {cell{text: "-5", number: true}, ""}, {cell{text: " -5.00"}, ""}, {cell{text: "??"}, ""}, {cell{text: "on request"}, ""}, {cell{text: ""}, ""},
		{cell{text: "20%"}, ""}, {cell{text: "12.50 or 13.50"}, ""}, {cell{text: "45000", date: true}, ""}, {cell{text: "123456789012"}, "123456789012"}, {cell{text: "1234567890123"}, ""}, {cell{text: "words"}, ""},
	} {
		require.Equal(t, row.want, b.sum(row.c), row.c.text)
	}
}

// Quantity times price is the total, within the last digit of each piece.
func TestSumsThatAddUp(t *testing.T) {
	for _, row := range []struct {
		price, total string
		amount       int64
		want         bool
	}{
		{"2.00", "8.00", 4, true}, {"2.00", "8.01", 4, true}, {"2.00", "8.02", 4, false}, {"3.33", "10.00", 3, true}, {"3.34", "10.00", 3, false}, {"2.00", "2.00", 4, false}, {"2.00", "2.00", 1, true}, {"2.00", "2.00", 0, true},
	} {
		l := Line{Price: row.price, Total: row.total, Amount: pieces(row.amount)}
		require.Equal(t, row.want, addsUp(&l), "%d x %s = %s", row.amount, row.price, row.total)
	}
	var sum apd.Decimal
	addTo(&sum, "2.50", pieces(3))
	addTo(&sum, "x", pieces(3))
	addTo(&sum, "1", 1500)
	require.Equal(t, "9.00", sum.Text('f')[:4])
}

// A price that is that of the whole line becomes that of one, and only where it counts.
func TestPricesOfWholeLines(t *testing.T) {
	for why, row := range map[string]struct {
		line         Line
		price, total string
	}{
		"four for eight":      {Line{Price: "8.00", Counted: true, Amount: pieces(4)}, "2", "8.00"},
		"it says no price":    {Line{Counted: true, Amount: pieces(4)}, "", ""},
		"it is not counted":   {Line{Price: "8.00", Amount: pieces(4)}, "8.00", ""},
		"there is none of it": {Line{Price: "8.00", Counted: true}, "8.00", ""},
		"it stays out":        {Line{Price: "8.00", Counted: true, Amount: pieces(4), Out: "it is a sum"}, "8.00", ""},
	} {
		l := row.line
		l.wholePrice()
		require.Equal(t, row.price, l.Price, why)
		require.Equal(t, row.total, l.Total, why)
	}
}

// Whose price it is, at the edges: all bought once, two sums, a heading without a word of it.
func TestWhosePriceAtTheEdges(t *testing.T) {
	for why, row := range map[string]struct {
		cart, price, whose, note string
	}{
		"both readings agree with the sum": {"Description\tQty\tPrice\nElbow\t1\t8.00\nTotal\t\t8.00\n", "8", "", ""},
		"the sum fits neither":             {"Description\tQty\tPrice\nElbow\t4\t8.00\nTotal\t\t9.00\n", "8", "Price", ""},
		"the sum of lines is noted":        {"Description\tQty\tPrice\nElbow\t4\t8.00\nTotal\t\t8.00\n", "2", "", `the prices under "Price" are those of whole lines: their sum is 8`},
		"a column of totals says it":       {"Description\tQty\tPrice\tTotal\nElbow\t4\t2.00\t8.00\n", "2", "", ""},
		"a German heading says of one":     {"Bezeichnung\tMenge\tEinzelpreis\nBogen\t4\t2,00\n", "2", "", ""},
		"two sums, of which one fits":      {"Description\tQty\tPrice\nElbow\t4\t8.00\nDelivery\t\t5.00\nTotal\t\t32.00\n", "8", "", ""},
	} {
		c, err := Read("c.csv", []byte(row.cart), Options{})
		require.NoError(t, err, why)
		require.Equal(t, row.price, c.Lines[0].Price, why)
		require.Equal(t, row.whose, c.Lines[0].whose, why)
		if row.note != "" {
			require.Contains(t, c.Notes, row.note, why)
		} else {
			require.Empty(t, c.Notes, why)
		}
	}
	c, err := Read("c.csv", []byte("Description\tQty\tPrice\nElbow\t4\t8.00\nTotal\t\t8.00\n"), Options{Columns: Columns{RolePrice: "Price"}})
	require.NoError(t, err)
	require.Equal(t, "8", c.Lines[0].Price, "the person said that it is that of one")
}

// The cart's currency: said by the person, or the only one that its lines name.
func TestCurrenciesOfACart(t *testing.T) {
	for why, row := range map[string]struct {
		rows, said string
		cart       string
		lines      []string
	}{
		"one line names it":      {"Elbow\t2\t8.00 EUR\nTee\t1\t3.00\n", "", "EUR", []string{"EUR", "EUR"}},
		"two lines disagree":     {"Elbow\t2\t8.00 EUR\nTee\t1\t3.00 GBP\nBush\t1\t2.00\n", "", "", []string{"EUR", "GBP", ""}},
		"nobody names any":       {"Elbow\t2\t8.00\n", "", "", []string{""}},
		"the person says it":     {"Elbow\t2\t8.00\n", "NZD", "NZD", []string{"NZD"}},
		"a line is louder":       {"Elbow\t2\t8.00 EUR\nTee\t1\t3.00\n", "NZD", "NZD", []string{"EUR", "NZD"}},
		"the words hold a price": {"Elbow, 8.00 EUR\t2\t\n", "", "EUR", []string{"EUR"}},
	} {
		c, err := Read("c.csv", []byte("Description\tQty\tUnit price\n"+row.rows), Options{Currency: row.said})
		require.NoError(t, err, why)
		require.Equal(t, row.cart, c.Currency, why)
		var got []string
		for i := range c.Lines {
			got = append(got, c.Lines[i].Currency)
		}
		require.Equal(t, row.lines, got, why)
	}
	for _, row := range []struct{ price, currency, want string }{{"6.9", "EUR", "6.90"}, {"6", "EUR", "6.00"}, {"6.905", "EUR", "6.905"}, {"6.9", "", "6.9"}, {"", "EUR", ""}, {"600", "JPY", "600"}} {
		require.Equal(t, row.want, (&Line{Price: row.price, Currency: row.currency}).PriceText())
	}
}
