package spares

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Short answers how likely it is that spare pieces are not enough for both ways of
// losing them: n to fit, each tried spoiled with chance p, and mean failures at random.
//
//	1 - sum over j from 0 to spare of P[F = j] x P[B <= spare - j]
//
// with F ~ Poisson(mean) and B ~ Binomial(n + spare - j, p), as [Wear] and [Spoil] count
// them; the two are independent.
//
// Errors: n below 0 or above 100 x [Most]; p not in [0, 1); mean below 0, NaN or above
// [Most]; spare below 0. More than [Most] spares count as [Most].
// Source: Poisson and binomial distributions, NIST/SEMATECH e-Handbook of Statistical
// Methods, 1.3.6.6.18 and 1.3.6.6.19 (memory).
func Short(n int, p, mean float64, spare int) (float64, error) {
	if err := checkSpoil(n, p, 0.5); err != nil {
		return 0, err
	}
	if !(mean >= 0 && mean <= Most) {
		return 0, fmt.Errorf("%v failures expected: write 0 or more, and at most %d", mean, Most)
	}
	if spare < 0 {
		return 0, fmt.Errorf("%d spares are below zero", spare)
	}
	spare = min(spare, Most)
	switch {
	case mean == 0:
		return 1 - enoughFitted(n, spare, p), nil
	case n == 0 || p == 0:
		return math.Max(0, 1-enoughFor(mean, spare)), nil
	}
	failures := distuv.Poisson{Lambda: mean}
	enough := 0.0
	for j := 0; j <= spare; j++ {
		enough += failures.Prob(float64(j)) * enoughFitted(n, spare-j, p)
	}
	return math.Max(0, 1-enough), nil
}
