package order_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/bojanz/currency"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/internal/built"
	"handtight/bom/money"
	"handtight/bom/order"
	"handtight/bom/read"
)

func offer(item, vendor, price, more string) string {
	text := fmt.Sprintf("[[offer]]\nitem = %q\nvendor = %q\n", item, vendor)
	if price != "" {
		text += fmt.Sprintf("price = %q\n", price)
	}
	return text + more + "\n"
}

// An order worked by hand, from the counts of TestNeeds.
//
//	housing    2 at elbe  20.00 EUR = 40.00 EUR = 76.80 NZD   (wharf 85.00 NZD, pier 50.00 USD = 84.00 NZD)
//	nipple     3 at elbe   3.335 EUR = 10.005, half up 10.01 EUR
//	block      4 at elbe   1.1125 EUR = 4.45 EUR
//	cartridge 10 at pier   5.99 USD, packs of 5 = 59.90 USD = 100.63 NZD
//	              (elbe 5.55 EUR = 55.50 EUR = 106.56 NZD; wharf 12 in packs of 4, 9.80 = 117.60 NZD)
//	kit        5 at pier  96.50 USD = 482.50 USD
//	hose     2.1 m, 3 m at wharf 14.90 = 44.70 NZD
//	clamps     5, 10 in a pack at wharf 2.20 = 22.00 NZD
//	oil        2 at wharf, no price; tape 1, no offer; tail 0
//
//	elbe:  goods 54.46, freight 48.00; customs 5 % of 102.46 = 5.123 -> 5.12;
//	       tax 15 % of 107.58 = 16.137 -> 16.14; total 123.72 EUR x 1.92 = 237.5424 -> 237.54 NZD
//	pier:  goods 542.40, freight 85.00; customs 5 % of 627.40 = 31.37;
//	       tax 15 % of 658.77 = 98.8155 -> 98.82; total 757.59 USD x 1.68 = 1272.7512 -> 1272.75 NZD
//	wharf: goods 66.70, freight 12.00; total 78.70 NZD
//	all:   237.54 + 1272.75 + 78.70 = 1588.99 NZD
func TestOrder(t *testing.T) {
	text := store +
		offer("housing", "wharf", "42.50", "") + offer("housing", "elbe", "20.00", "") + offer("housing", "pier", "25.00", "") +
		offer("nipple", "elbe", "3.335", "") + offer("block", "elbe", "1.1125", "") +
		offer("cartridge", "wharf", "9.80", "pack = 4") + offer("cartridge", "elbe", "5.55", "") + offer("cartridge", "pier", "5.99", "pack = 5") +
		offer("kit", "pier", "96.50", "") + offer("hose", "wharf", "14.90", "per = \"m\"") +
		offer("clamp for 19 mm hose", "wharf", "2.20", "pack = 10") + offer("oil", "wharf", "", "") + offer("tail", "elbe", "6.35", "")
	o, err := built.Walk(t, "store.toml", text).Order()
	require.NoError(t, err)
	type line struct{ key, vendor, order, total string }
	var got []line
	for _, l := range o.Lines {
		row := line{key: l.Need.Key, order: l.Order.String(), total: "-"}
		if l.Offer != nil {
			row.vendor = l.Offer.Vendor.ID
		}
		if l.Total != nil {
			row.total = l.Total.Number() + " " + l.Total.CurrencyCode()
		}
		got = append(got, row)
	}
	require.Equal(t, []line{
		{"housing", "elbe", "2", "40.00 EUR"}, {"nipple", "elbe", "3", "10.01 EUR"}, {"tail", "elbe", "0", "0.00 EUR"},
		{"hose", "wharf", "3", "44.70 NZD"}, {"cartridge", "pier", "10", "59.90 USD"}, {"block", "elbe", "4", "4.45 EUR"},
		{"kit", "pier", "5", "482.50 USD"}, {"oil", "wharf", "2", "-"}, {"clamp for 19 mm hose", "wharf", "10", "22.00 NZD"}, {"tape 12 mm", "", "1", "-"},
	}, got)
	sums := map[string][6]string{}
	for _, v := range o.Vendors {
		s := v.Sums
		sums[v.Vendor.ID] = [6]string{s.Goods.Number(), s.Freight.Number(), s.Customs.Number(), s.Tax.Number(), s.Total.Number(), v.InBuild.Number()}
	}
	require.Equal(t, map[string][6]string{
		"elbe":  {"54.46", "48.00", "5.12", "16.14", "123.72", "237.54"},
		"pier":  {"542.40", "85.00", "31.37", "98.82", "757.59", "1272.75"},
		"wharf": {"66.70", "12.00", "0.00", "0.00", "78.70", "78.70"},
	}, sums)
	require.Equal(t, "1588.99 NZD", o.Total.String())
	require.Equal(t, 2, o.Unpriced, "the oil and the tape: the total is without them")
	require.Len(t, o.Unoffered(), 1)
	require.Equal(t, "tape 12 mm", o.Unoffered()[0].Need.Key)
}

// The first of two offers that come to the same is taken, and an offer without a price
// only where there is no other.
func TestOfferChosen(t *testing.T) {
	for _, c := range []struct{ why, offers, vendor, total string }{
		{"the first on a tie", offer("kit", "wharf", "10.00", "") + offer("kit", "wharf", "10.00", "code = \"second\""), "wharf", "50.00"},
		{"a price, though another without one stands first", offer("kit", "elbe", "", "") + offer("kit", "wharf", "10.00", ""), "wharf", "50.00"},
		{"no price is not free", offer("kit", "wharf", "10.00", "") + offer("kit", "elbe", "", ""), "wharf", "50.00"},
		{"a price of nothing is free", offer("kit", "wharf", "10.00", "") + offer("kit", "elbe", "0.00", ""), "elbe", "0.00"},
		{"the pack counts: 5 x 10.00 against 50 x 1.50", offer("kit", "wharf", "1.50", "pack = 50") + offer("kit", "wharf", "10.00", ""), "wharf", "50.00"},
	} {
		o, err := built.Walk(t, "store.toml", store+c.offers).Order()
		require.NoError(t, err)
		for _, l := range o.Lines {
			if l.Need.Key == "kit" {
				require.Equal(t, c.vendor, l.Offer.Vendor.ID, c.why)
				require.Equal(t, c.total, l.Total.Number(), c.why)
				require.NotEqual(t, "second", l.Offer.Code, c.why)
			}
		}
	}
}

// A shop that nothing is bought from charges no freight; without offers all is nothing.
func TestNoFreightForNothing(t *testing.T) {
	o, err := built.Walk(t, "store.toml", store).Order()
	require.NoError(t, err)
	require.Empty(t, o.Vendors)
	require.Equal(t, "0.00 NZD", o.Total.String())
	o, err = built.Walk(t, "store.toml", store+offer("tail", "elbe", "6.35", "")).Order()
	require.NoError(t, err)
	require.Equal(t, "0.00 NZD", o.Total.String(), "the tails are aboard: nothing is shipped")
}

// Five kits where three come in a box: a box and two single ones, at the shop where that is least,
// whichever shop stands first. Worked by hand, in the build's money (EUR at 1.92).
func TestPacksOfOneShopAreMixed(t *testing.T) {
	for _, c := range []struct {
		why, offers, order string
		shares             []string
		total              string
	}{
		{"a box and two", offer("kit", "wharf", "10.00", "") + offer("kit", "wharf", "7.00", "pack = 3"), "5", []string{"3 of 3: 21.00", "2 of 1: 20.00"}, "41.00"},
		{"the same behind another shop", offer("kit", "elbe", "9.00", "") + offer("kit", "wharf", "10.00", "") + offer("kit", "wharf", "7.00", "pack = 3"), "5", []string{"3 of 3: 21.00", "2 of 1: 20.00"}, "41.00"},
		{"two boxes are less than a box and two", offer("kit", "wharf", "15.00", "") + offer("kit", "wharf", "7.00", "pack = 3"), "6", nil, "42.00"},
		{"single ones are less", offer("kit", "wharf", "6.00", "") + offer("kit", "wharf", "7.00", "pack = 3"), "5", nil, "30.00"},
		{"of two shops each alone is dearer than its mix", offer("kit", "wharf", "10.00", "") + offer("kit", "elbe", "4.00", "pack = 4") + offer("kit", "wharf", "7.00", "pack = 3") + offer("kit", "elbe", "5.00", ""), "5", []string{"4 of 4: 16.00", "1 of 1: 5.00"}, "21.00"},
	} {
		o, err := built.Walk(t, "store.toml", store+c.offers).Order()
		require.NoError(t, err, c.why)
		for _, l := range o.Lines {
			if l.Need.Key != "kit" {
				continue
			}
			require.Equal(t, c.order, l.Order.String(), c.why)
			var shares []string
			for _, s := range l.Shares {
				shares = append(shares, fmt.Sprintf("%s of %s: %s", s.Order, s.Offer.Pack, s.Total.Number()))
			}
			require.Equal(t, c.shares, shares, c.why)
			require.Equal(t, c.total, o.Vendors[0].Sums.Goods.Number(), c.why)
		}
	}
}

// An order below what a shop takes is filled up by a line of its own, which says why; so is one
// that comes to free freight for less than the freight. Freight is said to be free only of
// goods that are paid for.
func TestFillingUp(t *testing.T) {
	low := strings.Replace(store, "id = \"wharf\"\ncurrency = \"NZD\"\n", "id = \"wharf\"\ncurrency = \"NZD\"\nminimum = \"60.00\"\nfree_from = \"45.00\"\n", 1)
	o, err := built.Walk(t, "store.toml", low+offer("kit", "wharf", "10.00", "")).Order()
	require.NoError(t, err)
	filler := o.Lines[len(o.Lines)-1]
	require.True(t, filler.Filler)
	require.Equal(t, "anything more from wharf", filler.Need.Key)
	require.Equal(t, "10.00 NZD", filler.Total.String(), "50.00 of kits, and no order below 60.00")
	require.Len(t, filler.Need.Advice, 1)
	require.Equal(t, "it takes no order below 60.00 NZD", filler.Need.Advice[0].Text)
	require.Equal(t, money.Piece, filler.Need.Advice[0].Count)
	require.True(t, o.Vendors[0].FreightFree)
	require.Equal(t, "60.00", o.Vendors[0].Sums.Total.Number())

	o, err = built.Walk(t, "store.toml", store+offer("kit", "wharf", "10.00", "")).Order()
	require.NoError(t, err)
	require.False(t, o.Lines[len(o.Lines)-1].Filler, "no minimum, nothing to fill up")
	require.False(t, o.Vendors[0].FreightFree)

	o, err = built.Walk(t, "store.toml", store+offer("oil", "wharf", "", "")).Order()
	require.NoError(t, err)
	require.Len(t, o.Vendors, 1)
	require.False(t, o.Vendors[0].FreightFree, "nothing is known to be paid for: its freight is not free, it is not known")
}

// The total is the sum of the shops, a shop's goods the sum of its lines, every line a
// whole number of packs that covers the need, at the offer that is cheapest.
func TestOrderAddsUp(t *testing.T) {
	items := []string{"housing", "nipple", "tail", "hose", "cartridge", "block", "kit", "oil", "clamp for 19 mm hose", "tape 12 mm"}
	rapid.Check(t, func(t *rapid.T) {
		var text strings.Builder
		text.WriteString(store)
		for range rapid.IntRange(0, 20).Draw(t, "offers") {
			price := fmt.Sprintf("%d.%03d", rapid.IntRange(0, 300).Draw(t, "whole"), rapid.IntRange(0, 999).Draw(t, "part"))
			if rapid.IntRange(0, 9).Draw(t, "priced") == 0 {
				price = ""
			}
			text.WriteString(offer(rapid.SampledFrom(items).Draw(t, "item"), rapid.SampledFrom([]string{"elbe", "pier", "wharf"}).Draw(t, "vendor"),
				price, fmt.Sprintf("pack = %d", rapid.IntRange(1, 7).Draw(t, "pack"))))
		}
		build, faults := read.Parse("store.toml", []byte(text.String()))
		require.NoError(t, faults.Err())
		sys, faults := bom.Walk(build)
		require.NoError(t, faults.Err())
		o, err := sys.Order()
		require.NoError(t, err)
		sum := zeroOf(t, "NZD")
		for _, v := range o.Vendors {
			goods := zeroOf(t, v.Vendor.Currency)
			for _, l := range v.Lines {
				if l.Order > 0 && l.Total != nil {
					goods = plus(t, goods, *l.Total)
				}
			}
			require.Equal(t, goods.Number(), v.Sums.Goods.Number())
			sum = plus(t, sum, v.InBuild)
		}
		require.Equal(t, sum.Number(), o.Total.Number())
		for _, l := range o.Lines {
			cheapest(t, build, l)
		}
	})
}

func cheapest(t *rapid.T, build *build.Build, l *order.Line) {
	if l.Offer != nil {
		require.GreaterOrEqual(t, l.Order, l.Need.Buy())
	}
	if l.Offer != nil && len(l.Shares) == 0 {
		require.Less(t, l.Order, l.Need.Buy()+l.Offer.Pack)
		require.Zero(t, l.Order%l.Offer.Pack)
	}
	var divided money.Quantity
	for _, x := range l.Shares {
		require.Zero(t, x.Order%x.Offer.Pack)
		divided += x.Order
	}
	if len(l.Shares) > 0 {
		require.Equal(t, l.Order, divided)
	}
	for _, o := range build.Offers {
		if o.Item != l.Need.Key || o.Price == nil {
			continue
		}
		packs := (l.Need.Buy() + o.Pack - 1) / o.Pack
		other, err := money.LineTotal(*o.Price, packs*o.Pack)
		require.NoError(t, err)
		here, err := build.Rates.Convert(other)
		require.NoError(t, err)
		bought := l.Shares
		if len(bought) == 0 {
			bought = []*order.Line{l}
		}
		chosen := zeroOf(t, "NZD")
		for _, x := range bought {
			require.NotNil(t, x.Total, "a price is there")
			part, err := build.Rates.Convert(*x.Total)
			require.NoError(t, err)
			chosen = plus(t, chosen, part)
		}
		order, err := here.Cmp(chosen)
		require.NoError(t, err)
		require.GreaterOrEqual(t, order, 0, "%s at %s is dearer than at %s", l.Need.Key, l.Offer.Vendor.ID, o.Vendor.ID)
	}
}

func zeroOf(t require.TestingT, code string) currency.Amount {
	a, err := currency.NewAmount("0.00", code)
	require.NoError(t, err)
	return a
}

func plus(t require.TestingT, a, b currency.Amount) currency.Amount {
	sum, err := a.Add(b)
	require.NoError(t, err)
	return sum
}
