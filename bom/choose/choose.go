package choose

import (
	"context"
	"fmt"
	"math"

	"github.com/bojanz/currency"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/bom/money"
	"handtight/bom/order"
	"handtight/bom/rule"
)

// Choice is what was chosen, and what it is set against.
type Choice struct {
	System   *bom.System // with the swaps made
	Order    *order.Order
	Swaps    []Swap
	Findings []finding.Finding // of the system

	Proved  bool            // no other plan costs less, but for Bounded
	Bounded []*order.Need   // lines with too many ways to divide: looked at over two shops at the most, or whole
	Bound   currency.Amount // what no plan costs less than, as far as it is proved

	Cheapest *order.Order // each line where it is cheapest by itself, nothing swapped
	One      []OneShop    // in the order of the shops

	Refused []Refusal // alternatives that would be cheaper and were not taken
}

// Swap is an option that was taken.
type Swap struct {
	For, Item string
	Cautions  []finding.Finding // that the build did not have before
}

// OneShop is all from one shop.
type OneShop struct {
	Vendor *build.Vendor
	Order  *order.Order  // nil if the shop does not have it all
	Lacks  []*order.Need // what it has no price for
}

// Refusal is an option that would have cost less and was not taken.
type Refusal struct {
	For, Item string
	Saves     currency.Amount // what the build would have cost less; the zero value if that was not worked out
	Reason    string
	Stop      *finding.Finding // that it makes
}

// Saves is by how much an order costs more than the choice; false if it does not.
func (c *Choice) Saves(than *order.Order) (currency.Amount, bool) {
	d, err := than.Total.Sub(c.Order.Total)
	return d, err == nil && d.IsPositive()
}

// Shops chooses the shop of each line, and among the options' items, so that the whole
// landed cost is least.
//
// Errors: those of [bom.System.Order]; a sum that is too large to count in minor units;
// the context's, when it ends.
func Shops(ctx context.Context, sys *bom.System) (*Choice, error) {
	c := &chooser{ctx: ctx, base: sys, steps: steps, cost: math.MaxInt64, bound: math.MaxInt64, proved: true}
	if err := c.start(); err != nil {
		return nil, err
	}
	if err := c.options(); err != nil {
		return nil, err
	}
	return &c.choice, c.finish()
}

// chooser goes through the ways of taking options.
type chooser struct {
	ctx   context.Context
	base  *bom.System
	steps int

	choice   Choice
	cost     int64 // of the choice
	bound    int64
	proved   bool
	first    int64 // cost without any swap
	unpriced map[string]bool
	stops    map[spot]bool
	cautions map[spot]bool
}

// spot is where a finding stands: a path's step keeps its place when its item changes.
type spot struct {
	slug         string
	file         string
	line, column int
}

func spotOf(f finding.Finding) spot {
	return spot{f.Slug, f.Place.File, f.Place.Line, f.Place.Column}
}

// start chooses shops for the build as it is, and what that is set against.
func (c *chooser) start() error {
	c.stops, c.cautions, c.unpriced = map[spot]bool{}, map[spot]bool{}, map[string]bool{}
	c.choice.Findings = rule.Check(c.base)
	for _, f := range c.choice.Findings {
		switch f.Severity {
		case finding.Stop:
			c.stops[spotOf(f)] = true
		case finding.Caution:
			c.cautions[spotOf(f)] = true
		}
	}
	m, unpriced, err := newMarket(c.base)
	if err != nil {
		return err
	}
	for _, n := range unpriced {
		c.unpriced[n.Key] = true
	}
	if c.choice.Cheapest, err = c.base.Order(); err != nil {
		return err
	}
	for v, t := range m.shops {
		one := OneShop{Vendor: t.vendor}
		at, lacks := m.oneShop(v)
		if one.Lacks = lacks; len(lacks) == 0 && len(m.rows) > 0 {
			if one.Order, err = m.order(c.base, at); err != nil {
				return err
			}
		}
		c.choice.One = append(c.choice.One, one)
	}
	s := c.search(m)
	if s.err != nil {
		return s.err
	}
	c.first = s.cost
	return c.take(c.base, m, s, nil)
}

// search looks for a plan that costs less than the choice.
func (c *chooser) search(m *market) *search {
	s := newSearch(c.ctx, m, c.cost, &c.steps)
	s.run()
	return s
}

// take makes a plan the choice.
func (c *chooser) take(sys *bom.System, m *market, s *search, swaps []Swap) error {
	order, err := m.order(sys, s.best)
	if err != nil {
		return err
	}
	c.choice.System, c.choice.Order, c.choice.Swaps, c.choice.Bounded = sys, order, swaps, m.whole
	c.cost = s.cost
	c.note(s)
	return nil
}

// note keeps how far a search is proved.
func (c *chooser) note(s *search) {
	c.proved = c.proved && s.proved()
	c.bound = min(c.bound, s.bound())
}

// finish says how far the choice is proved.
func (c *chooser) finish() error {
	c.choice.Proved = c.proved
	bound := min(c.bound, c.cost)
	if c.proved {
		bound = c.cost
	}
	var err error
	if c.choice.Bound, err = currency.NewAmountFromInt64(bound, c.base.Build.Currency); err != nil {
		return fmt.Errorf("the bound: %w", err)
	}
	return money.CheckCode(c.base.Build.Currency)
}
