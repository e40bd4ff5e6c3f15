package bom_test

import (
	"testing"

	"handtight/bom"
	"handtight/bom/circuit"
	"handtight/bom/graph"
	"handtight/bom/internal/built"
	"handtight/pressure/network"
)

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
func condition(s *bom.System, st stand) circuit.Condition {
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
func solveOne(s *bom.System, part int, st stand) network.Field {
	c := condition(s, st)
	return network.Solve(s.Circuit.Network(part, &c), st.atFull)
}

// solved solves one stand of the part that a port lies in.
func solved(s *bom.System, t testing.TB, st stand, port string) (high, low float64) {
	t.Helper()
	junction := s.Circuit.JunctionOf[built.Port(t, s, port)]
	f := solveOne(s, s.Circuit.NetOf[junction], st)
	return f.High(s.Circuit.Local[junction]).Bar(), f.Low(s.Circuit.Local[junction]).Bar()
}
