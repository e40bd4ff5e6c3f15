package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// What lists write before and behind a part's name, and that says nothing of its ends: how many, which line of the
// list, what it costs, how long it is, what comes with it.
var (
	before = []string{
		"2x ", "2 x ", "x2 ", "4 ", "2 pcs ", "2 Stk. ", "2 шт. ", "10 pcs of ", "Set of 2 ", "Pair of ", "qty 2 ", "Qty: 2 ", "Box 10 ", "Item: ", "Item 4711 ", "Pos. 3 ",
		"No. 12 ", "12. ", "3) ", "A) ", "1: ", "- ", "* ", "AB4512 ", "Zorkel ", "SALE! ", "4 | ", "003 ",
	}
	behind = []string{
		" x2", " × 4", " *4", " 4x", " (x4)", " (4 pcs)", " [4]", ": 4", " - 10 pcs", ", qty 4", " -- 4 off", " (pack of 5)", " 5-pack", " 2 szt.", " 2 шт", " 2 个", "\t4\t12.50", ";4;12.50",
		" €12.50", " € 12,50", " 12,50 EUR", " $3.50", " USD 3.50", " 12.50 PLN", " @ 3.50 each", " 3.50", " incl. 20 % MwSt", " VAT 20%",
		" 2026-11-29", " EAN 4012345678901", ", Art. 104523", " Ref. 12-345", " (TK-4512)", " https://shop.example/p/4512", " by Zorkel", " | warehouse B", " made in Italy",
		" L=50mm", " 120mm long", " length 120 mm", " SW27", " 27 mm hex", " PN16", " 10 bar", " 0-10 bar", " max 90°C", " -10...+110°C", " 230 V", " 0.25 kg", " 5 micron",
		" c/w 2 clamps", " - new", " - spare", " red", " (for the feed pump)", ".", " ?", " [new]",
	}
)

// None of it changes an end of a line that is read right. A line where it does is pinned.
func TestWhatStandsAroundALineChangesNoEnd(t *testing.T) {
	var changed strings.Builder
	tried := 0
	for _, name := range []string{"designations", "lines_real", "lines_aside", "lines_romance"} {
		for k, l := range readCorpus(t, "../../testdata/published/"+name+".csv") {
			if testing.Short() && k%10 > 0 {
				continue
			}
			plain := Read(l.text)
			if v, _ := l.verdict(plain); v != right || len(plain.Ends) == 0 {
				continue
			}
			try := func(text string) {
				tried++
				if read := Read(text); endsText(read.Ends) != endsText(plain.Ends) {
					changed.WriteString(strings.ReplaceAll(text, "\t", "\\t") + "\n")
				}
			}
			for _, words := range before {
				try(words + l.text)
			}
			for _, words := range behind {
				try(l.text + words)
			}
		}
	}
	t.Logf("%d tried, %d change an end", tried, strings.Count(changed.String(), "\n"))
	if testing.Short() {
		require.Less(t, strings.Count(changed.String(), "\n"), tried/50)
		return
	}
	pinnedText(t, "testdata/around.wrong", changed.String())
}
