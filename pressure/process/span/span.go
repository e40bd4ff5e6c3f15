// Package span holds a figure that is known between two ends.
//
// A [Span] has equal ends where the figure is known exactly. [Corners] visits every
// combination of ends of several spans: where what is computed rises or falls steadily
// with each of them, its least and its greatest are among these.
package span

import (
	"fmt"
	"math"
)

// Span is a quantity between its two ends, Lo not above Hi.
type Span[Q ~float64] struct{ Lo, Hi Q }

// Exactly is a figure that is known.
func Exactly[Q ~float64](q Q) Span[Q] { return Span[Q]{q, q} }

// Between is the span from one figure to another, in whichever order they come.
func Between[Q ~float64](a, b Q) Span[Q] {
	if b < a {
		a, b = b, a
	}
	return Span[Q]{a, b}
}

// About is a figure with as much on either side of it.
func About[Q ~float64](q, either Q) Span[Q] { return Between(q-either, q+either) }

// Middle is half way between the ends.
func (s Span[Q]) Middle() Q { return s.Lo + (s.Hi-s.Lo)/2 }

// Known reports whether both ends are the same figure.
func (s Span[Q]) Known() bool { return s.Lo == s.Hi }

// Has reports whether a figure is within the span, its ends included.
func (s Span[Q]) Has(q Q) bool { return q >= s.Lo && q <= s.Hi }

// Overlaps reports whether two spans have a figure in common.
func (s Span[Q]) Overlaps(t Span[Q]) bool { return s.Lo <= t.Hi && t.Lo <= s.Hi }

// Reach widens the span so that it holds a figure. Begin from [Empty].
func (s Span[Q]) Reach(q Q) Span[Q] {
	if q < s.Lo {
		s.Lo = q
	}
	if q > s.Hi {
		s.Hi = q
	}
	return s
}

// Empty is a span that holds nothing: what it [Span.Reach]es first is all of it.
func Empty[Q ~float64]() Span[Q] { return Span[Q]{Q(math.Inf(1)), Q(math.Inf(-1))} }

// Times multiplies both ends.
func (s Span[Q]) Times(factor float64) Span[Q] {
	return Between(Q(float64(s.Lo)*factor), Q(float64(s.Hi)*factor))
}

// String prints a known figure once, a span as "a to b".
func (s Span[Q]) String() string {
	if s.Known() {
		return fmt.Sprint(s.Lo)
	}
	return fmt.Sprintf("%v to %v", s.Lo, s.Hi)
}

// Corner says of each of several spans which end is meant.
type Corner uint32

// At is the end of the span that is the n-th of its corner, counted from 0.
func At[Q ~float64](c Corner, n int, s Span[Q]) Q {
	if c>>n&1 == 1 {
		return s.Hi
	}
	return s.Lo
}

// Corners calls visit for each of the 2^n combinations of ends of n spans, in a fixed
// order, beginning with all the low ends. n is at most 20.
func Corners(n int, visit func(Corner)) {
	for c := range Corner(1) << min(n, 20) {
		visit(c)
	}
}
