package title

import (
	"fmt"
	"os"
	"slices"
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

// Ten later gatherings of real lines, from lists that the reader had not been made on. Of the
// first 87 lines 60 were right and 12 silently wrong when they were first read (one of the
// twelve was the label's fault, and is put right here); of the next 81, held back until the
// first were mended, 61 were right and 11 silently wrong; of a third 69, from lists of their
// own and held back until the second were mended, 61 were right and five silently wrong (three
// of the five by their labels, which are put right here); of a fourth 56, held back likewise, 48
// were right and five silently wrong. Of a fifth 28 (Arabic, Danish, Finnish) 17 were right and
// one silently wrong. Of a sixth 95 (eleven languages of Europe, Turkish) 80 were right and five
// silently wrong; of a seventh 112, from other lists and held back until the sixth were mended, 97 were
// right and six silently wrong (one of the six by its label, which is put right here).
// Of an eighth 76 (the North, Dutch, Greek, Arabic, Chinese, Japanese) 54 were
// right and six silently wrong; of a ninth 51 in the same languages, held back until the eighth
// were mended, 44 were right and three silently wrong (one by its label, which is put right here).
// Of a tenth 66 (German, Spanish, French, Italian, Polish, American; in part other lines of lists
// that earlier gatherings had been taken from) 64 were right and one silently wrong.
// Of 28 in languages of the East and the South (Slovak, Czech, Polish, Russian, Ukrainian, Turkish, Arabic,
// Chinese) 18 were right and one silently wrong, a valve's nominal bore beside its thread taken for an end.
// Of a next 32 (the same and Greek), held back until these were mended, 24 were right and three silently wrong;
// of a third 31 with Japanese, held back likewise, 28 were right and two silently wrong, both by their labels,
// which are put right here; three of the 28 gave a valve's setting for its rating, which no label holds.
// Of three gatherings in German, Dutch and the languages of the North, of 33, 33 and 24 lines, each from
// lists of its own and held back until the one before was mended, 24, 29 and 22 were right and six (two by
// their labels, which are put right here), two and two silently wrong.
//
// Then four gatherings of English lines (American, British, Australian, South African, Indian; houses,
// hydraulics, irrigation), each from lists of their own and held back until the one before was mended: of
// 40 lines 36 were right and two silently wrong; of 39, 30 and seven; of 37, 31 and one; of
// a fourth 33, held back until the third were mended, 22 and five.
//
// At the end 107 lines that their gatherers had laid aside were read once: 81 right, seven silently wrong (five of them
// English). Their classes mended, a last lot of 161 lines, gathered and labelled by people who had not seen
// the reader, was read once: 129 right, nine silently wrong, by the eye; those lines stand before the last 825.
//
// The last 825 came in three rounds from gatherers who saw no reader. Of the first round, 400 lines whose lots were
// mended one after the other, 318 were right at first and 23 silently wrong; of the second, 280 lines, 100 of the first
// 140 were right and eleven silently wrong, and 110 of the second 140, held back until those were mended, and four silently wrong. Of the
// third, 145 lines, read once, 114 were right and five silently wrong; of the 26 asked eight are pipe ends of which the line
// does not say that they are soldered or pressed, which the question did not offer then and does now.
//
// Behind them stand some 650 lines of seven gatherings by language and two later ones, labelled by people who saw no reader; a good
// part of them are other lines of lists that earlier gatherings had been taken from. Of a first 231 lines, read as they came,
// 181 were right and eight silently wrong; of the next 239, held back until those were mended, 172 and 22 (some of the 22 by
// labels that the verdict did not know then); of 184 held back until those and some 1,900 made lines were mended,
// 160 and two; of a last 49, 42 and one.
func TestLaterLines(t *testing.T) {
	counts, lines, wrong := judgeLines(t, "../../testdata/published/lines_later.csv")
	t.Logf("%d lines: %d right, %d asked, %d silently wrong", lines, counts[right], counts[asked], counts[silent])
	pinnedText(t, "testdata/lines_later.wrong", wrong)
}

// Lines made as such lists write, in languages of which few lists are public: 33 of the
// first 39 were right and three silently wrong when they were first read (one by its label); of a
// second 48, in 15 languages, 42 and none.
// The last 240, written from memory by people who saw no reader, are dense with abbreviations: 184 were right
// and 21 silently wrong when they were first read, six of the 21 by a label that named the same thread otherwise.
// Lines made beside a class of faults, with their answers first, stand here too; they are no sample.
//
// The last 2,980 were written from memory by people who saw no reader, in rounds by trade or language, each read
// when the one before had been mended: of 90 for a boat 80 were right and eight silently wrong at first; of 240, 202 and
// 13; of 560, 436 and 32; of 563, 469 and 19; of 560, 481 and 13; of 560, 496 and eleven, the last 70 of them again
// what a boat's watermaker is made of: 67 and none; of 350, 316 and five;
// of a last 100, of a boat's watermaker alone, 92 and two. Lines that held a trade mark are left out.
func TestMadeLines(t *testing.T) {
	counts, lines, wrong := judgeLines(t, "../../testdata/published/lines_made.csv")
	t.Logf("%d lines: %d right, %d asked, %d silently wrong", lines, counts[right], counts[asked], counts[silent])
	pinnedText(t, "testdata/lines_made.wrong", wrong)
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
