package compare

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

const shops = base + `
[spares]
away = "6 months"
hours = "100 h"
confidence = "90 %"
spoil = "3 %"
[rates]
date = 2026-11-20
EUR = "1.90"
[[vendor]]
id = "here"
name = "Here"
currency = "NZD"
freight = "10.00"
[[vendor]]
id = "there"
name = "There"
currency = "EUR"
freight = "20.00"
tax = "15 %"
[[offer]]
item = "tail"
vendor = "here"
code = "T-1"
price = "5.00"
[[offer]]
item = "strainer"
vendor = "there"
code = "S-1"
price = "40.00"
[[offer]]
item = "pump"
vendor = "here"
price = "90.00"
[[offer]]
item = "kit"
vendor = "here"
price = "9.00"
`

func sumsOf(t require.TestingT, pairs ...string) []Sum {
	r := Builds(walked(t, shops), walked(t, strings.NewReplacer(pairs...).Replace(shops)))
	require.NoError(t, r.NoSums)
	return r.Sums
}

// What changes of the money is told with both figures, and what comes of it.
func TestMoneyCountsAndSpares(t *testing.T) {
	for why, row := range map[string]struct {
		pairs []string
		want  []Sum
	}{
		"a price": {[]string{`price = "5.00"`, `price = "6.00"`}, []Sum{
			{"price", "tail", "here", "5.00 NZD", "6.00 NZD"}, {What: "shop's total", Of: "here", Shop: "here"}, {What: "total"}}},
		"a rate": {[]string{`EUR = "1.90"`, `EUR = "2.00"`}, []Sum{{"rate", "EUR", "", "1.90 NZD", "2.00 NZD"}, {What: "total"}}},
		"freight": {[]string{`freight = "20.00"`, `freight = "25.00"`}, []Sum{
			{"freight", "there", "there", "20.00 EUR", "25.00 EUR"}, {What: "shop's total", Of: "there", Shop: "there"}, {What: "total"}}},
		"tax that went": {[]string{"tax = \"15 %\"\n", ""}, []Sum{
			{"tax", "there", "there", "15 %", "0 %"}, {What: "shop's total", Of: "there", Shop: "there"}, {What: "total"}}},
		"another one placed": {[]string{`"strainer", "tail/+", "hose/+", "pump"`, `"strainer", "tail/+", "hose/+", "tail/+", "strainer/two", "tail/+", "hose/+", "pump"`}, []Sum{
			{What: "order", Of: "tail"}, {What: "order", Of: "strainer", Old: "1 pc", New: "2 pc"}, {What: "total"}}},
		"an offer that is new": {[]string{"[[offer]]\nitem = \"pump\"", "[[offer]]\nitem = \"out\"\nvendor = \"here\"\nprice = \"3.00\"\n[[offer]]\nitem = \"pump\""}, []Sum{
			{"price", "out", "here", "none", "3.00 NZD"}, {"bought at", "out", "", "none", "here"}, {What: "total"}}},
		"more hours, more spares": {[]string{`hours = "100 h"`, `hours = "900 h"`}, []Sum{{What: "spare", Of: "kit"}, {What: "order", Of: "kit"}, {What: "total"}}},
	} {
		t.Run(why, func(t *testing.T) {
			got := sumsOf(t, row.pairs...)
			for _, want := range row.want {
				found := false
				for _, s := range got {
					if s.What == want.What && s.Of == want.Of && s.Shop == want.Shop {
						found = true
						if want.Old != "" {
							require.Equal(t, want, s)
						}
						require.NotEqual(t, s.Old, s.New)
					}
				}
				require.True(t, found, "no %s of %q in %v", want.What, want.Of, got)
			}
		})
	}
}

// A build is the same as itself also in its money, and what changes one way changes back.
func TestMoneyComesOutEven(t *testing.T) {
	require.Empty(t, sumsOf(t))
	prices := []string{"4.00", "5.00", "7.50"}
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) string {
			return strings.NewReplacer(`price = "5.00"`, `price = "`+rapid.SampledFrom(prices).Draw(t, name)+`"`).Replace(shops)
		}
		a, b := draw("old"), draw("new")
		there := Builds(walked(t, a), walked(t, b))
		back := Builds(walked(t, b), walked(t, a))
		require.Len(t, back.Sums, len(there.Sums))
		for i, s := range there.Sums {
			require.Equal(t, Sum{s.What, s.Of, s.Shop, s.New, s.Old}, back.Sums[i])
		}
	})
}
