package flow

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/process/line"
	"handtight/pressure/process/membrane"
	"handtight/pressure/process/pump"
	"handtight/pressure/quantity"
)

// Common practice, no source: 55 bar and 8 L/min below. Check values, and no limit rests on them.

const (
	bar = quantity.Bar
	lpm = quantity.LitrePerMinute
	mm  = quantity.Millimetre
)

func sea(t require.TestingT) line.Water {
	w, err := line.Of(20, 35)
	require.NoError(t, err)
	return w
}

func pipe(t require.TestingT, bore, metres, k float64) Pipe {
	return Pipe{Bore: line.Bore{Diameter: quantity.Length(bore), Length: quantity.Length(metres) * quantity.Metre, Roughness: 0.005 * mm}, K: k, Water: sea(t)}
}

func ExampleNetwork_Solve() {
	water, _ := line.Of(20, 35)
	hose := func(metres float64) Pipe {
		return Pipe{Bore: line.Bore{Diameter: 12.7 * quantity.Millimetre, Length: quantity.Length(metres) * quantity.Metre, Roughness: 0.005}, K: 5, Water: water}
	}
	n := Network{
		Nodes: 2,
		Links: []Link{{0, 1, hose(3)}, {0, 1, hose(1)}},
		Fixed: []Fixed{{1, 0}},
		Taken: []Taken{{0, -10 * quantity.LitrePerMinute}},
	}
	out, _ := n.Solve()
	fmt.Printf("%.2f and %.2f L/min\n", out.Flow[0].LitresPerMinute(), out.Flow[1].LitresPerMinute())
	// Output: 4.30 and 5.70 L/min
}

// Worked in the design: 4.30 and 5.70; a flush of 3 bar and 10 L/min through two hoses and
// what else loses 0.2 bar at 8 L/min runs at 8.06 L/min.
func TestWorkedExamples(t *testing.T) {
	n := Network{Nodes: 2, Links: []Link{{0, 1, pipe(t, 12.7, 3, 5)}, {0, 1, pipe(t, 12.7, 1, 5)}}, Fixed: []Fixed{{1, 0}}, Taken: []Taken{{0, -10 * lpm}}}
	out, err := n.Solve()
	require.NoError(t, err)
	require.InDelta(t, 4.30, out.Flow[0].LitresPerMinute(), 0.02)
	require.InDelta(t, 5.70, out.Flow[1].LitresPerMinute(), 0.02)

	house, _, err := pump.Between(3*bar, 10*lpm)
	require.NoError(t, err)
	n = Network{Nodes: 4, Fixed: []Fixed{{0, 0}, {3, 0}}, Links: []Link{
		{0, 1, Feed{house}}, {1, 2, pipe(t, 13, 3, 12)}, {2, 3, Laws{pipe(t, 9.5, 2, 10), Square{8 * lpm, 0.2 * bar}}},
	}}
	out, err = n.Solve()
	require.NoError(t, err)
	require.InDelta(t, 8.06, out.Flow[2].LitresPerMinute(), 0.04*8.06)
}

// A plunger pump of 7.68 L/min, one 2540, a throttle at 55 bar: brine is feed less product,
// the product is the membrane's own answer.
func TestAPlantWithAVessel(t *testing.T) {
	c, _ := membrane.ClassOf("2540")
	u, err := c.Element().Calibrate()
	require.NoError(t, err)
	row := membrane.Row{Units: []membrane.Unit{u}}
	solve := func(p quantity.Pressure, q quantity.Flow) (membrane.Result, error) {
		return row.Solve(membrane.Running{Pressure: p, Feed: q, Temperature: 18, Salinity: 35, Back: 0.2 * bar}, nil)
	}
	feed, _, err := pump.Between(2.5*bar, 14*lpm)
	require.NoError(t, err)
	// 0 sea, 1 behind the feed pump, 2 the piston pump's inlet, 3 its outlet, 4 brine, 5 overboard line, 6 sea, 7 product, 8 tank
	n := Network{Nodes: 9, Fixed: []Fixed{{0, 0}, {6, 0}, {8, 0}},
		Links:     []Link{{0, 1, Feed{feed}}, {1, 2, pipe(t, 19, 2, 8)}, {5, 6, pipe(t, 13, 2, 3)}, {7, 8, pipe(t, 7, 4, 3)}},
		Taken:     []Taken{{2, 7.68 * lpm}, {3, -7.68 * lpm}},
		Throttles: []Throttle{{4, 5, 55 * bar}},
		Vessels: []Vessel{{3, 4, 7, func(p quantity.Pressure, q quantity.Flow) (quantity.Flow, quantity.Pressure, error) {
			r, err := solve(p, q)
			return r.Product, r.Loss, err
		}}},
	}
	out, err := n.Solve()
	require.NoError(t, err)
	require.InDelta(t, 7.68, out.Feed[0].LitresPerMinute(), 1e-6)
	want, err := solve(out.Pressure[3], 7.68*lpm)
	require.NoError(t, err)
	require.InDelta(t, float64(want.Product), float64(out.Product[0]), 1e-5*float64(want.Product))
	require.InDelta(t, 67.9, out.Product[0].LitresPerHour(), 0.7)
	require.InDelta(t, (7.68*lpm - out.Product[0]).LitresPerMinute(), out.Throttle[0].LitresPerMinute(), 1e-4)
	require.InDelta(t, 7.68, out.Flow[1].LitresPerMinute(), 1e-6)
	require.Greater(t, out.Pressure[2], 0.8*bar)
	require.Less(t, out.Passes, 12)

	n.Vessels[0].Makes = func(quantity.Pressure, quantity.Flow) (quantity.Flow, quantity.Pressure, error) {
		return 0, 0, errors.New("broken")
	}
	_, err = n.Solve()
	require.ErrorContains(t, err, "broken")
}

func TestOneWayLetsNothingBack(t *testing.T) {
	n := Network{Nodes: 2, Fixed: []Fixed{{0, 0}, {1, bar}}, Links: []Link{{0, 1, OneWay{pipe(t, 12, 1, 2)}}}}
	out, err := n.Solve()
	require.NoError(t, err)
	require.InDelta(t, 0, out.Flow[0].LitresPerMinute(), 1e-4)
	n.Fixed[0].Pressure = 2 * bar
	out, err = n.Solve()
	require.NoError(t, err)
	require.Greater(t, out.Flow[0].LitresPerMinute(), 10.0)
	weak, _, err := pump.Between(bar, 10*lpm)
	require.NoError(t, err)
	n = Network{Nodes: 2, Fixed: []Fixed{{0, 0}, {1, 2 * bar}}, Links: []Link{{0, 1, Laws{Feed{weak}, Linear{lpm, 1000}, Rise{0}}}}}
	out, err = n.Solve()
	require.NoError(t, err)
	require.InDelta(t, 0, out.Flow[0].LitresPerMinute(), 1e-4, "a pump below what stands behind it")
}

func TestRefused(t *testing.T) {
	_, err := (&Network{Nodes: 1, Links: []Link{{0, 3, Rise{}}}}).Solve()
	require.Error(t, err)
	var loose *LooseError
	_, err = (&Network{Nodes: 2, Fixed: []Fixed{{0, 0}}}).Solve()
	require.ErrorAs(t, err, &loose)
	require.Equal(t, 1, loose.Node)
}

// Plants at random: the water of every node balances, and each link's law holds.
func TestBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := random(t, rapid.IntRange(2, 40).Draw(t, "nodes"), rapid.IntRange(0, 8).Draw(t, "meshes"))
		out, err := n.Solve()
		require.NoError(t, err)
		sum := make([]float64, n.Nodes)
		most := 1e-9
		for i, l := range n.Links {
			sum[l.From] -= float64(out.Flow[i])
			sum[l.To] += float64(out.Flow[i])
			most = max(most, float64(abs(out.Flow[i])))
			loss, _ := l.Law.Loss(out.Flow[i])
			require.InDelta(t, float64(loss), float64(out.Pressure[l.From]-out.Pressure[l.To]), 1e-4*float64(abs(loss))+20)
		}
		for _, k := range n.Taken {
			sum[k.Node] -= float64(k.Flow)
		}
		for v := 1; v < n.Nodes; v++ {
			require.InDelta(t, 0, sum[v], 1e-9*most+1e-15, "node %d", v)
		}
	})
}

// A flow near the least a number holds once made the friction factor infinite, and the
// pressure with it.
func TestNextToNoFlow(t *testing.T) {
	bore := line.Bore{Diameter: 8, Length: quantity.Metre, Roughness: 0.005}
	hose := func(k float64) Law {
		return Pipe{Bore: bore, K: k, Water: line.Water{Density: 1025, Viscosity: 1.1e-3}}
	}
	n := &Network{Nodes: 40, Fixed: []Fixed{{0, 0}}}
	for v := 1; v < 40; v++ {
		n.Links = append(n.Links, Link{0, v, hose(1)})
		n.Taken = append(n.Taken, Taken{v, lpm})
	}
	n.Taken[38].Flow = 1.1392378155556871e-305 * lpm
	n.Links = append(n.Links, Link{0, 1, hose(1.5)})
	out, err := n.Solve()
	require.NoError(t, err)
	for v, p := range out.Pressure {
		require.True(t, finite(float64(p)), "node %d: %v", v, p)
	}
	require.InDelta(t, 0, float64(out.Pressure[39]), 1e-9)
	require.InDelta(t, float64(lpm), float64(out.Flow[0]+out.Flow[39]), 1e-9*float64(lpm))
}

// What is no number is never taken for rest.
func TestNoNumberIsNoAnswer(t *testing.T) {
	for _, bad := range []float64{math.NaN(), math.Inf(1)} {
		n := &Network{Nodes: 3, Fixed: []Fixed{{0, 0}}, Taken: []Taken{{2, lpm}}, Links: []Link{{0, 1, Linear{lpm, 100}}, {1, 2, Rise{quantity.Pressure(bad)}}}}
		_, err := n.Solve()
		var unsettled *UnsettledError
		require.ErrorAs(t, err, &unsettled)
		require.ErrorIs(t, err, ErrNotFound)
		require.Equal(t, 1, unsettled.Index)
		n.Links[1].Law = Rise{0}
		n.Taken[0].Flow = quantity.Flow(bad)
		_, err = n.Solve()
		require.ErrorContains(t, err, "node 2 is not a finite number")
	}
}

func random(t *rapid.T, nodes, meshes int) *Network {
	water := line.Water{Density: 1025, Viscosity: 1.1e-3}
	n := &Network{Nodes: nodes, Fixed: []Fixed{{0, 0}}}
	hose := func() Law {
		return Pipe{Bore: line.Bore{Diameter: quantity.Length(rapid.Float64Range(8, 30).Draw(t, "bore")), Length: quantity.Metre, Roughness: 0.005}, K: rapid.Float64Range(0, 20).Draw(t, "K"), Water: water}
	}
	for v := 1; v < nodes; v++ {
		n.Links = append(n.Links, Link{rapid.IntRange(0, v-1).Draw(t, "from"), v, hose()})
		n.Taken = append(n.Taken, Taken{v, quantity.Flow(rapid.Float64Range(-2, 2).Draw(t, "taken")) * lpm})
	}
	for range meshes {
		n.Links = append(n.Links, Link{rapid.IntRange(0, nodes-1).Draw(t, "a"), rapid.IntRange(0, nodes-1).Draw(t, "b"), hose()})
	}
	return n
}

// long is a line of a thousand segments with branches, and as many meshes as asked.
func long(t require.TestingT, meshes int) *Network {
	n := &Network{Nodes: 1001, Fixed: []Fixed{{0, 2 * bar}}}
	for v := 1; v <= 1000; v++ {
		from := v - 1
		if v%5 == 0 {
			from = v - 4
		}
		n.Links = append(n.Links, Link{from, v, pipe(t, 15+float64(v%7), 0.1, 0.1)})
		if v%10 == 0 {
			n.Taken = append(n.Taken, Taken{v, 0.1 * lpm})
		}
	}
	for m := range meshes {
		n.Links = append(n.Links, Link{m*19 + 2, m*19 + 18, pipe(t, 12, 1, 2)})
	}
	return n
}

func BenchmarkThousandSegments(b *testing.B) {
	for _, meshes := range []int{0, 50} {
		b.Run(fmt.Sprintf("meshes=%d", meshes), func(b *testing.B) {
			n := long(b, meshes)
			for b.Loop() {
				if _, err := n.Solve(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// A vessel that never answers twice alike is named, with what it does.
func TestWhatDoesNotSettleIsNamed(t *testing.T) {
	turn := 0
	n := &Network{Nodes: 4, Fixed: []Fixed{{0, 60 * bar}, {2, 0}, {3, 0}}, Links: []Link{{1, 2, pipe(t, 9.5, 1, 3)}},
		Vessels: []Vessel{{0, 1, 3, func(quantity.Pressure, quantity.Flow) (quantity.Flow, quantity.Pressure, error) {
			turn++
			return quantity.Flow(1+turn%2) * lpm, bar, nil
		}}}}
	_, err := n.Solve()
	var unsettled *UnsettledError
	require.ErrorAs(t, err, &unsettled)
	require.ErrorIs(t, err, ErrNotFound)
	require.Equal(t, "vessel", unsettled.What)
	require.Equal(t, [2]int{0, 1}, [2]int{unsettled.From, unsettled.To})
	require.Contains(t, err.Error(), "vessel 0, from node 0 to node 1, still goes from ")

	// What two throttles hand each other round in a ring grows at every pass.
	ring := &Network{Nodes: 3, Fixed: []Fixed{{0, 0}}, Throttles: []Throttle{{1, 2, bar}, {2, 1, bar}}, Taken: []Taken{{1, -lpm}}, Links: []Link{{0, 1, pipe(t, 9, 1, 1)}, {0, 2, pipe(t, 9, 1, 1)}}}
	_, err = ring.Solve()
	require.ErrorAs(t, err, &unsettled)
	require.Equal(t, "throttle", unsettled.What)
}
