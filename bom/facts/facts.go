package facts

import (
	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
	"handtight/bom/joint"
	"handtight/bom/segment"
)

// Facts is what is shown of a checked build.
type Facts struct {
	Build     string      `json:"build"`
	Findings  []Finding   `json:"findings"`
	Joints    []Joint     `json:"joints"`
	Segments  []Segment   `json:"segments"`
	Parts     []Part      `json:"parts"` // in the order in which they are placed
	Questions []Question  `json:"questions"`
	States    []State     `json:"states,omitempty"` // only when asked for
	Counts    Counts      `json:"counts"`
	Duty      []DutyPlant `json:"duty"`    // what each plant makes and takes
	Carried   []Carried   `json:"carried"` // keys that are read, and that nothing weighs

	File        string       `json:"-"`
	WorstFirst  []Part       `json:"-"` // the parts in the order in which they need looking at
	Cautions    []string     `json:"-"` // the usual ones, a sentence each
	Assumptions []Assumption `json:"-"`
	Clamped     bool         `json:"-"` // some joint is a hose on a tail, which may hold less than both
}

// Question is one thing to ask before buying.
type Question struct {
	Port   string `json:"port"`
	Ask    string `json:"ask"`
	Joints int    `json:"joints"` // how many the answer decides
	At     []int  `json:"joint_numbers"`
}

// Counts is how much there is of everything.
type Counts struct {
	Stop     int `json:"stop"`
	Caution  int `json:"caution"`
	Note     int `json:"note"`
	Joints   int `json:"joints"`
	Segments int `json:"segments"`
}

// Of shows a build that has been walked and checked; its states are asked for apart.
func Of(sys *bom.System, findings []finding.Finding) *Facts {
	parts := sys.Segments.Parts()
	f := &Facts{
		Build: sys.Build.Name, File: sys.Build.File, Findings: Findings(findings), Joints: []Joint{}, Segments: []Segment{},
		Parts: partsOf(sys, parts), WorstFirst: partsOf(sys, segment.WorstFirst(parts)), Questions: []Question{}, Duty: []DutyPlant{},
		Counts: Counts{
			finding.Count(findings, finding.Stop), finding.Count(findings, finding.Caution), finding.Count(findings, finding.Note),
			len(sys.Graph.Joints), len(sys.Segments.All),
		},
		Carried: carriedOf(sys), Cautions: Cautions(sys), Assumptions: assumptions(sys),
	}
	for i := range findings {
		f.Findings[i].Remedies = remediesOf(sys, &findings[i])
		f.Findings[i].MayStay = mayStay(sys, &findings[i])
	}
	for _, j := range sys.Graph.Joints {
		f.Joints = append(f.Joints, jointOf(sys, j))
		f.Clamped = f.Clamped || sys.Ratings.Joint(j).Known
	}
	for _, g := range sys.Segments.All {
		f.Segments = append(f.Segments, SegmentOf(sys, g))
	}
	for _, m := range duty.Of(sys).Plants {
		f.Duty = append(f.Duty, dutyPlant(m, false))
	}
	for _, q := range joint.Questions(sys.Graph) {
		f.Questions = append(f.Questions, Question(q))
	}
	return f
}
