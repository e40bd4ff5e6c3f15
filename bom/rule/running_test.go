package rule

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// flushedWith gives the slugs' severities of the plant with a flush after some changes.
func flushedWith(t *testing.T, slug string, swaps ...amend) []string {
	t.Helper()
	whole := Rule{block: "none, the plant as it is", plant: "flushed"}.Example("")
	return severities(check(t, changed(t, whole, swaps...))[slug])
}

// The relief stands open where the way to the throttle is shut in normal running; set below
// the duty it is another fault, and where the throttle stands open it is none.
func TestReliefStandsOpen(t *testing.T) {
	shut := amend{"id = \"throttle\"\nkind = \"brine throttle\"", "id = \"throttle\"\nkind = \"shut-off valve\"\nnormal = \"shut\""}
	require.Empty(t, flushedWith(t, "relief-stands-open"))
	require.Equal(t, []string{"stop"}, flushedWith(t, "relief-stands-open", shut))
	require.Empty(t, flushedWith(t, "membrane-without-pressure", shut), "that is the one cause")
	require.Empty(t, flushedWith(t, "relief-stands-open", amend{`set = "65 bar"`, `set = "40 bar"`}))
	require.Empty(t, flushedWith(t, "membrane-without-pressure", amend{`set = "65 bar"`, `set = "40 bar"`}))
}

// The membrane comes to the duty where the throttle stands behind it.
func TestMembraneWithoutPressure(t *testing.T) {
	const slug = "membrane-without-pressure"
	require.Empty(t, flushedWith(t, slug))
	require.Equal(t, []string{"stop"}, flushedWith(t, slug, amend{`"vessel.brine", "throttle", "discharge"`, `"vessel.brine", "discharge"`}), "no throttle")
	require.Equal(t, []string{"stop"}, flushedWith(t, slug, amend{`"vessel.brine", "throttle", "discharge"`, `"vessel.brine", "discharge"`},
		amend{`"hp-hose", "vessel.feed"`, `"hp-hose", "throttle", "vessel.feed"`}), "the throttle before the vessel")
	require.Equal(t, []string{"stop"}, flushedWith(t, slug, amend{"flow = \"9 L/min\"", "flow = \"9 L/min\"\nstall = \"30 bar\""}), "a pump that stalls before")
}

// A relief valve that stands backwards is one fault: it is turned about.
func TestReliefTurnedAbout(t *testing.T) {
	whole := Rule{block: "none, the plant as it is", plant: "flushed"}.Example("")
	list := check(t, changed(t, whole, amend{`"hp-tee.branch", "relief", "relief-out"`, `"hp-tee.branch", "relief.out>in", "relief-out"`}))["relief-missing"]
	require.Len(t, list, 1)
	require.Contains(t, list[0].Reason, "relief stands the wrong way round")
	require.Contains(t, list[0].Remedy, "Turn relief about")
}

// A seacock that is screwed onto a skin fitting turns until its outlet is made; one that is
// the skin fitting itself does not.
func TestSeacockOnASkinFitting(t *testing.T) {
	const text = `
[[item]]
id = "skin"
kind = "through-hull"
material = "bronze"
rated = "16 bar"
ports = { inboard = 'G 3/4 male' }
[[item]]
id = "cock"
kind = "seacock"
material = "bronze"
rated = "16 bar"
ports = { sea = 'G 3/4 female', inboard = 'G 3/4 female' }
[[item]]
id = "tail"
kind = "hose tail"
material = "bronze"
rated = "16 bar"
ports = { a = 'G 3/4 male', b = '19 mm barb long' }
[[run]]
name = "intake"
path = ["skin", "cock.sea>inboard", "tail"]
`
	require.Empty(t, found(t, text)["nothing-turns"])
	const rigid = "[[item]]\nid = \"pump\"\nkind = \"feed pump\"\nports = { in = 'G 3/4 male', out = 'G 3/4 male' }\n[[run]]"
	require.Equal(t, []string{"stop"}, severities(found(t, changed(t, text, amend{"[[run]]", rigid}, amend{`"cock.sea>inboard", "tail"`, `"cock.sea>inboard", "pump"`}))["nothing-turns"]))
}
