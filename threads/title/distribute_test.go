package title

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/threads"
)

// What is said once holds for the ends that lack it, and only for those.
func TestWordsThatHoldForSeveralEnds(t *testing.T) {
	readMeanings(t, []meaning{
		{"words first, then their sizes: the first word is the first size's", `Adaptor MHT x FPT 3/4 x 1/2`, "NH 3/4 male; NPT 1/2 female", ""},
		{"three words, two sizes: no list in parallel, and of the second nothing is said", `Adaptor NPT male x 3/4 x 1/2`, "NPT 3/4 male; ?", ""},
		{"the size behind is that of both sexes", `Female to female coupling 1/2 NPT`, "NPT 1/2 female; NPT 1/2 female", ""},
		{"a standard before the thread is no end of its own", `Nipple ISO 7 - R 3/4`, "R 3/4 male; R 3/4 male", ""},
		{"the size of both, behind the words", `Adaptor male JIC x male JIC - 9/16-18`, "JIC -6 male; JIC -6 male", ""},
		{"the sex of an end behind its x", `Adaptor 1/2 NPT x female`, "NPT 1/2 female", ""},
		{"where the first has its own, it is a second end of that size", `Adaptor 1/2 NPT male x female`, "NPT 1/2 male; NPT 1/2 female", ""},
		{"garden hose is of one size, whatever stands beside it", `Adaptor 1/2 NPT female x GHT male`, "NPT 1/2 female; NH 3/4 male", ""},
		{"and named behind a comma it is that of the bare 3/4", `Adaptor 1/2 NPT female x 3/4, GHT`, "NPT 1/2 female; NH 3/4", ""},
		{"named without any size it is an end", `Garden hose adaptor GHT female`, "NH 3/4 female", ""},
		{"no other thread is read without its size", `Adaptor NPT female`, "", ""},
		{"two strokes of sexes on a tee with a branch: the two are its run", `Tee 3/8 NPT male/female, branch 1/4 NPT female`, "NPT 3/8 male; NPT 3/8 female; NPT 1/4 female", ""},
		{"taper said apart holds for both", `Nipple 3/4 BSP x 1/2 BSP, taper`, "R 3/4 male; R 1/2 male", ""},
		{"plastic said apart holds for both", `Nipple 3/4 NPT x 1/2 NPT, plastic`, "NPT 3/4 male plastic; NPT 1/2 male plastic", ""},
		{"a sex said apart holds for the thread, and not for the tail", `Hose tail 3/4 NPT x 20 mm, female`, "NPT 3/4 female; BARB 20 mm", ""},
		{"and so it does where the tail's size is not said", `Hose tail 3/4 NPT, female`, "NPT 3/4 female; BARB ", ""},
		{"or where it stands behind the tail's size", `Hose tail 3/4 NPT x 20 mm female`, "NPT 3/4 female; BARB 20 mm", ""},
		{"hose behind the x is a second end where the first is said", `3/4 NPT male x hose`, "NPT 3/4 male; BARB 3/4 in", ""},
		{"inlet and outlet are two", `Strainer, inlet/outlet 1" NPT female`, "NPT 1 female; NPT 1 female", ""},
	})
}

// A seal named apart goes to the nut; where none is, to the female; where none is, to every end.
func TestASealNamedApart(t *testing.T) {
	readMeanings(t, []meaning{
		{"to the nut", `Adaptor G 1/2 male x G 3/4 female swivel, with washer`, "G 1/2 male; G 3/4 female swivel washer", ""},
		{"to the female", `Adaptor G 1/2 male x G 3/4 female, with washer`, "G 1/2 male; G 3/4 female washer", ""},
		{"to both males", `Nipple G 1/2 male x G 3/4 male, with washer`, "G 1/2 male washer; G 3/4 male washer", ""},
		{"a hose tail has none for it: named", `Hose tail G 3/4 male x 20 mm, with washer`, "G 3/4 male; BARB 20 mm", "with washer: no end takes it"},
	})
}

// A size that comes several times is as many ends, and two phrases of one size are of the number.
func TestSizesThatComeSeveralTimes(t *testing.T) {
	fig := &figure{kind: inchSize, v: 0.5, times: 3}
	one, two := &phrase{fig: fig}, &phrase{fig: fig}
	require.Len(t, (&line{}).repeated([]*phrase{one}), 3)
	require.Zero(t, fig.times, "it is told once")
	fig.times = 3
	require.Len(t, (&line{}).repeated([]*phrase{one, two}), 3, "each of the two stands for one of the three")
	other := &phrase{fig: &figure{kind: inchSize, v: 0.75}}
	require.Len(t, (&line{}).repeated([]*phrase{other, {attr: isPair, fig: &figure{}}}), 3, "inlet and outlet beside another end")
	require.Len(t, (&line{}).repeated([]*phrase{{attr: isPair, fig: &figure{}}}), 1, "alone, the kind says how many")
	require.Len(t, (&line{}).repeated([]*phrase{{}}), 1, "without a size")
}

// Lists in parallel are paired from first to last, whatever the words and sizes are.
func TestListsInParallel(t *testing.T) {
	words := map[string]string{"MNPT": "NPT %s male", "FNPT": "NPT %s female", "BSPP male": "G %s male", "Rc": "Rc %s female"}
	names := []string{"MNPT", "FNPT", "BSPP male", "Rc"}
	sizes := []string{"1/4", "3/8", "1/2", "3/4", "1"}
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.SampledFrom(names).Draw(t, "a"), rapid.SampledFrom(names).Draw(t, "b")
		x, y := rapid.SampledFrom(sizes).Draw(t, "x"), rapid.SampledFrom(sizes).Draw(t, "y")
		text := fmt.Sprintf("%s x %s adaptor, %s x %s", a, b, x, y)
		require.Equal(t, fmt.Sprintf(words[a]+"; "+words[b], x, y), brief(Read(text).Ends), text)
	})
}

// Two ends given whole are the same two in either order, and whichever part they are of.
func TestTheOrderOfTwoEndsDoesNotCount(t *testing.T) {
	ends := map[string]string{
		"1/2 NPT male": "NPT 1/2 male", "3/4 NPT female": "NPT 3/4 female", "G 1/2 female": "G 1/2 female", "R 3/8 male": "R 3/8 male", "-8 JIC male": "JIC -8 male",
		"M22x1.5 male": "M M22x1.5 male", "20 mm hose tail": "BARB 20 mm", "10 mm push-in": "PUSH 10 mm", "15 mm compression": "COMP 15 mm", "Rc 1/4 female": "Rc 1/4 female",
	}
	var texts []string
	for text := range ends {
		texts = append(texts, text)
	}
	slices.Sort(texts)
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.SampledFrom(texts).Draw(t, "a"), rapid.SampledFrom(texts).Draw(t, "b")
		part := rapid.SampledFrom([]string{"Adaptor", "Elbow", "Coupling", "Zwquv adaptor", "Union"}).Draw(t, "part")
		between := rapid.SampledFrom([]string{" x ", " X ", " × ", " to ", " - "}).Draw(t, "between")
		text := part + " " + a + between + b
		require.Equal(t, ends[a]+"; "+ends[b], brief(Read(text).Ends), text)
	})
}

// A thread is one whose size is a thread's and whose words are no tube's.
func TestThreadLike(t *testing.T) {
	inch, mm, metric := &figure{kind: inchSize, v: 0.5}, &figure{kind: mmSize, v: 15}, &figure{kind: metricSize, v: 22}
	male := []threads.Sex{threads.Male}
	for why, row := range map[string]struct {
		c    phrase
		want bool
	}{
		"an inch size":                     {phrase{fig: inch}, true},
		"no size":                          {phrase{sexes: male}, false},
		"millimetres":                      {phrase{fig: mm, sexes: male}, false},
		"a grip without a thread":          {phrase{fig: inch, end: "PUSH"}, false},
		"a grip with a family":             {phrase{fig: inch, end: "PUSH", fam: &sense{value: "NPT"}}, true},
		"a tail with a sex":                {phrase{fig: inch, end: "BARB", sexes: male}, true},
		"a tail called a thread":           {phrase{fig: inch, end: "BARB", thread: true}, true},
		"a tail alone":                     {phrase{fig: inch, end: "BARB"}, false},
		"a push-in end with a sex":         {phrase{fig: inch, end: "PUSH", sexes: male}, false},
		"a metric thread, whatever it is":  {phrase{fig: metric, end: "PUSH"}, true},
		"a cone, which tube and thread is": {phrase{fig: &figure{kind: coneSize, v: 12}, end: "TUBE"}, true},
	} {
		require.Equal(t, row.want, threadLike(&row.c), why)
	}
}
