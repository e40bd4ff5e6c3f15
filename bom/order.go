package bom

import (
	"slices"

	"github.com/bojanz/currency"

	"handtight/bom/money"
)

// Order is the priced shopping list.
type Order struct {
	Lines    []*Line
	Vendors  []*VendorOrder // shops that something is bought from, in the order of the files
	Total    currency.Amount
	Unpriced int // lines to be bought without a price: the total is without them
}

// Line is one thing to buy, at one shop.
type Line struct {
	Need  *Need
	Offer *Offer         // nil if no shop offers it
	Order money.Quantity // rounded up to the shop's packs
	Total *currency.Amount
}

// VendorOrder is what one shop's part comes to.
type VendorOrder struct {
	Vendor  *Vendor
	Lines   []*Line
	Sums    money.Sums
	InBuild currency.Amount // Sums.Total converted once
}

// Order prices what the build needs: each line at the offer that is cheapest for
// its own quantity, each shop's freight, customs and tax, and each shop's total
// converted once.
func (s *System) Order() (*Order, error) {
	needs, err := s.Needs()
	if err != nil {
		return nil, err
	}
	o := &Order{}
	offers := s.Build.offersByItem()
	for _, n := range needs {
		l, err := s.Build.line(n, offers[n.Key])
		if err != nil {
			return nil, err
		}
		o.Lines = append(o.Lines, l)
		if l.Order > 0 && l.Total == nil {
			o.Unpriced++
		}
	}
	return o, o.settle(s.Build)
}

func (b *Build) offersByItem() map[string][]*Offer {
	out := map[string][]*Offer{}
	for _, o := range b.Offers {
		out[o.Item] = append(out[o.Item], o)
	}
	return out
}

// line chooses the cheapest offer for a need; the first on a tie, and one without a
// price only if there is no other.
func (b *Build) line(n *Need, offers []*Offer) (*Line, error) {
	best := &Line{Need: n, Order: n.Buy()}
	var cost currency.Amount
	for _, o := range offers {
		l := &Line{Need: n, Offer: o}
		var err error
		if l.Order, err = n.Buy().CeilTo(o.Pack); err != nil {
			return nil, err
		}
		if o.Price == nil {
			if best.Offer == nil {
				best = l
			}
			continue
		}
		total, err := money.LineTotal(*o.Price, l.Order)
		if err != nil {
			return nil, err
		}
		l.Total = &total
		here, err := b.Rates.Convert(total)
		if err != nil {
			return nil, err
		}
		if best.Total == nil || less(here, cost) {
			best, cost = l, here
		}
	}
	return best, nil
}

func less(a, b currency.Amount) bool {
	c, err := a.Cmp(b)
	return err == nil && c < 0
}

// settle adds up each shop and the whole.
func (o *Order) settle(b *Build) error {
	var totals []currency.Amount
	for _, v := range b.Vendors {
		vo := &VendorOrder{Vendor: v}
		var goods []currency.Amount
		for _, l := range o.Lines {
			if l.Offer == nil || l.Offer.Vendor != v {
				continue
			}
			vo.Lines = append(vo.Lines, l)
			if l.Order > 0 && l.Total != nil {
				goods = append(goods, *l.Total)
			}
		}
		if len(vo.Lines) == 0 {
			continue
		}
		if err := vo.sum(goods, b); err != nil {
			return err
		}
		o.Vendors = append(o.Vendors, vo)
		totals = append(totals, vo.Sums.Total)
	}
	var err error
	o.Total, err = b.Rates.Total(totals)
	return err
}

func (vo *VendorOrder) sum(goods []currency.Amount, b *Build) error {
	terms := vo.Vendor.Terms
	if terms.Freight.CurrencyCode() == "" {
		zero, err := currency.NewAmount("0", vo.Vendor.Currency)
		if err != nil {
			return err
		}
		terms.Freight = zero
	}
	var err error
	if vo.Sums, err = money.Settle(goods, terms); err != nil {
		return err
	}
	vo.InBuild, err = b.Rates.Convert(vo.Sums.Total)
	return err
}

// Unoffered lists the lines to be bought that no shop offers.
func (o *Order) Unoffered() []*Line {
	return slices.Collect(func(yield func(*Line) bool) {
		for _, l := range o.Lines {
			if l.Offer == nil && l.Order > 0 && !yield(l) {
				return
			}
		}
	})
}
