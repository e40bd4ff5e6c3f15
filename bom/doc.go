// Package bom is the door to the stages of a build: what the file says, the graph, the
// circuit, its waters, states, ratings and segments. It decides nothing itself.
//
// [Read] takes a build file and gives a [build.Build] or every file error at once. [Walk] takes it
// through the stages and gives a [System], one value for all of them. What a check says of it
// is the business of package rule.
//
// Each stage is a package of its own below this one: build, read, graph, circuit, wetting,
// rating, joint, state, segment, running and order. Nothing walks the graph a second way.
//
// # Units
//
// Pressures are gauge; lengths are millimetres; a quantity to buy is in thousandths of a
// piece or of a metre.
package bom
