package fix

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"handtight/bom/repair"
)

// notes lists a line of each table in which something is noted of what a remedy takes away, or says
// why the notes of others would come to mean another unit.
func (m *mender) notes(r *repair.Remedy, steps []string) (lines []int, why string) {
	gone, others := r.Gone(m.sys)
	for _, n := range gone {
		p := n.Place()
		if p.File != m.sys.Build.File {
			return nil, included
		}
		lines = append(lines, p.Line)
	}
	for _, ref := range others {
		if renumbered(ref.Unit, r, steps) {
			return nil, fmt.Sprintf("what is noted of %s would come to mean another unit: give the units names of their own in the place of `/+`", ref.Name())
		}
	}
	return lines, ""
}

// renumbered reports whether a unit that a "/+" made gets another number by a remedy: one of the same
// item before it is taken out, or may be put in.
func renumbered(unit string, r *repair.Remedy, steps []string) bool {
	id, number, made := strings.Cut(unit, "/+")
	if !made {
		return false
	}
	if slices.Contains(steps, id+"/+") {
		return true
	}
	if r.Do != "change" || r.All || r.End != nil {
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
