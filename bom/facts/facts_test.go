package facts

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom"
	"handtight/pressure"
)

// A figure never has an exponent, a negative zero, or three digits for what has more; what is
// not known or has no bound is null.
func TestNumbers(t *testing.T) {
	for want, n := range map[string]Number{
		"1000": Figure(1e3), "275.8": Figure(275.8), "0": Figure(math.Copysign(0, -1)), "0.000001": Figure(1e-6), "10000000": Figure(1e7),
		"20.684272": Figure(20.6842718), "null": Figure(math.Inf(1)), "-0.4": Figure(-0.4),
	} {
		got, err := json.Marshal(n)
		require.NoError(t, err)
		require.Equal(t, want, string(got))
	}
	got, err := json.Marshal([]Number{{}, Figure(math.NaN()), {Value: 3}})
	require.NoError(t, err)
	require.Equal(t, "[null,null,null]", string(got))
	require.True(t, Figure(math.Inf(1)).Unbounded())
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(-1e9, 1e9).Draw(t, "figure")
		text, err := json.Marshal(Figure(v))
		require.NoError(t, err)
		require.NotContains(t, string(text), "e")
		var back float64
		require.NoError(t, json.Unmarshal(text, &back))
		require.InDelta(t, v, back, 1e-6)
	})
}

// Every view of one build says the same of what sees more than it holds: the parts, the
// segments, and the states that bring it about.
func TestOverIsDecidedOnce(t *testing.T) {
	over := 0
	for _, demo := range []string{"clean", "careless", "refit", "arrows"} {
		build, faults := bom.Read("../../testdata/" + demo + "/build.toml")
		require.NoError(t, faults.Err())
		sys, faults := bom.Walk(build)
		require.NoError(t, faults.Err())
		f := Of(sys, nil)
		overloaded := map[string]bool{} // in some state, by name
		for _, st := range States(sys.Segments.Views()) {
			in := 0
			for _, g := range st.Segments {
				in += len(g.Overloads)
				for _, o := range g.Overloads {
					overloaded[o.What] = true
				}
			}
			require.LessOrEqual(t, in, len(st.Overloads))
			require.Len(t, st.UntoldSees, len(st.Untold))
		}
		for _, p := range f.Parts {
			if p.Segment != "" {
				require.Equal(t, p.Over, overloaded[p.Unit], "%s: %s", demo, p.Unit)
			}
			if p.Over {
				over++
				require.True(t, p.Unbounded || p.Worst.Value > p.Bar.Value+pressure.Slack.Bar(), p.Unit)
			}
		}
		for _, g := range f.Segments {
			require.Equal(t, g.Over, g.AtMost.Known && (g.Unbounded || g.Worst.Value > g.AtMost.Value+pressure.Slack.Bar()), g.Name)
			require.Equal(t, len(g.Unrated)+len(g.Guessed) > 0 && (len(g.Unrated) > 0 || !g.Over), g.AtMost.Known && !g.Bar.Known, "%s: of what a member holds nothing is known", g.Name)
			require.False(t, !g.Bar.Known && g.Margin.Known, "%s: no margin to what is not known", g.Name)
		}
		require.Len(t, f.WorstFirst, len(f.Parts))
		require.Len(t, f.Joints, f.Counts.Joints)
	}
	require.NotZero(t, over)
}
