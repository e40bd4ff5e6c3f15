package duty

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/graph"
	"handtight/pressure/process/power"
	"handtight/pressure/quantity"
)

// A plant on the engine still takes current: its feed pump's, and its clutch's.
func TestAnEngineDrivenPlantTakesCurrentToo(t *testing.T) {
	m := of(t, "../../testdata/engine/build.toml").Plants[0]
	p := m.Power
	require.True(t, p.Battery)
	require.InDelta(t, 9+3, float64(p.All.Lo), 1e-9)
	require.InDelta(t, 9+5, float64(p.All.Hi), 1e-9)
	require.Contains(t, p.Drain, "clutch")
	// 220 L a day at what the plant makes from its best to its worst
	require.InDelta(t, 220/m.All.Product.Hi.LitresPerHour()*12, p.Ah.Lo, 1e-9)
	require.InDelta(t, 220/m.All.Product.Lo.LitresPerHour()*14, p.Ah.Hi, 1e-9)
	u, ok := m.Upgrade()
	require.True(t, ok)
	require.False(t, u.HasCurrent, "no battery would drive a greater pump")
	require.Contains(t, m.Says(), "While the engine runs, its alternator of 90 A carries the plant, and 76 A of it are left at the least.")
}

// At a low pressure what the feed pump gives is more than a twentieth of it, and is taken off.
func TestTheInletsPressureIsTakenOffWhereItCounts(t *testing.T) {
	m := of(t, "../../testdata/baltic/build.toml").Plants[0]
	inlet := m.Lines.Inlets[0].Pressure
	q, _, _ := PumpFlow(m.Pumps[0].Item, m.in.pressure.Middle())
	require.Greater(t, inlet.Hi, m.in.pressure.Lo/20)
	require.InEpsilon(t, float64(power.Hydraulic(q.Lo, m.in.pressure.Lo, inlet.Hi)), float64(m.Power.Water.Lo), 1e-9)
	want, err := power.Boosted(q.Lo, m.in.pressure.Lo, inlet.Hi, 0.90)
	require.NoError(t, err)
	require.InEpsilon(t, float64(want), float64(m.Power.Shaft.Lo), 1e-9)
	require.Contains(t, m.Power.Basis, "taken off")
	// In the open sea it is less than that, and changes nothing.
	m = of(t, clean).Plants[0]
	require.InEpsilon(t, float64(power.Hydraulic(m.Feed.Lo, m.in.pressure.Lo, 0)), float64(m.Power.Water.Lo), 1e-9)
	require.NotContains(t, m.Power.Basis, "taken off")
}

// Two piston pumps take twice what one does; of unlike voltages no current is added up, and that is said.
func TestSeveralPumpsAreAddedUp(t *testing.T) {
	b, faults := bom.Read(clean)
	require.NoError(t, faults.Err())
	s, faults := bom.Walk(b)
	require.NoError(t, faults.Err())
	m := Of(s).Plants[0]
	one := *m.Power
	first := m.Pumps[0]
	m.Pumps = append(m.Pumps, first)
	two := powerOf(s, m)
	require.InEpsilon(t, 2*float64(one.Electric.Hi), float64(two.Electric.Hi), 1e-9)
	require.InEpsilon(t, 2*float64(one.Current.Lo), float64(two.Current.Lo), 1e-9)
	require.Equal(t, one.Feeder, two.Feeder)
	item, unit := *first.Item, *first
	item.Motor = "12 V DC"
	unit.Item = &item
	m.Pumps = []*graph.Unit{first, &unit}
	mixed := powerOf(s, m)
	require.False(t, mixed.Battery)
	require.Contains(t, mixed.Why, "24 V and 12 V")
}

// A speed says nothing of a pump's flow where nobody says at which speed it was measured.
func TestASpeedWithoutARatedOneIsRefused(t *testing.T) {
	b, faults := bom.Read(clean)
	require.NoError(t, faults.Err())
	require.ErrorContains(t, Change(b, "speed=1000 rpm"), "would change nothing of the flow")
	slow := of(t, "../../testdata/engine/build.toml", "speed=1305 rpm").Plants[0]
	swift := of(t, "../../testdata/engine/build.toml", "speed=1450 rpm").Plants[0]
	require.Less(t, slow.Feed.Middle(), swift.Feed.Middle())
}

// Of filters in one line each is taken dirty by itself, between all clean and all dirty.
func TestOneFilterDirtyAtATime(t *testing.T) {
	i := of(t, clean).Plants[0].Lines.Inlets[0]
	require.True(t, i.OneKnown)
	require.Less(t, i.OneDirty.Hi, i.Middle)
	require.Greater(t, i.OneDirty.Lo, i.Dirty)
}

// The middle of an energy-recovery plant's feed is where its pump's curve and the membrane meet.
func TestTheRecoverysMiddleBalances(t *testing.T) {
	m := of(t, "../../testdata/recovery/build.toml").Plants[0]
	feed, ok := m.MiddleOf("feed_flow")
	require.True(t, ok)
	require.InDelta(t, feed, (m.Middle.Product + m.Middle.Brine).LitresPerMinute(), 0.01)
}

// An area that is no element's is a fault of the file; one of another size is asked about.
func TestAnAreaThatIsNoElements(t *testing.T) {
	b, faults := bom.Read(clean)
	require.NoError(t, faults.Err())
	for _, it := range b.Items {
		if it.ID == "membrane" || it.Inside == "vessel" {
			a := 2.8 * quantity.SquareMetre
			it.Process.Area = &a
		}
	}
	s, faults := bom.Walk(b)
	require.NoError(t, faults.Err())
	m := Of(s).Plants[0]
	require.False(t, m.Made)
	require.Contains(t, m.WhyNot, "2.8 m2 of membrane are not those of an element of 2521")
}

// One element more on an energy-recovery pump: the same share at less pressure, and saltier.
func TestOneMoreElementOnARod(t *testing.T) {
	m := of(t, "../../testdata/recovery/build.toml").Plants[0]
	r := m.Recovered
	require.True(t, r.LongerKnown)
	require.Less(t, r.LongerHeld, r.Middle.Held)
	require.InEpsilon(t, m.Middle.Recovery.Percent(), r.Longer.Recovery.Percent(), 0.01)
	require.Greater(t, r.Longer.Salt, m.Middle.Salt)
	require.Contains(t, m.LongerText(), "since the rod sets the share")
	require.Empty(t, of(t, clean).Plants[0].LongerText())
}
