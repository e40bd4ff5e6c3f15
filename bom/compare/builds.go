package compare

import (
	"handtight/bom"
	"handtight/bom/graph"
	"handtight/bom/rule"
)

// Builds compares two builds that have been walked.
func Builds(before, after *bom.System) *Report {
	c := &comparer{old: before, new: after, to: map[*graph.Unit]*graph.Unit{}, from: map[*graph.Unit]*graph.Unit{}, report: &Report{}}
	c.lineUp()
	c.things()
	c.contents()
	c.items()
	c.joints()
	c.segments()
	c.findings(rule.Check(before), rule.Check(after))
	c.report.NoSums = c.sums()
	return c.report
}

// comparer ties the units of two builds.
type comparer struct {
	old, new *bom.System
	to       map[*graph.Unit]*graph.Unit // from old to new
	from     map[*graph.Unit]*graph.Unit
	report   *Report
}

func (c *comparer) tie(a, b *graph.Unit) {
	if c.to[a] == nil && c.from[b] == nil {
		c.to[a], c.from[b] = b, a
	}
}

// runsOf lists the units of each run, in flow order, by the run's name.
func runsOf(s *bom.System) (names []string, units map[string][]*graph.Unit) {
	units = map[string][]*graph.Unit{}
	for _, j := range s.Graph.Joints {
		name := j.Run.Name
		if units[name] == nil {
			names = append(names, name)
			units[name] = append(units[name], s.Graph.Ports[j.A].Unit)
		}
		units[name] = append(units[name], s.Graph.Ports[j.B].Unit)
	}
	return names, units
}

// lineUp ties units run by run, then by name, and then those that were replaced.
func (c *comparer) lineUp() {
	names, before := runsOf(c.old)
	_, after := runsOf(c.new)
	gaps := [][2][]*graph.Unit{}
	for _, name := range names {
		if list, ok := after[name]; ok {
			gaps = append(gaps, c.alike(before[name], list)...)
		}
	}
	for _, u := range c.old.Graph.Units {
		if n, ok := c.new.Graph.Unit(u.Name); ok && n.Item.ID == u.Item.ID {
			c.tie(u, n)
		}
	}
	for _, g := range gaps {
		c.replaced(g[0], g[1])
	}
}

// alike ties what two runs have in common, and returns what is left between.
func (c *comparer) alike(a, b []*graph.Unit) (gaps [][2][]*graph.Unit) {
	i, j := 0, 0
	for _, pair := range common(a, b) {
		gaps = append(gaps, [2][]*graph.Unit{a[i:pair[0]], b[j:pair[1]]})
		c.tie(a[pair[0]], b[pair[1]])
		i, j = pair[0]+1, pair[1]+1
	}
	return append(gaps, [2][]*graph.Unit{a[i:], b[j:]})
}

// most is the size of the table up to which two runs are lined up: beyond it only
// their common beginning and end are.
const most = 4_000_000

// common finds the longest list of items that two runs share in the same order, as
// pairs of places.
func common(a, b []*graph.Unit) (pairs [][2]int) {
	head := 0
	for head < min(len(a), len(b)) && a[head].Item.ID == b[head].Item.ID {
		pairs = append(pairs, [2]int{head, head})
		head++
	}
	tail := 0
	for tail < min(len(a), len(b))-head && a[len(a)-1-tail].Item.ID == b[len(b)-1-tail].Item.ID {
		tail++
	}
	n, m := len(a)-head-tail, len(b)-head-tail
	if n > 0 && m > 0 && n*m <= most {
		pairs = append(pairs, longest(a[head:head+n], b[head:head+m], head)...)
	}
	for k := tail; k > 0; k-- {
		pairs = append(pairs, [2]int{len(a) - k, len(b) - k})
	}
	return pairs
}

// longest is the longest common subsequence, by the table of lengths.
func longest(a, b []*graph.Unit, shift int) (pairs [][2]int) {
	length := make([][]int32, len(a)+1)
	for i := range length {
		length[i] = make([]int32, len(b)+1)
	}
	for i := len(a) - 1; i >= 0; i-- {
		for j := len(b) - 1; j >= 0; j-- {
			if a[i].Item.ID == b[j].Item.ID {
				length[i][j] = length[i+1][j+1] + 1
			} else {
				length[i][j] = max(length[i+1][j], length[i][j+1])
			}
		}
	}
	for i, j := 0, 0; i < len(a) && j < len(b); {
		switch {
		case a[i].Item.ID == b[j].Item.ID:
			pairs = append(pairs, [2]int{i + shift, j + shift})
			i, j = i+1, j+1
		case length[i+1][j] >= length[i][j+1]:
			i++
		default:
			j++
		}
	}
	return pairs
}

// replaced ties units of one kind that stand between the same neighbours.
func (c *comparer) replaced(a, b []*graph.Unit) {
	next := 0
	for _, u := range a {
		if c.to[u] != nil {
			continue
		}
		for k := next; k < len(b); k++ {
			if c.from[b[k]] == nil && b[k].Item.Kind == u.Item.Kind {
				c.tie(u, b[k])
				next = k + 1
				break
			}
		}
	}
}

// place names the run that a unit stands in first.
func place(s *bom.System, u *graph.Unit) string {
	for i := range u.Item.Ports {
		if j := s.Graph.Ports[u.First+i].Joint; j != nil {
			return j.Run.Name
		}
	}
	return ""
}

// things lists units that came, went, or gave their place to another item.
func (c *comparer) things() {
	for _, u := range c.old.Graph.Units {
		n := c.to[u]
		thing := Thing{u.Name, u.Item, place(c.old, u)}
		switch {
		case n == nil:
			c.report.Removed = append(c.report.Removed, thing)
		case n.Item.ID != u.Item.ID:
			c.report.Replaced = append(c.report.Replaced, Replacement{thing, Thing{n.Name, n.Item, place(c.new, n)}})
		}
	}
	for _, u := range c.new.Graph.Units {
		if c.from[u] == nil {
			c.report.Added = append(c.report.Added, Thing{u.Name, u.Item, place(c.new, u)})
		}
	}
}
