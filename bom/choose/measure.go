package choose

import (
	"fmt"
	"math"
	"slices"

	"github.com/bojanz/currency"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/bom/rule"
	"handtight/catalog"
)

// measure prices a system, checks it, and counts what plans are compared by. A system that has
// a stop that the build as it is has not gets None.
func (p *planner) measure(sys *bom.System, fitted []Fitted) (*Plan, error) {
	plan := &Plan{System: sys, Fitted: fitted}
	plan.Joints = len(sys.Graph.Joints)
	plan.Families = families(sys)
	for _, u := range sys.Graph.Units {
		if joins(u.Item) {
			plan.Adaptors++
		}
	}
	count := map[spot]int{}
	for _, f := range rule.Check(sys) {
		switch f.Severity {
		case finding.Stop:
			plan.Stops++
			at := spotOf(f)
			if count[at]++; count[at] > p.stops[at] && plan.None == "" {
				plan.None = fmt.Sprintf("it would make a stop: %s, %s", f.Slug, f.At())
			}
		case finding.Caution:
			plan.Cautions++
		}
	}
	m, unpriced, err := newMarket(sys)
	if err != nil {
		return nil, err
	}
	for _, n := range unpriced {
		plan.Unpriced += max(1, int(n.Buy()/1000))
	}
	left := steps
	s := newSearch(p.ctx, m, math.MaxInt64, &left)
	s.run()
	if s.err != nil {
		return nil, s.err
	}
	p.cut = p.cut || !s.proved()
	if plan.Order, err = m.order(sys, s.best); err != nil {
		return nil, err
	}
	money, err := minor(plan.Order.Total, currency.RoundUp)
	if err != nil {
		return nil, err
	}
	plan.money = money
	plan.score = p.goal.score(plan)
	return plan, nil
}

// score is what a plan counts for under a goal; see [Goal.cost].
func (g Goal) score(p *Plan) int64 {
	added := 0
	for _, f := range p.Fitted {
		added += len(f.Chain.Pieces)
	}
	total := g.cost(price{p.money, int64(p.Unpriced)}, added) + p.kept*stopKept
	if g == Families {
		total += int64(len(p.Families)) * familiesOver
	}
	return total
}

// joins reports whether a part only joins one end to another.
func joins(it *build.Item) bool { return it.Kind.Is(catalog.Adapts) }

// families lists the families of thread at a system's joints.
func families(sys *bom.System) []string {
	var out []string
	for _, j := range sys.Graph.Joints {
		if !j.Known {
			continue
		}
		for _, f := range []string{j.Mating.A.Family.String(), j.Mating.B.Family.String()} {
			if !slices.Contains(out, f) && (j.Mating.A.Family.Threaded() || j.Mating.B.Family.Threaded()) {
				out = append(out, f)
			}
		}
	}
	slices.Sort(out)
	return out
}
