package duty

import (
	"math"

	"handtight/bom/circuit"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/pressure/process/flow"
	"handtight/pressure/process/line"
	"handtight/pressure/process/sea"
	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

// pistons are the piston pumps and the energy-recovery pump.
func (p *Plant) pistons() []*graph.Unit {
	if p.Recovery != nil {
		return append(append([]*graph.Unit(nil), p.Pumps...), p.Recovery)
	}
	return p.Pumps
}

// FromSea are the pumps that draw from the sea, the feed pumps where there are any.
func (p *Plant) FromSea() []*graph.Unit {
	if len(p.FeedPumps) > 0 {
		return p.FeedPumps
	}
	return p.pistons()
}

// inlets says what each piston pump finds.
func (l *Lines) inlets(nets []*net, answers []*flow.Answer, lift span.Span[quantity.Length]) {
	m := nets[0].m
	rho := float64(m.water.Density) * line.Gravity
	for _, u := range m.pistons() {
		in, _ := circuit.PumpEnds(u)
		if in < 0 {
			continue
		}
		at := func(c int) quantity.Pressure {
			return answers[c].Pressure[nets[c].node[u.First+in]] - quantity.Pressure(rho*nets[c].lift.Metres())
		}
		i := Inlet{Pump: u, Pressure: span.Between(at(0), at(1)), Middle: at(3), Dirty: at(2), Needs: usualNPSH}
		before := upstream(nets[3], answers[3], nets[3].node[u.First+in])
		i.oneDirty(nets[2], answers[3], nets[3], before)
		for _, k := range before {
			v, a := nets[3].unitOf[k], answers[3]
			switch kind := v.Item.Kind; {
			case kind.Is(catalog.DrivesFeed):
				i.HasFeed = true
				_, _, i.FeedKnown = curves(v.Item)
				q := quantity.Flow(math.Abs(float64(a.Flow[k])))
				if lower, _, ok := curves(v.Item); ok {
					i.May = lower.Pressure(q) - quantity.Pressure(rho*nets[3].lift.Metres()) - leastLeft
				}
				continue
			case kind.Is(catalog.Filter):
				i.Filters = append(i.Filters, v)
				continue
			case kind.Is(catalog.Strainer):
				continue
			}
			loss, _ := nets[3].links[k].Law.Loss(a.Flow[k])
			i.LineLoss += quantity.Pressure(math.Abs(float64(loss)))
		}
		if p := u.Item.Process.NPSH; p != nil {
			i.Needs, i.NeedsSaid = span.Exactly(*p), true
		}
		i.npsh(nets[3], answers[3], before, at(0), at(1), u)
		l.Inlets = append(l.Inlets, i)
	}
}

// oneDirty is the pressure with each filter by itself at the end of its life. The piston pump's flow
// stands fast, so that a filter in its line loses so much more and nothing else changes; of filters
// side by side it is not said.
func (i *Inlet) oneDirty(dirty *net, clean *flow.Answer, n *net, before []int) {
	var most float64
	for _, k := range before {
		most = max(most, math.Abs(float64(clean.Flow[k])))
	}
	filters := 0
	i.OneDirty = span.Empty[quantity.Pressure]()
	for _, k := range before {
		if v := n.unitOf[k]; !v.Item.Kind.Is(catalog.Filter) {
			continue
		}
		q := clean.Flow[k]
		if math.Abs(float64(q)) < 0.999*most {
			return
		}
		now, _ := n.links[k].Law.Loss(q)
		then, _ := dirty.links[k].Law.Loss(q)
		i.OneDirty = i.OneDirty.Reach(i.Middle - quantity.Pressure(math.Abs(float64(then))-math.Abs(float64(now))))
		filters++
	}
	i.OneKnown = filters > 1
}

// npsh is the head at a pump's inlet, with the greater acceleration head and with none.
func (i *Inlet) npsh(n *net, a *flow.Answer, before []int, low, high quantity.Pressure, u *graph.Unit) {
	turns := speeds(u.Item)
	i.TurnsKnown = turns.Hi > 0
	vapour, err := sea.Vapour(max(n.m.in.water.Hi, 1))
	if err != nil {
		return
	}
	head := func(p quantity.Pressure) quantity.Length {
		h, _ := line.Suction{Surface: line.Atmosphere, Feed: p, Vapour: vapour, Water: n.water}.Available()
		return h
	}
	var most quantity.Length
	for _, k := range before {
		v := n.unitOf[k]
		if v.Item.Kind.Is(catalog.DrivesFeed) {
			break // the line before it is not the piston pump's to move
		}
		bore, ok := BoreOf(n.s.Build, v.Item)
		if !v.Item.IsHose() || !ok || v.Item.Length == nil {
			continue
		}
		speed := line.Bore{Diameter: bore}.Speed(max(a.Flow[k], -a.Flow[k]))
		if h, err := line.Acceleration(*v.Item.Length, speed, turns.Hi, line.ThrowMost); err == nil {
			most += h
		}
	}
	i.NPSH, i.NPSHKnown = span.Between(head(low)-most, head(high)), true
}

// upstream lists the links that bring water to a node, from it outward.
func upstream(n *net, a *flow.Answer, node int) []int {
	into := make([][]int, n.nodes)
	from := func(k int) int {
		if a.Flow[k] < 0 {
			return n.links[k].To
		}
		return n.links[k].From
	}
	for k, l := range n.links {
		if math.Abs(float64(a.Flow[k])) >= 1e-8 {
			to := l.From + l.To - from(k)
			into[to] = append(into[to], k)
		}
	}
	var out []int
	seen := map[int]bool{node: true}
	for queue := []int{node}; len(queue) > 0; queue = queue[1:] {
		for _, k := range into[queue[0]] {
			out = append(out, k)
			if v := from(k); !seen[v] {
				seen[v] = true
				queue = append(queue, v)
			}
		}
	}
	return out
}

// Good is the head that a pump should find, from the greater end of what it needs.
func (i *Inlet) Good() quantity.Length { return line.Needed(i.Needs.Hi) }
