package network

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/quantity"
)

// Rings are the zones that reach each other, as looking from each of them says; and an arc
// leads to the same ring or to one that comes later in the order.
func TestRings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		zones := rapid.IntRange(1, 8).Draw(t, "zones")
		var arcs []arc
		for range rapid.IntRange(0, 14).Draw(t, "arcs") {
			a := arc{from: rapid.IntRange(0, zones-1).Draw(t, "from"), to: rapid.IntRange(0, zones-1).Draw(t, "to")}
			if a.from != a.to { // a link within a zone is none
				arcs = append(arcs, a)
			}
		}
		reaches := func(from, to int) bool {
			seen := map[int]bool{from: true}
			for range zones {
				for _, a := range arcs {
					seen[a.to] = seen[a.to] || seen[a.from]
				}
			}
			return seen[to]
		}
		g := newRings(zones, arcs)
		place := make([]int, zones)
		for i, z := range g.order {
			place[z] = i
		}
		require.Len(t, g.order, zones)
		for a := range zones {
			require.Less(t, g.of[a], g.count)
			for b := range zones {
				require.Equal(t, reaches(a, b) && reaches(b, a), g.of[a] == g.of[b], "zones %d and %d", a, b)
				if reaches(a, b) && g.of[a] != g.of[b] {
					require.Less(t, place[a], place[b], "an arc from %d to %d", a, b)
				}
			}
		}
	})
}

// Rings of ten zones with a feed pump in each, one after the other.
func BenchmarkRings(b *testing.B) {
	for _, zones := range []int{100, 1_000, 10_000} {
		n := Network{Nodes: zones, Boundaries: []Boundary{{Node: 0, Gives: true}, {Node: zones - 1, Takes: true}}}
		add := func(from, to int, is Kind) {
			e := Edge{ID: len(n.Edges), From: from, To: to}
			if is == FeedPump {
				e.Shutoff = Figure[quantity.Pressure]{Value: quantity.Bar, Known: true}
			}
			n.Edges, n.Kinds = append(n.Edges, e), append(n.Kinds, is)
		}
		for z := 1; z < zones; z++ {
			is := OneWay
			if z%10 == 5 {
				is = FeedPump
			}
			add(z-1, z, is)
			if z%10 == 9 {
				add(z, z-9, OneWay)
			}
		}
		b.Run(fmt.Sprintf("solved/zones=%d", zones), func(b *testing.B) {
			for b.Loop() {
				Solve(n, true)
			}
		})
		var arcs []arc
		for _, e := range n.Edges {
			arcs = append(arcs, arc{from: e.From, to: e.To})
		}
		b.Run(fmt.Sprintf("found/zones=%d", zones), func(b *testing.B) {
			for b.Loop() {
				newRings(zones, arcs)
			}
		})
	}
}
