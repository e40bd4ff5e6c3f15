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

// Line is one thing to buy, at one shop; or at several, in shares.
type Line struct {
	Need   *Need
	Offer  *build.Offer     // nil if no shop offers it; of a divided line that of its largest share
	Order  money.Quantity   // rounded up to the shop's packs
	Total  *currency.Amount // nil where no price is known, and of a divided line: its shares have theirs
	Cut    *cut.Plan        // of hose stock
	Filler bool             // not needed: it fills an order up to what the shop asks
	Shares []*Line          // of a divided line: what is ordered at each offer, with its part of the need
	Of     *Line            // of a share: the line that is divided
	Mark   string           // of a second share at one shop: what tells it from the first, the shop's code or the pack
}

// VendorOrder is what one shop's part comes to.
type VendorOrder struct {
	Vendor      *build.Vendor
	Lines       []*Line
	Sums        money.Sums
	FreightFree bool            // the goods reach the value from which freight is free
	InBuild     currency.Amount // Sums.Total converted once
}

// Of prices what the build needs: each line at the shop whose goods are cheapest for its own
// quantity, there in the packs that come to least, which may be those of several offers; each
// shop's freight, customs and tax, and each shop's total converted once. An order below a
// shop's minimum is filled up to it.
func Of(states *state.States, ratings *rating.Ratings) (*Order, error) {
	return At(states, ratings, nil, nil)
}

// At prices what the build needs at chosen offers, by the need's key; where none is
// named, at the cheapest. One share is the whole line, whatever it says to order. Shops in
// toFree have their orders filled up to the value of goods from which their freight is free.
func At(states *state.States, ratings *rating.Ratings, at map[string][]Share, toFree map[*build.Vendor]bool) (*Order, error) {
	needs, err := Needs(states, ratings)
	if err != nil {
		return nil, err
	}
	o := &Order{}
	offers := states.Graph.Build.OffersByItem()
	for _, n := range needs {
		l, err := lineOf(states.Graph.Build, n, offers[n.Key], at[n.Key])
		if err != nil {
			return nil, err
		}
		o.Lines = append(o.Lines, l)
		if l.Order > 0 && l.Total == nil && len(l.Shares) == 0 {
			o.Unpriced++
		}
	}
	return o, o.addUp(states.Graph.Build, toFree)
}

// lineOf makes the line of a need: as it is chosen, else where it is cheapest.
func lineOf(b *build.Build, n *Need, offers []*build.Offer, chosen []Share) (*Line, error) {
	switch len(chosen) {
	case 0:
		return cheapest(b, n, offers)
	case 1:
		return cheapestOne(b, n, []*build.Offer{chosen[0].Offer})
	}
	return divided(n, chosen)
}

// LineAt prices a need at one offer; false if the offer cannot serve it, since it has
// no length for one of the hoses. Total is nil where the offer has no price.
func LineAt(n *Need, o *build.Offer) (*Line, bool, error) {
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

// cheapest takes the shop whose goods are cheapest for a need, there in the packs that come to
// least; the first on a tie, and an offer without a price only if there is no other.
func cheapest(b *build.Build, n *Need, offers []*build.Offer) (*Line, error) {
	one, err := cheapestOne(b, n, offers)
	pieces, divisible := n.Divisible()
	if err != nil || !divisible || one.Total == nil {
		return one, err
	}
	least, err := b.Rates.Convert(*one.Total)
	if err != nil {
		return nil, err
	}
	best := one
	for _, list := range byShop(offers) {
		if len(list) < 2 {
			continue
		}
		l, err := packed(n, pieces, list)
		if err != nil {
			return nil, err
		}
		here, err := goodsOf(b, l)
		if err != nil {
			return nil, err
		}
		if less(here, least) {
			best, least = l, here
		}
	}
	return best, nil
}

// byShop gathers offers with a price by their shop, in the order of the file.
func byShop(offers []*build.Offer) [][]*build.Offer {
	var out [][]*build.Offer
	for _, o := range offers {
		if o.Price == nil {
			continue
		}
		at := slices.IndexFunc(out, func(l []*build.Offer) bool { return l[0].Vendor == o.Vendor })
		if at < 0 {
			at, out = len(out), append(out, nil)
		}
		out[at] = append(out[at], o)
	}
	return out
}

// packed is a need at offers of one shop, in the packs that come to least.
func packed(n *Need, pieces int, offers []*build.Offer) (*Line, error) {
	p, err := NewPacking(pieces, offers)
	if err != nil {
		return nil, err
	}
	shares := p.Shares(pieces)
	if len(shares) > 1 {
		return divided(n, shares)
	}
	l, _, err := LineAt(n, shares[0].Offer)
	return l, err
}

// goodsOf is what the goods of a line come to, in the build's currency and without rounding twice
// where one shop sells them all.
func goodsOf(b *build.Build, l *Line) (currency.Amount, error) {
	var sum currency.Amount
	for i, s := range l.bought() {
		if i == 0 {
			sum = *s.Total
			continue
		}
		var err error
		if sum, err = sum.Add(*s.Total); err != nil {
			return sum, err
		}
	}
	return b.Rates.Convert(sum)
}

// cheapestOne takes the cheapest offer for a need; the first on a tie, and one without a
// price only if there is no other.
func cheapestOne(b *build.Build, n *Need, offers []*build.Offer) (*Line, error) {
	best := &Line{Need: n, Order: n.Buy()}
	var cost currency.Amount
	for _, o := range offers {
		l, ok, err := LineAt(n, o)
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
		for _, l := range o.Bought() {
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
