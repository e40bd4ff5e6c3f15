package spares

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

// table reads a CSV of check values, each row with its source, by column name.
func table(t *testing.T, name string) []map[string]string {
	file, err := os.Open(name)
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 1, "%s holds no rows", name)
	var list []map[string]string
	for _, row := range rows[1:] {
		named := map[string]string{}
		for i, value := range row {
			named[rows[0][i]] = value
		}
		require.NotEmpty(t, named["source"], "%s: a row without a source", name)
		list = append(list, named)
	}
	return list
}

func float(t *testing.T, text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return x
}

func whole(t *testing.T, text string) int {
	n, err := strconv.Atoi(text)
	require.NoError(t, err)
	return n
}

// half is half a unit of the last printed place: how far off a rounded figure may be.
func half(printed string) float64 {
	for i, r := range printed {
		if r == '.' {
			return 0.5000001 * math.Pow10(i+1-len(printed))
		}
	}
	return 0.5
}

func TestPublishedPoisson(t *testing.T) {
	for _, row := range table(t, "testdata/poisson.csv") {
		mean, k := float(t, row["mean"]), whole(t, row["k"])
		got := enoughFor(mean, k)
		if row["kind"] == "single" && k > 0 {
			got -= enoughFor(mean, k-1)
		}
		require.InDelta(t, float(t, row["printed"]), got, half(row["printed"]), "%v", row)
	}
}

func TestPublishedBinomial(t *testing.T) {
	for _, row := range table(t, "testdata/binomial.csv") {
		trials, k := whole(t, row["trials"]), whole(t, row["k"])
		got := enoughFitted(trials-k, k, float(t, row["p"]))
		require.InDelta(t, float(t, row["printed"]), got, half(row["printed"]), "%v", row)
	}
}

// Each printed cumulative value is itself a question: asked for a shade less, Wear must
// advise that k; asked for a shade more, one more at least.
func TestWearReadsPublishedTableBackwards(t *testing.T) {
	read := 0
	for _, row := range table(t, "testdata/poisson.csv") {
		printed := float(t, row["printed"])
		if row["kind"] != "cumulative" || printed > 0.999 {
			continue // so near to 1 the next value differs by less than it is printed to
		}
		mean, k := float(t, row["mean"]), whole(t, row["k"])
		below, _, err := Wear(mean, printed-half(row["printed"]))
		require.NoError(t, err)
		require.Equal(t, k, below, "%v", row)
		above, _, err := Wear(mean, printed+half(row["printed"]))
		require.NoError(t, err)
		require.Equal(t, k+1, above, "%v", row)
		read++
	}
	require.Greater(t, read, 50)
}

func TestSpoilReadsPublishedTableBackwards(t *testing.T) {
	read := 0
	for _, row := range table(t, "testdata/binomial.csv") {
		printed := float(t, row["printed"])
		trials, k := whole(t, row["trials"]), whole(t, row["k"])
		if trials > 8 || printed > 0.999 {
			continue
		}
		got, err := Spoil(trials-k, float(t, row["p"]), printed-half(row["printed"]))
		require.NoError(t, err)
		require.Equal(t, k, got, "%v", row)
		read++
	}
	require.Greater(t, read, 50)
}

func TestWearTable(t *testing.T) {
	for _, row := range table(t, "testdata/wear.csv") {
		mean := float(t, row["mean"])
		k, short, err := Wear(mean, float(t, row["confidence"]))
		require.NoError(t, err)
		require.Equal(t, whole(t, row["spares"]), k, "%v", row)
		require.InDelta(t, float(t, row["short"]), short, half(row["short"]), "%v", row)
		require.InDelta(t, 1-sum(mean, k), short, 1e-12, "the plain sum of the series agrees: %v", row)
	}
}

// sum adds the Poisson series term by term: a second opinion on the library's gamma function.
func sum(mean float64, k int) float64 {
	term := math.Exp(-mean)
	total := term
	for i := 1; i <= k; i++ {
		term *= mean / float64(i)
		total += term
	}
	return total
}
