package circuit

import (
	"slices"

	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/pressure/network"
	"handtight/pressure/network/connected"
	"handtight/pressure/quantity"
)

// Circuit is the junctions of a build: the ports that always share one pressure, joined, or
// in one unit with nothing between them that a person, dirt or a pump can change; and the
// links between them that may change. States are solved on junctions, so that a long line of
// fittings costs no more than a short one.
type Circuit struct {
	Graph      *graph.Graph
	JunctionOf []int               // junction of each port
	Junctions  int                 // how many
	Links      []Link              // what may change between junctions
	Nets       [][]int             // junctions by connected part of the build; links stay within one
	LinksOf    [][]int             // links of each part
	NetOf      []int               // part of each junction
	Local      []int               // number of each junction within its part
	Push       []quantity.Pressure // what a supply pushes a junction with

	at      connected.Incidence   // links at each junction
	takes   []bool                // a boundary that takes water
	gives   []bool                // a boundary that can give water
	givers  map[int][]*graph.Unit // the units that give it, by junction
	units   [][]*graph.Unit       // by part
	edges   [][]network.Edge      // of the network of each part
	reliefs map[*graph.Unit]Reliefs
}

// Link is a passage between two junctions that may change with the state.
type Link struct {
	Unit     *graph.Unit
	From, To int
	Is       catalog.Flow
	Closable bool
	Clogs    bool
	Position int // of a selector: 0 for a, 1 for b
}

// ForFlush reports whether a passage is opened for the flush only.
func (e *Link) ForFlush() bool {
	it := e.Unit.Item
	return it.Normal == "flush" || it.Kind.Flush && it.Normal != "open"
}

// ShutNormally reports whether a passage is shut in normal running.
func (e *Link) ShutNormally() bool {
	return e.Is == catalog.Shut || e.ForFlush() || e.Unit.Item.Normal == "shut"
}

// New contracts the graph.
func New(s *graph.Graph) *Circuit {
	ports := connected.NewSets(len(s.Ports))
	for _, j := range s.Joints {
		ports.Join(j.A, j.B)
	}
	for _, u := range s.Units {
		for _, p := range u.Passages() {
			if fixed(p) {
				ports.Join(u.First+p.From, u.First+p.To)
			}
		}
	}
	c := &Circuit{Graph: s}
	c.JunctionOf, c.Junctions = ports.Number()
	c.givers = map[int][]*graph.Unit{}
	c.takes, c.gives, c.Push = make([]bool, c.Junctions), make([]bool, c.Junctions), make([]quantity.Pressure, c.Junctions)
	for _, u := range s.Units {
		c.boundaries(u)
		for i, p := range u.Passages() {
			if !fixed(p) {
				c.Links = append(c.Links, Link{
					Unit: u, From: c.JunctionOf[u.First+p.From], To: c.JunctionOf[u.First+p.To],
					Is: p.Is, Closable: p.Closable, Clogs: p.Clogs, Position: i,
				})
			}
		}
	}
	c.split()
	c.gatherParts()
	c.makeEdges()
	c.gatherReliefs()
	return c
}

// fixed reports whether a passage is open in every state.
func fixed(p catalog.Passage) bool { return p.Is == catalog.Open && !p.Closable && !p.Clogs }

func (c *Circuit) boundaries(u *graph.Unit) {
	k := u.Item.Kind
	for _, b := range k.Boundary {
		if !c.Graph.Boundary(u, b) {
			continue
		}
		junction := c.JunctionOf[u.First+b]
		if k.Gives || !k.Boats {
			c.gives[junction] = true
			c.givers[junction] = append(c.givers[junction], u)
		}
		c.takes[junction] = c.takes[junction] || !k.Supply
		if k.Supply && u.Item.Pressure != nil {
			c.Push[junction] = max(c.Push[junction], *u.Item.Pressure)
		}
		if h := u.Item.Process.Height; h != nil && *h > 0 && k.Gives {
			c.Push[junction] = max(c.Push[junction], head(*h))
		}
	}
	for p := range u.Item.Ports {
		if n := c.Graph.Port(u, p); n.Joint == nil && len(c.Graph.Build.LeftOpen) > 0 && c.Graph.LeftOpen(n.Name()) {
			c.takes[c.JunctionOf[u.First+p]] = true
		}
	}
}

// head is what water of a height stands at: 0.1 bar a metre, that of sea water rounded to what a
// bound needs.
func head(height quantity.Length) quantity.Pressure {
	return quantity.Pressure(0.1*height.Metres()) * quantity.Bar
}

// Givers lists the units that give water to a port.
func (c *Circuit) Givers(port int) []*graph.Unit { return c.givers[c.JunctionOf[port]] }

// givesBeside reports whether something gives water to a junction beside a unit that gives none.
func (c *Circuit) givesBeside(junction int, dry *graph.Unit) bool {
	if dry == nil {
		return c.gives[junction]
	}
	return slices.ContainsFunc(c.givers[junction], func(u *graph.Unit) bool { return u != dry })
}

// split sorts junctions and edges into the connected parts of the build.
func (c *Circuit) split() {
	sets := connected.NewSets(c.Junctions)
	for _, e := range c.Links {
		sets.Join(e.From, e.To)
		if e.Is == catalog.Recovery { // its piston moves them all
			for i := range e.Unit.Item.Ports {
				sets.Join(e.From, c.JunctionOf[e.Unit.First+i])
			}
		}
	}
	var n int
	c.NetOf, n = sets.Number()
	c.Nets, c.LinksOf, c.Local = make([][]int, n), make([][]int, n), make([]int, c.Junctions)
	for junction, p := range c.NetOf {
		c.Local[junction] = len(c.Nets[p])
		c.Nets[p] = append(c.Nets[p], junction)
	}
	edges := make([]connected.Edge, len(c.Links))
	for i, e := range c.Links {
		c.LinksOf[c.NetOf[e.From]] = append(c.LinksOf[c.NetOf[e.From]], i)
		edges[i] = connected.Edge{From: e.From, To: e.To}
	}
	c.at = connected.NewIncidence(c.Junctions, edges)
}
