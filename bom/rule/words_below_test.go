package rule

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/finding"
)

// A strength in the words that is less than the part sees contradicts the key that clears it, and both
// are named at the part; one that holds what it sees stays a note of words that nothing uses. The parts
// are those of the demo that checks clear, whose relief passes its whole flow at 70 bar.
func TestWordsBelowWhatThePartSees(t *testing.T) {
	clean := sandpiper(t)
	// classes and hoses: MSS SP-114 and SAE J517, as in pressure/table
	for _, c := range []struct {
		id, about, words string
		names            []string // none: a note
	}{
		{"vessel", "2.5 x 21, end ports", "max 60 bar", []string{"60 bar", "83 bar"}},
		{"vessel", "2.5 x 21, end ports", "max 120 bar", nil},
		{"hp-hose-feed", "made up, swaged", "100R6", []string{"100R6", "100R8"}},
		{"hp-hose-feed", "made up, swaged", "100R7", nil},
		{"hp-hose-feed", "made up, swaged", "max 60 bar", []string{"60 bar", "275.8 bar", "100R8"}},
		{"throttle", "needle valve, slow, 316", "class 150", []string{"class 150", "200 bar"}},
		{"throttle", "needle valve, slow, 316", "class 3000", nil},
		{"throttle", "needle valve, slow, 316", "PN 40", []string{"40 bar", "200 bar"}},
		{"brine-outlet", "skin fitting above the waterline", "max 8 bar", nil},
		{"relief", "spring loaded, adjustable, set and sealed by the shop", "900 psi", []string{"62.1 bar", "140 bar"}},
		{"relief", "spring loaded, adjustable, set and sealed by the shop", "max 100 bar", nil}, // the remedy: bought for what it sees
		{"suction-hose", "suction hose, wire helix", "2 bar", []string{"2 bar", "6 bar"}},
		{"discharge-hose", "reinforced rubber water hose", "20 bar", nil},
		{"hp-pump", "triplex, 316 head", "max 50 bar", []string{"50 bar", "100 bar"}},
		{"vessel", "2.5 x 21, end ports", "600 psi", []string{"600 psi", "41.4 bar", "83 bar"}},
		{"vessel", "2.5 x 21, end ports", "600 WOG", []string{"83 bar"}},
		{"vessel", "2.5 x 21, end ports", "burst 20 bar", []string{"burst 20 bar", "83 bar"}}, // no part holds more
		{"vessel", "2.5 x 21, end ports", "tested to 30 bar", []string{"30 bar", "83 bar"}},
		{"vessel", "2.5 x 21, end ports", "burst 330 bar", nil},
		{"meter", "panel meter, 6 to 70 L/h, drinking water quality", "max 4 bar", nil},
	} {
		t.Run(c.id+" "+c.words, func(t *testing.T) {
			start := strings.Index(clean, `"`+c.id+`"`)
			for !strings.HasPrefix(strings.TrimLeft(clean[strings.LastIndex(clean[:start], "\n")+1:], " "), "id ") {
				start += 1 + strings.Index(clean[start+1:], `"`+c.id+`"`)
			}
			text := clean[:start] + swap(t, clean[start:], `"`+c.about+`"`, `"`+c.about+", "+c.words+`"`)
			all, err := seen(text)
			require.NoError(t, err)
			var list []finding.Finding
			for _, f := range all {
				if f.Slug != "material-not-for-seawater" && f.Slug != "stainless-galls" { // the demo's own notes
					list = append(list, f)
				}
			}
			require.Len(t, list, 1)
			if c.names == nil {
				require.Equal(t, "title-not-used", list[0].Slug)
				require.Equal(t, finding.Note, list[0].Severity)
				return
			}
			require.Equal(t, "rated-above-standard", list[0].Slug)
			severity := finding.Caution // a key of the part says more
			if c.id == "hp-hose-feed" {
				severity = finding.Stop // only its standard does
			}
			require.Equal(t, severity, list[0].Severity)
			require.Equal(t, 1+strings.Count(clean[:start], "\n")-1, list[0].Place.Line)
			for _, name := range c.names {
				require.Contains(t, list[0].Reason, name)
			}
		})
	}

	// A part that is too weak by its key already is that one finding.
	all, err := seen(changed(t, clean, amend{`"2.5 x 21, end ports"`, `"2.5 x 21, end ports, max 40 bar"`}, amend{`rated    = "83 bar"`, `rated    = "50 bar"`}))
	require.NoError(t, err)
	stops := map[string]bool{}
	for _, f := range all {
		stops[f.Slug] = true
	}
	require.True(t, stops["under-rated"])
	require.False(t, stops["rated-above-standard"])
}

// So it is with a strength in the words of an end, which rates nothing either: it must not be read past where the
// part sees more, and stays a note where it holds that.
func TestWordsOfAnEndBelowWhatThePartSees(t *testing.T) {
	clean := sandpiper(t)
	const end = `ends     = ['3/8 NPT male', `
	// classes: MSS SP-114, as in pressure/table
	for words, stops := range map[string]bool{
		"20 bar": true, "class 150": true, "150#": true, "PN16": true, "200 bar": false, "2900 psi": false, "class 3000": false,
	} {
		all, err := seen(changed(t, clean, amend{end, `ends     = ['3/8 NPT male ` + words + `', `}))
		require.NoError(t, err, words)
		found := false
		for _, f := range all {
			if f.Slug == "rated-above-standard" {
				found = true
				require.Equal(t, finding.Stop, f.Severity, words)
				require.Contains(t, f.Reason, "3/8 NPT male "+words)
			}
		}
		require.Equal(t, stops, found, words)
	}
}
