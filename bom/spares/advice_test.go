package spares

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

func advised(a Advice, err error) string {
	if err != nil {
		return err.Error()
	}
	return fmt.Sprintf("%d | %s", a.Count, a.Why)
}

func TestAdvice(t *testing.T) {
	rows := []struct{ why, got, want string }{
		{"one spare", advised(Fitting(4, 0.03, 0.95)),
			"1 | 4 to fit, 3 % spoiled each: 1 spare gives 99.2 % to have enough (asked 95 %)"},
		{"several spares", advised(Fitting(40, 0.03, 0.99)),
			"4 | 40 to fit, 3 % spoiled each: 4 spares give 99 % to have enough (asked 99 %)"},
		{"no spare is an answer too", advised(Fitting(1, 0.03, 0.95)),
			"0 | 1 to fit, 3 % spoiled each: no spare gives 97 % to have enough (asked 95 %)"},
		{"near certainty is not called certainty", advised(Fitting(1, 0.001, 0.9995)),
			"1 | 1 to fit, 0.1 % spoiled each: 1 spare gives over 99.9 % to have enough (asked 99.95 %)"},
		{"certainty is", advised(Fitting(3, 0, 0.95)),
			"0 | 3 to fit, 0 % spoiled each: no spare gives 100 % to have enough (asked 95 %)"},
		{"nothing to fit", advised(Fitting(0, 0.03, 0.95)), "0 | none to fit: no spare"},
		{"extremes of what was asked", advised(Fitting(1, 0.000001, 0.9999999)),
			"1 | 1 to fit, under 0.001 % spoiled each: 1 spare gives over 99.9 % to have enough (asked over 99.999 %)"},
		{"a wrong chance", advised(Fitting(1, 3, 0.95)),
			"a chance of 3 that one is spoiled: write 0 or more, and less than 1 (100 %)"},

		{"one change", advised(Changes(1, 250, 150)), "1 | 1 fitted, changed every 150 h: 1 change each in 250 h"},
		{"changes of several", advised(Changes(2, 400, 25)),
			"32 | 2 fitted, changed every 25 h: 16 changes each in 400 h, 32 in all"},
		{"no change", advised(Changes(2, 250, 1500)), "0 | 2 fitted, changed every 1500 h: no change in 250 h"},
		{"none fitted", advised(Changes(0, 250, 150)), "0 | 0 fitted, changed every 150 h: no change in 250 h"},

		{"random wear", advised(Failures(1, 400, 1500, 0.95)),
			"1 | 1 fitted, one failure in 1500 h each: 0.27 expected in 400 h; 1 spare gives 97 % to have enough (asked 95 %)"},
		{"random wear of several", advised(Failures(3, 250, 1500, 0.99)),
			"3 | 3 fitted, one failure in 1500 h each: 0.5 expected in 250 h; 3 spares give 99.8 % to have enough (asked 99 %)"},
		{"hardly any wear", advised(Failures(1, 1, 1e6, 0.95)),
			"0 | 1 fitted, one failure in 1000000 h each: under 0.01 expected in 1 h; no spare gives over 99.9 % to have enough (asked 95 %)"},
		{"a year of a yearly life in months, as a calendar counts: 365.25 x 24 h", advised(Changes(1, 8766, 4383)),
			"2 | 1 fitted, changed every 6 months: 2 changes each in 12 months"},
		{"one month in the singular", advised(Changes(1, 1461, 730.5)),
			"2 | 1 fitted, changed every 1 month: 2 changes each in 2 months"},
		{"no whole months are hours, and so is less than one", advised(Changes(1, 8760, 700)),
			"12 | 1 fitted, changed every 700 h: 12 changes each in 8760 h"},
		{"a hundredth of a failure is a figure", advised(Failures(1, 110, 10000, 0.95)),
			"0 | 1 fitted, one failure in 10000 h each: 0.01 expected in 110 h; no spare gives 98.9 % to have enough (asked 95 %)"},
		{"a chance to a thousandth of a percent", advised(Fitting(1, 0.123456789, 0.5)),
			"0 | 1 to fit, 12.346 % spoiled each: no spare gives 87.7 % to have enough (asked 50 %)"},
		{"minutes", advised(Failures(1, 0.02, 10, 0.95)),
			"0 | 1 fitted, one failure in 10 h each: under 0.01 expected in under 0.1 h; no spare gives 99.8 % to have enough (asked 95 %)"},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) { require.Equal(t, row.want, row.got) })
	}
}

// The bulbs of the University of Southampton's exercise (edshare.soton.ac.uk, document
// 6744): three a week on average, 90 % to have enough.
func ExampleWear() {
	k, short, err := Wear(3, 0.90)
	fmt.Printf("%d %.3f %v\n", k, short, err)
	// Output: 5 0.084 <nil>
}
