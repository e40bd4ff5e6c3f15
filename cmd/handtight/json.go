package main

import (
	"math"

	"handtight/bom/facts"
)

// number is a figure in JSON: null where it is not known or has no bound.
type number = facts.Number

func known(v float64) number { return number{Value: v, Known: !math.IsInf(v, 0) && !math.IsNaN(v)} }
