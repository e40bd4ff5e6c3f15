package order

import (
	"fmt"
	"math"

	"handtight/bom/build"
	"handtight/bom/money"
)

// mostDivided is how many pieces of one thing are divided between offers at the most; more are
// bought whole, at one.
const mostDivided = 1000

// Packing answers how a number of pieces costs least at some offers of one shop, for every
// number up to a need: a pack of ten and two single ones, where that costs less than two packs.
//
// Method: the least cost of at least q pieces from the first i offers is the least, over the
// packs taken of the i-th, of what they cost and of what the rest costs at the offers before
// (the integer knapsack by dynamic programming; every line is rounded by itself).
type Packing struct {
	offers []*build.Offer
	least  [][]cost // by offers used and pieces
	packs  [][]int32
}

// cost is goods in minor units, and at a tie how many lines they take.
type cost struct {
	goods int64
	lines int32
}

func (c cost) under(d cost) bool { return c.goods < d.goods || c.goods == d.goods && c.lines < d.lines }

var noCost = cost{math.MaxInt64, 0}

// Divisible reports whether a need may be divided between offers, and how many pieces it is:
// hose is cut, and stays at one offer.
func (n *Need) Divisible() (pieces int, ok bool) {
	whole := (n.Buy() + money.Piece - 1) / money.Piece
	return int(min(whole, math.MaxInt32)), n.Unit != "m" && whole > 0 && whole <= mostDivided
}

// NewPacking works out all numbers of pieces up to a need, at offers of one shop that have a
// price. Other offers are passed by.
//
// Errors: a total that is too large to count in minor units.
func NewPacking(pieces int, offers []*build.Offer) (*Packing, error) {
	p := &Packing{}
	last := make([]cost, pieces+1)
	for q := range last {
		last[q] = noCost
	}
	last[0] = cost{}
	for _, o := range offers {
		if o.Price == nil || o.Lengths != nil {
			continue
		}
		totals, err := totalsOf(o, pieces)
		if err != nil {
			return nil, err
		}
		now, packs := make([]cost, pieces+1), make([]int32, pieces+1)
		pack := int(min(o.Pack/money.Piece, math.MaxInt32))
		for q := range now {
			now[q] = last[q]
			for n := 1; n < len(totals) && (n-1)*pack < q; n++ {
				before := last[max(0, q-n*pack)]
				if before.goods == math.MaxInt64 {
					continue
				}
				if c := (cost{before.goods + totals[n], before.lines + 1}); c.under(now[q]) {
					now[q], packs[q] = c, int32(n)
				}
			}
		}
		p.offers, p.least, p.packs, last = append(p.offers, o), append(p.least, now), append(p.packs, packs), now
	}
	return p, nil
}

// totalsOf gives what each number of packs costs, up to what covers so many pieces.
func totalsOf(o *build.Offer, pieces int) ([]int64, error) {
	most, err := (money.Quantity(pieces) * money.Piece).Packs(o.Pack)
	if err != nil {
		return nil, err
	}
	out := make([]int64, most+1)
	for n := int64(1); n <= most; n++ {
		total, err := money.LineTotal(*o.Price, money.Quantity(n)*o.Pack)
		if err != nil {
			return nil, err
		}
		if out[n], err = total.Int64(); err != nil || out[n] > math.MaxInt64/1024/mostDivided {
			return nil, fmt.Errorf("the sum %s is too large to choose offers by", total)
		}
	}
	return out, nil
}

// Goods is what at least so many pieces cost at the least, in minor units of the shop's money;
// false where the shop has no price.
func (p *Packing) Goods(pieces int) (int64, bool) {
	if pieces == 0 {
		return 0, true
	}
	if len(p.least) == 0 {
		return 0, false
	}
	return p.least[len(p.least)-1][pieces].goods, true
}

// Shares is how they are bought at that cost, in the order of the offers.
func (p *Packing) Shares(pieces int) []Share {
	var out []Share
	for i := len(p.offers) - 1; i >= 0 && pieces > 0; i-- {
		n := p.packs[i][pieces]
		if n == 0 {
			continue
		}
		pack := p.offers[i].Pack
		out = append([]Share{{p.offers[i], money.Quantity(n) * pack}}, out...)
		pieces = max(0, pieces-int(money.Quantity(n)*pack/money.Piece))
	}
	return out
}
