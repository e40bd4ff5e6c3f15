package title

import (
	"encoding/csv"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// A line is read right, or it is asked about, or it is wrong and nothing says so.
const (
	right  = "right"
	asked  = "asked"
	silent = "silent"
)

// verdict says how a reading answers its label. What a line leaves unsaid must be
// open or asked; an end that nobody asked about and that the label does not have
// is silently wrong.
func (l labelled) verdict(r threads.Reading) (string, string) {
	if strings.HasPrefix(l.ambiguous, "yes") && allAsked(r) {
		return right, "" // nobody can tell what the line means, and that is what the reading says
	}
	left := append([]threads.EndReading{}, r.Ends...)
	out, why := right, ""
	worse := func(v, reason string) {
		if out == right || v == silent && out != silent {
			out, why = v, reason
		}
	}
	for _, e := range l.ends {
		if !e.judged() || e.size == "unknown" && len(r.Ends) == 0 {
			continue // without a size no end is read, and none is claimed
		}
		at := -1
		for k, have := range left {
			if e.fits(have) && (at < 0 || e.sex == "unknown" && have.Sex == threads.NoSex) {
				at = k
				if e.sex != "unknown" {
					break
				}
			}
		}
		if at < 0 {
			told := len(r.Unread) > 0
			for _, have := range left {
				told = told || have.Question != ""
			}
			for _, have := range r.Ends {
				told = told || strings.HasPrefix(have.Question, "What is the part")
			}
			for _, n := range r.NotUsed {
				told = told || n.Why == whyNot[asNothing] || n.Why == whyUnsized
			}
			if told {
				worse(asked, fmt.Sprintf("no %s|%s|%s among %s", e.family, e.size, e.sex, endsText(r.Ends)))
			} else {
				worse(silent, fmt.Sprintf("no %s|%s|%s among %s", e.family, e.size, e.sex, endsText(r.Ends)))
			}
			continue
		}
		have := left[at]
		families := map[threads.Family]bool{}
		for _, c := range have.Candidates {
			families[c.Family] = true
		}
		switch {
		case (e.family == "BSP" || e.family == "PIPE") && have.Swivel && families[threads.G] && e.sex == "female" && !strings.HasPrefix(l.language, "en-US"):
			// a nut that turns is parallel, and of the pipe threads of Europe only G is: the word for the nut says it
		case (e.family == "BSP" || e.family == "PIPE") && len(families) < 2 && e.sex != "none" && have.Question == "":
			worse(silent, "the family is closed without ground: "+endsText(left[at:at+1]))
		case (e.family == "BSP" || e.family == "PIPE") && len(families) < 2 && e.sex != "none":
			worse(asked, "the family is closed without ground: "+endsText(left[at:at+1]))
		case e.sex == "unknown" && have.Sex != threads.NoSex && have.Question == "":
			worse(silent, "a sex that is not said: "+endsText(left[at:at+1]))
		}
		left = append(left[:at:at], left[at+1:]...)
	}
	for _, e := range l.ends {
		for k, have := range left {
			if notThreaded[e.family] && (strings.Contains(have.Question, "soldered, glued or pressed") || strings.Contains(have.Question, "glued, fused or pushed on")) && len(have.Candidates) > 0 && sameSize(e, have.Candidates[0]) {
				left = append(left[:k:k], left[k+1:]...) // that it is soldered or pressed is asked
				break
			}
		}
	}
	if r.Kind == "washer" {
		left = nil // what the washer is for is no end of it
	}
	left = slices.DeleteFunc(left, func(have threads.EndReading) bool { // a clamp ferrule is one of those that no label is judged by
		return len(have.Candidates) > 0 && have.Candidates[0].Family == threads.Ferrule && slices.ContainsFunc(l.ends, func(e labelledEnd) bool { return e.family == "TRICLAMP" })
	})
	for _, have := range left {
		switch {
		case have.Question == "":
			worse(silent, "more than the label has: "+endsText(left))
		case l.ambiguous != "more":
			worse(asked, "more than the label has: "+endsText(left))
		}
	}
	return out, why
}

// notThreaded are ends of pipe that a question about how it is held names together: soldered, glued or pressed.
var notThreaded = map[string]bool{"SOCKET": true, "SOLDER": true, "PRESS": true, "LAYER": true}

// allAsked reports whether each end of a reading is asked about, or no end is read and something is told.
func allAsked(r threads.Reading) bool {
	for _, e := range r.Ends {
		if e.Question == "" {
			return false
		}
	}
	return len(r.Ends) > 0 || len(r.Unread) > 0
}

// judgeLines counts the verdicts over a corpus and lists what is not right.
func judgeLines(t *testing.T, path string) (counts map[string]int, lines int, wrong string) {
	counts = map[string]int{}
	all := readCorpus(t, path)
	for _, l := range all {
		v, why := l.verdict(Read(l.text))
		counts[v]++
		if v != right {
			wrong += fmt.Sprintf("%s: %s: %s\n\t%s\n", v, l.language, l.text, why)
		}
	}
	return counts, len(all), wrong
}

// Lines that shops and stock lists really print, labelled before they were read.
// Each line that is not read right is pinned with what is wrong. Of a first 303
// lines 73 in a hundred were right and 6 silently wrong when they were first read.
func TestRealLines(t *testing.T) {
	counts, lines, wrong := judgeLines(t, "../../testdata/published/lines_real.csv")
	t.Logf("%d lines: %d right, %d asked, %d silently wrong", lines, counts[right], counts[asked], counts[silent])
	pinnedText(t, "testdata/lines_real.wrong", wrong)
}

// Hard designations, made for this test and labelled before they were read: 26 of
// the 46 were right and 15 silently wrong when they were first read.
func TestHardLines(t *testing.T) {
	counts, lines, wrong := judgeLines(t, "../../testdata/published/lines_hard.csv")
	t.Logf("%d lines: %d right, %d asked, %d silently wrong", lines, counts[right], counts[asked], counts[silent])
	pinnedText(t, "testdata/lines_hard.wrong", wrong)
}

// A fifth of the first lines was laid aside, unseen by the reader until all was done
// for the rest: 71 of its 76 lines (93 in a hundred) were right and one silently wrong
// when they were first read. They come from the same lists as the rest.
func TestLinesLaidAside(t *testing.T) {
	counts, lines, wrong := judgeLines(t, "../../testdata/published/lines_aside.csv")
	t.Logf("%d lines: %d right, %d asked, %d silently wrong", lines, counts[right], counts[asked], counts[silent])
	pinnedText(t, "testdata/lines_aside.wrong", wrong)
}

// Later gatherings of real lines, labelled before they were read. What each gave when it was first read stands in
// first_figures.csv: no lot was mended for before it was counted, and those held back were read when what had been
// gathered before them was mended. Lines that held a trade mark are left out, and a label that proved wrong is put right.
func TestLaterLines(t *testing.T) {
	counts, lines, wrong := judgeLines(t, "../../testdata/published/lines_later.csv")
	t.Logf("%d lines: %d right, %d asked, %d silently wrong", lines, counts[right], counts[asked], counts[silent])
	pinnedText(t, "testdata/lines_later.wrong", wrong)
}

// Lines made as such lists write, from memory, mostly by people who saw no reader; their first figures stand in
// first_figures.csv too. Lines made beside a class of faults, with their answers first, are here also, and are no sample.
func TestMadeLines(t *testing.T) {
	counts, lines, wrong := judgeLines(t, "../../testdata/published/lines_made.csv")
	t.Logf("%d lines: %d right, %d asked, %d silently wrong", lines, counts[right], counts[asked], counts[silent])
	pinnedText(t, "testdata/lines_made.wrong", wrong)
}

// The first figures are those of lots: none has more right than lines, and each is of a corpus that is here.
func TestFirstFiguresAddUp(t *testing.T) {
	file, err := os.Open("../../testdata/published/first_figures.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	require.Equal(t, []string{"corpus", "lot", "lines", "right", "silent", "note"}, rows[0])
	for _, row := range rows[1:] {
		var n [3]int
		for k := range n {
			n[k], err = strconv.Atoi(row[2+k])
			require.NoError(t, err, row)
		}
		require.LessOrEqual(t, n[1]+n[2], n[0], row)
		require.FileExists(t, "../../testdata/published/"+row[0])
	}
}

func pinnedText(t *testing.T, path, got string) {
	if *update {
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
		return
	}
	pinned, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, string(pinned), got, "read the difference, then go test -update")
}
