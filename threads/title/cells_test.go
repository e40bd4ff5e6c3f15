package title

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Rows of dumps are read by their cells; the answers were written first.
func TestCellsInQuotesAreParted(t *testing.T) {
	for text, want := range map[string]string{
		`('A1', 'elbow 1/2"', 3)`:              `  A1 |  elbow 1/2" | 3 `,
		`"Codo De 4" X 90","C/U","2.00"`:       ` Codo De 4" X 90 | C/U | 2.00 `,
		`(11,460684,'Bico 1/4" macho')`:        ` 11|460684| Bico 1/4" macho  `,
		`'NIPLE 1/2' polipropileno','UN',2.32`: ` NIPLE 1/2' polipropileno | UN |2.32`,
		`'', 'tee 1/4 NPT', NULL`:              `  |  tee 1/4 NPT | NULL`,
		`"1/2" ball valve, brass, female`:      `"1/2" ball valve, brass, female`,
		`elbow 1/2", male, 3/8"`:               `elbow 1/2", male, 3/8"`,
		`(4) tee, all ports 1/4 FNPT`:          `(4) tee, all ports 1/4 FNPT`,
		`'2 1/2 Cap Pressure Gauge' => 3`:      `'2 1/2 Cap Pressure Gauge' => 3`,
		`"Elbow 1/2", brass","male",2`:         ` Elbow 1/2", brass | male |2`,
	} {
		require.Equal(t, want, plainCells(text), text)
	}
}

// Each sign stays at its place, whatever the text is, and nothing else than quotes, commas and brackets changes.
func TestCellsKeepTheirPlaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[('"]{0,2}[0-9a-z/ '",()|é½]{0,40}`).Draw(t, "text")
		got := plainCells(text)
		require.Len(t, got, len(text))
		for i := range len(text) {
			if got[i] != text[i] {
				require.Contains(t, `'",()`, string(text[i]))
			}
		}
	})
}
