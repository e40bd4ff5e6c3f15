package cart

import (
	"slices"
	"strings"

	"handtight/catalog"
	"handtight/pressure/pattern"
	"handtight/threads"
	"handtight/threads/title"
)

// Rings have no ends of their own: they are called by what they go into, an O-ring by its port, a
// cutting ring or an olive by its tube.

// ringKinds are what the order calls them.
var ringKinds = []string{catalog.OfRole(catalog.ORing).Name, "cutting ring", "insert"}

func isRing(kind string) bool { return slices.Contains(ringKinds, kind) }

// ringWords name a ring at the head of a line.
var ringWords = pattern.New(`(?i)^.*?(?:o[- ]?rings?|toriques?|tóric[oa]s?|olives?|cutting rings?|schneidringe?|inserts?)\b`)

// faceWords are what the port of a face seal is called.
var faceWords = pattern.New(`(?i)\bface[ -]seal\b`)

// ringEnd reads what a ring is for.
func ringEnd(kind, text string) []ending {
	rest := faceWords.ReplaceAllString(ringWords.ReplaceAllString(text, " "), "ORFS")
	r := title.Read("adaptor " + strings.Trim(rest, " ,;"))
	ring := isA(kind, catalog.ORing)
	if len(r.Ends) == 0 || len(r.Ends[0].Candidates) == 0 || ring && !r.Ends[0].Candidates[0].Family.Threaded() {
		return nil // 20 x 2.5 mm is an O-ring's own size, and no table of the program has it
	}
	end := r.Ends[0]
	end.Candidates, end.Question = slices.Clone(end.Candidates), ""
	for i := range end.Candidates {
		c := &end.Candidates[i]
		c.Sex = threads.NoSex
		if !c.Family.Threaded() {
			c.Family = threads.Compression
		}
	}
	end.Candidates = slices.CompactFunc(end.Candidates, func(a, b threads.End) bool { return a.Family == b.Family && a.Size == b.Size })
	return []ending{endingOf(&end)}
}
