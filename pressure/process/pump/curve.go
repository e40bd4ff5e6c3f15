package pump

import (
	"errors"
	"fmt"

	"handtight/pressure/quantity"
)

// Point is one point of a pump's curve.
type Point struct {
	Flow     quantity.Flow
	Pressure quantity.Pressure
}

// Curve is a pump whose pressure falls with its flow, from no flow to no pressure.
type Curve struct {
	points []Point
	square bool // p = shutoff (1 - (q/most)2) between the first and the last point
}

// RiseError says which point of a curve does not lie below the one before.
type RiseError struct{ Point int }

// Error says what to write.
func (e *RiseError) Error() string {
	return fmt.Sprintf("point %d of the curve does not fall: each has more flow and less pressure than the one before", e.Point+1)
}

// NewCurve makes a curve of points from the least flow to the greatest; between them it is
// straight.
//
// Errors: fewer than two points, a figure below zero, a [*RiseError].
func NewCurve(points ...Point) (Curve, error) {
	if len(points) < 2 {
		return Curve{}, errors.New("a curve has two points or more")
	}
	for i, p := range points {
		if !(p.Flow >= 0 && p.Pressure >= 0) {
			return Curve{}, errors.New("a curve's flows and pressures are not below zero")
		}
		if i > 0 && !(p.Flow > points[i-1].Flow && p.Pressure < points[i-1].Pressure) {
			return Curve{}, &RiseError{i}
		}
	}
	return Curve{points: append([]Point(nil), points...)}, nil
}

// Between is the two curves that a pump of which only the shut-off pressure and the open flow are
// said lies between: the straight line, and p = shutoff (1 - (q/open)2). The first is the lower.
//
// Errors: those of [NewCurve].
func Between(shutoff quantity.Pressure, open quantity.Flow) (lower, upper Curve, err error) {
	lower, err = NewCurve(Point{0, shutoff}, Point{open, 0})
	upper = lower
	upper.square = true
	return lower, upper, err
}

// Points are the curve's own.
func (c Curve) Points() []Point { return c.points }

// Shutoff is the pressure without flow, Open the flow at the curve's end.
func (c Curve) Shutoff() quantity.Pressure { return c.points[0].Pressure }

// Open is the greatest flow of the curve.
func (c Curve) Open() quantity.Flow { return c.points[len(c.points)-1].Flow }

// Pressure is what the pump adds at a flow; beyond its end the last stretch goes on, below
// zero: the pump is then pulled through.
func (c Curve) Pressure(q quantity.Flow) quantity.Pressure {
	p, _ := c.At(q)
	return p
}

// At is the pressure at a flow and how it changes there, in Pa for a m3/s. Against its
// direction the first stretch goes on.
func (c Curve) At(q quantity.Flow) (p quantity.Pressure, slope float64) {
	if c.square {
		first, last := c.points[0], c.points[len(c.points)-1]
		x := float64(q / last.Flow)
		steep := -2 * float64(first.Pressure) / float64(last.Flow)
		if x < 0 {
			return first.Pressure, 0
		}
		return first.Pressure * quantity.Pressure(1-x*x), steep * x
	}
	i := 1
	for i < len(c.points)-1 && q > c.points[i].Flow {
		i++
	}
	a, b := c.points[i-1], c.points[i]
	slope = float64(b.Pressure-a.Pressure) / float64(b.Flow-a.Flow)
	return a.Pressure + quantity.Pressure(slope*float64(q-a.Flow)), slope
}

// Flow is what the pump delivers against a pressure: nothing at its shut-off and above.
func (c Curve) Flow(p quantity.Pressure) quantity.Flow {
	if p >= c.Shutoff() {
		return 0
	}
	low, high := quantity.Flow(0), c.Open()*2
	for range 60 {
		if middle := (low + high) / 2; c.Pressure(middle) > p {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}
