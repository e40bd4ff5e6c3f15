package connected

// Edge is an edge of an undirected graph. It is known by its number in the list that it stands in.
type Edge struct{ From, To int }

// Walk is a walk through a graph, depth first: each tree of the walk is one connected piece.
type Walk struct {
	Piece  []int  // piece of each node
	Pieces int    // how many
	Spans  []Span // places of each piece
	Order  []int  // place of each node on the walk; the nodes of a piece follow each other

	isolated []Span // by each edge; a bridge isolates a node or more
}

// Bridge gives what an edge isolates from its piece when it is taken away; false where it is no bridge.
func (w *Walk) Bridge(edge int) (isolated Span, bridge bool) {
	return w.isolated[edge], w.isolated[edge].Last > 0
}

// Span is the nodes of the places from First to Last on a walk: those that a bridge holds
// to the rest of their piece. None where First is after Last.
type Span struct{ First, Last int }

// Holds reports whether a place on the walk lies in the span.
func (s Span) Holds(place int) bool { return s.First <= place && place <= s.Last }

// Search walks a graph of so many nodes. An edge that leads to nodes from which no other
// edge leads back is a bridge (Tarjan's method, without recursion).
func Search(nodes int, edges []Edge) *Walk {
	w := &Walk{Piece: make([]int, nodes), Order: make([]int, nodes), isolated: make([]Span, len(edges))}
	at := NewIncidence(nodes, edges)
	low := make([]int, nodes)
	for i := range w.Order {
		w.Order[i] = -1
	}
	type frame struct{ node, by, next int } // by is the edge that it was entered by
	var stack []frame
	place := 0
	enter := func(node, by int) {
		w.Piece[node], w.Order[node], low[node] = w.Pieces, place, place
		place++
		stack = append(stack, frame{node, by, at.first[node]})
	}
	for root := range nodes {
		if w.Order[root] >= 0 {
			continue
		}
		enter(root, -1)
		for len(stack) > 0 {
			top := &stack[len(stack)-1]
			if top.next < at.first[top.node+1] {
				by := at.list[top.next]
				top.next++
				other := edges[by].From + edges[by].To - top.node
				switch {
				case by == top.by:
				case w.Order[other] < 0:
					enter(other, by)
				default:
					low[top.node] = min(low[top.node], w.Order[other])
				}
				continue
			}
			done := *top
			stack = stack[:len(stack)-1]
			if len(stack) == 0 {
				continue
			}
			above := stack[len(stack)-1].node
			low[above] = min(low[above], low[done.node])
			if low[done.node] > w.Order[above] {
				w.isolated[done.by] = Span{w.Order[done.node], place - 1} // never place 0, which is that of a root
			}
		}
		w.Spans = append(w.Spans, Span{w.Order[root], place - 1})
		w.Pieces++
	}
	return w
}

// Incidence lists the edges at each node: those of a node are list[first[node]:first[node+1]].
type Incidence struct{ first, list []int }

// At lists the edges at a node, by their place in the list that the incidence was made of.
func (l *Incidence) At(node int) []int { return l.list[l.first[node]:l.first[node+1]] }

// NewIncidence lists the edges at each of so many nodes, in their order.
func NewIncidence(nodes int, edges []Edge) Incidence {
	l := Incidence{make([]int, nodes+1), make([]int, 2*len(edges))}
	for _, b := range edges {
		l.first[b.From]++
		l.first[b.To]++
	}
	sum := 0
	for i, n := range l.first {
		sum += n
		l.first[i] = sum
	}
	for i := len(edges) - 1; i >= 0; i-- {
		for _, node := range [2]int{edges[i].From, edges[i].To} {
			l.first[node]--
			l.list[l.first[node]] = i
		}
	}
	return l
}
