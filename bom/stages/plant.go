package stages

import (
	"slices"

	"handtight/bom"
	"handtight/bom/graph"
	"handtight/catalog"
)

// plant is one connected part of a build, with what the stages ask of it.
type plant struct {
	sys       *bom.System
	units     []*graph.Unit
	joints    []*graph.Joint
	onIntake  map[*graph.Unit]bool // valves between an intake and the first pump or strainer
	flushTank *graph.Unit          // a tank that the plant's own pump flushes from; nil: none
	intakes   map[*graph.Unit]bool
}

// plants takes a build apart into what hangs together, in the order of its units.
func plants(sys *bom.System) []*plant {
	seen := map[*graph.Unit]bool{}
	var out []*plant
	for _, u := range sys.Graph.Units {
		if seen[u] {
			continue
		}
		p := &plant{sys: sys, onIntake: map[*graph.Unit]bool{}, intakes: map[*graph.Unit]bool{}}
		queue := []*graph.Unit{u}
		seen[u] = true
		for len(queue) > 0 {
			v := queue[0]
			queue = queue[1:]
			p.units = append(p.units, v)
			for i := range v.Item.Ports {
				j := sys.Graph.Port(v, i).Joint
				if j == nil {
					continue
				}
				w := sys.Graph.Ports[j.A+j.B-(v.First+i)].Unit
				if !seen[w] {
					seen[w] = true
					queue = append(queue, w)
				}
			}
		}
		slices.SortFunc(p.units, func(a, b *graph.Unit) int { return a.First - b.First })
		in := map[*graph.Unit]bool{}
		for _, v := range p.units {
			in[v] = true
		}
		for _, j := range sys.Graph.Joints {
			if in[sys.Graph.Ports[j.A].Unit] {
				p.joints = append(p.joints, j)
			}
		}
		p.look()
		if len(p.joints) > 0 {
			out = append(out, p)
		}
	}
	return out
}

// look finds the intakes, the valves on them, and what the plant is flushed from.
func (p *plant) look() {
	for _, u := range p.units {
		k := u.Item.Kind
		switch {
		case k.Boats && k.Gives && !k.Supply && !k.Is(catalog.Store):
			p.intakes[u] = true
		case !k.Boats && len(k.Boundary) > 0 && p.sys.Graph.Boundary(u, k.Boundary[0]) && p.sys.Graph.Begins(u):
			p.intakes[u] = true
		}
	}
	supplied := slices.ContainsFunc(p.units, func(u *graph.Unit) bool { return u.Item.Kind.Supply })
	for _, u := range p.units {
		if !supplied && u.Item.Kind.Is(catalog.Store) && p.sys.Graph.Begins(u) {
			p.flushTank = u
		}
		if p.intakes[u] {
			p.follow(u)
		}
	}
}

// follow notes the valves between an intake and the first pump.
func (p *plant) follow(intake *graph.Unit) {
	seen := map[*graph.Unit]bool{intake: true}
	for queue := []*graph.Unit{intake}; len(queue) > 0; queue = queue[1:] {
		u := queue[0]
		if p.pump(u) {
			continue
		}
		for _, way := range u.Passages() {
			if way.Closable && !p.forFlush(u) && !u.Item.Kind.Selector {
				p.onIntake[u] = true
			}
		}
		for i := range u.Item.Ports {
			j := p.sys.Graph.Port(u, i).Joint
			if j == nil {
				continue
			}
			w := p.sys.Graph.Ports[j.A+j.B-(u.First+i)].Unit
			if !seen[w] && !w.Item.Kind.Supply && !w.Item.Kind.Is(catalog.StopsReturn) {
				seen[w] = true
				queue = append(queue, w)
			}
		}
	}
}

func (p *plant) intake(u *graph.Unit) bool { return p.intakes[u] }

// forFlush reports whether a valve is opened for the flush only.
func (p *plant) forFlush(u *graph.Unit) bool {
	return u.Item.Normal == "flush" || u.Item.Kind.Flush && u.Item.Normal != "open"
}

func (p *plant) is(u *graph.Unit, flow catalog.Flow) bool {
	return slices.ContainsFunc(u.Passages(), func(w catalog.Passage) bool { return w.Is == flow })
}

func (p *plant) pump(u *graph.Unit) bool {
	return p.is(u, catalog.FeedPump) || p.is(u, catalog.PositivePump)
}

func (p *plant) have(flow catalog.Flow) []*graph.Unit {
	var out []*graph.Unit
	for _, u := range p.units {
		if p.is(u, flow) {
			out = append(out, u)
		}
	}
	return out
}

// productSelector reports whether a selector stands in the product water.
func (p *plant) productSelector(u *graph.Unit) bool {
	c := u.Item.PortIndex("common")
	return c >= 0 && p.sys.Waters.Product(u.First+c)
}

// stands is the position of a selector in a stage: of the product's, the way to a tank or
// to a drain; of another, its second way for the flush.
func (p *plant) stands(u *graph.Unit, s *stand) int {
	if !p.productSelector(u) {
		if s.house {
			return 1
		}
		return 0
	}
	for position, way := range u.Passages() {
		if p.leadsToTank(u, way) == s.tank {
			return position
		}
	}
	return 0
}

// leadsToTank reports whether a selector's way ends in a tank.
func (p *plant) leadsToTank(u *graph.Unit, way catalog.Passage) bool {
	end := p.endOf(u, way)
	return end != nil && end.Item.Kind.Is(catalog.Store)
}

// endOf is the place where the water of a selector's way ends: the first of the boat's own
// parts behind it.
func (p *plant) endOf(u *graph.Unit, way catalog.Passage) *graph.Unit {
	port := way.To
	if u.Item.Ports[port].Name == "common" {
		port = way.From
	}
	seen := map[*graph.Unit]bool{u: true}
	j := p.sys.Graph.Port(u, port).Joint
	if j == nil {
		return nil
	}
	for queue := []*graph.Unit{p.sys.Graph.Ports[j.A+j.B-(u.First+port)].Unit}; len(queue) > 0; queue = queue[1:] {
		v := queue[0]
		if seen[v] {
			continue
		}
		seen[v] = true
		if len(v.Item.Kind.Boundary) > 0 {
			return v
		}
		for i := range v.Item.Ports {
			if j := p.sys.Graph.Port(v, i).Joint; j != nil {
				queue = append(queue, p.sys.Graph.Ports[j.A+j.B-(v.First+i)].Unit)
			}
		}
	}
	return nil
}
