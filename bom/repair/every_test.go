package repair_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/repair"
	"handtight/catalog/stock"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// Every sort of end that the stock has, with others spread over all of them: each joint of each
// chain passes the judge again, and where nothing is found the wall is named. With EVERY_PAIR=1 in the
// environment it is every sort with every other, which takes some minutes.
func TestEveryEndOfTheStock(t *testing.T) {
	var ends []threads.End
	seen := map[threads.End]bool{}
	for _, it := range stock.Items() {
		for _, e := range it.Ends {
			if !seen[e] {
				seen[e] = true
				ends = append(ends, e)
			}
		}
	}
	step := 1
	if testing.Short() {
		step = 7
	}
	chains, none, pairs := 0, 0, 0
	judge := func(i int, a, b threads.End) {
		pairs++
		o := repair.Options{Pressure: [3]quantity.Pressure{3, 8, 60}[i%3] * bar, Water: [3]string{"", "sea", "product"}[i%3]}
		got := repair.Adapt(reading(a), reading(b), o)
		if got.Direct != nil {
			require.True(t, got.Direct.Verdict.Holds())
			return
		}
		if len(got.Chains) == 0 {
			none++
			require.NotEmpty(t, got.None, "%s, %s", a, b)
			return
		}
		for k := range got.Chains {
			chains++
			for _, j := range got.Chains[k].Joints {
				m := threads.Mate(j.A, j.B)
				require.True(t, m.Verdict.Holds() || m.Verdict == threads.LowPressureOnly && o.Pressure <= m.Limit, "%s with %s", j.A, j.B)
			}
		}
	}
	for i := 0; i < len(ends); i += step {
		judge(i, ends[i], ends[(i*251+97)%len(ends)])
		if os.Getenv("EVERY_PAIR") != "" {
			for k := range i + 1 {
				judge(i+k, ends[i], ends[k])
			}
		}
	}
	t.Logf("%d pairs of %d sorts of end: %d chains, none for %d", pairs, len(ends), chains, none)
	require.Positive(t, chains)
	require.Positive(t, none)
}

func reading(e threads.End) threads.EndReading {
	return threads.EndReading{Candidates: []threads.End{e}}
}
