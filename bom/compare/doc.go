// Package compare answers what became of a build between two versions of it: what was
// added, removed and replaced, and which joints and pressures changed for the worse.
//
// [Builds] takes two walked builds and gives a [Report]. It judges nothing by itself:
// verdicts, pressures and findings are those of the two builds.
//
// # How units are told to be the same
//
// The units of runs of one name are lined up so that as many items as possible stand in
// the same order; a unit between the same neighbours whose item is another of the same
// kind was replaced. A unit that has moved to another run is known by its name. What lies
// inside a unit, and what is not placed at all, is known by its id.
//
// # Units
//
// Pressures are bar, gauge.
package compare
