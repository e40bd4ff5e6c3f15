package bom

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/circuit"
	"handtight/bom/graph"
	"handtight/bom/read"
	"handtight/bom/state"
	"handtight/pressure/network"
)

const plantFile = "../testdata/states/plant.toml"

// edit is one change of the plant's text; what is changed must stand there once.
type edit struct{ from, to string }

// planted reads and walks the plant of testdata/states with some changes.
func planted(t testing.TB, edits ...edit) *System {
	t.Helper()
	text, err := os.ReadFile(plantFile)
	require.NoError(t, err)
	s := string(text)
	for _, e := range edits {
		require.Equal(t, 1, strings.Count(s, e.from), "%q stands once in the plant", e.from)
		s = strings.Replace(s, e.from, e.to, 1)
	}
	return walked(t, plantFile, s)
}

// walked reads and walks a build that must be without fault.
func walked(t testing.TB, path, text string) *System {
	t.Helper()
	build, faults := read.Parse(path, []byte(text))
	require.NoError(t, faults.Err())
	sys, faults := Walk(build)
	require.NoError(t, faults.Err())
	return sys
}

// stand is one way a build can stand, by the names of its units.
type stand struct {
	shut                          []string // units whose passage is shut by an act or a failure
	stopped, still, flush, atFull bool
	between, swapped, opened, dry string
}

// flushing is how a build stands in the flush.
func flushing(shut ...string) stand {
	return stand{shut: shut, stopped: true, still: true, flush: true}
}

// condition turns a stand into what the solver takes.
func (s *System) condition(st stand) circuit.Condition {
	c := circuit.Condition{Shut: map[int]bool{}, Stopped: st.stopped, Still: st.still, Flush: st.flush}
	for _, name := range st.shut {
		for i := range s.Circuit.Links {
			if s.Circuit.Links[i].Unit.Name == name {
				c.Shut[i] = true
			}
		}
	}
	named := func(name string) *graph.Unit {
		u, _ := s.Graph.Unit(name)
		return u
	}
	c.Between, c.Swapped, c.Opened, c.Dry = named(st.between), named(st.swapped), named(st.opened), named(st.dry)
	return c
}

// solveOne solves one stand of a part, all that it shuts being part of its condition.
func (s *System) solveOne(part int, st stand) network.Field {
	c := s.condition(st)
	return network.Solve(s.Circuit.Network(part, &c), st.atFull)
}

// solved solves one stand of the part that a port lies in.
func (s *System) solved(t testing.TB, st stand, port string) (high, low float64) {
	t.Helper()
	junction := s.Circuit.JunctionOf[s.portNamed(t, port)]
	f := s.solveOne(s.Circuit.NetOf[junction], st)
	return f.High(s.Circuit.Local[junction]).Bar(), f.Low(s.Circuit.Local[junction]).Bar()
}

func (s *System) portNamed(t testing.TB, name string) int {
	t.Helper()
	for i := range s.Graph.Ports {
		if s.Graph.Ports[i].Name() == name {
			return i
		}
	}
	require.FailNow(t, "no port "+name)
	return -1
}

// stateNamed finds a state.
func (s *System) stateNamed(t testing.TB, name string) *state.State {
	t.Helper()
	for _, st := range s.States.All {
		if st.Name == name {
			return st
		}
	}
	require.FailNow(t, "no state "+name)
	return nil
}
