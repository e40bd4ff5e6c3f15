package repair

import (
	"fmt"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
)

// Gone lists what is noted of what the remedy takes away: the joint that it breaks, or the unit that
// it changes. What was seen of the old joint is not true of the new one. Others are the ports of all
// other notes.
func (r *Remedy) Gone(sys *bom.System) (notes []build.Mark, others []build.PortRef) {
	unit := r.Do == "change"
	var is func(build.PortRef) bool
	switch {
	case unit:
		is = func(p build.PortRef) bool {
			return p.Unit == r.Unit.Name || r.All && (p.Unit == r.Unit.Item.ID || strings.HasPrefix(p.Unit, r.Unit.Item.ID+"/"))
		}
	case r.Joint == nil:
		is = func(build.PortRef) bool { return false }
	default:
		a, z := sys.Graph.Ports[r.Joint.A].Name(), sys.Graph.Ports[r.Joint.B].Name()
		is = func(p build.PortRef) bool { return p.Name() == a || p.Name() == z }
	}
	take := func(mark build.Mark, out bool, at ...build.PortRef) {
		if out {
			notes = append(notes, mark)
		} else {
			others = append(others, at...)
		}
	}
	for _, n := range sys.Build.Noted {
		x, y := is(n.At[0]), is(n.At[1])
		take(n.Place, x && y || unit && (x || y), n.At[0], n.At[1])
	}
	for _, n := range sys.Build.Ends {
		take(n.Place, unit && is(n.At), n.At)
	}
	return notes, others
}

// takeOut says which notes are to be taken out of the file with it; "" where there are none.
func (r *Remedy) takeOut(sys *bom.System) string {
	notes, _ := r.Gone(sys)
	if len(notes) == 0 {
		return ""
	}
	var at []string
	for _, n := range notes {
		at = append(at, fmt.Sprint(n.Place().Line))
	}
	return "; what was noted before, in line " + build.InWords(at) + ", is taken out"
}
