// Package connected answers which pieces a graph falls into, which nodes belong together,
// and which edges alone hold a piece together.
//
// [NewSets] keeps disjoint sets of small numbers. [Search] walks an undirected graph and
// gives a [Walk]: the piece of each node, and for every bridge the [Span] of nodes that
// taking it away isolates. [Incidence] lists the edges at each node. Nodes are numbers
// from 0; nothing here knows what they stand for.
package connected
