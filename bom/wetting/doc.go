// Package wetting answers which water wets each port, and what is an intake.
//
// [Of] takes a circuit and gives its [Waters]: sea water or brine, product, house water, and
// where the fresh-water flush comes. A port that none of them reaches is wet by a water that
// is not known.
package wetting
