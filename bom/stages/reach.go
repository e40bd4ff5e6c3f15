package stages

import (
	"handtight/bom/graph"
	"handtight/catalog"
)

// stand is how the plant stands in a stage: what drives the water and what is open.
type stand struct {
	house   bool // the house supply, or whatever flushes, gives water
	sea     bool // the intakes are open
	pumps   bool // water passes the pumps, running or pushed through their valves
	held    bool // but not the positive ones
	product bool // the membranes give product
	tank    bool // the product selector stands to the tank; else to the drain
	jug     bool // water is poured in from the reliefs' outlets, and from nowhere else
}

// reach is which ports water comes to, and which joints it runs through.
type reach struct {
	port []bool
	runs map[*graph.Joint]bool
}

// arc is an edge of the plant as it stands: a joint, or an open passage of a unit.
type arc struct {
	a, b  int
	joint *graph.Joint
}

// flood follows the water of a stage from where it comes in.
func (p *plant) flood(s stand) reach {
	n := len(p.sys.Graph.Ports)
	f := flooding{plant: p, s: &s, reach: reach{port: make([]bool, n), runs: map[*graph.Joint]bool{}}}
	sources, sinks := f.mouths()
	for _, port := range sources {
		f.wet(port)
	}
	for len(f.queue) > 0 {
		port := f.queue[0]
		f.queue = f.queue[1:]
		f.cross(port)
		f.pass(port)
	}
	for _, j := range through(n, unique(f.arcs), sources, sinks) {
		f.runs[j] = true
	}
	return f.reach
}

// flooding is a stage's water on its way.
type flooding struct {
	*plant
	s *stand
	reach
	queue []int
	arcs  []arc
}

func (f *flooding) wet(port int) {
	if !f.port[port] {
		f.port[port] = true
		f.queue = append(f.queue, port)
	}
}

// mouths are the ports at which water comes in at the stage, and those at which it may leave.
func (f *flooding) mouths() (sources, sinks []int) {
	for _, u := range f.units {
		for _, way := range u.Passages() {
			if f.s.jug && way.Is == catalog.Relief {
				sources = append(sources, u.First+way.To)
			}
		}
		for _, i := range u.Item.Kind.Boundary {
			if i >= len(u.Item.Ports) || !f.sys.Graph.Boundary(u, i) {
				continue
			}
			switch {
			case f.s.gives(f.plant, u):
				sources = append(sources, u.First+i)
			case !u.Item.Kind.Supply && !f.intake(u):
				sinks = append(sinks, u.First+i)
			}
		}
	}
	return sources, sinks
}

// cross wets the far side of a port's joint.
func (f *flooding) cross(port int) {
	j := f.sys.Graph.Ports[port].Joint
	if j == nil {
		return
	}
	far := j.A + j.B - port
	f.wet(far)
	f.arcs = append(f.arcs, arc{j.A, j.B, j})
}

// pass wets what the passages of a port's unit lead to.
func (f *flooding) pass(port int) {
	u := f.sys.Graph.Ports[port].Unit
	for position, way := range u.Passages() {
		from, to := u.First+way.From, u.First+way.To
		forward, back := f.s.passes(f.plant, u, way, position)
		switch {
		case from == port && forward:
			f.wet(to)
			f.arcs = append(f.arcs, arc{from, to, nil})
		case to == port && back:
			f.wet(from)
			f.arcs = append(f.arcs, arc{from, to, nil})
		}
	}
}

// unique drops an arc that was met from both of its ends.
func unique(arcs []arc) []arc {
	seen := map[[2]int]bool{}
	var out []arc
	for _, a := range arcs {
		key := [2]int{min(a.a, a.b), max(a.a, a.b)}
		if !seen[key] {
			seen[key] = true
			out = append(out, a)
		}
	}
	return out
}

// gives reports whether a unit's water comes in at this stage.
func (s *stand) gives(p *plant, u *graph.Unit) bool {
	if p.intake(u) {
		return s.sea
	}
	return s.house && (u.Item.Kind.Supply || p.flushTank == u)
}

// passes reports whether water goes through a passage, forward and back.
func (s *stand) passes(p *plant, u *graph.Unit, way catalog.Passage, position int) (forward, back bool) {
	it := u.Item
	if it.Kind.Selector {
		open := position == p.stands(u, s)
		return open, open
	}
	if (way.Closable || it.Kind.Flush) && !s.open(p, u) {
		return false, false
	}
	switch way.Is {
	case catalog.Open, catalog.Throttle:
		return true, true
	case catalog.OneWay:
		return true, false
	case catalog.FeedPump:
		return s.pumps, s.pumps && it.Type == "centrifugal"
	case catalog.PositivePump:
		return s.pumps && !s.held, false
	case catalog.Membrane:
		return s.product, false
	}
	return false, false
}

// open reports whether a valve stands open in a stage.
func (s *stand) open(p *plant, u *graph.Unit) bool {
	it := u.Item
	switch {
	case p.forFlush(u):
		return s.house
	case p.intake(u) || p.onIntake[u]:
		return s.sea
	case it.Normal == "shut":
		return false
	}
	return true
}

// through lists the joints on a way from a source to a sink: those in one block with a line
// that would lead from the sinks back to the sources (the blocks of a graph by depth-first
// search; Hopcroft and Tarjan, Algorithm 447, Communications of the ACM 16 (1973) 372).
func through(ports int, arcs []arc, sources, sinks []int) []*graph.Joint {
	if len(sources) == 0 || len(sinks) == 0 {
		return nil
	}
	// one node more, that every source and every sink is joined to by two nodes between: so
	// that a source alone, or two, make no ring
	in, out := ports, ports+1
	for _, p := range sources {
		arcs = append(arcs, arc{in, p, nil})
	}
	for _, p := range sinks {
		arcs = append(arcs, arc{p, out, nil})
	}
	loop := len(arcs)
	arcs = append(arcs, arc{in, out, nil})
	at := make([][]int, ports+2)
	for i, a := range arcs {
		at[a.a] = append(at[a.a], i)
		at[a.b] = append(at[a.b], i)
	}
	b := &blocks{arcs: arcs, at: at, order: make([]int, ports+2), low: make([]int, ports+2), want: loop}
	b.visit(in, -1)
	var joints []*graph.Joint
	for _, i := range b.found {
		if arcs[i].joint != nil {
			joints = append(joints, arcs[i].joint)
		}
	}
	return joints
}

type blocks struct {
	arcs       []arc
	at         [][]int
	order, low []int
	count      int
	stack      []int
	want       int
	found      []int // the block that holds the wanted arc
}

func (b *blocks) visit(v, by int) {
	b.count++
	b.order[v], b.low[v] = b.count, b.count
	for _, i := range b.at[v] {
		if i == by {
			continue
		}
		w := b.arcs[i].a + b.arcs[i].b - v
		if b.order[w] == 0 {
			b.stack = append(b.stack, i)
			b.visit(w, i)
			b.low[v] = min(b.low[v], b.low[w])
			if b.low[w] >= b.order[v] {
				b.close(i)
			}
		} else if b.order[w] < b.order[v] {
			b.stack = append(b.stack, i)
			b.low[v] = min(b.low[v], b.order[w])
		}
	}
}

// close takes a block from the stack, down to the arc that began it.
func (b *blocks) close(first int) {
	var block []int
	for {
		i := b.stack[len(b.stack)-1]
		b.stack = b.stack[:len(b.stack)-1]
		block = append(block, i)
		if i == first {
			break
		}
	}
	for _, i := range block {
		if i == b.want {
			b.found = block
		}
	}
}
