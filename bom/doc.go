// Package bom reads a build file, makes its graph, and walks it: joints for the
// thread check, segments and states for the pressure check, units for the
// quantities. Nothing walks the graph a second way.
//
// [Read] takes the file and gives a [Build] or every file error at once.
// [Walk] gives a [System]: units, joints, runs and segments with the pressures of
// each state. [Order] counts what to buy, with spares and money. What a check says
// of it all is the business of package rule.
//
// # Units
//
// Pressures are gauge; lengths are millimetres; a quantity to buy is in
// thousandths of a piece or of a metre.
package bom
