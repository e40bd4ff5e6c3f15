package trend

import (
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/quantity"
)

func ExampleNormalise() {
	start := Conditions{Pressure: 55 * quantity.Bar, Loss: 0.3 * quantity.Bar, Salinity: 35, Water: 15, Recovery: 0.12}
	today := Conditions{Pressure: 57 * quantity.Bar, Loss: 0.4 * quantity.Bar, Salinity: 36, Water: 20, Recovery: 0.12}
	q, _ := Normalise(66*quantity.LitrePerHour, today, start)
	fmt.Printf("%.1f L/h\n", q.LitresPerHour())
	// Output: 53.9 L/h
}

func ExampleNormalisePassage() {
	start := Conditions{Pressure: 55 * quantity.Bar, Salinity: 35, Water: 15, Recovery: 0.12, Salt: 300}
	today := start
	today.Water, today.Salt = 25, 300
	then, _ := start.Passage()
	now, _ := NormalisePassage(86*quantity.LitrePerHour, 61*quantity.LitrePerHour, today, start)
	fmt.Printf("%.2f %% and %.2f %%\n", then.Percent(), now.Percent())
	// Output: 0.78 % and 0.78 %
}

func ExampleLogMean() {
	fmt.Printf("%.4f\n", LogMean(0.12))
	// Output: 1.0653
}

func ExampleConditions_Drive() {
	d, _ := Conditions{Pressure: 55 * quantity.Bar, Loss: 0.3 * quantity.Bar, Salinity: 35, Water: 15, Recovery: 0.12}.Drive()
	fmt.Printf("%.1f bar\n", d.Bar())
	// Output: 28.2 bar
}

func ExampleLook() {
	var log []Reading
	for i := range 12 {
		made := 60.0
		if i > 5 {
			made = 47
		}
		log = append(log, Reading{
			Date: time.Date(2031, 5, 1+i, 0, 0, 0, 0, time.UTC), Product: Known(quantity.Flow(made) * quantity.LitrePerHour),
			Feed: Known(52 * quantity.Bar), Water: Known(19 * quantity.Celsius),
		})
	}
	a, _ := Look(Plant{Salinity: 35}, log)
	fmt.Println(a.Cause(), "since", a.Since.Format(time.DateOnly))
	// Output: fouling since 2031-05-07
}

func TestRefused(t *testing.T) {
	_, err := Look(Plant{}, nil)
	require.ErrorIs(t, err, ErrTooFew)
	_, err = Look(Plant{}, make([]Reading, 8))
	require.ErrorContains(t, err, "two readings")
	_, err = Conditions{Recovery: 1}.Drive()
	require.Error(t, err)
	_, err = Conditions{Water: -5}.Drive()
	require.Error(t, err)
	_, err = Normalise(1, Conditions{Salinity: 35, Water: 20}, Conditions{Salinity: 35, Water: 20, Pressure: 57 * bar})
	require.ErrorContains(t, err, "does not overcome")
	_, err = NormalisePassage(1, 0, Conditions{Salinity: 35, Water: 20}, Conditions{})
	require.Error(t, err)
	_, err = Conditions{Water: 20}.Passage()
	require.Error(t, err, "no salt")
}

// Nothing is named from what was not read.
func TestALogThatSaysLittle(t *testing.T) {
	m := makeLog(t, 7, Scale)
	for i := range m.log {
		m.log[i] = Reading{Date: m.log[i].Date, Product: m.log[i].Product}
	}
	a, err := Look(m.plant, m.log)
	require.NoError(t, err)
	require.Contains(t, a.Missing, "the water's temperature")
	require.Contains(t, []Cause{Partly, Unclear}, a.Cause(), "what was not read is not cleared")
	require.False(t, a.Product.Known)
}

// The order of the lines does not matter, and neither does the unit of product.
func TestOrderDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := makeLog(t, uint64(rapid.IntRange(200, 260).Draw(t, "seed")), rapid.SampledFrom(faults).Draw(t, "fault"))
		a, err := Look(m.plant, m.log)
		require.NoError(t, err)
		b, err := Look(m.plant, rapid.Permutation(m.log).Draw(t, "order"))
		require.NoError(t, err)
		require.Equal(t, a, b)
	})
}

func TestEveryCauseHasItsWords(t *testing.T) {
	for c := Nothing; c <= Partly; c++ {
		require.NotEmpty(t, c.String())
		require.NotEmpty(t, c.First())
		require.NotEmpty(t, c.Not())
	}
}
