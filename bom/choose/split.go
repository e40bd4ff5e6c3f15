package choose

import (
	"cmp"
	"slices"

	"github.com/bojanz/currency"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/money"
	"handtight/bom/order"
)

// Split is one line of an order bought at two offers: so many whole packs at one, the rest at
// the other, in whole packs too.
type Split struct {
	Item          string
	First, Second *build.Offer
	AtFirst       money.Quantity
	AtSecond      money.Quantity
	Total         currency.Amount // of the whole order, landed, with this line split and no other
	Saves         currency.Amount
}

// mostPacks is how many ways to divide a line between two offers are tried.
const mostPacks = 1000

// Splits finds for each line of an order the two offers that it is best divided between, where
// that costs less than the order as it stands: landed, with freight, free freight, customs and
// tax of both shops, and all other lines where they are. Each stands alone: two at once may
// save less than both. The greatest saving comes first.
//
// Hose that is cut is not divided, nor a line of more than a thousand packs, and no division
// is taken that leaves a shop below its minimum.
//
// Errors: those of the sums.
func Splits(sys *bom.System, o *order.Order) ([]Split, error) {
	d := &divider{rates: &sys.Build.Rates, o: o}
	offers := sys.Build.OffersByItem()
	var out []Split
	for _, l := range o.Lines {
		if l.Total == nil || l.Filler || l.Need.Unit == "m" || l.Need.Buy() == 0 {
			continue
		}
		best, found, err := d.best(l, offers[l.Need.Key])
		if err != nil {
			return nil, err
		}
		if found {
			out = append(out, best)
		}
	}
	slices.SortStableFunc(out, func(a, b Split) int {
		c, _ := b.Saves.Cmp(a.Saves)
		return cmp.Compare(c, 0)
	})
	return out, nil
}

type divider struct {
	rates *money.Rates
	o     *order.Order
}

// best finds the cheapest division of one line.
func (d *divider) best(l *order.Line, offers []*build.Offer) (best Split, found bool, err error) {
	need := l.Need.Buy()
	for _, a := range offers {
		for _, b := range offers {
			if a == b || a.Price == nil || b.Price == nil || a.Lengths != nil || b.Lengths != nil || need/a.Pack > mostPacks {
				continue
			}
			for first := a.Pack; first < need; first += a.Pack {
				s := Split{Item: l.Need.Key, First: a, Second: b, AtFirst: first}
				if s.AtSecond, err = (need - first).CeilTo(b.Pack); err != nil {
					return best, false, err
				}
				ok, err := d.price(&s, l)
				if err != nil {
					return best, false, err
				}
				if !ok || found && !less(s.Total, best.Total) || !less(s.Total, d.o.Total) {
					continue
				}
				best, found = s, true
			}
		}
	}
	if found {
		best.Saves, err = d.o.Total.Sub(best.Total)
	}
	return best, found, err
}

func less(a, b currency.Amount) bool {
	c, err := a.Cmp(b)
	return err == nil && c < 0
}

// price reckons the whole order with one line divided; false where a shop takes no such order.
func (d *divider) price(s *Split, line *order.Line) (bool, error) {
	goods := map[*build.Vendor][]currency.Amount{}
	var shops []*build.Vendor
	put := func(v *build.Vendor, sum currency.Amount) {
		if goods[v] == nil {
			shops = append(shops, v)
		}
		goods[v] = append(goods[v], sum)
	}
	for _, l := range d.o.Lines {
		if l != line && l.Offer != nil && l.Order > 0 && l.Total != nil {
			put(l.Offer.Vendor, *l.Total)
		}
	}
	for _, part := range []struct {
		offer *build.Offer
		count money.Quantity
	}{{s.First, s.AtFirst}, {s.Second, s.AtSecond}} {
		sum, err := money.LineTotal(*part.offer.Price, part.count)
		if err != nil {
			return false, err
		}
		put(part.offer.Vendor, sum)
	}
	var totals []currency.Amount
	for _, v := range shops {
		if _, lacks, err := v.Terms.Lack(goods[v], false); err != nil || lacks {
			return false, err
		}
		sums, err := money.Settle(goods[v], v.Terms)
		if err != nil {
			return false, err
		}
		totals = append(totals, sums.Total)
	}
	var err error
	s.Total, err = d.rates.Total(totals)
	return err == nil, err
}
