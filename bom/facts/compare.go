package facts

import (
	"handtight/bom"
	"handtight/bom/compare"
	"handtight/bom/finding"
)

// Comparison is what changed from one build to another.
type Comparison struct {
	Old      string          `json:"old"`
	New      string          `json:"new"`
	Added    []Thing         `json:"added"`
	Removed  []Thing         `json:"removed"`
	Replaced []Replaced      `json:"replaced"`
	Changed  []Changed       `json:"changed"`
	Joints   []JointChange   `json:"joints"`
	Segments []SegmentChange `json:"segments"`
	NewFound []Finding       `json:"new_findings"`
	Gone     []Finding       `json:"gone_findings"`
	Sums     []ChangedSum    `json:"sums"`
	Counts   CompareCounts   `json:"counts"`
}

// ChangedSum is a price, rate, count or sum that is not the same.
type ChangedSum struct {
	What string `json:"what"`
	Of   string `json:"of"`
	Shop string `json:"shop"`
	Old  string `json:"old"`
	New  string `json:"new"`
}

// Thing is a placed part.
type Thing struct {
	Name  string `json:"name"`
	Item  string `json:"item"`
	Kind  string `json:"kind"`
	About string `json:"about"`
	Run   string `json:"run"`
}

// Replaced is a part in the place of another.
type Replaced struct {
	Run string `json:"run"`
	Old Thing  `json:"old"`
	New Thing  `json:"new"`
}

// Changed is what an item says otherwise.
type Changed struct {
	Item string `json:"item"`
	What string `json:"what"`
	Old  string `json:"old"`
	New  string `json:"new"`
}

// JointChange is a joint that is judged otherwise.
type JointChange struct {
	Number     int    `json:"number"`
	Old        string `json:"old"`
	New        string `json:"new"`
	OldVerdict string `json:"old_verdict"`
	NewVerdict string `json:"new_verdict"`
	Worse      bool   `json:"worse"`
}

// SegmentChange is a stretch whose pressures or ratings are not the same.
type SegmentChange struct {
	Old    Segment  `json:"old"`
	New    Segment  `json:"new"`
	Worse  []string `json:"worse"`
	Better []string `json:"better"`
}

// CompareCounts is how much became worse.
type CompareCounts struct {
	WorseJoints   int `json:"worse_joints"`
	WorseSegments int `json:"worse_segments"`
	NewStops      int `json:"new_stops"`
}

// CompareOf shows what changed between two walked builds.
func CompareOf(before, after *bom.System, r *compare.Report) Comparison {
	f := Comparison{
		Old: before.Build.Name, New: after.Build.Name, Added: thingsOf(r.Added), Removed: thingsOf(r.Removed),
		Replaced: []Replaced{}, Changed: []Changed{}, Joints: []JointChange{}, Segments: []SegmentChange{},
		NewFound: Findings(r.New), Gone: Findings(r.Gone),
	}
	f.Sums = []ChangedSum{}
	for _, s := range r.Sums {
		f.Sums = append(f.Sums, ChangedSum(s))
	}
	f.Counts.WorseJoints, f.Counts.WorseSegments = r.Worse()
	f.Counts.NewStops = finding.Count(r.New, finding.Stop)
	for _, x := range r.Replaced {
		f.Replaced = append(f.Replaced, Replaced{x.New.Run, thingOf(x.Old), thingOf(x.New)})
	}
	for _, x := range r.Changed {
		f.Changed = append(f.Changed, Changed(x))
	}
	for _, j := range r.Joints {
		f.Joints = append(f.Joints, JointChange{j.Number, j.Old, j.New, j.OldVerdict, j.NewVerdict, j.Worse})
	}
	for _, g := range r.Segments {
		f.Segments = append(f.Segments, SegmentChange{SegmentOf(before, g.Old), SegmentOf(after, g.New), orEmpty(g.Worse), orEmpty(g.Better)})
	}
	return f
}

func thingsOf(list []compare.Thing) []Thing {
	out := []Thing{}
	for _, t := range list {
		out = append(out, thingOf(t))
	}
	return out
}

func thingOf(t compare.Thing) Thing {
	about := t.Item.About
	if about == "" {
		about = t.Item.Title
	}
	return Thing{t.Name, t.Item.ID, t.Item.Kind.Name, about, t.Run}
}
