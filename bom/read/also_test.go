package read_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/internal/built"
	"handtight/bom/read"
)

// remedies are the lines that say what to do, of the faults of a text.
func remedies(t *testing.T, text string) []string {
	var out []string
	for fault := range strings.SplitSeq(built.Faults(t, text, nil), "\n\n") {
		lines := strings.Split(fault, "\n")
		out = append(out, strings.TrimSpace(lines[len(lines)-1]))
	}
	return out
}

// A word of the trade is answered with the kind that it means, and never with a kind that
// only begins like it.
func TestKindsByTheTradesWords(t *testing.T) {
	for word, want := range map[string]string{
		"ball valve":         `write kind = "shut-off valve"`,
		"Ball-Valve":         `write kind = "shut-off valve"`,
		"non-return valve":   `write kind = "check valve"`,
		"one-way valve":      `write kind = "check valve"`,
		"non-return":         `write kind = "check valve"`,
		"safety valve":       `write kind = "relief valve"`,
		"high-pressure pump": `write kind = "plunger pump"`,
		"booster pump":       `write kind = "feed pump"`,
		"skin fitting":       `write kind = "through-hull"`,
		"three-way valve":    `write kind = "selector valve"`,
		"needle valve":       `write kind = "brine throttle", where it holds the pressure by hand; elsewhere "shut-off valve"`,
		"reducer":            `write kind = "adaptor", or "bush" for a reducer that sinks into a port`,
		"sea chest":          `write kind = "manifold", with a seacock before it`,
		"sea strainer":       `write kind = "strainer"`,
		"engine":             `write kind = "overboard", as the place where its share of the water goes`,
		"snubber":            `write kind = "shut-off valve"`,
		"membrane":           `write kind = "membrane element"`,
		"conductivity meter": `write kind = "salinity probe"`,
		"Elbow":              `write kind = "elbow"`,
		"elbwo":              `write kind = "elbow"`,
		"check valv":         `write kind = "check valve"`,
	} {
		t.Run(word, func(t *testing.T) {
			require.Equal(t, []string{want}, remedies(t, built.Head+built.Any+"[[item]]\nid = \"e\"\nkind = \""+word+"\"\n"))
		})
	}
	for _, word := range []string{"sea trap", "tankard", "gizmo"} {
		got := remedies(t, built.Head+built.Any+"[[item]]\nid = \"e\"\nkind = \""+word+"\"\n")
		require.Len(t, got, 1)
		require.True(t, strings.HasPrefix(got[0], "the kinds are `O-ring`, `accumulator`, `adaptor`"), "%s: %s", word, got)
		require.NotContains(t, got[0], "`hose`,", "a hose is no item")
	}
	require.Equal(t, []string{`write kind = "gauge"`}, remedies(t, built.Head+built.Any+"[[item]]\nid = \"e\"\ntitle = \"Pressure sensor G 1/4 male\"\n"))
}

// Keys and ports that other words name are answered with ours.
func TestKeysAndPortsByOtherWords(t *testing.T) {
	for _, c := range []struct {
		name, after string
		want        []string
	}{
		{"inlet and outlet", "kind = \"strainer\"\nports = { inlet = '1/2 NPT female', outlet = '1/2 NPT female' }\n", []string{"write `in`", "write `out`"}},
		{"a and b of a valve", "kind = \"shut-off valve\"\nports = { a = '1/2 NPT female', b = '1/2 NPT female' }\n",
			[]string{"the ports of a shut-off valve are `in` and `out`", "the ports of a shut-off valve are `in` and `out`"}},
		{"a port given by both names", "kind = \"strainer\"\nports = { in = '1/2 NPT female', inlet = '1/2 NPT female' }\n", []string{"the ports of a strainer are `in` and `out`"}},
		{"inlet of a selector", "kind = \"selector valve\"\nports = { inlet = '1/2 NPT female' }\n", []string{"write `common`"}},
		{"a port misspelt", "kind = \"tee\"\nports = { brnach = '1/2 NPT female' }\n", []string{"write `branch`"}},
		{"a gauge has one port", "kind = \"gauge\"\nports = { out = '1/4 NPT male' }\n", []string{"the one port of a gauge is `in`"}},
		{"pressure of a feed pump", "kind = \"feed pump\"\npressure = \"2 bar\"\n", []string{"write `shutoff`, the pressure that it makes with its outlet shut"}},
		{"size of hose stock", "kind = \"hose stock\"\nsize = \"19 mm\"\n", []string{"write `bore`"}},
		{"how many", "kind = \"elbow\"\nquantity = 3\n", []string{"take it out: what is bought is counted from the runs; what is aboard is `have`, and what you want besides is `extra`"}},
		{"a key misspelt", "kind = \"elbow\"\nmaterail = \"316\"\n", []string{"write `material`"}},
		{"a vacuum without a figure", "kind = \"hose stock\"\nbore = \"19 mm\"\nvacuum = \"full\"\n", []string{`write "1 bar" (29.5 inHg) if its data sheet says full vacuum: no pump can pull more`}},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, c.want, remedies(t, built.Head+built.Any+"[[item]]\nid = \"e\"\n"+c.after))
		})
	}
	require.Equal(t, []string{"write `bore`"}, remedies(t, built.Head+built.Any+"[[hose]]\nid = \"e\"\nspec = \"SAE 100R8\"\nlength = \"1 m\"\nends = ['3/8 NPT male', '3/8 NPT male']\nsize = '3/8\"'\n"))
}

func TestSupplyThatIsNoVoltage(t *testing.T) {
	for text, want := range map[string]string{
		"engine": "leave `supply` out where an engine drives the pump, and write it as the pump's motor: motor = \"engine\"",
		"mains":  `write its volts, like "230 V"`,
	} {
		require.Equal(t, []string{want}, remedies(t, built.Head+"[duty]\nsupply = \""+text+"\"\n"+built.Any), text)
	}
	require.Contains(t, built.Faults(t, built.Head+"[duty]\nsupply = \"lots\"\n"+built.Any, nil), "has no number")
}

// Suction hose is sold by inches of mercury.
func TestVacuumInInchesOfMercury(t *testing.T) {
	b, faults := read.Parse("boat.toml", []byte(built.Head+built.Any+"[[item]]\nid = \"e\"\nkind = \"hose stock\"\nbore = \"19 mm\"\nvacuum = \"27 inHg\"\n"))
	require.Empty(t, faults)
	it, ok := b.Item("e")
	require.True(t, ok)
	require.InDelta(t, 27*0.03386389, it.Vacuum.Bar(), 1e-9)
}
