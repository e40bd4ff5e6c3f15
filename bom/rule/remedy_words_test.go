package rule

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/read"
)

// Remedies that could not be followed as they were worded, each with what it must say now.
func TestRemediesSayWhatCanBeDone(t *testing.T) {
	clean := sandpiper(t)
	remedies := func(text, slug string) (out []string) {
		list, err := seen(text)
		require.NoError(t, err)
		for _, f := range list {
			if f.Slug == slug {
				out = append(out, f.Remedy)
			}
		}
		require.NotEmpty(t, out, slug)
		return out
	}

	// Nothing is put between a skin fitting and its seacock.
	skin := changed(t, clean, amend{`path = ["intake", "raw-1"`, `path = ["skin", "cock", "tail", "raw-1"`},
		more(part("skin", "through-hull", `material = "bronze"`, `rated = "16 bar"`, "ports = { inboard = 'G 3/4 male' }")+
			part("cock", "shut-off valve", `material = "bronze"`, `rated = "16 bar"`, "ports = { in = '3/4 NPT female', out = '3/4 NPT female' }")+
			part("tail", "hose tail", `material = "bronze"`, `rated = "16 bar"`, "ports = { a = '3/4 NPT male', b = '19 mm barb long' }")))
	for _, slug := range []string{"flank-angles-differ", "pitches-differ", "parallel-in-taper", "thread-does-not-start"} {
		list, err := seen(skin)
		require.NoError(t, err)
		for _, f := range list {
			if f.Slug == slug {
				require.NotContains(t, f.Remedy, "adaptor", slug)
			}
		}
	}

	// A nipple is rated by its data sheet or its class: a hose's standard and its bore say nothing of it.
	tee := "material = \"316\"\nclass    = \"class 3000\""
	for _, key := range []string{"", "spec = \"SAE 100R8\"", "bore = \"10 mm\"", "wall = \"2 mm\"", "spec = \"SAE 100R8\"\nbore = \"10 mm\"\nwall = \"2 mm\""} {
		for _, remedy := range remedies(changed(t, clean, amend{tee, "material = \"316\"\n" + key}), "rating-unknown") {
			require.Contains(t, remedy, "`rated`", key)
			require.NotContains(t, remedy, "spec", key)
			require.NotContains(t, remedy, "bore", key)
			require.NotContains(t, remedy, "wall", key)
		}
	}

	// The ends of a made-up hose are written as `ends`; it has no `ports`.
	hose := changed(t, clean, amend{`ends     = ['3/8 NPT male', '9/16-18 JIC female swivel']`, `ends     = ['7/8 NPT male', '9/16-18 JIC female swivel']`})
	for _, remedy := range remedies(hose, "end-not-said") {
		require.Contains(t, remedy, "write ends = [")
		require.Contains(t, remedy, "`hp-hose-feed`")
	}
	require.NotContains(t, slugsOf(t, changed(t, hose, amend{`'7/8 NPT male'`, `'3/8 NPT male'`})), "end-not-said")

	// An end whose words give no size is named, and its cure says where the size is written.
	sizeless := changed(t, hose, amend{`ends     = ['7/8 NPT male', '9/16-18 JIC female swivel']`, `ends     = ['hose', '9/16-18 JIC female swivel']`})
	list, err := seen(sizeless)
	require.NoError(t, err)
	for _, f := range list {
		if f.Slug == "end-not-said" && strings.Contains(f.At(), "hp-hose-feed") {
			require.Contains(t, f.Reason, `the words "hose" give the end of hp-hose-feed`)
			require.Contains(t, f.Remedy, "write ends = [")
			require.Contains(t, f.Remedy, "`hp-hose-feed`")
		}
	}
	require.Contains(t, slugsOf(t, sizeless), "end-not-said")

	// Below its table a hose is kept warm, and not moved to where it is cooler. Where the water nearly
	// freezes, that is the finding: the rule is asked by itself.
	cold := changed(t, clean, amend{`water    = "17 C"`, `water    = "-1.8 C"`})
	build, faults := read.Parse("build.toml", []byte(cold))
	require.NoError(t, faults.Err())
	sys, faults := bom.Walk(build)
	require.NoError(t, faults.Err())
	outside := partTooWarm.check(sys)
	require.NotEmpty(t, outside)
	for _, f := range outside {
		require.Contains(t, f.Remedy, "0 C or warmer")
		require.NotContains(t, f.Remedy, "cooler")
	}
	require.NotContains(t, slugsOf(t, changed(t, cold, amend{`"-1.8 C"`, `"0 C"`})), "part-too-warm")

	// A part of one port in a run: a tee in its place, and a run of its own for it.
	_, err = seen(changed(t, clean, amend{`"feed-1", "gauge-tee", "feed-2"`, `"feed-1", "lp-gauge", "feed-2"`}, amend{"[[run]]\nname = \"feed gauge\"\npath = [\"gauge-tee.branch\", \"lp-gauge\"]", ""}))
	require.ErrorContains(t, err, `path = ["tee.branch", "lp-gauge"]`)
}

// slugsOf lists the rules that find something in a build.
func slugsOf(t *testing.T, text string) []string {
	t.Helper()
	list, err := seen(text)
	require.NoError(t, err)
	var out []string
	for _, f := range list {
		out = append(out, f.Slug)
	}
	return out
}
