// Package graph answers what is joined to what.
//
// [Walk] places the units of every run of a build, turns those that may be turned as they
// mate best, and joins their ports: a [build.Build] in, a [Graph] of [Unit], [Port] and
// [Joint] out, or every fault of the runs. Each joint has been judged by the worst reading
// of its two ends. A unit stands by its number in the order of the runs, a port by its
// number in [Graph.Ports].
package graph
