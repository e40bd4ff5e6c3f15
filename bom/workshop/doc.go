// Package workshop makes what lies on the workbench: the schedule of the hoses with what to cut
// and how far they bend, and the tools and consumables that this build needs.
//
// [Hoses] and [Tools] take a build that has been walked. A figure that no table has is said
// to be asked of the maker: none is guessed. Allowances are judgements and say so.
package workshop
