package duty

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/pressure/quantity"
)

func of(t testing.TB, path string, changes ...string) *Result {
	t.Helper()
	b, faults := bom.Read(path)
	require.NoError(t, faults.Err())
	for _, c := range changes {
		require.NoError(t, Change(b, c))
	}
	s, faults := bom.Walk(b)
	require.NoError(t, faults.Err())
	return Of(s)
}

const clean = "../../testdata/clean/build.toml"

func TestTheCleanBuildMakesWater(t *testing.T) {
	r := of(t, clean)
	require.Len(t, r.Plants, 1)
	m := r.Plants[0]
	require.True(t, m.Made, m.WhyNot)
	require.Equal(t, 1, m.Elements)
	require.True(t, m.All.Product.Has(m.Middle.Product))
	require.Greater(t, m.Middle.Product, *m.plan.Duty.Product)
	require.True(t, m.Lines.Solved, m.Lines.WhyNot)
	for _, l := range m.Limits {
		require.False(t, l.Doubtful(), l.Name)
	}
	// All the water of the pump comes through each hose before it, and leaves by the brine and
	// the product.
	var in, out quantity.Flow
	for _, h := range m.Lines.Hoses {
		switch h.Unit.Name {
		case "raw-1":
			require.Equal(t, Suction, h.Where)
			in = h.Flow.Hi
		case "brine-hose":
			require.Equal(t, Brine, h.Where)
			out += h.Flow.Hi
		case "to-tank":
			require.Equal(t, Product, h.Where)
			out += h.Flow.Lo
		}
	}
	require.InEpsilon(t, float64(in), float64(out), 0.001)
	require.InEpsilon(t, float64(m.Feed.Hi), float64(in), 1e-6)
}

func TestWhatIf(t *testing.T) {
	now := of(t, clean).Plants[0]
	two := of(t, clean, "elements=2").Plants[0]
	require.Equal(t, 2, two.Elements)
	require.Greater(t, two.Middle.Product, now.Middle.Product)
	require.Less(t, two.Middle.Brine, now.Middle.Brine)
	cold := of(t, clean, "water=8 C").Plants[0]
	require.Less(t, cold.Middle.Product, now.Middle.Product)
	salty := of(t, clean, "salinity=41 g/kg").Plants[0]
	require.Less(t, salty.Middle.Product, now.Middle.Product)
	weak := of(t, clean, "pressure=24 bar").Plants[0]
	require.Zero(t, weak.Middle.Product)
	require.False(t, weak.Drives)
	b, faults := bom.Read(clean)
	require.NoError(t, faults.Err())
	for _, bad := range []string{"elements", "elements=0", "pressure=55", "colour=red", "elemnts=2", "water=", "speed=fast", "flow=1", "age=old", "salinity=x"} {
		require.Error(t, Change(b, bad), bad)
	}
	require.ErrorContains(t, Change(b, "elemnts=2"), "did you mean `elements`")
}

// Cold and hot, fresh and salty: the Baltic, a temperate sea, the Red Sea.
func TestSeas(t *testing.T) {
	for _, c := range []struct{ why, salinity, water string }{
		{"the Baltic in spring", "salinity=6 to 8 g/kg", "water=2 to 5 C"}, {"a temperate sea", "salinity=35 g/kg", "water=12 to 18 C"},
		{"the Red Sea", "salinity=40 to 42 g/kg", "water=26 to 32 C"}, {"a gulf in summer", "salinity=40 to 45 g/kg", "water=30 to 36 C"},
	} {
		m := of(t, clean, c.salinity, c.water).Plants[0]
		require.True(t, m.Made, c.why+": "+m.WhyNot)
		require.Greater(t, m.Middle.Product.LitresPerHour(), 15.0, c.why)
		require.Less(t, float64(m.Middle.Salt), 1000.0, c.why)
	}
	m := of(t, clean, "water=-2 to 4 C").Plants[0]
	require.False(t, m.Made, "water that freezes is not reckoned")
	require.NotEmpty(t, m.WhyNot)
}

func TestSizesInWords(t *testing.T) {
	for text, want := range map[string]string{
		"seawater element 2.5 x 21": "2521", "2.5\" x 40\" membrane": "2540", "SW 4040 element": "4040", "4 x 21": "4021", "element 2540-HR": "2540",
		"": "", "14 x 40": "", "12540": "", "25405": "", "2.5 x 14": "", "M24 x 40": "",
	} {
		require.Equal(t, want, sizeIn(text), text)
	}
}

func TestCurvesAndUpgrade(t *testing.T) {
	m := of(t, clean).Plants[0]
	byPressure, byTemperature := m.Curves()
	require.Len(t, byPressure, 25)
	require.Len(t, byTemperature, 16)
	for i := 1; i < len(byPressure); i++ {
		require.GreaterOrEqual(t, byPressure[i].Middle, byPressure[i-1].Middle)
		require.LessOrEqual(t, byPressure[i].Product.Lo, byPressure[i].Middle)
		require.GreaterOrEqual(t, byPressure[i].Product.Hi, byPressure[i].Middle)
	}
	u, ok := m.Upgrade()
	require.True(t, ok)
	require.Less(t, u.Least, u.Most)
	require.NotEmpty(t, m.UpgradeText())
	low, high, ok := m.FilmSpread()
	require.True(t, ok)
	require.Less(t, low, 0.0)
	require.Greater(t, high, 0.0)
}

func BenchmarkDutyOfTheCleanBuild(b *testing.B) {
	bd, faults := bom.Read(clean)
	require.NoError(b, faults.Err())
	s, faults := bom.Walk(bd)
	require.NoError(b, faults.Err())
	for b.Loop() {
		Of(s)
	}
}
