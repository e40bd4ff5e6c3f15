package rule

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Where no water reaches a pump, and where it is only not said to: by eye.
func TestPumpGetsNoWater(t *testing.T) {
	right := pumpGetsNoWater.Example(pumpGetsNoWater.Right())
	for _, c := range []struct {
		why   string
		swaps []amend
		want  []string
	}{
		{"the arrow points to the pump", nil, nil},
		{"a valve that is written as shut", []amend{{"id = \"raw-check\"\nkind = \"check valve\"", "id = \"raw-check\"\nkind = \"shut-off valve\"\nnormal = \"shut\""}}, []string{"stop"}},
		{"the same, open", []amend{{"id = \"raw-check\"\nkind = \"check valve\"", "id = \"raw-check\"\nkind = \"shut-off valve\""}}, nil},
		{"a feed pump turned about", []amend{{`"feed", "raw-check", "tee", "pump"`, `"feed.out>in", "raw-check", "tee", "pump"`}}, []string{"stop"}},
		{"no sea in the list: an open port, and nothing more", []amend{{`"intake", "hose/+",`, `"hose/+",`}}, nil},
	} {
		t.Run(c.why, func(t *testing.T) {
			require.Equal(t, c.want, severities(found(t, changed(t, right, c.swaps...))["pump-gets-no-water"]))
		})
	}
}

// A flush line that has a valve, and one that runs all the time.
func TestHouseWaterRuns(t *testing.T) {
	require.Empty(t, cleanWith(t)["house-water-runs"])
	require.Equal(t, []string{"caution"}, severities(cleanWith(t, amend{`"tail-n12-13", "flush-valve",`, `"tail-n12-13",`})["house-water-runs"]))
	require.Equal(t, []string{"caution"}, severities(cleanWith(t, amend{"kind     = \"solenoid valve\"", "kind     = \"solenoid valve\"\nnormal   = \"open\""})["house-water-runs"]))
}

// The flush of the clean build reaches its membrane; with the check valve turned about it
// reaches nothing, and the sea reaches the house.
func TestFlushMissesMembrane(t *testing.T) {
	require.Empty(t, cleanWith(t)["flush-misses-membrane"])
	got := cleanWith(t, amend{`"flush-check", "flush-tee.branch"]`, `"flush-check.out>in", "flush-tee.branch"]`})
	require.Equal(t, []string{"caution"}, severities(got["flush-misses-membrane"]))
	require.Equal(t, []string{"caution"}, severities(got["sea-reaches-house"]))
}

// A bypass round the carbon filter lets chlorine by when somebody leaves it open.
func TestChlorineBypass(t *testing.T) {
	bypass := "[[item]]\nid = \"bypass-tee\"\nkind = \"tee\"\nmaterial = \"bronze\"\nrated = \"16 bar\"\nports = { a = '13 mm barb', b = '13 mm barb', branch = '13 mm barb' }\n" +
		"[[item]]\nid = \"bypass\"\nkind = \"shut-off valve\"\nmaterial = \"bronze\"\nrated = \"16 bar\"\nnormal = \"shut\"\nports = { in = '13 mm barb', out = '13 mm barb' }\n" +
		"[[hose]]\nid = \"by\"\nof = \"discharge-hose\"\nlength = \"0.3 m\"\n"
	run := "[[run]]\nname = \"bypass\"\npath = [\"bypass-tee/1.branch\", \"by/1\", \"bypass\", \"by/2\", \"bypass-tee/2.branch\"]\n"
	text := []amend{
		{"# --- Fresh-water flush", bypass + run + "# --- Fresh-water flush"},
		{`"tail-g12", "flush-1", "tail-p12/+", "carbon", "tail-p12/+", "flush-2", "tail-n12-13"`, `"tail-g12", "flush-1", "bypass-tee/1", "by/3", "tail-p12/+", "carbon", "tail-p12/+", "by/4", "bypass-tee/2", "flush-2", "tail-n12-13"`},
	}
	require.Equal(t, []string{"caution"}, severities(cleanWith(t, text...)["chlorine-on-membrane"]))
}

// A relief led back to the pump's inlet, as its remedy says, is not cut off: in the flush
// the pump stands still and the relief has nothing to do.
func TestReliefLedBackIsNotCutOff(t *testing.T) {
	back := amend{`"tail-n38/+", "relief-hose", "relief-outlet"]`, `"tail-n38/+", "relief-hose", "back-tee.branch"]`}
	items := amend{"# --- Fresh-water flush", "[[item]]\nid = \"back-tee\"\nkind = \"tee\"\nmaterial = \"bronze\"\nrated = \"16 bar\"\nports = { a = '19 mm barb', b = '19 mm barb', branch = '13 mm barb' }\n# --- Fresh-water flush"}
	got := cleanWith(t, items, back, amend{`"feed-3", "tail-n12"`, `"feed-3/a", "back-tee", "feed-3/b", "tail-n12"`})
	require.Empty(t, got["relief-cut-off"])
	require.Equal(t, []string{"note"}, severities(got["relief-discharge"]), "it is led right, and heats")
}

// What can be shut between a pump and its relief is named.
func TestReliefCutOffNamesTheValve(t *testing.T) {
	list := found(t, reliefCutOff.Example(reliefCutOff.Wrong))["relief-cut-off"]
	require.Len(t, list, 1)
	require.Contains(t, list[0].Reason, "valve can be shut, and stands between pump and relief")
}

// A relief within a tenth of the weakest part is a caution: settings drift. The vessel of
// the clean build holds 83 bar: 75.4 over 1.1.
func TestReliefMargin(t *testing.T) {
	for set, want := range map[string][]string{"75 bar": nil, "76 bar": {"caution"}, "82 bar": {"caution"}, "84 bar": {"stop"}} {
		got := cleanWith(t, amend{`set      = "65 bar"`, `set = "` + set + `"`}, amend{`full_flow = "70 bar"`, `full_flow = "` + set + `"`})
		require.Equal(t, want, severities(got["relief-set-high"]), set)
	}
}

// The trap of class 150 is named for a class only, and not for a figure of 150.
func TestClass150IsNotAFigure(t *testing.T) {
	got := cleanWith(t, amend{`spec     = "SAE 100R8"`, `spec = "SAE 100R6"`})["under-rated"]
	for _, f := range got {
		require.NotContains(t, f.Reason, "Class 150", f.At())
	}
}
