package wetting_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom"
	"handtight/bom/internal/built"
	"handtight/bom/read"
	"handtight/bom/wetting"
)

// Which water wets the ports of the plant that many people build first.
func TestWaters(t *testing.T) {
	sys := built.Plant(t)
	w := sys.Waters
	for _, c := range []struct {
		why, port                   string
		sea, product, house, rinsed bool
	}{
		{"the intake", "intake.inboard", true, false, false, false},
		{"before the feed pump, whose own valves hold the flush back", "strainer.out", true, false, false, false},
		{"where the flush comes in", "tee/flush.a", true, false, false, true},
		{"the pump's outlet, flushed through its valves", "pump.out", true, false, false, true},
		{"the membrane's feed", "vessel.feed", true, false, false, true},
		{"the brine line", "brine-hose.a", true, false, false, true},
		{"the product", "vessel.product", false, true, false, false},
		{"the product behind the selector", "selector.b", false, true, false, false},
		{"the house's own side of the flush valve", "carbon.in", false, false, true, true},
		{"behind the carbon filter", "carbon.out", false, false, true, true},
		{"the check valve holds sea water off its inlet", "check.in", false, false, true, true},
		{"and not off its outlet", "check.out", true, false, false, true},
	} {
		t.Run(c.why, func(t *testing.T) {
			p := built.Port(t, sys, c.port)
			require.Equal(t, []bool{c.sea, c.product, c.house, c.rinsed},
				[]bool{w.Sea(p), w.Product(p), w.House(p), w.Rinsed(p)},
				"%s: sea, product, house, rinsed", c.port)
		})
	}
}

// Changes of the plant, and what they do to its waters.
func TestWatersChanged(t *testing.T) {
	for _, c := range []struct {
		why  string
		edit built.Edit
		port string
		want func(*wetting.Waters, int) bool
	}{
		{"without a check valve sea water stands before the flush valve", built.Edit{`"flush-valve", "check", "tee/flush.branch"`, `"flush-valve", "tee/flush.branch"`}, "flush-valve.out", (*wetting.Waters).Sea},
		{"a centrifugal feed pump lets the flush back to the strainer", built.Edit{`"feed-pump"`, `"centrifugal"`}, "strainer.out", (*wetting.Waters).Rinsed},
	} {
		t.Run(c.why, func(t *testing.T) {
			before, after := built.Plant(t), built.Plant(t, c.edit)
			require.True(t, c.want(after.Waters, built.Port(t, after, c.port)))
			if p := c.port; p != "flush-valve.out" {
				require.False(t, c.want(before.Waters, built.Port(t, before, p)))
			}
		})
	}
}

// A line of which nothing else is known carries sea water when it lies below the
// waterline.
func TestWaterBelowTheWaterline(t *testing.T) {
	const text = `
[build]
name = "x"
currency = "EUR"
[[item]]
id = "tail"
kind = "hose tail"
[[run]]
name = "line"
below_waterline = %s
path = ["tail", "tail/+"]
`
	for _, c := range []struct {
		below string
		want  bool
	}{{"true", true}, {"false", false}} {
		sys := built.Walk(t, "x.toml", fmt.Sprintf(text, c.below))
		require.Equal(t, c.want, sys.Waters.Sea(0), "below_waterline = %s", c.below)
	}
}

func TestDischarge(t *testing.T) {
	for _, c := range []struct {
		why             string
		edit            []built.Edit
		overboard, pump bool
		inside          []string
		closed          bool
	}{
		{why: "into the brine line, which leads overboard", overboard: true},
		{why: "into a tank", edit: []built.Edit{{`"relief", "tee/outlet.branch"`, `"relief", "tank/spill"`}}, inside: []string{"tank/spill"}},
		{why: "back before the pump", edit: []built.Edit{{`"relief", "tee/outlet.branch"`, `"relief", "tee/back.branch"`}, {`"tee/flush", "pump"`, `"tee/flush", "tee/back", "pump"`}}, pump: true},
		{why: "into a closed end", edit: []built.Edit{{`"relief", "tee/outlet.branch"`, `"relief", "meter/end"`}}, closed: true},
	} {
		t.Run(c.why, func(t *testing.T) {
			sys := built.Plant(t, c.edit...)
			d := sys.Circuit.DischargeOf(built.Port(t, sys, "relief.out"))
			var inside []string
			for _, u := range d.Inside {
				inside = append(inside, u.Name)
			}
			require.Equal(t, c.overboard, d.Overboard)
			require.Equal(t, c.pump, d.Pump)
			require.Equal(t, c.inside, inside)
			require.Equal(t, c.closed, d.Closed())
		})
	}
}

// No port is wet by two waters at once, whatever is built.
func TestWatersAreApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		build, faults := read.Parse("random.toml", []byte(built.Draw(t)))
		require.NoError(t, faults.Err())
		sys, faults := bom.Walk(build)
		require.NoError(t, faults.Err())
		w := sys.Waters
		for p := range sys.Graph.Ports {
			n := 0
			for _, wet := range []bool{w.Sea(p), w.Product(p), w.House(p)} {
				if wet {
					n++
				}
			}
			require.LessOrEqual(t, n, 1, "%s: sea %v, product %v, house %v", sys.Graph.Ports[p].Name(), w.Sea(p), w.Product(p), w.House(p))
		}
	})
}
