package read

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/build"
	"handtight/catalog"
)

// example values of the keys that the table names.
var carriedValues = map[string]string{
	"rated": `"10 bar"`, "class": `"class 150"`, "spec": `"SAE 100R1"`, "bore": `"13 mm"`, "outside": `"10 mm"`, "wall": `"2 mm"`, "vacuum": `"0.9 bar"`, "inside": `"x"`, "each": "2",
	"life": `"100 h"`, "fails": `"100 h"`, "have": "1", "extra": "1", "kv": `"2 m3/h"`, "about": `"words"`, "title": `"words"`, "material": `"316"`, "bend": `"90 deg"`, "bend_radius": `"90 mm"`,
	"plunger_bore": `"12 mm"`, "stroke": `"12 mm"`, "plungers": "3", "flow": `"7 L/min"`, "stall": `"90 bar"`, "ratio": `"10 %"`, "tolerance": `"10 %"`, "product": `"700 gpd"`, "rejection": `"99.4 %"`,
	"rejection_min": `"99.2 %"`, "scale": `"1000 mg/L"`,
}

// Every row of the table of carried keys speaks where the key is not used, and is silent where it is.
func TestCarriedRows(t *testing.T) {
	carried := func(kind string, keys ...string) []build.Carried {
		text := fmt.Sprintf("[build]\nname = \"x\"\ncurrency = \"EUR\"\n[duty]\npressure = \"50 bar\"\n[[item]]\nid = \"x\"\nkind = %q\n", kind)
		if kind == "hose" {
			text = "[build]\nname = \"x\"\ncurrency = \"EUR\"\n[[hose]]\nid = \"x\"\nlength = \"1 m\"\nends = ['1/2 NPT male', '1/2 NPT male']\n"
		}
		for _, key := range keys {
			if key == "" {
				continue
			}
			text += key + " = " + carriedValues[key] + "\n"
		}
		text += "[[item]]\nid = \"y\"\nkind = \"drain\"\n[[run]]\nname = \"r\"\npath = [\"y\", \"y\"]\n"
		b, faults := Parse("build.toml", []byte(text))
		require.NoError(t, faults.Err(), text)
		return b.ByID["x"].Carried
	}
	spoken := 0
	for _, row := range carriedRows() {
		for _, name := range catalog.KindNames() {
			k, _ := catalog.KindNamed(name)
			if !row.speaksOf(k) || name == "passage" || name == "hose" && slices.Contains(row.kinds, "@all") {
				continue
			}
			for _, key := range row.keys {
				if strings.HasPrefix(row.usedWhere, "@") || name == "hose stock" && (key == "have" || key == "extra") {
					continue // tried below; metres
				}
				sort, other, _ := strings.Cut(row.usedWhere, ":")
				has := func(list []build.Carried) bool {
					return slices.ContainsFunc(list, func(c build.Carried) bool { return c.Key == key && c.Why != "" && c.Value != "" })
				}
				alone, both := carried(name, key), carried(name, key, other)
				switch sort {
				case "stated":
					require.True(t, has(alone), "%s.%s", name, key)
					require.False(t, row.note && !k.Boats && name != "hose stock" && has(both), "%s.%s with %s", name, key, other)
				case "absent":
					require.False(t, has(alone), "%s.%s", name, key)
					require.True(t, has(both), "%s.%s with %s", name, key, other)
				default:
					require.True(t, has(alone), "%s.%s", name, key)
				}
				spoken++
			}
		}
	}
	require.Greater(t, spoken, 150)
	require.Empty(t, carried("nipple", "wall"), "the wall of what nothing rates is used")
	require.Len(t, carried("nipple", "wall", "rated"), 1)
	require.Len(t, carried("nipple", "vacuum"), 1)
	require.Empty(t, carried("hose stock", "vacuum"))
	require.Len(t, carried("nipple", "outside"), 1)
	require.Empty(t, carried("nipple", "outside", "wall"))
	require.Len(t, carried("hose", "outside"), 1, "it has ends")
	require.Len(t, carried("hose", "bend"), 1, "no radius")
	require.Empty(t, carried("hose", "bend", "spec"), "its standard has one")
}

// A figure in a description is named, unless a key says the same.
func TestFiguresInADescription(t *testing.T) {
	for _, c := range []struct {
		about, key string
		want       int
	}{
		{"forged, class 3000", "", 1}, {"forged, class 3000", `class = "class 3000"`, 0}, {"forged, class 3000", `class = "class 150"`, 1}, {"stamped 20 bar", "", 1},
		{"stamped 20 bar", `rated = "20 bar"`, 0}, {"stamped 290 psi", `rated = "20 bar"`, 0}, {"10 inch housing, 25 micron", "", 0}, {"reads to 100 bar full scale", "", 0}, {"tested to 90 bar", "", 1},
	} {
		b, faults := Parse("build.toml", []byte("[build]\nname = \"x\"\ncurrency = \"EUR\"\n[[item]]\nid = \"x\"\nkind = \"tee\"\nabout = \""+c.about+"\"\n"+c.key+"\n[[item]]\nid = \"y\"\nkind = \"drain\"\n[[run]]\nname = \"r\"\npath = [\"x\", \"y\"]\n"))
		require.NoError(t, faults.Err())
		require.Len(t, b.ByID["x"].NotUsed, c.want, "%s %s: %v", c.about, c.key, b.ByID["x"].NotUsed)
	}
}

// A title and a key of two materials are a fault that names both; a wider word is none.
func TestTitleAndMaterialKey(t *testing.T) {
	for _, c := range []struct {
		title, key string
		differ     bool
	}{
		{"Elbow 1/2 NPT male x 1/2 NPT female, brass", "316", true}, {"Elbow 1/2 NPT male x 1/2 NPT female, 316", "304", true}, {"Elbow 1/2 NPT male x 1/2 NPT female, PP", "pom", true},
		{"Elbow 1/2 NPT male x 1/2 NPT female, stainless", "316", false}, {"Elbow 1/2 NPT male x 1/2 NPT female, 316", "316L", false}, {"Elbow 1/2 NPT male x 1/2 NPT female, brass", "dzr", false},
		{"Elbow 1/2 NPT male x 1/2 NPT female, plastic", "pp", false}, {"Elbow 1/2 NPT male x 1/2 NPT female", "316", false},
	} {
		_, faults := Parse("build.toml", []byte("[build]\nname = \"x\"\ncurrency = \"EUR\"\n[[item]]\nid = \"x\"\ntitle = \""+c.title+"\"\nmaterial = \""+c.key+"\"\n[[item]]\nid = \"y\"\nkind = \"drain\"\n[[run]]\nname = \"r\"\npath = [\"x\", \"y\"]\n"))
		require.Equal(t, c.differ, len(faults) > 0, "%s, %s: %v", c.title, c.key, faults)
		if c.differ {
			require.Contains(t, faults[0].Reason, "and `material` says "+c.key)
		}
	}
}
