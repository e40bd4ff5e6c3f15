package bom

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// The intakes that a flush is lost by, each once, and the pump that lets it pass.
func TestLostFlushes(t *testing.T) {
	const sea = "[[item]]\nid = \"the-sea\"\nkind = \"sea\"\n"
	centrifugal := edit{`"feed-pump", "filter"`, `"centrifugal", "filter"`}
	for _, c := range []struct {
		why    string
		edits  []edit
		intake string // empty: none is lost
		pump   string
	}{
		{"a diaphragm pump's own valves hold", nil, "", ""},
		{"a centrifugal pump does not", []edit{centrifugal}, "intake", "centrifugal"},
		{"nor to the sea without a skin fitting", []edit{centrifugal, more(sea), {`["intake", "raw-hose"`, `["the-sea", "raw-hose"`}}, "the-sea", "centrifugal"},
		{"with no feed pump at all nothing holds", []edit{{`"feed-pump", "filter"`, `"filter"`}}, "intake", ""},
		{"led in before the feed pump it goes back without passing it",
			[]edit{{`"strainer", "feed-pump"`, `"strainer", "tee/flush", "feed-pump"`}, {`"tee/gauge", "tee/flush", "pump"`, `"tee/gauge", "pump"`}}, "intake", ""},
		{"water that leaves overboard in the flush is not lost: that is where it is to go",
			[]edit{{`"overboard-valve", "discharge"]`, `"overboard-valve", "intake/brine.inboard"]`}}, "", ""},
	} {
		t.Run(c.why, func(t *testing.T) {
			list := planted(t, c.edits...).Running.LostFlushes()
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

// Of two intakes each is lost through its own pump.
func TestLostFlushNamesThePumpOfItsIntake(t *testing.T) {
	const parts = "[[item]]\nid = \"cock\"\nkind = \"seacock\"\n[[item]]\nid = \"open\"\nkind = \"feed pump\"\nshutoff = \"2 bar\"\ntype = \"centrifugal\"\n" +
		"[[item]]\nid = \"snap\"\nkind = \"solenoid valve\"\n[[item]]\nid = \"cross\"\nkind = \"cross\"\n"
	sys := walked(t, "x.toml", head+feedParts+parts+runs("cock/1 open/1 cross pump throttle out", "cock/2 open/2 cross.branch", "house snap cross.c"))
	got := map[string]string{}
	for _, l := range sys.Running.LostFlushes() {
		got[l.Intake.Name] = l.Pump.Name
	}
	require.Equal(t, map[string]string{"cock/1": "open/1", "cock/2": "open/2"}, got)
}

// A pump behind the flush tee stands in nobody's way back to the sea, centrifugal or not.
func TestLostFlushBeforeTheFeedPump(t *testing.T) {
	list := planted(t, edit{`"strainer", "feed-pump"`, `"strainer", "tee/flush", "centrifugal"`}, edit{`"tee/gauge", "tee/flush", "pump"`, `"tee/gauge", "pump"`}).Running.LostFlushes()
	require.Len(t, list, 1)
	require.Nil(t, list[0].Pump)
}
