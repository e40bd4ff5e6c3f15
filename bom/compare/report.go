package compare

import (
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/bom/segment"
)

// Report is what changed from an old build to a new one.
type Report struct {
	Added    []Thing // in the order of the new build
	Removed  []Thing // in the order of the old one
	Replaced []Replacement
	Changed  []Change // items that kept their id and say other things
	Joints   []Joint
	Segments []Segment
	New      []finding.Finding // that only the new build has
	Gone     []finding.Finding // that only the old build had
	Cleared  bool              // of the new findings none is a stop
	Sums     []Sum             // what changed of money and counts: rates, shops, prices, counts, totals
	NoSums   error             // why the totals could not be compared; nil where they were
}

// Thing is a unit, or an item that is not placed, on one side.
type Thing struct {
	Name string
	Item *build.Item
	Run  string // where it stands; "" if it is not placed
}

// Replacement is another item in the same place.
type Replacement struct{ Old, New Thing }

// Change is a fact of an item that was changed.
type Change struct{ Item, What, Old, New string }

// Joint is a joint whose verdict changed, or a new one that does not close.
type Joint struct {
	Old, New               string // both ports; Old is "" for a new joint
	Number                 int    // in the new build
	OldVerdict, NewVerdict string // "not judged" where an end is not known
	Worse                  bool
}

// Segment is a segment whose figures changed.
type Segment struct {
	Old, New *segment.Segment
	Worse    []string // what is worse, with both figures; empty if nothing is
	Better   []string
}

// Worse tells how many joints and segments changed for the worse.
func (r *Report) Worse() (joints, segments int) {
	for _, j := range r.Joints {
		if j.Worse {
			joints++
		}
	}
	for _, g := range r.Segments {
		if len(g.Worse) > 0 {
			segments++
		}
	}
	return joints, segments
}

// Same reports whether nothing changed.
func (r *Report) Same() bool {
	return len(r.Added)+len(r.Removed)+len(r.Replaced)+len(r.Changed)+len(r.Joints)+len(r.Segments)+len(r.New)+len(r.Gone)+len(r.Sums) == 0
}
