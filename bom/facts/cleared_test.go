package facts_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/facts"
	"handtight/bom/read"
)

// What clears a line of high pressure, by the hose in it: the rest of the line holds 100 bar by
// its data sheets, and sees 71.5. A maker's series and another size clear nothing, and the line
// holds "not known"; a figure from memory clears it, and the line says so.
func TestWhatClearsHighPressure(t *testing.T) {
	plant, err := os.ReadFile("../rule/example/plant.toml")
	require.NoError(t, err)
	for _, c := range []struct {
		spec, bore      string
		rated           bool
		guessed, memory []string
		unrated         []string
	}{
		{"SAE 100R8", `3/8"`, true, []string{}, []string{}, []string{}},
		{"EN 853 2SN", `3/8"`, true, []string{}, []string{}, []string{}},
		{"EN 857 1SC", `3/8"`, true, []string{}, []string{"hose, 180 bar"}, []string{}},
		{"EN 854 3TE", `1/4"`, true, []string{}, []string{"hose, 145 bar"}, []string{}},
		{"SAE 100R14", `1/2"`, false, []string{"hose"}, []string{}, []string{}}, // another size: 3/8
		{"SAE 100R14", `1/8"`, false, []string{"hose"}, []string{}, []string{}}, // one maker's series
		{"SAE 100R6", `3/8"`, true, []string{"hose"}, []string{}, []string{}},   // 28 bar, and it sees more
		{"SAE 100R19", `3/8"`, false, []string{}, []string{}, []string{"hose"}},
	} {
		t.Run(c.spec+" "+c.bore, func(t *testing.T) {
			text := "[build]\nname = \"x\"\ncurrency = \"EUR\"\n" + strings.Replace(strings.Replace(string(plant), "SAE 100R8", c.spec, 1), "bore = '3/8\"'", "bore = '"+c.bore+"'", 1)
			b, faults := read.Parse("plant.toml", []byte(text))
			require.NoError(t, faults.Err())
			sys, faults := bom.Walk(b)
			require.NoError(t, faults.Err())
			for _, g := range sys.Segments.All {
				if !g.High() {
					require.Empty(t, g.Guessed)
					require.Empty(t, g.Memory)
					continue
				}
				row := facts.SegmentOf(sys, g)
				require.Equal(t, c.guessed, row.Guessed)
				require.Equal(t, c.memory, row.Memory)
				require.Equal(t, c.unrated, row.Unrated)
				require.Equal(t, c.rated, g.Rated())
				require.Equal(t, c.rated, row.Bar.Known, "what it holds")
				require.Equal(t, c.rated, row.Margin.Known)
			}
		})
	}
}
