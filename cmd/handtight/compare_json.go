package main

import (
	"handtight/bom"
	"handtight/bom/compare"
	"handtight/bom/facts"
	"handtight/bom/finding"
)

type compareFacts struct {
	Old      string              `json:"old"`
	New      string              `json:"new"`
	Added    []thingFacts        `json:"added"`
	Removed  []thingFacts        `json:"removed"`
	Replaced []replacedFacts     `json:"replaced"`
	Changed  []changeFacts       `json:"changed"`
	Joints   []jointChangeFacts  `json:"joints"`
	Segments []segmentChangeFact `json:"segments"`
	NewFound []facts.Finding     `json:"new_findings"`
	Gone     []facts.Finding     `json:"gone_findings"`
	Sums     []sumFacts          `json:"sums"`
	Counts   compareCounts       `json:"counts"`
}

type sumFacts struct {
	What string `json:"what"`
	Of   string `json:"of"`
	Shop string `json:"shop"`
	Old  string `json:"old"`
	New  string `json:"new"`
}

type thingFacts struct {
	Name  string `json:"name"`
	Item  string `json:"item"`
	Kind  string `json:"kind"`
	About string `json:"about"`
	Run   string `json:"run"`
}

type replacedFacts struct {
	Run string     `json:"run"`
	Old thingFacts `json:"old"`
	New thingFacts `json:"new"`
}

type changeFacts struct {
	Item string `json:"item"`
	What string `json:"what"`
	Old  string `json:"old"`
	New  string `json:"new"`
}

type jointChangeFacts struct {
	Number     int    `json:"number"`
	Old        string `json:"old"`
	New        string `json:"new"`
	OldVerdict string `json:"old_verdict"`
	NewVerdict string `json:"new_verdict"`
	Worse      bool   `json:"worse"`
}

type segmentChangeFact struct {
	Old    facts.Segment `json:"old"`
	New    facts.Segment `json:"new"`
	Worse  []string      `json:"worse"`
	Better []string      `json:"better"`
}

type compareCounts struct {
	WorseJoints   int `json:"worse_joints"`
	WorseSegments int `json:"worse_segments"`
	NewStops      int `json:"new_stops"`
}

func compareFactsOf(before, after *bom.System, r *compare.Report) compareFacts {
	f := compareFacts{
		Old: before.Build.Name, New: after.Build.Name, Added: thingsOf(r.Added), Removed: thingsOf(r.Removed),
		Replaced: []replacedFacts{}, Changed: []changeFacts{}, Joints: []jointChangeFacts{}, Segments: []segmentChangeFact{},
		NewFound: facts.Findings(r.New), Gone: facts.Findings(r.Gone),
	}
	f.Sums = []sumFacts{}
	for _, s := range r.Sums {
		f.Sums = append(f.Sums, sumFacts(s))
	}
	f.Counts.WorseJoints, f.Counts.WorseSegments = r.Worse()
	f.Counts.NewStops = finding.Count(r.New, finding.Stop)
	for _, x := range r.Replaced {
		f.Replaced = append(f.Replaced, replacedFacts{x.New.Run, thingOf(x.Old), thingOf(x.New)})
	}
	for _, x := range r.Changed {
		f.Changed = append(f.Changed, changeFacts(x))
	}
	for _, j := range r.Joints {
		f.Joints = append(f.Joints, jointChangeFacts{j.Number, j.Old, j.New, j.OldVerdict, j.NewVerdict, j.Worse})
	}
	for _, g := range r.Segments {
		f.Segments = append(f.Segments, segmentChangeFact{facts.SegmentOf(before, g.Old), facts.SegmentOf(after, g.New), names(g.Worse), names(g.Better)})
	}
	return f
}

func thingsOf(list []compare.Thing) []thingFacts {
	out := []thingFacts{}
	for _, t := range list {
		out = append(out, thingOf(t))
	}
	return out
}

func thingOf(t compare.Thing) thingFacts {
	about := t.Item.About
	if about == "" {
		about = t.Item.Title
	}
	return thingFacts{t.Name, t.Item.ID, t.Item.Kind.Name, about, t.Run}
}

// stops counts the stops among findings.
func stops(list []finding.Finding) int { return finding.Count(list, finding.Stop) }
