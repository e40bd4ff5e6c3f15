package bom

import (
	"handtight/bom/build"
	"handtight/bom/circuit"
	"handtight/bom/each"
	"handtight/bom/graph"
	"handtight/bom/order"
	"handtight/bom/rating"
	"handtight/bom/read"
	"handtight/bom/running"
	"handtight/bom/segment"
	"handtight/bom/source"
	"handtight/bom/state"
	"handtight/bom/wetting"
)

// System is a build that has been placed, solved and rated: one field a stage.
type System struct {
	Build    *build.Build
	Graph    *graph.Graph
	Circuit  *circuit.Circuit
	Waters   *wetting.Waters
	States   *state.States
	Ratings  *rating.Ratings
	Segments *segment.Segments
	Running  *running.Running
}

// Read reads a build file and all that it includes, which must lie in its folder. Every file
// error is given at once; the build is nil then. See [read.ReadWith] for what may be allowed.
func Read(path string) (*build.Build, source.Faults) { return read.Read(path) }

// Walk takes a build through the stages: it places the units of every run, joins their
// ports, and solves the pressures of every state. A port joined twice, or a step that cannot
// be entered or left, is a file error; the system is nil then.
func Walk(b *build.Build) (*System, source.Faults) {
	g, faults := graph.Walk(b)
	if len(faults) > 0 {
		return nil, faults
	}
	var (
		c       *circuit.Circuit
		waters  *wetting.Waters
		states  *state.States
		ratings *rating.Ratings
	)
	each.Both(
		func() { ratings = rating.Of(g) }, // of the parts alone, whatever presses them
		func() {
			c = circuit.New(g)
			waters = wetting.Of(c)
			states = state.Solve(c, waters)
		})
	segments := segment.Of(states, ratings)
	return &System{
		Build: b, Graph: g, Circuit: c, Waters: waters, States: states, Ratings: ratings, Segments: segments,
		Running: &running.Running{Graph: g, Circuit: c, Waters: waters, States: states, Ratings: ratings, Segments: segments},
	}, nil
}

// Needs counts what to buy.
func (s *System) Needs() ([]*order.Need, error) { return order.Needs(s.States, s.Ratings) }

// Order prices what the build needs.
func (s *System) Order() (*order.Order, error) { return order.Of(s.States, s.Ratings) }

// OrderAt prices what the build needs at chosen offers.
func (s *System) OrderAt(at map[string][]order.Share, toFree map[*build.Vendor]bool) (*order.Order, error) {
	return order.At(s.States, s.Ratings, at, toFree)
}
