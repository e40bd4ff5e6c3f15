package read_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/build"
	"handtight/bom/read"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

// A vessel and the beginning of what is put into it.
const vessel = "[[item]]\nid = \"v\"\nkind = \"pressure vessel\"\nsize = \"2540\"\n[[item]]\nid = \"e\"\nkind = \"membrane element\"\ninside = \"v\"\n"

// Figures that cannot be are file errors, each with its place and what to write instead.
func TestImpossibleProcessFigures(t *testing.T) {
	for _, c := range []struct{ why, text, line, reason, remedy string }{
		{"a salinity of 350", "[duty]\nsalinity = \"350 g/kg\"", "line 4", "saltier than any sea", "35 g/kg"},
		{"a temperature of 180", "[duty]\nwater = \"180 C\"", "line 4", "not what a boat draws", "15 to 25 C"},
		{"a range that goes down", "[duty]\nwater = \"25 to 15 C\"", "line 4", "goes down", "15 C to 25 C"},
		{"an efficiency of 7", "[[item]]\nid = \"p\"\nkind = \"plunger pump\"\nefficiency = \"700 %\"", "line 6", "cannot be", "86 %"},
		{"an efficiency without its unit", "[[item]]\nid = \"p\"\nkind = \"plunger pump\"\nefficiency = \"7\"", "line 6", "has no unit", "7 %"},
		{"a curve that rises", "[[item]]\nid = \"f\"\nkind = \"feed pump\"\ncurve = [[\"0 L/min\", \"2 bar\"], [\"6 L/min\", \"3 bar\"]]", "line 6", "does not lie below", "falling"},
		{"a curve of one word", "[[item]]\nid = \"f\"\nkind = \"feed pump\"\ncurve = \"steep\"", "line 6", "a list of points", "curve = [["},
		{"a curve of bare numbers", "[[item]]\nid = \"f\"\nkind = \"feed pump\"\ncurve = [[\"0\", \"2 bar\"], [\"6\", \"0 bar\"]]", "line 6", "has no unit", "0 L/min"},
		{"a size that is none", "[[item]]\nid = \"e\"\nkind = \"membrane element\"\nsize = \"big\"", "line 6", "no size of an element", "2540"},
		{"a rejection of half", "[[item]]\nid = \"e\"\nkind = \"membrane element\"\nrejection = \"50 %\"", "line 6", "more than 90 %", "99.4 %"},
		{"pulleys of nothing", "[[item]]\nid = \"p\"\nkind = \"plunger pump\"\npulley = \"80:0\"", "line 6", "turns nothing", "80:112"},
		{"a loss at no flow", "[[item]]\nid = \"s\"\nkind = \"strainer\"\nloss = \"0.1 bar\"", "line 6", "at what flow", "0.1 bar at 7 L/min"},
		{"a rod as wide as its piston", "[[item]]\nid = \"r\"\nkind = \"energy recovery pump\"\nratio = \"95 %\"", "line 6", "no room for the brine", "10 %"},
		{"a leak of all of it", "[[item]]\nid = \"r\"\nkind = \"energy recovery pump\"\nratio = \"10 %\"\nleak = \"12 %\"", "line 7", "leaves no product", "1 %"},
		{"a lift of a tower", "[duty]\nlift = \"25 m\"", "line 4", "no pump lifts", "0.5 m"},
		{"elements of a century", "[duty]\nage = \"100 years\"", "line 4", "long failed", "3 years"},
		{"sun at night", "[power]\nsun = \"30 h\"", "line 4", "24 hours", "5 h"},
		{"a key of another section", "[power]\nbatery = \"400 Ah\"", "line 4", "batery", "battery"},
		{"a salinity of 350 in a range", "[duty]\nsalinity = \"30 to 350 g/kg\"", "line 4, column 12", "350 g/kg is saltier", "35 g/kg"},
		{"an efficiency of 7, a number", "[[item]]\nid = \"p\"\nkind = \"plunger pump\"\nefficiency = 7", "line 6, column 14", "without its unit", "7 %"},
		{"a motor's efficiency of 7", "[[item]]\nid = \"p\"\nkind = \"plunger pump\"\nmotor_efficiency = \"7\"", "line 6", "has no unit", "7 %"},
		{"a volumetric efficiency of 700 %", "[[item]]\nid = \"p\"\nkind = \"plunger pump\"\nvolumetric = \"700 %\"", "line 6", "nothing gives more than goes in", "94 %"},
		{"an inverter of 120 %", "[power]\ninverter = \"120 %\"", "line 4", "nothing gives more than goes in", "90 %"},
		{"an element that bears 180 C", "[[item]]\nid = \"e\"\nkind = \"membrane element\"\nmax_water = \"180 C\"", "line 6", "no element bears", "45 C"},
		{"an element of 280 square metres", "[[item]]\nid = \"e\"\nkind = \"membrane element\"\narea = \"280 m2\"", "line 6", "no element has", "2.8 m2"},
		{"a curve that is flat", "[[item]]\nid = \"f\"\nkind = \"feed pump\"\ncurve = [[\"0 L/min\", \"2 bar\"], [\"6 L/min\", \"2 bar\"]]", "line 6", "does not lie below", "falling"},
		{"a curve that turns back", "[[item]]\nid = \"f\"\nkind = \"feed pump\"\ncurve = [[\"6 L/min\", \"2 bar\"], [\"0 L/min\", \"1 bar\"]]", "line 6", "", "falling"},
		{"an element wider than its vessel", vessel + "size = \"4040\"\n", "line 11, column 8", "4 inches across does not go into vessel v, which takes 2.5", "size = \"2540\""},
		{"an element longer than its vessel", "[[item]]\nid = \"v\"\nkind = \"pressure vessel\"\nsize = \"2521\"\n[[item]]\nid = \"e\"\nkind = \"membrane element\"\ninside = \"v\"\nsize = \"2540\"", "line 11", "is 21 inches long inside, and with this 40 inches", "elements"},
		{"two elements in a vessel for one", vessel + "size = \"2540\"\neach = 2\n", "line 11", "80 inches of elements", "elements"},
		{"three elements where two go", strings.Replace(vessel, "size = \"2540\"", "size = \"2540\"\nelements = 2", 1) + "each = 3\n", "line 11, column 10", "takes 2 of elements, and this makes 3", "elements = 3"},
		{"no elements", "[[item]]\nid = \"v\"\nkind = \"pressure vessel\"\nelements = 0", "line 6", "cannot be", "1 to 100"},
	} {
		t.Run(c.why, func(t *testing.T) {
			_, faults := read.Parse("x.toml", []byte("[build]\nname = \"x\"\n"+c.text+"\n"))
			text := faults.Error()
			require.Contains(t, strings.ReplaceAll(text, "`", ""), c.reason, text)
			require.Contains(t, text, c.remedy)
			require.Contains(t, text, c.line)
		})
	}
}

func TestProcessKeysAreRead(t *testing.T) {
	b, faults := read.Parse("x.toml", []byte(`
[build]
name = "x"
currency = "EUR"
[duty]
pressure = "55 bar"
salinity = "34 to 36 g/kg"
water = "12 to 24 C"
litres = "90 L"
age = "2 years"
lift = "-0.4 m"
[power]
battery = "300 Ah"
sun = "4 to 5 h"
cable = "25 mm2"
cable_length = "5 m"
[[item]]
id = "pump"
kind = "plunger pump"
flow = "9 L/min"
flow_at = "70 bar"
pulley = "80:112"
engine_speed = "900 to 2200 rpm"
[[item]]
id = "feed"
kind = "feed pump"
curve = [["0 L/min", "2.5 bar"], ["14 L/min", "0 bar"]]
[[item]]
id = "element"
kind = "membrane element"
size = "2.5 x 40"
product = "700 gpd"
test_salt = "32000 mg/L"
[[item]]
id = "meter"
kind = "flow meter"
scale = "20 to 100 L/h"
[[item]]
id = "a"
kind = "tee"
[[item]]
id = "b"
kind = "tee"
[[run]]
name = "r"
path = ["a", "b"]
`))
	require.NoError(t, faults.Err())
	d := b.Duty
	require.Equal(t, 34.0, float64(d.Salinities.Lo))
	require.Equal(t, 36.0, float64(*d.Salinity))
	require.Equal(t, 24.0, float64(*d.Water), "ratings take the warmest")
	require.Equal(t, -400.0, float64(*d.Lift))
	require.Equal(t, 90.0, d.Litres.Litres())
	require.Equal(t, 5.0, b.Power.Sun.Hi.Hours())
	item := func(id string) *build.Item { it, ok := b.Item(id); require.True(t, ok); return it }
	require.Equal(t, "2540", item("element").Process.Size)
	require.InDelta(t, 32, item("element").Process.TestSalt.GramsPerLitre(), 1e-9)
	require.Equal(t, 2.5, item("feed").Shutoff.Bar())
	require.InDelta(t, 20, item("meter").Process.MeterFrom.Lo.LitresPerHour(), 1e-9)
	require.Equal(t, 2200.0, item("pump").Process.EngineSpeed.Hi.TurnsPerMinute())
}
