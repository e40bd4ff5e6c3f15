package joint

import (
	"handtight/bom/graph"
	"handtight/pressure"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// JointEstimate is the pressure at which the end load on a joint brings its engaged
// threads to the allowable stress of the weaker material. It is an estimate, shown
// beside a joint; it rates nothing and clears nothing. ok is false for joints without
// threads, open ones, and materials without a known stress.
//
// Source: [pressure.JointStrength].
func JointEstimate(s *graph.Graph, j *graph.Joint) (pressure.Rating, bool) {
	t, ok := threaded(s, j)
	if !ok {
		return pressure.Rating{}, false
	}
	return pressure.JointStrength(t)
}

// threaded is what the strength of a joint depends on; ok is false where its ends are not known or have no threads.
func threaded(s *graph.Graph, j *graph.Joint) (t pressure.ThreadedJoint, ok bool) {
	if !j.Known || j.Open {
		return t, false
	}
	external, internal, ok := j.Mating.ShearArea()
	if !ok {
		return t, false
	}
	male, female, form := ends(s, j)
	return pressure.ThreadedJoint{
		External: quantity.Area(external) * quantity.SquareMM, Internal: quantity.Area(internal) * quantity.SquareMM, Male: male.Unit.Item.Material, Female: female.Unit.Item.Material,
		Seal: quantity.Length(form.Major),
	}, true
}

// Estimates are the strengths of many joints; those of one sort are reckoned once.
type Estimates struct {
	graph *graph.Graph
	made  map[pressure.ThreadedJoint]estimate
}

type estimate struct {
	bears quantity.Pressure
	ok    bool
}

// NewEstimates makes estimates for the joints of a graph.
func NewEstimates(s *graph.Graph) *Estimates {
	return &Estimates{s, map[pressure.ThreadedJoint]estimate{}}
}

// Bears is the pressure of [JointEstimate].
func (e *Estimates) Bears(j *graph.Joint) (quantity.Pressure, bool) {
	t, ok := threaded(e.graph, j)
	if !ok {
		return 0, false
	}
	got, has := e.made[t]
	if !has {
		r, ok := pressure.JointStrength(t)
		got = estimate{r.Pressure, ok}
		e.made[t] = got
	}
	return got.bears, got.ok
}

// ends gives the nodes of a threaded joint in the order male, female, and the male's
// form.
func ends(s *graph.Graph, j *graph.Joint) (male, female *graph.Port, form *threads.Form) {
	a, b, m := &s.Ports[j.A], &s.Ports[j.B], &j.Mating
	if m.A.Sex == threads.Female || m.A.Sex == threads.NoSex && m.B.Sex == threads.Male {
		return b, a, m.B.Form
	}
	return a, b, m.A.Form
}
