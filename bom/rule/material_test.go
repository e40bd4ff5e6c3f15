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
		{"copper-nickel stands what runs, and here it stands", "copper-nickel", "copper-nickel", []string{"note"}, nil, nil},
		{"alloy 400 as well", "alloy 400", "alloy 400", []string{"note"}, nil, nil},
		{"904L is a caution running or standing", "bronze", "904L", []string{"caution"}, nil, nil},
		{"stainless of no grade, without a flush", "bronze", "stainless", []string{"caution"}, []string{"note"}, nil},
		{"aluminium on stainless: the sea eats it by itself", "aluminium", "316", []string{"stop", "caution"}, nil, nil},
		{"copper-nickel on titanium: from -0.22 to 0.04 V is 0.26", "copper-nickel", "titanium", []string{"note"}, []string{"caution"}, nil},
		{"alloy 400 on bronze: from -0.24 to -0.14 V is 0.10, and from -0.32 to -0.03 is 0.29", "bronze", "alloy 400", []string{"note"}, []string{"note"}, nil},
		{"copper-nickel on bronze: 0.10 V at most", "bronze", "copper-nickel", []string{"note"}, nil, nil},
		{"titanium on bronze: at least 0.28 V", "bronze", "titanium", nil, []string{"caution"}, nil},
		{"super duplex: its potential is not known", "bronze", "super duplex", nil, nil, nil},
		{"a plastic tail touches no metal", "bronze", "pp", nil, nil, nil},
		{"nylon swells", "bronze", "nylon", []string{"caution"}, nil, nil},
		{"a skin fitting of PVC breaks", "pvc", "pp", []string{"stop"}, nil, nil},
		{"of nylon too, and a nylon tail behind it swells", "nylon", "nylon", []string{"stop", "caution"}, nil, nil},
		{"of a plastic not said which: ask", "plastic", "pp", []string{"caution"}, nil, nil},
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

// A seacock of PVC below the waterline is a stop that names what to buy, and that mends it;
// above the waterline it is none.
func TestPlasticSeacock(t *testing.T) {
	const line = `
[[item]]
id = "cock"
kind = "seacock"
material = "%s"
ports = { inboard = 'G 3/4 female' }
[[item]]
id = "tail"
kind = "hose tail"
material = "pp"
ports = { a = 'G 3/4 male', b = '19 mm barb long' }
[[run]]
name = "raw water"
%spath = ["cock", "tail"]
`
	const below = "below_waterline = true\n"
	list := found(t, fmt.Sprintf(line, "PVC", below))["material-not-for-seawater"]
	require.Len(t, list, 1)
	require.Equal(t, finding.Stop, list[0].Severity)
	require.Contains(t, list[0].Reason, "between the sea and the boat")
	require.Contains(t, list[0].Remedy, "bronze")
	require.Empty(t, found(t, fmt.Sprintf(line, "bronze", below))["material-not-for-seawater"], "the remedy, followed")
	require.Empty(t, found(t, fmt.Sprintf(line, "PVC", ""))["material-not-for-seawater"], "above the waterline it floods nothing")
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
		// The feed pump may be as large as it will: what runs is what the pump behind it takes.
		{"7 L/min in 19 mm: 0.4 m/s", "suction-too-fast", nil, nil},
		{"a feed pump of 26 L/min before a pump of 7", "suction-too-fast", []amend{{`"14 L/min"`, `"26 L/min"`}}, nil},
		{"17 L/min: 1.0 m/s", "suction-too-fast", []amend{{"flow     = \"7 L/min\"\n\n[[item]]\nid    = \"seal-kit\"", "flow     = \"17 L/min\"\n\n[[item]]\nid    = \"seal-kit\""}, {`"14 L/min"`, `"34 L/min"`}}, []string{"note"}},
		{"26 L/min: 1.5 m/s and more", "suction-too-fast", []amend{{"flow     = \"7 L/min\"\n\n[[item]]\nid    = \"seal-kit\"", "flow     = \"26 L/min\"\n\n[[item]]\nid    = \"seal-kit\""}, {`"14 L/min"`, `"60 L/min"`}}, []string{"caution"}},
		{"the relief to a drain", "relief-discharge", []amend{{`"relief-hose", "relief-outlet"]`, `"relief-hose", "galley-drain/relief"]`}}, []string{"stop"}},
		{"the relief into the tank", "relief-discharge", []amend{{`"relief-hose", "relief-outlet"]`, `"relief-hose", "tank/relief"]`}}, []string{"stop"}},
		{"the relief overboard", "relief-discharge", nil, nil},
		{"the relief left open", "relief-discharge", []amend{
			{`path = ["hp-tee.branch", "relief", "tail-n38/+", "relief-hose", "relief-outlet"]`, `path = ["hp-tee.branch", "relief"]`},
			{`left_open = []`, `left_open = ["relief.out"]`},
		}, []string{"stop"}},
		{"a part in the drinking water of which nothing is declared", "product-not-for-drinking", []amend{{`, drinking water quality"` + "\nports    = { common", `"` + "\nports    = { common"}}, []string{"note"}},
		{"brass in the drinking water is a caution, declared or not", "product-not-for-drinking", []amend{{"between  = \"open\"\nmaterial = \"pom\"", "between  = \"open\"\nmaterial = \"brass\""}}, []string{"caution"}},
		{"a paste with anti-seize in the list", "stainless-galls", []amend{{`id    = "oil"`, "id    = \"paste\"\nkind  = \"tape\"\nabout = \"anti-seize paste\"\n[[item]]\nid    = \"oil\""}}, nil},
	} {
		t.Run(c.why, func(t *testing.T) {
			require.Equal(t, c.want, severities(cleanWith(t, c.swaps...)[c.slug]))
		})
	}
}

// Each part is said to be in what it is in, and one finding speaks of all that have one
// material: by hand, from the runs of the clean build.
func TestWhereSeaWaterStands(t *testing.T) {
	// the clean build's text before what each part is made of
	const (
		intake   = "ports    = { inboard = '19 mm barb long' }\nmaterial = "
		feedTee  = "branch = '1/4 NPT female' }\nmaterial = "
		flushTee = "branch = '1/2 NPT female' }\nmaterial = "
		gauge    = "ports = { in = '1/4 NPT male' }\nmaterial = "
		tail     = "ports    = { a = '1/2 NPT male', b = '19 mm barb long' }\nmaterial = "
		pump     = "ports    = { in = '1/2 NPT female', out = '3/8 NPT female' }\nmaterial = "
		throttle = "ports    = { in = '3/8 NPT female', out = '3/8 NPT female' }\nmaterial = "
	)
	is := func(text, old, material string) amend {
		return amend{text + `"` + old + `"`, text + `"` + material + `"`}
	}
	for _, c := range []struct {
		why          string
		swaps        []amend
		severity     finding.Severity
		says, remedy string
	}{
		{
			"low and high pressure are told apart, and the dead ends", nil, finding.Note,
			"tail-n12, tail-n38/+2 are of stainless 316 in sea water; hp-pump, hp-tee, hp-hose-feed, jic-n12/+1, jic-n12/+2, hp-hose-brine, gauge-tee-hp, throttle in sea water, at high pressure; " +
				"hp-gauge, relief in a dead end of a high-pressure line, where sea water stands: it pits",
			"in the dead ends first",
		},
		{
			"no flush at all: it stands everywhere", []amend{{`"flush-check", "flush-tee.branch"]`, `"flush-check"]`}}, finding.Caution,
			"tail-n12, tail-n38/+2 are of stainless 316 in sea water that stands there between uses; hp-pump, hp-tee, hp-hose-feed, jic-n12/+1, jic-n12/+2, hp-hose-brine, gauge-tee-hp, throttle and 2 more in a high-pressure line in which sea water stands between uses: it pits",
			"Lead a fresh-water flush through it and rinse after each use, or buy what is at high pressure of super duplex, 6 % Mo stainless or titanium, the rest of bronze",
		},
		{
			"a tee between the feed pump and the flush: the flush presses on it, and does not run through", []amend{is(feedTee, "bronze", "316")}, finding.Caution,
			"gauge-tee is of stainless 316 in sea water that stands there between uses: it pits", "Lead a fresh-water flush through it",
		},
		{
			"alloy 400 where the flush runs is not spoken of", []amend{is(throttle, "316", "alloy 400")}, finding.Note,
			"tail-n12, tail-n38/+2 are of stainless 316 in sea water; hp-pump, hp-tee", "Flush with fresh water",
		},
		{
			"the flush tee itself is flushed, also where its other way leads to what is not",
			[]amend{
				{"ports    = { a = '19 mm barb long', b = '19 mm barb long', " + flushTee + `"bronze"`, "ports    = { branch = '19 mm barb long', b = '19 mm barb long', a = '1/2 NPT female' }\nmaterial = \"316\""},
				{`"flush-tee", "feed-3"`, `"flush-tee.branch>b", "feed-3"`}, {`"flush-tee.branch"]`, `"flush-tee.a"]`},
			}, finding.Note,
			"flush-tee, tail-n12, tail-n38/+2 are of stainless 316 in sea water; hp-pump", "Flush with fresh water",
		},
		{
			"904L is no better where it stands, and is told so",
			[]amend{is(throttle, "316", "904L"), {`"flush-check", "flush-tee.branch"]`, `"flush-check"]`}}, finding.Caution,
			"throttle is of stainless 904L in a high-pressure line in which sea water stands between uses: not reliable", "Lead a fresh-water flush through it",
		},
		{
			"a gauge of alloy 400 on the low side, where it stands", []amend{is(gauge, "bronze", "alloy 400")}, finding.Note,
			"lp-gauge is of nickel-copper alloy 400 in sea water that stands there between uses: pits", "Lead a fresh-water flush through it, or look",
		},
		{
			"and on the flushed side, in a dead end", []amend{is(gauge, "316", "alloy 400")}, finding.Note,
			"hp-gauge is of nickel-copper alloy 400 in a dead end of a high-pressure line, where sea water stands: pits", "Look at it each season",
		},
		{
			"a seacock of copper-nickel, which is shut between uses", []amend{is(intake, "bronze", "copper-nickel")}, finding.Note,
			"intake is of copper-nickel in sea water that stands there between uses: the alloy", "Lead a fresh-water flush",
		},
		{
			"stainless of no grade at low pressure, flushed", []amend{is(tail, "316", "stainless")}, finding.Note,
			"tail-n12 is of stainless steel of a grade not said in sea water: of which grade", "Ask the shop for the grade",
		},
		{
			"at high pressure it may be 304", []amend{is(throttle, "316", "stainless")}, finding.Caution,
			"throttle is of stainless steel of a grade not said in sea water, at high pressure: of which grade", "Ask the shop for the grade",
		},
		{
			"of both it is one question", []amend{is(tail, "316", "stainless"), is(pump, "316", "stainless steel")}, finding.Caution,
			"tail-n12 is of stainless steel of a grade not said in sea water; hp-pump in sea water, at high pressure: of which grade", "Ask the shop for the grade",
		},
		{
			"304 stays a stop, flushed or not", []amend{is(throttle, "316", "304"), is(tail, "316", "304")}, finding.Stop,
			"tail-n12 is of stainless 304 in sea water; throttle in sea water, at high pressure: it pits in sea water", "Buy what is at high pressure of super duplex",
		},
	} {
		t.Run(c.why, func(t *testing.T) {
			var own []finding.Finding
			for _, f := range cleanWith(t, c.swaps...)["material-not-for-seawater"] {
				require.NotContains(t, f.Reason, "throttle is of nickel-copper")
				if strings.Contains(f.Reason, c.says) {
					own = append(own, f)
				}
			}
			require.Len(t, own, 1, "%q is said by one finding", c.says)
			require.Equal(t, c.severity, own[0].Severity)
			require.Contains(t, own[0].Remedy, c.remedy)
		})
	}
}

// Which stainless tapers gall, on the example of the rule with its parts changed.
func TestGallingLadder(t *testing.T) {
	const elbow = "id = \"elbow\"\nkind = \"elbow\"\nports = { a = '3/8 NPT male', b = '3/8 NPT female' }\nmaterial = \"316\""
	of := func(material string) amend { return amend{elbow, strings.Replace(elbow, "316", material, 1)} }
	for _, c := range []struct {
		why   string
		swaps []amend
		want  []string
	}{
		{"316 in 316", nil, []string{"note"}},
		{"316 in super duplex: stainless both", []amend{of("super duplex")}, []string{"note"}},
		{"316 in a stainless of no grade", []amend{of("inox")}, []string{"note"}},
		{"316 in bronze", []amend{of("bronze")}, nil},
		{"316 in plastic", []amend{of("pp")}, nil},
		{"a parallel thread with a washer turns without load", []amend{
			{"a = '3/8 NPT male', b = '3/8 NPT female', branch", "a = '3/8 NPT male', b = 'G 3/8 female', branch"},
			{"ports = { a = '3/8 NPT male', b = '3/8 NPT female' }", "ports = { a = 'G 3/8 male', b = '3/8 NPT female' }"},
		}, nil},
		{"two males do not screw together at all", []amend{{"ports = { a = '3/8 NPT male', b = '3/8 NPT female' }", "ports = { a = '3/8 NPT male', b = '3/8 NPT male' }"}, {"b = '3/8 NPT female', branch", "b = '3/8 NPT male', branch"}}, nil},
	} {
		t.Run(c.why, func(t *testing.T) {
			require.Equal(t, c.want, severities(found(t, changed(t, stainlessGalls.Wrong, c.swaps...))["stainless-galls"]))
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
	}, untold)
	require.Equal(t, []string{
		"it is 75 C here, and bronze fittings by class are rated from 0 C to 66 C",
		"it is 75 C here, and PP is rated from 0 C to 71.1 C",
		"it is 75 C here, and brass fittings by class are rated from 0 C to 66 C",
	}, reasons)
}

// Of acetal no table tells what heat leaves; where its ends are push-in, the table of such
// fittings does.
func TestAcetalInTheHeat(t *testing.T) {
	const line = `
[duty]
space = "60 C"
[[item]]
id = "one"
kind = "coupling"
material = "pom"
ports = { a = 'ENDS', b = 'ENDS' }
rated = "10 bar"
[[item]]
id = "drain"
kind = "drain"
[[run]]
name = "line"
path = ["one", "drain"]
`
	list := found(t, strings.ReplaceAll(line, "ENDS", "1/2 NPT female"))["part-too-warm"]
	require.Len(t, list, 1)
	require.Equal(t, finding.Note, list[0].Severity)
	require.Contains(t, list[0].Reason, "no table says what heat leaves of acetal")
	require.NotContains(t, found(t, strings.ReplaceAll(line, "ENDS", "10 mm push-in")), "part-too-warm")
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
flow = "9 L/min"
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

// Of one material out of its table, that on high pressure makes the stop, wherever it
// stands.
func TestWarmSeverity(t *testing.T) {
	for _, c := range []struct{ why, material, path, want string }{
		{"on low pressure only", "316", `"sea", "pipe/1", "pump", "throttle", "out"`, "caution"},
		{"on high pressure last", "316", `"sea", "pipe/1", "pump", "pipe/2", "throttle", "out"`, "stop"},
		{"on high pressure first", "316", `"sea", "pump", "pipe/2", "throttle", "pipe/1", "out"`, "stop"},
	} {
		list := found(t, fmt.Sprintf(warmLine, c.material, c.path))["part-too-warm"]
		require.Equal(t, []string{c.want}, severities(list), c.why)
	}
}
