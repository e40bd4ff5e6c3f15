package choose

import (
	"github.com/bojanz/currency"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/order"
)

// market is what a build's lines cost at the shops that have a price for them.
type market struct {
	shops []*tariff
	rows  []row
	whole []*order.Need // lines that are bought at one offer, or at two shops, since more ways would be too many
}

// newMarket prices every line in every way. Without names the lines that no shop has a
// price for.
func newMarket(sys *bom.System) (m *market, unpriced []*order.Need, err error) {
	m = &market{}
	of := map[*build.Vendor]int{}
	for _, v := range sys.Build.Vendors {
		if !sells(sys.Build, v) {
			continue
		}
		t, err := newTariff(v, &sys.Build.Rates)
		if err != nil {
			return nil, nil, err
		}
		of[v] = len(m.shops)
		m.shops = append(m.shops, t)
	}
	needs, err := sys.Needs()
	if err != nil {
		return nil, nil, err
	}
	offers := sys.Build.OffersByItem()
	for _, n := range needs {
		if n.Buy() == 0 {
			continue
		}
		r, priced, err := m.price(n, offers[n.Key], of)
		if err != nil {
			return nil, nil, err
		}
		if priced {
			m.rows = append(m.rows, r)
		} else {
			unpriced = append(unpriced, n)
		}
	}
	return m, unpriced, nil
}

// sells reports whether a shop has any price.
func sells(b *build.Build, v *build.Vendor) bool {
	for _, o := range b.Offers {
		if o.Vendor == v && o.Price != nil {
			return true
		}
	}
	return false
}

// price lists the ways to buy a need; false if no shop has a price for it.
func (m *market) price(n *order.Need, offers []*build.Offer, of map[*build.Vendor]int) (row, bool, error) {
	at := make([][]*build.Offer, len(m.shops))
	for _, o := range offers {
		if o.Price != nil {
			at[of[o.Vendor]] = append(at[of[o.Vendor]], o)
		}
	}
	r := row{need: n, one: make([]int, len(m.shops)), most: make([]int64, len(m.shops))}
	pieces, divisible := n.Divisible()
	var err error
	if divisible {
		err = r.divide(pieces, at)
	} else {
		err = r.uncut(at)
	}
	if err != nil || len(r.ways) == 0 {
		return r, false, err
	}
	if r.bounded || !divisible && n.Unit != "m" && len(offers) > 1 {
		m.whole = append(m.whole, n)
	}
	r.index(m)
	return r, true, nil
}

// uncut lists the offers that a need is bought at as a whole: of a shop the cheapest, since a
// shop's cost never falls when its goods rise.
func (r *row) uncut(at [][]*build.Offer) error {
	for v, offers := range at {
		best := -1
		for _, o := range offers {
			l, ok, err := order.LineAt(r.need, o)
			if err != nil {
				return err
			}
			if !ok {
				continue
			}
			goods, err := minor(*l.Total, currency.RoundUp)
			if err != nil {
				return err
			}
			if best < 0 || goods < r.ways[best].parts[0].goods {
				if best < 0 {
					best, r.ways = len(r.ways), append(r.ways, way{})
				}
				r.ways[best] = way{parts: []part{{shop: v, goods: goods}}, shares: []order.Share{{Offer: o, Order: l.Order}}}
			}
		}
	}
	return nil
}

// undivided is the market in which each line is bought at one shop; false where it is that already.
func (m *market) undivided() (*market, bool) {
	out, fewer := &market{shops: m.shops}, false
	for i := range m.rows {
		r := row{need: m.rows[i].need, packings: m.rows[i].packings, one: make([]int, len(m.shops)), most: make([]int64, len(m.shops))}
		for _, w := range m.rows[i].ways {
			if len(w.parts) == 1 {
				r.ways = append(r.ways, w)
			}
		}
		fewer = fewer || len(r.ways) < len(m.rows[i].ways)
		r.index(m)
		out.rows = append(out.rows, r)
	}
	return out, fewer
}

// nowhere marks a line that is not bought yet.
const nowhere = -1

// cost prices a plan exactly: the way of each row.
func (m *market) cost(at []int) (int64, error) {
	total := int64(0)
	for v, goods := range m.goods(at) {
		if goods < 0 {
			continue
		}
		l, err := m.shops[v].of(goods)
		if err != nil {
			return 0, err
		}
		total += l.cost
	}
	return total, nil
}

// goods sums a plan's lines by shop; -1 where nothing is bought.
func (m *market) goods(at []int) []int64 {
	out := make([]int64, len(m.shops))
	for v := range out {
		out[v] = -1
	}
	for i, w := range at {
		for _, p := range m.rows[i].ways[w].parts {
			out[p.shop] = max(out[p.shop], 0) + p.goods
		}
	}
	return out
}

// oneShop is the plan that buys all at a shop; false with the lines that it lacks.
func (m *market) oneShop(v int) (at []int, lacks []*order.Need) {
	at = make([]int, len(m.rows))
	for i := range m.rows {
		if at[i] = m.rows[i].one[v]; at[i] == nowhere {
			lacks = append(lacks, m.rows[i].need)
		}
	}
	return at, lacks
}

// without buys each line where the goods alone are cheapest, among the shops that are
// not shut; false if a line can be had at none.
func (m *market) without(shut []bool) ([]int, bool) {
	at := make([]int, len(m.rows))
	for i := range m.rows {
		if at[i] = m.rows[i].open(func(v int) bool { return !shut[v] }); at[i] == nowhere {
			return nil, false
		}
	}
	return at, true
}

// lineByLine buys each line where the goods alone are cheapest.
func (m *market) lineByLine() []int {
	at, _ := m.without(make([]bool, len(m.shops)))
	return at
}

// order makes the order of a plan.
func (m *market) order(sys *bom.System, at []int) (*order.Order, error) {
	picks, toFree := map[string][]order.Share{}, map[*build.Vendor]bool{}
	for i, w := range at {
		picks[m.rows[i].need.Key] = m.rows[i].bought(w)
	}
	for v, goods := range m.goods(at) {
		if goods < 0 {
			continue
		}
		l, err := m.shops[v].of(goods)
		if err != nil {
			return nil, err
		}
		toFree[m.shops[v].vendor] = l.toFree
	}
	return sys.OrderAt(picks, toFree)
}
