package repair_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/graph"
	"handtight/bom/read"
	"handtight/bom/repair"
	"handtight/threads"
)

// What a worked case says to paste, pasted into a build between the two ends: the file is taken, and
// every joint of the chain closes in the walk as it did in the search.
func TestPastedChains(t *testing.T) {
	pasted := 0
	for _, c := range slices.Concat(worked, blind, blindAgain) {
		got := repair.Adapt(end(t, c.a), end(t, c.b), c.o)
		for k := range got.Chains {
			chain := &got.Chains[k]
			text, path := between(t, c.a, c.b, chain, c.o)
			build, faults := read.Parse("pasted.toml", []byte(text))
			require.NoError(t, faults.Err(), "%s\n%s", c.name, text)
			sys, faults := bom.Walk(build)
			require.NoError(t, faults.Err(), "%s\n%s", c.name, text)
			n := 0
			for _, j := range sys.Graph.Joints {
				if names := units(sys.Graph, j); slices.Contains(path, names[0]) && slices.Contains(path, names[1]) {
					n++
					require.True(t, j.Known, "%s: %s", c.name, sys.Graph.JointName(j))
					require.True(t, j.Mating.Verdict.Holds() || j.Mating.Verdict == threads.LowPressureOnly && len(chain.Cautions) > 0, "%s: %s: %s", c.name, sys.Graph.JointName(j), j.Mating.Reason())
				}
			}
			require.Equal(t, len(chain.Joints), n, "%s\n%s", c.name, text)
			pasted++
		}
	}
	t.Logf("%d chains", pasted)
	require.Greater(t, pasted, 60)
}

// between is a build of two parts with the two ends, and the chain as it is to be pasted.
func between(t *testing.T, a, b string, c *repair.Chain, o repair.Options) (text string, path []string) {
	t.Helper()
	text = "[build]\nname = \"pasted\"\ncurrency = \"EUR\"\n"
	part := func(id, words string) string {
		if size, hose := strings.CutSuffix(words, " bore"); hose {
			text += fmt.Sprintf("[[item]]\nid = %q\nkind = \"hose stock\"\nbore = %q\n[[hose]]\nid = %q\nof = %q\nlength = \"1 m\"\n", id+"-stock", size, id, id+"-stock")
			return id
		}
		text += fmt.Sprintf("[[item]]\nid = %q\nkind = \"adaptor\"\nports = { a = '1/8 NPT male', b = '%s' }\n", id, words)
		return id + ".b"
	}
	steps := []string{part("left", a)}
	path = []string{"left"}
	for i, p := range c.Pieces {
		if !slices.Contains(c.Pieces[:i], p) {
			text += p.Paste(o.Pressure)
		}
		steps = append(steps, p.ShortID()+"/+")
		path = append(path, fmt.Sprintf("%s/+1", p.ShortID()), fmt.Sprintf("%s/+%d", p.ShortID(), i+1), p.ShortID())
	}
	steps = append(steps, part("right", b))
	path = append(path, "right")
	return text + "[[run]]\nname = \"line\"\npath = [\"" + strings.Join(steps, "\", \"") + "\"]\n", path
}

func units(g *graph.Graph, j *graph.Joint) [2]string {
	return [2]string{g.Ports[j.A].Unit.Name, g.Ports[j.B].Unit.Name}
}
