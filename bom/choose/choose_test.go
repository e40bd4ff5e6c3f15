package choose

import (
	"context"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/bojanz/currency"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/money"
	"handtight/bom/order"
	"handtight/bom/read"
)

const head = `
[build]
name = "Shops"
currency = "NZD"
[rates]
date = 2026-11-20
EUR = "1.92"
USD = "1.68"
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "out"
kind = "drain"
[[run]]
name = "the boat's own, never bought"
path = ["sea", "out"]
`

func vendor(id, currency, more string) string {
	return fmt.Sprintf("[[vendor]]\nid = %q\ncurrency = %q\n%s\n", id, currency, more)
}

// store is so many of something that is bought and placed nowhere.
func store(id string, count int) string {
	return fmt.Sprintf("[[item]]\nid = %q\nkind = \"oil\"\nextra = %d\n", id, count)
}

func offer(item, vendor, price, more string) string {
	return fmt.Sprintf("[[offer]]\nitem = %q\nvendor = %q\nprice = %q\n%s\n", item, vendor, price, more)
}

func walked(t require.TestingT, text string) *bom.System {
	build, faults := read.Parse("shops.toml", []byte(text))
	require.NoError(t, faults.Err())
	sys, faults := bom.Walk(build)
	require.NoError(t, faults.Err())
	return sys
}

func chosen(t require.TestingT, text string) *Choice {
	c, err := Shops(context.Background(), walked(t, text))
	require.NoError(t, err)
	return c
}

// where gives the shop of each line: "a:elbe b:wharf".
func where(o *order.Order) string {
	var out []string
	for _, l := range o.Bought() {
		if l.Offer != nil && l.Order > 0 {
			out = append(out, l.Need.Key+":"+l.Offer.Vendor.ID)
		}
	}
	return strings.Join(out, " ")
}

func TestShops(t *testing.T) {
	near := vendor("near", "NZD", `freight = "10.00"`)
	far := vendor("far", "NZD", `freight = "30.00"`)
	for _, row := range []struct {
		why, text, where, total, byLine string
	}{
		{"the freight of a second shop eats what its price saves: 100 + 50 + 10 = 160 against 90 + 50 + 40",
			near + far + store("a", 1) + store("b", 1) + offer("a", "near", "100.00", "") + offer("a", "far", "90.00", "") + offer("b", "near", "50.00", ""),
			"a:near b:near", "160.00", "180.00"},
		{"the second shop pays where it saves more than its freight",
			near + far + store("a", 1) + store("b", 1) + offer("a", "near", "100.00", "") + offer("a", "far", "60.00", "") + offer("b", "near", "50.00", ""),
			"a:far b:near", "150.00", "150.00"},
		{"free from 150: 152 at the dearer shop against 145 and its freight",
			near + vendor("far", "NZD", "freight = \"30.00\"\nfree_from = \"150.00\"") + store("a", 1) + store("b", 1) +
				offer("a", "near", "100.00", "") + offer("b", "near", "45.00", "") + offer("a", "far", "102.00", "") + offer("b", "far", "50.00", ""),
			"a:far b:far", "152.00", "155.00"},
		{"filled up to free freight: 6 more saves 30",
			vendor("far", "NZD", "freight = \"30.00\"\nfree_from = \"150.00\"") + store("a", 1) + offer("a", "far", "144.00", ""),
			"a:far anything more from far:far", "150.00", "174.00"},
		{"not filled up where it costs more than the freight",
			vendor("far", "NZD", "freight = \"30.00\"\nfree_from = \"150.00\"") + store("a", 1) + offer("a", "far", "119.00", ""),
			"a:far", "149.00", "149.00"},
		{"a minimum order makes the cheap shop dear: 20 filled to 50, against 35",
			vendor("near", "NZD", "") + vendor("far", "NZD", `minimum = "50.00"`) + store("a", 1) + offer("a", "far", "20.00", "") + offer("a", "near", "35.00", ""),
			"a:near", "35.00", "50.00"},
		{"more lines fill the minimum: 20 + 30 there against 20 filled to 50 and 31",
			vendor("near", "NZD", "") + vendor("far", "NZD", `minimum = "50.00"`) + store("a", 1) + store("b", 1) +
				offer("a", "far", "20.00", "") + offer("b", "far", "30.00", "") + offer("b", "near", "29.00", "") + offer("a", "near", "44.00", ""),
			"a:far b:far", "50.00", "79.00"},
		{"the pack decides: 3 of 8.00 against a pack of 10 at 2.50",
			vendor("near", "NZD", "") + store("a", 3) + offer("a", "near", "2.50", "pack = 10") + offer("a", "near", "8.00", ""),
			"a:near", "24.00", "24.00"},
		{"customs and tax count: 90.00 at 20 % and 15 % is 124.20",
			vendor("near", "NZD", "") + vendor("far", "NZD", "customs = \"20 %\"\ntax = \"15 %\"") + store("a", 1) + offer("a", "near", "120.00", "") + offer("a", "far", "90.00", ""),
			"a:near", "120.00", "124.20"},
		{"the rate counts: 60.00 EUR at 1.92 is 115.20",
			vendor("near", "NZD", "") + vendor("elbe", "EUR", "") + store("a", 1) + offer("a", "near", "115.21", "") + offer("a", "elbe", "60.00", ""),
			"a:elbe", "115.20", "115.20"},
		{"landed as published: 932 with freight and insurance of 68, customs 7 %, tax 18 % is 1262.60 USD (export.gov, " +
			"Duty and Tax Calculation Methods, CIF), which is 2121.17 NZD; 2121.16 is a cent less",
			vendor("pier", "USD", "freight = \"68.00\"\ncustoms = \"7 %\"\ntax = \"18 %\"") + vendor("near", "NZD", "") + store("a", 1) +
				offer("a", "pier", "932.00", "") + offer("a", "near", "2121.16", ""),
			"a:near", "2121.16", "2121.17"},
		{"a line is divided: a pack of ten and two single ones, not two packs nor twelve singles",
			vendor("near", "NZD", "") + store("a", 12) + offer("a", "near", "2.00", "pack = 10") + offer("a", "near", "3.00", ""),
			"a:near a:near", "26.00", "26.00"},
		{"divided between shops where that saves more than the freight: 20 + 5 + 6 against 36",
			vendor("near", "NZD", "") + vendor("far", "NZD", `freight = "5.00"`) + store("a", 12) + offer("a", "far", "2.00", "pack = 10") + offer("a", "near", "3.00", ""),
			"a:far a:near", "31.00", "36.00"},
		{"as many at the dearer shop as its minimum asks: 10 at 2.00 fill it, 8 at 1.00 are cheaper elsewhere",
			vendor("near", "NZD", `minimum = "30.00"`) + vendor("far", "NZD", "") + store("a", 18) + store("b", 1) + offer("b", "near", "10.00", "") +
				offer("a", "near", "2.00", "") + offer("a", "far", "1.90", ""),
			"a:near a:far b:near", "45.20", "64.20"},
		{"nothing to buy", vendor("near", "NZD", `freight = "10.00"`), "", "0.00", "0.00"},
	} {
		t.Run(row.why, func(t *testing.T) {
			c := chosen(t, head+row.text)
			require.Equal(t, row.where, where(c.Order))
			require.Equal(t, row.total, c.Order.Total.Number())
			require.Equal(t, row.byLine, c.Cheapest.Total.Number())
			require.True(t, c.Proved)
			require.Equal(t, row.total, c.Bound.Number())
		})
	}
}

// A shop that does not have all says what it lacks; what has no price anywhere is left
// out of the choice and of the sums.
func TestOneShopAndUnpriced(t *testing.T) {
	c := chosen(t, head+vendor("near", "NZD", "")+vendor("far", "NZD", "")+store("a", 1)+store("b", 1)+store("c", 1)+
		offer("a", "near", "10.00", "")+offer("b", "near", "10.00", "")+offer("a", "far", "9.00", "")+
		"[[offer]]\nitem = \"c\"\nvendor = \"far\"\n")
	one, ok := bestOne(c)
	require.True(t, ok)
	require.Equal(t, "near", one.Vendor.ID)
	require.Equal(t, "20.00", one.Order.Total.Number())
	require.Nil(t, c.One[1].Order)
	require.Len(t, c.One[1].Lacks, 1)
	require.Equal(t, "b", c.One[1].Lacks[0].Key)
	require.Equal(t, 1, c.Order.Unpriced)
	require.Equal(t, "19.00", c.Order.Total.Number())
	saved, ok := c.Saves(one.Order)
	require.True(t, ok)
	require.Equal(t, "1.00", saved.Number())
	_, ok = c.Saves(c.Order)
	require.False(t, ok, "nothing is saved against itself")
}

// drawn draws a small market: lines, shops, and offers of both.
func drawn(t *rapid.T, lines, shops int) string {
	cents := func(most int, what string) string {
		n := rapid.IntRange(0, most).Draw(t, what)
		return fmt.Sprintf("%d.%02d", n/100, n%100)
	}
	var b strings.Builder
	b.WriteString(head)
	for v := range shops {
		more := ""
		for _, key := range []string{"freight", "minimum", "free_from"} {
			if rapid.Bool().Draw(t, key) {
				more += fmt.Sprintf("%s = %q\n", key, cents(6000, key))
			}
		}
		for _, key := range []string{"customs", "tax"} {
			if rapid.Bool().Draw(t, key) {
				more += fmt.Sprintf("%s = \"%d %%\"\n", key, rapid.IntRange(0, 25).Draw(t, key))
			}
		}
		b.WriteString(vendor(fmt.Sprintf("shop-%d", v), rapid.SampledFrom([]string{"NZD", "EUR", "USD"}).Draw(t, "currency"), more))
	}
	for i := range lines {
		id := fmt.Sprintf("part-%d", i)
		b.WriteString(store(id, rapid.IntRange(1, 5).Draw(t, "count")))
		for range rapid.IntRange(0, 4).Draw(t, "offers") {
			b.WriteString(offer(id, fmt.Sprintf("shop-%d", rapid.IntRange(0, shops-1).Draw(t, "shop")), cents(2500, "price"),
				fmt.Sprintf("pack = %d", rapid.IntRange(1, 4).Draw(t, "pack"))))
		}
	}
	return b.String()
}

// offered is what a drawn market sells of one line, in plain numbers.
type offered struct {
	shop, pack int
	price      int64 // cents
}

// shop is what one asks beside its goods, in cents and percent; rate is what 100 of its money cost.
type shop struct{ freight, minimum, free, customs, tax, rate int64 }

func half(x, of int64) int64 { return (2*x + of) / (2 * of) } // rounded half up, from 0 up

// landed is what goods come to, in cents of the build, filled up as the shop asks or as it pays:
// reckoned apart from the code, in whole numbers.
func (s *shop) landed(goods int64) int64 {
	one := func(goods int64) int64 {
		sum := goods
		if s.free < 0 || goods < s.free {
			sum += s.freight
		}
		sum += half(sum*s.customs, 100)
		sum += half(sum*s.tax, 100)
		return half(sum*s.rate, 100)
	}
	goods = max(goods, s.minimum)
	if s.free >= 0 {
		return min(one(goods), one(max(goods, s.free)))
	}
	return one(goods)
}

// reckoned is the market of a text that drawn wrote.
func reckoned(t require.TestingT, sys *bom.System) (shops []shop, lines [][]offered, needs []int) {
	cents := func(a currency.Amount) int64 {
		if a.CurrencyCode() == "" {
			return -1
		}
		n, err := a.Int64()
		require.NoError(t, err)
		return n
	}
	percent := func(p money.Percent) int64 {
		n, err := strconv.ParseInt(p.Number(), 10, 64)
		require.NoError(t, err)
		return n
	}
	at := map[*build.Vendor]int{}
	for i, v := range sys.Build.Vendors {
		at[v] = i
		x := v.Terms
		shops = append(shops, shop{max(0, cents(x.Freight)), cents(x.Minimum), cents(x.FreeFrom), percent(x.Customs), percent(x.Tax), map[string]int64{"NZD": 100, "EUR": 192, "USD": 168}[v.Currency]})
	}
	for _, it := range sys.Build.Items {
		if it.Kind.Boats {
			continue
		}
		var list []offered
		for _, o := range sys.Build.Offers {
			if o.Item == it.ID {
				list = append(list, offered{at[o.Vendor], int(o.Pack / money.Piece), cents(*o.Price)})
			}
		}
		if len(list) > 0 {
			lines, needs = append(lines, list), append(needs, int(it.Extra/money.Piece))
		}
	}
	return shops, lines, needs
}

// everything tries every number of packs of every offer of every line.
func everything(t require.TestingT, sys *bom.System) int64 {
	shops, lines, needs := reckoned(t, sys)
	goods := make([]int64, len(shops))
	bought := make([]int, len(shops))
	best := int64(math.MaxInt64)
	var line func(i int)
	var offers func(i, k, left int)
	line = func(i int) {
		if i < len(lines) {
			offers(i, 0, needs[i])
			return
		}
		total := int64(0)
		for v := range shops {
			if bought[v] > 0 {
				total += shops[v].landed(goods[v])
			}
		}
		best = min(best, total)
	}
	offers = func(i, k, left int) {
		if left <= 0 {
			line(i + 1)
			return
		}
		if k == len(lines[i]) {
			return
		}
		o := lines[i][k]
		for n := 0; n == 0 || (n-1)*o.pack < left; n++ {
			cost := int64(n*o.pack) * o.price
			goods[o.shop] += cost
			bought[o.shop] += n
			offers(i, k+1, left-n*o.pack)
			goods[o.shop] -= cost
			bought[o.shop] -= n
		}
	}
	line(0)
	return best
}

// The choice costs what the best of all plans costs, to the cent, every line bought in every way
// at every number of offers.
func TestShopsAgainstBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := drawn(t, rapid.IntRange(0, 3).Draw(t, "lines"), rapid.IntRange(1, 3).Draw(t, "shops"))
		c := chosen(t, text)
		require.True(t, c.Proved)
		require.Equal(t, c.Order.Total.Number(), c.Bound.Number(), "what was searched for is what the order costs")
		got, err := c.Order.Total.Int64()
		require.NoError(t, err)
		require.Equal(t, everything(t, walked(t, text)), got)
		whole(t, c.Order)
	})
}

// whole holds the shares of divided lines to the line: nothing is lost between them.
func whole(t require.TestingT, o *order.Order) {
	for _, l := range o.Lines {
		if len(l.Shares) == 0 {
			continue
		}
		require.Greater(t, len(l.Shares), 1)
		var sum, ordered money.Quantity
		for i, s := range l.Shares {
			share, of, ok := s.Number()
			require.Equal(t, []any{i + 1, len(l.Shares), true}, []any{share, of, ok})
			require.Positive(t, s.Need.Buy())
			up, err := s.Need.Buy().CeilTo(s.Offer.Pack)
			require.NoError(t, err)
			require.Equal(t, up, s.Order)
			sum, ordered = sum+s.Need.Buy(), ordered+s.Order
		}
		require.Equal(t, l.Need.Buy(), sum)
		require.Equal(t, l.Order, ordered)
	}
}

// In markets too large to try everything, the choice is never dearer than the plans it
// is set against, its order is what its bound says, and the same file gives the same plan.
func TestShopsProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := drawn(t, rapid.IntRange(5, 25).Draw(t, "lines"), rapid.IntRange(2, 5).Draw(t, "shops"))
		c := chosen(t, text)
		cmp, err := c.Order.Total.Cmp(c.Cheapest.Total)
		require.NoError(t, err)
		require.LessOrEqual(t, cmp, 0)
		if one, ok := bestOne(c); ok {
			cmp, err := c.Order.Total.Cmp(one.Order.Total)
			require.NoError(t, err)
			require.LessOrEqual(t, cmp, 0)
		}
		cmp, err = c.Bound.Cmp(c.Order.Total)
		require.NoError(t, err)
		require.LessOrEqual(t, cmp, 0)
		if c.Proved {
			require.Zero(t, cmp)
		}
		require.Equal(t, where(c.Order), where(chosen(t, text).Order))
	})
}

// Sixty lines that cost the same in two foreign shops differ by roundings only: the
// search stops at its bound and says so, and the bound lies within cents.
func TestNotProvedIsSaid(t *testing.T) {
	var b strings.Builder
	b.WriteString(head + vendor("elbe", "EUR", "freight = \"9.00\"\ncustoms = \"5 %\"\ntax = \"15 %\"") + vendor("quay", "EUR", "customs = \"5 %\"\ntax = \"15 %\""))
	b.WriteString(vendor("pier", "EUR", "customs = \"5 %\"\ntax = \"15 %\""))
	for i := range 60 {
		id := fmt.Sprintf("part-%d", i)
		b.WriteString(store(id, 1))
		for _, v := range []string{"elbe", "quay", "pier"} {
			b.WriteString(offer(id, v, fmt.Sprintf("%d.%02d", 3+i, 7*i%100), ""))
		}
	}
	c := chosen(t, b.String())
	require.False(t, c.Proved)
	gap, err := c.Order.Total.Sub(c.Bound)
	require.NoError(t, err)
	require.False(t, gap.IsNegative())
	cents, err := gap.Int64()
	require.NoError(t, err)
	require.LessOrEqual(t, cents, int64(10), "roundings of three shops")
}

func TestContextEnds(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err := Shops(ctx, walked(t, head+vendor("near", "NZD", "")+store("a", 1)+store("b", 1)+offer("a", "near", "1.00", "")+
		"[[option]]\nfor = \"a\"\nitem = \"b\"\n"))
	require.ErrorIs(t, err, context.Canceled)
}

func TestArrivals(t *testing.T) {
	o, err := walked(t, head+vendor("near", "NZD", `minimum = "50.00"`)+vendor("far", "NZD", "")+store("a", 1)+store("b", 1)+store("c", 1)+store("d", 1)+
		offer("a", "near", "10.00", `lead = "2 days"`)+offer("b", "near", "10.00", `lead = "3 weeks"`)+offer("c", "near", "1.00", "")+
		offer("d", "far", "1.00", `lead = "10 days"`)).Order()
	require.NoError(t, err)
	list := Arrivals(o)
	require.Len(t, list, 2)
	require.Equal(t, "b", list[0].Lines[0].Need.Key)
	require.InDelta(t, 21, list[0].Last.Days(), 1e-9)
	require.Len(t, list[0].Unknown, 1, "the line that fills up is not waited for")
	require.Equal(t, "c", list[0].Unknown[0].Need.Key)
	last, ok := Last(list)
	require.True(t, ok)
	require.Equal(t, "near", last.Vendor.ID)
	_, ok = Last(nil)
	require.False(t, ok)
}

func BenchmarkShops(b *testing.B) {
	for _, size := range []struct{ lines, shops int }{{60, 5}, {60, 12}, {400, 8}} {
		b.Run(fmt.Sprintf("%d lines, %d shops", size.lines, size.shops), func(b *testing.B) {
			sys := walked(b, large(size.lines, size.shops))
			proved := 0.0
			for b.Loop() {
				c, err := Shops(context.Background(), sys)
				require.NoError(b, err)
				if c.Proved {
					proved = 1
				}
			}
			b.ReportMetric(proved, "proved")
		})
	}
}

// large is a market whose prices wander about a middle one, as those of shops do.
func large(lines, shops int) string {
	var b strings.Builder
	b.WriteString(head)
	seed := uint32(1)
	next := func(n int) int {
		seed = seed*1664525 + 1013904223 // a linear congruential generator, Numerical Recipes (memory)
		return int(seed>>8) % n
	}
	for v := range shops {
		currency := []string{"NZD", "EUR", "USD"}[v%3]
		more := fmt.Sprintf("freight = \"%d.00\"\n", 10+next(60))
		if currency != "NZD" {
			more += "customs = \"5 %\"\ntax = \"15 %\"\n"
		}
		if v%2 == 0 {
			more += fmt.Sprintf("free_from = \"%d.00\"\n", 200+next(600))
		} else {
			more += fmt.Sprintf("minimum = \"%d.00\"\n", 20+next(80))
		}
		b.WriteString(vendor(fmt.Sprintf("shop-%d", v), currency, more))
	}
	for i := range lines {
		id := fmt.Sprintf("part-%d", i)
		b.WriteString(store(id, 1+next(4)))
		middle := 100 + next(8000)
		for v := range shops {
			if next(4) == 0 {
				continue
			}
			price := middle * (70 + next(60)) / 100 * 100 / []int{100, 231, 202}[v%3]
			b.WriteString(offer(id, fmt.Sprintf("shop-%d", v), fmt.Sprintf("%d.%02d", price/100, price%100), fmt.Sprintf("pack = %d", 1+next(3))))
		}
	}
	return b.String()
}

// Two shops sell both things: each thing is cheapest in another shop, and the two freights
// cost more than that saves.
const twoFreights = `
[build]
name = "Two"
currency = "EUR"
[[vendor]]
id = "a"
name = "A"
currency = "EUR"
freight = "20.00"
[[vendor]]
id = "b"
name = "B"
currency = "EUR"
freight = "20.00"
[[item]]
id = "x"
kind = "elbow"
extra = 1
ports = { a = '1/2 NPT male', b = '1/2 NPT female' }
[[item]]
id = "y"
kind = "tee"
extra = 1
ports = { a = '1/2 NPT male', b = '1/2 NPT female', branch = '1/2 NPT female' }
[[run]]
name = "r"
path = ["x", "y"]
[[offer]]
item = "x"
vendor = "a"
price = "10.00"
[[offer]]
item = "x"
vendor = "b"
price = "11.00"
[[offer]]
item = "y"
vendor = "a"
price = "11.00"
[[offer]]
item = "y"
vendor = "b"
price = "10.00"
`

// The order of the cheapest goods is told by how much it is dearer landed.
func TestAgainst(t *testing.T) {
	sys := walked(t, twoFreights)
	order, err := sys.Order()
	require.NoError(t, err)
	c, less, err := Against(context.Background(), sys, order)
	require.NoError(t, err)
	require.True(t, less)
	require.True(t, c.Proved)
	best, err := Shops(context.Background(), sys)
	require.NoError(t, err)
	require.Equal(t, best.Order.Total.Number(), c.Total.Number())
	sum, err := c.Total.Add(c.Saves)
	require.NoError(t, err)
	require.Equal(t, order.Total.Number(), sum.Number())

	_, less, err = Against(context.Background(), sys, best.Order)
	require.NoError(t, err)
	require.False(t, less, "nothing is cheaper than the best")

	one := walked(t, strings.Replace(twoFreights, "[[offer]]\nitem = \"x\"\nvendor = \"b\"\nprice = \"11.00\"\n[[offer]]\nitem = \"y\"\nvendor = \"a\"\nprice = \"11.00\"\n", "", 1))
	order, err = one.Order()
	require.NoError(t, err)
	_, less, err = Against(context.Background(), one, order)
	require.NoError(t, err)
	require.False(t, less, "where each thing has one offer there is nothing to choose")
}

func TestShareInPercent(t *testing.T) {
	for _, row := range [][3]string{{"108.93", "719.53", "15.1"}, {"1.00", "3.00", "33.3"}, {"0.00", "5.00", "0.0"}, {"1.00", "0.00", ""}} {
		a, err := currency.NewAmount(row[0], "EUR")
		require.NoError(t, err)
		b, err := currency.NewAmount(row[1], "EUR")
		require.NoError(t, err)
		require.Equal(t, row[2], share(a, b))
	}
}

// bestOne is the cheapest of the shops that have it all; false if none has.
func bestOne(c *Choice) (best OneShop, ok bool) {
	for _, one := range c.One {
		if one.Order == nil {
			continue
		}
		if ok {
			if cmp, err := one.Order.Total.Cmp(best.Order.Total); err != nil || cmp >= 0 {
				continue
			}
		}
		best, ok = one, true
	}
	return best, ok
}
