package duty

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/read"
	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

// Common practice, no source: 2.1 US gal, 55 bar, 8 L/min and 800 psi below. Check values, and no limit rests on them.

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

// A gauge that says what the trade says: 2.1 US gal/min at 800 psi draws 50 to 60 A (common
// practice, no source). At 24 V that lies in the range; at 12 V a plate of 60 A is impossible.
func TestTradeFactOfTheCurrent(t *testing.T) {
	read := func(volts, plate string) *Making {
		b, faults := read.Parse("x.toml", []byte(`
[build]
name = "x"
currency = "EUR"
[duty]
pressure = "800 psi"
supply = "`+volts+`"
[[item]]
id = "pump"
kind = "plunger pump"
flow = "2.1 gpm"
motor = "belt"
`+plate+`
[[item]]
id = "feed"
kind = "feed pump"
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "out"
kind = "overboard"
[[item]]
id = "throttle"
kind = "brine throttle"
[[run]]
name = "r"
path = ["sea", "feed", "pump", "throttle", "out"]
`))
		require.NoError(t, faults.Err())
		s, faults := bom.Walk(b)
		require.NoError(t, faults.Err())
		return Of(s).Plants[0]
	}
	p := read("24 V", "").Power
	require.NotNil(t, p)
	require.True(t, p.All.Overlaps(span.Between[quantity.Current](50, 60)), "%s", p.All)
	require.Empty(t, read("24 V", `motor_current = "60 A"`).Power.Cannot)
	require.NotEmpty(t, read("12 V", `motor_current = "50 A"`).Power.Cannot)
}

// The same plant in litres and in gallons gives the same facts.
func TestUnitsDoNotMatter(t *testing.T) {
	litres, gallons := of(t, clean, "flow=8 L/min").Plants[0], of(t, clean, "flow=2.11337642 gpm").Plants[0]
	hours := of(t, clean, "flow=126.802585 gph").Plants[0]
	for _, other := range []*Making{gallons, hours} {
		require.InEpsilon(t, float64(litres.All.Product.Lo), float64(other.All.Product.Lo), 1e-6)
		require.InEpsilon(t, float64(litres.All.Salt.Hi), float64(other.All.Salt.Hi), 1e-6)
	}
}

// A line of a thousand hoses before the pump.
func BenchmarkDutyOfAThousandHoses(b *testing.B) {
	var text strings.Builder
	text.WriteString("[build]\nname = \"x\"\ncurrency = \"EUR\"\n[duty]\npressure = \"55 bar\"\n[[item]]\nid = \"pump\"\nkind = \"plunger pump\"\nflow = \"8 L/min\"\n" +
		"[[item]]\nid = \"stock\"\nkind = \"hose stock\"\nbore = \"19 mm\"\n[[item]]\nid = \"sea\"\nkind = \"sea\"\n[[item]]\nid = \"out\"\nkind = \"overboard\"\n[[item]]\nid = \"tee\"\nkind = \"coupling\"\n[[item]]\nid = \"throttle\"\nkind = \"brine throttle\"\n")
	path := `"sea"`
	for i := range 1000 {
		fmt.Fprintf(&text, "[[hose]]\nid = \"h%d\"\nof = \"stock\"\nlength = \"0.1 m\"\n", i)
		path += fmt.Sprintf(`, "h%d", "tee/+"`, i)
	}
	fmt.Fprintf(&text, "[[run]]\nname = \"r\"\npath = [%s, \"pump\", \"throttle\", \"out\"]\n", path)
	bd, faults := read.Parse("x.toml", []byte(text.String()))
	require.NoError(b, faults.Err())
	s, faults := bom.Walk(bd)
	require.NoError(b, faults.Err())
	for b.Loop() {
		Of(s)
	}
}

// In the flush the house water goes through the vessel, and not past it or back to the sea; with
// the pump running the vessel gets what it sweeps; with the selector turned the product goes to
// the drain and nowhere else. Each is balanced.
func TestWaysOfRunning(t *testing.T) {
	m := of(t, clean).Plants[0]
	still, turns, drain := m.Condition("flush"), m.Condition("flush with the pump running"), m.Condition("product to drain")
	require.NotNil(t, still)
	require.NotNil(t, turns)
	require.NotNil(t, drain)
	for _, c := range m.Conditions {
		require.Less(t, c.Open, 1e-6, c.Name)
	}
	require.Greater(t, still.Vessel.LitresPerMinute(), 2.0)
	require.Less(t, still.Vessel.LitresPerMinute(), 7.0, "no more than the supply's open flow")
	require.InEpsilon(t, float64(still.House), float64(still.Vessel), 1e-6, "no sea water comes beside it")
	swept, _, _ := PumpFlow(m.Pumps[0].Item, 0)
	require.InEpsilon(t, float64(swept.Middle()), float64(turns.Vessel), 1e-6)
	require.InEpsilon(t, float64(turns.Vessel), float64(turns.House+turns.Sea), 1e-6)
	flow := func(c *Condition, name string) quantity.Flow {
		for u, q := range c.Flow {
			if u.Name == name {
				return q
			}
		}
		return 0
	}
	require.InEpsilon(t, float64(m.Middle.Product), float64(flow(drain, "to-drain")), 1e-6)
	require.Less(t, float64(flow(drain, "to-tank")), 1e-9)
}

// A tank of a height stands on the product, and takes something of it.
func TestTankOfAHeight(t *testing.T) {
	read := func(height string) *Making {
		text, err := os.ReadFile("../../testdata/engine/build.toml")
		require.NoError(t, err)
		b, faults := read.Parse("x.toml", []byte(strings.Replace(string(text), "kind = \"tank\"\n", "kind = \"tank\"\n"+height+"\n", 1)))
		require.NoError(t, faults.Err())
		s, faults := bom.Walk(b)
		require.NoError(t, faults.Err())
		return Of(s).Plants[0]
	}
	low, high := read(""), read(`height = "10.2 m"`)
	require.Less(t, high.Middle.Product, low.Middle.Product)
	// 10 m over the pump, which stands 0.2 m over the water, are 1.00 bar (density 1025 x 9.81 x 10).
	require.InDelta(t, 1.00, (high.Lines.Back.Lo - low.Lines.Back.Lo).Bar(), 0.01)
}

// What an element's sheet gives as the most it bears is its limit, whichever key says it; the
// lower of two rules.
func TestWhatAnElementBears(t *testing.T) {
	text, err := os.ReadFile(clean)
	require.NoError(t, err)
	for said, most := range map[string]quantity.Pressure{
		`rated = "61 bar"`: 61, `max_pressure = "62 bar"`: 62, "rated = \"63 bar\"\nmax_pressure = \"60 bar\"": 60, "rated = \"59 bar\"\nmax_pressure = \"60 bar\"": 59,
	} {
		b, faults := read.Parse("../../testdata/clean/build.toml", []byte(strings.Replace(string(text), "inside = \"vessel\"\n", "inside = \"vessel\"\n"+said+"\n", 1)))
		require.NoError(t, faults.Err())
		s, faults := bom.Walk(b)
		require.NoError(t, faults.Err())
		require.Equal(t, most*quantity.Bar, Of(s).Plants[0].MostPressure(), said)
	}
}
