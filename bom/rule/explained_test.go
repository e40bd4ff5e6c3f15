package rule

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/finding"
)

// A fault that is the whole cause of another is one finding, which names the other and is as severe; what
// stands when the first is mended as it says stays beside it. Each row breaks the demo that checks clear;
// `mend` follows the first one's remedy, and shows that what was explained went with it.
func TestWhatOneFaultExplains(t *testing.T) {
	clean := sandpiper(t)
	longElement := amend{`"seawater element 2.5 x 21"`, `"seawater element 2.5 x 40"`}
	coarse := amend{"micron = \"5 micron\"\ninside = \"filter-5\"", "micron = \"25 micron\"\ninside = \"filter-5\""}
	small := amend{`flow     = "12 L/min"`, `flow     = "2 L/min"`}
	high := []amend{{`set      = "65 bar"`, `set      = "90 bar"`}, {`full_flow = "70 bar"`, `full_flow = "95 bar"`}}
	element := func(most string) amend {
		return amend{`"seawater element 2.5 x 21"`, "\"seawater element 2.5 x 21\"\nmax_pressure = \"" + most + "\""}
	}
	for _, c := range []struct {
		name  string
		wrong []amend
		want  []string // what stands, notes left out
		names string   // what the first says that it explains
		mend  []amend
		left  []string
	}{
		{"an element of another length", []amend{longElement}, []string{"element-and-vessel-differ"}, "`meter-range` (meter)",
			[]amend{{longElement.to, longElement.from}}, nil},
		{"and more is wanted than the right one makes", []amend{longElement, {`product  = "26 L/h"`, `product  = "80 L/h"`}},
			[]string{"element-and-vessel-differ", "product-below-wanted", "product-more-than-pump"}, "",
			[]amend{{longElement.to, longElement.from}}, []string{"product-below-wanted", "product-more-than-pump"}},
		{"a cartridge coarser than its housing", []amend{coarse}, []string{"cartridge-and-housing-differ"}, "`no-fine-filter` (hp-pump)",
			[]amend{{coarse.to, coarse.from}}, nil},
		{"and a housing that is coarse too", []amend{coarse, {"about    = \"10 inch housing, 5 micron\"\nmicron   = \"5 micron\"", "about    = \"10 inch housing\"\nmicron   = \"20 micron\""}},
			[]string{"cartridge-and-housing-differ", "no-fine-filter"}, "",
			[]amend{{coarse.to, "micron = \"20 micron\"\ninside = \"filter-5\""}}, []string{"no-fine-filter"}},
		{"a relief that passes too little", []amend{small}, []string{"relief-too-small"}, "`no-way-out` (throttle shut)",
			[]amend{{small.to, `flow     = "7 L/min"`}}, nil},
		{"a relief over the weakest part", append([]amend{element("83 bar")}, high...), []string{"relief-set-high"}, "`pressure-over-element` (element)",
			[]amend{{`set      = "90 bar"`, `set      = "75 bar"`}, {`full_flow = "95 bar"`, `full_flow = "79 bar"`}}, nil},
		{"and an element that is weaker than that part", append([]amend{element("69 bar")}, high...), []string{"pressure-over-element", "relief-set-high"}, "",
			[]amend{{`set      = "90 bar"`, `set      = "75 bar"`}, {`full_flow = "95 bar"`, `full_flow = "79 bar"`}}, []string{"pressure-over-element"}},
		{"water that freezes", []amend{{"water    = \"17 C\"\nspace    = \"40 C\"", `water = "-2.2 to -2 C"`}}, []string{"water-freezes"}, "`part-too-warm` (",
			[]amend{{`water = "-2.2 to -2 C"`, `water = "5 to 8 C"`}}, nil},
		{"and a space that is too hot", []amend{{"water    = \"17 C\"\nspace    = \"40 C\"", "water = \"-2.2 to -2 C\"\nspace = \"85 C\""}},
			[]string{"part-too-warm", "valve-shuts-fast", "water-freezes"}, "", nil, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := changed(t, clean, c.wrong...)
			slugs, list := notNotes(t, text)
			require.Equal(t, c.want, slugs)
			if c.names != "" {
				require.Contains(t, list[0].Reason, c.names)
				require.Equal(t, finding.Stop, list[0].Severity)
			}
			if c.mend != nil {
				left, _ := notNotes(t, changed(t, text, c.mend...))
				require.Equal(t, c.left, left)
			}
		})
	}
}

// notNotes lists the rules that find more than a note in a build, and what they find.
func notNotes(t *testing.T, text string) (slugs []string, list []finding.Finding) {
	t.Helper()
	all, err := seen(text)
	require.NoError(t, err)
	for _, f := range all {
		if f.Severity == finding.Note {
			continue
		}
		list = append(list, f)
		if !slices.Contains(slugs, f.Slug) {
			slugs = append(slugs, f.Slug)
		}
	}
	slices.Sort(slugs)
	return slugs, list
}

// A plain socket in the pump's place makes one line of the sea's side and the membrane's. The relief is
// not to blame for the low parts of that line; one that is set over the high ones still is.
func TestNoPumpIsNoFaultOfTheRelief(t *testing.T) {
	text := sandpiper(t)
	start := strings.Index(text, `id       = "hp-pump"`)
	end := start + strings.Index(text[start:], "[[item]]")
	text = text[:start] + "id = \"hp-pump\"\nkind = \"coupling\"\nports = { a = '1/2 NPT female', b = '3/8 NPT female' }\nmaterial = \"316\"\nrated = \"100 bar\"\n\n" +
		strings.Replace(text[end:], "inside = \"hp-pump\"\n", "", 1)
	slugs, _ := notNotes(t, text)
	require.Contains(t, slugs, membraneWithoutPressure.Slug)
	require.NotContains(t, slugs, reliefSetHigh.Slug)
	slugs, _ = notNotes(t, changed(t, text, amend{`set      = "65 bar"`, `set      = "90 bar"`}, amend{`full_flow = "70 bar"`, `full_flow = "95 bar"`}))
	require.Contains(t, slugs, reliefSetHigh.Slug, "the vessel holds 83 bar")
}
