package segment

import (
	"handtight/bom/graph"
	"handtight/bom/rating"
	"handtight/pressure/quantity"
)

// Collapse is a hose that a vacuum may flatten.
type Collapse struct {
	Hose    *graph.Unit
	Segment *Segment
	Stands  quantity.Pressure // below the air's pressure
	Known   bool              // something says what it stands
}

// collapses lists the hoses that stand less than the vacuum of a state.
func (s *Segments) collapses(sees func(port int) (high, low quantity.Pressure)) []Collapse {
	var out []Collapse
	for _, u := range s.Graph.Units {
		if !u.Item.IsHose() {
			continue
		}
		if _, low := sees(u.First); low >= 0 {
			continue
		}
		if stands, known := rating.StandsVacuum(u.Item); !known || stands < rating.PumpPulls {
			out = append(out, Collapse{u, s.SegmentOf(u.First), stands, known})
		}
	}
	return out
}
