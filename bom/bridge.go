package bom

// A walk through a graph, depth first, and the edges that hold it together alone.

// bond is an edge of an undirected graph, with a name of its own.
type bond struct{ name, from, to int }

// woven is a walk through a graph: each tree of the walk is one connected piece.
type woven struct {
	piece  []int          // piece of each node
	pieces int            // how many
	spans  []cutOff       // places of each piece
	order  []int          // place of each node on the walk; the nodes of a piece follow each other
	cuts   map[int]cutOff // what a bond that is taken away cuts off its piece, by its name; bridges only
}

// cutOff is the nodes that a bridge holds to the rest of their piece: those of the places
// from first to last on the walk. None where first is after last.
type cutOff struct{ first, last int }

var noCut = cutOff{0, -1}

// holds reports whether a place on the walk is cut off.
func (c cutOff) holds(place int) bool { return c.first <= place && place <= c.last }

// weave walks a graph. A bond that leads to nodes from which no other bond leads back is
// a bridge (Tarjan's method, without recursion).
func weave(nodes int, bonds []bond) *woven {
	w := &woven{piece: make([]int, nodes), order: make([]int, nodes), cuts: map[int]cutOff{}}
	leads := newLeads(nodes, bonds)
	low := make([]int, nodes)
	for i := range w.order {
		w.order[i] = -1
	}
	type frame struct{ node, by, next int } // by is the bond that it was entered by
	var stack []frame
	place := 0
	enter := func(node, by int) {
		w.piece[node], w.order[node], low[node] = w.pieces, place, place
		place++
		stack = append(stack, frame{node, by, leads.first[node]})
	}
	for root := range nodes {
		if w.order[root] >= 0 {
			continue
		}
		enter(root, -1)
		for len(stack) > 0 {
			top := &stack[len(stack)-1]
			if top.next < leads.first[top.node+1] {
				by := leads.list[top.next]
				top.next++
				other := bonds[by].from + bonds[by].to - top.node
				switch {
				case by == top.by:
				case w.order[other] < 0:
					enter(other, by)
				default:
					low[top.node] = min(low[top.node], w.order[other])
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
			if low[done.node] > w.order[above] {
				w.cuts[bonds[done.by].name] = cutOff{w.order[done.node], place - 1}
			}
		}
		w.spans = append(w.spans, cutOff{w.order[root], place - 1})
		w.pieces++
	}
	return w
}

// leads lists the bonds at each node: those of a node are list[first[node]:first[node+1]].
type leads struct{ first, list []int }

// at lists the bonds at a node.
func (l *leads) at(node int) []int { return l.list[l.first[node]:l.first[node+1]] }

func newLeads(nodes int, bonds []bond) leads {
	l := leads{make([]int, nodes+1), make([]int, 2*len(bonds))}
	for _, b := range bonds {
		l.first[b.from]++
		l.first[b.to]++
	}
	sum := 0
	for i, n := range l.first {
		sum += n
		l.first[i] = sum
	}
	for i := len(bonds) - 1; i >= 0; i-- {
		for _, node := range [2]int{bonds[i].from, bonds[i].to} {
			l.first[node]--
			l.list[l.first[node]] = i
		}
	}
	return l
}
