// Package network answers how high and how low the pressure of a plain network of pipework
// stands, in one condition.
//
// A [Network] is nodes, edges of named kinds with the figures of the parts that they stand
// for, and boundaries where water comes in or goes out. [Solve] makes pressure zones of it, the
// nodes that open edges link, and answers as a [Field] of pressures. Each state is solved
// afresh: what states share is not worth its code (BenchmarkStates of package bom).
//
// Pressures are gauge. They are a quasi-static bound: friction is left out, so that the
// highest is what decides whether a part can burst, and the lowest whether a hose can
// collapse. Where nothing opens the highest is infinite: there is no bound, and no number
// stands for it.
//
// The package knows no items, no files and no names: only numbers of nodes and edges.
package network
