package cart

import (
	"encoding/csv"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// changed is one stated fact of a right line put wrong.
type changed struct {
	why  string
	of   *regexp.Regexp // what is put wrong; nil: words are added
	to   string
	when func(n *need) bool
}

func hasThread(n *need) bool {
	return n.Item != nil && slices.ContainsFunc(n.facts.ends, func(e ending) bool { return e.readings[0].Family.Threaded() })
}

func always(*need) bool { return true }

// covered reports whether a line is taken and nothing is asked about it; what is asked of the whole cart, as
// its currency is, does not count.
func covered(v *Verdict, r *Report) bool {
	return slices.Contains([]Status{Covers, OtherPrice, Surplus, BoughtTwice, SumDiffers}, v.Status) &&
		!slices.ContainsFunc(r.Questions, func(q Question) bool { return len(q.lines) > 0 })
}

// Every right line of the fresh carts, with one fact of it put wrong, covers nothing: the first run over
// 500 lines accepted 345 with a left hand said behind a comma, 8 seacocks of another size and 6 selectors of
// two ways.
func TestRightLinesWithOneFactWrong(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of lines, one after the other: in the full run")
	}
	changes := []changed{
		{"left hand at the end", nil, ", left hand thread", hasThread},
		{"left hand in German", nil, ", Linksgewinde", hasThread},
		{"class", regexp.MustCompile(`(?i)(class|classe|cl\.?|clase|klasse) ?3000`), "class 150", always},
		{"hose standard", regexp.MustCompile(`(?i)100 ?R8`), "100R7", always},
		{"voltage", regexp.MustCompile(`24 ?V`), "12 V", always},
		{"two ways for three", regexp.MustCompile(`(?i)3(-way| voies| vie|-wege)`), "2$1", always},
		{"element", regexp.MustCompile(`2540`), "4040", always},
		{"steel for stainless", regexp.MustCompile(`(?i)(AISI ?)?316L?`), "carbon steel", func(n *need) bool { return n.Item != nil && n.place != nil && n.place.high }},
		{"brackish", nil, ", brackish", func(n *need) bool { return n.Kind == "membrane element" }},
	}
	tried := map[string]int{}
	for _, name := range slices.Sorted(maps.Keys(freshBuild)) {
		sys, order, c, rows := freshCart(t, name)
		needs := newMatcher(sys, order).byID
		for _, a := range rows {
			k := slices.IndexFunc(c.Lines, func(l Line) bool { return l.Row == a.row })
			n := needs[codeKey(freshItem(strings.Fields(a.items + " -")[0]))]
			if a.answer != "covers" || k < 0 || n == nil {
				continue
			}
			text := c.Lines[k].Text
			for _, ch := range changes {
				got := text + ch.to
				if ch.of != nil {
					got = ch.of.ReplaceAllString(text, ch.to)
				}
				if got == text || !ch.when(n) {
					continue
				}
				tried[ch.why]++
				var b strings.Builder
				require.NoError(t, csv.NewWriter(&b).WriteAll([][]string{{"Description", "Qty", "Price"}, {got, "1", "2.50"}}))
				one, err := Read("c.csv", []byte(b.String()), Options{})
				require.NoError(t, err)
				r := Judge(sys, order, []*Cart{one}, nil)
				v := r.Lines[0]
				if covered(v, r) {
					t.Errorf("%s, %s:%d %s covers %v", ch.why, name, a.row, got, v.Items)
				}
			}
		}
	}
	for _, ch := range changes {
		require.Positive(t, tried[ch.why], ch.why)
	}
	t.Log(tried)
}
