package choose

import (
	"cmp"
	"math"
	"slices"
)

// lines searches the ways to buy the lines at shops whose modes are decided.
//
// An open shop costs charge + slope x max(goods, least). For any share between 0 and 1,
// max(goods, least) >= share x least + (1 - share) x goods, which falls apart into one
// choice a line: so every choice of shares gives a bound (the Lagrangian one).
type lines struct {
	*search
	mode   []int     // of each shop, all decided
	slack  float64   // of the open ones
	fixed  float64   // charges
	shares []duals   // bounds that are looked at in every step
	order  []int     // of the rows: those that it matters most for come first
	at     []int     // the way of each row
	sold   []float64 // by shop, of the rows that are placed
	stock  [][]float64
	ranked [][]ranked // of each row: its ways, the cheapest by the first shares first
}

// duals is one choice of shares, with what the rows from each on cost at least.
type duals struct {
	share []float64 // by shop
	after []float64 // by place in the order
}

// ranked is a way of a row, with what it costs by the first shares.
type ranked struct {
	way  int
	cost float64
}

// rounds is how many times the shares are improved.
const rounds = 40

func newLines(s *search, mode []int, slack float64) *lines {
	l := &lines{search: s, mode: mode, slack: slack, at: make([]int, len(s.m.rows)), sold: make([]float64, len(s.m.shops))}
	for v, k := range mode {
		if k >= 0 {
			l.fixed += s.m.shops[v].modes[k].charge
		}
	}
	return l
}

func (l *lines) least(v int) float64 { return l.m.shops[v].modes[l.mode[v]].least }

// weight is what goods of a shop count for under shares; below zero where it is closed.
func (l *lines) weight(share []float64) func(int) float64 {
	return func(v int) float64 {
		if l.mode[v] < 0 {
			return -1
		}
		return l.m.shops[v].slope * (1 - share[v])
	}
}

// run places the rows every way that could be better than the best plan.
func (l *lines) run(share []float64) {
	l.sortRows(share)
	l.shares = []duals{l.dual(share)}
	if slices.ContainsFunc(share, func(x float64) bool { return x > 0 }) {
		l.shares = append(l.shares, l.dual(make([]float64, len(share))))
	}
	l.stock = make([][]float64, len(l.order)+1)
	l.stock[len(l.order)] = make([]float64, len(l.m.shops))
	for k := len(l.order) - 1; k >= 0; k-- {
		l.stock[k] = slices.Clone(l.stock[k+1])
		for v, goods := range l.m.rows[l.order[k]].most {
			l.stock[k][v] += float64(goods)
		}
	}
	l.rank(share)
	l.place(0)
}

// rank sorts each row's ways that are open.
func (l *lines) rank(share []float64) {
	weight := l.weight(share)
	l.ranked = make([][]ranked, len(l.m.rows))
	for i := range l.m.rows {
		for k := range l.m.rows[i].ways {
			if c := l.m.rows[i].ways[k].weigh(weight); c >= 0 {
				l.ranked[i] = append(l.ranked[i], ranked{k, c})
			}
		}
		slices.SortStableFunc(l.ranked[i], func(a, b ranked) int { return cmp.Compare(a.cost, b.cost) })
	}
}

// ascend improves the shares step by step (Polyak's step), and tries the plan that
// each gives. It returns the shares with the best bound.
func (l *lines) ascend() (best []float64, bound float64) {
	share := make([]float64, len(l.m.shops))
	bound = math.Inf(-1)
	for range rounds {
		value, goods := l.solve(share)
		if value > bound {
			bound, best = value, slices.Clone(share)
		}
		norm := 0.0
		slope := make([]float64, len(share))
		for v := range share {
			if l.mode[v] < 0 {
				continue
			}
			slope[v] = l.m.shops[v].slope * (l.least(v) - goods[v])
			if slope[v] > 0 && share[v] < 1 || slope[v] < 0 && share[v] > 0 {
				norm += slope[v] * slope[v]
			}
		}
		gap := float64(l.cost) - value
		if norm == 0 || gap <= 0 || l.err != nil {
			break
		}
		for v := range share {
			share[v] = math.Max(0, math.Min(1, share[v]+gap*slope[v]/norm))
		}
	}
	return best, bound
}

// solve gives the bound of some shares, and the goods of each shop in its plan.
func (l *lines) solve(share []float64) (float64, []float64) {
	value, goods := l.fixed, make([]float64, len(share))
	for v, k := range l.mode {
		if k >= 0 {
			value += l.m.shops[v].slope * share[v] * l.least(v)
		}
	}
	weight := l.weight(share)
	for i := range l.m.rows {
		w, cost := l.m.rows[i].least(weight)
		l.at[i] = w
		value += cost
		for _, p := range l.m.rows[i].ways[w].parts {
			goods[p.shop] += float64(p.goods)
		}
	}
	l.try(l.at)
	return value, goods
}

// sortRows puts first the rows whose best shop differs most from the best without it.
func (l *lines) sortRows(share []float64) {
	weight := l.weight(share)
	regret := make([]float64, len(l.m.rows))
	for i := range l.m.rows {
		l.order = append(l.order, i)
		best, cost := l.m.rows[i].least(weight)
		second, other := l.m.rows[i].least(func(v int) float64 {
			if slices.ContainsFunc(l.m.rows[i].ways[best].parts, func(p part) bool { return p.shop == v }) {
				return -1
			}
			return weight(v)
		})
		if regret[i] = other - cost; second == nowhere {
			regret[i] = math.Inf(1)
		}
	}
	slices.SortStableFunc(l.order, func(a, b int) int { return cmp.Compare(regret[b], regret[a]) })
}

func (l *lines) dual(share []float64) duals {
	d := duals{share: share, after: make([]float64, len(l.order)+1)}
	weight := l.weight(share)
	for k := len(l.order) - 1; k >= 0; k-- {
		_, cost := l.m.rows[l.order[k]].least(weight)
		d.after[k] = d.after[k+1] + cost
	}
	return d
}

// bound is the best of the bounds after k rows are placed. Beyond the shares' own it
// counts what a shop has sold over its least, and what it cannot sell any more of it.
func (l *lines) bound(k int) float64 {
	best := math.Inf(-1)
	stock := l.stock[k]
	for i := range l.shares {
		d := &l.shares[i]
		value := l.fixed + d.after[k]
		for v, mode := range l.mode {
			if mode < 0 {
				continue
			}
			t := l.m.shops[v]
			share, least, sold := d.share[v], t.modes[mode].least, l.sold[v]
			goods := share*least + (1-share)*sold
			if sold > least {
				goods += share * (sold - least)
			} else if lack := least - sold - stock[v]; lack > 0 {
				goods += (1 - share) * lack
			}
			value += t.slope * goods
		}
		best = math.Max(best, value)
	}
	return best
}

// place buys the rows from k on every way, the likeliest first.
func (l *lines) place(k int) {
	bound := l.bound(k)
	if l.hopeless(bound-l.slack) || l.spent(bound-l.slack) {
		return
	}
	if k == len(l.order) {
		l.try(l.at)
		return
	}
	i := l.order[k]
	least := l.plain(k)
	for _, w := range l.ranked[i] {
		if l.hopeless(least + w.cost - l.slack) {
			break // and so are all that come after
		}
		l.at[i] = w.way
		l.sell(i, w.way, 1)
		l.place(k + 1)
		l.sell(i, w.way, -1)
	}
}

// sell adds what a way buys to what is sold, or takes it off.
func (l *lines) sell(i, w int, sign float64) {
	for _, p := range l.m.rows[i].ways[w].parts {
		l.sold[p.shop] += sign * float64(p.goods)
	}
}

// plain is the first shares' bound for the rows but the k-th, without what the sold goods add
// to it: a way of that row costs its own on top.
func (l *lines) plain(k int) float64 {
	d := &l.shares[0]
	value := l.fixed + d.after[k+1]
	for v, mode := range l.mode {
		if mode >= 0 {
			value += l.m.shops[v].slope * (d.share[v]*l.least(v) + (1-d.share[v])*l.sold[v])
		}
	}
	return value
}
