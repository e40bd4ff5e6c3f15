package rule

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/finding"
)

// One cause is one group, with its count and its places; the count of stops stays that of the single ones.
func TestOneCauseOneGroup(t *testing.T) {
	groups := func(text, slug string) (groups [][]finding.Finding, singles int) {
		list, err := seen(text)
		require.NoError(t, err)
		at := map[string]int{}
		for _, f := range list {
			if f.Slug != slug || f.Severity == finding.Note {
				continue
			}
			singles++
			i, ok := at[f.Cause]
			if !ok || f.Cause == "" {
				i = len(groups)
				at[f.Cause], groups = i, append(groups, nil)
			}
			groups[i] = append(groups[i], f)
		}
		return groups, singles
	}
	clean := sandpiper(t)

	// The suction hose in another bore: six pieces, twelve ends, of which all are on tails and barbs of 19 mm.
	got, n := groups(changed(t, clean, amend{"about  = \"suction hose, wire helix\"\nbore   = \"19 mm\"", "about  = \"suction hose, wire helix\"\nbore   = \"13 mm\""}), "barb-and-bore-differ")
	require.Len(t, got, 1)
	require.Equal(t, "suction-hose", got[0][0].Cause)
	require.Equal(t, 12, n)
	places := map[string]bool{}
	for _, f := range got[0] {
		places[f.At()] = true
	}
	require.Len(t, places, 12)

	// The ratings of five parts on the high side are taken out.
	text := clean
	for _, id := range []string{"vessel", "throttle", "hp-pump", "jic-n12", "gauge-tee-hp"} {
		start := strings.Index(text, fmt.Sprintf("id       = %q", id))
		require.Positive(t, start, id)
		rated := start + strings.Index(text[start:], "rated ")
		end := rated + strings.Index(text[rated:], "\n")
		text = text[:rated] + text[end+1:]
	}
	got, n = groups(text, "rating-unknown")
	require.Len(t, got, 1)
	require.Equal(t, 5, n, "one an item: the adaptor stands twice")

	// Short tails below the waterline: a clamp each.
	got, n = groups(changed(t, clean, amend{"19 mm barb long", "19 mm barb"}), "one-clamp-below-waterline")
	require.Len(t, got, 1)
	require.Equal(t, 12, n)

	// A tail of a wrong thread that stands at both sides of the strainer is one part.
	got, n = groups(changed(t, clean, amend{"ports    = { a = 'G 3/4 male', b = '19 mm barb long' }", "ports    = { a = '3/4 NPT male', b = '19 mm barb long' }"}), "flank-angles-differ")
	require.Len(t, got, 1)
	require.Equal(t, 2, n)

	// A part that is placed twice and too weak twice.
	got, n = groups(changed(t, clean, amend{"ports    = { a = '1/2 NPT male', b = '-6 JIC male' }\nmaterial = \"316\"\nrated    = \"270 bar\"", "ports    = { a = '1/2 NPT male', b = '-6 JIC male' }\nmaterial = \"316\"\nrated    = \"40 bar\""}), "under-rated")
	require.Len(t, got, 1)
	require.Equal(t, 2, n)
}

// What stands alone has no cause of ours to share.
func TestNoCauseAlone(t *testing.T) {
	for _, f := range found(t, changed(t, line, amend{"kind = \"tee\"\nrated = \"200 bar\"", "kind = \"tee\"\nrated = \"40 bar\""}))["under-rated"] {
		require.Empty(t, f.Cause)
	}
}
