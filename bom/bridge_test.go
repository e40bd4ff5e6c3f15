package bom

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// pieceOf lists the nodes that are reached from one, without one of the bonds.
func pieceOf(start, nodes int, bonds []bond, without int) []bool {
	seen := make([]bool, nodes)
	seen[start] = true
	for grew := true; grew; {
		grew = false
		for i, b := range bonds {
			if i != without && seen[b.from] != seen[b.to] {
				seen[b.from], seen[b.to], grew = true, true, true
			}
		}
	}
	return seen
}

// Of any graph, with bonds side by side and bonds from a node to itself: pieces, and what
// each bond cuts off, are what taking the bond away and looking again gives.
func TestWeave(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		nodes := rapid.IntRange(1, 9).Draw(t, "nodes")
		var bonds []bond
		for i := range rapid.IntRange(0, 12).Draw(t, "bonds") {
			bonds = append(bonds, bond{100 + i, rapid.IntRange(0, nodes-1).Draw(t, "from"), rapid.IntRange(0, nodes-1).Draw(t, "to")})
		}
		w := weave(nodes, bonds)
		for a := range nodes {
			whole := pieceOf(a, nodes, bonds, -1)
			for b := range nodes {
				require.Equal(t, whole[b], w.piece[a] == w.piece[b], "%d and %d", a, b)
				require.Equal(t, whole[b], w.spans[w.piece[a]].holds(w.order[b]), "%d in the span of %d", b, a)
			}
		}
		require.Len(t, w.spans, w.pieces)
		places := slices.Clone(w.order)
		slices.Sort(places)
		for i, p := range places {
			require.Equal(t, i, p, "each node has a place of its own")
		}
		for i, b := range bonds {
			cut, bridge := w.cuts[b.name]
			near, far := pieceOf(b.from, nodes, bonds, i), pieceOf(b.to, nodes, bonds, i)
			require.Equal(t, !near[b.to], bridge, "bond %d-%d", b.from, b.to)
			if !bridge {
				continue
			}
			if cut.holds(w.order[b.from]) {
				near, far = far, near
			}
			for n := range nodes {
				require.Equal(t, far[n], cut.holds(w.order[n]), "bond %d-%d cuts off %d", b.from, b.to, n)
				require.False(t, near[n] && cut.holds(w.order[n]))
			}
		}
	})
}
