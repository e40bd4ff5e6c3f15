package connected_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/network/connected"
)

// pieceOf lists the nodes that are reached from one, without one of the edges.
func pieceOf(start, nodes int, edges []connected.Edge, without int) []bool {
	seen := make([]bool, nodes)
	seen[start] = true
	for grew := true; grew; {
		grew = false
		for i, b := range edges {
			if i != without && seen[b.From] != seen[b.To] {
				seen[b.From], seen[b.To], grew = true, true, true
			}
		}
	}
	return seen
}

// Of any graph, with edges side by side and edges from a node to itself: pieces, and what
// each edge cuts off, are what taking the edge away and looking again gives.
func TestSearch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		nodes := rapid.IntRange(1, 9).Draw(t, "nodes")
		var edges []connected.Edge
		for range rapid.IntRange(0, 12).Draw(t, "edges") {
			edges = append(edges, connected.Edge{From: rapid.IntRange(0, nodes-1).Draw(t, "from"), To: rapid.IntRange(0, nodes-1).Draw(t, "to")})
		}
		w := connected.Search(nodes, edges)
		for a := range nodes {
			whole := pieceOf(a, nodes, edges, -1)
			for b := range nodes {
				require.Equal(t, whole[b], w.Piece[a] == w.Piece[b], "%d and %d", a, b)
				require.Equal(t, whole[b], w.Spans[w.Piece[a]].Holds(w.Order[b]), "%d in the span of %d", b, a)
			}
		}
		require.Len(t, w.Spans, w.Pieces)
		places := slices.Clone(w.Order)
		slices.Sort(places)
		for i, p := range places {
			require.Equal(t, i, p, "each node has a place of its own")
		}
		for i, b := range edges {
			cut, bridge := w.Bridge(i)
			near, far := pieceOf(b.From, nodes, edges, i), pieceOf(b.To, nodes, edges, i)
			require.Equal(t, !near[b.To], bridge, "edge %d-%d", b.From, b.To)
			if !bridge {
				continue
			}
			if cut.Holds(w.Order[b.From]) {
				near, far = far, near
			}
			for n := range nodes {
				require.Equal(t, far[n], cut.Holds(w.Order[n]), "edge %d-%d cuts off %d", b.From, b.To, n)
				require.False(t, near[n] && cut.Holds(w.Order[n]))
			}
		}
	})
}
