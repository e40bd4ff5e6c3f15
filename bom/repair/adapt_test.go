package repair_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom/repair"
	"handtight/catalog/stock"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/title"
)

func end(t require.TestingT, text string) threads.EndReading {
	r, err := title.ReadEnd(text)
	require.NoError(t, err, text)
	return r
}

const bar = quantity.Bar

// The cases that were worked out before there was any code. has and not are parts of the
// first chain's titles, joined by " + ".
type workedCase struct {
	name, a, b string
	o          repair.Options
	pieces     int
	has        []string
	not        []string // in no chain shown
	none       string
	direct     bool
	ask        string
}

var worked = []workedCase{
	{name: "A1", a: "1/2 NPT female", b: "G 1/2 female", o: repair.Options{Pressure: 60 * bar, Water: "sea"}, pieces: 1, has: []string{"1/2 NPT male", "G 1/2 male", "316"}, not: []string{"brass", "bronze"}},
	{name: "A2", a: "1/2 NPT male", b: "Rc 1/2", pieces: 1, has: []string{"1/2 NPT female", "R 1/2 male"}},
	{name: "A3", a: "G 3/4 male", b: "3/4 NPT male", o: repair.Options{Pressure: 6 * bar, Water: "sea", Below: true}, pieces: 1, has: []string{"G 3/4 female", "3/4 NPT female"}},
	{name: "A4", a: "1/4 NPT female", b: "G 1/4 male", o: repair.Options{Pressure: 90 * bar, Water: "sea"}, pieces: 1, has: []string{"1/4 NPT male", "G 1/4 female", "316"}},
	{name: "A5", a: "3/8 NPT male", b: "3/8 NPT male", o: repair.Options{Pressure: 90 * bar, Water: "sea"}, pieces: 1, has: []string{"oupling", "class 3000"}, not: []string{"class 150"}},
	{name: "A7", a: "JIC -6 male", b: "ORB -6 female", o: repair.Options{Pressure: 99 * bar}, pieces: 1, has: []string{"JIC -6 female swivel", "ORB -6 male"}},
	{name: "A8", a: "G 3/4 female plastic", b: "3/4 NPT female", o: repair.Options{Pressure: 6 * bar}, pieces: 1, has: []string{"G 3/4 male", "3/4 NPT male"}, not: []string{"R 3/4 male"}},
	{name: "A9", a: "12L male", b: "G 1/2 female", o: repair.Options{Pressure: 55 * bar}, pieces: 1, has: []string{"12L female swivel", "G 1/2 male"}},
	{name: "A10", a: "10 mm push-in", b: "G 1/2 male", o: repair.Options{Water: "product"}, pieces: 2, has: []string{"iece of tube", "G 1/2 female", "10 mm push-in", "acetal"}},
	{name: "A11", a: "3/4 NPS male", b: "3/4 NPT female", o: repair.Options{Below: true}, none: "nothing may stand between a skin fitting and its seacock"},
	{name: "A12", a: "M25x2 male", b: "G 3/4 female", o: repair.Options{Water: "sea"}, none: "replace the part"},
	{name: "A13", a: "1/2 NPT male", b: "1/2 NPT female", direct: true},
	{name: "A15", a: "G 2 male", b: "1/8 NPT female", o: repair.Options{Pressure: 55 * bar}, none: "change one of the two parts"},
}

func TestWorkedCases(t *testing.T) {
	for _, c := range slices.Concat(worked, blind) {
		t.Run(c.name, func(t *testing.T) {
			got := repair.Adapt(end(t, c.a), end(t, c.b), c.o)
			require.Equal(t, c.direct, got.Direct != nil)
			if c.direct {
				return
			}
			if c.none != "" {
				require.Empty(t, got.Chains)
				require.Contains(t, got.None, c.none)
				return
			}
			require.NotEmpty(t, got.Chains, got.None)
			first := titles(&got.Chains[0])
			require.Len(t, got.Chains[0].Pieces, c.pieces, first)
			for _, w := range c.has {
				require.Contains(t, first, w)
			}
			for i := range got.Chains {
				for _, w := range c.not {
					require.NotContains(t, titles(&got.Chains[i]), w)
				}
			}
		})
	}
}

func titles(c *repair.Chain) string {
	var out []string
	for _, p := range c.Pieces {
		out = append(out, p.Title)
	}
	return strings.Join(out, " + ")
}

// An open end: every reading is served, and what tells them apart is asked.
func TestOpenEnd(t *testing.T) {
	got := repair.Adapt(end(t, "3/4 BSP female"), end(t, "3/4 NPT male"), repair.Options{})
	require.NotEmpty(t, got.Ask)
	for _, c := range got.Chains {
		for _, r := range end(t, "3/4 BSP female").Candidates {
			e := c.Pieces[0].Ends[0]
			if c.Turned[0] {
				e = c.Pieces[0].Ends[1]
			}
			m := threads.Mate(r, e)
			require.True(t, m.Verdict.Holds() || m.Verdict == threads.LowPressureOnly)
		}
	}
}

// Over pairs of ends of the whole stock: every joint of every chain that is shown passes the
// judge again, every piece is rated or says that it is not, and no piece of a metal that fails
// in sea water is bought for it.
func TestChainsHold(t *testing.T) {
	items := stock.Items()
	rapid.Check(t, func(t *rapid.T) {
		pick := func(name string) threads.EndReading {
			it := items[rapid.IntRange(0, len(items)-1).Draw(t, name)]
			return threads.EndReading{Candidates: []threads.End{it.Ends[rapid.IntRange(0, len(it.Ends)-1).Draw(t, name+" end")]}}
		}
		a, b := pick("a"), pick("b")
		o := repair.Options{Pressure: quantity.Pressure(rapid.IntRange(1, 120).Draw(t, "bar")) * bar, Water: rapid.SampledFrom([]string{"", "sea", "product"}).Draw(t, "water"), Most: 2}
		got := repair.Adapt(a, b, o)
		if len(got.Chains) == 0 {
			require.True(t, got.Direct != nil || got.None != "", "neither a chain nor a reason")
			return
		}
		for i := range got.Chains {
			c := &got.Chains[i]
			require.Len(t, c.Joints, len(c.Pieces)+1)
			for k := range c.Joints {
				m := threads.Mate(c.Joints[k].A, c.Joints[k].B)
				ok := m.Verdict.Holds() || m.Verdict == threads.LowPressureOnly && o.Pressure <= m.Limit
				require.True(t, ok, "%s with %s", m.A, m.B)
			}
			require.Equal(t, a.Candidates[0], c.Joints[0].A)
			require.Equal(t, b.Candidates[0], c.Joints[len(c.Joints)-1].B)
			for _, p := range c.Pieces {
				if r, ok := p.Holds(); ok && p.Kind != "hose" {
					require.GreaterOrEqual(t, r.Pressure.Bar(), o.Pressure.Bar(), p.Title)
				} else {
					require.LessOrEqual(t, o.Pressure.Bar(), 10.0, p.Title)
				}
				if o.Water == "sea" {
					require.NotEqual(t, "brass", p.Material)
					require.NotEqual(t, "galvanised iron", p.Material)
				}
			}
		}
	})
}

func BenchmarkAdapt(b *testing.B) {
	x, y := end(b, "1/2 NPT female"), end(b, "G 1/2 female")
	o := repair.Options{Pressure: 60 * bar, Water: "sea"}
	repair.Adapt(x, y, o)
	for b.Loop() {
		repair.Adapt(x, y, o)
	}
}
