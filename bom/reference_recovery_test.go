package bom_test

import (
	"math"
	"slices"

	"handtight/catalog"
	"handtight/pressure/quantity"
)

// What the reference knows of energy-recovery pumps and of ways out that pass too little.
//
// An energy-recovery pump: feed + (1-r) brine = high + (1-r) waste. Driven by a positive pump
// it takes r of what its high side leaves at and 1-r of what its waste does, and never more
// than the high side, since its checks let the feed through; the latter alone where the brine
// does not come back undiminished. It lifts what drives it by 1/r, as long as the waste leaves
// anywhere; else its waste stands at what drives it.
//
// A relief of a stated capacity and the inlet of a positive pump of a stated flow pass no more
// than that. Of those that stand lowest, one that, with what has given way beside it, passes less
// than what is pushed there gives way, and the next is asked for. Where a flow is not stated
// nothing gives way.

func (r *reference) rod(e portEdge) (float64, bool) {
	if p := e.unit.Item.Process.Ratio; p != nil && *p > 0 {
		return p.Fraction(), true
	}
	return 0, false
}

func (r *reference) side(e portEdge, port string) int {
	return e.unit.First + e.unit.Item.PortIndex(port)
}

// onward lists the ports that water comes to from one, through what the rule lets it.
func (r *reference) onward(port int, goes func(catalog.Flow) bool) []bool {
	seen := make([]bool, len(r.sys.Graph.Ports))
	seen[port] = true
	run(func() bool {
		changed := false
		step := func(from, to int) {
			if seen[from] && !seen[to] {
				seen[to], changed = true, true
			}
		}
		for _, e := range r.edges {
			switch {
			case e.is == catalog.Open:
				step(e.from, e.to)
				step(e.to, e.from)
			case e.is == catalog.Throttle && goes(e.is):
				step(e.from, e.to)
				step(e.to, e.from)
			case goes(e.is):
				step(e.from, e.to)
			}
		}
		return changed
	})
	return seen
}

func oneOf(list ...catalog.Flow) func(catalog.Flow) bool {
	return func(f catalog.Flow) bool { return slices.Contains(list, f) }
}

func (r *reference) brineReturns(e portEdge) bool {
	return r.onward(e.to, oneOf(catalog.OneWay, catalog.FeedPump))[r.side(e, "brine")]
}

// drives is what drives an energy-recovery pump, by what its sides leave at.
func (r *reference) drives(e portEdge, high, waste float64) float64 {
	if rod, ok := r.rod(e); ok && r.brineReturns(e) && !math.IsInf(high, 1) {
		return min(high, rod*high+(1-rod)*waste)
	}
	return high
}

// stream is a flow that is pushed, and where it comes to.
type stream struct {
	flow          float64
	known         bool
	comes, beside []bool
}

func (r *reference) streamFrom(port int, flow float64, known bool) stream {
	let := []catalog.Flow{catalog.OneWay, catalog.FeedPump, catalog.Regulator, catalog.Throttle}
	return stream{flow, known, r.onward(port, oneOf(append(let, catalog.Relief)...)), r.onward(port, oneOf(let...))}
}

func stated(f *quantity.Flow) (float64, bool) {
	if f == nil {
		return 0, false
	}
	return float64(*f), true
}

// sum is what all streams bring to a port.
func sum(all []stream, port int) (flow float64, known bool) {
	known = true
	for _, s := range all {
		if s.comes[port] {
			flow, known = flow+s.flow, known && s.known
		}
	}
	return flow, known
}

// streams follows what is pushed, from pump to pump, as far as it goes.
func (r *reference) streams(leave []float64) []stream {
	var first []stream
	rods := 0
	for _, e := range r.edges {
		switch {
		case e.is == catalog.PositivePump && !r.stirs(e):
			flow, known := stated(e.unit.Item.Flow)
			first = append(first, r.streamFrom(e.to, flow, known))
		case e.is == catalog.Recovery && !r.stirs(e):
			rods++
		}
	}
	all := first
	for range rods {
		next := slices.Clone(first)
		for _, e := range r.edges {
			if e.is != catalog.Recovery || r.stirs(e) {
				continue
			}
			flow, known := sum(all, e.from)
			fed, ok := r.fedFlow(e, oneOf(catalog.OneWay, catalog.Regulator, catalog.Relief, catalog.Throttle))
			flow, known = flow+fed, known && ok
			if rod, ok := r.rod(e); ok && r.brineReturns(e) && !math.IsInf(leave[r.side(e, "waste")], 1) {
				next = append(next, r.streamFrom(r.side(e, "waste"), (1-rod)*flow, known))
				flow *= rod
			}
			next = append(next, r.streamFrom(e.to, flow, known))
		}
		all = next
	}
	return all
}

// fedFlow is what the feed pumps deliver that an edge gets, through what the rule lets it.
func (r *reference) fedFlow(to portEdge, goes func(catalog.Flow) bool) (flow float64, known bool) {
	kept := r.edges
	r.edges = slices.DeleteFunc(slices.Clone(kept), func(e portEdge) bool { return e == to })
	defer func() { r.edges = kept }()
	known = true
	for _, e := range kept {
		if e.is == catalog.FeedPump && !r.stirs(e) && r.onward(e.to, goes)[to.from] {
			f, ok := stated(e.unit.Item.Flow)
			flow, known = flow+f, known && ok
		}
	}
	return flow, known
}

// giveWay notes the lowest way out that passes less than it is asked to; false if all pass.
func (r *reference) giveWay(leave, stands []float64) bool {
	all := r.streams(leave)
	lowest, at := -1, math.Inf(1)
	for i, e := range r.edges {
		passes, ok := r.capacity(i)
		if !ok || r.spent[i] {
			continue
		}
		opens := stands[e.from]
		if e.is == catalog.Relief {
			opens = r.relief(e.unit) + leave[e.to]
		} else if r.takesAt(e.from) {
			continue
		}
		flow, known := sum(all, e.from)
		if opens > leave[e.from]+1e-9 || opens >= at || !known || flow == 0 {
			continue
		}
		for j, o := range r.edges {
			if r.spent[j] && slices.ContainsFunc(all, func(s stream) bool { return s.beside[e.from] && s.beside[o.from] }) {
				more, _ := r.capacity(j)
				passes += more
			}
		}
		if passes < flow*(1-1e-9) {
			lowest, at = i, opens
		}
	}
	if lowest < 0 {
		return false
	}
	r.spent[lowest] = true
	return true
}

func (r *reference) capacity(i int) (float64, bool) {
	e := r.edges[i]
	if (e.is == catalog.Relief || e.is == catalog.PositivePump) && !r.stirs(e) {
		return stated(e.unit.Item.Flow)
	}
	return 0, false
}

// takesAt reports whether the zone of a port has an end that takes water.
func (r *reference) takesAt(port int) bool {
	for p := range r.spread(port) {
		if r.sys.Graph.AtBoundary(p) && r.sys.Graph.Ports[p].Unit.Item.Kind.Name != "house supply" {
			return true
		}
	}
	return false
}

// lift adds to the pushed pressures what energy-recovery pumps do, each driven by the greatest
// of what stands before it.
func (r *reference) lift(pushed, fed, leave []float64, pass func()) {
	rods := 0
	for _, e := range r.edges {
		if e.is == catalog.Recovery && !r.stirs(e) {
			rods++
		}
	}
	for round := 0; ; round++ {
		changed := false
		for _, e := range r.edges {
			if e.is != catalog.Recovery || r.stirs(e) {
				continue
			}
			brine, waste := r.side(e, "brine"), r.side(e, "waste")
			stood := func(p int) float64 { return max(pushed[p], fed[p]) }
			drives, back := stood(e.from), stood(brine)
			if r.spread(e.to)[brine] {
				back = 0
			}
			if drives <= 0 && back <= 0 {
				continue
			}
			high, spills := math.Inf(1), math.Inf(1)
			rod, ok := r.rod(e)
			if math.IsInf(leave[waste], 1) {
				high = drives
			} else if ok {
				high = drives / rod
			}
			if leave[e.to] >= drives {
				spills = drives
			} else if ok {
				spills = (drives - rod*leave[e.to]) / (1 - rod)
			}
			if back > high { // another pump pushes it
				switch {
				case drives <= leave[e.to]:
					spills = back
				case ok:
					spills = back + (drives-leave[e.to])/(1-rod)
				}
				if !math.IsInf(leave[waste], 1) {
					high = max(high, drives+(1-rod)*back)
				}
			}
			if round > 2*rods && (high > pushed[e.to] || spills > pushed[waste]) {
				high, spills = math.Inf(1), math.Inf(1)
			}
			changed = greatest(pushed, e.to, min(high, leave[e.to])) || changed
			changed = greatest(pushed, waste, min(spills, leave[waste])) || changed
		}
		if !changed {
			return
		}
		pass()
	}
}
