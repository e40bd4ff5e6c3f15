package flow

import (
	"errors"
	"fmt"
	"math"

	"handtight/pressure/quantity"
)

// Link joins two nodes; a flow is above zero from From to To.
type Link struct {
	From, To int
	Law      Law
}

// Fixed is a node at a known pressure, which gives or takes what it must.
type Fixed struct {
	Node     int
	Pressure quantity.Pressure
}

// Taken is a flow that leaves the network at a node; below zero it comes in.
type Taken struct {
	Node int
	Flow quantity.Flow
}

// Throttle holds the pressure of the node before it, and passes on what comes.
type Throttle struct {
	From, To int
	Holds    quantity.Pressure
}

// Vessel is a row of membranes between its feed and its brine node. Makes gives the
// product and the loss along it for the pressure and the flow at its inlet.
type Vessel struct {
	Feed, Brine, Product int
	Makes                func(quantity.Pressure, quantity.Flow) (product quantity.Flow, loss quantity.Pressure, err error)
}

// Network is a plant in one condition.
type Network struct {
	Nodes     int
	Links     []Link
	Fixed     []Fixed
	Taken     []Taken
	Throttles []Throttle
	Vessels   []Vessel

	// Like is the answer of a network of the same shape: what was worked out of its shape is used
	// again. Of another shape, or nil, it changes nothing.
	Like *Answer
}

// Answer is what runs where.
type Answer struct {
	Flow     []quantity.Flow     // of each link
	Pressure []quantity.Pressure // of each node
	Throttle []quantity.Flow     // through each throttle
	Feed     []quantity.Flow     // into each vessel
	Product  []quantity.Flow     // of each vessel
	Passes   int                 // of the throttles and the vessels

	plan *plan
}

// LooseError says that nothing fixes the pressure of a node.
type LooseError struct{ Node int }

// Error names the node.
func (e *LooseError) Error() string {
	return fmt.Sprintf("nothing fixes the pressure at node %d: no way leads from it to water of a known pressure", e.Node)
}

// ErrNotFound says that the passes did not come to rest.
var ErrNotFound = errors.New("the flows do not come to rest")

// UnsettledError says which link's flow, or which vessel's product, did not come to rest or is no
// finite number. It is an [ErrNotFound].
type UnsettledError struct {
	What            string // link, throttle or vessel
	Index, From, To int
	Was, Now        quantity.Flow // at the last two passes
}

// Error names it and its nodes.
func (e *UnsettledError) Error() string {
	return fmt.Sprintf("%v: %s %d, from node %d to node %d, %s", ErrNotFound, e.What, e.Index, e.From, e.To, e.Moves())
}

// Moves says in words what its flow still does.
func (e *UnsettledError) Moves() string {
	if !finite(float64(e.Was)) || !finite(float64(e.Now)) {
		return "has a flow that is no finite number"
	}
	return fmt.Sprintf("still goes from %.4g to %.4g L/min from one pass to the next", e.Was.LitresPerMinute(), e.Now.LitresPerMinute())
}

// Unwrap is [ErrNotFound].
func (e *UnsettledError) Unwrap() error { return ErrNotFound }

// closeEnough is where the passes stop, as a share of the greatest flow.
const closeEnough = 1e-7

// mostPasses is how often throttles and vessels are asked again.
const mostPasses = 60

// Solve balances the network.
//
// Errors: a node outside the network, a [*LooseError], an [*UnsettledError], and those of a vessel.
func (n *Network) Solve() (*Answer, error) {
	if err := n.check(); err != nil {
		return nil, err
	}
	fixed := make([]bool, n.Nodes)
	pressure := make([]quantity.Pressure, n.Nodes)
	for _, f := range n.Fixed {
		fixed[f.Node], pressure[f.Node] = true, f.Pressure
	}
	for _, t := range n.Throttles {
		fixed[t.From], pressure[t.From] = true, t.Holds
	}
	links := n.Links
	losses := make([]vesselLaw, len(n.Vessels))
	if len(n.Vessels) > 0 {
		links = append([]Link(nil), n.Links...)
		for i, v := range n.Vessels {
			losses[i] = vesselLaw{Square{quantity.LitrePerMinute, 100}}
			links = append(links, Link{v.Feed, v.Brine, &losses[i]})
		}
	}
	var like *plan
	if n.Like != nil {
		like = n.Like.plan
	}
	g, err := newGradient(n.Nodes, links, fixed, like)
	if err != nil {
		return nil, err
	}
	out := &Answer{plan: g.plan, Pressure: pressure, Throttle: make([]quantity.Flow, len(n.Throttles)), Feed: make([]quantity.Flow, len(n.Vessels)), Product: make([]quantity.Flow, len(n.Vessels))}
	taken := make([]float64, n.Nodes)
	var worst *UnsettledError
	for out.Passes = 1; out.Passes <= mostPasses; out.Passes++ {
		clear(taken)
		for _, t := range n.Taken {
			taken[t.Node] += float64(t.Flow)
		}
		for i, t := range n.Throttles {
			taken[t.To] -= float64(out.Throttle[i])
		}
		for i, v := range n.Vessels {
			taken[v.Brine] += float64(out.Product[i])
			taken[v.Product] -= float64(out.Product[i])
		}
		if err := g.solve(taken, pressure); err != nil {
			return nil, err
		}
		if worst, err = n.pass(g, links, losses, taken, out); err != nil {
			return nil, err
		}
		if worst == nil {
			break
		}
	}
	if worst != nil {
		return nil, worst
	}
	out.Flow = g.flow[:len(n.Links)]
	return out, nil
}

// pass takes over what throttles and vessels now see; it gives the one that has moved most, nil
// where all are at rest.
func (n *Network) pass(g *gradient, links []Link, losses []vesselLaw, taken []float64, out *Answer) (worst *UnsettledError, err error) {
	most := quantity.Flow(1e-12)
	for _, q := range g.flow {
		most = max(most, abs(q))
	}
	furthest := most * closeEnough * 10
	set := func(old *quantity.Flow, now quantity.Flow, what string, i, from, to int) {
		if by := abs(*old - now); by > furthest {
			furthest, worst = by, &UnsettledError{what, i, from, to, *old, now}
		}
		*old = now
	}
	for i, t := range n.Throttles {
		in := quantity.Flow(-taken[t.From])
		for j, l := range links {
			if l.To == t.From {
				in += g.flow[j]
			}
			if l.From == t.From {
				in -= g.flow[j]
			}
		}
		set(&out.Throttle[i], in, "throttle", i, t.From, t.To)
	}
	for i, v := range n.Vessels {
		feed := g.flow[len(n.Links)+i]
		set(&out.Feed[i], feed, "vessel", i, v.Feed, v.Brine)
		if feed <= 0 || out.Pressure[v.Feed] <= 0 {
			set(&out.Product[i], 0, "vessel", i, v.Feed, v.Brine)
			continue
		}
		product, loss, err := v.Makes(out.Pressure[v.Feed], feed)
		if err != nil {
			return nil, err
		}
		if !finite(float64(product)) || !finite(float64(loss)) {
			return nil, &UnsettledError{"vessel", i, v.Feed, v.Brine, feed, quantity.Flow(math.NaN())}
		}
		set(&out.Product[i], product, "vessel", i, v.Feed, v.Brine)
		losses[i].Law = Square{feed, max(loss, 1)}
	}
	return worst, nil
}

// vesselLaw is a law that is put right at every pass.
type vesselLaw struct{ Law }

func (n *Network) check() error {
	var errs []error
	inside := func(node int) {
		if node < 0 || node >= n.Nodes {
			errs = append(errs, fmt.Errorf("node %d is not one of the %d of the network", node, n.Nodes))
		}
	}
	number := func(x float64, what string, node int) {
		if !finite(x) {
			errs = append(errs, fmt.Errorf("the %s at node %d is not a finite number", what, node))
		}
	}
	for _, l := range n.Links {
		inside(l.From)
		inside(l.To)
	}
	for _, f := range n.Fixed {
		inside(f.Node)
		number(float64(f.Pressure), "pressure", f.Node)
	}
	for _, t := range n.Taken {
		inside(t.Node)
		number(float64(t.Flow), "flow taken", t.Node)
	}
	for _, t := range n.Throttles {
		inside(t.From)
		inside(t.To)
		number(float64(t.Holds), "pressure held", t.From)
	}
	for _, v := range n.Vessels {
		inside(v.Feed)
		inside(v.Brine)
		inside(v.Product)
	}
	return errors.Join(errs...)
}
