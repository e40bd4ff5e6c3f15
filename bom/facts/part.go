package facts

import (
	"handtight/bom"
	"handtight/bom/segment"
	"handtight/pressure"
)

// Part is one placed unit, by the port that decides: what it sees over all states, and what
// it holds.
type Part struct {
	Unit        string `json:"unit"`
	Item        string `json:"item"`
	Kind        string `json:"kind"`
	Port        string `json:"port"`
	Segment     string `json:"segment"` // "" where nothing is joined to the port
	Normal      Number `json:"normal_bar"`
	Worst       Number `json:"worst_bar"`
	Unbounded   bool   `json:"unbounded"`
	Cause       string `json:"worst_cause"`
	Lowest      Number `json:"lowest_bar"`
	LowestCause string `json:"lowest_cause"` // "" where there is no vacuum
	Allowable
	Margin Number `json:"margin"`
	High   bool   `json:"high_pressure"`
	Over   bool   `json:"over"` // it is known to see more than it holds
	Raised bool   `json:"-"`    // some state is worse for it than normal running
}

// partsOf shows parts in their order.
func partsOf(sys *bom.System, list []segment.Part) []Part {
	out := []Part{}
	for i := range list {
		p := &list[i]
		row := Part{
			Unit: p.Unit.Name, Item: p.Unit.Item.ID, Kind: p.Unit.Item.Kind.Name, Port: sys.Graph.Ports[p.Port].Name(),
			Normal: bars(p.Normal), Worst: bars(p.Worst), Unbounded: p.Worst.Unbounded(), Lowest: bars(p.Low),
			Allowable: AllowableOf(p.Allowable), High: p.High(), Over: p.Over(),
		}
		if p.Segment != nil {
			row.Segment = p.Segment.Name
		}
		if p.Cause != nil {
			row.Cause, row.Raised = p.Cause.Cause, pressure.Above(p.Worst, p.Normal)
		}
		if p.LowBy != nil {
			row.LowestCause = p.LowBy.Cause
		}
		if m, ok := p.Margin(); ok {
			row.Margin = bars(m)
		}
		out = append(out, row)
	}
	return out
}
