package main

import "strconv"

// jsonFloat writes a number as JSON has it, without an exponent.
func jsonFloat(v float64) []byte { return strconv.AppendFloat(nil, v, 'f', -1, 64) }
