// Package leastcost finds the cheapest way to give each of a set of variables one of its
// choices, where a choice has a cost and two choices of joined variables have one together.
//
// It is exact. Variables are eliminated one after the other, the one first that joins the
// fewest of its neighbours again (min-fill); what the eliminated ones cost at the least is kept
// as a table over their neighbours. Where the graph is nearly a tree the tables are tiny. The
// tables are also the exact cost to the end, so that [Solver.Each] goes through the ways in
// the order of their cost without ever going wrong. A graph too thick for tables is made
// thinner by trying every way of a few of its variables; one too thick for that has links
// dropped, whose least cost stands for them, and what then is found is a lower bound.
//
// Sources: bucket elimination as in Dechter, Reasoning with Probabilistic and Deterministic
// Graphical Models, 2013 (memory); the order as in Kjaerulff, Triangulation of Graphs, 1990
// (memory).
package leastcost
