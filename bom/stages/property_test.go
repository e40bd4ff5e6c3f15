package stages

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom"
	"handtight/bom/graph"
)

var demos = []string{"clean", "careless", "refit", "arrows", "shops", "engine", "recovery", "leftovers", "baltic", "redsea"}

func walked(t testing.TB, name string) *bom.System {
	b, faults := bom.Read(filepath.Join("..", "..", "testdata", name, "build.toml"))
	require.Empty(t, faults)
	s, faults := bom.Walk(b)
	require.Empty(t, faults)
	return s
}

// Every joint is wetted first by one stage, or said to be wetted by none; what is reached
// only grows; and what water runs through it reaches.
func TestEveryJointOnce(t *testing.T) {
	for _, name := range demos {
		sys := walked(t, name)
		for _, s := range Of(sys) {
			count := map[*graph.Joint]int{}
			reached, ran := 0, 0
			for _, st := range s.Stages {
				for _, j := range st.First {
					count[j]++
				}
				require.GreaterOrEqual(t, st.Reached, reached, "%s: %s", name, st.Name)
				require.GreaterOrEqual(t, st.Ran, ran)
				require.LessOrEqual(t, st.Ran, st.Reached, "%s: %s: water runs only where it comes to", name, st.Name)
				reached, ran = st.Reached, st.Ran
				for _, p := range st.Positions {
					_, known := sys.Graph.Unit(p.Unit.Name)
					require.True(t, known)
				}
			}
			for _, j := range s.Dry {
				count[j]++
			}
			for _, j := range s.Joints {
				require.Equal(t, 1, count[j], "%s: J%d", name, j.Number)
			}
		}
	}
}

// Opening an intake, a pump, a membrane or the flush never lets water reach less, as long as
// no selector is turned by it.
func TestOpeningNeverShrinks(t *testing.T) {
	for _, name := range demos {
		for _, p := range plants(walked(t, name)) {
			rapid.Check(t, func(t *rapid.T) {
				less := stand{house: rapid.Bool().Draw(t, "house"), sea: rapid.Bool().Draw(t, "sea"), pumps: rapid.Bool().Draw(t, "pumps"),
					product: rapid.Bool().Draw(t, "product"), tank: rapid.Bool().Draw(t, "tank")}
				more := less
				switch rapid.IntRange(0, 2).Draw(t, "what") {
				case 0:
					more.sea = true
				case 1:
					more.pumps = true
				case 2:
					more.product = true
				}
				a, b := p.flood(less), p.flood(more)
				for port, wet := range a.port {
					require.False(t, wet && !b.port[port], "%s is wet with less open and dry with more", p.sys.Graph.Ports[port].Name())
				}
			})
		}
	}
}

// A joint that water runs through lies on a ring with the way from the sinks back to the
// sources; taken out, it does not let more run. By brute force: a joint of a tree branch
// that ends nowhere runs in no stage.
func TestDeadEndsDoNotRun(t *testing.T) {
	for _, name := range demos {
		for _, p := range plants(walked(t, name)) {
			r := p.flood(stand{sea: true, pumps: true, product: true, tank: true})
			for _, u := range p.units {
				if len(u.Item.Ports) != 1 || len(u.Item.Kind.Boundary) > 0 {
					continue
				}
				if j := p.sys.Graph.Port(u, 0).Joint; j != nil {
					require.False(t, r.runs[j], "%s: nothing runs to %s", name, u.Name)
				}
			}
		}
	}
}
