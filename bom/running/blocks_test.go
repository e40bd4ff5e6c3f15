package running_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/internal/built"
)

// What is in the way is named, by eye on the plant that many people build: what lets the
// water on when it alone is put right, and where two stand in the way, the first.
func TestBlocks(t *testing.T) {
	valve := built.More("[[item]]\nid = \"locked\"\nkind = \"shut-off valve\"\nnormal = \"shut\"")
	for _, c := range []struct {
		why            string
		edits          []built.Edit
		before, behind []string
	}{
		{"nothing is in the way", nil, nil, nil},
		{"a feed pump turned about", []built.Edit{{`"strainer", "feed-pump", "filter"`, `"strainer", "feed-pump.out>in", "filter"`}}, []string{"feed-pump is turned about"}, nil},
		{"a valve that is written as shut", []built.Edit{valve, {`"feed-pump", "filter"`, `"feed-pump", "locked", "filter"`}}, []string{"locked is shut in normal running"}, nil},
		{"two of them: the first is named", []built.Edit{valve, {`"strainer", "feed-pump", "filter"`, `"strainer", "locked", "feed-pump.out>in", "filter"`}}, []string{"locked is shut in normal running"}, nil},
		{"a one-way valve before the vessel", []built.Edit{{`"hp-hose", "vessel.feed"`, `"hp-hose", "check/hp.out>in", "vessel.feed"`}}, nil, []string{"check/hp points back"}},
		{"a selector drawn with the sea on its second way", []built.Edit{
			built.More("[[item]]\nid = \"three\"\nkind = \"selector valve\""), {`"feed-pump", "filter"`, `"feed-pump", "three.b>common", "filter"`},
		}, []string{"three stands at its way `a`"}, nil},
	} {
		t.Run(c.why, func(t *testing.T) {
			sys := built.Plant(t, c.edits...)
			pump, _ := sys.Graph.Unit("pump")
			require.Equal(t, c.before, sys.Running.BlocksBefore(pump))
			require.Equal(t, c.behind, sys.Running.BlocksBehind(pump))
		})
	}
}
