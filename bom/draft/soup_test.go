package draft_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/cart"
	"handtight/bom/draft"
)

// soup is words and signs of lists, and such as break quotes and comments.
var soup = []string{
	"plunger pump", "pressure vessel", "membrane element 2.5 x 40", "relief valve", "set at 65 bar", "tee", "washer", "flat gasket", "clamp", "hose", "hose stock", "feed pump",
	"1/2 NPT", "3/4", "male", "female swivel", "G 1/2", "19 mm barb", "10 mm push-in", "-6 JIC", "M22x1.5 14 mm", "1 1/2 in ferrule", "100 bar", "12 V", "5 micron", "0-100 bar",
	"SAE 100R8", "class 3000", "316", "pp", "3x", "pack of 5", "1.5 m", "\"", "'", "\\", "#", "[[item]]", "=", "\u202e", "é", "ß", "\t", "µ", "x", ",", "energy recovery pump",
	"solenoid valve", "cross", "manifold", "union", "elbow", "gauge", "seacock", "skin fitting", "selector valve", "flow meter 6 to 70 L/h", "LH", "NPS", "PG 16", "camlock",
}

// Whatever stands in a list, there is no panic, the file reads back and walks, and every line
// stands in it.
func TestSoupOfWords(t *testing.T) {
	if testing.Short() {
		t.Skip("tens of thousands of lines, one after the other: in the full run")
	}
	for seed := range 150 {
		r := rand.New(rand.NewPCG(uint64(seed), 3))
		var lines []bagLine
		for range 3 + r.IntN(12) {
			var words []string
			for range 1 + r.IntN(7) {
				words = append(words, soup[r.IntN(len(soup))])
			}
			lines = append(lines, bagLine{r.IntN(4), strings.Join(words, " ")})
		}
		lines = append(lines, small[6], small[10])
		c := listOf(t, lines)
		d, err := draft.Of([]*cart.Cart{c}, draft.Options{Steps: 20_000})
		require.NoError(t, err, "seed %d", seed)
		if d.None != "" {
			continue
		}
		_, faults := bom.Walk(d.Build)
		require.Empty(t, faults, "seed %d", seed)
		for _, p := range d.Parts {
			require.Contains(t, string(d.Text), "# "+p.Where()+":", "seed %d", seed)
		}
	}
}
