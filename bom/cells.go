package bom

import (
	"slices"

	"handtight/catalog"
)

// cells are the ports that always share one pressure: joined, or in one unit with
// nothing between them that a person, dirt or a pump can change. States are solved
// on cells, so that a long line of fittings costs no more than a short one.
type cells struct {
	of    []int // cell of each port
	count int
	edges []edge
	parts [][]int         // cells by connected part of the build; edges stay within one
	wires [][]int         // edges of each part
	part  []int           // part of each cell
	local []int           // number of each cell within its part
	leads leads           // edges at each cell
	takes []bool          // a boundary that takes water
	gives []bool          // a boundary that can give water
	from  map[int][]*Unit // the units that give it, by cell
	push  []float64
}

// edge is a passage between two cells that may change with the state.
type edge struct {
	unit     *Unit
	from, to int
	is       catalog.Flow
	closable bool
	clogs    bool
	way      int // of a selector: 0 for a, 1 for b
}

// forFlush reports whether a passage is opened for the flush only.
func (e *edge) forFlush() bool {
	it := e.unit.Item
	return it.Normal == "flush" || it.Kind.Flush && it.Normal != "open"
}

// shutNormally reports whether a passage is shut in normal running.
func (e *edge) shutNormally() bool {
	return e.is == catalog.Shut || e.forFlush() || e.unit.Item.Normal == "shut"
}

// newCells contracts the graph.
func (s *System) newCells() *cells {
	ports := newSets(len(s.Ports))
	for _, j := range s.Joints {
		ports.join(j.A, j.B)
	}
	for _, u := range s.Units {
		for _, p := range u.passages() {
			if fixed(p) {
				ports.join(u.First+p.From, u.First+p.To)
			}
		}
	}
	c := &cells{}
	c.of, c.count = ports.number()
	c.from = map[int][]*Unit{}
	c.takes, c.gives, c.push = make([]bool, c.count), make([]bool, c.count), make([]float64, c.count)
	for _, u := range s.Units {
		c.boundaries(s, u)
		for i, p := range u.passages() {
			if !fixed(p) {
				c.edges = append(c.edges, edge{
					unit: u, from: c.of[u.First+p.From], to: c.of[u.First+p.To],
					is: p.Is, closable: p.Closable, clogs: p.Clogs, way: i,
				})
			}
		}
	}
	c.split()
	return c
}

// fixed reports whether a passage is open in every state.
func fixed(p catalog.Passage) bool { return p.Is == catalog.Open && !p.Closable && !p.Clogs }

func (c *cells) boundaries(s *System, u *Unit) {
	k := u.Item.Kind
	for _, b := range k.Boundary {
		if !s.boundary(u, b) {
			continue
		}
		cell := c.of[u.First+b]
		if k.Gives || !k.Boats {
			c.gives[cell] = true
			c.from[cell] = append(c.from[cell], u)
		}
		c.takes[cell] = c.takes[cell] || !k.Supply
		if k.Supply && u.Item.Pressure != nil {
			c.push[cell] = max(c.push[cell], u.Item.Pressure.Bar())
		}
	}
	for p := range u.Item.Ports {
		if n := s.Node(u, p); n.Joint == nil && len(s.Build.LeftOpen) > 0 && s.leftOpen(n.Name()) {
			c.takes[c.of[u.First+p]] = true
		}
	}
}

// givesBeside reports whether something gives water to a cell beside a unit that gives none.
func (c *cells) givesBeside(cell int, dry *Unit) bool {
	if dry == nil {
		return c.gives[cell]
	}
	return slices.ContainsFunc(c.from[cell], func(u *Unit) bool { return u != dry })
}

// split sorts cells and edges into the connected parts of the build.
func (c *cells) split() {
	sets := newSets(c.count)
	for _, e := range c.edges {
		sets.join(e.from, e.to)
	}
	var n int
	c.part, n = sets.number()
	c.parts, c.wires, c.local = make([][]int, n), make([][]int, n), make([]int, c.count)
	for cell, p := range c.part {
		c.local[cell] = len(c.parts[p])
		c.parts[p] = append(c.parts[p], cell)
	}
	bonds := make([]bond, len(c.edges))
	for i, e := range c.edges {
		c.wires[c.part[e.from]] = append(c.wires[c.part[e.from]], i)
		bonds[i] = bond{i, e.from, e.to}
	}
	c.leads = newLeads(c.count, bonds)
}

// sets are disjoint sets of small numbers.
type sets []int

func newSets(n int) sets {
	s := make(sets, n)
	for i := range s {
		s[i] = i
	}
	return s
}

func (s sets) find(i int) int {
	for s[i] != i {
		s[i] = s[s[i]]
		i = s[i]
	}
	return i
}

func (s sets) join(a, b int) {
	a, b = s.find(a), s.find(b)
	if a > b {
		a, b = b, a
	}
	s[b] = a // the lowest number leads, so that numbering follows the file
}

// number gives each element the number of its set, counted in order of its first.
func (s sets) number() ([]int, int) {
	out := make([]int, len(s))
	seen := make([]int, len(s))
	n := 0
	for i := range s {
		root := s.find(i)
		if seen[root] == 0 {
			n++
			seen[root] = n
		}
		out[i] = seen[root] - 1
	}
	return out, n
}
