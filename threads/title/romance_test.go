package title

import "testing"

// Lines in French, Spanish, Italian and Portuguese, from lists that the reader had not been made on.
// Of the first 36, 22 were right and one silently wrong when they were first read; of the next 38, held back
// until the first were mended, 29 and two (one by its label, which is put right here); of a third 38, held back
// likewise, 22 and four; of a fourth 28, 23 and three.
func TestRomanceLines(t *testing.T) {
	counts, lines, wrong := judgeLines(t, "../../testdata/published/lines_romance.csv")
	t.Logf("%d lines: %d right, %d asked, %d silently wrong", lines, counts[right], counts[asked], counts[silent])
	pinnedText(t, "testdata/lines_romance.wrong", wrong)
}

// Lines made after those that failed, each with its answer written before it was read.
func TestRomanceLinesMade(t *testing.T) {
	counts, lines, wrong := judgeLines(t, "../../testdata/published/lines_romance_made.csv")
	t.Logf("%d lines: %d right, %d asked, %d silently wrong", lines, counts[right], counts[asked], counts[silent])
	pinnedText(t, "testdata/lines_romance_made.wrong", wrong)
}
