package quantity

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

func ExampleParseRange() {
	r, _ := ParseRange("34 to 36 g/kg", ParseSalinity)
	fmt.Println(r)
	_, err := ParseRange("30 C to 12 C", ParseTemperature)
	fmt.Println(err)
	// Output:
	// 34 g/kg to 36 g/kg
	// "30 C to 12 C" goes down; write the smaller first: "12 C to 30 C"
}

func TestParseRange(t *testing.T) {
	for _, c := range []struct {
		text   string
		lo, hi float64
	}{
		{"15 to 25 C", 15, 25}, {"15 C to 25 C", 15, 25}, {"18 C", 18, 18}, {"-1 to 4 C", -1, 4}, {"59 F TO 77 F", 15, 25}, {" 15  to  25 °C ", 15, 25},
	} {
		r, err := ParseRange(c.text, ParseTemperature)
		require.NoError(t, err, c.text)
		require.InDelta(t, c.lo, float64(r.Lo), 1e-9, c.text)
		require.InDelta(t, c.hi, float64(r.Hi), 1e-9, c.text)
		require.Equal(t, c.lo == c.hi, r.Single(), c.text)
	}
	for _, text := range []string{"15 to 25", "to 25 C", "15 bar to 25 C", "15 to", "a to b", "15 to 20 to 25 C", ""} {
		_, err := ParseRange(text, ParseTemperature)
		require.Error(t, err, text)
	}
}
