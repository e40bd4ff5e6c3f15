// Package cut answers how pieces of hose are cut from what a shop sells: from one
// length off the reel, or from fixed lengths, and what is wasted.
//
// [Fixed] packs pieces into fixed lengths so that the least is bought; [Reel] lays them
// out on a length bought by the metre. Both use up a length that is aboard first.
//
// # What it promises
//
// A plan says whether it is proved to be the least. Up to [Exact] pieces the search is
// complete unless it meets its bound of steps; beyond, the plan is first-fit decreasing
// (pieces from the longest, each into the first length that holds it), and is called
// proved only where no plan could buy less.
//
// # Units
//
// Lengths are whole millimetres. A knife takes nothing away (common practice), so the
// pieces of a length may fill it exactly.
package cut
