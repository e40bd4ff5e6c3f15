package order

import (
	"fmt"
	"slices"

	"github.com/bojanz/currency"

	"handtight/bom/build"
	"handtight/bom/cut"
	"handtight/bom/money"
	"handtight/bom/rating"
	"handtight/bom/state"
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
	Need   *Need
	Offer  *build.Offer   // nil if no shop offers it
	Order  money.Quantity // rounded up to the shop's packs
	Total  *currency.Amount
	Cut    *cut.Plan // of hose stock
	Filler bool      // not needed: it fills an order up to what the shop asks
}

// VendorOrder is what one shop's part comes to.
type VendorOrder struct {
	Vendor      *build.Vendor
	Lines       []*Line
	Sums        money.Sums
	FreightFree bool            // the goods reach the value from which freight is free
	InBuild     currency.Amount // Sums.Total converted once
}

// Of prices what the build needs: each line at the offer that is cheapest for
// its own quantity, each shop's freight, customs and tax, and each shop's total
// converted once. An order below a shop's minimum is filled up to it.
func Of(states *state.States, ratings *rating.Ratings) (*Order, error) {
	return At(states, ratings, nil, nil)
}

// At prices what the build needs at chosen offers, by the need's key; where none is
// named, at the cheapest. Shops in toFree have their orders filled up to the value of
// goods from which their freight is free.
func At(states *state.States, ratings *rating.Ratings, at map[string]*build.Offer, toFree map[*build.Vendor]bool) (*Order, error) {
	needs, err := Needs(states, ratings)
	if err != nil {
		return nil, err
	}
	o := &Order{}
	offers := states.Graph.Build.OffersByItem()
	for _, n := range needs {
		list := offers[n.Key]
		if chosen, ok := at[n.Key]; ok {
			list = []*build.Offer{chosen}
		}
		l, err := choose(states.Graph.Build, n, list)
		if err != nil {
			return nil, err
		}
		o.Lines = append(o.Lines, l)
		if l.Order > 0 && l.Total == nil {
			o.Unpriced++
		}
	}
	return o, o.addUp(states.Graph.Build, toFree)
}

// LineAt prices a need at one offer; false if the offer cannot serve it, since it has
// no length for one of the hoses. Total is nil where the offer has no price.
func LineAt(b *build.Build, n *Need, o *build.Offer) (*Line, bool, error) {
	need, plan, ok, err := cutting(n, o)
	if err != nil || !ok {
		return nil, false, err
	}
	l := &Line{Need: need, Offer: o, Cut: plan}
	if l.Order, err = need.Buy().CeilTo(o.Pack); err != nil {
		return nil, false, err
	}
	if plan != nil && len(o.Lengths) == 0 {
		reel(plan, l.Order)
	}
	if o.Price == nil {
		return l, true, nil
	}
	total, err := money.LineTotal(*o.Price, l.Order)
	if err != nil {
		return nil, false, err
	}
	l.Total = &total
	return l, true, nil
}

// choose takes the cheapest offer for a need; the first on a tie, and one without a
// price only if there is no other.
func choose(b *build.Build, n *Need, offers []*build.Offer) (*Line, error) {
	best := &Line{Need: n, Order: n.Buy()}
	var cost currency.Amount
	for _, o := range offers {
		l, ok, err := LineAt(b, n, o)
		if err != nil {
			return nil, err
		}
		if !ok {
			continue
		}
		if l.Total == nil {
			if best.Offer == nil {
				best = l
			}
			continue
		}
		here, err := b.Rates.Convert(*l.Total)
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

// addUp adds up each shop and the whole.
func (o *Order) addUp(b *build.Build, toFree map[*build.Vendor]bool) error {
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
		fill, lacks, err := fill(v, goods, toFree[v])
		if err != nil {
			return err
		}
		if lacks {
			vo.Lines, o.Lines = append(vo.Lines, fill), append(o.Lines, fill)
			goods = append(goods, *fill.Total)
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

// fill makes the line that fills an order up to the shop's minimum, or to free freight.
func fill(v *build.Vendor, goods []currency.Amount, toFree bool) (*Line, bool, error) {
	lack, lacks, err := v.Terms.Lack(goods, toFree)
	if err != nil || !lacks {
		return nil, false, err
	}
	why := "it takes no order below " + v.Terms.Minimum.String()
	if _, below, err := v.Terms.Lack(goods, false); err != nil || !below || toFree {
		why = fmt.Sprintf("from %s on its freight of %s is free, which saves more than this costs", v.Terms.FreeFrom, v.Terms.Freight)
	}
	key := "anything more from " + v.ID
	n := &Need{Key: key, About: "something else of use: " + why, Unit: "pc", Spare: money.Piece}
	n.Advice = []Why{{Rule: "filling up", Count: money.Piece, Text: why}}
	return &Line{
		Need: n, Order: money.Piece, Total: &lack, Filler: true,
		Offer: &build.Offer{Item: key, Vendor: v, Price: &lack, Pack: money.Piece},
	}, true, nil
}

func (vo *VendorOrder) sum(goods []currency.Amount, b *build.Build) error {
	terms := vo.Vendor.Terms
	if terms.Freight.CurrencyCode() == "" {
		zero, err := currency.NewAmount("0", vo.Vendor.Currency)
		if err != nil {
			return err
		}
		terms.Freight = zero
	}
	var err error
	if vo.Sums, err = money.LandedCost(goods, terms); err != nil {
		return err
	}
	vo.FreightFree = len(goods) > 0 && terms.Freight.IsPositive() && vo.Sums.Freight.IsZero()
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
