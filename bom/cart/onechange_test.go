package cart

import (
	"encoding/csv"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// One stated fact of a right line of the fresh carts put in place of another, with the answer written down
// before any was judged. First figures of 73: of 70 that are not to cover 12 did, of which two were another part
// of the build's (the answers were wrong); the ten were five fixed ends for swivels, two of alternating
// current, two valves open at rest, and a tee whose run and branch change places. The answers are those of testdata/fresh; a wrong part that is asked about is not
// accepted.
func TestOneFactChanged(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of lines, one after the other: in the full run")
	}
	data, err := os.ReadFile("testdata/fresh/changes.csv")
	require.NoError(t, err)
	rows, err := csv.NewReader(strings.NewReader(string(data))).ReadAll()
	require.NoError(t, err)
	tried := map[string]int{}
	for _, r := range rows[1:] {
		name, from, to, answer := r[0], r[2], r[3], r[4]
		row, err := strconv.Atoi(r[1])
		require.NoError(t, err)
		sys, order, c, _ := freshCart(t, name)
		k := slices.IndexFunc(c.Lines, func(l Line) bool { return l.Row == row })
		require.GreaterOrEqual(t, k, 0, "%s:%d", name, row)
		require.Contains(t, c.Lines[k].Text, from, "%s:%d", name, row)
		text := strings.Replace(c.Lines[k].Text, from, to, 1)
		var b strings.Builder
		require.NoError(t, csv.NewWriter(&b).WriteAll([][]string{{"Description", "Qty"}, {text, "1"}}))
		one, err := Read("c.csv", []byte(b.String()), Options{})
		require.NoError(t, err)
		report := Judge(sys, order, []*Cart{one}, nil)
		v := report.Lines[0]
		covers := covered(v, report)
		tried[answer]++
		if covers != (answer == "covers") {
			t.Errorf("%s:%d %s (%s): %s -> %s %v: %s %s", name, row, answer, r[5], text, v.Status, v.Items, v.Reason, v.Ask)
		}
	}
	t.Log(tried)
}
