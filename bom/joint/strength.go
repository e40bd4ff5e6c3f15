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
	if !j.Known || j.Open {
		return pressure.Rating{}, false
	}
	external, internal, ok := j.Mating.ShearArea()
	if !ok {
		return pressure.Rating{}, false
	}
	male, female, form := ends(s, j)
	return pressure.JointStrength(pressure.ThreadedJoint{
		External: quantity.Area(external) * quantity.SquareMM, Internal: quantity.Area(internal) * quantity.SquareMM, Male: male.Unit.Item.Material, Female: female.Unit.Item.Material,
		Seal: quantity.Length(form.Major),
	})
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
