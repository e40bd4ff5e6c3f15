package network_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/pressure/network"
)

// An energy-recovery pump in every state, by the forces on its piston: area 1, rod r, the feed
// and the brine push one way, what goes out high and the waste push back:
//
//	feed + (1-r) brine = high + (1-r) waste
//
// Where the brine comes back at the pressure of the high side, feed = r high + (1-r) waste.
// Waste or brine return shut, the piston stands still and its check valves let the feed through
// to the high side: all stand at one pressure, the waste too. Of the flow, r goes out high and
// 1-r by the waste; the 8 L/min are common practice, no source. The cases were written before the solver was asked; no outside source.
func TestEnergyRecoveryPumpInEveryState(t *testing.T) {
	const feed, high, waste, product, brine, r = 1, 2, 3, 4, 6, 0.1
	type levels struct{ feed, high, waste, product float64 }
	type state struct {
		driver             network.Edge
		fed                bool // by a feed pump, not a positive one
		shut               map[string]bool
		onFeed, onHigh     *network.Edge
		wasteBy, throttled bool // waste through a relief at 3; a throttle in the brine's way
		noRatio            bool
	}
	some := func(e network.Edge) *network.Edge { return &e }
	only := func(names ...string) map[string]bool {
		m := map[string]bool{}
		for _, n := range names {
			m[n] = true
		}
		return m
	}
	at70, at9 := some(relief(68, 70, 0)), some(relief(8, 9, 0))
	feed6 := network.Edge{Shutoff: bar(6), Flow: flow(8)}
	for _, c := range []struct {
		why  string
		s    state
		want levels
	}{
		{"positive pump: the high side opens at 70, a tenth of that drives it", state{driver: pump8, onHigh: at70}, levels{7, 70, 0, 0}},
		{"nothing opens on either side", state{driver: pump8}, levels{inf, inf, 0, 0}},
		{"a pump that stalls at 5", state{driver: network.Edge{Flow: flow(8), Stall: bar(5)}}, levels{5, 50, 0, 0}},
		{"waste shut, relief on the high side", state{driver: pump8, onHigh: at70, shut: only("waste")}, levels{70, 70, 70, 0}},
		{"waste shut, relief on the feed side", state{driver: pump8, onFeed: at9, shut: only("waste")}, levels{9, 9, 9, 0}},
		{"waste shut, reliefs on both", state{driver: pump8, onFeed: at9, onHigh: at70, shut: only("waste")}, levels{9, 9, 9, 0}},
		{"waste shut, no relief", state{driver: pump8, shut: only("waste")}, levels{inf, inf, inf, 0}},
		{"waste shut, and the pump stalls at 5", state{driver: network.Edge{Flow: flow(8), Stall: bar(5)}, shut: only("waste")}, levels{5, 5, 5, 0}},
		{"waste and product shut", state{driver: pump8, onHigh: at70, shut: only("waste", "product")}, levels{70, 70, 70, 70}},
		{"waste through a valve that opens at 3.3: 0.1 x 70 + 0.9 x 3.3", state{driver: pump8, onHigh: at70, wasteBy: true}, levels{9.97, 70, 3.3, 0}},
		{"brine return shut: the piston stands, the feed goes through", state{driver: pump8, onHigh: at70, shut: only("brine")}, levels{70, 70, 0, 0}},
		{"brine return shut, no relief", state{driver: pump8, shut: only("brine")}, levels{inf, inf, 0, 0}},
		{"brine return shut, relief on the feed side: no more than it was driven to", state{driver: pump8, onFeed: at9, shut: only("brine")}, levels{9, 90, 0, 0}},
		{"a throttle in the brine's way may leave it nothing", state{driver: pump8, onHigh: at70, throttled: true}, levels{70, 70, 0, 0}},
		{"product shut", state{driver: pump8, onHigh: at70, shut: only("product")}, levels{7, 70, 0, 70}},
		{"product shut, no relief", state{driver: pump8, shut: only("product")}, levels{inf, inf, 0, inf}},
		{"feed shut before the pump: it pushes what it has", state{driver: pump8, onHigh: at70, shut: only("source")}, levels{7, 70, 0, 0}},
		{"the valve after the pump shut", state{driver: pump8, onHigh: at70, shut: only("recovery")}, levels{inf, 0, 0, 0}},
		{"relief on the feed side alone guards the high side", state{driver: pump8, onFeed: at9}, levels{9, 90, 0, 0}},
		{"reliefs on both, the high one opens first", state{driver: pump8, onFeed: at9, onHigh: at70}, levels{7, 70, 0, 0}},
		{"ratio not said: the feed goes through at worst", state{driver: pump8, onHigh: at70, noRatio: true}, levels{70, 70, 0, 0}},
		{"ratio not said, waste shut", state{driver: pump8, onHigh: at70, noRatio: true, shut: only("waste")}, levels{70, 70, 70, 0}},
		{"a tenth of 8 L/min goes high: a relief of 1 passes it", state{driver: pump8, onHigh: some(relief(68, 70, 1))}, levels{7, 70, 0, 0}},
		{"one of 0.5 does not", state{driver: pump8, onHigh: some(relief(68, 70, 0.5))}, levels{inf, inf, 0, 0}},
		{"one of 0.5, and one on the feed side", state{driver: pump8, onFeed: at9, onHigh: some(relief(68, 70, 0.5))}, levels{9, 90, 0, 0}},
		{"waste shut, all 8 go through: a relief of 1 does not pass them", state{driver: pump8, onHigh: some(relief(68, 70, 1)), shut: only("waste")}, levels{inf, inf, inf, 0}},
		{"waste shut, one of 8 does", state{driver: pump8, onHigh: some(relief(68, 70, 8)), shut: only("waste")}, levels{70, 70, 70, 0}},
		{"feed pump, waste shut: the feed's pressure stands in all of it", state{fed: true, driver: feed6, shut: only("waste")}, levels{6, 6, 6, 0}},
		{"feed pump, waste shut, product shut", state{fed: true, driver: feed6, shut: only("waste", "product")}, levels{6, 6, 6, 6}},
		{"feed pump, product shut", state{fed: true, driver: feed6, shut: only("product")}, levels{6, 60, 0, 60}},
		{"feed pump, brine return shut: no more than it was driven to", state{fed: true, driver: feed6, shut: only("brine")}, levels{6, 60, 0, 0}},
		{"feed pump, a relief on the high side of 1 L/min", state{fed: true, driver: feed6, onHigh: some(relief(50, 52, 1))}, levels{6, 52, 0, 0}},
		{"feed pump, one too small for a tenth of its flow", state{fed: true, driver: feed6, onHigh: some(relief(50, 52, 0.5))}, levels{6, 60, 0, 0}},
		{"feed pump, waste shut, the high side open at 1: (6 - 0.1 x 1) / 0.9", state{fed: true, driver: feed6, onHigh: some(relief(0.9, 1, 0)), shut: only("waste")}, levels{6, 1, 5.9 / 0.9, 0}},
	} {
		t.Run(c.why, func(t *testing.T) {
			d, shut := sea(), map[int]bool{}
			put := func(name string, kind network.Kind, from, to int, e network.Edge) {
				shut[len(d.edges)] = c.s.shut[name]
				d.add(kind, from, to, e)
			}
			put("source", network.Open, 0, 7, none)
			driver := network.PositivePump
			if c.s.fed {
				driver = network.FeedPump
			}
			put("driver", driver, 7, feed, c.s.driver)
			e := network.Edge{Waste: waste, Brine: brine, Ratio: network.Figure[float64]{Value: r, Known: !c.s.noRatio}}
			put("recovery", network.Recovery, feed, high, e)
			back := network.Open
			if c.s.throttled {
				back = network.Throttle
			}
			put("brine", back, high, brine, none)
			if c.s.wasteBy {
				put("waste", network.Relief, waste, 0, relief(3, 3.3, 0))
			} else {
				put("waste", network.OneWay, waste, 0, none)
			}
			put("", network.Membrane, high, product, none)
			put("product", network.OneWay, product, 5, none)
			d.ends = append(d.ends, network.Boundary{Node: 5, Takes: true})
			if c.s.onFeed != nil {
				put("", network.Relief, feed, 0, *c.s.onFeed)
			}
			if c.s.onHigh != nil {
				put("", network.Relief, high, 0, *c.s.onHigh)
			}
			for i, yes := range shut {
				if yes {
					d.kinds[i] = network.Shut
				}
			}
			f := d.solve(-1, true)
			got := []float64{f.High(feed).Bar(), f.High(high).Bar(), f.High(waste).Bar(), f.High(product).Bar()}
			require.InDeltaSlice(t, []float64{c.want.feed, c.want.high, c.want.waste, c.want.product}, got, 1e-9, "%v", got)
		})
	}
}
