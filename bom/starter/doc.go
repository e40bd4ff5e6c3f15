// Package starter writes a first build file from a few answers: which voltage, how many
// elements, what drives the pump, in which countries one buys.
//
// [Questions] are the questions as data, [Answers.Take] reads one answer by its name, and
// [Write] gives the TOML text of that plant: a whole one, from the sea to the
// tank, with the thread families of the country's shops. Its figures are our own and no data
// sheets; those that the maker must be asked for say so.
package starter
