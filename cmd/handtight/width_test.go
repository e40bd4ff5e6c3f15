package main

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Widths by Unicode Standard Annex 11: W and F two columns, combining marks none, the
// rest, the ambiguous included, one.
func TestWidthOf(t *testing.T) {
	for text, want := range map[string]int{
		"": 0, "tee": 3, "Größe": 5, "三通": 4, "ホース": 6, "ﾎｰｽ": 3, "호스": 4, "e\u0301": 1, "½°Ω": 3, "１/2": 4,
	} {
		require.Equal(t, want, widthOf(text), text)
	}
}

// No line of wide letters is wider than the screen, and none is lost.
func TestWrapWideLetters(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[三通ホー스a1 ]{0,80}`).Draw(t, "text")
		width := rapid.IntRange(8, 60).Draw(t, "width")
		lines := wrap(text, width)
		require.Equal(t, strings.Join(strings.Fields(text), ""), strings.ReplaceAll(strings.Join(lines, ""), " ", ""))
		for _, l := range lines {
			if widthOf(l) > width {
				require.Regexp(t, `[a1]{8}`, l, "only what has no place to break")
			}
		}
	})
}

// A word is cut before a wide letter, as full as the screen holds; one of narrow letters, such as a
// code or an address, is never cut, for half of it is no use.
func TestWordsAreCutBeforeWideLetters(t *testing.T) {
	for _, c := range []struct {
		word  string
		width int
		want  []string
	}{
		{"三通三通三", 4, []string{"三通", "三通", "三"}},
		{"三通三通三", 5, []string{"三通", "三通", "三"}},
		{"ab三通", 4, []string{"ab三", "通"}},
		{"三通", 4, []string{"三通"}},
		{"HT-G34-19-316", 4, []string{"HT-G34-19-316"}},
		{"", 4, []string{""}},
	} {
		require.Equal(t, c.want, pieces(c.word, c.width), "%s in %d", c.word, c.width)
	}
}

func TestTableOfWideLettersIsAligned(t *testing.T) {
	var out bytes.Buffer
	u := newUI(&out, &bytes.Buffer{})
	require.True(t, u.table([]column{{title: "名"}, {title: "what", flex: true}, {title: "n"}}, [][]string{{"三通", "tee", "1"}, {"ab", "ホース", "2"}}))
	require.Equal(t, "名    what    n\n三通  tee     1\nab    ホース  2\n", out.String())
}

// What is measured and cut without the library is as the library does it.
func TestNarrowAsTheLibrary(t *testing.T) {
	for r := range rune(0x3000) {
		if narrow(r) {
			require.Equal(t, 1, cells.RuneWidth(r), "U+%04X", r)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[a–ß"½…\x{301}三 \t]{0,30}`).Draw(t, "text")
		width := rapid.IntRange(1, 20).Draw(t, "width")
		require.Equal(t, cells.StringWidth(text), widthOf(text))
		want := text
		if cells.StringWidth(text) > width {
			want = cells.Truncate(text, width, "…")
		}
		require.Equal(t, want, (&ui{}).cut(text, width))
	})
}
