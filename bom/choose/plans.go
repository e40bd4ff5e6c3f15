package choose

import (
	"context"
	"fmt"
	"math"
	"math/bits"
	"slices"
	"strings"

	"github.com/bojanz/currency"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/choose/leastcost"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/bom/order"
	"handtight/bom/rule"
)

// Plan is one way to build: as it is, in one standard throughout, or the best.
type Plan struct {
	Name   string
	None   string   // why there is no such plan; "" where there is
	Only   []string // parts that are made in another standard alone, so that adaptors stand beside them
	System *bom.System
	Order  *order.Order
	Taken  []Taken
	Fitted []Fitted // what joints still need
	Measure

	Proved bool
	Bound  currency.Amount // what no plan costs less than, as far as was looked; of a plan that is landed best

	score int64
	money int64 // in minor units
	kept  int64 // joints left as badly as the build has them, among those that choices change
}

// Taken is an item that a plan takes in the place of another.
type Taken struct {
	For, Item string
	Title     string // of a generic fitting, which no offer is known of; "" for an item of the build
}

// Measure is what plans are set side by side by.
type Measure struct {
	Joints   int
	Adaptors int      // units that only join one end to another, those put in among them
	Families []string // of thread, at its joints
	Unpriced int      // pieces to buy of which no price is known
	Cautions int
	Stops    int
}

// mostTried is how many ways of one plan are priced and checked: each takes a walk through the
// whole build.
const mostTried = 48

// Plans sets side by side: the build as it is, each standard throughout, and the best of all
// ways for a goal. A way is what stands in an option's place, which small parts are bought with
// other ends, and what is put into joints that do not close. No plan makes a stop that the build
// did not have.
//
// The ways come in the order of what they cost at the least, without freight, so that the
// first whose least is no less than the best plan's own cost proves it; see package leastcost.
//
// Errors: those of [bom.System.Order]; the context's, when it ends.
func Plans(ctx context.Context, sys *bom.System, g Goal) ([]Plan, error) {
	p := &planner{ctx: ctx, base: sys, goal: g, space: newSpace(sys, true), walked: map[string]*Plan{}, stops: map[spot]int{}}
	for _, f := range rule.Check(sys) {
		if f.Severity == finding.Stop {
			p.stops[spotOf(f)]++
		}
	}
	if err := p.price(); err != nil {
		return nil, err
	}
	asIs, err := p.asItIs()
	if err != nil {
		return nil, err
	}
	out := []Plan{*asIs}
	var best []*Plan
	if p.space.closed() {
		best = append(best, asIs)
	}
	for _, standard := range Standards {
		plan, err := p.throughout(standard)
		if err != nil {
			return nil, err
		}
		if plan.None == "" {
			best = append(best, plan)
		}
		out = append(out, *plan)
	}
	plan, err := p.best(best)
	if err != nil {
		return nil, err
	}
	return append(out, *plan), nil
}

// planner makes plans.
type planner struct {
	ctx    context.Context
	base   *bom.System
	goal   Goal
	space  *space
	walked map[string]*Plan // by way: priced and checked already; None says what was wrong
	stops  map[spot]int
	floor  int64 // what the lines cost at the least that are the same in every way
	slack  int64 // that roundings may take off the sums
	cut    bool  // a search for shops ended early
}

// price finds what one piece of each item costs at the least, landed but for its freight.
func (p *planner) price() error {
	b := p.base.Build
	slopes := map[*build.Vendor]float64{}
	for _, v := range b.Vendors {
		if !sells(b, v) {
			continue
		}
		t, err := newTariff(v, &b.Rates)
		if err != nil {
			return err
		}
		slopes[v] = t.slope
		p.slack += int64(math.Ceil(t.slack))
	}
	for _, o := range b.Offers {
		if o.Price == nil {
			continue
		}
		one := int64(math.Floor(number(o.Price.Number()) * math.Pow10(digits(o.Vendor.Currency)) * slopes[o.Vendor]))
		if old, ok := p.space.priced[o.Item]; !ok || one < old {
			p.space.priced[o.Item] = max(0, one)
		}
	}
	return p.constant()
}

// constant sums the lines that no choice changes.
func (p *planner) constant() error {
	needs, err := p.base.Needs()
	if err != nil {
		return err
	}
	varies := map[string]bool{}
	for _, v := range p.space.vars {
		for _, c := range v.choices {
			varies[c.item.ID] = true
		}
	}
	for _, n := range needs {
		if n.Item == nil || varies[n.Key] || n.Item.Kind.Loose || n.Unit != "pc" {
			continue
		}
		if one, ok := p.space.priced[n.Key]; ok {
			p.floor += one * max(0, int64((n.Placed-n.Have)/1000))
		}
	}
	return nil
}

// asItIs is the build unchanged.
func (p *planner) asItIs() (*Plan, error) {
	plan, err := p.measure(p.base, nil)
	if err != nil {
		return nil, err
	}
	plan.Name, plan.Proved = "as it is", true
	return plan, nil
}

// throughout is the best plan in which all that can be is of one standard.
func (p *planner) throughout(standard string) (*Plan, error) {
	keep := make([]bool, len(p.space.vars)) // variables that have no choice of the standard
	var only []string
	for i, v := range p.space.vars {
		keep[i] = !slices.ContainsFunc(v.choices, func(c choice) bool { return of(c.item, c.family, standard) })
		if keep[i] {
			only = append(only, v.name())
		}
	}
	for _, u := range p.base.Graph.Units {
		if p.space.unit[u] < 0 && !of(u.Item, "", standard) && !slices.Contains(only, u.Item.ID) {
			only = append(only, u.Item.ID)
		}
	}
	plan, err := p.search(func(v, x int) bool {
		c := &p.space.vars[v].choices[x]
		return keep[v] || of(c.item, c.family, standard)
	}, nil, 0)
	if err != nil {
		return nil, err
	}
	plan.Name, plan.Only = "all "+standard, only
	return plan, nil
}

// best is the best of all ways; never dearer than plans that are known.
func (p *planner) best(known []*Plan) (*Plan, error) {
	var first *Plan
	for _, k := range known {
		if first == nil || k.score < first.score {
			first = k
		}
	}
	all := func(int, int) bool { return true }
	plan, err := first, error(nil)
	if p.goal == Families {
		plan, err = p.fewest(first)
	} else {
		plan, err = p.search(all, first, 0)
	}
	if err != nil {
		return nil, err
	}
	plan.Name, plan.Only = "best", nil
	return plan, nil
}

// mostFamilies is how many families of thread are tried in and out.
const mostFamilies = 6

// fewest goes through the sets of families that may be used beside those that no choice
// changes, the smallest first.
func (p *planner) fewest(first *Plan) (*Plan, error) {
	fixed, free := p.space.families()
	best, proved := first, true
	if len(free) > mostFamilies {
		proved, free = false, free[:mostFamilies]
	}
	for size := range len(free) + 1 {
		for set := range 1 << len(free) {
			if bits.OnesCount(uint(set)) != size {
				continue
			}
			may := slices.Clone(fixed)
			for i, f := range free {
				if set>>i&1 == 1 {
					may = append(may, f)
				}
			}
			plan, err := p.search(func(v, x int) bool { return within(p.space.vars[v].choices[x].item, may) }, best, int64(len(may))*familiesOver)
			if err != nil {
				return nil, err
			}
			proved = proved && plan.Proved
			if plan.None == "" {
				best = plan
			}
		}
	}
	if best == nil {
		return &Plan{None: p.impossible(func(int, int) bool { return true }, "")}, nil
	}
	out := *best
	out.Proved = proved
	return &out, p.boundOf(&out, out.score)
}

// search goes through the ways that are allowed, the cheapest first, until none can be better.
// more is what every one of them costs beside what the solver knows.
func (p *planner) search(allowed func(v, x int) bool, first *Plan, more int64) (*Plan, error) {
	best := first
	solver := leastcost.New(p.space.problem(p.goal, allowed))
	proved, tried := true, 0
	bound := int64(math.MaxInt64)
	var fault error
	refused := ""
	solver.Each(func(way []int, least int64) bool {
		least = max(0, least+p.floor-p.slack) + more
		if best != nil && least >= best.score {
			return false
		}
		if fault = p.ctx.Err(); fault != nil {
			return false
		}
		if tried++; tried > mostTried {
			proved, bound = false, least
			return false
		}
		plan, err := p.walk(way)
		if err != nil {
			fault = err
			return false
		}
		switch {
		case plan.None != "":
			if refused == "" {
				refused = plan.None
			}
		case best == nil || plan.score < best.score:
			best = plan
		}
		return true
	})
	if fault != nil {
		return nil, fault
	}
	if best == nil {
		return &Plan{None: p.impossible(allowed, refused), Proved: proved}, nil
	}
	out := *best
	out.Proved = proved && !p.cut
	return &out, p.boundOf(&out, bound)
}

// boundOf says what no plan costs less than.
func (p *planner) boundOf(plan *Plan, bound int64) error {
	if plan.Proved {
		plan.Bound = plan.Order.Total
		return nil
	}
	var err error
	if bound/piecesOver < plan.score/piecesOver {
		bound = 0 // one with fewer pieces without a price might cost anything
	}
	plan.Bound, err = currency.NewAmountFromInt64(min(bound, plan.score)%piecesOver, p.base.Build.Currency)
	return err
}

// impossible says why there is no plan at all: a joint that no choice closes, else what the
// first way was refused for.
func (p *planner) impossible(allowed func(v, x int) bool, refused string) string {
	for _, j := range p.base.Graph.Joints {
		if why := p.wall(j, allowed); why != "" {
			return fmt.Sprintf("%s: %s", p.base.Graph.JointName(j), why)
		}
	}
	if refused != "" {
		return refused
	}
	return "no way of choosing closes every joint"
}

// wall says why no choice closes a joint; "" where one does.
func (p *planner) wall(j *graph.Joint, allowed func(v, x int) bool) string {
	a, b := p.space.unit[p.base.Graph.Ports[j.A].Unit], p.space.unit[p.base.Graph.Ports[j.B].Unit]
	why := ""
	for _, x := range p.ways(a, allowed) {
		for _, y := range p.ways(b, allowed) {
			l := p.space.join(j, x, y)
			if l.none == "" || x == 0 && y == 0 {
				return "" // it closes, or stays as the build has it
			}
			if why == "" {
				why = l.none
			}
		}
	}
	return why
}

func (p *planner) ways(v int, allowed func(v, x int) bool) []int {
	if v < 0 {
		return []int{0}
	}
	var out []int
	for x := range p.space.vars[v].choices {
		if allowed(v, x) {
			out = append(out, x)
		}
	}
	return out
}

// walk prices and checks one way.
func (p *planner) walk(way []int) (*Plan, error) {
	key := fmt.Sprint(way)
	if plan, ok := p.walked[key]; ok {
		return plan, nil
	}
	plan := &Plan{}
	p.walked[key] = plan
	b, fitted, err := p.space.rebuild(way)
	if err != nil {
		plan.None = err.Error()
		return plan, nil
	}
	sys, faults := bom.Walk(b)
	if len(faults) > 0 {
		plan.None = faults[0].Reason
		return plan, nil
	}
	got, err := p.measure(sys, fitted)
	if err != nil {
		return nil, err
	}
	*plan = *got
	plan.kept = p.space.kept(way)
	plan.score = p.goal.score(plan)
	for i, x := range way {
		v := p.space.vars[i]
		if c := &v.choices[x]; c.item != v.item {
			t := Taken{For: v.name(), Item: c.item.ID}
			if c.stock {
				t.Title = strings.TrimSpace(c.item.About + " " + endWords(c.item) + ", " + c.item.Material + classWords(c.item))
			}
			plan.Taken = append(plan.Taken, t)
		}
	}
	return plan, nil
}

func endWords(it *build.Item) string {
	var out []string
	for i := range it.Ports {
		out = append(out, it.Ports[i].Words())
	}
	return strings.Join(out, " x ")
}

func classWords(it *build.Item) string {
	if it.Class == "" {
		return ""
	}
	return ", " + it.Class
}
