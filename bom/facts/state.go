package facts

import (
	"handtight/bom/segment"
)

// State is one way the build can stand: what every segment sees in it, and what it overloads.
type State struct {
	Name      string         `json:"name"`
	Cause     string         `json:"cause"`
	Failure   bool           `json:"failure"`
	Segments  []StateSegment `json:"segments"`
	Overloads []Overload     `json:"overloads"`
	Collapses []Collapse     `json:"collapses"`
	Untold    []string       `json:"rating_unknown"` // parts that see pressure, and nothing says what they hold
	Sort      string         `json:"sort"`           // "normal course", "act", "failure"

	UntoldSees []Overload `json:"-"` // the same, with what they see
}

// StateSegment is what one segment sees in a state.
type StateSegment struct {
	Name      string `json:"name"`
	Bar       Number `json:"bar"`
	Unbounded bool   `json:"unbounded,omitempty"`
	Lowest    Number `json:"lowest_bar"`
	Normal    Number `json:"normal_bar"`
	Changed   bool   `json:"changed"` // it stands otherwise than in normal running

	Weakest   string     `json:"-"`
	Holds     Number     `json:"-"` // of the weakest
	Margin    Number     `json:"-"` // here; not known where nothing bounds it or nothing says what it holds
	Overloads []Overload `json:"-"` // those of the state that stand in it
	Collapses []Collapse `json:"-"`
	Untold    []Overload `json:"-"`
}

// Overload is what sees more than it holds, or of which nothing says what it holds.
type Overload struct {
	What      string `json:"what"`
	Sees      Number `json:"sees_bar"`
	Unbounded bool   `json:"unbounded,omitempty"`
	Holds     Number `json:"holds_bar"`
}

// Collapse is a hose that the vacuum may flatten.
type Collapse struct {
	Hose   string `json:"hose"`
	Stands Number `json:"stands_vacuum_bar"` // null where nothing says it
}

// States shows states in their order.
func States(views []segment.StateView) []State {
	out := []State{}
	for i := range views {
		out = append(out, stateOf(&views[i]))
	}
	return out
}

func stateOf(v *segment.StateView) State {
	st := State{
		Name: v.Name, Cause: v.Cause, Failure: v.Failure, Sort: "act",
		Segments: []StateSegment{}, Overloads: []Overload{}, Collapses: []Collapse{}, Untold: []string{},
	}
	switch {
	case v.Failure:
		st.Sort = "failure"
	case v.Name == "normal" || v.Name == "flush":
		st.Sort = "normal course"
	}
	at := map[*segment.Segment]int{}
	for i := range v.Segments {
		g := &v.Segments[i]
		at[g.Segment] = i
		st.Segments = append(st.Segments, stateSegment(g))
	}
	in := func(g *segment.Segment) *StateSegment {
		if i, ok := at[g]; ok {
			return &st.Segments[i]
		}
		return &StateSegment{} // a port that no joint leads to
	}
	for _, o := range v.Overloads {
		x := Overload{o.What, bars(o.Sees), o.Sees.Unbounded(), bars(o.Holds)}
		st.Overloads = append(st.Overloads, x)
		g := in(o.Segment)
		g.Overloads = append(g.Overloads, x)
	}
	for _, c := range v.Collapses {
		x := Collapse{Hose: c.Hose.Name}
		if c.Known {
			x.Stands = bars(c.Stands)
		}
		st.Collapses = append(st.Collapses, x)
		g := in(c.Segment)
		g.Collapses = append(g.Collapses, x)
	}
	for _, o := range v.Untold {
		x := Overload{What: o.What, Sees: bars(o.Sees), Unbounded: o.Sees.Unbounded()}
		st.Untold, st.UntoldSees = append(st.Untold, o.What), append(st.UntoldSees, x)
		g := in(o.Segment)
		g.Untold = append(g.Untold, x)
	}
	return st
}

func stateSegment(g *segment.SegmentView) StateSegment {
	row := StateSegment{
		Name: g.Segment.Name, Bar: bars(g.High), Unbounded: g.High.Unbounded(), Lowest: bars(g.Low),
		Normal: bars(g.Segment.Load.Normal), Changed: g.Changed(),
	}
	if h := g.Segment.Allowable; g.Segment.Rated() {
		row.Weakest, row.Holds = h.What, bars(h.Rating.Pressure)
		if !row.Unbounded {
			row.Margin = bars(h.Rating.Pressure - g.High)
		}
	}
	return row
}
