package title

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// publishedLines are all labelled lines that are read right.
func publishedLines(t *testing.T) []labelled {
	t.Helper()
	var out []labelled
	for _, name := range []string{"designations.csv", "designations_own.csv", "lines_real.csv", "lines_hard.csv", "lines_later.csv", "lines_made.csv", "lines_romance.csv", "lines_romance_made.csv"} {
		for _, l := range readCorpus(t, "../../testdata/published/"+name) {
			if l.wrong(Read(l.text)) == "" {
				out = append(out, l)
			}
		}
	}
	require.Greater(t, len(out), 1900)
	return out
}

// sameEnds reports whether two readings have the same candidates end by end.
func sameEnds(a, b threads.Reading) bool {
	return slices.EqualFunc(a.Ends, b.Ends, func(x, y threads.EndReading) bool { return slices.Equal(x.Candidates, y.Candidates) })
}

// A shop's name before a line, which nobody understands, changes no end that was
// read, and is named as not understood or as part of a code.
func TestAShopsNameChangesNoEnd(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of lines, one after the other: in the full run")
	}
	changed := 0
	for _, l := range publishedLines(t) {
		if first := newLine(l.text, false); first.tokens[0].value(classFamily) == "THREAD" {
			continue // a word before the word for a thread may be its sex, and is asked about
		}
		if plainCells(l.text) != l.text {
			continue // a row of a dump begins with its first cell
		}
		before, after := Read(l.text), Read("Zwquv "+l.text)
		require.True(t, names(after, "Zwquv"), l.text)
		if len(before.Ends) > 0 && !sameEnds(before, after) {
			changed++
			t.Logf("%s\n\t%s\n\t%s", l.text, endsText(before.Ends), endsText(after.Ends))
		}
	}
	require.Zero(t, changed)
}

// A word that nobody understands, at any place of a line, is named under what is not understood or
// not used, and closes no end that was open without it. Where it does, mostly because it parts a
// figure from its unit or two words that are one name, the line is pinned.
func TestAStrangeWordInsideClosesNoEnd(t *testing.T) {
	if testing.Short() {
		t.Skip("tens of thousands of lines, one after the other: in the full run")
	}
	const word = "zwquv"
	wrong, tries := "", 0
	for _, l := range publishedLines(t) {
		words := strings.Fields(l.text)
		before := Read(l.text)
		was := closedEnds(before)
		for k := range len(words) + 1 {
			text := strings.Join(slices.Insert(slices.Clone(words), k, word), " ")
			after := Read(text)
			tries++
			require.True(t, names(after, word), text)
			is := closedEnds(after)
			if len(was) == len(before.Ends) || len(is) <= len(was) {
				continue
			}
			for _, e := range is {
				if !slices.Contains(was, e) {
					wrong += "closed: " + text + "\n\t" + endsText(before.Ends) + "\n\t" + endsText(after.Ends) + "\n"
					break
				}
			}
		}
	}
	t.Logf("%d titles with a strange word", tries)
	require.Greater(t, tries, 15000)
	pinnedText(t, "testdata/strange_word.wrong", wrong)
}

// closedEnds are the ends of which nothing is asked.
func closedEnds(r threads.Reading) []threads.End {
	var out []threads.End
	for _, e := range r.Ends {
		if e.Question == "" && len(e.Candidates) == 1 {
			out = append(out, e.Candidates[0])
		}
	}
	return out
}

// names reports whether the reading says that it has not understood or not used the word.
func names(r threads.Reading, word string) bool {
	for _, u := range r.Unread {
		if strings.Contains(u, word) {
			return true
		}
	}
	return slices.ContainsFunc(r.NotUsed, func(n threads.NotUsed) bool { return strings.Contains(n.Words, word) })
}

// Blanks at either end and between words do not count.
func TestBlanksDoNotCount(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of lines, one after the other: in the full run")
	}
	for _, l := range publishedLines(t) {
		spread := "  " + strings.Join(strings.Fields(l.text), "  ") + " "
		require.True(t, sameEnds(Read(strings.Join(strings.Fields(l.text), " ")), Read(spread)), l.text)
	}
}

// A second reading of a designation that End.String writes is the same end.
func TestCandidatesAreReadBackAsThemselves(t *testing.T) {
	seen := map[string]bool{}
	for _, l := range publishedLines(t) {
		for _, e := range Read(l.text).Ends {
			for _, c := range e.Candidates {
				text := c.String()
				if seen[text] || c.Size == "" || c.Sex == threads.NoSex && (c.Family == threads.Push || c.Family == threads.Compression) {
					continue
				}
				seen[text] = true
				got, err := ReadEnd(text)
				require.NoError(t, err, text)
				require.Len(t, got.Candidates, 1, text)
				require.Equal(t, c, got.Candidates[0], text)
			}
		}
	}
	require.Greater(t, len(seen), 300)
}

// An open end asks, and a question is asked of nothing that is unambiguous.
func TestOpenEndsAsk(t *testing.T) {
	for _, l := range publishedLines(t) {
		for _, e := range Read(l.text).Ends {
			if len(e.Candidates) != 1 {
				require.NotEmpty(t, e.Question, l.text)
			}
			if e.Question == "" {
				c := e.Candidates[0]
				require.True(t, c.Sex != threads.NoSex || !c.Family.Threaded() || Read(l.text).Kind == "" || strings.Contains(Read(l.text).Kind, "washer"), l.text)
			}
		}
	}
}
