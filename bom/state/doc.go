// Package state answers how a plant can stand, and what each port sees then.
//
// [Solve] goes through the conditions of a circuit (normal running, the flush, the pumps run
// alone, each act and each failure of one part) and gives its [States]: the pressures of
// each, and for every port the [Load] over all of them. Pressures are gauge, in bar, and
// infinite where nothing opens.
package state
