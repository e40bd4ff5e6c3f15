package cart

import (
	"encoding/csv"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
)

// Single lines against testdata/clean, by the causes for which lines had covered a place that they are not for: what a
// fitter would answer of each, with its sound neighbour. The wording is invented; its habits are the trade's (common
// practice). `ask` may be told wrong as well, but never covers; `not` is told or asked.
func TestWhatIsDoubtedDoesNotCover(t *testing.T) {
	build, faults := bom.Read("../../testdata/clean/build.toml")
	require.Empty(t, faults)
	sys, faults := bom.Walk(build)
	require.Empty(t, faults)
	order, err := sys.Order()
	require.NoError(t, err)
	data, err := os.ReadFile("testdata/doubts.csv")
	require.NoError(t, err)
	rows, err := csv.NewReader(strings.NewReader(string(data))).ReadAll()
	require.NoError(t, err)
	for _, r := range rows[1:] {
		if set := os.Getenv("DOUBT"); set != "" && r[0] != set {
			continue
		}
		var b strings.Builder
		require.NoError(t, csv.NewWriter(&b).WriteAll([][]string{{"Description", "Qty", "Unit"}, {r[2], "1", map[bool]string{true: "m", false: "pc"}[strings.HasSuffix(r[1], "-hose") || r[1] == "tube-10"]}}))
		c, err := Read("c.csv", []byte(b.String()), Options{})
		require.NoError(t, err)
		report := Judge(sys, order, []*Cart{c}, nil)
		v := report.Lines[0]
		covers := covered(v, report)
		if covers != (r[3] == "covers") || covers && !contains(v.Items, r[1]) || r[3] == "ask" && len(v.Items) == 0 {
			t.Errorf("%s %s %s: %s (%s) -> %s %v: %s %s", r[0], r[3], r[1], r[2], r[4], v.Status, v.Items, v.Reason, v.Ask)
		}
	}
}

func contains(list []string, one string) bool {
	return strings.Contains(" "+strings.Join(list, " ")+" ", " "+one+" ")
}
