package main

import (
	"bytes"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/facts"
	"handtight/bom/read"
)

// The parts read on a narrow terminal too: nothing is wider than it, and each cause is
// said in words where the wide table gives its number.
func TestPartsOnANarrowTerminal(t *testing.T) {
	sys, err := new(app).load(carelessBuild)
	require.NoError(t, err)
	for _, width := range []int{leastWidth, 60, plainWidth, widestLines} {
		var out bytes.Buffer
		a := &app{ui: &ui{out: &out, width: width}}
		a.printParts(facts.Of(sys, nil))
		for _, line := range strings.Split(out.String(), "\n") {
			require.LessOrEqual(t, utf8.RuneCountInString(line), width, line)
		}
		flat := strings.Join(strings.Fields(out.String()), " ")
		require.Contains(t, flat, "no bound, over what it holds")
		if width < plainWidth {
			require.Contains(t, flat, "H hp-tee 58 bar, worst pressure without bound, with throttle (brine throttle) left shut "+
				"holds 20.7 bar (fitting class), margin none")
			require.Contains(t, flat, "vacuum, with ball-valve (shut-off valve) left shut holds 6.6 bar (data sheet, warm), margin 3.6")
			require.Contains(t, flat, "H orb-n12 58 bar, worst pressure without bound, with throttle (brine throttle) left shut what it holds is not known")
			require.NotContains(t, flat, "by = what", "there is no list to look a number up in")
			continue
		}
		require.Contains(t, flat, "H hp-tee 58 no bound 1 20.7 none fitting class")
		require.Contains(t, flat, "H orb-n12 58 no bound 1 ? not known")
		require.Contains(t, flat, "1. throttle (brine throttle) left shut")
	}
}

// A build without parts of one's own says so, in place of an empty table.
func TestNoParts(t *testing.T) {
	build, faults := read.Parse("none.toml", []byte(`
[build]
name = "none"
currency = "EUR"
[[item]]
id = "house"
kind = "house supply"
pressure = "3 bar"
[[item]]
id = "sink"
kind = "drain"
[[run]]
name = "tap"
path = ["house", "sink"]
`))
	require.NoError(t, faults.Err())
	sys, faults := bom.Walk(build)
	require.NoError(t, faults.Err())
	var out bytes.Buffer
	a := &app{ui: &ui{out: &out, width: plainWidth}}
	a.printParts(facts.Of(sys, nil))
	require.Equal(t, "No part is placed but what the boat has.\n\n", out.String())
}

// The parts are always there, in the order in which they are placed; what is not known is
// null, and what has no bound says so.
func TestPartFacts(t *testing.T) {
	for build, status := range map[string]int{cleanBuild: exitClear, carelessBuild: exitStops} {
		v := jsonOf(t, status, "", "check", build)
		parts := each(t, "parts", v["parts"], "unit:string item:string kind:string port:string segment:string normal_bar:number worst_bar:number? "+
			"unbounded:bool worst_cause:string lowest_bar:number lowest_cause:string rating_bar:number? rating_basis:string rating_status:string derated:bool "+
			"estimate:bool margin:number? high_pressure:bool")
		worst := map[string]any{}
		for _, x := range v["segments"].([]any) {
			g := x.(map[string]any)
			worst[g["name"].(string)] = g["worst_bar"]
		}
		for _, x := range parts {
			p := x.(map[string]any)
			require.Equal(t, p["unbounded"] == true, p["worst_bar"] == nil, "%v", p)
			require.Equal(t, p["rating_bar"] == nil, p["rating_basis"] == "", "%v", p)
			require.Equal(t, p["rating_bar"] == nil, p["rating_status"] == "", "%v", p)
			require.Equal(t, p["lowest_bar"] == 0.0, p["lowest_cause"] == "", "%v", p)
			require.True(t, strings.HasPrefix(p["port"].(string), p["unit"].(string)+"."), "%v", p)
			require.Contains(t, worst, p["segment"], "%v", p)
			if p["margin"] != nil {
				require.InDelta(t, p["rating_bar"].(float64)-p["worst_bar"].(float64), p["margin"], 1e-5, "%v", p)
			}
			if most := worst[p["segment"].(string)]; most != nil {
				require.LessOrEqual(t, p["worst_bar"], most, "%v", p)
			}
		}
	}
	parts := jsonOf(t, exitStops, "", "check", carelessBuild, "--parts")["parts"].([]any)
	first := parts[0].(map[string]any)
	require.Equal(t, "thru-hull", first["unit"], "the build's order, whatever the table's is")
	for _, x := range parts {
		if p := x.(map[string]any); p["unit"] == "hp-tee" {
			require.Equal(t, map[string]any{
				"unit": "hp-tee", "item": "hp-tee", "kind": "tee", "port": "hp-tee.a", "segment": "high pressure: hp-pump to vessel",
				"normal_bar": 58.0, "worst_bar": nil, "unbounded": true, "worst_cause": "throttle (brine throttle) left shut",
				"lowest_bar": 0.0, "lowest_cause": "", "rating_bar": p["rating_bar"], "rating_basis": "fitting class", "rating_status": "seen",
				"derated": false, "estimate": false, "margin": nil, "high_pressure": true, "over": true, "rating_text": p["rating_text"],
			}, p)
			require.InDelta(t, 20.7, p["rating_bar"], 0.05, "300 psi, class 150 of ASME B16.3")
		}
	}
}
