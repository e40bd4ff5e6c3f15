// Package duty answers whether a build makes water: how much and how salty, with which
// margins, what it takes from the battery, and how much runs in each of its lines.
//
// [Of] makes the rows of elements and the network of flows from the graph and asks
// pressure/process. A [Result] holds ranges: the middle of what is said, and the ends of
// all that can be. What was not said is not guessed: it is taken from a class whose row
// names its source, over its whole range, or it is asked for and nothing is reckoned.
package duty
