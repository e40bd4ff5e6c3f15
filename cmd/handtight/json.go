package main

import (
	"math"

	"handtight/threads"
)

// number is a figure in JSON: null where it is not known or has no bound.
type number struct {
	value float64
	known bool
}

func known(v float64) number { return number{v, !math.IsInf(v, 0) && !math.IsNaN(v)} }

// places is how far figures are rounded in JSON, so that a change of unit and back
// does not show.
const places = 1e6

// MarshalJSON writes the figure, or null.
func (n number) MarshalJSON() ([]byte, error) {
	if !n.known {
		return []byte("null"), nil
	}
	return jsonFloat(math.Round(n.value*places) / places), nil
}

// span is turns at the loosest and the tightest parts.
type span struct {
	Loosest  number `json:"loosest"`
	Tightest number `json:"tightest"`
}

// spanOf is nil where the turns do not exist. A null within says that parts of that
// kind never come to it: the loosest may run free where the tightest bind.
func spanOf(s threads.Span) *span {
	loosest, tightest := known(s.Loosest), known(s.Tightest)
	if !s.Known || !loosest.known && !tightest.known {
		return nil
	}
	return &span{loosest, tightest}
}
