package quantity

import (
	"fmt"
	"strings"

	"handtight/pressure/pattern"
)

// Range is a quantity between two ends, Lo not above Hi; both are the same where one
// figure was written.
type Range[Q ~float64] struct{ Lo, Hi Q }

// Single reports whether one figure was written.
func (r Range[Q]) Single() bool { return r.Lo == r.Hi }

// String prints "a to b", or the one figure.
func (r Range[Q]) String() string {
	if r.Single() {
		return fmt.Sprint(r.Lo)
	}
	return fmt.Sprintf("%v to %v", r.Lo, r.Hi)
}

var between = pattern.New(`(?i)^(.*\S)\s+to\s+(\S.*)$`)

// ParseRange reads "34 to 36 g/kg", "15 C to 25 C" or one figure, each with the reader of its
// quantity. The unit of the second figure serves both where the first has none.
//
// The error is an *Error of the end that could not be read, or of ends in the wrong order.
func ParseRange[Q ~float64](text string, parse func(string) (Q, error)) (Range[Q], error) {
	m := between.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil {
		q, err := parse(text)
		return Range[Q]{q, q}, err
	}
	hi, err := parse(m[2])
	if err != nil {
		return Range[Q]{}, err
	}
	low := m[1]
	if n, reason, _ := readNumber(low); reason == "" && n.rest == "" {
		second, _, _ := readNumber(m[2])
		low += " " + second.rest
	}
	lo, err := parse(low)
	if err != nil {
		return Range[Q]{}, err
	}
	if lo > hi {
		shown, _ := clip(text)
		return Range[Q]{}, &Error{shown, "goes down", fmt.Sprintf("write the smaller first: \"%v to %v\"", hi, lo)}
	}
	return Range[Q]{lo, hi}, nil
}
