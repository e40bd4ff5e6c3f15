package choose

import (
	"cmp"
	"context"
	"math"
	"slices"
)

// steps bounds a search: about a second's work.
const steps = 1_000_000

// closed and undecided are modes of a shop beside its own, which count from 0.
const (
	closed    = -1
	undecided = -2
)

// search looks for the plan of least cost.
type search struct {
	ctx  context.Context
	m    *market
	best []int // the way of each row; nil while nothing is cheaper than the bound given
	cost int64
	err  error

	steps *int    // left, shared with the searches of other alternatives
	open  float64 // the lowest bound among what was not looked into
	slack float64 // of the shops that are not closed
	mode  []int   // of each shop
	order []int   // of the shops
	modes []modes
}

// modes is a mode for every shop, with what it costs at least. Bounds have the roundings
// taken off.
type modes struct {
	mode         []int
	slack, bound float64
	share        []float64
}

// newSearch begins a search for a plan that costs less than cost.
func newSearch(ctx context.Context, m *market, cost int64, left *int) *search {
	s := &search{ctx: ctx, m: m, cost: cost, steps: left, open: math.Inf(1), mode: make([]int, len(m.shops))}
	worth := make([]float64, len(m.shops))
	for v := range s.mode {
		s.mode[v] = undecided
		s.order = append(s.order, v)
		s.slack += m.shops[v].slack
	}
	if len(m.rows) > 0 {
		for i, w := range m.lineByLine() {
			for _, p := range m.rows[i].ways[w].parts {
				worth[p.shop] += m.shops[p.shop].slope * float64(p.goods)
			}
		}
	}
	slices.SortStableFunc(s.order, func(a, b int) int { return cmp.Compare(worth[b], worth[a]) })
	return s
}

// run tries the plans that are easily had, and then all that could be better.
func (s *search) run() {
	if len(s.m.rows) == 0 {
		s.try([]int{})
		return
	}
	s.close(s.m.lineByLine())
	for v := range s.m.shops {
		if at, lacks := s.m.oneShop(v); len(lacks) == 0 {
			s.try(at)
		}
	}
	s.undivided()
	s.shops(0)
	slices.SortStableFunc(s.modes, func(a, b modes) int { return cmp.Compare(a.bound, b.bound) })
	for _, w := range s.modes {
		if !s.hopeless(w.bound) && !s.spent(w.bound) {
			newLines(s, w.mode, w.slack).run(w.share)
		}
	}
}

// undivided looks first, with a quarter of the steps, at the plans that buy each line at one
// shop: they are few beside the others, and the best of them is near the best of all.
func (s *search) undivided() {
	m, fewer := s.m.undivided()
	if !fewer || s.err != nil {
		return
	}
	left := *s.steps / 4
	*s.steps -= left
	one := newSearch(s.ctx, m, s.cost, &left)
	one.run()
	*s.steps += left
	if s.err = one.err; s.err != nil || one.best == nil {
		return
	}
	at := make([]int, len(one.best))
	for i, w := range one.best {
		at[i] = s.m.rows[i].one[m.rows[i].ways[w].parts[0].shop]
	}
	s.try(at)
}

// close tries a plan, and shuts one shop after the other as long as that saves.
func (s *search) close(at []int) {
	s.try(at)
	shut := make([]bool, len(s.m.shops))
	for better := true; better; {
		better = false
		for v := range shut {
			before := s.cost
			if shut[v] {
				continue
			}
			shut[v] = true
			if plan, ok := s.m.without(shut); ok {
				s.try(plan)
			}
			shut[v] = s.cost < before
			better = better || shut[v]
		}
	}
}

// proved reports whether nothing was left out.
func (s *search) proved() bool { return math.IsInf(s.open, 1) }

// bound is what no plan costs less than, as far as was looked: a whole number.
func (s *search) bound() int64 {
	if s.proved() {
		return s.cost
	}
	return min(s.cost, int64(math.Max(0, math.Ceil(s.open-tiny))))
}

// tiny covers what binary numbers lose.
const tiny = 1e-3

// hopeless reports whether plans with a lower bound cannot cost less than the best.
func (s *search) hopeless(bound float64) bool {
	return math.Ceil(bound-tiny) >= float64(s.cost)
}

// spent counts a step; true when no more may be done, and then the bound is noted.
func (s *search) spent(bound float64) bool {
	if *s.steps--; *s.steps&1023 == 0 && s.err == nil {
		s.err = s.ctx.Err()
	}
	if *s.steps > 0 && s.err == nil {
		return false
	}
	s.open = math.Min(s.open, bound)
	return true
}

// try prices a plan exactly, and keeps it if it is the cheapest yet.
func (s *search) try(at []int) {
	cost, err := s.m.cost(at)
	if err != nil {
		s.err = err
		return
	}
	if cost < s.cost {
		s.cost, s.best = cost, slices.Clone(at)
	}
}

// shops decides the mode of one shop after the other.
func (s *search) shops(depth int) {
	bound, ok := s.relaxed()
	bound -= s.slack
	if !ok || s.hopeless(bound) || s.spent(bound) {
		return
	}
	if depth == len(s.order) {
		*s.steps -= rounds
		mode := slices.Clone(s.mode)
		share, bound := newLines(s, mode, s.slack).ascend()
		if bound -= s.slack; !s.hopeless(bound) {
			s.modes = append(s.modes, modes{mode, s.slack, bound, share})
		}
		return
	}
	v := s.order[depth]
	for k := range s.m.shops[v].modes {
		s.mode[v] = k
		s.shops(depth + 1)
	}
	s.mode[v] = closed
	slack := s.slack
	s.slack -= s.m.shops[v].slack
	s.shops(depth + 1)
	s.mode[v], s.slack = undecided, slack
}

// relaxed bounds the cost by what is decided: charges of open shops, each line where it
// is cheapest among shops that are not closed, and what the open ones must be filled up
// with although they sold all they have. False if a line can be had nowhere.
func (s *search) relaxed() (float64, bool) {
	bound := 0.0
	for i := range s.m.rows {
		at := s.m.rows[i].open(func(v int) bool { return s.mode[v] != closed })
		if at == nowhere {
			return 0, false
		}
		bound += s.m.rows[i].ways[at].base
	}
	for v, k := range s.mode {
		if k < 0 {
			continue
		}
		t := s.m.shops[v]
		stock := 0.0
		for i := range s.m.rows {
			stock += float64(s.m.rows[i].most[v])
		}
		bound += t.modes[k].charge + t.slope*math.Max(0, t.modes[k].least-stock)
	}
	return bound, true
}
