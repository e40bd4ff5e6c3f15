package bom_test

import (
	"maps"
	"math"
	"slices"

	"handtight/bom"
	"handtight/bom/graph"
	"handtight/catalog"
)

// reference solves one stand on the ports themselves, without contracting anything:
// slow, and written from the rules alone. It shares nothing with the solver but the
// graph and the parts' figures.
//
// The rules, in short. Joined ports and open passages share a pressure. Water leaves at
// a boundary that takes it and into the inlet of a running positive displacement pump
// (not one that only stirs its own zone), there at what the feed gives; through a one-way
// forward, a running feed pump forward, a relief at its set on top of what the next zone
// leaves at, and a throttle: the hand holds the duty over all throttles of a way; a membrane
// is no way out. A back-pressure regulator opens at its set as a relief does, and what comes
// before that is not let on; without a set it is a throttle of one direction. A positive displacement pump pushes to the
// way out and at most to its stall; what it pushes goes on through what is open to it,
// never to more than the next port leaves at. Feed pumps and supplies push with their
// own pressure, held by a relief, each pump once. A zone that a running pump empties,
// and no water reaches, stands at a vacuum.
type reference struct {
	sys   *bom.System
	st    stand
	edges []portEdge
	round int          // the feed pumps that water goes round through, a bit each
	lifts bool         // feed pressure opens a relief
	spent map[int]bool // edges that pass less than what is pushed there
}

// portEdge is a joint or a passage between two ports in a stand.
type portEdge struct {
	from, to int
	is       catalog.Flow
	unit     *graph.Unit // nil for a joint
}

func refer(sys *bom.System, st stand) *reference {
	r := &reference{sys: sys, st: st, spent: map[int]bool{}}
	for _, j := range sys.Graph.Joints {
		r.edges = append(r.edges, portEdge{j.A, j.B, catalog.Open, nil})
	}
	for _, u := range sys.Graph.Units {
		for way, p := range u.Passages() {
			r.edges = append(r.edges, portEdge{u.First + p.From, u.First + p.To, r.flow(u, p, way), u})
		}
	}
	return r
}

// flow says what a passage is in the stand.
func (r *reference) flow(u *graph.Unit, p catalog.Passage, way int) catalog.Flow {
	it, st := u.Item, r.st
	switch kind := it.Kind.Name; {
	case kind == "selector valve":
		stands := way == 0
		if st.swapped == u.Name {
			stands = way == 1
		}
		if st.between == u.Name {
			stands = it.Between == "open"
		}
		return open(stands)
	case slices.Contains(st.shut, u.Name):
		return catalog.Shut
	case st.opened == u.Name:
		return p.Is
	case it.Normal == "flush" || (kind == "solenoid valve" || kind == "flush timer valve") && it.Normal != "open":
		return open(st.flush)
	case it.Normal == "shut":
		return catalog.Shut
	case kind == "plunger pump" && st.stopped:
		return catalog.OneWay
	case kind == "feed pump" && st.still && it.Type == "centrifugal":
		return catalog.Open
	case kind == "feed pump" && st.still:
		return catalog.OneWay
	}
	return p.Is
}

func open(yes bool) catalog.Flow {
	if yes {
		return catalog.Open
	}
	return catalog.Shut
}

// spread lists the ports of the zone of a port by walking joints and open passages.
func (r *reference) spread(port int) map[int]bool {
	zone := map[int]bool{port: true}
	for grew := true; grew; {
		grew = false
		for _, e := range r.edges {
			if e.is == catalog.Open && zone[e.from] != zone[e.to] {
				zone[e.from], zone[e.to], grew = true, true, true
			}
		}
	}
	return zone
}

// stirs reports whether both ports of a passage are one zone.
func (r *reference) stirs(e portEdge) bool { return r.spread(e.from)[e.to] }

// run iterates a rule on every port until nothing changes.
func run(rule func() bool) {
	for rule() {
	}
}

func (r *reference) relief(u *graph.Unit) float64 {
	it := u.Item
	switch {
	case it.Set == nil:
		return math.Inf(1)
	case !r.st.atFull:
		return it.Set.Bar()
	case it.FullFlow != nil:
		return it.FullFlow.Bar()
	}
	return 1.1 * it.Set.Bar()
}

// leaves is the least pressure at which each port's water leaves: over all ways to where
// it can, the reliefs on them added up, and the duty once where a throttle is among them.
// The inlet of a running pump takes water at what stands there.
func (r *reference) leaves(stands []float64) []float64 {
	const open, throttled = 0, 1
	var out [2][]float64
	for k := range out {
		out[k] = make([]float64, len(r.sys.Graph.Ports))
		for p := range out[k] {
			out[k][p] = math.Inf(1)
		}
	}
	for i, e := range r.edges {
		if e.is == catalog.PositivePump && !r.stirs(e) && !r.spent[i] {
			least(out[open], e.from, stands[e.from])
		}
	}
	for p := range out[open] {
		if kind := r.sys.Graph.Ports[p].Unit.Item.Kind.Name; r.sys.Graph.AtBoundary(p) && kind != "house supply" {
			out[open][p] = 0
		}
	}
	run(func() bool {
		changed := false
		way := func(p int) float64 { return min(out[open][p], r.sys.Build.Duty.Pressure.Bar()+out[throttled][p]) }
		to := func(k, p, l, q int, adds float64) { changed = least(out[k], p, adds+out[l][q]) || changed }
		for i, e := range r.edges {
			if e.is == catalog.Recovery && !r.stirs(e) {
				changed = least(out[open], e.from, r.drives(e, way(e.to), way(r.side(e, "waste")))) || changed
			}
			if r.spent[i] {
				continue
			}
			for k := range out {
				switch e.is {
				case catalog.Open:
					to(k, e.from, k, e.to, 0)
					to(k, e.to, k, e.from, 0)
				case catalog.OneWay, catalog.FeedPump:
					to(k, e.from, k, e.to, 0)
				case catalog.Throttle:
					to(throttled, e.from, k, e.to, 0)
					to(throttled, e.to, k, e.from, 0)
				case catalog.Relief:
					to(k, e.from, k, e.to, r.relief(e.unit))
				case catalog.Regulator:
					if set := e.unit.Item.Set; set != nil {
						to(k, e.from, k, e.to, set.Bar())
					} else {
						to(throttled, e.from, k, e.to, 0)
					}
				}
			}
		}
		return changed
	})
	duty := r.sys.Build.Duty.Pressure.Bar()
	for p := range out[open] {
		least(out[open], p, duty+out[throttled][p])
	}
	return out[open]
}

func least(v []float64, i int, to float64) bool {
	if v[i] <= to {
		return false
	}
	v[i] = to
	return true
}

func greatest(v []float64, i int, to float64) bool {
	if v[i] >= to {
		return false
	}
	v[i] = to
	return true
}

// pushed is the highest pressure that positive displacement pumps give each port.
func (r *reference) pushed(leave, fed []float64) []float64 {
	v := make([]float64, len(leave))
	for _, e := range r.edges {
		if e.is != catalog.PositivePump || r.stirs(e) {
			continue
		}
		p := leave[e.to]
		if e.unit.Item.Stall != nil {
			p = min(p, e.unit.Item.Stall.Bar())
		}
		greatest(v, e.to, p)
	}
	pass := func() { r.passOn(v, leave) }
	pass()
	r.lift(v, fed, leave, pass)
	return v
}

// passOn hands on what is pushed.
func (r *reference) passOn(v, leave []float64) {
	run(func() bool {
		changed := false
		pass := func(from, to int) { changed = greatest(v, to, min(v[from], leave[to])) || changed }
		for _, e := range r.edges {
			switch e.is {
			case catalog.Open, catalog.Throttle:
				pass(e.from, e.to)
				pass(e.to, e.from)
			case catalog.OneWay, catalog.FeedPump, catalog.Membrane, catalog.Recovery:
				pass(e.from, e.to)
			case catalog.Relief:
				if e.unit.Item.Set != nil && v[e.from] >= e.unit.Item.Set.Bar() {
					pass(e.from, e.to)
				}
			case catalog.Regulator:
				if set := e.unit.Item.Set; set == nil || v[e.from] >= set.Bar() {
					pass(e.from, e.to)
				}
			}
		}
		return changed
	})
}

// fed is the highest pressure that feed pumps and supplies give each port: the greatest
// over all walks that take no pump twice, one walk after the other.
func (r *reference) fed(leave []float64) []float64 {
	v := make([]float64, len(leave))
	held := r.held(leave)
	type visit struct {
		port int
		used uint64
	}
	best := map[visit]float64{}
	var walk func(at visit, bar float64)
	walk = func(at visit, bar float64) {
		bar = min(bar, held[at.port])
		if old, seen := best[at]; seen && old >= bar || bar <= 0 {
			return
		}
		best[at] = bar
		greatest(v, at.port, bar)
		pumps := 0
		for _, e := range r.edges {
			bit := uint64(0)
			if e.is == catalog.FeedPump {
				bit = 1 << pumps
				pumps++
			}
			both := e.is == catalog.Open || e.is == catalog.Throttle
			switch {
			case e.from == at.port && bit != 0:
				switch {
				case at.used&bit != 0:
					r.round |= int(bit)
				case !r.stirs(e):
					walk(visit{e.to, at.used | bit}, bar+e.unit.Item.Shutoff.Bar())
				}
			case e.from == at.port && (both || e.is == catalog.OneWay || e.is == catalog.PositivePump || e.is == catalog.Membrane || e.is == catalog.Recovery):
				walk(visit{e.to, at.used}, r.dropped(e, bar, leave[e.to]))
			case e.from == at.port && e.is == catalog.Relief:
				if set := e.unit.Item.Set; set != nil && bar >= set.Bar() {
					r.lifts = true
					walk(visit{e.to, at.used}, min(bar, leave[e.to]))
				}
			case e.from == at.port && e.is == catalog.Regulator:
				if set := e.unit.Item.Set; set == nil || bar >= set.Bar() {
					r.lifts = r.lifts || set != nil
					walk(visit{e.to, at.used}, min(bar, leave[e.to]))
				}
			case e.to == at.port && both:
				walk(visit{e.from, at.used}, r.dropped(e, bar, leave[e.from]))
			}
		}
	}
	for p := range v {
		if it := r.sys.Graph.Ports[p].Unit.Item; it.Pressure != nil {
			walk(visit{p, 0}, it.Pressure.Bar())
		}
	}
	pumps := 0
	for _, e := range r.edges {
		if e.is == catalog.FeedPump {
			if !r.stirs(e) {
				walk(visit{e.to, 1 << pumps}, e.unit.Item.Shutoff.Bar())
			}
			pumps++
		}
	}
	return v
}

// dropped is what of a feed pressure comes through an edge.
func (r *reference) dropped(e portEdge, bar, leaves float64) float64 {
	if e.is == catalog.Throttle || e.is == catalog.Membrane {
		return min(bar, leaves)
	}
	return bar
}

// held is what the reliefs of a port's zone hold its feed pressure to.
func (r *reference) held(leave []float64) []float64 {
	v := make([]float64, len(leave))
	for p := range v {
		v[p] = math.Inf(1)
	}
	for i, e := range r.edges {
		if e.is != catalog.Relief || r.stirs(e) || r.spent[i] {
			continue
		}
		flow, known := r.fedFlow(e, oneOf(catalog.OneWay, catalog.PositivePump, catalog.Regulator, catalog.Recovery, catalog.Relief, catalog.Throttle))
		if passes, ok := stated(e.unit.Item.Flow); ok && known && passes < flow*(1-1e-9) {
			continue
		}
		for p := range r.spread(e.from) {
			least(v, p, r.relief(e.unit)+leave[e.to])
		}
	}
	return v
}

// starved says which ports stand at a vacuum.
func (r *reference) starved() []bool {
	n := len(r.sys.Graph.Ports)
	fed, drawn := make([]bool, n), make([]bool, n)
	for p := range fed {
		kind := r.sys.Graph.Ports[p].Unit.Item.Kind.Name
		fed[p] = r.sys.Graph.AtBoundary(p) && kind != "drain" && kind != "overboard" && r.sys.Graph.Ports[p].Unit.Name != r.st.dry
	}
	forward := func(is catalog.Flow) bool {
		return is == catalog.OneWay || is == catalog.FeedPump || is == catalog.PositivePump || is == catalog.Throttle || is == catalog.Regulator || is == catalog.Recovery
	}
	spread := func(v []bool, from, to int) bool {
		if !v[from] || v[to] {
			return false
		}
		v[to] = true
		return true
	}
	run(func() bool {
		changed := false
		for _, e := range r.edges {
			if e.is == catalog.Open {
				changed = spread(fed, e.from, e.to) || spread(fed, e.to, e.from) || changed
			} else if forward(e.is) {
				changed = spread(fed, e.from, e.to) || changed
			}
		}
		return changed
	})
	for _, e := range r.edges {
		if (e.is == catalog.PositivePump || e.is == catalog.FeedPump) && !r.stirs(e) {
			drawn[e.from] = true
		}
	}
	r.outrun(fed, forward)
	run(func() bool {
		changed := false
		for _, e := range r.edges {
			if e.is == catalog.Open {
				changed = spread(drawn, e.from, e.to) || spread(drawn, e.to, e.from) || changed
			} else if forward(e.is) && !fed[e.to] {
				changed = spread(drawn, e.to, e.from) || changed
			}
		}
		return changed
	})
	for p := range drawn {
		drawn[p] = drawn[p] && !fed[p]
	}
	return drawn
}

// outrun takes the water from the zones that positive pumps draw more from than others, which
// alone bring it, deliver.
func (r *reference) outrun(fed []bool, forward func(catalog.Flow) bool) {
	done := map[int]bool{}
	for p := range fed {
		zone := r.spread(p)
		first := slices.Min(slices.Collect(maps.Keys(zone)))
		if done[first] || !fed[p] {
			continue
		}
		done[first] = true
		comes, goes, known := 0.0, 0.0, true
		for _, e := range r.edges {
			switch {
			case e.is == catalog.Open, zone[e.from] == zone[e.to]:
			case e.is == catalog.PositivePump && zone[e.from]:
				flow, ok := stated(e.unit.Item.Flow)
				goes, known = goes+flow, known && ok
			case e.is == catalog.PositivePump && zone[e.to] && fed[e.from]:
				flow, ok := stated(e.unit.Item.Flow)
				comes, known = comes+flow, known && ok
			case forward(e.is) && zone[e.to] && fed[e.from], e.is == catalog.Throttle && zone[e.from]:
				known = false
			}
		}
		if known && comes > 0 && comes < goes*(1-1e-9) {
			for q := range zone {
				fed[q] = r.givesAt(zone)
			}
		}
	}
}

// givesAt reports whether a zone has an end that gives water.
func (r *reference) givesAt(zone map[int]bool) bool {
	for p := range zone {
		u := r.sys.Graph.Ports[p].Unit
		if kind := u.Item.Kind.Name; r.sys.Graph.AtBoundary(p) && kind != "drain" && kind != "overboard" && u.Name != r.st.dry {
			return true
		}
	}
	return false
}

// waysOut finds the ways out, with what stands at the inlets of the pumps.
func (r *reference) waysOut(stands []float64) []float64 {
	clear(r.spent)
	leave := r.leaves(stands)
	for r.giveWay(leave, stands) {
		leave = r.leaves(stands)
	}
	return leave
}

// levels solves the stand: the highest and the lowest pressure of every port.
func (r *reference) levels() []level {
	leave := r.waysOut(make([]float64, len(r.sys.Graph.Ports)))
	leave = r.waysOut(r.fed(leave)) // now that it is known what stands at the inlets
	fed, starved := r.fed(leave), r.starved()
	pushed := r.pushed(leave, fed)
	out := make([]level, len(leave))
	for p := range out {
		out[p].high = max(pushed[p], fed[p])
		if starved[p] {
			out[p].low = -1
		}
	}
	return out
}
