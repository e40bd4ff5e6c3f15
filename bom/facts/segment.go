package facts

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/graph"
	"handtight/bom/rating"
	"handtight/bom/segment"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

// Segment is a stretch of one pressure: what it sees over all states, and what its weakest
// member holds.
type Segment struct {
	Name      string   `json:"name"`
	Runs      []string `json:"runs"`
	Members   []string `json:"members"`
	Normal    Number   `json:"normal_bar"`
	Worst     Number   `json:"worst_bar"`
	Unbounded bool     `json:"unbounded,omitempty"`
	Cause     string   `json:"worst_cause"`
	Lowest    Number   `json:"lowest_bar"`
	Weakest   string   `json:"weakest"` // of the members whose rating is known
	Allowable          // of the weakest; its figure is null while one member's rating is not known
	AtMost    Number   `json:"at_most_bar"` // the least that is known of any member: the segment holds no more
	Unrated   []string `json:"unrated"`     // members whose rating is not known
	Guessed   []string `json:"guessed"`     // members on high pressure of which there is only a figure that never clears it
	Memory    []string `json:"from_memory"` // members on high pressure whose figure nobody has looked up: "hose, 180 bar"
	Margin    Number   `json:"margin"`      // below 0 where it holds less; null where either is not known or has no bound
	Proof     Number   `json:"proof_bar"`   // the most that a first test may put on it
	High      bool     `json:"high_pressure"`
	LowCause  string   `json:"lowest_cause"` // "" where there is no vacuum
	Over      bool     `json:"over"`         // it is known to see more than it holds
	Raised    bool     `json:"-"`            // some state is worse than normal running
}

// SegmentOf shows one segment of a build.
func SegmentOf(sys *bom.System, g *segment.Segment) Segment {
	worst, state := g.Load.Worst()
	row := Segment{
		Name: g.Name, Runs: []string{}, Members: []string{}, Unrated: []string{}, Guessed: []string{}, Memory: []string{}, Normal: bars(g.Load.Normal), Worst: bars(worst),
		Unbounded: worst.Unbounded(), Lowest: bars(g.Load.Low), Allowable: AllowableOf(g.Allowable), High: g.High(),
	}
	if state != nil {
		row.Cause, row.Raised = state.Cause, pressure.Above(worst, g.Load.Normal)
	}
	if g.Load.Low < 0 {
		row.LowCause = g.Load.ByLow.Cause
	}
	for _, r := range g.Runs {
		row.Runs = append(row.Runs, r.Name)
	}
	for _, u := range g.Units {
		row.Members = append(row.Members, u.Name)
	}
	if g.Allowable.Known {
		row.Weakest, row.Over = g.Allowable.What, pressure.Above(worst, g.Allowable.Rating.Pressure)
		row.AtMost = row.Bar
	}
	for _, u := range g.Unrated {
		row.Unrated = append(row.Unrated, u.Name)
	}
	for _, u := range g.Guessed {
		row.Guessed = append(row.Guessed, u.Name)
	}
	for _, u := range g.Memory {
		row.Memory = append(row.Memory, remembered(sys, g, u))
	}
	if !g.Rated() {
		row.Bar = Number{}
	}
	if m, ok := g.Margin(); ok {
		row.Margin = bars(m)
	}
	if p, ok := sys.Segments.Proof(g); ok {
		row.Proof = bars(p)
	}
	return row
}

// remembered says what a member holds by a figure that nobody has looked up.
func remembered(sys *bom.System, g *segment.Segment, u *graph.Unit) string {
	var least rating.Allowable
	for _, p := range g.Ports {
		if sys.Graph.Ports[p].Unit != u {
			continue
		}
		if h := sys.Ratings.Port(p); h.Known && h.Rating.Status == pressure.Memory {
			least.Lower(h)
		}
	}
	return fmt.Sprintf("%s, %s bar", u.Name, quantity.Figures(least.Rating.Pressure.Bar()))
}
