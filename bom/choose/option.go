package choose

import (
	"cmp"
	"fmt"
	"maps"
	"slices"

	"github.com/bojanz/currency"

	"handtight/bom"
	"handtight/bom/choose/leastcost"
	"handtight/bom/finding"
	"handtight/bom/rule"
)

// ways is how many ways of taking options are looked at: all, where there are no more; else
// the first in the order of what they cost at the least.
const ways = 256

// options looks at the ways of taking options.
func (c *chooser) options() error {
	list := c.alternatives()
	count := 1
	for _, a := range list {
		count = min(count*(1+len(a.items)), ways+1)
	}
	if count > ways {
		return c.cheapest()
	}
	all := combinations(list)
	slices.SortStableFunc(all, func(a, b map[string]string) int { return cmp.Compare(len(a), len(b)) })
	for _, swaps := range all {
		if err := c.consider(swaps); err != nil {
			return err
		}
	}
	return nil
}

// alternative is an item, and what may be taken instead.
type alternative struct {
	id    string
	items []string
}

// alternatives gathers the options by the item that they are for.
func (c *chooser) alternatives() []alternative {
	var out []alternative
	for _, o := range c.base.Build.Options {
		at := slices.IndexFunc(out, func(a alternative) bool { return a.id == o.For })
		if at < 0 {
			at, out = len(out), append(out, alternative{id: o.For})
		}
		if o.Item != o.For && !slices.Contains(out[at].items, o.Item) {
			out[at].items = append(out[at].items, o.Item)
		}
	}
	return out
}

// combinations lists every way of taking alternatives, but the one of taking none.
func combinations(list []alternative) []map[string]string {
	out := []map[string]string{{}}
	for _, a := range list {
		for _, swaps := range slices.Clone(out) {
			for _, item := range a.items {
				more := maps.Clone(swaps)
				more[a.id] = item
				out = append(out, more)
			}
		}
	}
	return out[1:]
}

// cheapest looks at the ways of taking options in the order of what they cost at the least,
// without freight, until no further one can cost less, or all that are looked at have been.
// Ways whose parts do not go together are never looked at.
func (c *chooser) cheapest() error {
	p := &planner{ctx: c.ctx, base: c.base, goal: Landed, space: newSpace(c.base, false), walked: map[string]*Plan{}}
	if err := p.price(); err != nil {
		return err
	}
	p.space.bare = true
	q := &byLeast{c: c, p: p, seen: map[string]bool{}}
	problem := p.space.problem(Landed, func(int, int) bool { return true })
	q.unpriced = problem.Of(make([]int, len(p.space.vars))) / piecesOver
	leastcost.New(problem).Each(q.next)
	return q.fault
}

// byLeast looks at ways in the order of what they cost at the least.
type byLeast struct {
	c        *chooser
	p        *planner
	unpriced int64 // pieces without a price as the build is: no way may have more
	looked   int
	seen     map[string]bool
	fault    error
}

// mostLooked bounds how many ways are passed by that are not worth a walk.
const mostLooked = 100 * ways

func (q *byLeast) next(way []int, least int64) bool {
	money := max(0, least%piecesOver+q.p.floor-q.p.slack)
	if q.looked++; least/piecesOver > q.unpriced || least/piecesOver == q.unpriced && money >= q.c.cost {
		return false
	}
	swaps := map[string]string{}
	for i, x := range way {
		if v := q.p.space.vars[i]; v.choices[x].item != v.item {
			swaps[v.item.ID] = v.choices[x].item.ID
		}
	}
	key := fmt.Sprint(swaps)
	switch {
	case len(q.seen) >= ways || q.looked > mostLooked:
		q.c.proved, q.c.bound = false, min(q.c.bound, money)
		return false
	case len(swaps) == 0 || q.seen[key] || money >= q.c.cost:
		return true
	}
	q.seen[key] = true
	q.fault = q.c.consider(swaps)
	return q.fault == nil
}

// consider takes options together, if the build costs less and gets no new stop by it.
func (c *chooser) consider(swaps map[string]string) error {
	if err := c.ctx.Err(); err != nil {
		return err
	}
	sys, reason := c.swapped(swaps)
	if reason != "" {
		c.refuse(swaps, Refusal{Reason: reason})
		return nil
	}
	m, unpriced, err := newMarket(sys)
	if err != nil {
		return err
	}
	for _, n := range unpriced {
		if !c.unpriced[n.Key] {
			c.refuse(swaps, Refusal{Reason: fmt.Sprintf("no shop has a price for %s, which it needs", n.Key)})
			return nil
		}
	}
	s := c.search(m)
	if s.err != nil {
		return s.err
	}
	if s.best == nil {
		c.note(s)
		return nil
	}
	findings := rule.Check(sys)
	if at := slices.IndexFunc(findings, func(f finding.Finding) bool { return f.Severity == finding.Stop && !c.stops[spotOf(f)] }); at >= 0 {
		saves, err := currency.NewAmountFromInt64(c.first-s.cost, c.base.Build.Currency)
		if err != nil {
			return err
		}
		c.refuse(swaps, Refusal{Saves: saves, Reason: "it would make a stop", Stop: &findings[at]})
		return nil
	}
	c.choice.Findings = findings
	return c.take(sys, m, s, c.swaps(swaps, findings))
}

// swapped walks the build with options taken; or says why it cannot.
func (c *chooser) swapped(swaps map[string]string) (*bom.System, string) {
	build, err := c.base.Build.Swap(swaps)
	if err != nil {
		return nil, err.Error()
	}
	sys, faults := bom.Walk(build)
	if len(faults) > 0 {
		return nil, faults[0].Reason
	}
	return sys, ""
}

// refuse notes an option that is refused by itself; of several taken together the one
// that is at fault has been noted already.
func (c *chooser) refuse(swaps map[string]string, r Refusal) {
	if len(swaps) != 1 {
		return
	}
	for r.For, r.Item = range swaps {
		if !slices.ContainsFunc(c.choice.Refused, func(x Refusal) bool { return x.For == r.For && x.Item == r.Item }) {
			c.choice.Refused = append(c.choice.Refused, r)
		}
	}
}

// swaps lists the options taken, each with the cautions that stand at its units, and
// those that stand elsewhere with the first.
func (c *chooser) swaps(swaps map[string]string, findings []finding.Finding) []Swap {
	var out []Swap
	for _, from := range slices.Sorted(maps.Keys(swaps)) {
		out = append(out, Swap{For: from, Item: swaps[from]})
	}
	for _, f := range findings {
		if f.Severity == finding.Caution && !c.cautions[spotOf(f)] {
			out[0].Cautions = append(out[0].Cautions, f)
		}
	}
	return out
}
