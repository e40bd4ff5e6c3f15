package rule

import (
	"fmt"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/catalog"
)

var cartridgeAndHousingDiffer = Rule{
	Slug:  "cartridge-and-housing-differ",
	Title: "The cartridge is not the one that its housing is for.",
	Why: `A cartridge of 20 inches does not go into a housing of 10, and one of 10 in a housing of
20 lets the water past it. A housing that is labelled 5 micron and holds 25 is trusted for what
it does not do. Carbon in the raw water is used up by the sea in hours, and takes out nothing that
harms a membrane there; a plain cartridge in the carbon filter lets the chlorine through.`,
	Wrong: `
[[item]]
id = "filter"
kind = "filter housing"
about = "10 inch housing"
micron = "5 micron"
material = "PP"
rated = "8 bar"
ports = { in = '19 mm barb long', out = '19 mm barb long' }
[[item]]
id = "cartridge"
kind = "filter cartridge"
about = "pleated, 20 inch"
micron = "5 micron"
inside = "filter"
life = "60 h"
`,
	mend:  []string{`about = "pleated, 20 inch"`, `about = "pleated, 10 inch"`},
	block: "filter",
	plant: "flushed",
	harm:  finding.Spoils,
	check: findWrongCartridge,
}

func findWrongCartridge(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, it := range s.Build.Items {
		housing, ok := s.Build.Item(it.Inside)
		if !it.Kind.Is(catalog.Cartridge) || !ok {
			continue
		}
		if reason, remedy := wrongCartridge(it, housing); reason != "" {
			out = append(out, finding.Finding{Severity: finding.Stop, Subject: ofItem(it), Place: at(it.Place), Reason: reason, Remedy: remedy})
		}
	}
	return out
}

func wrongCartridge(it, housing *build.Item) (reason, remedy string) {
	carbon := strings.Contains(wordsOf(it), "carbon") || strings.Contains(wordsOf(it), "charcoal")
	plain := says(it, "sediment", "pleated", "spun", "wound", "melt blown", "melt-blown") && !carbon
	long, ok := inchesLong(wordsOf(it))
	takes, told := inchesLong(wordsOf(housing))
	switch {
	case ok && told && long != takes:
		return fmt.Sprintf("`%s` is %g inches long, and `%s` takes %g.", it.ID, long, housing.ID, takes), fmt.Sprintf("Buy a cartridge of %g inches.", takes)
	case it.Micron != nil && housing.Micron != nil && *it.Micron != *housing.Micron:
		return fmt.Sprintf("`%s` is of %s, and `%s` is to filter to %s.", it.ID, it.Micron, housing.ID, housing.Micron),
			fmt.Sprintf("Buy a cartridge of %s, or write %s on the housing where that is meant.", housing.Micron, it.Micron)
	case carbon && housing.Kind.Is(catalog.Filter) && !housing.Kind.Is(catalog.Carbon) && housing.Micron != nil:
		return fmt.Sprintf("`%s` is of carbon, and `%s` filters the raw water.", it.ID, housing.ID), fmt.Sprintf("Buy a plain cartridge of %s.", housing.Micron)
	case plain && housing.Kind.Is(catalog.Carbon):
		return fmt.Sprintf("`%s` holds no carbon, and `%s` is the carbon filter: the chlorine goes through.", it.ID, housing.ID), "Buy a carbon cartridge."
	}
	return "", ""
}
