package running_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom"
	"handtight/bom/circuit"
	"handtight/bom/internal/built"
	"handtight/bom/read"
	"handtight/bom/running"
	"handtight/catalog"
)

// What becomes of the sea water at the ports of the plant that many people build first,
// by hand: the flush comes in at tee/flush and leaves by the overboard valve.
func TestStandings(t *testing.T) {
	closed := built.Edit{`"throttle", "brine-hose", "tee/outlet", "overboard-valve", "discharge"`, `"throttle", "brine-hose", "gauge/end"`}
	free := built.Edit{`"relief", "tee/outlet.branch"`, `"relief", "relief-outlet"`}
	for _, c := range []struct {
		why   string
		edits []built.Edit
		port  string
		want  running.Standing
	}{
		{"the intake, which no flush reaches", nil, "intake.inboard", running.Stands},
		{"before the feed pump, whose valves hold the flush off", nil, "strainer.out", running.Stands},
		{"between the feed pump and the flush tee: under the flush's pressure, and out of its way", nil, "filter.out", running.Stands},
		{"as far as the flush tee", nil, "tee/gauge.b", running.Stands},
		{"and on from there", nil, "tee/flush.b", running.Flushed},
		{"the pump's outlet, through its valves", nil, "pump.out", running.Flushed},
		{"the vessel", nil, "vessel.feed", running.Flushed},
		{"behind the throttle", nil, "brine-hose.b", running.Flushed},
		{"the line that the flush comes by, behind its check valve", nil, "check.out", running.Flushed},
		{"a gauge on the flushed line", nil, "gauge/hp.in", running.DeadEnd},
		{"and the branch that it stands on", nil, "tee/hp-gauge.branch", running.DeadEnd},
		{"but not the tee's way through", nil, "tee/hp-gauge.a", running.Flushed},
		{"a relief passes nothing while it holds", nil, "relief.in", running.DeadEnd},
		{"nor on its far side, in the brine line", nil, "relief.out", running.DeadEnd},
		{"no sea water", nil, "vessel.product", 0},
		{"house water only", nil, "carbon.out", 0},
		{"a centrifugal feed pump lets the flush run through the filters, out to the sea", []built.Edit{{`"feed-pump"`, `"centrifugal"`}}, "filter.out", running.Flushed},
		{"and a gauge there is a dead end then", []built.Edit{{`"feed-pump"`, `"centrifugal"`}}, "gauge.in", running.DeadEnd},
		{"the flush led in before the filters", []built.Edit{{`"filter", "tee/gauge", "tee/flush"`, `"tee/flush", "filter", "tee/gauge"`}}, "filter.out", running.Flushed},
		{"the flush led in behind the plunger pump: its outlet is a pocket", []built.Edit{
			{`"tee/flush", "pump"`, `"pump"`}, {`"pump", "tee/relief"`, `"pump", "tee/flush", "tee/relief"`},
		}, "pump.out", running.Stands},
		{"the rest of the high-pressure side is flushed still", []built.Edit{
			{`"tee/flush", "pump"`, `"pump"`}, {`"pump", "tee/relief"`, `"pump", "tee/flush", "tee/relief"`},
		}, "hp-hose.a", running.Flushed},
		{"a gauge on a line that is not flushed is no better off than the line", nil, "gauge.in", running.Stands},
		{"nor is a brine line that ends in a gauge", []built.Edit{closed, free}, "brine-hose.b", running.Stands},
		{"the flush cannot leave then, and the vessel is left with its sea water", []built.Edit{closed, free}, "vessel.feed", running.Stands},
	} {
		t.Run(c.why, func(t *testing.T) {
			sys := built.Plant(t, c.edits...)
			require.Equal(t, c.want, sys.Running.Standings()[built.Port(t, sys, c.port)], c.port)
		})
	}
}

// A loop that hangs on one joint is as dead as a branch, and a port that is joined to
// nothing is an end unless it is said to be plugged.
func TestStandingsOfLoopsAndPlugs(t *testing.T) {
	loop := built.Edit{`name = "high-pressure gauge"` + "\n" + `path = ["tee/hp-gauge.branch", "gauge/hp"]`,
		`name = "loop"` + "\n" + `path = ["tee/hp-gauge.branch", "tee/x.branch"]` + "\n[[run]]\nname = \"round\"\n" + `path = ["tee/x.a", "hp-hose", "tee/x.b"]`}
	unhose := built.Edit{`"tee/relief", "hp-hose", "vessel.feed"`, `"tee/relief", "vessel.feed"`}
	open := built.Edit{`path = ["tee/hp-gauge.branch", "gauge/hp"]`, `path = ["tee/hp-gauge.branch", "tee/x.branch"]`}
	plug := built.Edit{`[build]`, "[build]\nplugged = [\"tee/x.a\", \"tee/x.b\"]"}
	for _, c := range []struct {
		why   string
		edits []built.Edit
		port  string
		want  running.Standing
	}{
		{"round the loop", []built.Edit{loop, unhose}, "hp-hose.a", running.DeadEnd},
		{"a tee whose ports nobody joined may lead on", []built.Edit{open}, "tee/x.branch", running.Flushed},
		{"a tee that is plugged does not", []built.Edit{open, plug}, "tee/x.branch", running.DeadEnd},
	} {
		t.Run(c.why, func(t *testing.T) {
			sys := built.Plant(t, c.edits...)
			require.Equal(t, c.want, sys.Running.Standings()[built.Port(t, sys, c.port)], c.port)
		})
	}
}

// Whatever is built, water runs through a port as long as no one joint or passage, taken
// away, leaves it without an end of the pipework: tried out one by one.
func TestRunsThroughAgreesWithTakingAway(t *testing.T) {
	both := map[bool]int{}
	rapid.Check(t, func(t *rapid.T) {
		build, faults := read.Parse("random.toml", []byte(built.Draw(t)))
		require.NoError(t, faults.Err())
		sys, faults := bom.Walk(build)
		require.NoError(t, faults.Err())
		passes := func(e *circuit.Link) bool { return e.Is != catalog.Relief && !e.ShutNormally() }
		got := sys.Running.RunsThrough(passes)
		var links [][2]int
		for _, j := range sys.Graph.Joints {
			links = append(links, [2]int{j.A, j.B})
		}
		for _, u := range sys.Graph.Units {
			for _, p := range u.Passages() {
				if passes(&circuit.Link{Unit: u, Is: p.Is, Closable: p.Closable}) {
					links = append(links, [2]int{u.First + p.From, u.First + p.To})
				}
			}
		}
		for p := range sys.Graph.Ports {
			want := true
			for without := -1; without < len(links); without++ {
				want = want && reachesAnEnd(sys, p, links, without)
			}
			require.Equal(t, want, got[p], sys.Graph.Ports[p].Name())
			both[want]++
		}
	})
	require.Positive(t, both[true])
	require.Positive(t, both[false])
}

// reachesAnEnd follows the links from a port, without one of them, to an end.
func reachesAnEnd(s *bom.System, port int, links [][2]int, without int) bool {
	seen := map[int]bool{port: true}
	for grown := true; grown; {
		grown = false
		for i, l := range links {
			if i != without && seen[l[0]] != seen[l[1]] {
				seen[l[0]], seen[l[1]], grown = true, true, true
			}
		}
	}
	for p := range seen {
		if n := &s.Graph.Ports[p]; s.Graph.Boundary(n.Unit, n.Index) || n.Joint == nil && !s.Graph.Plugged(n.Name()) {
			return true
		}
	}
	return false
}
