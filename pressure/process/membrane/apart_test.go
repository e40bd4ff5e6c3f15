package membrane

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/pressure/process/sea"
	"handtight/pressure/quantity"
)

// plantsApart were reckoned by a model written apart, in another language, before this one ran:
// from the published correlations of sea water and of the film, each element fitted to its
// test by the same march, twenty explicit steps an element in volumes and g/L. The first
// comparison: 24 of 24 within 3 % of the water and 6 % of the salt.
var plantsApart = []struct {
	size                string
	elements            int
	bar, feed, water    float64 // bar, L/min, C
	salt                float64 // g/kg
	product, milligrams float64 // L/h, mg/L
}{
	{"2540", 1, 54, 9, 18, 35, 70.0, 300},
	{"2540", 1, 62, 10, 12, 36, 73.6, 246},
	{"2521", 1, 56, 7, 22, 35, 38.9, 239},
	{"2521", 1, 48, 5, 26, 38, 25.1, 426},
	{"2540", 2, 56, 15, 16, 35, 149.2, 254},
	{"2540", 2, 58, 12, 24, 37, 170.8, 330},
	{"4040", 1, 56, 22, 18, 35, 174.4, 116},
	{"4021", 1, 52, 18, 20, 34, 96.8, 269},
	{"2540", 1, 30, 9, 10, 36, 10.2, 1217},
	{"2540", 1, 16, 9, 8, 7, 25.1, 97},
	{"2540", 1, 40, 4, 28, 40, 24.7, 1176},
	{"2540", 1, 88, 9, 20, 35, 147.7, 213},
	{"2521", 2, 56, 8, 14, 35, 60.6, 233},
	{"2540", 3, 56, 16, 20, 36, 228.3, 304},
	{"4040", 1, 56, 6, 22, 35, 101.5, 295},
	{"2540", 1, 50, 9, 4, 35, 39.2, 306},
	{"2540", 1, 58, 9, 31, 41, 88.6, 416},
	{"2521", 1, 60, 3, 24, 36, 30.0, 415},
	{"2540", 1, 54, 26, 18, 35, 85.6, 210},
	{"4040", 2, 60, 34, 15, 36, 362.9, 102},
	{"2540", 1, 26, 8, 12, 20, 27.8, 296},
	{"2540", 1, 45, 7, 20, 35, 48.0, 442},
	{"2521", 1, 35, 7, 30, 39, 10.0, 1015},
	{"4021", 2, 55, 25, 18, 35, 204.7, 243},
}

func TestPlantsReckonedApart(t *testing.T) {
	for _, p := range plantsApart {
		out, err := rowOf(t, p.size, p.elements).Solve(Running{Pressure: quantity.Pressure(p.bar) * bar, Feed: quantity.Flow(p.feed) * lpm,
			Temperature: quantity.Temperature(p.water), Salinity: quantity.Salinity(p.salt), Back: back}, nil)
		require.NoError(t, err)
		require.InEpsilon(t, p.product, out.Product.LitresPerHour(), 0.03, "%v", p)
		require.InEpsilon(t, p.milligrams, float64(out.Salt), 0.06, "%v", p)
	}
}

// The march refuses by name what it cannot reckon.
func TestFrozenWaterIsNoPlant(t *testing.T) {
	_, err := rowOf(t, "2540", 1).Solve(Running{Pressure: 50 * bar, Feed: 8 * lpm, Temperature: -3, Salinity: 35}, nil)
	require.ErrorContains(t, err, "frozen")
	_, err = rowOf(t, "2540", 1).Solve(Running{Pressure: 50 * bar, Feed: 8 * lpm, Temperature: 20, Salinity: 130}, nil)
	var outside *sea.OutsideError
	require.ErrorAs(t, err, &outside)
}
