package choose

import (
	"cmp"
	"slices"

	"handtight/bom/build"
	"handtight/bom/order"
)

// row is one line to buy.
type row struct {
	need *order.Need
	ways []way   // those that cost least by the goods alone first
	one  []int   // by shop: the way that buys all there; nowhere if there is none
	most []int64 // by shop: the most goods of it that any way buys there

	packings []*order.Packing // by shop; nil of a line that is not divided
	bounded  bool             // there are ways over three shops or more that are not listed
}

// way is one way to buy a line: what goods of which shops. No way is listed beside one that
// takes no more of any shop.
type way struct {
	parts  []part
	shares []order.Share // of a line that is not divided
	base   float64       // of the goods alone, in minor units of the build's money
}

// part is what a line takes of one shop, in minor units of its money.
type part struct {
	shop, pieces int
	goods        int64
}

// Bounds of how many ways a line may have: all, where they are few; else those over two shops.
// Where these are more still, it is bought at one shop.
const (
	mostWays  = 300
	mostPairs = 3000
)

// divide lists the ways to divide a line between shops: at each the number of pieces, in the
// packs that come to least there.
func (r *row) divide(pieces int, at [][]*build.Offer) error {
	d := divider{pieces: pieces, steps: make([][]step, len(at))}
	r.packings = make([]*order.Packing, len(at))
	for v, offers := range at {
		p, err := order.NewPacking(pieces, offers)
		if err != nil {
			return err
		}
		r.packings[v] = p
		if _, ok := p.Goods(pieces); ok {
			d.shops = append(d.shops, v)
			d.steps[v] = stepsOf(p, pieces)
		}
	}
	for _, v := range d.shops {
		all := d.steps[v][len(d.steps[v])-1]
		d.whole = append(d.whole, part{v, pieces, all.goods})
		d.ways = append(d.ways, way{parts: []part{{v, pieces, all.goods}}})
	}
	ones := slices.Clone(d.ways)
	r.ways = ones
	if d.most = mostPairs; !d.pairs() {
		r.bounded = true
		return nil
	}
	r.ways = d.ways
	if len(d.shops) < 3 {
		return nil
	}
	two := slices.Clone(d.ways)
	if d.most = mostWays; len(two) > d.most || !d.more(0, pieces, nil) {
		r.ways, r.bounded = two, true
		return nil
	}
	r.ways = undominated(d.ways)
	return nil
}

// divider lists ways.
type divider struct {
	pieces int
	shops  []int
	steps  [][]step // by shop
	whole  []part   // in the order of shops
	ways   []way
	most   int
}

// step is the most pieces that may be had of a shop for goods of some value.
type step struct {
	pieces int
	goods  int64
}

func stepsOf(p *order.Packing, pieces int) []step {
	var out []step
	for q := 1; q <= pieces; q++ {
		goods, _ := p.Goods(q)
		if len(out) > 0 && out[len(out)-1].goods == goods {
			out[len(out)-1].pieces = q
			continue
		}
		out = append(out, step{q, goods})
	}
	return out
}

// least is the value of goods that so many pieces take of a shop.
func (d *divider) least(v, pieces int) int64 {
	steps := d.steps[v]
	i, _ := slices.BinarySearchFunc(steps, pieces, func(s step, q int) int { return cmp.Compare(s.pieces, q) })
	return steps[i].goods
}

// pairs lists the ways over two shops; false if they are too many.
func (d *divider) pairs() bool {
	for i, a := range d.shops {
		for k := i + 1; k < len(d.shops); k++ {
			b := d.shops[k]
			last := d.whole[k].goods
			for _, s := range d.steps[a] {
				if s.pieces >= d.pieces || s.goods >= d.whole[i].goods {
					break
				}
				goods := d.least(b, d.pieces-s.pieces)
				if goods >= last {
					continue
				}
				last = goods
				d.ways = append(d.ways, way{parts: []part{{a, s.pieces, s.goods}, {b, d.pieces - s.pieces, goods}}})
				if len(d.ways) > d.most {
					return false
				}
			}
		}
	}
	return true
}

// more lists the ways over three shops and more, from the i-th shop on; false if they are too
// many.
func (d *divider) more(i, left int, taken []part) bool {
	for k := i; k < len(d.shops); k++ {
		v := d.shops[k]
		if len(taken) >= 2 {
			if goods := d.least(v, left); goods < d.whole[k].goods {
				d.ways = append(d.ways, way{parts: append(slices.Clone(taken), part{v, left, goods})})
			}
		}
		for _, s := range d.steps[v] {
			if s.pieces >= left || s.goods >= d.whole[k].goods {
				break
			}
			if len(d.ways) > d.most || !d.more(k+1, left-s.pieces, append(slices.Clone(taken), part{v, s.pieces, s.goods})) {
				return false
			}
		}
	}
	return len(d.ways) <= d.most
}

// undominated leaves out each way beside which another takes no more of any shop.
func undominated(ways []way) []way {
	var out []way
	for i := range ways {
		if !slices.ContainsFunc(ways, func(w way) bool { return w.under(&ways[i]) }) {
			out = append(out, ways[i])
		}
	}
	return out
}

// under reports whether a way takes no more of any shop than another, and less of one.
func (w *way) under(x *way) bool {
	less := len(w.parts) < len(x.parts)
	for _, p := range w.parts {
		at := slices.IndexFunc(x.parts, func(q part) bool { return q.shop == p.shop })
		if at < 0 || p.goods > x.parts[at].goods {
			return false
		}
		less = less || p.goods < x.parts[at].goods
	}
	return less
}

// index sorts the ways by what their goods cost, and finds those at one shop.
func (r *row) index(m *market) {
	for i := range r.ways {
		w := &r.ways[i]
		w.base = w.weigh(func(v int) float64 { return m.shops[v].slope })
	}
	slices.SortStableFunc(r.ways, func(a, b way) int {
		return cmp.Or(cmp.Compare(a.base, b.base), cmp.Compare(len(a.parts), len(b.parts)))
	})
	for v := range r.one {
		r.one[v] = nowhere
	}
	for i := range r.ways {
		for _, p := range r.ways[i].parts {
			r.most[p.shop] = max(r.most[p.shop], p.goods)
			if len(r.ways[i].parts) == 1 {
				r.one[p.shop] = i
			}
		}
	}
}

// weigh sums a way's goods by weights; negative where one of them is, which is a shop that is shut.
func (w *way) weigh(weight func(shop int) float64) float64 {
	sum := 0.0
	for _, p := range w.parts {
		x := weight(p.shop)
		if x < 0 {
			return -1
		}
		sum += x * float64(p.goods)
	}
	return sum
}

// open is the way that costs least by the goods alone among those at shops that are open;
// nowhere if there is none.
func (r *row) open(is func(shop int) bool) int {
	for i := range r.ways {
		all := true
		for _, p := range r.ways[i].parts {
			all = all && is(p.shop)
		}
		if all {
			return i
		}
	}
	return nowhere
}

// least finds the way that is cheapest by weights; nowhere if each has a shop that is shut.
func (r *row) least(weight func(shop int) float64) (at int, cost float64) {
	at = nowhere
	for i := range r.ways {
		if c := r.ways[i].weigh(weight); c >= 0 && (at == nowhere || c < cost) {
			at, cost = i, c
		}
	}
	return at, cost
}

// bought is how a way is ordered.
func (r *row) bought(w int) []order.Share {
	if r.packings == nil {
		return r.ways[w].shares
	}
	var out []order.Share
	for _, p := range r.ways[w].parts {
		out = append(out, r.packings[p.shop].Shares(p.pieces)...)
	}
	return out
}
