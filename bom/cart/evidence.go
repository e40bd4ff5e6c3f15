package cart

import (
	"strconv"
	"sync"
)

// Evidence is one thing that speaks for a match, or against it.
type Evidence struct {
	Name   string // as table/evidence.csv names it
	Points int    // hundredths
	Says   string
}

// sort is a sort of evidence, in the order of table/evidence.csv.
type sort uint8

const (
	byAccepted sort = iota
	byItem
	byCode
	byEnds
	byEnd
	byEndsOpen
	byEndOpen
	byEndsSome
	byEndsNear
	byEndNear
	byEndsUnsaid
	byEndsDiffer
	byKind
	byKindDiffers
	byMaterial
	byMaterialDiffers
	byFigure
	byFigureDiffers
	byBoreNear
	bySpec
	byLength
	byLengthDiffers
	byWords
	byAllWords
	byTrait
	byOnly
	byGrips
	sorts
)

// evidence is the table by sort.
var evidence = sync.OnceValue(func() *[sorts]Evidence {
	var out [sorts]Evidence
	for i, r := range readTable("evidence.csv") {
		n, err := strconv.Atoi(r[1])
		if err != nil {
			panic("cart: evidence " + r[0] + " has no points")
		}
		out[i] = Evidence{r[0], n, r[2]}
	}
	return &out
})

// score is the evidence of a match: which sorts there are, and their sum. Words count by
// how many are shared.
type score struct {
	points int
	words  int
	got    uint32
	twice  uint32 // given a second time: two figures
}

func (w *score) add(s sort) {
	if w.has(s) {
		w.twice |= 1 << s
	}
	w.got |= 1 << s
	w.points += evidence()[s].Points
}

func (w *score) has(s sort) bool { return w.got&(1<<s) != 0 }

// share adds a part of what all words would count.
func (w *score) share(common, of int) {
	if w.words = common * evidence()[byWords].Points / of; w.words > 0 {
		w.got |= 1 << byWords
		w.points += w.words
	}
}

// list gives the evidence in the order of the table.
func (w *score) list() []Evidence {
	var out []Evidence
	for s := range sorts {
		e := evidence()[s]
		if s == byWords {
			e.Points = w.words
		}
		for _, set := range []uint32{w.got, w.twice} {
			if set&(1<<s) != 0 && e.Points != 0 {
				out = append(out, e)
			}
		}
	}
	return out
}

// total is the confidence: 0 to 1.
func (w *score) total() float64 { return float64(min(max(w.points, 0), 100)) / 100 }
