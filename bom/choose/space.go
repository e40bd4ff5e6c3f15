package choose

import (
	"fmt"
	"slices"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/choose/leastcost"
	"handtight/bom/graph"
	"handtight/bom/repair"
	"handtight/catalog"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// space is all ways of choosing: the variables, and what the joints between them take.
type space struct {
	sys    *bom.System
	vars   []*variable
	unit   map[*graph.Unit]int // the variable that stands there; -1: none
	shelf  *repair.Shelf
	asked  map[string]*link // what joins two ends, by their words and what they must stand
	wishes []repair.Options // by joint
	bare   bool             // nothing is put into a joint that does not close
	recut  map[string]bool  // hose stock whose hoses would have other ends, cut from an alternative
	priced map[string]int64 // by item: what one piece costs at the least; without an entry no price is known
}

// link is what a joint of two ends takes.
type link struct {
	chain *repair.Chain // nil: they join as they are
	none  string        // why nothing joins them
}

// price is what pieces cost at the least, without freight, in minor units, and how many of
// them have no price.
type price struct{ money, unpriced int64 }

// newSpace lays out the ways of choosing.
func newSpace(sys *bom.System, made bool) *space {
	s := &space{sys: sys, vars: variables(sys, made), unit: map[*graph.Unit]int{}, shelf: repair.WithBuild(sys.Build), asked: map[string]*link{}, priced: map[string]int64{}, recut: recut(sys.Build)}
	byItem := map[*build.Item]int{}
	for i, v := range s.vars {
		if v.unit == nil {
			byItem[v.item] = i + 1
		} else {
			s.unit[v.unit] = i
		}
	}
	for _, u := range sys.Graph.Units {
		if _, ok := s.unit[u]; ok {
			continue
		}
		s.unit[u] = byItem[u.Item] - 1
	}
	for _, j := range sys.Graph.Joints {
		o := repair.Conditions(sys, j)
		o.Shelf, o.Count = s.shelf, 1
		s.wishes = append(s.wishes, o)
	}
	return s
}

// recut lists the hose stock of which an option has an alternative of another bore or outside.
func recut(b *build.Build) map[string]bool {
	out := map[string]bool{}
	for _, o := range b.Options {
		it, other := b.ByID[o.For], b.ByID[o.Item]
		if it == nil || other == nil || !it.Kind.Is(catalog.HoseStock) || !other.Kind.Is(catalog.HoseStock) {
			continue
		}
		same := func(a, b *quantity.Length) bool { return a == nil && b == nil || a != nil && b != nil && *a == *b }
		if !same(it.Bore, other.Bore) || !same(it.Outside, other.Outside) {
			out[it.ID] = true
		}
	}
	return out
}

// end is the port that stands at a node when its unit's variable has taken a choice; nil if
// the item has no such port.
func (s *space) end(node int, x int) *build.Port {
	n := &s.sys.Graph.Ports[node]
	v := s.unit[n.Unit]
	if v < 0 || x == 0 {
		return n.Port
	}
	return portAt(&s.vars[v].choices[x], n.Unit.Item, n.Index)
}

// portAt is the port of a choice that stands where a port of an item did.
func portAt(c *choice, it *build.Item, index int) *build.Port {
	if c.turned {
		return &c.item.Ports[1-index]
	}
	if k := c.item.PortIndex(it.Ports[index].Name); k >= 0 {
		return &c.item.Ports[k]
	}
	if index < len(c.item.Ports) {
		return &c.item.Ports[index]
	}
	return nil
}

// join says what two ports at a joint take, by the choices of their variables.
func (s *space) join(j *graph.Joint, x, y int) *link {
	if s.recut[s.sys.Graph.Ports[j.A].Unit.Item.Of] || s.recut[s.sys.Graph.Ports[j.B].Unit.Item.Of] {
		return &link{} // what it is cut from decides its ends: the check of the whole tells
	}
	a, b := s.end(j.A, x), s.end(j.B, y)
	if a == nil || b == nil {
		return &link{none: "the part has no such port"}
	}
	o := s.wishes[j.Number-1]
	key := fmt.Sprintf("%s|%s|%v|%s|%t|%t|%t|%t", a.Words(), b.Words(), o.Pressure, o.Water, o.Below, o.Wide, o.Hose[0], o.Hose[1])
	for _, m := range o.Beside {
		key += "|"
		for _, x := range m {
			key += x.Name
		}
	}
	if l, ok := s.asked[key]; ok {
		return l
	}
	l := &link{}
	s.asked[key] = l
	if len(a.End.Candidates) == 0 || len(b.End.Candidates) == 0 {
		return l // nothing is said: the joint is not judged, and the check asks
	}
	if holds(a.End, b.End, &o) {
		return l
	}
	got := repair.Adapt(a.End, b.End, o)
	switch {
	case got.Direct != nil:
	case len(got.Chains) > 0:
		l.chain = &got.Chains[0]
	default:
		l.none = got.None
	}
	return l
}

// holds reports whether every reading of two ends joins, at low pressure where that does.
func holds(a, b threads.EndReading, o *repair.Options) bool {
	for _, x := range a.Candidates {
		for _, y := range b.Candidates {
			m := threads.Mate(x, y)
			if !m.Bears(o.Pressure, o.Below) {
				return false
			}
		}
	}
	return true
}

// problem writes the ways down for the solver. allowed says which choices may be taken.
func (s *space) problem(g Goal, allowed func(v, x int) bool) *leastcost.Problem {
	p := &leastcost.Problem{}
	for i, v := range s.vars {
		row := make([]int64, len(v.choices))
		for x := range v.choices {
			row[x] = leastcost.Never
			if allowed(i, x) {
				row[x] = g.cost(s.piece(v, x), 0)
			}
		}
		p.Cost = append(p.Cost, row)
	}
	for _, j := range s.sys.Graph.Joints {
		s.link(p, g, j)
	}
	return p
}

// link adds what a joint takes.
func (s *space) link(p *leastcost.Problem, g Goal, j *graph.Joint) {
	a, b := s.unit[s.sys.Graph.Ports[j.A].Unit], s.unit[s.sys.Graph.Ports[j.B].Unit]
	cost := func(x, y int) int64 {
		l := s.join(j, x, y)
		switch {
		case s.bare && (x == 0 && y == 0 || s.turns(j.A) || s.turns(j.B)):
			return 0 // as the build has it, or a part that stays may be turned yet
		case l.none != "" && x == 0 && y == 0:
			return stopKept // as the build has it
		case l.none != "", l.chain != nil && s.bare:
			return leastcost.Never
		case l.chain == nil:
			return 0
		}
		var sum price
		for _, q := range l.chain.Pieces {
			if q.Price == nil {
				sum.unpriced++
			}
		}
		return g.cost(sum, len(l.chain.Pieces))
	}
	switch {
	case a < 0 && b < 0:
		// the same for every way
	case a == b:
		for x := range p.Cost[a] {
			p.Cost[a][x] = min(leastcost.Never, p.Cost[a][x]+cost(x, x))
		}
	case a < 0:
		for y := range p.Cost[b] {
			p.Cost[b][y] = min(leastcost.Never, p.Cost[b][y]+cost(0, y))
		}
	case b < 0:
		for x := range p.Cost[a] {
			p.Cost[a][x] = min(leastcost.Never, p.Cost[a][x]+cost(x, 0))
		}
	default:
		table := make([][]int64, len(p.Cost[a]))
		for x := range table {
			table[x] = make([]int64, len(p.Cost[b]))
			for y := range table[x] {
				if table[x][y] = leastcost.Never; p.Cost[a][x] < leastcost.Never && p.Cost[b][y] < leastcost.Never {
					table[x][y] = cost(x, y)
				}
			}
		}
		p.Links = append(p.Links, leastcost.Link{A: a, B: b, Cost: table})
	}
}

// turns reports whether a part that no choice changes may be passed the other way round.
func (s *space) turns(node int) bool {
	u := s.sys.Graph.Ports[node].Unit
	return s.unit[u] < 0 && len(u.Item.Ports) == 2 && !u.Item.Kind.Directed
}

// piece is what a variable's choice costs at the least.
func (s *space) piece(v *variable, x int) price {
	units := int64(1)
	if v.unit == nil {
		units = 0
		for _, u := range s.sys.Graph.Units {
			if u.Item == v.item {
				units++
			}
		}
	}
	c := &v.choices[x]
	if c.item.Kind.Boats {
		return price{}
	}
	units = max(0, units-int64(c.item.Have/1000))
	if units == 0 {
		return price{}
	}
	if one, ok := s.priced[c.item.ID]; ok {
		return price{money: one * units}
	}
	return price{unpriced: units}
}

// closed reports whether every joint of the build as it is closes.
func (s *space) closed() bool {
	for _, j := range s.sys.Graph.Joints {
		if l := s.join(j, 0, 0); l.chain != nil || l.none != "" {
			return false
		}
	}
	return true
}

// kept counts the joints that stay as badly as the build has them, among those that choices
// change.
func (s *space) kept(way []int) int64 {
	n := int64(0)
	for _, j := range s.sys.Graph.Joints {
		a, b := s.unit[s.sys.Graph.Ports[j.A].Unit], s.unit[s.sys.Graph.Ports[j.B].Unit]
		if (a >= 0 || b >= 0) && s.join(j, s.taken(way, j.A), s.taken(way, j.B)).none != "" {
			n++
		}
	}
	return n
}

// families lists the families of thread that parts have whatever is chosen, and those that
// choices bring.
func (s *space) families() (fixed, free []string) {
	add := func(list *[]string, end threads.EndReading) {
		for _, e := range end.Candidates {
			if f := e.Family.String(); e.Family.Threaded() && !slices.Contains(fixed, f) && !slices.Contains(free, f) {
				*list = append(*list, f)
			}
		}
	}
	for i := range s.sys.Graph.Ports {
		if n := &s.sys.Graph.Ports[i]; n.Joint != nil && n.Joint.Known && s.unit[n.Unit] < 0 {
			add(&fixed, n.Port.End)
		}
	}
	for _, own := range []bool{true, false} { // what the build has, first
		for _, v := range s.vars {
			for i := range v.choices {
				if it := v.choices[i].item; own == (it == v.item) {
					for k := range it.Ports {
						add(&free, it.Ports[k].End)
					}
				}
			}
		}
	}
	return fixed, free
}

// within reports whether an item's threads are of some families.
func within(it *build.Item, may []string) bool {
	for i := range it.Ports {
		for _, e := range it.Ports[i].End.Candidates {
			if e.Family.Threaded() && !slices.Contains(may, e.Family.String()) {
				return false
			}
		}
	}
	return true
}
