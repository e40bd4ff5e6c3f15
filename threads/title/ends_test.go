package title

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/threads"
)

// A size of which nothing is said takes the family and the sex that its neighbour says for both, unless
// the part is one whose two ends differ by nature.
func TestABareSizeTakesItsNeighboursWords(t *testing.T) {
	readMeanings(t, []meaning{
		{"the words follow both figures", `Coupling 3/4 x 1/2 NPT`, "NPT 3/4 female; NPT 1/2 female", ""},
		{"with their sex", `Elbow 3/4 x 1/2 female NPT`, "NPT 3/4 female; NPT 1/2 female", ""},
		{"the words before them", `Elbow NPT female 3/4 x 1/2`, "NPT 3/4 female; NPT 1/2 female", ""},
		{"a reducer's sexes differ or not: only the family is shared", `Reducer 3/4 x 1/2 NPT female`, "NPT 3/4; NPT 1/2 female", ""},
		{"an adaptor's second size alone is an end of which nothing is said", `Adaptor 3/4 NPT male x 1/2`, "NPT 3/4 male; ?", ""},
		{"garden hose is not shared", `Elbow 3/4 GHT female x 1/2`, "NH 3/4 female; PIPE 1/2 female", ""},
		{"a union's two tubes by one word", `Union 3/8 x 1/4 compression`, "COMP 3/8 in; COMP 1/4 in", ""},
		{"millimetres and inches are two sorts of ends", `Union 15 mm compression x 1/2`, "COMP 15 mm; PIPE 1/2", ""},
		{"a valve of two sizes with one grip is asked at both", `Stop valve 1/2 x 3/8 push-fit`, "?; PUSH 3/8 in", ""},
		{"a tap's size beside its tail is its own thread", `Tap 3/4" x 1/2" hose barb`, "PIPE 3/4 male; BARB 1/2 in", ""},
	})
	bulkhead := Read(`Bulkhead fitting 1/2 FNPT`)
	require.Equal(t, "NPT 1/2 female; NPT 1/2 female", brief(bulkhead.Ends))
	require.NotEmpty(t, bulkhead.Ends[1].Question, "a bulkhead's other end may be a nut's male")
	require.Contains(t, Read(`Stop valve 1/2 x 3/8 push-fit`).Ends[1].Question, "valve's other end")
}

// A part has as many ends as its kind, and those that the words leave out are as the one that is said.
func TestPartsHaveTheEndsOfTheirKind(t *testing.T) {
	const f, m = "NPT 1/2 female", "NPT 1/2 male"
	readMeanings(t, []meaning{
		{"a plug has one", `Plug 1/2 NPT`, m, ""},
		{"a cap has one", `Cap 1/2 NPT`, f, ""},
		{"a nipple has two", `Nipple 1/2 NPT`, m + "; " + m, ""},
		{"a tee has three", `Tee 1/2 NPT female`, f + "; " + f + "; " + f, ""},
		{"a cross has four", `Cross 1/2 NPT female`, f + "; " + f + "; " + f + "; " + f, ""},
		{"of a cross with two sizes the first is the run and the second the branches", `Cross 3/4 x 1/2 NPT female`, "NPT 3/4 female; NPT 3/4 female; NPT 1/2 female; NPT 1/2 female", ""},
		{"of a tee with two sizes the first is the run", `Tee 3/4 x 1/2 NPT female`, "NPT 3/4 female; NPT 3/4 female; NPT 1/2 female", ""},
		{"of a tee with tubes and a thread the tubes are the run", `Tee 1/4 NPT male x 10 mm push-in`, "PUSH 10 mm; NPT 1/4 male; PUSH 10 mm", ""},
		{"a valve has two", `Ball valve 1/2 NPT female`, f + "; " + f, ""},
		{"and as many as it has ways", `Ball valve 3-way 1/2 NPT female`, f + "; " + f + "; " + f, ""},
		{"in one word", `Dreiwege-Kugelhahn 1/2 NPT IG`, f + "; " + f + "; " + f, ""},
		{"four of them", `4-way valve 1/2 NPT female`, f + "; " + f + "; " + f + "; " + f, ""},
		{"five ways are none that valves have here", `Ball valve 5-way 1/2 NPT female`, f + "; " + f, "5: a count"},
		{"a hose of which one end is said", `Hydraulic hose 3/8 NPT male`, "NPT 3/8 male", "the other end (nothing is said of it)?"},
		{"and of which both are", `Hydraulic hose 3/8 NPT male both ends`, "NPT 3/8 male; NPT 3/8 male", ""},
		{"a stud elbow's other end is a tube's", `Stud elbow 1/2 NPT male`, m, "the other end (nothing is said of it)?"},
		{"an even body has the same cone twice", `Straight union 12L`, "24L 12L male; 24L 12L male", ""},
		{"a housing: feed, brine and product", `Membrane housing 1/2 NPT female feed, 1/4 NPT female product`, "NPT 1/2 female; NPT 1/2 female; NPT 1/4 female", ""},
		{"of a housing whose brine is said, the product is not", `Membrane housing 1/2 NPT female feed, 1/2 NPT female concentrate`, f + "; " + f, ""},
		{"a sequence of sexes is dealt out", `Tee 1/2 NPT F-F-M`, f + "; " + f + "; " + m, ""},
		{"three sexes for two sizes: the run has the first two", `Tee 3/4 x 1/2 NPT M-F-F`, "NPT 3/4 male; NPT 3/4 female; NPT 1/2 female", ""},
		{"a bush's two sexes are by its sizes and not by their order", `Bush 1/2 x 3/4 NPT M-F`, "NPT 1/2 female; NPT 3/4 male", ""},
	})
}

// Outlets are as many as the line counts, and no more than twelve; the inlet is by itself.
func TestOutletsOfAManifold(t *testing.T) {
	for n := 2; n <= 14; n++ {
		for _, form := range []string{"Manifold 1 NPT female, %d outlets 1/2 NPT female", "Manifold 1 NPT female, %d-outlet 1/2 NPT female", "Manifold 1 NPT female, %d x 1/2 NPT female outlets"} {
			text := fmt.Sprintf(form, n)
			large, small := 0, 0
			for _, e := range Read(text).Ends {
				switch briefEnd(e) {
				case "NPT 1 female":
					large++
				case "NPT 1/2 female":
					small++
				default:
					t.Errorf("%s: %s", text, briefEnd(e))
				}
			}
			if n > 12 {
				require.LessOrEqual(t, small, 1, text) // no manifold has so many: a count of something else
				continue
			}
			require.Equal(t, 1, large, text)
			require.Equal(t, n, small, text)
		}
	}
	readMeanings(t, []meaning{
		{"the inlet said behind its size", `Manifold 3 outlets 1/2 NPT female, inlet 1 NPT female`, "NPT 1/2 female; NPT 1/2 female; NPT 1/2 female; NPT 1 female", ""},
		{"a bar with an inlet at each end", `Manifold inlets 1 NPT female, 3 outlets 1/2 NPT female`, "NPT 1 female; NPT 1 female; NPT 1/2 female; NPT 1/2 female; NPT 1/2 female", ""},
		{"nobody counts", `Manifold 1 NPT female x 1/2 NPT female`, "NPT 1 female; NPT 1/2 female", ""},
	})
}

// A word in the line that no reader knows does not change how many ends a part has, and is named.
func TestAnUnknownWordTakesNoEnd(t *testing.T) {
	parts := map[string]int{"Plug": 1, "Cap": 1, "Nipple": 2, "Coupling": 2, "Elbow": 2, "Tee": 3, "Cross": 4, "Ball valve": 2}
	var names []string
	for name := range parts {
		names = append(names, name)
	}
	slices.Sort(names)
	rapid.Check(t, func(t *rapid.T) {
		part := rapid.SampledFrom(names).Draw(t, "part")
		word := rapid.StringMatching(`[qwz][xqvz][bdgk][jqvw]z`).Draw(t, "word")
		text := part + " 1/2 NPT " + word
		if rapid.Bool().Draw(t, "first") {
			text = word + " " + part + " 1/2 NPT"
		}
		r := Read(text)
		require.Len(t, r.Ends, parts[part], text)
		require.Contains(t, r.Unread, word, text)
		for _, e := range r.Ends {
			require.Equal(t, threads.NPT, e.Candidates[0].Family, text)
		}
	})
}
