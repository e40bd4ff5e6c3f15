// Package assign puts a bag of pieces together: which piece goes where, so that every place
// is joined from one end to the other.
//
// It works on plain numbers and knows no thread. A [Problem] has ends, classes of equal pieces
// with their ends and their count, and places that want a chain of pieces between two ends.
// [Solve] answers with the assignment of the least [Cost], compared field by field: stops,
// pieces to buy, questions, pieces left over, length, and last the order of the bag.
//
// # How it is found
//
// For each place all chains are listed (chain.go) that no piece can be taken out of: a chain
// in which a joint closes without the pieces between, and without a question, has pieces that
// the joint does not need.
// Of chains that take the same of what is scarce, only the cheapest stays. The places are then
// gone through one after another (solve.go), keeping for each way of having used what is
// scarce the cheapest way there: that is exact, and a state whose cost and least rest are above
// a known answer is dropped. A class that is enough for all places together is not scarce and
// binds nothing.
//
// # Bounds
//
// Steps are counted, both of chains and of states. Past the number given, the best states are
// kept and the others dropped, and what comes out is bettered by filling two groups of places
// again at a time (better.go): the answer then is not proven, and says the cost below which no
// answer can be.
package assign
