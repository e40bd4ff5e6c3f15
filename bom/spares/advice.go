package spares

import (
	"fmt"
	"math"
	"strconv"
)

// Advice is how many to carry, and why, in one sentence without a full stop.
type Advice struct {
	Count int
	Why   string
}

// Fitting advises on n fittings to fit, each spoiled with chance p while being fitted.
//
// Errors: those of [Spoil].
func Fitting(n int, p, confidence float64) (Advice, error) {
	k, err := Spoil(n, p, confidence)
	if err != nil {
		return Advice{}, err
	}
	if n == 0 {
		return Advice{0, "none to fit: no spare"}, nil
	}
	return Advice{k, fmt.Sprintf("%d to fit, %s spoiled each: %s %s to have enough (asked %s)",
		n, percent(p), give(k), chance(enoughFitted(n, k, p)), percent(confidence))}, nil
}

// Changes advises on fitted parts that are changed every life hours, for so many hours.
//
// Errors: those of [Planned].
func Changes(fitted int, hours, life float64) (Advice, error) {
	count, err := Planned(fitted, hours, life)
	if err != nil {
		return Advice{}, err
	}
	why := fmt.Sprintf("%d fitted, changed every %s: ", fitted, span(life))
	if fitted == 0 || count == 0 {
		return Advice{0, why + "no change in " + span(hours)}, nil
	}
	each := count / fitted
	why += fmt.Sprintf("%s each in %s", counted(each, "change", "changes"), span(hours))
	if fitted > 1 {
		why += fmt.Sprintf(", %d in all", count)
	}
	return Advice{count, why}, nil
}

// Failures advises on fitted parts that fail at random, once every life hours on
// average, for so many hours.
//
// Errors: those of [Wear]; fitted below 0; hours below 0, NaN or infinite; life not
// above 0, NaN or infinite.
func Failures(fitted int, hours, life, confidence float64) (Advice, error) {
	if err := checkUse(fitted, hours, life); err != nil {
		return Advice{}, err
	}
	mean := float64(fitted) * hours / life
	k, short, err := Wear(mean, confidence)
	if err != nil {
		return Advice{}, err
	}
	return Advice{k, fmt.Sprintf("%d fitted, one failure in %s each: %s expected in %s; %s %s to have enough (asked %s)",
		fitted, span(life), expected(mean), span(hours), give(k), chance(1-short), percent(confidence))}, nil
}

// give says what so many spares do: "1 spare gives", "no spare gives".
func give(k int) string {
	switch k {
	case 0:
		return "no spare gives"
	case 1:
		return "1 spare gives"
	}
	return fmt.Sprintf("%d spares give", k)
}

func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// chance writes a chance of success to a tenth of a percent, and never as certainty
// unless it is one.
func chance(share float64) string {
	if share < 1 && share >= 0.9995 {
		return "over 99.9 %"
	}
	return decimals(share*100, 1) + " %"
}

// percent writes a given share as its author wrote it, to a thousandth of a percent.
func percent(share float64) string {
	switch {
	case share > 0 && share < 0.00001:
		return "under 0.001 %"
	case share < 1 && share > 0.99999:
		return "over 99.999 %"
	}
	return decimals(share*100, 3) + " %"
}

// expected writes a mean number of failures to a hundredth.
func expected(mean float64) string {
	if mean > 0 && mean < 0.01 {
		return "under 0.01"
	}
	return decimals(mean, 2)
}

// number writes hours to a tenth.
func number(hours float64) string {
	if hours > 0 && hours < 0.1 {
		return "under 0.1"
	}
	return decimals(hours, 1)
}

// month is a mean month in hours: a twelfth of 365.25 days.
const month = 730.5

// span writes hours as people say them: in months where those are whole.
func span(hours float64) string {
	if months := math.Round(hours / month); months >= 1 && math.Abs(hours-months*month) < 1e-6*hours {
		return counted(int(months), "month", "months")
	}
	return number(hours) + " h"
}

// decimals rounds to so many places and drops trailing zeros.
func decimals(x float64, places int) string {
	scale := math.Pow10(places)
	return strconv.FormatFloat(math.Round(x*scale)/scale, 'f', -1, 64)
}
