package network

import "handtight/pressure/quantity"

// Kind says what an edge does in a condition. The zero value is invalid.
type Kind uint8

// The kinds of edges. From and To of an edge are inlet and outlet of all but the first two.
const (
	Open         Kind = iota + 1 // both ways, one pressure
	Shut                         // none
	OneWay                       // forward only
	Throttle                     // both ways; drops what the operator sets, while it flows
	Membrane                     // forward, slowly
	Relief                       // forward at its set pressure
	FeedPump                     // adds up to its shut-off pressure
	PositivePump                 // pushes until something opens
	Regulator                    // forward; holds what is set at its inlet, and opens on its own
	Recovery                     // an energy-recovery pump: lifts what drives it by the ratio of its rod
)

// Figure is a figure of a part that may not be known.
type Figure[T any] struct {
	Value T
	Known bool
}

// Known makes a figure of a value that may be missing.
func Known[T any](v *T) Figure[T] {
	if v == nil {
		return Figure[T]{}
	}
	return Figure[T]{*v, true}
}

// Edge is a passage between two nodes, with the figures of its part that do not change with
// the condition.
type Edge struct {
	ID       int // a number that no other edge has
	From, To int
	Shutoff  Figure[quantity.Pressure] // of a feed pump; not known adds nothing
	Stall    Figure[quantity.Pressure] // of a positive pump
	Set      Figure[quantity.Pressure] // of a relief; without one it never opens
	FullFlow Figure[quantity.Pressure] // of a relief: where it stands passing its capacity
	Capacity Figure[quantity.Flow]     // of a relief; not known, it is taken to pass what comes
	Flow     Figure[quantity.Flow]     // of a pump: what it delivers
	Holds    Figure[quantity.Pressure] // of a regulator: what it holds at its inlet; not known, the duty
	Ratio    Figure[float64]           // of an energy-recovery pump: area of the rod over that of the piston, 0 to 1
	Waste    int                       // of an energy-recovery pump: the node that its waste leaves by
	Brine    int                       // of an energy-recovery pump: the node that the brine comes back by
}

// Boundary is a node where water comes in or goes out.
type Boundary struct {
	Node         int
	Takes, Gives bool
	Push         quantity.Pressure // what a supply pushes with
}

// Network is nodes from 0, edges between them, and what each edge does in one condition.
type Network struct {
	Nodes      int
	Edges      []Edge
	Kinds      []Kind // of each edge
	Boundaries []Boundary
	Duty       quantity.Pressure // what the operator sets throttles to; 0 where nothing is set
}
