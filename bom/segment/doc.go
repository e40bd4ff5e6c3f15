// Package segment answers what bounds a pressure, what is weakest there, and what each state
// overloads.
//
// [Of] puts the states of a plant and its ratings side by side: a [Segment] is joints and
// parts between whatever raises, drops or can stop pressure, with the load that it sees and
// the weakest of its members. [Segments.Parts] does the same for each placed unit, and
// [Segments.View] lays out one state of the whole build as people read it.
package segment
