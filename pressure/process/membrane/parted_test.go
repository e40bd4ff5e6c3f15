package membrane

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/quantity"
)

// Rows that are alike, written as unlike, make what they make as ways of one row.
func TestLikeRowsPartEvenly(t *testing.T) {
	run := Running{Pressure: 57 * bar, Feed: 24 * lpm, Temperature: 18, Salinity: 36, Back: back}
	row := rowOf(t, "2540", 2)
	three := Row{Units: row.Units, Parallel: 3}
	want, err := three.Solve(run, nil)
	require.NoError(t, err)
	parted := Row{Units: row.Units, Others: []Row{{Units: row.Units, Parallel: 2}}}
	got, err := parted.Solve(run, nil)
	require.NoError(t, err)
	for _, c := range [][2]float64{
		{float64(want.Product), float64(got.Product)}, {float64(want.Salt), float64(got.Salt)}, {float64(want.Brine), float64(got.Brine)},
		{float64(want.BrineSalinity), float64(got.BrineSalinity)}, {float64(want.Loss), float64(got.Loss)}, {float64(want.Drive), float64(got.Drive)},
		{float64(want.Flux), float64(got.Flux)}, {float64(want.LeastBrine), float64(got.LeastBrine)}, {float64(want.MostFeed), float64(got.MostFeed)},
		{float64(want.Recovery), float64(got.Recovery)},
	} {
		require.InEpsilon(t, c[0], c[1], 1e-8)
	}
}

// Unlike rows share one loss; their water and salt add up, and halving one flow until the
// losses agree finds the same.
func TestUnlikeRowsShareOneLoss(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, run := draw(t)
		other, _ := draw(t)
		run.Feed += quantity.Flow(other.Parallel) * 10 * lpm
		both := Row{Units: r.Units, Parallel: r.Parallel, Others: []Row{other}}
		out, err := both.Solve(run, nil)
		if err != nil {
			return
		}
		parts, err := both.Parts(run)
		require.NoError(t, err)
		require.InEpsilon(t, float64(parts[0].Loss), float64(parts[1].Loss), 1e-8)
		require.InEpsilon(t, float64(run.Feed), float64(parts[0].Product+parts[0].Brine+parts[1].Product+parts[1].Brine), 0.01, "volumes, which are not quite kept")
		require.InEpsilon(t, out.MassIn, out.MassOut+float64(out.Product)*productDensity, 1e-9, "mass")
		require.InEpsilon(t, out.SaltIn, out.SaltOut+float64(out.Product)*float64(out.Salt)/1000, 1e-9, "salt")
		require.InDelta(t, float64(parts[0].Product+parts[1].Product), float64(out.Product), 1e-9*float64(out.Product))

		lo, hi := 0.0, 1.0
		for range 60 {
			x := (lo + hi) / 2
			a, b := run, run
			a.Feed, b.Feed = run.Feed*quantity.Flow(x), run.Feed*quantity.Flow(1-x)
			one, err1 := r.Solve(a, nil)
			two, err2 := other.Solve(b, nil)
			if err2 != nil || err1 == nil && one.Loss > two.Loss {
				hi = x
			} else {
				lo = x
			}
		}
		require.InDelta(t, float64(run.Feed)*lo, parts[0].MassIn/out.MassIn*float64(run.Feed), 1e-6*float64(run.Feed))
	})
}

func TestAnUnlikeRowThatUsesUpItsPart(t *testing.T) {
	run := Running{Pressure: 80 * bar, Feed: 2 * lpm, Temperature: 28, Salinity: 0.1, Back: back}
	_, err := Row{Units: rowOf(t, "2540", 1).Units, Others: []Row{rowOf(t, "4040", 3)}}.Solve(run, nil)
	require.True(t, overdrawn(err), "%v", err)
	run.Feed = quantity.Flow(math.NaN())
	_, err = Row{Units: rowOf(t, "2540", 1).Units, Others: []Row{rowOf(t, "4040", 3)}}.Solve(run, nil)
	require.Error(t, err)
}
