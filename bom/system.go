package bom

import (
	"handtight/bom/circuit"
	"handtight/bom/graph"
	"handtight/bom/joint"
	"handtight/bom/order"
	"handtight/bom/rating"
	"handtight/bom/segment"
	"handtight/bom/source"
	"handtight/bom/state"
	"handtight/bom/wetting"
	"handtight/pressure"
)

// System is a build that has been placed, solved and rated: one field a stage.
type System struct {
	*Running
	States   []*State
	Segments []*Segment
}

// Walk takes a build through the stages: it places the units of every run, joins their
// ports, and solves the pressures of every state. A port joined twice, or a step that cannot
// be entered or left, is a file error; the system is nil then.
func Walk(b *Build) (*System, source.Faults) {
	g, faults := graph.Walk(b)
	if len(faults) > 0 {
		return nil, faults
	}
	c := circuit.New(g)
	waters := wetting.Of(c)
	states := state.Solve(c, waters)
	segments := segment.Of(states, rating.Of(g))
	return &System{Running: &Running{Segments: segments, Waters: waters}, States: states.All, Segments: segments.All}, nil
}

// Waters says which water wets each port.
func (s *System) Waters() *Waters { return s.Running.Waters }

// Unfiltered lists the vessels that a supply's water reaches without a carbon filter.
func (s *System) Unfiltered(house *Unit) []*Unit { return s.Running.Waters.Unfiltered(house) }

// Needs counts what to buy.
func (s *System) Needs() ([]*Need, error) { return order.Needs(s.Running.States, s.Ratings) }

// Order prices what the build needs.
func (s *System) Order() (*Order, error) { return order.Of(s.Running.States, s.Ratings) }

// OrderAt prices what the build needs at chosen offers.
func (s *System) OrderAt(at map[string]*Offer, toFree map[*Vendor]bool) (*Order, error) {
	return order.At(s.Running.States, s.Ratings, at, toFree)
}

// Questions gathers what the words leave open.
func (s *System) Questions() []Question { return joint.Questions(s.Graph) }

// MakeupText says how a joint is made, in one line.
func (s *System) MakeupText(j *Joint) string { return joint.MakeupText(s.Graph, j) }

// MakeupCare says what else to mind at a threaded joint.
func (s *System) MakeupCare(j *Joint) string { return joint.MakeupCare(s.Graph, j) }

// Clamps is how many clamps a hose joint takes.
func (s *System) Clamps(j *Joint) int { return joint.Clamps(s.Graph, j) }

// JointEstimate is what the engaged threads of a joint bear.
func (s *System) JointEstimate(j *Joint) (pressure.Rating, bool) {
	return joint.JointEstimate(s.Graph, j)
}
