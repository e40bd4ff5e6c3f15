package segment

import (
	"handtight/bom/rating"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

// Proof is the highest pressure that a first test may put on a segment: the
// lowest test pressure of its members and joints, which for hose by its standard is
// twice its rating and for everything else one and a half times. ok is false where
// some member's rating is not known, or known by an estimate only.
//
// Source: [pressure.Proof].
func (s *Segments) Proof(g *Segment) (proof quantity.Pressure, ok bool) {
	proof = quantity.NoBound()
	take := func(h rating.Allowable) bool {
		p, known := pressure.Proof(h.Rating)
		if !h.Known || !known {
			return false
		}
		proof = min(proof, p)
		return true
	}
	for _, p := range g.Ports {
		n := &s.Graph.Ports[p]
		if !n.Unit.Item.Exempt(n.Index) && !take(s.Ratings.Port(p)) {
			return 0, false
		}
	}
	for _, j := range g.Joints {
		if h := s.Ratings.Joint(j); h.Known && !take(h) {
			return 0, false
		}
	}
	return proof, !proof.Unbounded()
}
