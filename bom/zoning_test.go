package bom

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom/circuit"
	"handtight/bom/read"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

// valveSorts are parts that shut, or let water in or out, or push; with tees between them
// they make lines of many valves, side by side and in rings.
var valveSorts = []string{
	"kind = \"shut-off valve\"", "kind = \"shut-off valve\"", "kind = \"shut-off valve\"", "kind = \"tee\"", "kind = \"tee\"",
	"kind = \"cross\"", "kind = \"seacock\"", "kind = \"plunger pump\"\nstall = \"90 bar\"", "kind = \"check valve\"",
	"kind = \"relief valve\"\nset = \"65 bar\"", "kind = \"feed pump\"\nshutoff = \"2.5 bar\"", "kind = \"overboard\"",
	"kind = \"house supply\"\npressure = \"3 bar\"", "kind = \"strainer\"", "kind = \"brine throttle\"",
}

func drawValves(t *rapid.T) string {
	var b strings.Builder
	b.WriteString(head + "[duty]\npressure = \"55 bar\"\n")
	var free []string
	var paths []string
	for n := range rapid.IntRange(4, 16).Draw(t, "parts") {
		sort := rapid.SampledFrom(valveSorts).Draw(t, "part")
		fmt.Fprintf(&b, "[[item]]\nid = \"u%d\"\n%s\n", n, sort)
		ports := portsOf(sort)
		for i, p := range ports {
			name := fmt.Sprintf("u%d.%s", n, p)
			if len(free) > 0 && (i == 0 || rapid.IntRange(0, 3).Draw(t, "round") == 0) {
				k := rapid.IntRange(0, len(free)-1).Draw(t, "to")
				if !strings.HasPrefix(free[k], fmt.Sprintf("u%d.", n)) {
					paths = append(paths, free[k]+" "+name)
					free = append(free[:k], free[k+1:]...)
					continue
				}
			}
			free = append(free, name)
		}
	}
	if len(paths) == 0 {
		t.Skip("no joint")
	}
	return b.String() + runs(paths...)
}

// A state that shuts one passage of a zoning, after others have been asked of it, is what
// the same state gives solved afresh with that passage shut.
func TestShutIsAsSolvedAfresh(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { shutsAlike(t, drawValves(t)) })
}

// The same of lines with valves one behind the other, and side by side, which cut off
// more and more of what stands on the line.
func TestShutAlongALine(t *testing.T) {
	for _, paths := range [][]string{
		{"sea pump valve/1 tee/1 valve/2 tee/2 valve/3 out", "tee/1.branch low out/2", "tee/2.branch lower out/3"},
		{"out valve/3 tee/2 valve/2 tee/1 valve/1 pump.out", "pump.in sea", "tee/1.branch low out/2", "tee/2.branch lower out/3"},
		{"sea pump tee/a valve/1 tee/b valve/3 out", "tee/a.branch valve/2 tee/b.branch"},
		{"house valve/1 tee/1 valve/2 strong valve/3 tee/2 valve/4 out", "tee/1.branch valve/5 sea", "tee/2.branch valve/6 valve/7"},
	} {
		shutsAlike(t, head+feedParts+runs(paths...))
	}
}

func shutsAlike(t require.TestingT, text string) {
	build, faults := read.Parse("valves.toml", []byte(text))
	require.NoError(t, faults.Err(), text)
	sys, faults := Walk(build)
	require.NoError(t, faults.Err(), text)
	for part, wires := range sys.Circuit.LinksOf {
		z := sys.States.Zones(part, &circuit.Condition{})
		for _, full := range []bool{false, true} {
			for _, i := range wires {
				got := z.Shut(i, full)
				fresh := sys.States.Zones(part, &circuit.Condition{Shut: map[int]bool{i: true}}).Shut(-1, full)
				name := sys.Circuit.Links[i].Unit.Name
				for cell := range sys.Circuit.Nets[part] {
					require.Equal(t, fresh.High(cell), got.High(cell), "%s shut, highest of cell %d\n%s", name, cell, text)
					require.Equal(t, fresh.Low(cell), got.Low(cell), "%s shut, lowest of cell %d\n%s", name, cell, text)
					require.Equal(t, fresh.Discharge(cell), got.Discharge(cell), "%s shut, way out of cell %d\n%s", name, cell, text)
				}
			}
		}
	}
}
