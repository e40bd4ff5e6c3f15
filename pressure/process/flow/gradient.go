package flow

import (
	"math"
	"slices"

	"handtight/pressure/network/connected"
	"handtight/pressure/quantity"
)

// gradient is Newton on flows and pressures together. Its order of elimination is worked
// out once and serves every pass.
type gradient struct {
	*plan
	links []Link
	flow  []quantity.Flow

	loss  []quantity.Pressure // of each link, at its flow
	slope []float64
	diag  []float64
	value []float64
	right []float64
}

// plan is the order of elimination of networks of one shape.
type plan struct {
	ends  [][2]int // of each link
	fixed []bool
	slot  []int // of each link's value, -1 where an end is fixed
	slots int
	order []pivot
}

// fits reports whether links and fixed nodes are those that the plan was made for.
func (p *plan) fits(links []Link, fixed []bool) bool {
	if p == nil || len(links) != len(p.ends) || !slices.Equal(fixed, p.fixed) {
		return false
	}
	for i, l := range links {
		if p.ends[i] != [2]int{l.From, l.To} {
			return false
		}
	}
	return true
}

// pivot is one node taken out: its neighbours that are left, with the slots between them.
type pivot struct {
	node   int
	near   []int
	slots  []int // to each of near
	fillIn []int // slots between the pairs of near, row by row
}

// newGradient takes a plan that fits, else it makes one.
func newGradient(nodes int, links []Link, fixed []bool, like *plan) (*gradient, error) {
	if !like.fits(links, fixed) {
		var err error
		if like, err = newPlan(nodes, links, fixed); err != nil {
			return nil, err
		}
	}
	of := make([]float64, 2*nodes+len(links)+like.slots)
	g := &gradient{plan: like, links: links, flow: make([]quantity.Flow, len(links)), loss: make([]quantity.Pressure, len(links)),
		diag: of[:nodes], right: of[nodes : 2*nodes], slope: of[2*nodes : 2*nodes+len(links)], value: of[2*nodes+len(links):]}
	for i := range g.flow {
		g.flow[i] = 2 * quantity.LitrePerMinute
	}
	return g, nil
}

func newPlan(nodes int, links []Link, fixed []bool) (*plan, error) {
	g := &plan{ends: make([][2]int, len(links)), fixed: fixed, slot: make([]int, len(links))}
	near := make([]neighbours, nodes)
	between := func(a, b int) int {
		i, ok := near[a].find(b)
		if !ok {
			near[a].insert(i, neighbour{b, g.slots})
			k, _ := near[b].find(a)
			near[b].insert(k, neighbour{a, g.slots})
			g.slots++
		}
		return near[a][i].slot
	}
	for i, l := range links {
		g.ends[i] = [2]int{l.From, l.To}
		g.slot[i] = -1
		if l.From != l.To && !fixed[l.From] && !fixed[l.To] {
			g.slot[i] = between(l.From, l.To)
		}
	}
	if err := g.reached(nodes); err != nil {
		return nil, err
	}
	g.eliminate(near, between)
	return g, nil
}

// neighbours are the nodes that are left beside one, in their order, each with the slot of what
// lies between. A plant's nodes have few.
type neighbours []neighbour

type neighbour struct{ node, slot int }

func (n neighbours) find(node int) (int, bool) {
	return slices.BinarySearchFunc(n, node, func(x neighbour, node int) int { return x.node - node })
}

func (n *neighbours) insert(at int, x neighbour) { *n = slices.Insert(*n, at, x) }

func (n *neighbours) remove(node int) {
	if i, ok := n.find(node); ok {
		*n = slices.Delete(*n, i, i+1)
	}
}

// eliminate takes the nodes out in the order of least degree.
func (g *plan) eliminate(near []neighbours, between func(a, b int) int) {
	byDegree := make([][]int, len(near)+1)
	left := 0
	for v := range near {
		if !g.fixed[v] {
			byDegree[len(near[v])] = append(byDegree[len(near[v])], v)
			left++
		}
	}
	gone := make([]bool, len(near))
	var slab []int // of several pivots
	for d := 0; left > 0; {
		if len(byDegree[d]) == 0 {
			d++
			continue
		}
		v := byDegree[d][len(byDegree[d])-1]
		byDegree[d] = byDegree[d][:len(byDegree[d])-1]
		if gone[v] || len(near[v]) != d {
			continue // stands elsewhere by now
		}
		gone[v] = true
		left--
		if len(slab) < 2*d {
			slab = make([]int, max(2*d, 4*len(near)))
		}
		room := slab[: 2*d : 2*d]
		slab = slab[2*d:]
		p := pivot{node: v, near: room[:0:d], slots: room[d:d]}
		for _, w := range near[v] {
			p.near, p.slots = append(p.near, w.node), append(p.slots, w.slot)
			near[w.node].remove(v)
		}
		for i, a := range p.near {
			for _, b := range p.near[i+1:] {
				p.fillIn = append(p.fillIn, between(a, b))
			}
		}
		for _, w := range p.near {
			byDegree[len(near[w])] = append(byDegree[len(near[w])], w)
			d = min(d, len(near[w]))
		}
		g.order = append(g.order, p)
	}
}

// reached reports a node that no way leads from to a fixed one.
func (g *plan) reached(nodes int) error {
	sets := connected.NewSets(nodes + 1) // the last stands for all fixed ones
	for v, f := range g.fixed {
		if f {
			sets.Join(v, nodes)
		}
	}
	for _, l := range g.ends {
		sets.Join(l[0], l[1])
	}
	for v := range nodes {
		if sets.Find(v) != sets.Find(nodes) {
			return &LooseError{v}
		}
	}
	return nil
}

// leastSlope keeps a link that loses nothing at rest from being without resistance, in Pa
// for a m3/s: 1 Pa at 1 L/min.
const leastSlope = 6e4

// solve finds flows and pressures; pressure holds the fixed ones and receives the others.
func (g *gradient) solve(taken []float64, pressure []quantity.Pressure) error {
	unsettled, before := 0, quantity.Flow(0)
	for range 200 {
		clear(g.diag)
		clear(g.value)
		for v := range g.right {
			g.right[v] = -taken[v]
		}
		for i, l := range g.links {
			if l.From == l.To {
				g.flow[i] = 0
				continue
			}
			loss, slope := l.Law.Loss(g.flow[i])
			slope = max(slope, leastSlope)
			g.loss[i], g.slope[i] = loss, slope
			y := 1 / slope
			still := float64(g.flow[i]) - float64(loss)*y // the flow with no difference of pressure
			g.right[l.From] -= still
			g.right[l.To] += still
			g.diag[l.From] += y
			g.diag[l.To] += y
			switch {
			case g.slot[i] >= 0:
				g.value[g.slot[i]] -= y
			case g.fixed[l.From] && !g.fixed[l.To]:
				g.right[l.To] += y * float64(pressure[l.From])
			case g.fixed[l.To] && !g.fixed[l.From]:
				g.right[l.From] += y * float64(pressure[l.To])
			}
		}
		g.pressures(pressure)
		rest, worst, was := g.flows(pressure)
		if rest {
			return nil
		}
		unsettled, before = worst, was
		if !finite(float64(g.flow[worst])) {
			break
		}
	}
	return &UnsettledError{"link", unsettled, g.links[unsettled].From, g.links[unsettled].To, before, g.flow[unsettled]}
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// pressures eliminates and puts back.
func (g *gradient) pressures(pressure []quantity.Pressure) {
	for i := range g.order {
		p := &g.order[i]
		d := g.diag[p.node]
		fill := 0
		for j, a := range p.near {
			f := g.value[p.slots[j]] / d
			g.diag[a] -= f * g.value[p.slots[j]]
			g.right[a] -= f * g.right[p.node]
			for k := range p.near[j+1:] {
				g.value[p.fillIn[fill]] -= f * g.value[p.slots[j+1+k]]
				fill++
			}
		}
	}
	for i := len(g.order) - 1; i >= 0; i-- {
		p := &g.order[i]
		sum := g.right[p.node]
		for j, a := range p.near {
			sum -= g.value[p.slots[j]] * float64(pressure[a])
		}
		pressure[p.node] = quantity.Pressure(sum / g.diag[p.node])
	}
}

// trickle is a flow below which shares of a flow mean nothing: a drop in a minute.
const trickle quantity.Flow = 1e-9

// flows takes the flows from the pressures, and reports whether they have come to rest and
// which link moved most, and from where. One whose loss or flow is not a finite number has not: it is
// that link.
func (g *gradient) flows(pressure []quantity.Pressure) (rest bool, worst int, was quantity.Flow) {
	most, moved, broken := quantity.Flow(0), quantity.Flow(0), false
	for i, l := range g.links {
		if l.From == l.To {
			continue
		}
		now := g.flow[i] + quantity.Flow(float64(pressure[l.From]-pressure[l.To]-g.loss[i])/g.slope[i])
		if !finite(float64(g.loss[i])) || !finite(g.slope[i]) {
			was, g.flow[i] = g.flow[i], quantity.Flow(math.NaN())
			return false, i, was
		}
		if !finite(float64(now)) && !broken {
			broken, worst, was = true, i, g.flow[i]
		}
		if by := abs(now - g.flow[i]); by > moved && !broken {
			moved, worst, was = by, i, g.flow[i]
		}
		most = max(most, abs(now))
		g.flow[i] = now
	}
	return !broken && moved <= max(most, trickle)*closeEnough, worst, was
}
