package duty

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/read"
	"handtight/pressure/process/flow"
	"handtight/pressure/process/membrane"
	"handtight/pressure/quantity"
)

// sideBySide is the Red Sea plant with a second vessel beside the first: the brine of both goes
// through one throttle, or each has its own.
func sideBySide(t testing.TB, second string, throttles int, amends ...string) *Result {
	t.Helper()
	text, err := os.ReadFile("../../testdata/redsea/build.toml")
	require.NoError(t, err)
	s := string(text)
	swap := func(old, now string) {
		require.Contains(t, s, old)
		s = strings.Replace(s, old, now, 1)
	}
	swap(`path = ["pump", "tee", "high", "vessel.feed"]`, `path = ["pump", "tee", "high", "in-tee.a"]`)
	s += `
[[item]]
id = "in-tee"
kind = "tee"
material = "super duplex"
rated = "200 bar"
ports = { a = '3/8 NPT male', b = '3/8 NPT male', branch = '3/8 NPT male' }
[[item]]
id = "beside"
kind = "pressure vessel"
material = "super duplex"
rated = "83 bar"
ports = { feed = '3/8 NPT male', brine = '3/8 NPT male', product = '8 mm barb' }
[[item]]
id = "other"
kind = "membrane element"
inside = "beside"
` + second + `
[[item]]
id = "product-tee"
kind = "tee"
material = "pom"
rated = "10 bar"
ports = { a = '8 mm barb', b = '8 mm barb', branch = '8 mm barb' }
`
	for _, id := range []string{"in-one", "in-two", "brine-two"} {
		s += "[[hose]]\nid = \"" + id + "\"\nmaterial = \"super duplex ends\"\nspec = \"SAE 100R8\"\nbore = '3/8\"'\nlength = \"0.3 m\"\nends = ['3/8 NPT female swivel', '3/8 NPT female swivel']\n"
	}
	for _, id := range []string{"made-two", "made-both"} {
		s += "[[hose]]\nid = \"" + id + "\"\nof = \"tube\"\nlength = \"0.5 m\"\n"
	}
	swap(`path = ["vessel.product", "made", "meter", "measured", "selector.common"]`, `path = ["vessel.product", "made", "product-tee.a"]`)
	s += `
[[run]]
name = "in one"
path = ["in-tee.b", "in-one", "vessel.feed"]
[[run]]
name = "in two"
path = ["in-tee.branch", "in-two", "beside.feed"]
[[run]]
name = "made two"
path = ["beside.product", "made-two", "product-tee.branch"]
[[run]]
name = "made both"
path = ["product-tee.b", "made-both", "meter", "measured", "selector.common"]
`
	if throttles == 1 {
		swap(`path = ["vessel.brine", "brine", "gauge-tee", "throttle", "discharge"]`, `path = ["vessel.brine", "brine", "gauge-tee", "out-tee", "throttle", "discharge"]`)
		s += `
[[item]]
id = "out-tee"
kind = "tee"
material = "super duplex"
rated = "200 bar"
ports = { a = '3/8 NPT female', b = '3/8 NPT male', branch = '3/8 NPT male' }
[[run]]
name = "brine two"
path = ["beside.brine", "brine-two", "out-tee.branch"]
`
	} else {
		s += `
[[item]]
id = "own"
kind = "brine throttle"
material = "super duplex"
rated = "200 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
[[item]]
id = "overboard-two"
kind = "overboard"
[[run]]
name = "brine two"
path = ["beside.brine", "brine-two", "own", "overboard-two"]
`
	}
	for i := 0; i < len(amends); i += 2 {
		swap(amends[i], amends[i+1])
	}
	b, faults := read.Parse("build.toml", []byte(s))
	require.NoError(t, faults.Err())
	sys, faults := bom.Walk(b)
	require.NoError(t, faults.Err())
	return Of(sys)
}

func TestUnlikeVesselsSideBySide(t *testing.T) {
	r := sideBySide(t, `size = "2521"`, 1)
	require.Len(t, r.Plants, 1)
	m := r.Plants[0]
	require.True(t, m.Made, m.WhyNot)
	require.Equal(t, 2, m.Ways)
	require.Len(t, m.ways, 2)
	a, b := m.ways[0].middle, m.ways[1].middle
	require.InEpsilon(t, float64(a.Loss), float64(b.Loss), 1e-8, "one pressure before both, and one behind")
	require.InEpsilon(t, float64(m.Middle.Product), float64(a.Product+b.Product), 1e-9)
	require.Greater(t, b.MostFeed, a.MostFeed, "the shorter one takes more")
	require.True(t, m.All.Product.Has(m.Middle.Product))
	// By themselves, each fed what it takes, both make the same.
	for i, size := range []string{"2540", "2521"} {
		c, _ := membrane.ClassOf(size)
		u, err := c.Element().Calibrate()
		require.NoError(t, err)
		run := m.mid
		run.Feed = m.ways[i].middle.MostFeed
		alone, err := membrane.Row{Units: []membrane.Unit{u}}.Solve(run, nil)
		require.NoError(t, err)
		require.InEpsilon(t, float64(alone.Product), float64(m.ways[i].middle.Product), 1e-9)
	}
	// The hoses carry what the rows take, but for what their own loss shifts.
	require.True(t, m.Lines.Solved, m.Lines.WhyNot)
	for _, h := range m.Lines.Hoses {
		want := map[string]quantity.Flow{"in-one": a.MostFeed, "in-two": b.MostFeed}[h.Unit.Name]
		if want > 0 {
			require.InEpsilon(t, float64(want), float64(m.Lines.Middle[h.Unit]), 0.1, h.Unit.Name)
		}
	}
	l, ok := m.Limit("brine_flow")
	require.True(t, ok)
	require.Contains(t, l.Words, "vessel", "says which way is nearest to its limit")
	require.Contains(t, m.Notes, Note{"unlike rows side by side", "the feed parts so that the elements of each lose the same between the inlet and the outlet that they share; what its own hoses lose is not in it", true})
	low, high, ok := m.FilmSpread()
	require.True(t, ok)
	require.Less(t, low, high)
	_, ok = m.Upgrade()
	require.True(t, ok)
}

// Elements of two names and one sheet are alike.
func TestLikeVesselsOfTwoNames(t *testing.T) {
	m := sideBySide(t, `size = "2540"`, 1).Plants[0]
	require.True(t, m.Made, m.WhyNot)
	require.Len(t, m.ways, 1)
	require.Equal(t, 2, m.row.Parallel)
	m = sideBySide(t, "size = \"2540\"\nmin_brine = \"4 L/min\"", 1).Plants[0]
	require.Len(t, m.ways, 2, "they do not bear the same")
}

func TestUnlikeVesselsBehindTwoThrottles(t *testing.T) {
	m := sideBySide(t, `size = "2521"`, 2).Plants[0]
	require.False(t, m.Made)
	require.Contains(t, m.WhyNot, "2 throttles or regulators")
	require.Contains(t, m.WhyNot, "nothing says it")
	m = sideBySide(t, `size = "2540"`, 2).Plants[0]
	require.True(t, m.Made, m.WhyNot)
}

// The limit of the way that fails stands for all.
func TestTheHardestWayStands(t *testing.T) {
	m := sideBySide(t, "size = \"2521\"\nmax_flow = \"2 L/min\"", 1).Plants[0]
	require.True(t, m.Made, m.WhyNot)
	l, ok := m.Limit("feed_flow")
	require.True(t, ok)
	require.Contains(t, l.Words, "beside")
	require.True(t, l.Fails())
	require.Equal(t, 2.0, l.Limit)
}

// What does not converge is told by the names of the build.
func TestWhatDoesNotSettle(t *testing.T) {
	m := of(t, clean).Plants[0]
	n := &net{s: nil, m: m, unitOf: m.Pumps, throttleOf: m.Pumps, node: map[int]int{m.units[0].First: 3}}
	for _, what := range []string{"link", "throttle"} {
		err := n.named(&flow.UnsettledError{What: what, Was: 6 * quantity.LitrePerMinute, Now: 7 * quantity.LitrePerMinute})
		require.ErrorIs(t, err, flow.ErrNotFound)
		require.Contains(t, err.Error(), "the flow through "+m.Pumps[0].Name+" does not come to rest (it still goes from 6 to 7 L/min")
		require.Contains(t, err.Error(), "look at what is written of")
	}
	err := n.named(&flow.LooseError{Node: 3})
	require.ErrorContains(t, err, "nothing fixes the pressure at "+m.units[0].Name+".")
	require.NoError(t, n.named(nil))

	m.Lines = &Lines{WhyNot: "the flow through x does not come to rest"}
	m.Unsolved = []string{"flush: y"}
	says := strings.Join(m.Says(), "\n")
	require.Contains(t, says, "the pressure before its pumps, are not reckoned: the flow through x")
	require.Contains(t, says, "Not reckoned: flush: y.")
}
