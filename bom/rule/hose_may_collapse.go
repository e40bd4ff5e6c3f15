package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/bom/rating"
	"handtight/bom/state"
)

var hoseMayCollapse = Rule{
	Slug:  "hose-may-collapse",
	Title: "A suction hose is not known to stand the vacuum of a shut intake.",
	Why: `With the seacock shut or the strainer full of weed the pump pulls a vacuum. A hose
without a wire helix flattens, and its liner may come loose and stop the water for
good. Ask for the vacuum rating; most delivery hoses have none.`,
	Wrong: `
[[item]]
id = "intake"
kind = "seacock"
rated = "10 bar"
ports = { inboard = '19 mm barb long' }
[[item]]
id = "stock"
kind = "hose stock"
bore = "19 mm"
rated = "6 bar"
[[hose]]
id = "hose"
of = "stock"
length = "1 m"
[[item]]
id = "feed"
kind = "feed pump"
shutoff = "2.5 bar"
rated = "6 bar"
ports = { in = '19 mm barb long', out = '1/2 NPT female' }
[[item]]
id = "out"
kind = "drain"
[[run]]
name = "suction"
path = ["intake", "hose", "feed", "out"]
`,
	mend: []string{`
bore = "19 mm"
rated = "6 bar"
`, `
bore = "19 mm"
rated = "6 bar"
vacuum = "0.9 bar"   # this was missing
`},
	harm:  finding.Spoils,
	check: findCollapse,
}

// findCollapse speaks once of each stock, and of each made-up hose, for each severity: hoses
// cut from one stock are one thing to buy.
func findCollapse(s *bom.System) []finding.Finding {
	var weak gathered[string]
	states, hoses := map[string]*state.State{}, map[string]*build.Item{}
	for _, u := range s.Graph.Units {
		if !u.Item.IsHose() {
			continue
		}
		load := s.States.PortLoad(u.First)
		rated, known := rating.StandsVacuum(u.Item)
		if load.Low >= 0 || known && rated >= rating.PumpPulls {
			continue
		}
		key := stockOf(u.Item) + " " + collapses(u.Item, load.ByLow).String()
		if hoses[key] == nil {
			hoses[key], states[key] = u.Item, load.ByLow
		}
		weak.unit(key, u)
	}
	var out []finding.Finding
	for _, key := range weak.keys {
		hose, state := hoses[key], states[key]
		f := finding.Finding{Severity: collapses(hose, state)}
		weak.of[key].at(&f)
		names, see, stand := weak.of[key].list(), "sees", "stands"
		if len(weak.of[key].names) > 1 {
			see, stand = "see", "stand"
		}
		if rated, known := rating.StandsVacuum(hose); known {
			f.Reason = fmt.Sprintf("%s %s a vacuum of %s and may see a whole one (%s): a suction hose should stand %s.", names, stand, bars(rated), state.Cause, bars(rating.PumpPulls))
			f.Remedy = fmt.Sprintf("Take a hose rated for a vacuum of %s or more.", bars(rating.PumpPulls))
		} else {
			f.NotKnown = true
			f.Reason = fmt.Sprintf("%s %s a vacuum (%s), and nothing says that `%s` stands one.", names, see, state.Cause, stockOf(hose))
			f.Remedy = fmt.Sprintf("Take suction hose with a wire helix, rated for a vacuum of %s or more, and write `vacuum` on `%s`.", bars(rating.PumpPulls), stockOf(hose))
		}
		out = append(out, f)
	}
	return out
}

// collapses is how bad it is that a hose sees a vacuum: a stop where it is known not to stand
// it, and a person's act brings it about.
func collapses(hose *build.Item, by *state.State) finding.Severity {
	_, known := rating.StandsVacuum(hose)
	return cautionUnless(known && !by.Failure)
}

// stockOf is what a hose is bought as: the stock that it is cut from, or itself.
func stockOf(hose *build.Item) string {
	if hose.Of != "" {
		return hose.Of
	}
	return hose.ID
}
