package fix

import (
	"fmt"
	"strconv"
	"strings"

	"handtight/bom/build"
	"handtight/bom/repair"
)

// notes lists the lines of the tables in which something is noted of what a remedy takes away: the
// joint that it breaks, or the unit that it changes. What was seen of the old joint is not true of
// the new one. It says why where the notes of others would come to mean another unit.
func (m *mender) notes(r *repair.Remedy, steps []string) (lines []int, why string) {
	b := m.sys.Build
	var gone func(build.PortRef) bool
	both := r.Do != "change"
	if !both {
		gone = func(p build.PortRef) bool {
			return p.Unit == r.Unit.Name || r.All && (p.Unit == r.Unit.Item.ID || strings.HasPrefix(p.Unit, r.Unit.Item.ID+"/"))
		}
	} else {
		a, z := m.sys.Graph.Ports[r.Joint.A].Name(), m.sys.Graph.Ports[r.Joint.B].Name()
		gone = func(p build.PortRef) bool { return p.Name() == a || p.Name() == z }
	}
	var refs []build.PortRef
	take := func(mark build.Mark, out bool, at ...build.PortRef) {
		if !out {
			refs = append(refs, at...)
			return
		}
		p := mark.Place()
		if p.File != b.File {
			why = included
		}
		lines = append(lines, p.Line)
	}
	for _, n := range b.Noted {
		x, y := gone(n.At[0]), gone(n.At[1])
		take(n.Place, x && y || !both && (x || y), n.At[0], n.At[1])
	}
	for _, n := range b.Ends {
		take(n.Place, !both && gone(n.At), n.At)
	}
	for _, ref := range refs {
		if renumbered(ref.Unit, r, steps) {
			return nil, fmt.Sprintf("what is noted of %s would come to mean another unit: give the units names of their own in the place of `/+`", ref.Name())
		}
	}
	return lines, why
}

// renumbered reports whether a unit that a "/+" made gets another number by a remedy: one of the same
// item before it is taken out, or may be put in.
func renumbered(unit string, r *repair.Remedy, steps []string) bool {
	id, number, made := strings.Cut(unit, "/+")
	if !made {
		return false
	}
	for _, s := range steps {
		if s == id+"/+" {
			return true
		}
	}
	if r.Do != "change" || r.All {
		return false
	}
	own, at, plus := strings.Cut(r.Unit.Name, "/+")
	if !plus || own != id {
		return false
	}
	n, err := strconv.Atoi(number)
	k, wrong := strconv.Atoi(at)
	return err != nil || wrong != nil || n > k
}
