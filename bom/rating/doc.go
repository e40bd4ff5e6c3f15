// Package rating answers what a port or a joint may carry.
//
// [Of] takes a graph and gives its [Ratings]: for each port the lower of the data sheet and
// of the standard that the part is sold to, both lowered for the temperatures of the duty,
// and for a joint what a clamp or a makeshift leaves of it. An [Allowable] says its basis; one
// that is an estimate clears nothing on high pressure, and one that is not known is not zero.
package rating
