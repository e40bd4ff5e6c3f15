package spares

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestShort(t *testing.T) {
	for _, row := range []struct {
		why     string
		n       int
		p, mean float64
		spare   int
		want    float64
		within  float64
		source  string
	}{
		{"bulbs: 5 in stock at 3 a week", 0, 0, 3, 5, 1 - 0.916, 0.0005, "University of Southampton, edshare.soton.ac.uk document 6744: F(5) = .916"},
		{"roses: 4 dozen at 4", 0, 0, 4, 4, 1 - 0.629, 0.0005, "Stevenson, Operations Management, 14th edition, chapter 12, example 15: F(4) = .629"},
		{"2 to fit at 10 %, no spare", 2, 0.1, 0, 0, 0.19, 1e-12, "1 - 0.9 x 0.9"},
		{"1 to fit at 10 %, one spare", 1, 0.1, 0, 1, 0.01, 1e-12, "both spoiled: 0.1 x 0.1"},
		{"both: no spare must meet neither", 2, 0.1, 0.5, 0, 1 - 0.81*math.Exp(-0.5), 1e-12, "0.81 x e^-0.5 to have enough"},
		{"both: one spare for either", 1, 0.1, 0.5, 1, 1 - math.Exp(-0.5)*0.99 - 0.5*math.Exp(-0.5)*0.9, 1e-12, "no failure and one spoiled, or one failure and none spoiled"},
		{"nothing can happen", 4, 0, 0, 0, 0, 0, "by definition"},
	} {
		t.Run(row.why, func(t *testing.T) {
			got, err := Short(row.n, row.p, row.mean, row.spare)
			require.NoError(t, err)
			require.InDelta(t, row.want, got, row.within, row.source)
		})
	}
}

func TestShortRefuses(t *testing.T) {
	for _, row := range []struct {
		n       int
		p, mean float64
		spare   int
		want    string
	}{
		{-1, 0, 0, 0, "-1 to fit is below zero"},
		{1, 1, 0, 0, "a chance of 1 that one is spoiled: write 0 or more, and less than 1 (100 %)"},
		{1, 0, math.NaN(), 0, "NaN failures expected: write 0 or more, and at most 10000"},
		{1, 0, 0, -1, "-1 spares are below zero"},
	} {
		_, err := Short(row.n, row.p, row.mean, row.spare)
		require.EqualError(t, err, row.want)
	}
}

// A spare more never makes it likelier to be without; a second risk never less likely.
func TestShortProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, p := rapid.IntRange(0, 40).Draw(t, "n"), rapid.Float64Range(0, 0.4).Draw(t, "p")
		mean, spare := rapid.Float64Range(0, 20).Draw(t, "mean"), rapid.IntRange(0, 30).Draw(t, "spare")
		got, err := Short(n, p, mean, spare)
		require.NoError(t, err)
		require.True(t, got >= 0 && got <= 1)
		more, err := Short(n, p, mean, spare+1)
		require.NoError(t, err)
		require.LessOrEqual(t, more, got+1e-9)
		alone, err := Short(n, p, 0, spare)
		require.NoError(t, err)
		require.GreaterOrEqual(t, got, alone-1e-9)
	})
}
