// Package evidence says what is to be believed of a joint that stands: which threads its two
// ends are, and how likely it is bad, from what is written, measured, counted and remembered.
//
// [Known.Readings] weighs the readings of one end: its words, where it comes from, and what was
// measured of it. [Pairs] puts two ends together, with the turns that they went in by hand and
// the fact that the joint stands. [Believe] adds what became of it: dry, wept, tested,
// the sealant that was found. All is Bayes' rule with independent pieces of evidence, so their
// order does not matter, and what is impossible never comes back.
//
// The figures are judgements; they stand under table/ and [Judgements] lists them. Nothing here
// clears a joint: see [Cleared], which asks for 95 in 100 and for some evidence.
package evidence
