package rule

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/finding"
	"handtight/bom/rating"
	"handtight/pressure/quantity"
)

// clears tells that a build has no stop and no caution of some rules.
func clears(t *testing.T, text string, slugs ...string) {
	t.Helper()
	got := found(t, text)
	for _, slug := range slugs {
		for _, f := range got[slug] {
			require.Equal(t, finding.Note, f.Severity, "%s: %s", slug, f.Reason)
		}
	}
}

// A remedy clears what it is the remedy of: it is followed to the letter, and the last figure
// below it does not do. The figures are by hand, beside each row.
func TestRemediesClear(t *testing.T) {
	weakTee := amend{"kind = \"tee\"\nrated = \"200 bar\"", "kind = \"tee\"\nrated = \"40 bar\""}
	teeFor := func(rated string) amend { return amend{weakTee.to, "kind = \"tee\"\nrated = \"" + rated + "\""} }
	warmTee := amend{`rated = "40 bar"`, "rated = \"40 bar\"\nmaterial = \"PP\""}
	warm := amend{`pressure = "56 bar"`, "pressure = \"56 bar\"\nspace = \"40 C\""}
	house := func(valve, part string) string {
		return `
[[item]]
id = "house"
kind = "house supply"
pressure = "5 bar"
[[item]]
id = "valve"
kind = "shut-off valve"
rated = "16 bar"
` + valve + `
[[item]]
id = "part"
kind = "carbon filter"
rated = "4 bar"
` + part + `
[[item]]
id = "drain"
kind = "drain"
[[run]]
name = "line"
path = ["house", "valve", "part", "drain"]
`
	}
	for _, c := range []struct {
		why, slug, text string
		says            string
		does, short     []amend // what the remedy tells, and a figure too little
	}{
		{
			"1.1 times the set of 65 bar is 71.5, and clears the relief too", "under-rated",
			changed(t, line, weakTee), "Buy it for 71.5 bar or more.",
			[]amend{teeFor("71.5 bar")}, []amend{teeFor("71.4 bar")},
		},
		{
			"in the heat 71.5 bar is 71.5 / 0.83 = 86.14 of a data sheet", "under-rated",
			changed(t, line, weakTee, warmTee, warm), "Buy it for 71.5 bar or more at 40 C (that is 86.2 bar or more on the data sheet).",
			[]amend{teeFor("86.2 bar")}, []amend{teeFor("86.1 bar")},
		},
		{
			"class 150: one figure", "under-rated",
			changed(t, line, amend{"kind = \"tee\"\nrated = \"200 bar\"", "kind = \"tee\"\nmaterial = \"316\"\nclass = \"class 150\""}),
			"Buy it in forged class 3000, or with a data sheet for 71.5 bar or more.",
			[]amend{{`class = "class 150"`, `rated = "71.5 bar"`}}, []amend{{`class = "class 150"`, `rated = "71.4 bar"`}},
		},
		{
			"class 150: the class", "under-rated",
			changed(t, line, amend{"kind = \"tee\"\nrated = \"200 bar\"", "kind = \"tee\"\nmaterial = \"316\"\nclass = \"class 150\""}),
			"Buy it in forged class 3000",
			[]amend{{`"class 150"`, `"class 3000"`}}, nil,
		},
		{
			"what is left open: a part for it", "under-rated", house(`normal = "shut"`, ""),
			"Buy it for 5 bar or more, or see that valve cannot be left open, or give the line its own relief, set to 3.6 bar or less",
			[]amend{{`"4 bar"`, `"5 bar"`}}, []amend{{`"4 bar"`, `"4.9 bar"`}},
		},
		{
			"warm in normal running", "under-rated", "[duty]\npressure = \"56 bar\"\nspace = \"40 C\"\n" + house("", `material = "PP"`),
			"Buy it for 5 bar or more at 40 C (that is 6.03 bar or more on the data sheet).",
			[]amend{{`"4 bar"`, `"6.03 bar"`}}, []amend{{`"4 bar"`, `"6.02 bar"`}},
		},
		{
			"a relief above its part, set down: 80 / 1.1 = 72.7", "relief-set-high",
			changed(t, line, amend{`set = "65 bar"`, `set = "90 bar"`}, amend{"kind = \"tee\"\nrated = \"200 bar\"", "kind = \"tee\"\nrated = \"80 bar\""}),
			"Set it to 72 bar or less (a tenth below tee), or buy tee for 99 bar or more.",
			[]amend{{`set = "90 bar"`, `set = "72 bar"`}}, []amend{{`set = "90 bar"`, `set = "73 bar"`}},
		},
		{
			"or the part bought", "relief-set-high",
			changed(t, line, amend{`set = "65 bar"`, `set = "90 bar"`}, amend{"kind = \"tee\"\nrated = \"200 bar\"", "kind = \"tee\"\nrated = \"80 bar\""}),
			"or buy tee for 99 bar or more.",
			[]amend{{`rated = "80 bar"`, `rated = "99 bar"`}}, []amend{{`rated = "80 bar"`, `rated = "98.9 bar"`}},
		},
		{
			"a part that no setting guards, and another that the relief must heed: 77 / 1.1", "relief-set-high",
			changed(t, line, amend{`set = "65 bar"`, `set = "90 bar"`}, amend{"kind = \"tee\"\nrated = \"200 bar\"", "kind = \"tee\"\nrated = \"57 bar\""},
				amend{"kind = \"cross\"\nrated = \"300 bar\"", "kind = \"cross\"\nrated = \"77 bar\""}),
			"Buy tee for 77 bar or more, and set the relief to 70 bar or less (a tenth below dial-tee).",
			[]amend{{`rated = "57 bar"`, `rated = "77 bar"`}, {`set = "90 bar"`, `set = "70 bar"`}}, []amend{{`rated = "57 bar"`, `rated = "76.9 bar"`}, {`set = "90 bar"`, `set = "70 bar"`}},
		},
		{
			"there is room for a setting only with its decimal: 67.8 / 1.1, and 56 x 1.1 = 61.6", "relief-set-high",
			changed(t, line, amend{"kind = \"tee\"\nrated = \"200 bar\"", "kind = \"tee\"\nrated = \"67.8 bar\""}),
			"", nil, nil, // full flow overloads the tee: found as that
		},
		{
			"which says the decimal", "under-rated",
			changed(t, line, amend{"kind = \"tee\"\nrated = \"200 bar\"", "kind = \"tee\"\nrated = \"67.8 bar\""}),
			"or set relief to 61.6 bar or less (a tenth below tee).",
			[]amend{{`set = "65 bar"`, `set = "61.6 bar"`}}, []amend{{`set = "65 bar"`, `set = "61.7 bar"`}},
		},
		{
			"a spare port is plugged", "port-open",
			changed(t, line, amend{`"hose", "throttle"]`, `"hose", "vessel.feed"]`}, amend{`path = ["throttle", "discharge"]`, `path = ["vessel.brine", "throttle", "discharge"]`},
				amend{"[[run]]\nname = \"suction\"", "[[item]]\nid = \"vessel\"\nkind = \"pressure vessel\"\nrated = \"200 bar\"\nports = { feed = '3/8 NPT female', brine = '3/8 NPT male', product = '1/4 NPT female', spare = '1/4 NPT female' }\n[[item]]\nid = \"tank\"\nkind = \"tank\"\n[[run]]\nname = \"product\"\npath = [\"vessel.product\", \"tank\"]\n[[run]]\nname = \"suction\""}),
			"Put a plug or cap on it.",
			[]amend{{"[[run]]\nname = \"suction\"", "[[run]]\nname = \"spare\"\npath = [\"vessel.spare\", \"plug/spare\"]\n[[run]]\nname = \"suction\""}}, nil,
		},
	} {
		t.Run(c.why, func(t *testing.T) {
			list := found(t, c.text)[c.slug]
			if c.says == "" {
				require.Empty(t, list)
				return
			}
			require.Len(t, list, 1)
			require.Contains(t, list[0].Remedy, c.says)
			clears(t, changed(t, c.text, c.does...), "under-rated", "relief-set-high", "relief-set-low", "rated-above-standard", "rating-unknown", "port-open")
			if c.short != nil {
				got := found(t, changed(t, c.text, c.short...))
				require.NotEmpty(t, append(got["under-rated"], got["relief-set-high"]...), "less would not do")
			}
		})
	}
}

// A weak part is one cause: the relief is not blamed for it, and is blamed for others.
func TestWeakPartAndRelief(t *testing.T) {
	weak := amend{"kind = \"tee\"\nrated = \"200 bar\"", "kind = \"tee\"\nrated = \"40 bar\""}
	got := found(t, changed(t, line, weak))
	require.Len(t, got["under-rated"], 1)
	require.Empty(t, got["relief-set-high"])

	got = found(t, changed(t, line, weak, amend{`set = "65 bar"`, `set = "120 bar"`}))
	require.Len(t, got["under-rated"], 1)
	require.Len(t, got["relief-set-high"], 1)
	require.Contains(t, got["relief-set-high"][0].Reason, "pump in its line holds 100 bar")
}

// lowRelief is a brine line of its own relief of 6 bar, behind a valve that may be shut.
const lowRelief = `[[item]]
id = "brine-tee"
kind = "tee"
rated = "5 bar"
[[item]]
id = "brine-relief"
kind = "relief valve"
set = "6 bar"
flow = "10 L/min"
rated = "16 bar"
[[item]]
id = "cock"
kind = "shut-off valve"
rated = "16 bar"
[[run]]
name = "brine relief"
path = ["brine-tee.branch", "brine-relief", "relief-out/brine"]
[[run]]
name = "suction"`

// A relief that does not stand on the duty's line is set by its own parts, and not by the
// duty: 5 / 1.1 = 4.54. One whose rise is said stays below them by that: 5 / (7 / 6) = 4.28.
func TestReliefOfALowLine(t *testing.T) {
	low := changed(t, line, amend{"[[run]]\nname = \"suction\"", lowRelief}, amend{`"throttle", "discharge"`, `"throttle", "brine-tee", "cock", "discharge"`})
	list := found(t, low)["relief-set-high"]
	require.Len(t, list, 1)
	require.Equal(t, "Set it to 4.5 bar or less (a tenth below brine-tee), or buy brine-tee for 6.6 bar or more.", list[0].Remedy)
	clears(t, changed(t, low, amend{`"6 bar"`, `"4.5 bar"`}), "relief-set-high", "under-rated", "relief-set-low")
	clears(t, changed(t, low, amend{`"5 bar"`, `"6.6 bar"`}), "relief-set-high", "under-rated", "relief-set-low")

	rises := changed(t, low, amend{`set = "6 bar"`, "set = \"6 bar\"\nfull_flow = \"7 bar\""})
	list = found(t, rises)["relief-set-high"]
	require.Len(t, list, 1)
	require.Contains(t, list[0].Remedy, "Set it to 4.2 bar or less (so that it stays below brine-tee")
	clears(t, changed(t, rises, amend{`"6 bar"`, `"4.2 bar"`}, amend{`"7 bar"`, `"4.9 bar"`}), "relief-set-high", "under-rated")
}

// One gauge is one thing to buy: the finding that says it holds too little says its dial.
func TestWeakGaugeIsOneFinding(t *testing.T) {
	weak := changed(t, line, amend{"rated = \"300 bar\"\nscale = \"100 bar\"", "rated = \"66 bar\"\nscale = \"60 bar\""})
	got := found(t, weak)
	require.Empty(t, got["gauge-range"])
	require.Len(t, got["under-rated"], 1)
	require.Equal(t, "Buy another gauge for 71.5 bar or more; it should read to about 100 bar.", got["under-rated"][0].Remedy)
	bought := changed(t, weak, amend{`rated = "66 bar"`, `rated = "71.5 bar"`}, amend{`scale = "60 bar"`, `scale = "100 bar"`})
	for _, slug := range []string{"under-rated", "gauge-range", "relief-set-high"} {
		require.Empty(t, found(t, bought)[slug], slug)
	}
}

// A selector that is shut between its positions is replaced by one that is not; a push-in part
// is replaced by another sort, since a better data sheet leaves it at what its sort holds.
func TestSelectorShutBetween(t *testing.T) {
	const text = `
[duty]
pressure = "56 bar"
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "pump"
kind = "plunger pump"
rated = "100 bar"
stall = "40 bar"
ports = { in = '1/2 NPT female', out = '1/2 NPT female' }
[[item]]
id = "meter"
kind = "flow meter"
rated = "12 bar"
ports = { in = '1/2 NPT male', out = '1/2 NPT male' }
[[item]]
id = "selector"
kind = "selector valve"
rated = "60 bar"
ports = { common = '1/2 NPT female', a = '1/2 NPT female', b = '1/2 NPT female' }
[[item]]
id = "drain"
kind = "drain"
[[run]]
name = "line"
path = ["sea", "pump", "meter", "selector.common"]
[[run]]
name = "a"
path = ["selector.a", "drain"]
[[run]]
name = "b"
path = ["selector.b", "drain/2"]
`
	list := found(t, text)["under-rated"]
	require.Len(t, list, 1)
	require.Equal(t, "Buy it for 40 bar or more, or take a selector that is open between its positions, and write between = \"open\" on `selector`.", list[0].Remedy)
	clears(t, changed(t, text, amend{"kind = \"selector valve\"", "kind = \"selector valve\"\nbetween = \"open\""}), "under-rated")
	clears(t, changed(t, text, amend{`rated = "12 bar"`, `rated = "40 bar"`}), "under-rated")

	push := changed(t, text, amend{"ports = { in = '1/2 NPT male', out = '1/2 NPT male' }", "ports = { in = '10 mm push-in', out = '10 mm push-in' }"}, amend{`"12 bar"`, `"100 bar"`})
	list = found(t, push)["under-rated"]
	require.Len(t, list, 1)
	require.Contains(t, list[0].Remedy, "Buy it of another sort or class, for 40 bar or more, or take a selector")
}

// A surge is held by a part whose data sheet makes up for the heat: 3 bar and 1025 kg/m3 x 2 x
// 1 m x 1.061 m/s / 0.02 s, which is 1.09 bar, are 4.09 bar, and 4.92 / 0.83 bar at 40 C.
// What cannot be bought, as clamps for 24 bar, is not told.
func TestSurgeRemedyClears(t *testing.T) {
	const valve = "kind = \"solenoid valve\"\nrated = \"10 bar\""
	text := "[duty]\npressure = \"56 bar\"\nspace = \"40 C\"\n" + changed(t, valveShutsFast.Wrong,
		amend{`length = "6 m"`, `length = "1 m"`}, amend{"16 L/min", "5 L/min"}, amend{valve, "kind = \"solenoid valve\"\nmaterial = \"PP\"\nrated = \"4.6 bar\""})
	list := found(t, text)["valve-shuts-fast"]
	require.Len(t, list, 1)
	require.Equal(t, "Take wider or shorter hose, or a valve that shuts slowly (a flush timer valve, or one that is turned by hand), or buy valve for 4.09 bar or more at 40 C (that is 4.93 bar or more on the data sheet).", list[0].Remedy)
	require.Empty(t, found(t, changed(t, text, amend{`"4.6 bar"`, `"4.93 bar"`}))["valve-shuts-fast"])
	require.Empty(t, found(t, changed(t, text, amend{"solenoid valve", "flush timer valve"}))["valve-shuts-fast"])
	require.NotEmpty(t, found(t, changed(t, text, amend{`"4.6 bar"`, `"4.9 bar"`}))["valve-shuts-fast"])
	for _, rated := range []string{"1 bar", "2 bar"} { // too weak without the surge too: it is told once what holds both
		list = found(t, changed(t, text, amend{`"4.6 bar"`, `"` + rated + `"`}))["valve-shuts-fast"]
		require.Len(t, list, 1)
		require.Contains(t, list[0].Remedy, "or buy valve for 4.09 bar or more at 40 C (that is 4.93 bar or more on the data sheet)")
	}

	list = found(t, valveShutsFast.Wrong)["valve-shuts-fast"]
	require.Len(t, list, 1)
	require.NotContains(t, list[0].Remedy, "buy")
	require.NotContains(t, list[0].Remedy, "accumulator", "no kind is one")
}

// What is said to hold more than its standard is quoted as the build says it.
func TestRatedAboveStandardQuotesTheBuild(t *testing.T) {
	const text = `
[duty]
pressure = "56 bar"
space = "40 C"
[[item]]
id = "house"
kind = "house supply"
pressure = "3 bar"
[[item]]
id = "meter"
kind = "flow meter"
rated = "100 bar"
ports = { in = '10 mm push-in', out = '10 mm push-in' }
[[item]]
id = "drain"
kind = "drain"
[[run]]
name = "line"
path = ["house", "meter", "drain"]
`
	list := found(t, text)["rated-above-standard"]
	require.Len(t, list, 1)
	require.Contains(t, list[0].Reason, "`meter` is said to hold 100 bar, of which 62.5 bar is left at 40 C, and")
	list = found(t, changed(t, text, amend{"space = \"40 C\"", "space = \"20 C\""}))["rated-above-standard"]
	require.Len(t, list, 1)
	require.Contains(t, list[0].Reason, "`meter` is said to hold 100 bar, and")
}

// Hoses cut from one stock are one thing to buy; another stock is another.
func TestCollapseOnceAStock(t *testing.T) {
	text := changed(t, suction, amend{`vacuum = "0.9 bar"`, ""}, amend{`["intake", "hose", "feed"`, `["intake", "hose/a", "joiner", "hose/b", "joiner/2", "other", "feed"`},
		amend{"[[run]]", "[[item]]\nid = \"joiner\"\nkind = \"nipple\"\nports = { a = '19 mm barb', b = '19 mm barb' }\nrated = \"10 bar\"\n[[item]]\nid = \"stock-2\"\nkind = \"hose stock\"\nbore = \"19 mm\"\nrated = \"6 bar\"\n[[hose]]\nid = \"other\"\nof = \"stock-2\"\nlength = \"1 m\"\n[[run]]"})
	list := found(t, text)["hose-may-collapse"]
	require.Equal(t, []string{"caution", "caution"}, severities(list))
	require.Equal(t, "hose/a and 1 more", list[0].At())
	require.Len(t, list[0].Related, 1)
	require.Contains(t, list[0].Reason, "hose/a, hose/b see a vacuum")
	require.Contains(t, list[0].Reason, "nothing says that `stock` stands one")
	require.Equal(t, "other", list[1].At())
	told := changed(t, text, amend{"rated = \"6 bar\"", "rated = \"6 bar\"\nvacuum = \"0.85 bar\""})
	require.Empty(t, found(t, told)["hose-may-collapse"])
}

// A figure to buy for is never less than what is seen.
func TestBarsUp(t *testing.T) {
	for bar, want := range map[float64]string{
		71.5: "71.5 bar", 71.50000000001: "71.5 bar", 71.51: "71.6 bar", 68.94: "69 bar", 5: "5 bar", 6.024: "6.03 bar", 100.2: "101 bar", 275.79: "276 bar", 0: "0 bar",
	} {
		require.Equal(t, want, barsUp(quantity.Bar.Times(bar)), "%v", bar)
	}
	require.Equal(t, "for 5 bar or more", forBar(nil, []rating.Allowable{{Left: 1}, {}}, 5*quantity.Bar))
}
