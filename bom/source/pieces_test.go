package source

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A text that is decoded in pieces gives what it gives whole, wherever it is cut, and the same fault.
func TestPiecesAreTheWhole(t *testing.T) {
	statements := []string{
		"[[item]]\n", "[[item]]\n", "[[hose]]\n", "[item.ports]\n", "[[item.lives]]\n", "[hose]\n", "[build]\n", "[[build.list]]\n", "[[a.b]]\n",
		"item = [{ id = 1 }]\n", "hose = 3\n", "id = 'x'\n", "name = \"[[item]]\"\n", "long = \"\"\"\n[[item]]\n\"\"\"\n", "list = [\n[[1]],\n]\n", "# [[item]]\n",
		"a.b = 1\n", "bad = \n", "[[ item ]]\n", "[[\"item\"]]\n", "  [[item]]\n", "\r\n", "[[item]] # first\r\n",
	}
	cut := 0
	rapid.Check(t, func(t *rapid.T) {
		var text strings.Builder
		for i, s := range rapid.SliceOfN(rapid.SampledFrom(statements), 1, 14).Draw(t, "statements") {
			if rapid.Bool().Draw(t, "numbered") {
				s = strings.Replace(s, "id", fmt.Sprintf("id%d", i), 1)
			}
			text.WriteString(s)
		}
		whole, wholeErr := decode(text.String())
		cuts := allCuts(text.String())
		cuts = rapid.SliceOfNDistinct(rapid.SampledFrom(append(cuts, 0)), 0, len(cuts)+1, rapid.ID[int]).Draw(t, "cuts")
		var used []int
		for _, at := range allCuts(text.String()) {
			for _, c := range cuts {
				if c == at {
					used = append(used, at)
				}
			}
		}
		got, err := decodePieces(text.String(), used)
		if len(used) > 0 && wholeErr == nil {
			cut++
		}
		require.Equal(t, fmt.Sprint(wholeErr), fmt.Sprint(err), text.String())
		require.Equal(t, whole, got, text.String())
	})
	require.Positive(t, cut)
}

// allCuts are the places at which a text could be cut if it were long.
func allCuts(text string) (cuts []int) {
	for at := 0; at < len(text); at++ {
		if at > 0 && text[at-1] == '\n' && opensList(text[at:]) {
			if n := nestingOf(text[:at]); len(n.open) == 0 && n.quote < 0 && n.excess < 0 && n.statement == at {
				cuts = append(cuts, at)
			}
		}
	}
	return cuts
}

// A long text is cut into as many pieces as there are cores, each at a list's header.
func TestLongTextsAreCut(t *testing.T) {
	text := strings.Repeat("[[item]]\nid = \"\"\"\n[[item]]\n\"\"\"\nports = { a = '1/2 NPT male' } # [[item]]\n\n", 6000)
	require.Empty(t, nestingOf(text[:1000]).cuts)
	n := nestingOf(text)
	if pieceOf(len(text)) > len(text) {
		t.Skip("one core: nothing is cut")
	}
	require.NotEmpty(t, n.cuts)
	last := 0
	for _, at := range n.cuts {
		require.True(t, strings.HasPrefix(text[at:], "[[item]]\nid"), "%q", text[at:at+30])
		require.Greater(t, at-last, leastPiece/2)
		last = at
	}
	doc, faults := Parse("long.toml", []byte(text))
	require.Empty(t, faults)
	require.Len(t, doc.values["item"], 6000)
	whole, err := decode(text)
	require.NoError(t, err)
	require.Equal(t, whole, doc.values)
	// A fault in any piece stands on the line that it stands on in the whole.
	_, faults = Parse("long.toml", []byte(text+"id = \n"))
	require.Len(t, faults, 1)
	require.Equal(t, 6000*6+1, faults[0].Line)
}
