package read

import (
	"fmt"

	"handtight/bom/source"
)

// What a build may hold at most. A plant has some hundred parts, a shop's list that is
// included some thousand: beyond these it is a mistake, and is refused before time and
// memory go into it.
const (
	mostIncludes = 1000    // files that a build includes
	mostParts    = 20_000  // items and hoses of all its files
	mostSteps    = 100_000 // units on all paths
)

// parts reads the items and hoses of a file. False: there are too many, and no more
// was read.
func (r *reader) parts(root *source.Table) bool {
	for _, list := range []struct {
		key  string
		read func(*source.Table)
	}{{"item", r.item}, {"hose", r.hose}} {
		for _, t := range root.Tables(list.key) {
			if r.read == mostParts {
				t.FaultHere(fmt.Sprintf("the build has more than %d items and hoses, and that is the most", mostParts), "include a list of what this build uses, not a whole shop's; nothing beyond this line was read")
				return false
			}
			r.read++
			list.read(t)
		}
	}
	return true
}
