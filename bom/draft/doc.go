// Package draft makes a build of a bag of parts: the lines of carts, quotes and plain lists
// put together into a plant.
//
// [Of] takes the lists that package cart has read and gives a [Draft]: the text of a build
// file in the project's own form, and what it came to. It prints nothing and asks nobody; what
// a person may know better goes in by [Options].
//
// # How it goes
//
//  1. Lines become parts (parts.go): kind, ends, rating, material, count, offer. A line that is
//     no part is kept as a comment with its place; a test counts that none is lost. Items are
//     written as a build file has them (item.go) and read back by package read, so that an
//     end means here what it means in a check.
//  2. Roles (plant.go): table/chain.toml says which kinds do what in which order, what is
//     needed, usual or optional, and by what sign a sort of plant is known. Each sort that the
//     parts allow is drafted, and the cheapest is taken; Options.Like picks another.
//  3. Places (places.go): every two ports that the lines ask to be joined, and every port that
//     is to hang on a branch.
//  4. Assignment (ends.go, solve.go): the ends become numbers, every two of them judged once by
//     threads.Mate at the pressure of the place; package assign fills the places, exactly or
//     with the bound said. What a chain lacks counts as pieces to buy, of the generic stock.
//  5. The text (write.go): what was read, assumed, is missing with what to buy, is left over.
//     It is parsed before it is given out: a draft that does not parse is a fault of ours.
//
// # What is judged and what is not
//
// A piece is kept out of a place whose pressure it is known not to hold, or whose water its
// metal does not last in; where nothing says what it holds, that is a question. All else is the
// business of the check of the file that comes out. Nothing here clears a joint: no rating is
// typed in that the list does not say, and every figure that nobody gave is marked.
package draft
