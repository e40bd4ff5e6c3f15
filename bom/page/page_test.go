package page_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/order"
	"handtight/bom/page"
	"handtight/bom/read"
	"handtight/bom/rule"
)

var demos = []string{"clean", "careless", "refit", "arrows", "engine", "recovery", "leftovers", "shops"}

// written gives the page of an example build.
func written(t testing.TB, name string, only ...string) []byte {
	path := filepath.Join("..", "..", "testdata", name, "build.toml")
	b, faults := bom.Read(path)
	require.Empty(t, faults)
	sys, faults := bom.Walk(b)
	require.Empty(t, faults)
	order, err := sys.Order()
	require.NoError(t, err)
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	var out bytes.Buffer
	require.NoError(t, page.Write(&out, page.Of(sys, rule.Check(sys), order, page.Options{Only: only, Text: text})))
	return out.Bytes()
}

func TestLook(t *testing.T) {
	dir := os.Getenv("PAGES")
	if dir == "" {
		t.Skip("set PAGES to a folder to look at the pages")
	}
	for _, d := range demos {
		data := written(t, d)
		t.Log(d, len(data))
		require.NoError(t, os.WriteFile(filepath.Join(dir, d+".html"), data, 0o644))
		for _, only := range page.Sections {
			require.NoError(t, os.WriteFile(filepath.Join(dir, d+"-"+only+".html"), written(t, d, only), 0o644))
		}
	}
}

// A plant of 300 parts: its page, pictures and all. In the benchmarks, since speed is never
// asserted in a test; its size is.
func BenchmarkPageOf300Parts(b *testing.B) {
	sys, list, order := longPlant(b, 300)
	for b.Loop() {
		var out bytes.Buffer
		require.NoError(b, page.Write(&out, page.Of(sys, list, order, page.Options{})))
		require.Less(b, out.Len(), 2<<20)
	}
}

// longPlant is a line of fittings and hoses before a pump, a vessel and a throttle.
func longPlant(t testing.TB, parts int) (*bom.System, []finding.Finding, *order.Order) {
	text := `
[build]
name = "long"
currency = "EUR"
[duty]
pressure = "47 bar"
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "nipple"
kind = "nipple"
ports = { a = '1/2 NPT male', b = '1/2 NPT male' }
material = "316"
class = "class 3000"
[[item]]
id = "tee"
kind = "tee"
ports = { a = '1/2 NPT female', b = '1/2 NPT female', branch = '1/4 NPT female' }
material = "316"
class = "class 3000"
[[item]]
id = "gauge"
kind = "gauge"
ports = { in = '1/4 NPT male' }
rated = "100 bar"
[[item]]
id = "pump"
kind = "plunger pump"
ports = { in = '1/2 NPT female', out = '1/2 NPT female' }
flow = "5 L/min"
[[item]]
id = "throttle"
kind = "brine throttle"
ports = { in = '1/2 NPT male', out = '1/2 NPT male' }
[[item]]
id = "out"
kind = "overboard"
[[run]]
name = "line"
path = ["sea"`
	runs := ""
	for i := range parts / 3 {
		text += fmt.Sprintf(`, "nipple/+", "tee/t%d"`, i)
		if i == parts/6 {
			text += `, "nipple/+", "pump"`
		}
		runs += fmt.Sprintf("[[run]]\nname = \"gauge %d\"\npath = [\"tee/t%d.branch\", \"gauge/g%d\"]\n", i, i, i)
	}
	text += ", \"throttle\", \"out\"]\n" + runs
	build, faults := read.Parse("long.toml", []byte(text))
	require.Empty(t, faults)
	sys, faults := bom.Walk(build)
	require.Empty(t, faults)
	order, err := sys.Order()
	require.NoError(t, err)
	return sys, rule.Check(sys), order
}

// The page of a large plant keeps within its bound, and is drawn whole.
func TestALargePlant(t *testing.T) {
	sys, list, order := longPlant(t, 300)
	var out bytes.Buffer
	require.NoError(t, page.Write(&out, page.Of(sys, list, order, page.Options{})))
	require.Less(t, out.Len(), 2<<20)
	for n := range sys.Graph.Joints {
		require.Contains(t, out.String(), fmt.Sprintf(`id="j%d"`, n+1))
	}
}
