package running_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/graph"
	"handtight/bom/internal/built"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

// twoPumps is two plunger pumps on one line from the sea: a trunk, a branch each, a gauge's
// hose and a hose that leads nowhere. What runs where is plain.
const twoPumps = `
[build]
name = "two pumps"
currency = "EUR"
[duty]
pressure = "55 bar"
[[item]]
id = "intake"
kind = "seacock"
[[item]]
id = "stock"
kind = "hose stock"
bore = "13 mm"
[[hose]]
id = "h"
of = "stock"
length = "1 m"
[[item]]
id = "tee"
kind = "tee"
[[item]]
id = "pump"
kind = "plunger pump"
flow = "6 L/min"
[[item]]
id = "big"
kind = "feed pump"
flow = "20 L/min"
[[item]]
id = "gauge"
kind = "gauge"
[[item]]
id = "check"
kind = "check valve"
[[run]]
name = "raw water"
path = ["intake", "h/trunk", "tee/split", "h/one", "pump/one"]
[[run]]
name = "second"
path = ["tee/split.branch", "h/two", "tee/gauge", "pump/two"]
[[run]]
name = "gauge"
path = ["tee/gauge.branch", "h/gauge", "gauge"]
`

func TestDraws(t *testing.T) {
	for _, c := range []struct {
		why   string
		edits []built.Edit
		want  []string
	}{
		{"the trunk carries both, each branch its own, the gauge's hose nothing", nil, []string{
			"h/trunk: pump/one, pump/two 12", "h/one: pump/one 6", "h/two: pump/two 6",
		}},
		{"a hose beside another carries a share that is not known", []built.Edit{
			{`"intake", "h/trunk", "tee/split"`, `"intake", "tee/in", "h/trunk", "tee/join", "tee/split"`},
			{`[[run]]
name = "gauge"`, `[[run]]
name = "beside"
path = ["tee/in.branch", "h/beside", "tee/join.branch"]
[[run]]
name = "gauge"`},
		}, []string{"h/one: pump/one 6", "h/two: pump/two 6"}},
		{"of two intakes either may give all of it", []built.Edit{{`[[run]]
name = "gauge"`, `[[run]]
name = "other side"
path = ["intake/port", "h/port", "tee/port", "h/cross", "tee/cross.branch"]
[[run]]
name = "gauge"`}, {`"intake", "h/trunk", "tee/split"`, `"intake", "h/trunk", "tee/cross", "tee/split"`}}, []string{
			"h/trunk: pump/one, pump/two 12", "h/one: pump/one 6", "h/two: pump/two 6",
			"h/port: pump/one, pump/two 12", "h/cross: pump/one, pump/two 12",
		}},
		{"a feed pump draws its own, and the plunger pumps draw from it", []built.Edit{{`"intake", "h/trunk", "tee/split"`, `"intake", "h/trunk", "big", "h/feed", "tee/split"`}}, []string{
			"h/trunk: big 20", "h/feed: pump/one, pump/two 12", "h/one: pump/one 6", "h/two: pump/two 6",
		}},
		{"a check valve lets the water on", []built.Edit{{`"intake", "h/trunk", "tee/split"`, `"intake", "h/trunk", "check", "tee/split"`}}, []string{
			"h/trunk: pump/one, pump/two 12", "h/one: pump/one 6", "h/two: pump/two 6",
		}},
		{"a pump of unknown flow is not summed", []built.Edit{{"flow = \"6 L/min\"\n", ""}}, nil},
		{"of two intakes with the pumps between them: each hose carries what is drawn by it at most", []built.Edit{{`[[run]]
name = "gauge"`, `[[run]]
name = "other side"
path = ["intake/port", "h/port", "tee/end.branch"]
[[run]]
name = "gauge"`}, {`"tee/gauge", "pump/two"`, `"tee/gauge", "tee/end", "pump/two"`}}, []string{
			"h/trunk: pump/one, pump/two 12", "h/one: pump/one 6", "h/two: pump/two 6", "h/port: pump/one, pump/two 12",
		}},
		{"between two intakes a hose carries what is drawn on one of its sides, and not on both", []built.Edit{
			{`"intake", "h/trunk", "tee/split", "h/one", "pump/one"]`, `"intake", "h/trunk", "tee/a", "tee/split", "h/cross", "tee/c", "h/port", "intake/port.inboard"]
[[run]]
name = "first"
path = ["tee/a.branch", "pump/one"]
[[run]]
name = "third"
path = ["tee/c.branch", "pump/three"]`}}, []string{
			"h/trunk: pump/one, pump/three, pump/two 18", "h/cross: pump/one, pump/two 12", "h/two: pump/two 6", "h/port: pump/one, pump/three, pump/two 18",
		}},
		{"a hose to a gauge at the beginning of the line carries nothing", []built.Edit{
			{`"intake", "h/trunk", "tee/split"`, `"gauge/end", "h/end", "tee/end", "tee/split"`},
			{`[[run]]
name = "gauge"`, `[[run]]
name = "late"
path = ["intake", "h/trunk", "tee/end.branch"]
[[run]]
name = "gauge"`}}, []string{"h/trunk: pump/one, pump/two 12", "h/one: pump/one 6", "h/two: pump/two 6"}},
		{"house water, which a check valve holds the sea off, is not judged", []built.Edit{{`"intake", "h/trunk", "tee/split"`, `"house", "h/house", "check", "h/trunk", "tee/split"`}, {`[[item]]
id = "check"`, `[[item]]
id = "house"
kind = "house supply"
[[item]]
id = "check"`}}, []string{"h/trunk: pump/one, pump/two 12", "h/one: pump/one 6", "h/two: pump/two 6"}},
		{"an overboard outlet gives no water", []built.Edit{{`"intake", "h/trunk", "tee/split"`, `"overboard", "h/trunk", "tee/split"`}, {`[[item]]
id = "check"`, `[[item]]
id = "overboard"
kind = "overboard"
[[item]]
id = "check"`}}, nil},
		{"a valve that is shut lets no pump draw", []built.Edit{{`"intake", "h/trunk", "tee/split"`, `"intake", "h/trunk", "locked", "tee/split"`}, {`[[item]]
id = "check"`, `[[item]]
id = "locked"
kind = "shut-off valve"
normal = "shut"
[[item]]
id = "check"`}}, nil},
		{"a selector stands at its first way: the second carries nothing", []built.Edit{
			{`"intake", "h/trunk", "tee/split"`, `"intake", "h/trunk", "selector.a>common", "tee/split"`},
			{`[[run]]
name = "gauge"`, `[[run]]
name = "other"
path = ["intake/b", "h/b", "selector.b"]
[[run]]
name = "gauge"`}, {`[[item]]
id = "check"`, `[[item]]
id = "selector"
kind = "selector valve"
[[item]]
id = "check"`}}, []string{"h/trunk: pump/one, pump/two 12", "h/one: pump/one 6", "h/two: pump/two 6"}},
		{"nothing to draw from", []built.Edit{{`"intake", "h/trunk", "tee/split"`, `"gauge/end", "h/trunk", "tee/split"`}}, nil},
	} {
		t.Run(c.why, func(t *testing.T) {
			text := twoPumps
			for _, e := range c.edits {
				text = built.Replace(t, text, e[0], e[1])
			}
			var got []string
			for _, d := range built.Walk(t, "two.toml", text).Running.Draws() {
				var pumps []string
				for _, p := range d.Pumps {
					pumps = append(pumps, p.Name)
				}
				got = append(got, fmt.Sprintf("%s: %s %v", d.Hose.Name, strings.Join(pumps, ", "), d.Flow.LitresPerMinute()))
			}
			require.ElementsMatch(t, c.want, got)
		})
	}
}

// Of the plant that many people build, only the hose before the feed pump is drawn through.
func TestDrawsOfThePlant(t *testing.T) {
	for _, d := range built.Plant(t).Running.Draws() {
		require.Equal(t, "raw-hose", d.Hose.Name)
		require.Equal(t, []*graph.Unit{d.Pumps[0]}, d.Pumps)
		require.Equal(t, "feed-pump", d.Pumps[0].Name)
	}
}

// A check valve round a feed pump makes no pump draw twice: the feed pump's 20 L/min are
// what the plunger pumps take.
func TestDrawsWithABypass(t *testing.T) {
	text := built.Replace(t, twoPumps, `"intake", "h/trunk", "tee/split"`, `"intake", "h/trunk", "tee/in", "big", "tee/out", "tee/split"`)
	text = built.Replace(t, text, "[[run]]\nname = \"gauge\"", "[[run]]\nname = \"bypass\"\npath = [\"tee/in.branch\", \"check\", \"tee/out.branch\"]\n[[run]]\nname = \"gauge\"")
	for _, d := range built.Walk(t, "two.toml", text).Running.Draws() {
		if d.Hose.Name == "h/trunk" {
			require.InDelta(t, 20, d.Flow.LitresPerMinute(), 1e-9)
		}
	}
}
