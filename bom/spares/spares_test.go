package spares

import (
	"math"
	"math/big"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestSpoil(t *testing.T) {
	const a1 = "Distribution tables, table A1, Binomial distribution (scribd.com, document 413754319)"
	const depaul = "DePaul University, IT 223 notes 0529: pbinom(3, 15, 0.05) = 0.9945327, dbinom(3, 15, 0.05) = 0.03073298"
	rows := []struct {
		why           string
		n             int
		p, confidence float64
		want          int
		source        string
	}{
		{"4 at 5 %: none gives .8145, 1 of 5 gives .9774", 4, 0.05, 0.95, 1, a1},
		{"5 at 5 %: none gives .7738, 1 of 6 gives .9672", 5, 0.05, 0.95, 1, a1},
		{"6 at 5 %: 1 of 7 gives .9556", 6, 0.05, 0.95, 1, a1},
		{"2 at 10 %: none gives .8100, 1 of 3 gives .9720", 2, 0.10, 0.95, 1, a1},
		{"3 at 10 %: 1 of 4 gives .9477, just too little; 2 of 5 give .9914", 3, 0.10, 0.95, 2, a1},
		{"4 at 10 %: 1 of 5 gives .9185; 2 of 6 give .9842", 4, 0.10, 0.95, 2, a1},
		{"3 at 20 %: 1 of 4 gives .8192; 2 of 5 give .9421", 3, 0.20, 0.90, 2, a1},
		{"12 at 5 %: 3 of 15 give .9945327", 12, 0.05, 0.9945, 3, depaul},
		{"13 at 5 %: 2 of 15 give .9945 - .0307 = .9638", 13, 0.05, 0.95, 2, depaul},
		{"1 at 5 %, asked 95 %: exactly enough without a spare", 1, 0.05, 0.95, 0, "1 - 0.05 = 0.95"},
		{"2 at 10 %, asked 81 %: exactly enough without a spare", 2, 0.10, 0.81, 0, "0.9 x 0.9 = 0.81"},
		{"nothing to fit takes no spare", 0, 0.5, 0.99, 0, "by definition"},
		{"what is never spoiled takes no spare", 40, 0, 0.999, 0, "by definition"},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			got, err := Spoil(row.n, row.p, row.confidence)
			require.NoError(t, err, row.source)
			require.Equal(t, row.want, got, row.source)
		})
	}
}

func TestSpoilRefuses(t *testing.T) {
	rows := []struct {
		why           string
		n             int
		p, confidence float64
		want          string
	}{
		{"fewer than none", -1, 0.03, 0.95, "-1 to fit is below zero"},
		{"more than any boat holds", math.MaxInt, 0.03, 0.95, "9223372036854775807 to fit is more than 1000000: write fewer"},
		{"always spoiled", 4, 1, 0.95, "a chance of 1 that one is spoiled: write 0 or more, and less than 1 (100 %)"},
		{"a percentage taken for a share", 4, 3, 0.95, "a chance of 3 that one is spoiled: write 0 or more, and less than 1 (100 %)"},
		{"below zero", 4, -0.03, 0.95, "a chance of -0.03 that one is spoiled: write 0 or more, and less than 1 (100 %)"},
		{"not a number", 4, math.NaN(), 0.95, "a chance of NaN that one is spoiled: write 0 or more, and less than 1 (100 %)"},
		{"certainty cannot be had", 4, 0.03, 1, "a confidence of 1: write more than 0 and less than 1 (100 %), such as 0.95"},
		{"no confidence", 4, 0.03, 0, "a confidence of 0: write more than 0 and less than 1 (100 %), such as 0.95"},
		{"confidence is not a number", 4, 0.03, math.NaN(), "a confidence of NaN: write more than 0 and less than 1 (100 %), such as 0.95"},
		{"nearly always spoiled", 1000, 0.99, 0.95, "1000 to fit, with a chance of 0.99 that one is spoiled, would need more than 10000 spares: write a smaller chance"},
		{"the most to fit ends in time", 1000000, 0.03, 0.95, "1000000 to fit, with a chance of 0.03 that one is spoiled, would need more than 10000 spares: write a smaller chance"},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			_, err := Spoil(row.n, row.p, row.confidence)
			require.EqualError(t, err, row.want)
		})
	}
}

func TestPlanned(t *testing.T) {
	rows := []struct {
		why         string
		fitted      int
		hours, life float64
		want        int
	}{
		{"250 h of 150 h cartridges: one change", 1, 250, 150, 1},
		{"two housings change twice as many", 2, 250, 150, 2},
		{"400 h of 25 h cartridges: 16, the last on the last day", 1, 400, 25, 16},
		{"due on the last day: counted", 1, 300, 150, 2},
		{"due the hour after: not counted", 1, 299, 150, 1},
		{"outlasts the voyage", 3, 250, 1500, 0},
		{"a tenth is not binary: 0.3 / 0.1 is 3", 1, 0.3, 0.1, 3},
		{"none fitted", 0, 250, 150, 0},
		{"none fitted, and a quotient beyond all numbers", 0, 1e308, 1e-308, 0},
		{"no running", 2, 0, 150, 0},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			got, err := Planned(row.fitted, row.hours, row.life)
			require.NoError(t, err)
			require.Equal(t, row.want, got)
		})
	}
}

func TestUseRefused(t *testing.T) {
	rows := []struct {
		why         string
		fitted      int
		hours, life float64
		want        string
	}{
		{"fewer than none", -1, 250, 150, "-1 fitted is below zero"},
		{"time runs forward", 1, -1, 150, "-1 running hours: write 0 or more"},
		{"no end", 1, math.Inf(1), 150, "+Inf running hours: write 0 or more"},
		{"not a number", 1, math.NaN(), 150, "NaN running hours: write 0 or more"},
		{"no life", 1, 250, 0, "a life of 0 h: write more than 0, or leave the life out"},
		{"life below zero", 1, 250, -5, "a life of -5 h: write more than 0, or leave the life out"},
		{"life is not a number", 1, 250, math.NaN(), "a life of NaN h: write more than 0, or leave the life out"},
		{"lasts for ever", 1, 250, math.Inf(1), "a life of +Inf h: write more than 0, or leave the life out"},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			_, err := Planned(row.fitted, row.hours, row.life)
			require.EqualError(t, err, row.want)
			_, err = Changes(row.fitted, row.hours, row.life)
			require.EqualError(t, err, row.want)
			_, err = Failures(row.fitted, row.hours, row.life, 0.95)
			require.EqualError(t, err, row.want)
		})
	}
	_, err := Planned(1, 1e9, 1)
	require.EqualError(t, err, "1 fitted for 1e+09 h, each changed every 1 h, would take more than 10000: write a longer life")
	_, err = Planned(1, 1e308, 1e-308)
	require.ErrorContains(t, err, "write a longer life", "a quotient beyond all numbers")
	_, err = Failures(1, 1e308, 1e-308, 0.95)
	require.ErrorContains(t, err, "write a longer life")
}

func TestWear(t *testing.T) {
	const soton = "University of Southampton, edshare.soton.ac.uk document 6744: mean 3 a week, F(4) = .815, F(5) = .916"
	const roses = "Stevenson, Operations Management, 14th edition, chapter 12, example 15: F(3) = .433, F(4) = .629"
	rows := []struct {
		why              string
		mean, confidence float64
		want             int
		short, within    float64
		source           string
	}{
		{"bulbs: 5 in stock to be 90 % sure", 3, 0.90, 5, 1 - 0.916, 0.0005, soton},
		{"roses: 4 dozen at a service level of .60", 4, 0.60, 4, 1 - 0.629, 0.0005, roses},
		{"no failures expected", 0, 0.999, 0, 0, 0, "e^0 = 1"},
		{"exactly enough: the asked chance is e^-1", 1, math.Exp(-1), 0, 1 - math.Exp(-1), 1e-12, "F(0) = e^-m"},
		{"seal kits: 400 h at one in 1500 h, 95 %", 400.0 / 1500, 0.95, 1, 0.0298, 0.0001, "computed: 1 - e^-m (1 + m)"},
		{"seal kits at 99 %", 400.0 / 1500, 0.99, 2, 0.0026, 0.0001, "computed: 1 - e^-m (1 + m + m^2 / 2)"},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			k, short, err := Wear(row.mean, row.confidence)
			require.NoError(t, err, row.source)
			require.Equal(t, row.want, k, row.source)
			require.InDelta(t, row.short, short, row.within, row.source)
		})
	}
}

func TestWearRefuses(t *testing.T) {
	rows := []struct {
		why              string
		mean, confidence float64
		want             string
	}{
		{"below zero", -0.1, 0.95, "-0.1 failures expected: write 0 or more"},
		{"not a number", math.NaN(), 0.95, "NaN failures expected: write 0 or more"},
		{"no end", math.Inf(1), 0.95, "+Inf failures expected would need more than 10000 spares: write a longer life"},
		{"the loop ends", 9999, 0.95, "9999 failures expected would need more than 10000 spares: write a longer life"},
		{"certainty cannot be had", 1, 1, "a confidence of 1: write more than 0 and less than 1 (100 %), such as 0.95"},
		{"a percentage taken for a share", 1, 95, "a confidence of 95: write more than 0 and less than 1 (100 %), such as 0.95"},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			_, _, err := Wear(row.mean, row.confidence)
			require.EqualError(t, err, row.want)
		})
	}
}

// fitting is the second opinion on Spoil's model, in exact fractions: fit one after the
// other, a spare as likely spoiled as the rest, until n are good or the parts run out.
func fitting(n, parts int, p *big.Rat) *big.Rat {
	if n == 0 {
		return big.NewRat(1, 1)
	}
	if parts < n {
		return new(big.Rat)
	}
	good := new(big.Rat).Sub(big.NewRat(1, 1), p)
	good.Mul(good, fitting(n-1, parts-1, p))
	spoiled := new(big.Rat).Mul(p, fitting(n, parts-1, p))
	return good.Add(good, spoiled)
}

func TestSpoilModelIsFittingOneByOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, k := rapid.IntRange(0, 6).Draw(t, "n"), rapid.IntRange(0, 4).Draw(t, "k")
		permille := rapid.Int64Range(0, 999).Draw(t, "p")
		want, _ := fitting(n, n+k, big.NewRat(permille, 1000)).Float64()
		require.InDelta(t, want, enoughFitted(n, k, float64(permille)/1000), 1e-10)
	})
}

func TestSpoilProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 200).Draw(t, "n")
		p := rapid.Float64Range(0, 0.5).Draw(t, "p")
		confidence := rapid.Float64Range(0.01, 0.999).Draw(t, "confidence")
		k, err := Spoil(n, p, confidence)
		require.NoError(t, err)
		require.GreaterOrEqual(t, enoughFitted(n, k, p), confidence-slack, "k is enough")
		if k > 0 {
			require.Less(t, enoughFitted(n, k-1, p), confidence-slack, "and one less is not")
		}

		more, err := Spoil(n, p, rapid.Float64Range(confidence, 0.9995).Draw(t, "more confidence"))
		require.NoError(t, err)
		require.GreaterOrEqual(t, more, k, "more confidence, never fewer")
		more, err = Spoil(n+rapid.IntRange(1, 50).Draw(t, "more to fit"), p, confidence)
		require.NoError(t, err)
		require.GreaterOrEqual(t, more, k, "more to fit, never fewer")
		more, err = Spoil(n, rapid.Float64Range(p, 0.6).Draw(t, "worse p"), confidence)
		require.NoError(t, err)
		require.GreaterOrEqual(t, more, k, "worse chance, never fewer")
	})
}

func TestWearProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mean := rapid.Float64Range(0, 50).Draw(t, "mean")
		confidence := rapid.Float64Range(0.01, 0.999).Draw(t, "confidence")
		k, short, err := Wear(mean, confidence)
		require.NoError(t, err)
		require.LessOrEqual(t, short, 1-confidence+slack)
		require.InDelta(t, 1-sum(mean, k), short, 1e-10, "the plain sum agrees")

		more, _, err := Wear(mean, rapid.Float64Range(confidence, 0.9995).Draw(t, "more confidence"))
		require.NoError(t, err)
		require.GreaterOrEqual(t, more, k, "more confidence, never fewer")
		more, _, err = Wear(mean+rapid.Float64Range(0, 20).Draw(t, "more wear"), confidence)
		require.NoError(t, err)
		require.GreaterOrEqual(t, more, k, "more wear, never fewer")
	})
}

func TestPlannedProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fitted := rapid.IntRange(0, 20).Draw(t, "fitted")
		life := rapid.Float64Range(10, 5000).Draw(t, "life")
		hours := rapid.Float64Range(0, 4000).Draw(t, "hours")
		n, err := Planned(fitted, hours, life)
		require.NoError(t, err)
		require.LessOrEqual(t, float64(n)*life, float64(fitted)*hours*(1+1e-6)+1e-6, "no part is thrown away early")
		more, err := Planned(fitted+1, hours, life)
		require.NoError(t, err)
		require.GreaterOrEqual(t, more, n, "more fitted, never fewer")
		more, err = Planned(fitted, hours+rapid.Float64Range(0, 1000).Draw(t, "longer"), life)
		require.NoError(t, err)
		require.GreaterOrEqual(t, more, n, "longer away, never fewer")
	})
}
