package network_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/network"
	"handtight/pressure/quantity"
)

// A drawn network: node 0 is the sea, that gives and takes.
type drawing struct {
	edges []network.Edge
	kinds []network.Kind
	ends  []network.Boundary
	nodes int
	duty  float64
}

func sea() *drawing {
	return &drawing{ends: []network.Boundary{{Node: 0, Takes: true, Gives: true}}, nodes: 1}
}

func (d *drawing) add(kind network.Kind, from, to int, e network.Edge) *drawing {
	e.ID, e.From, e.To = len(d.edges), from, to
	d.edges, d.kinds = append(d.edges, e), append(d.kinds, kind)
	d.nodes = max(d.nodes, from+1, to+1, e.Waste+1)
	return d
}

func (d *drawing) solve(shut int, fullFlow bool) network.Field {
	n := network.Network{Nodes: d.nodes, Edges: d.edges, Kinds: d.kinds, Boundaries: d.ends, Duty: quantity.Pressure(d.duty) * quantity.Bar}
	if shut >= 0 {
		n.Kinds = slices.Clone(n.Kinds)
		n.Kinds[shut] = network.Shut
	}
	return network.Solve(n, fullFlow)
}

func bar(v float64) network.Figure[quantity.Pressure] {
	return network.Figure[quantity.Pressure]{Value: quantity.Pressure(v) * quantity.Bar, Known: true}
}

func flow(litresPerMinute float64) network.Figure[quantity.Flow] {
	return network.Figure[quantity.Flow]{Value: quantity.Flow(litresPerMinute) * quantity.LitrePerMinute, Known: true}
}

var (
	inf   = math.Inf(1)
	none  = network.Edge{}
	pump8 = network.Edge{Flow: flow(8)} // common practice: what the small pumps of the trade deliver
)

func relief(set, full, passes float64) network.Edge {
	e := network.Edge{Set: bar(set), FullFlow: bar(full)}
	if passes > 0 {
		e.Capacity = flow(passes)
	}
	return e
}

// Several reliefs on one zone, by hand: they open in the order of their sets, and the
// pressure stands at the full-flow figure of the first that passes, with all that opened
// before it, the whole flow of the pumps. The figures of the first three rows are a worked
// example of our own rules; no outside source.
func TestReliefsInTheOrderOfTheirSets(t *testing.T) {
	small, other := relief(65, 68, 5), relief(70, 80, 5)
	for _, c := range []struct {
		why     string
		reliefs []network.Edge
		pumps   []network.Edge
		want    float64
	}{
		{"two of 5 L/min for 8: the second passes the rest", []network.Edge{small, other}, []network.Edge{pump8}, 80},
		{"the order in which they are drawn is none of opening", []network.Edge{other, small}, []network.Edge{pump8}, 80},
		{"alone the first bounds nothing", []network.Edge{small}, []network.Edge{pump8}, inf},
		{"one that passes all", []network.Edge{relief(65, 68, 8), other}, []network.Edge{pump8}, 68},
		{"one of unknown capacity is taken to pass it", []network.Edge{relief(65, 71.5, 0)}, []network.Edge{pump8}, 71.5},
		{"behind one too small, one of unknown capacity", []network.Edge{small, relief(90, 99, 0)}, []network.Edge{pump8}, 99},
		{"all together too small", []network.Edge{small, relief(70, 80, 2)}, []network.Edge{pump8}, inf},
		{"two pumps deliver together", []network.Edge{relief(65, 68, 8)}, []network.Edge{pump8, {Flow: flow(4)}}, inf},
		{"and one that stalls goes no further than that", []network.Edge{small}, []network.Edge{{Flow: flow(8), Stall: bar(120)}}, 120},
		{"a pump of unknown flow: nobody can say that it does not pass", []network.Edge{small}, []network.Edge{none}, 68},
	} {
		t.Run(c.why, func(t *testing.T) {
			d := sea()
			for _, p := range c.pumps {
				d.add(network.PositivePump, 0, 1, p)
			}
			for _, r := range c.reliefs {
				d.add(network.Relief, 1, 0, r)
			}
			f := d.solve(-1, true)
			require.InDelta(t, c.want, f.High(1).Bar(), 1e-9)
			require.Zero(t, f.High(0).Bar())
		})
	}
	d := sea().add(network.PositivePump, 0, 1, pump8).add(network.Relief, 1, 0, small).add(network.Relief, 1, 0, other)
	f := d.solve(-1, false)
	require.InDelta(t, 70, f.High(1).Bar(), 1e-9, "both begin to open: the second at its set")
	d.duty = 55
	f = d.add(network.Throttle, 1, 2, none).add(network.OneWay, 2, 0, none).solve(-1, true)
	require.InDelta(t, 55, f.High(1).Bar(), 1e-9, "the throttle takes the flow at the duty")
	f = d.solve(3, true)
	require.InDelta(t, 80, f.High(1).Bar(), 1e-9, "and shut it does not")
}

// Any reliefs on the line of a pump: the figure is that of the rule, gone through one by one.
func TestReliefsByTheRule(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := sea().add(network.PositivePump, 0, 1, pump8)
		type one struct{ set, passes int }
		var all []one
		for range rapid.IntRange(0, 5).Draw(t, "reliefs") {
			r := one{rapid.IntRange(1, 9).Draw(t, "set") * 10, rapid.IntRange(0, 9).Draw(t, "passes")}
			all = append(all, r)
			d.add(network.Relief, 1, 0, relief(float64(r.set), float64(r.set+1), float64(r.passes)))
		}
		want, passes := inf, 0
		for set := 10; set <= 90 && math.IsInf(want, 1); set += 10 {
			for _, r := range all {
				if r.set != set {
					continue
				}
				if passes += r.passes; r.passes == 0 || passes >= 8 {
					want = float64(set + 1)
				}
			}
		}
		f := d.solve(-1, true)
		require.Equal(t, want, f.High(1).Bar())
	})
}

// A way out that stands higher, drawn first: what the lower one does not pass still leaves by it,
// at its figure. 16 L/min come; one inlet takes 8 at nothing, another behind a feed pump 8 at 6 bar.
func TestTheLowestGivesWayFirst(t *testing.T) {
	d := sea().add(network.PositivePump, 0, 1, pump8).add(network.PositivePump, 0, 1, pump8)
	d.add(network.FeedPump, 1, 2, network.Edge{Shutoff: bar(6)})
	d.add(network.PositivePump, 2, 3, pump8).add(network.OneWay, 3, 5, none)
	d.add(network.PositivePump, 1, 4, pump8).add(network.OneWay, 4, 5, none)
	d.ends = append(d.ends, network.Boundary{Node: 5, Takes: true})
	f := d.solve(-1, true)
	require.InDelta(t, 6, f.High(1).Bar(), 1e-9)
}

// Two positive pumps one after the other: what the first delivers beyond what the second
// takes finds its own way out, and what it lacks is a vacuum before the second.
func TestPositivePumpsInSeries(t *testing.T) {
	line := func(first, second float64, extra ...network.Edge) *drawing {
		d := sea().add(network.PositivePump, 0, 1, network.Edge{Flow: flow(first)}).add(network.PositivePump, 1, 2, network.Edge{Flow: flow(second)}).add(network.Throttle, 2, 3, none).add(network.OneWay, 3, 0, none)
		d.duty = 55
		for _, e := range extra {
			d.add(network.Relief, 1, 0, e)
		}
		return d
	}
	for _, c := range []struct {
		why           string
		d             *drawing
		high, low, to float64
	}{
		{"the same flow", line(8, 8), 0, 0, 55},
		{"the first delivers more, and nothing else opens", line(8, 6), inf, 0, 55},
		{"a relief between takes the rest", line(8, 6, relief(10, 11, 2)), 11, 0, 55},
		{"one too small does not", line(8, 6, relief(10, 11, 1)), inf, 0, 55},
		{"the second takes more than the first delivers", line(6, 8), 0, network.Vacuum.Bar(), 55},
	} {
		t.Run(c.why, func(t *testing.T) {
			f := c.d.solve(-1, true)
			require.Equal(t, c.high, f.High(1).Bar())
			require.Equal(t, c.low, f.Low(1).Bar())
			require.Equal(t, c.to, f.High(2).Bar())
		})
	}
}

// An energy-recovery pump by hand: area balance of a piston with a rod of ratio r, no flow
// through the membrane, so that the high side stands at the driving pressure over r.
func TestEnergyRecoveryPump(t *testing.T) {
	const feed, high, brine, waste, product = 1, 2, 2, 3, 4
	plant := func(r float64, more func(d *drawing)) *drawing {
		d := sea().add(network.FeedPump, 0, feed, network.Edge{Shutoff: bar(6)})
		e := network.Edge{Waste: waste, Brine: brine}
		if r > 0 {
			e.Ratio = network.Figure[float64]{Value: r, Known: true}
		}
		d.add(network.Recovery, feed, high, e).add(network.OneWay, waste, 0, none)
		d.add(network.Membrane, brine, product, none).add(network.OneWay, product, 5, none)
		d.ends = append(d.ends, network.Boundary{Node: 5, Takes: true})
		if more != nil {
			more(d)
		}
		return d
	}
	f := plant(0.1, nil).solve(-1, true)
	require.InDelta(t, 6, f.High(feed).Bar(), 1e-9)
	require.InDelta(t, 60, f.High(high).Bar(), 1e-9, "6 bar over a tenth")
	require.Zero(t, f.High(waste).Bar())
	require.Zero(t, f.High(product).Bar())
	f = plant(0.1, nil).solve(2, true)
	require.InDelta(t, 6, f.High(high).Bar(), 1e-9, "its waste shut stops it: the feed's pressure stands everywhere")
	f = plant(0.1, func(d *drawing) { d.add(network.Relief, feed, 0, relief(4, 4.4, 0)) }).solve(-1, true)
	require.InDelta(t, 44, f.High(high).Bar(), 1e-9, "a relief on the feed side guards the high side at its figure over r")
	f = plant(0.1, func(d *drawing) { d.add(network.Relief, high, 0, relief(50, 52, 0)) }).solve(-1, true)
	require.InDelta(t, 52, f.High(high).Bar(), 1e-9, "one on the high side too")
	f = plant(0.1, func(d *drawing) { d.add(network.Relief, high, 0, relief(70, 77, 0)) }).solve(-1, true)
	require.InDelta(t, 60, f.High(high).Bar(), 1e-9, "but not above what it is driven to")
	f = plant(0, nil).solve(-1, true)
	require.Equal(t, inf, f.High(high).Bar(), "without the ratio nobody can say")
	f = plant(0.1, nil).solve(0, true)
	require.Zero(t, f.High(high).Bar(), "no feed, no pressure")
}

// A back-pressure regulator holds what is set before it and opens on its own.
func TestRegulator(t *testing.T) {
	plant := func(e network.Edge) *drawing {
		d := sea().add(network.PositivePump, 0, 1, pump8).add(network.Regulator, 1, 2, e).add(network.OneWay, 2, 0, none)
		d.duty = 40
		return d
	}
	f := plant(network.Edge{Holds: bar(57)}).solve(-1, true)
	require.InDelta(t, 57, f.High(1).Bar(), 1e-9)
	require.Zero(t, f.High(2).Bar())
	f = plant(network.Edge{Holds: bar(57)}).solve(2, true)
	require.Equal(t, inf, f.High(1).Bar(), "its outlet shut: nothing opens")
	require.Equal(t, inf, f.High(2).Bar())
	f = plant(none).solve(-1, true)
	require.InDelta(t, 40, f.High(1).Bar(), 1e-9, "what it holds not said: the duty, as a throttle")
	d := sea().add(network.FeedPump, 0, 1, network.Edge{Shutoff: bar(2.5)}).add(network.Regulator, 1, 2, network.Edge{Holds: bar(57)}).add(network.OneWay, 2, 0, none)
	f = d.solve(-1, true)
	require.InDelta(t, 2.5, f.High(1).Bar(), 1e-9)
	require.Zero(t, f.High(2).Bar(), "the feed's pressure does not open it")
}
