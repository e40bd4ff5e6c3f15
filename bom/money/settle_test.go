package money

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"strings"
	"testing"

	"github.com/bojanz/currency"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func percent(t require.TestingT, text string) Percent {
	p, err := ParsePercent(text)
	require.NoError(t, err)
	return p
}

func amounts(t require.TestingT, code string, numbers ...string) []currency.Amount {
	var list []currency.Amount
	for _, n := range numbers {
		list = append(list, amount(t, n, code))
	}
	return list
}

func TestLandedCostPublished(t *testing.T) {
	rows := []struct {
		why, code            string
		goods                []string
		freight              string
		customs, tax         string
		wantCustoms, wantTax string
		wantTotal, source    string
	}{
		{"customs on invoice 932, insurance 16 and freight 52", "USD", []string{"932"}, "68", "7 %", "18 %",
			"70.00", "192.60", "1262.60", "export.gov, Duty and Tax Calculation Methods, CIF"},
		{"on the invoice alone; 179.5032 is rounded", "USD", []string{"932"}, "0", "7 %", "18 %",
			"65.24", "179.50", "1176.74", "export.gov, Duty and Tax Calculation Methods, FOB"},
		{"tax on freight, and no customs", "NZD", []string{"1000"}, "100", "0 %", "15 %",
			"0.00", "165.00", "1265.00", "Examples of how to calculate Customs Charges, example 1 " +
				"(attachment to Official Information request 657, fyi.org.nz); total: ours"},
		{"tax is on the customs too", "USD", []string{"1000"}, "150", "20 %", "18 %",
			"230.00", "248.40", "1628.40", "calqoo.com, Import/Export Cost"},
		{"freight and insurance together", "GBP", []string{"10000.00"}, "150.00", "10 %", "0 %",
			"1015.00", "0.00", "11165.00", "langdonsystems.com, calculating-customs-duty-and-vat-how-is-it-done (its tax has a further base); total: ours"},
		{"several goods, tax of 23 % on 1115.00", "EUR", []string{"500", "600", "15"}, "0", "0 %", "23 %",
			"0.00", "256.45", "1371.45", "revenue.ie, info-travelling-duty-free/from-outside-eu/calculate " +
				"(camera, shirts, and the duty of 15 as a line); total: ours"},
		{"tax of 15.6492 is rounded", "EUR", []string{"68.04"}, "0", "0 %", "23 %",
			"0.00", "15.65", "83.69", "cargo.link knowledge base, Conversion of currencies"},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			got, err := LandedCost(amounts(t, row.code, row.goods...), Terms{
				Freight: amount(t, row.freight, row.code), Customs: percent(t, row.customs), Tax: percent(t, row.tax)})
			require.NoError(t, err, row.source)
			require.Equal(t, row.wantCustoms, got.Customs.Number(), row.source)
			require.Equal(t, row.wantTax, got.Tax.Number(), row.source)
			require.Equal(t, row.wantTotal, got.Total.Number(), row.source)
		})
	}
}

func TestLandedCostRoundsEachChargeOnce(t *testing.T) {
	// 5 % of 0.10 is 0.005: 0.01; 15 % of 0.11 is 0.0165: 0.02. Rounded only at the end,
	// 0.10 x 1.05 x 1.15 = 0.12075 would make 0.12, and the parts would not add up to it.
	got, err := LandedCost(amounts(t, "EUR", "0.08"), Terms{Freight: amount(t, "0.02", "EUR"), Customs: percent(t, "5 %"), Tax: percent(t, "15 %")})
	require.NoError(t, err)
	require.Equal(t, Sums{
		Goods: amount(t, "0.08", "EUR"), Freight: amount(t, "0.02", "EUR"), Customs: amount(t, "0.01", "EUR"),
		Tax: amount(t, "0.02", "EUR"), Total: amount(t, "0.13", "EUR")}, got)

	yen, err := LandedCost(amounts(t, "JPY", "105"), Terms{Customs: percent(t, "10 %")})
	require.NoError(t, err)
	require.Equal(t, "11", yen.Customs.Number(), "10.5 yen of customs are 11")
	require.Equal(t, "116", yen.Total.Number())
}

func TestLandedCostFreight(t *testing.T) {
	terms := Terms{Freight: amount(t, "48.005", "EUR"), Customs: percent(t, "5 %"), Tax: percent(t, "15 %")}
	none, err := LandedCost(nil, terms)
	require.NoError(t, err)
	require.Equal(t, "0.00 EUR", none.Freight.String(), "nothing is shipped when nothing is bought")
	require.Equal(t, "0.00 EUR", none.Total.String())

	free, err := LandedCost(amounts(t, "EUR", "0.00"), terms)
	require.NoError(t, err)
	require.Equal(t, "48.01 EUR", free.Freight.String(), "a free sample is shipped; freight is rounded half up")

	stated, err := LandedCost(amounts(t, "EUR", "10.00"), Terms{})
	require.NoError(t, err)
	require.Equal(t, "0.00 EUR", stated.Freight.String(), "a vendor without freight charges none")
	require.Equal(t, "10.00 EUR", stated.Total.String())
}

func TestLandedCostRefuses(t *testing.T) {
	rows := []struct {
		why   string
		goods []currency.Amount
		terms Terms
		want  string
	}{
		{"no currency at all", nil, Terms{}, "neither goods nor freight tell the vendor's currency"},
		{"freight in another currency", amounts(t, "EUR", "1.00"), Terms{Freight: amount(t, "1", "USD")},
			"the freight is in USD and the goods are in EUR: one vendor has one currency"},
		{"a line in another currency", append(amounts(t, "EUR", "1.00"), amount(t, "1", "USD")), Terms{},
			`line 2 is in "USD" and line 1 in EUR: one vendor has one currency`},
		{"a line without a price", append(amounts(t, "EUR", "1.00"), currency.Amount{}), Terms{},
			`line 2 is in "" and line 1 in EUR: one vendor has one currency`},
		{"a line that was not rounded", amounts(t, "EUR", "1.00", "12.345"), Terms{},
			"line 2: 12.345 EUR has more decimals than EUR: round the line first"},
		{"a line below zero", amounts(t, "EUR", "-1.00"), Terms{}, "line 1: the amount -1.00 EUR is below zero"},
		{"a line that is no number", amounts(t, "EUR", "NaN"), Terms{}, "line 1: the amount NaN EUR is not a number"},
		{"freight below zero", amounts(t, "EUR", "1.00"), Terms{Freight: amount(t, "-1", "EUR")},
			"freight: the amount -1 EUR is below zero"},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			got, err := LandedCost(row.goods, row.terms)
			require.EqualError(t, err, row.want)
			require.Equal(t, Sums{}, got)
		})
	}
}

// drawOrder draws line totals and terms of one vendor.
func drawOrder(t *rapid.T) ([]currency.Amount, Terms) {
	code := anyCode().Draw(t, "code")
	var goods []currency.Amount
	for range rapid.IntRange(0, 6).Draw(t, "lines") {
		line, err := LineTotal(amount(t, priceText().Draw(t, "price"), code), Quantity(rapid.Int64Range(0, 1e6).Draw(t, "count")))
		require.NoError(t, err)
		goods = append(goods, line)
	}
	rate := rapid.StringMatching(`[0-9]{1,2}(\.[0-9]{1,3})? %`)
	return goods, Terms{Freight: amount(t, priceText().Draw(t, "freight"), code),
		Customs: percent(t, rate.Draw(t, "customs")), Tax: percent(t, rate.Draw(t, "tax"))}
}

func TestLandedCostTotalIsTheSumOfItsParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		goods, terms := drawOrder(t)
		s, err := LandedCost(goods, terms)
		require.NoError(t, err)
		code := terms.Freight.CurrencyCode()
		minor := amount(t, "0", code).BigInt()
		for _, part := range []currency.Amount{s.Goods, s.Freight, s.Customs, s.Tax} {
			minor.Add(minor, part.BigInt())
			digits, _ := currency.GetDigits(code)
			require.Equal(t, part.RoundTo(digits, currency.RoundDown).Number(), part.Number(), "no part hides a fraction")
		}
		require.Equal(t, minor.String(), s.Total.BigInt().String())
	})
}

func TestLandedCostDoesNotCareForTheOrderOfLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		goods, terms := drawOrder(t)
		one, err := LandedCost(goods, terms)
		require.NoError(t, err)
		other, err := LandedCost(rapid.Permutation(goods).Draw(t, "shuffled"), terms)
		require.NoError(t, err)
		require.Equal(t, one, other)
	})
}

func TestLandedCostNeverFallsWhenALineIsAdded(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		goods, terms := drawOrder(t)
		before, err := LandedCost(goods, terms)
		require.NoError(t, err)
		line, err := LineTotal(amount(t, priceText().Draw(t, "added"), terms.Freight.CurrencyCode()), Piece)
		require.NoError(t, err)
		after, err := LandedCost(append(goods, line), terms)
		require.NoError(t, err)
		order, err := before.Total.Cmp(after.Total)
		require.NoError(t, err)
		require.LessOrEqual(t, order, 0)
	})
}

// TestNoFloat reads the package's own source: money never passes through a binary fraction.
func TestNoFloat(t *testing.T) {
	entries, err := os.ReadDir(".")
	require.NoError(t, err)
	read := 0
	for _, entry := range entries {
		if !strings.HasSuffix(entry.Name(), ".go") || strings.HasSuffix(entry.Name(), "_test.go") {
			continue
		}
		read++
		file, err := parser.ParseFile(token.NewFileSet(), entry.Name(), nil, 0)
		require.NoError(t, err)
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.Ident:
				require.NotContains(t, strings.ToLower(n.Name), "float", entry.Name())
			case *ast.BasicLit:
				require.NotEqual(t, token.FLOAT, n.Kind, "%s: %s", entry.Name(), n.Value)
			}
			return true
		})
	}
	require.Positive(t, read)
}
