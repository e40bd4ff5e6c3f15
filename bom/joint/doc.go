// Package joint answers how a joint is made up, what its threads bear, and what must be
// asked about its ends before anything is bought.
//
// Its functions take a graph and one of its joints; [Questions] takes the graph alone.
package joint
