// Package spares answers how many spares to carry, and why, in one sentence.
//
// Three rules, one for each way a part is used up: [Spoil] for fittings that may be
// spoiled while they are fitted, [Planned] for parts changed at a known interval, and
// [Wear] for parts that fail at random. [Fitting], [Changes] and [Failures] give the
// same counts as an [Advice], with the sentence.
//
// # Units
//
// Chances and confidences are shares of one, above 0 and below 1 (a chance of spoiling
// may be 0). Hours and lives share one unit, whichever it is.
//
// # What it does not do
//
// It knows no part's life and no chance of spoiling: those are judgements of the build
// file. It treats parts as independent, and random wear as a constant rate; a part that
// wears out fails later and then more surely, which is what a planned change is for.
package spares

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Most is the greatest number of spares that is ever advised; a rule that asks for
// more has been given a wrong figure.
const Most = 10000

// slack lets a chance that equals the confidence count as reached: 1 to fit at 5 %
// has exactly 95 %, which binary fractions miss by 1e-16.
const slack = 1e-9

// Spoil answers how many spares to carry so that n can be fitted although each one
// tried, spare or not, is spoiled with chance p, independently of the others.
//
// It is the least k with P[B <= k] >= confidence, where B ~ Binomial(n+k, p) counts the
// spoiled among all n+k. That is the same as fitting until n have gone well and asking
// that the spoiled ones before the last good one, which are negative binomial, number
// at most k: the n+k hold n good ones exactly when no more than k are spoiled.
//
// A chance within 1e-9 of the confidence counts as reached.
// Errors: n below 0 or above 100 x [Most]; p not in [0, 1); confidence not in (0, 1); more than [Most] spares.
// Source: binomial distribution, NIST/SEMATECH e-Handbook of Statistical Methods,
// 1.3.6.6.18 (memory).
func Spoil(n int, p, confidence float64) (k int, err error) {
	if err := checkSpoil(n, p, confidence); err != nil {
		return 0, err
	}
	for k = 0; k <= Most; k++ {
		if enoughFitted(n, k, p)+slack >= confidence {
			return k, nil
		}
	}
	return 0, fmt.Errorf("%d to fit, with a chance of %v that one is spoiled, would need more than %d spares: write a smaller chance",
		n, p, Most)
}

func checkSpoil(n int, p, confidence float64) error {
	if n < 0 {
		return fmt.Errorf("%d to fit is below zero", n)
	}
	if n > 100*Most {
		return fmt.Errorf("%d to fit is more than %d: write fewer", n, 100*Most)
	}
	if !(p >= 0 && p < 1) {
		return fmt.Errorf("a chance of %v that one is spoiled: write 0 or more, and less than 1 (100 %%)", p)
	}
	return checkConfidence(confidence)
}

func checkConfidence(confidence float64) error {
	if !(confidence > 0 && confidence < 1) {
		return fmt.Errorf("a confidence of %v: write more than 0 and less than 1 (100 %%), such as 0.95", confidence)
	}
	return nil
}

// enoughFitted is the chance that at least n of n+k come out well.
func enoughFitted(n, k int, p float64) float64 {
	if n == 0 || p == 0 {
		return 1
	}
	return distuv.Binomial{N: float64(n + k), P: p}.CDF(float64(k))
}

// Planned answers how many changes of fitted parts fall within hours, each changed
// every life hours: fitted x floor(hours / life).
//
// Where hours / life is whole, the last change falls due on the last day, and it is
// counted: the hours are an estimate, and one hour more would find the part due at sea.
// A quotient within 1e-9 below a whole number counts as whole.
//
// Errors: fitted below 0; hours below 0, NaN or infinite; life not above 0, NaN or
// infinite; more than [Most] changes.
// Source: floor rule, common practice.
func Planned(fitted int, hours, life float64) (int, error) {
	if err := checkUse(fitted, hours, life); err != nil {
		return 0, err
	}
	if fitted == 0 {
		return 0, nil
	}
	changes := float64(fitted) * math.Floor(hours/life*(1+slack))
	if changes > Most {
		return 0, fmt.Errorf("%d fitted for %v h, each changed every %v h, would take more than %d: write a longer life",
			fitted, hours, life, Most)
	}
	return int(changes), nil
}

func checkUse(fitted int, hours, life float64) error {
	if fitted < 0 {
		return fmt.Errorf("%d fitted is below zero", fitted)
	}
	if !(hours >= 0) || math.IsInf(hours, 0) {
		return fmt.Errorf("%v running hours: write 0 or more", hours)
	}
	if !(life > 0) || math.IsInf(life, 0) {
		return fmt.Errorf("a life of %v h: write more than 0, or leave the life out", life)
	}
	return nil
}

// Wear answers how many spares to carry for failures that come at random, mean of them
// expected, and how likely it is to run short all the same.
//
//	k = the least with P[F <= k] >= confidence, F ~ Poisson(mean)
//	chanceShort = 1 - P[F <= k]
//
// The mean is fitted x hours / (hours between failures). The fitted part is what fails,
// so each failure takes one spare.
//
// A chance within 1e-9 of the confidence counts as reached.
// Errors: mean below 0 or NaN; confidence not in (0, 1); more than [Most] spares.
// Source: Poisson distribution, NIST/SEMATECH e-Handbook of Statistical Methods,
// 1.3.6.6.19 (memory).
func Wear(mean, confidence float64) (k int, chanceShort float64, err error) {
	if !(mean >= 0) {
		return 0, 0, fmt.Errorf("%v failures expected: write 0 or more", mean)
	}
	if err := checkConfidence(confidence); err != nil {
		return 0, 0, err
	}
	// A mean above Most is refused without counting: at no confidence of use would Most do.
	for k = 0; k <= Most && mean <= Most; k++ {
		if enough := enoughFor(mean, k); enough+slack >= confidence {
			return k, 1 - enough, nil
		}
	}
	return 0, 0, fmt.Errorf("%v failures expected would need more than %d spares: write a longer life", mean, Most)
}

// enoughFor is the chance that k spares last for mean failures expected.
func enoughFor(mean float64, k int) float64 {
	return distuv.Poisson{Lambda: mean}.CDF(float64(k))
}
