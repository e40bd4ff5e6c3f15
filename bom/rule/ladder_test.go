package rule

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/finding"
)

// amend changes a fragment; what is changed must stand there.
type amend struct{ from, to string }

func changed(t *testing.T, fragment string, swaps ...amend) string {
	t.Helper()
	for _, s := range swaps {
		require.Contains(t, fragment, s.from)
		fragment = strings.ReplaceAll(fragment, s.from, s.to)
	}
	return fragment
}

// severities lists the severities of a rule's findings, worst first.
func severities(list []finding.Finding) []string {
	var out []string
	for _, f := range list {
		out = append(out, f.Severity.String())
	}
	return out
}

// line is a whole line without fault: sea, pump of 9 L/min at 56 bar, relief of 65 bar
// and 10 L/min with an outlet of its own, gauge, hose, throttle, overboard. What holds
// least on it is the pump, at 100 bar.
const line = `
[duty]
pressure = "56 bar"
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "pump"
kind = "plunger pump"
flow = "9 L/min"
ports = { in = '1/2 NPT female', out = '3/8 NPT female' }
rated = "100 bar"
[[item]]
id = "tee"
kind = "tee"
rated = "200 bar"
ports = { a = '3/8 NPT male', b = '3/8 NPT female', branch = '3/8 NPT female' }
[[item]]
id = "relief"
kind = "relief valve"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
set = "65 bar"
flow = "10 L/min"
rated = "100 bar"
[[item]]
id = "dial-tee"
kind = "cross"
rated = "300 bar"
ports = { a = '3/8 NPT male', b = '3/8 NPT female', branch = '1/4 NPT female', c = '1/4 NPT female' }
[[item]]
id = "gauge"
kind = "gauge"
rated = "300 bar"
scale = "100 bar"
ports = { in = '1/4 NPT male' }
[[item]]
id = "plug"
kind = "plug"
rated = "300 bar"
ports = { a = '1/4 NPT male' }
[[hose]]
id = "hose"
spec = "SAE 100R8"
bore = '3/8"'
length = "1 m"
ends = ['3/8 NPT male', '3/8 NPT male swivel']
[[item]]
id = "throttle"
kind = "brine throttle"
rated = "200 bar"
ports = { in = '3/8 NPT female', out = '3/8 NPT female' }
[[item]]
id = "discharge"
kind = "overboard"
[[item]]
id = "relief-out"
kind = "overboard"
[[run]]
name = "suction"
path = ["sea", "weed-screen", "filter", "pump"]
[[item]]
id = "weed-screen"
kind = "strainer"
rated = "6 bar"
ports = { in = '1/2 NPT female', out = '1/2 NPT male' }
[[item]]
id = "filter"
kind = "filter housing"
micron = "5 micron"
rated = "8 bar"
ports = { in = '1/2 NPT female swivel', out = '1/2 NPT male swivel' }
[[run]]
name = "high pressure"
path = ["pump", "tee", "dial-tee", "hose", "throttle"]
[[run]]
name = "gauge"
path = ["dial-tee.branch", "gauge"]
[[run]]
name = "plug"
path = ["dial-tee.c", "plug"]
[[run]]
name = "brine"
path = ["throttle", "discharge"]
[[run]]
name = "relief"
path = ["tee.branch", "relief", "relief-out"]
`

// suction is a hose between a seacock and a feed pump.
const suction = `
[[item]]
id = "intake"
kind = "seacock"
rated = "10 bar"
ports = { inboard = '19 mm barb long' }
[[item]]
id = "stock"
kind = "hose stock"
bore = "19 mm"
rated = "6 bar"
vacuum = "0.9 bar"
[[hose]]
id = "hose"
of = "stock"
length = "1 m"
[[item]]
id = "feed"
kind = "feed pump"
shutoff = "2.5 bar"
rated = "6 bar"
ports = { in = '19 mm barb long', out = '1/2 NPT female' }
[[item]]
id = "out"
kind = "drain"
[[run]]
name = "suction"
path = ["intake", "hose", "feed", "out"]
`

// The severity of a relief, by its set and its flow, at a duty of 56 bar: at or below the
// duty it is open in normal running; a tenth above (60.5 bar) is the guide.
func TestReliefLadder(t *testing.T) {
	for _, c := range []struct {
		why   string
		swaps []amend
		slug  string
		want  []string
	}{
		{"as it should be", nil, "relief-set-low", nil},
		{"below the duty", []amend{{`"65 bar"`, `"50 bar"`}}, "relief-set-low", []string{"stop"}},
		{"at the duty", []amend{{`"65 bar"`, `"56 bar"`}}, "relief-set-low", []string{"stop"}},
		{"just above the duty", []amend{{`"65 bar"`, `"56.1 bar"`}}, "relief-margin-thin", []string{"caution"}},
		{"less than a tenth above", []amend{{`"65 bar"`, `"61.5 bar"`}}, "relief-margin-thin", []string{"caution"}},
		{"just above the duty, it is not open", []amend{{`"65 bar"`, `"56.1 bar"`}}, "relief-set-low", nil},
		{"a tenth above", []amend{{`"65 bar"`, `"61.6 bar"`}}, "relief-margin-thin", nil},
		{"no word of its set", []amend{{"set = \"65 bar\"\n", ""}}, "relief-set-low", []string{"stop"}},
		{"set at the weakest rating", []amend{{`"65 bar"`, `"100 bar"`}}, "relief-set-high", nil},
		{"set above the weakest rating", []amend{{`"65 bar"`, `"101 bar"`}}, "relief-set-high", []string{"stop"}},
		{"passes the pump's flow and no more", []amend{{`"10 L/min"`, `"9 L/min"`}}, "relief-too-small", nil},
		{"passes less", []amend{{`"10 L/min"`, `"8.9 L/min"`}}, "relief-too-small", []string{"stop"}},
		{"no word of its flow", []amend{{"flow = \"10 L/min\"\n", ""}}, "relief-too-small", []string{"note"}},
		{"none at all", []amend{{`"tee.branch", "relief", "relief-out"`, `"tee.branch", "relief-out"`}}, "relief-missing", []string{"stop"}},
		{"one there is", nil, "relief-missing", nil},
		{"behind a valve", []amend{{"[[run]]\nname = \"suction\"", "[[item]]\nid = \"valve\"\nkind = \"shut-off valve\"\nrated = \"200 bar\"\n[[run]]\nname = \"suction\""}, {`"tee.branch", "relief"`, `"tee.branch", "valve", "relief"`}}, "relief-cut-off", []string{"stop"}},
		{"its outlet behind a valve", []amend{{"[[run]]\nname = \"suction\"", "[[item]]\nid = \"valve\"\nkind = \"shut-off valve\"\nrated = \"200 bar\"\n[[run]]\nname = \"suction\""}, {`"relief", "relief-out"`, `"relief", "valve", "relief-out"`}}, "relief-cut-off", []string{"stop"}},
		{"free on both sides", nil, "relief-cut-off", nil},
	} {
		t.Run(c.why, func(t *testing.T) {
			require.Equal(t, c.want, severities(found(t, changed(t, line, c.swaps...))[c.slug]))
		})
	}
}

// Over the rating in normal running or by a person's act it is a stop; by a part's
// failure a caution, and a stop above the proof pressure (1.5 times the rating for what
// is no hose: ASME B31.3-2016 345.4.2(a)).
//
// By hand: with the throttle shut the relief stands at 1.1 x 65 = 71.5 bar. A strainer
// on the brine line that clogs puts the same on what is before it, and only by failure.
func TestUnderRatedLadder(t *testing.T) {
	brine := func(rated string) []amend {
		return []amend{
			{"[[run]]\nname = \"suction\"", "[[item]]\nid = \"weak\"\nkind = \"elbow\"\n" + rated + "\n[[item]]\nid = \"screen\"\nkind = \"strainer\"\nrated = \"200 bar\"\n[[run]]\nname = \"suction\""},
			{`"throttle", "discharge"`, `"throttle", "weak", "screen", "discharge"`},
		}
	}
	tee := func(rated string) []amend {
		return []amend{{"kind = \"tee\"\nrated = \"200 bar\"", "kind = \"tee\"\nrated = \"" + rated + "\""}}
	}
	for _, c := range []struct {
		why   string
		swaps []amend
		want  []string
	}{
		{"over in normal running", tee("54 bar"), []string{"stop"}},
		{"over by an act", tee("70 bar"), []string{"stop"}},
		{"just enough for the act", tee("71.5 bar"), nil},
		{"over by a failure, within the proof: 1.5 x 48 = 72 bar", brine(`rated = "48 bar"`), []string{"caution"}},
		{"over by a failure, above the proof: 1.5 x 47 = 70.5 bar", brine(`rated = "47 bar"`), []string{"stop"}},
		{"enough for the failure", brine(`rated = "72 bar"`), nil},
	} {
		t.Run(c.why, func(t *testing.T) {
			require.Equal(t, c.want, severities(found(t, changed(t, line, c.swaps...))["under-rated"]))
		})
	}
}

// What stands without a bound though there is a relief: by an act a stop, by a failure a
// caution; a stall is a bound. A pump that has no relief is one finding, which says what
// it comes to.
func TestNoWayOutLadder(t *testing.T) {
	wrong := noWayOut.Example(noWayOut.Wrong)
	screen := amend{"kind = \"shut-off valve\"", "kind = \"strainer\""}
	stall := amend{"flow = \"9 L/min\"", "flow = \"9 L/min\"\nstall = \"90 bar\""}
	bare := amend{`path = ["hp-tee.branch", "relief", "out-tee.branch"]`, `path = ["hp-tee.branch", "out-tee.branch"]`}
	require.Equal(t, []string{"stop"}, severities(found(t, wrong)["no-way-out"]), "a valve left shut")
	require.Equal(t, []string{"caution"}, severities(found(t, changed(t, wrong, screen))["no-way-out"]), "a screen that may clog")
	require.Empty(t, found(t, changed(t, wrong, stall))["no-way-out"], "the pump stalls, and that is a bound")
	require.Empty(t, found(t, line)["no-way-out"])

	bareLine := changed(t, line, amend{`"tee.branch", "relief", "relief-out"`, `"tee.branch", "relief-out"`},
		amend{"id = \"relief-out\"\nkind = \"overboard\"", "id = \"relief-out\"\nkind = \"plug\"\nrated = \"200 bar\""})
	for why, text := range map[string]string{"no relief": bareLine, "nor is one placed": changed(t, wrong, bare)} {
		got := found(t, text)
		require.Empty(t, got["no-way-out"], why)
		require.Len(t, got["relief-missing"], 1, why)
	}
	require.Contains(t, found(t, bareLine)["relief-missing"][0].Reason, "Nothing opens, and the pressure rises until something bursts, with throttle (brine throttle) left shut.")
}

// nipples are two parts on a line that stands at some pressure, and what is asked of the
// joint between them.
func nipples(a, b, house string) string {
	return "[[item]]\nid = \"house\"\nkind = \"house supply\"\npressure = \"" + house + "\"\nports = { out = '1/2 NPT male' }\n" +
		"[[item]]\nid = \"left\"\nkind = \"coupling\"\nrated = \"300 bar\"\nports = { a = '1/2 NPT female', b = '" + a + "' }\n" +
		"[[item]]\nid = \"right\"\nkind = \"cap\"\nrated = \"300 bar\"\nports = { a = '" + b + "' }\n" +
		"[[run]]\nname = \"line\"\npath = [\"house\", \"left.a>b\", \"right\"]\n"
}

// A joint that is for low pressure only is a stop above its limit, else a caution. An
// end with several readings is judged by the worst of them: a caution, and a stop on high
// pressure (above 10 bar). An end that is not said is the same. What cannot be joined is
// a stop at any pressure.
func TestJointLadder(t *testing.T) {
	for _, c := range []struct{ why, a, b, house, slug, want string }{
		{"taper in parallel, low", "R 1/2", "G 1/2 female", "3 bar", "makeshift-joint", "caution"},
		{"taper in parallel, above its limit", "R 1/2", "G 1/2 female", "60 bar", "makeshift-joint", "stop"},
		{"an open end, low", "1/2 BSP male", "Rc 1/2", "3 bar", "end-left-open", "caution"},
		{"an open end, at the border", "1/2 BSP male", "Rc 1/2", "10 bar", "end-left-open", "caution"},
		{"an open end, high", "1/2 BSP male", "Rc 1/2", "10.1 bar", "end-left-open", "stop"},
		{"two countries, low", "1/2 NPT male", "Rc 1/2", "3 bar", "flank-angles-differ", "stop"},
		{"two males", "1/2 NPT male", "1/2 NPT male", "3 bar", "same-sex", "stop"},
		{"as it should be, high", "1/2 NPT male", "1/2 NPT female", "60 bar", "", ""},
	} {
		t.Run(c.why, func(t *testing.T) {
			var got []finding.Finding
			for _, list := range found(t, nipples(c.a, c.b, c.house)) {
				for _, f := range list {
					if strings.HasPrefix(f.At(), "J2 ") {
						got = append(got, f)
					}
				}
			}
			if c.slug == "" {
				require.Empty(t, got)
				return
			}
			require.Len(t, got, 1, "one finding a joint")
			require.Equal(t, c.slug, got[0].Slug)
			require.Equal(t, c.want, got[0].Severity.String())
		})
	}
}

// An end that nothing is said of: a caution, and a stop on high pressure.
func TestEndNotSaidLadder(t *testing.T) {
	for house, want := range map[string]string{"3 bar": "caution", "60 bar": "stop"} {
		text := strings.Replace(nipples("1/2 NPT male", "1/2 NPT female", house), "ports = { a = '1/2 NPT female' }\n[[run]]", "[[run]]", 1)
		require.Equal(t, []string{want}, severities(found(t, text)["end-not-said"]), house)
	}
}

// A rating that is not known: a note at low pressure, one for the segment; a stop on high
// pressure, one for each item.
func TestRatingUnknownLadder(t *testing.T) {
	for house, want := range map[string][]string{"3 bar": {"note"}, "10 bar": {"note"}, "60 bar": {"stop", "stop"}} {
		text := strings.ReplaceAll(nipples("1/2 NPT male", "1/2 NPT female", house), "rated = \"300 bar\"\n", "")
		require.Equal(t, want, severities(found(t, text)["rating-unknown"]), house)
	}
}

// A gauge: past its end by an act a caution; the duty outside the middle half a note.
// The duty is 56 bar and the worst 71.5: 72 bar is enough for the one and not for the other.
func TestGaugeLadder(t *testing.T) {
	for scale, want := range map[string][]string{
		"60 bar": {"caution"}, "71 bar": {"caution"}, "72 bar": {"note"}, "75 bar": nil, "100 bar": nil, "223 bar": nil, "225 bar": {"note"},
	} {
		text := changed(t, line, amend{`scale = "100 bar"`, `scale = "` + scale + `"`})
		require.Equal(t, want, severities(found(t, text)["gauge-range"]), scale)
	}
}

// A hose under vacuum: not known to stand it a caution; known not to, by an act, a stop;
// 0.85 bar is enough, as SAE J517 asks of 100R4 (25 inches of mercury).
func TestCollapseLadder(t *testing.T) {
	for vacuum, want := range map[string][]string{"": {"caution"}, "vacuum = \"0.5 bar\"": {"stop"}, "vacuum = \"0.84 bar\"": {"stop"}, "vacuum = \"0.85 bar\"": nil} {
		text := changed(t, suction, amend{`vacuum = "0.9 bar"`, vacuum})
		require.Equal(t, want, severities(found(t, text)["hose-may-collapse"]), vacuum)
	}
}

// A barb in a bore: within 0.6 mm nothing, to 1.5 mm a caution, beyond a stop
// (judgement of the design).
func TestBarbLadder(t *testing.T) {
	for barb, want := range map[string]string{"19 mm": "", "19.6 mm": "", "18.4 mm": "", "19.7 mm": "caution", "20.5 mm": "caution", "20.6 mm": "stop", "17.4 mm": "stop"} {
		got := ""
		for _, list := range found(t, changed(t, suction, amend{"inboard = '19 mm barb long'", "inboard = '" + barb + " barb long'"})) {
			for _, f := range list {
				if strings.HasPrefix(f.At(), "J1 ") {
					got = f.Severity.String()
				}
			}
		}
		require.Equal(t, want, got, barb)
	}
}

// One cause, one finding: each wrong example is found once by its own rule.
func TestOneFindingPerCause(t *testing.T) {
	for _, r := range All() {
		list := example(t, r, r.Wrong)[r.Slug]
		want := 1
		if r.Slug == portOpen.Slug {
			want = len(list) // each open port is a hole of its own
		}
		require.Len(t, list, want, r.Slug)
	}
}

// A line without fault is without stops and cautions: what the ladders find is what was
// changed.
func TestLinesOfTheLaddersAreClear(t *testing.T) {
	for _, text := range []string{line, suction} {
		for slug, list := range found(t, text) {
			for _, f := range list {
				if slug != endNotSaid.Slug && slug != materialUnknown.Slug && slug != noStrainer.Slug && slug != feedPumpNotSaid.Slug { // they are a hose, or a pump, and no more
					require.Equal(t, finding.Note, f.Severity, "%s at %s: %s", slug, f.At(), f.Reason)
				}
			}
		}
	}
}
