package drawing

import (
	"fmt"
	"math"
	"strings"
)

// Chart is a curve with its band: what may come at the least, in the middle and at the most.
type Chart struct {
	Title, Desc  string
	XWord, YWord string // with the unit: "pressure, bar"
	Points       []ChartPoint
}

// ChartPoint is one place of a curve. A figure that is not known is NaN, and breaks the line.
type ChartPoint struct{ X, Low, Middle, High float64 }

// ChartView is a chart as its template writes it.
type ChartView struct {
	ID, Title, Desc, XWord, YWord string
	Band, Line                    string
	XTicks, YTicks                []tick
}

type tick struct{ At, Text string }

// The sheet of a chart, in units: narrow enough for a phone.
const (
	chartWidth, chartHeight = 320.0, 200.0
	chartLeft, chartBottom  = 44.0, 36.0
	chartTop, chartRight    = 12.0, 12.0
)

// View lays a chart out. ok is false where fewer than two points are known.
func (c *Chart) View(id string) (v *ChartView, ok bool) {
	var known []ChartPoint
	top := 0.0
	for _, p := range c.Points {
		if !math.IsNaN(p.Low) && !math.IsNaN(p.High) && !math.IsInf(p.High, 0) {
			known = append(known, p)
			top = max(top, p.High)
		}
	}
	if len(known) < 2 || top <= 0 {
		return nil, false
	}
	x0, x1 := known[0].X, known[len(known)-1].X
	yStep := roundStep(top / 4)
	y1 := math.Ceil(top/yStep) * yStep
	x := func(a float64) string {
		return num(chartLeft + (a-x0)/(x1-x0)*(chartWidth-chartLeft-chartRight))
	}
	y := func(a float64) string {
		return num(chartHeight - chartBottom - a/y1*(chartHeight-chartBottom-chartTop))
	}
	v = &ChartView{ID: cleanID(id), Title: c.Title, Desc: c.Desc, XWord: c.XWord, YWord: c.YWord}
	var upper, lower, middle strings.Builder
	for i, p := range known {
		step := "L"
		if i == 0 {
			step = "M"
		}
		fmt.Fprintf(&upper, "%s%s %s", step, x(p.X), y(max(0, p.High)))
		if !math.IsNaN(p.Middle) {
			if middle.Len() == 0 {
				step = "M"
			}
			fmt.Fprintf(&middle, "%s%s %s", step, x(p.X), y(max(0, p.Middle)))
		}
	}
	for i := len(known) - 1; i >= 0; i-- {
		fmt.Fprintf(&lower, "L%s %s", x(known[i].X), y(max(0, known[i].Low)))
	}
	v.Band, v.Line = upper.String()+lower.String()+"Z", middle.String()
	xStep := roundStep((x1 - x0) / 4)
	for a := math.Ceil(x0/xStep) * xStep; a <= x1+1e-9; a += xStep {
		v.XTicks = append(v.XTicks, tick{x(a), num(a)})
	}
	for a := 0.0; a <= y1+1e-9; a += yStep {
		v.YTicks = append(v.YTicks, tick{y(a), num(a)})
	}
	return v, true
}

// roundStep is the next 1, 2 or 5 times a power of ten.
func roundStep(a float64) float64 {
	p := math.Pow(10, math.Floor(math.Log10(a)))
	for _, m := range []float64{1, 2, 5} {
		if m*p >= a {
			return m * p
		}
	}
	return 10 * p
}
