package running_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/internal/built"
)

// The intakes that a flush is lost by, each once, and the pump that lets it pass.
func TestLostFlushes(t *testing.T) {
	const sea = "[[item]]\nid = \"the-sea\"\nkind = \"sea\"\n"
	centrifugal := built.Edit{`"feed-pump", "filter"`, `"centrifugal", "filter"`}
	for _, c := range []struct {
		why    string
		edits  []built.Edit
		intake string // empty: none is lost
		pump   string
	}{
		{"a diaphragm pump's own valves hold", nil, "", ""},
		{"a centrifugal pump does not", []built.Edit{centrifugal}, "intake", "centrifugal"},
		{"nor to the sea without a skin fitting", []built.Edit{centrifugal, built.More(sea), {`["intake", "raw-hose"`, `["the-sea", "raw-hose"`}}, "the-sea", "centrifugal"},
		{"with no feed pump at all nothing holds", []built.Edit{{`"feed-pump", "filter"`, `"filter"`}}, "intake", ""},
		{"led in before the feed pump it goes back without passing it",
			[]built.Edit{{`"strainer", "feed-pump"`, `"strainer", "tee/flush", "feed-pump"`}, {`"tee/gauge", "tee/flush", "pump"`, `"tee/gauge", "pump"`}}, "intake", ""},
		{"water that leaves overboard in the flush is not lost: that is where it is to go",
			[]built.Edit{{`"overboard-valve", "discharge"]`, `"overboard-valve", "intake/brine.inboard"]`}}, "", ""},
	} {
		t.Run(c.why, func(t *testing.T) {
			list := built.Plant(t, c.edits...).Running.LostFlushes()
			if c.intake == "" {
				require.Empty(t, list)
				return
			}
			require.Len(t, list, 1, "an intake of several ports is one")
			require.Equal(t, c.intake, list[0].Intake.Name)
			if c.pump == "" {
				require.Nil(t, list[0].Pump)
				return
			}
			require.Equal(t, c.pump, list[0].Pump.Name)
		})
	}
}

// A pump behind the flush tee stands in nobody's way back to the sea, centrifugal or not.
func TestLostFlushBeforeTheFeedPump(t *testing.T) {
	list := built.Plant(t, built.Edit{`"strainer", "feed-pump"`, `"strainer", "tee/flush", "centrifugal"`}, built.Edit{`"tee/gauge", "tee/flush", "pump"`, `"tee/gauge", "pump"`}).Running.LostFlushes()
	require.Len(t, list, 1)
	require.Nil(t, list[0].Pump)
}
