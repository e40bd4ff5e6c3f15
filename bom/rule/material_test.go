package rule

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/finding"
)

// rawLine is a skin fitting, a tail and what the pump draws, of two materials.
const rawLine = `
[[item]]
id = "hull"
kind = "through-hull"
material = "%s"
ports = { inboard = '3/4 NPT male' }
[[item]]
id = "tail"
kind = "hose tail"
material = "%s"
ports = { a = '3/4 NPT female', b = '19 mm barb long' }
[[run]]
name = "raw water"
below_waterline = true
path = ["hull", "tail"]
`

// How each material in raw water, and each pair in contact there, is judged. The
// figures are those of the catalogue's table.
func TestMaterialLadder(t *testing.T) {
	for _, c := range []struct {
		why, hull, tail string
		attacked        []string // material-not-for-seawater
		pair            []string // galvanic-pair
		unknown         []string // material-unknown
	}{
		{"bronze throughout", "bronze", "bronze", nil, nil, nil},
		{"brass loses its zinc: and the pair is not said beside it", "bronze", "brass", []string{"stop"}, nil, nil},
		{"DZR brass slower", "bronze", "DZR brass CW602N", []string{"caution"}, nil, nil},
		{"304 pits", "bronze", "304", []string{"stop"}, nil, nil},
		{"316 without a flush, on bronze", "bronze", "316", []string{"caution"}, []string{"note"}, nil},
		{"titanium on bronze: at least 0.28 V", "bronze", "titanium", nil, []string{"caution"}, nil},
		{"super duplex: its potential is not known", "bronze", "super duplex", nil, nil, nil},
		{"a plastic tail touches no metal", "bronze", "pp", nil, nil, nil},
		{"nylon swells", "bronze", "nylon", []string{"caution"}, nil, nil},
		{"galvanised iron on bronze", "bronze", "galvanised", []string{"stop"}, nil, nil},
		{"two parts of brass are one fault", "brass", "brass", []string{"stop"}, nil, nil},
		{"a word that nobody knows", "bronze", "unobtainium", nil, nil, []string{"note"}},
		{"none is said of either: one note", "", "", nil, nil, []string{"note"}},
	} {
		t.Run(c.why, func(t *testing.T) {
			got := found(t, fmt.Sprintf(rawLine, c.hull, c.tail))
			require.Equal(t, c.attacked, severities(got["material-not-for-seawater"]), "material-not-for-seawater")
			require.Equal(t, c.pair, severities(got["galvanic-pair"]), "galvanic-pair")
			require.Equal(t, c.unknown, severities(got["material-unknown"]), "material-unknown")
		})
	}
}

// cleanWith gives the findings of the clean build after some changes of its text.
func cleanWith(t *testing.T, swaps ...amend) map[string][]finding.Finding {
	t.Helper()
	var text strings.Builder
	for _, file := range []string{"build.toml", "fittings.toml"} {
		part, err := os.ReadFile(demos + "/clean/" + file)
		require.NoError(t, err)
		text.Write(part)
	}
	whole := strings.Replace(text.String(), `include   = ["fittings.toml"] `, "", 1)
	return check(t, changed(t, whole, swaps...))
}

// Seeded faults in the clean build: each is found with its severity, and none is there
// without it.
func TestPressureSideSeeds(t *testing.T) {
	for _, c := range []struct {
		why, slug string
		swaps     []amend
		want      []string
	}{
		{"316 that the flush reaches", "material-not-for-seawater", nil, []string{"note"}},
		{
			"316 without a flush", "material-not-for-seawater",
			[]amend{{`"flush-check", "flush-tee.branch"]`, `"flush-check"]`}}, []string{"caution"},
		},
		{
			"brass at high pressure", "material-not-for-seawater",
			[]amend{{`material = "nylon core, 316 ends"`, `material = "nylon core, brass ends"`}}, []string{"stop", "note"},
		},
		{
			"a vessel of unknown material", "material-unknown",
			[]amend{{`material = "fibreglass"`, ``}}, []string{"caution"},
		},
		{"no carbon filter", "chlorine-on-membrane", []amend{{`"tail-p12/+", "carbon", "tail-p12/+", "flush-2", `, ``}}, []string{"caution"}},
		{"a carbon filter there is", "chlorine-on-membrane", nil, nil},
		{"no hose behind the pump", "rigid-on-pump", []amend{{`"hp-tee", "hp-hose-feed", "jic-n12/+", "vessel.feed"]`, `"hp-tee", "jic-n12/+", "vessel.feed"]`}}, []string{"caution"}},
		{"a hose there is", "rigid-on-pump", nil, nil},
		{"14 L/min in 19 mm: 0.8 m/s", "suction-too-fast", nil, nil},
		{"20 L/min: 1.2 m/s", "suction-too-fast", []amend{{`"14 L/min"`, `"20 L/min"`}}, []string{"note"}},
		{"26 L/min: 1.5 m/s and more", "suction-too-fast", []amend{{`"14 L/min"`, `"26 L/min"`}}, []string{"caution"}},
		{"the relief to a drain", "relief-discharge", []amend{{`"relief-hose", "relief-outlet"]`, `"relief-hose", "galley-drain/relief"]`}}, []string{"caution"}},
		{"the relief into the tank", "relief-discharge", []amend{{`"relief-hose", "relief-outlet"]`, `"relief-hose", "tank/relief"]`}}, []string{"caution"}},
		{"the relief overboard", "relief-discharge", nil, nil},
		{"the relief left open", "relief-discharge", []amend{
			{`path = ["hp-tee.branch", "relief", "tail-n38/+", "relief-hose", "relief-outlet"]`, `path = ["hp-tee.branch", "relief"]`},
			{`left_open = []`, `left_open = ["relief.out"]`},
		}, []string{"caution"}},
		{"brass in the drinking water is suitable, and not declared", "product-not-for-drinking", []amend{{`, drinking water quality"` + "\nports    = { common", `"` + "\nports    = { common"}}, []string{"note"}},
		{"a paste with anti-seize in the list", "stainless-galls", []amend{{`id    = "oil"`, "id    = \"paste\"\nkind  = \"tape\"\nabout = \"anti-seize paste\"\n[[item]]\nid    = \"oil\""}}, nil},
	} {
		t.Run(c.why, func(t *testing.T) {
			require.Equal(t, c.want, severities(cleanWith(t, c.swaps...)[c.slug]))
		})
	}
}

// In an engine room of 75 C the hoses are still rated for the air (EN 855: the range of
// EN 853 is taken, to 100 C) and 316 keeps its rating; the tables of polypropylene and of
// copper alloys end below. Each is said once, whatever is made of it.
func TestPartTooWarm(t *testing.T) {
	require.Empty(t, cleanWith(t)["part-too-warm"])
	list := cleanWith(t, amend{`space    = "40 C"`, `space    = "75 C"`})["part-too-warm"]
	var reasons, untold []string
	for _, f := range list {
		words := f.Reason[:strings.Index(f.Reason, ":")]
		if f.Severity == finding.Note {
			untold = append(untold, words)
			continue
		}
		require.Equal(t, finding.Caution, f.Severity)
		reasons = append(reasons, words)
	}
	require.Equal(t, []string{
		"it is 75 C here, and no table says what heat leaves of hose of no known standard",
		"it is 75 C here, and no table says what heat leaves of acetal",
	}, untold)
	require.Equal(t, []string{
		"it is 75 C here, and bronze is rated from 0 C to 66 C",
		"it is 75 C here, and PP is rated from 0 C to 71.1 C",
		"it is 75 C here, and brass is rated from 0 C to 66 C",
	}, reasons)
}

// Hotter is never safer: outside its table a part is judged by what the end of the table
// leaves, and on high pressure it is a stop.
func TestOutsideItsTableAPartHoldsNoMore(t *testing.T) {
	const line = `
[duty]
pressure = "30 bar"
space = "%s"
[[item]]
id = "pump"
kind = "plunger pump"
flow = "8 L/min"
rated = "100 bar"
ports = { in = '1/2 NPT female', out = '1/2 NPT female' }
[[item]]
id = "nipple"
kind = "nipple"
material = "CPVC"
rated = "100 bar"
ports = { a = '1/2 NPT male', b = '1/2 NPT male' }
[[item]]
id = "throttle"
kind = "brine throttle"
rated = "100 bar"
ports = { in = '1/2 NPT female', out = '1/2 NPT female' }
[[item]]
id = "out"
kind = "overboard"
[[run]]
name = "line"
path = ["pump", "nipple", "throttle", "out"]
`
	low := "[[item]]\nid = \"cap\"\nkind = \"nipple\"\nmaterial = \"CPVC\"\nrated = \"100 bar\"\nports = { a = '1/2 NPT male', b = '1/2 NPT male' }\n[[item]]\nid = \"sink\"\nkind = \"drain\"\nports = { in = '1/2 NPT female' }\n[[run]]\nname = \"low\"\npath = [\"sink/1\", \"cap\", \"sink/2\"]\n"
	require.Equal(t, []string{"stop"}, severities(found(t, fmt.Sprintf(line, "94 C")+low)["part-too-warm"]), "a second one at low pressure softens nothing")
	for _, c := range []struct {
		space       string
		warm, under []string
	}{
		{"20 C", nil, nil},
		{"82 C", nil, []string{"stop"}},               // 0.25 of 100 bar
		{"94 C", []string{"stop"}, []string{"stop"}},  // the table ends at 93.3 C with 0.20
		{"150 C", []string{"stop"}, []string{"stop"}}, // and so on
	} {
		got := found(t, fmt.Sprintf(line, c.space))
		require.Equal(t, c.warm, severities(got["part-too-warm"]), c.space)
		require.Equal(t, c.under, severities(got["under-rated"]), c.space)
	}
}

// The trap of a class that is not a pressure is named where it is met.
func TestCastClassTrapIsNamed(t *testing.T) {
	list := cleanWith(t, amend{`class    = "class 3000"`, `class    = "class 150"`})["under-rated"]
	require.Len(t, list, 1)
	require.Contains(t, list[0].Reason, "Class 150 is a name and not a pressure")
	require.Contains(t, list[0].Reason, "20.7 bar")
}
