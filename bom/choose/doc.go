// Package choose answers from which shop to buy each line of an order, so that the
// whole landed cost is least: prices by the pack, minimum orders, freight by shop and
// the value from which it is free, customs, tax and rates.
//
// [Shops] takes a walked build and gives a [Choice]: the plan, what it costs line by line
// at the cheapest offers, what it costs all from one shop, and which alternatives of the
// build's options it takes. [Arrivals] says what comes last, by shop.
//
// # What is chosen
//
// Each line of pieces is bought at one offer or divided between several, in whole packs, at one
// shop or over several: every way that another does not beat at every shop is looked at. Of a
// line with more than a few hundred such ways those over three shops and more are left out, and
// hose that is cut and lines of over a thousand pieces are bought at one offer. A shop that anything is bought from charges
// its freight once. An order below the shop's minimum is filled up to it, and one may be
// filled up to the value from which freight is free where that costs less than the
// freight; what fills it up is paid for, with its customs and tax. A line that no shop
// has a price for stays at its first offer and out of the sums.
//
// Where there are more than a few hundred ways of taking options, they come in the order of
// what they cost at the least without freight (package leastcost), until none can be cheaper.
//
// An option's item is taken only if the build checks without any stop that it did not
// have before, every line of it has a price that had one, and the sum is less.
//
// [Plans] sets the build beside itself in one standard of pipe threads throughout, and finds
// the best of all ways: small parts are bought with other ends, and chains of adaptors stand
// where two ends do not join. A plan is walked, priced and checked whole.
//
// # Exactness
//
// This is the assignment with fixed charges. A branch and bound goes over the shops
// (closed, open with freight paid, open with freight free) and then over the lines; its
// bound is the Lagrangian one of the order values that minimum and free freight ask for.
// What the bound does not rule out is priced exactly, in decimal money with every
// rounding. [Choice.Proved] is true when the search came to its end: no other plan costs
// a cent less. Else [Choice.Bound] is what no plan can cost less than.
// Source of the model: uncapacitated facility location, with Lagrangian bounds as in
// Cornuéjols, Nemhauser and Wolsey, in Discrete Location Theory, 1990 (memory).
package choose
