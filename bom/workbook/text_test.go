package workbook

import (
	"strings"
	"testing"
	"unicode/utf16"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestClean(t *testing.T) {
	for _, tc := range []struct{ why, in, want string }{
		{"plain text stays", "elbow, 90 degrees", "elbow, 90 degrees"},
		{"a formula's first letter stays, the cell's type keeps it text", "=1+1", "=1+1"},
		{"an escape of the file format stays as written", "_x0041_", "_x0041_"},
		{"line ends become one kind", "a\r\nb\rc", "a\nb\nc"},
		{"a tab becomes a space", "a\tb", "a b"},
		{"control characters are replaced where a reader sees it", "a\x00b\x1bc\u0085d", "a\uFFFDb\uFFFDc\uFFFDd"},
		{"bytes that are not text are replaced", "a\xffb", "a\uFFFDb"},
		{"what XML cannot hold is replaced", "a\uFFFFb", "a\uFFFDb"},
		{"other scripts stay", "4分 nipple, écrou", "4分 nipple, écrou"},
	} {
		t.Run(tc.why, func(t *testing.T) { require.Equal(t, tc.want, clean(tc.in)) })
	}
}

func TestCutIsSeenAndFits(t *testing.T) {
	for _, tc := range []struct {
		why, text string
		cut       bool
	}{
		{"as long as a cell holds", strings.Repeat("a", cellLimit), false},
		{"one letter more", strings.Repeat("a", cellLimit+1), true},
		{"letters of two units each", strings.Repeat("😀", cellLimit/2+1), true},
	} {
		t.Run(tc.why, func(t *testing.T) {
			got := clean(tc.text)
			require.LessOrEqual(t, len(utf16.Encode([]rune(got))), cellLimit)
			require.Equal(t, tc.cut, strings.HasSuffix(got, cutMark))
		})
	}
}

func TestCleanProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := rapid.OneOf(rapid.String(), rapid.Map(rapid.SliceOf(rapid.Byte()), func(b []byte) string { return string(b) })).Draw(t, "in")
		got := clean(in)
		require.True(t, utf8.ValidString(got))
		require.Equal(t, got, clean(got), "cleaning twice changes nothing")
	})
}

func TestTextLines(t *testing.T) {
	for _, tc := range []struct {
		why, text string
		width     float64
		want      int
	}{
		{"empty", "", 10, 1},
		{"short", "pc", 10, 1},
		{"breaks at spaces", "plunger pump triplex", 14, 2},
		{"a line end is a line", "a\nb\nc", 10, 3},
		// 40 letters of 0.57 em of 12 pixels are 274 pixels; the cell has 67 less 5.
		{"a word too wide is broken", strings.Repeat("n", 40), 10, 5},
	} {
		t.Run(tc.why, func(t *testing.T) { require.Equal(t, tc.want, textLines(tc.text, tc.width, fontSize)) })
	}
}

func TestTextLinesProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringN(0, 300, -1).Draw(t, "text")
		width := rapid.Float64Range(5, 80).Draw(t, "width")
		require.LessOrEqual(t, textLines(text, width*2, fontSize), textLines(text, width, fontSize), "a wider column never takes more lines")
		require.LessOrEqual(t, rowHeight(textLines(text, width, fontSize), fontSize), maxHeight)
	})
}
