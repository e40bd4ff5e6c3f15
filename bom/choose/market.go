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
}

// row is one line to buy.
type row struct {
	need *order.Need
	at   []ware // by shop
}

// ware is the cheapest offer of a shop for a line. Since a shop's cost never falls when
// its goods rise, no other offer of the same shop can do better.
type ware struct {
	offer *build.Offer // nil if the shop has no price for it
	goods int64
}

// newMarket prices every line at every shop. Without names the lines that no shop has a
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
		r, priced, err := m.price(sys.Build, n, offers[n.Key], of)
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

func (m *market) price(b *build.Build, n *order.Need, offers []*build.Offer, of map[*build.Vendor]int) (row, bool, error) {
	r := row{need: n, at: make([]ware, len(m.shops))}
	priced := false
	for _, o := range offers {
		if o.Price == nil {
			continue
		}
		l, ok, err := order.LineAt(b, n, o)
		if err != nil {
			return row{}, false, err
		}
		if !ok {
			continue
		}
		goods, err := minor(*l.Total, currency.RoundUp)
		if err != nil {
			return row{}, false, err
		}
		if w := &r.at[of[o.Vendor]]; w.offer == nil || goods < w.goods {
			*w = ware{o, goods}
			priced = true
		}
	}
	return r, priced, nil
}

// nowhere marks a line that is not bought yet.
const nowhere = -1

// cost prices a plan exactly: the shop of each row.
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
	for i, v := range at {
		out[v] = max(out[v], 0) + m.rows[i].at[v].goods
	}
	return out
}

// oneShop is the plan that buys all at a shop; false with the lines that it lacks.
func (m *market) oneShop(v int) (at []int, lacks []*order.Need) {
	at = make([]int, len(m.rows))
	for i, r := range m.rows {
		at[i] = v
		if r.at[v].offer == nil {
			lacks = append(lacks, r.need)
		}
	}
	return at, lacks
}

// lineByLine buys each line where the goods alone are cheapest.
func (m *market) lineByLine() []int {
	at, _ := m.without(make([]bool, len(m.shops)))
	return at
}

// without buys each line where the goods alone are cheapest, among the shops that are
// not shut; false if a line can be had at none.
func (m *market) without(shut []bool) ([]int, bool) {
	at := make([]int, len(m.rows))
	for i := range m.rows {
		at[i], _ = m.rows[i].least(func(v int) float64 {
			if shut[v] {
				return -1
			}
			return m.shops[v].slope
		})
		if at[i] == nowhere {
			return nil, false
		}
	}
	return at, true
}

// least finds where a row is cheapest by weights; nowhere if all are negative.
func (r *row) least(weight func(shop int) float64) (shop int, cost float64) {
	shop = nowhere
	for v := range r.at {
		w := weight(v)
		if r.at[v].offer == nil || w < 0 {
			continue
		}
		if c := w * float64(r.at[v].goods); shop == nowhere || c < cost {
			shop, cost = v, c
		}
	}
	return shop, cost
}

// order makes the order of a plan.
func (m *market) order(sys *bom.System, at []int) (*order.Order, error) {
	picks, toFree := map[string]*build.Offer{}, map[*build.Vendor]bool{}
	for i, v := range at {
		picks[m.rows[i].need.Key] = m.rows[i].at[v].offer
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
