package quantity

import (
	"math"
	"strconv"
)

// String gives the pressure in bar to three or four figures: "58 bar".
func (p Pressure) String() string { return Figures(p.Bar()) + " bar" }

// String gives the flow in L/h below 200, in L/min to 1000, else in m3/h.
func (f Flow) String() string {
	switch hour := math.Abs(f.LitresPerHour()); {
	case hour < 199.95:
		return Figures(f.LitresPerHour()) + " L/h"
	case hour < 59997:
		return Figures(f.LitresPerMinute()) + " L/min"
	}
	return Figures(float64(f/CubicMetrePerHour)) + " m3/h"
}

// String gives the temperature to a tenth of a degree: "17 C".
func (t Temperature) String() string { return Decimals(float64(t), 1) + " C" }

// String gives the length as people say it: "5 micron", "19.05 mm", "1.4 m".
// Millimetres are given to a hundredth, so that a bore can be told from its neighbour.
func (l Length) String() string {
	switch mm := math.Abs(float64(l)); {
	case mm != 0 && mm < 0.0995:
		return Figures(l.Microns()) + " micron"
	case mm < 99.995:
		return Decimals(float64(l), 2) + " mm"
	case mm < 999.95:
		return Figures(float64(l)) + " mm"
	}
	return Figures(l.Metres()) + " m"
}

// String gives the voltage: "24 V".
func (v Voltage) String() string { return Figures(float64(v)) + " V" }

// String gives the current: "35.8 A".
func (c Current) String() string { return Figures(float64(c)) + " A" }

// String gives the power in W below 1000, else in kW.
func (p Power) String() string {
	if math.Abs(float64(p)) < 999.95 {
		return Figures(float64(p)) + " W"
	}
	return Figures(float64(p/Kilowatt)) + " kW"
}

// String gives the charge: "400 Ah".
func (c Charge) String() string { return Figures(float64(c)) + " Ah" }

// String gives the salinity in g/kg: "35 g/kg".
func (s Salinity) String() string { return Figures(float64(s)) + " g/kg" }

// String gives hours, as running time is counted, or months when they are whole:
// "250 h", "9 months". See [Duration.Calendar] for time by the calendar.
func (d Duration) String() string {
	if n, whole := wholes(d, Month); whole {
		return counted(n, "month")
	}
	return Figures(float64(d)) + " h"
}

// Calendar gives the duration as a calendar counts it: whole months, weeks from
// eight on, or days; hours only for less than two days. "9 months", "14 days", "36 h".
func (d Duration) Calendar() string {
	if n, whole := wholes(d, Month); whole {
		return counted(n, "month")
	}
	if n, whole := wholes(d, Week); whole && n >= 8 {
		return counted(n, "week")
	}
	if n, whole := wholes(d, Day); whole || math.Abs(float64(d)) >= 48 {
		return counted(n, "day")
	}
	return Figures(float64(d)) + " h"
}

// String gives the share in percent: "95 %".
func (s Share) String() string { return Figures(s.Percent()) + " %" }

// String gives the torque: "40 N m".
func (t Torque) String() string { return Figures(float64(t)) + " N m" }

func wholes(d, unit Duration) (n float64, whole bool) {
	n = float64(d / unit)
	near := math.Round(n)
	return n, near >= 1 && math.Abs(n-near) < 1e-9*near
}

func counted(n float64, unit string) string {
	text := Figures(n)
	if text == "1" {
		return text + " " + unit
	}
	return text + " " + unit + "s"
}

// Figures prints three figures below 100 and four from there on, as [Significant] does:
// 20.68 is "20.7", 275.79 is "275.8", 12345.6 stays.
func Figures(v float64) string {
	if math.Abs(v) >= 99.95 {
		return Significant(v, 4)
	}
	return Significant(v, 3)
}

// Significant prints so many figures, from 1000 on always one decimal, without an exponent
// and without trailing zeros.
func Significant(v float64, figures int) string {
	if math.Abs(v) >= 999.95 {
		return Decimals(v, 1)
	}
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(v, 'e', figures-1, 64), 64)
	if err != nil {
		rounded = v
	}
	if rounded == 0 {
		return "0" // also of minus nothing
	}
	return Exact(rounded)
}

// Decimals prints at most so many decimals, without an exponent and without trailing zeros:
// 9.525 to two is "9.53".
func Decimals(v float64, decimals int) string {
	per := math.Pow10(decimals)
	rounded := math.Round(v*per*(1+1e-12)) / per // 9.525 is held as a hair less
	if rounded == 0 {
		return "0"
	}
	return Exact(rounded)
}

// Exact prints all figures of a number, as few as tell it from its neighbours, without an
// exponent: 0.0000125 stays so.
func Exact(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
