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
// Hose that is cut is not divided, nor a line of more than a thousand packs or one that the order
// divides already, and no division is taken that leaves a shop below its minimum. [Shops] divides
// all lines together.
//
// Errors: those of the sums.
func Splits(sys *bom.System, o *order.Order) ([]Split, error) {
	d := newSplitter(sys, o)
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

// splitter holds what each shop comes to as the order stands.
type splitter struct {
	rates *money.Rates
	o     *order.Order
	sum   map[*build.Vendor]currency.Amount // of goods; none where nothing is bought
	lines map[*build.Vendor]int             // that are bought there, with a price
	here  map[*build.Vendor]currency.Amount // the shop's total in the build's currency
}

func newSplitter(sys *bom.System, o *order.Order) *splitter {
	d := &splitter{&sys.Build.Rates, o, map[*build.Vendor]currency.Amount{}, map[*build.Vendor]int{}, map[*build.Vendor]currency.Amount{}}
	for _, v := range o.Vendors {
		d.sum[v.Vendor], d.here[v.Vendor] = v.Sums.Goods, v.InBuild
	}
	for _, l := range o.Bought() {
		if l.Offer != nil && l.Order > 0 && l.Total != nil {
			d.lines[l.Offer.Vendor]++
		}
	}
	return d
}

// best finds the cheapest division of one line.
func (d *splitter) best(l *order.Line, offers []*build.Offer) (best Split, found bool, err error) {
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

// moved is what is put to a shop, or taken away where less is set.
type moved struct {
	shop *build.Vendor
	sum  currency.Amount
	less bool
}

// price reckons the whole order with one line divided; false where a shop takes no such order.
// Only the shops that the line is moved between are reckoned again.
func (d *splitter) price(s *Split, line *order.Line) (bool, error) {
	a, err := money.LineTotal(*s.First.Price, s.AtFirst)
	if err != nil {
		return false, err
	}
	b, err := money.LineTotal(*s.Second.Price, s.AtSecond)
	if err != nil {
		return false, err
	}
	parts := []moved{{line.Offer.Vendor, *line.Total, true}, {s.First.Vendor, a, false}, {s.Second.Vendor, b, false}}
	s.Total = d.o.Total
	for i, p := range parts {
		if slices.ContainsFunc(parts[:i], func(q moved) bool { return q.shop == p.shop }) {
			continue
		}
		now, ok, err := d.shop(p.shop, parts)
		if err != nil || !ok {
			return false, err
		}
		if was, bought := d.here[p.shop]; bought {
			if now, err = now.Sub(was); err != nil {
				return false, err
			}
		}
		if s.Total, err = s.Total.Add(now); err != nil {
			return false, err
		}
	}
	return true, nil
}

// shop is what one shop comes to with the parts that are its own, in the build's currency.
func (d *splitter) shop(v *build.Vendor, parts []moved) (currency.Amount, bool, error) {
	goods, bought := d.sum[v]
	lines := d.lines[v]
	var err error
	for _, p := range parts {
		switch {
		case p.shop != v:
			continue
		case !bought:
			goods, bought = p.sum, true
			lines++
			continue
		case p.less:
			goods, err = goods.Sub(p.sum)
			lines--
		default:
			goods, err = goods.Add(p.sum)
			lines++
		}
		if err != nil {
			return goods, false, err
		}
	}
	if lines == 0 {
		zero, err := currency.NewAmount("0", d.o.Total.CurrencyCode())
		return zero, err == nil, err
	}
	list := []currency.Amount{goods}
	if _, lacks, err := v.Terms.Lack(list, false); err != nil || lacks {
		return goods, false, err
	}
	sums, err := money.LandedCost(list, v.Terms)
	if err != nil {
		return goods, false, err
	}
	here, err := d.rates.Convert(sums.Total)
	return here, err == nil, err
}
