package cart

import (
	"testing"
	"unicode"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A cell is printed into a terminal, a page and a workbook. What turns the direction of writing,
// cannot be seen or moves the cursor is taken out, so that a line of a cart never looks like
// another part than the one that was read; what can be seen stays as it is.
func TestWhatIsPrintedOfACell(t *testing.T) {
	for _, row := range []struct{ why, cell, want string }{
		{"plain words", "Elbow 1/2 NPT", "Elbow 1/2 NPT"},
		{"blanks around", "  Elbow 1/2 NPT ", "Elbow 1/2 NPT"},
		{"blanks within", "Elbow   1/2  NPT", "Elbow 1/2 NPT"},
		{"the first and the last letter of the plain ones", "a ~!", "a ~!"},
		{"a line break in a cell", "Elbow\n1/2 NPT", "Elbow 1/2 NPT"},
		{"a tab", "Elbow\t1/2 NPT", "Elbow 1/2 NPT"},
		{"the code that colours a terminal", "Elbow\x1b[31m 1/2 NPT", "Elbow [31m 1/2 NPT"},
		{"delete", "Elbow\x7f1/2 NPT", "Elbow 1/2 NPT"},
		{"a blank that does not break, as web pages have", "13\u00a0mm", "13 mm"},
		{"a soft hyphen", "Schlauch\u00adschelle", "Schlauchschelle"},
		{"a mark that turns the writing: 9/16 would read 61/9", "\u202e9/16\u202c JIC", "9/16 JIC"},
		{"marks of direction", "\u200e1/2\u200f NPT", "1/2 NPT"},
		{"what joins words unseen", "1/2\u2060 NPT\u200b", "1/2 NPT"},
		{"the mark at the beginning of a file", "\ufeffElbow", "Elbow"},
		{"letters of any language", "Bogen Größe ½", "Bogen Größe ½"},
		{"bytes that are no letters", "Elbow \xff 1/2", "Elbow \ufffd 1/2"},
		{"nothing to see", " \t\u200b ", ""},
	} {
		require.Equal(t, row.want, clean(row.cell), row.why)
	}
}

// Whatever is in a cell: what comes out is one line without unseen letters, and once clean it stays.
func TestCleanIsCleanOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		got := clean(rapid.String().Draw(t, "cell"))
		require.Equal(t, got, clean(got))
		for _, r := range got {
			require.False(t, unicode.IsControl(r) || r >= '\u202a' && r <= '\u202e', "%q", got)
		}
		require.NotContains(t, got, "  ")
	})
}

// The headings of no column and beyond the last are empty, and no fault: rows of a sheet end early.
func TestCellsBeyondARow(t *testing.T) {
	r := &row{cells: []cell{{text: "Elbow"}, {text: "2", number: true}}}
	require.Equal(t, "Elbow", r.text(0))
	require.Equal(t, cell{text: "2", number: true}, r.cell(1))
	for _, at := range []int{-1, 2, 99} {
		require.Empty(t, r.text(at), at)
		require.Equal(t, cell{}, r.cell(at), at)
	}
}

// A fault names its row where there is one; of a file as a whole there is none to look for.
func TestAFaultSaysWhere(t *testing.T) {
	whole := &ReadError{Cart: "elbe.csv", Reason: "the file is empty", Remedy: "export it again"}
	require.Equal(t, "elbe.csv: the file is empty\n  export it again", whole.Error())
	first := &ReadError{Cart: "elbe.csv", Reason: "too many columns", Remedy: "leave some out", Row: 1}
	require.Equal(t, "elbe.csv row 1: too many columns\n  leave some out", first.Error())
}
