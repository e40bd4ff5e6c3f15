package pressure

import (
	"encoding/csv"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// noRating are words of the catalogue's metals that no table of ratings speaks of: what is
// made of them needs its data sheet.
var noRating = []string{
	"6mo", "6 mo", "s31254", "1.4547", "317l", "317", "1.4438",
	"ca104", "c95800", "c65500", // nickel-aluminium and silicon bronze by number
	"90/10", // also a size, and "copper-nickel" stands beside it
	"alloy 6082", "alloy 5083",
	"galvanised", "galvanized", "galv", "verzinkt", "zincato", "zinc plated", "zinc alloy", "zinc", // of which metal is not said
	"stahl", "acier", "iron", // in "rostfreier Stahl" and the like too
}

// A metal that the check of materials knows and the ratings do not would be called unrated
// for the way it is written.
func TestEveryMetalOfTheCatalogueIsKnownByItsWords(t *testing.T) {
	file, err := os.Open("../catalog/table/material.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	at := func(heading string) int { return slices.Index(rows[0], heading) }
	var unknown []string
	words := 0
	for _, r := range rows[1:] {
		if r[at("group")] != "metal" {
			continue
		}
		for _, w := range strings.Split(r[at("words")], "|") {
			words++
			if materialNamed(w) == "" {
				unknown = append(unknown, w)
			}
		}
	}
	require.Greater(t, words, 100)
	require.ElementsMatch(t, noRating, unknown)
}

func TestStainlessIsReadByEveryCountrysName(t *testing.T) {
	for text, want := range map[string]string{
		"SUS316": "316", "SS316": "316", "316SS": "316", "AISI 316": "316", "1.4408": "316", "316S31": "316",
		"SUS316L": "316L", "SS316L": "316L", "316S11": "316L", "SUS316/316L": "316L",
		"V4A":    "316L", // 1.4401 or 1.4404: the weaker
		"SUS304": "304", "V2A": "304", "1.4307": "304", "S/S": "stainless",
		"superduplex": "super duplex", "1.4410": "super duplex", "904L": "904L", "1.4539": "904L",
	} {
		require.Equal(t, want, materialNamed(text), text)
	}
	for _, m := range []string{"SUS316", "SUS316L", "SS316", "V4A"} {
		r, ok := FittingRating("class 3000", m, "NPT", false, "3/8")
		require.True(t, ok, m)
		require.InDelta(t, 210, r.Pressure.Bar(), 1e-6, m)
	}
}
