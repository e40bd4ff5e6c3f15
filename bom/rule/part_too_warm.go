package rule

import (
	"errors"
	"fmt"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

var partTooWarm = Rule{
	Slug:  "part-too-warm",
	Title: "A part is used at a temperature for which nothing rates it.",
	Why: `A rating is given with a temperature. Hose with water in it is rated from 0 to 70 C, and
threaded PVC to 43 C; a plastic loses strength long before: PVC holds 0.62 of its rating
at 38 C. Inside its table a rating is lowered for the water and for the air around it, and the
lower figure is shown. Above it nothing is known: the part is judged by what the end of the
table leaves, and is a stop on high pressure; below it, where a part grows brittle, a caution. Of a plastic or a hose without a table it is a
note above 50 C.`,
	Wrong: `
[duty]
pressure = "56 bar"
space = "80 C"
[[item]]
id = "pipe"
kind = "nipple"
material = "PVC"
ports = { a = '1/2 NPT male plastic', b = '1/2 NPT male plastic' }
rated = "16 bar"
[[item]]
id = "socket"
kind = "coupling"
material = "316"
ports = { a = '1/2 NPT female', b = '1/2 NPT female' }
[[run]]
name = "line"
path = ["pipe", "socket"]
`,
	mend:  []string{`space = "80 C"`, `space = "40 C"`},
	harm:  finding.Bursts,
	check: findWarm,
}

// findWarm speaks once of each standard or material that is outside its table, and once of
// each plastic, rubber or hose that has none where it is hot.
func findWarm(s *bom.System) []finding.Finding {
	var outside, untold gathered[string]
	limits := map[string]*pressure.RangeError{}
	severity := map[string]finding.Severity{}
	for _, u := range s.Graph.Units {
		if u.Item.Kind.Boats {
			continue
		}
		var beyond *pressure.RangeError
		switch err := s.Ratings.OutsideTemperature(u.Item); {
		case errors.As(err, &beyond):
			outside.unit(beyond.What, u)
			limits[beyond.What] = beyond
			if now, said := severity[beyond.What]; !said || now != finding.Stop {
				severity[beyond.What] = warmSeverity(s, u)
			}
		case err != nil && s.Ratings.Hottest() > hot:
			if what, ok := softens(u.Item); ok {
				untold.unit(what, u)
			}
		}
	}
	var out []finding.Finding
	for _, what := range outside.keys {
		x := limits[what]
		f := finding.Finding{Severity: severity[what]}
		outside.of[what].at(&f)
		f.Reason = fmt.Sprintf("it is %s here, and %s rated from %s to %s: %s.", x.At, ratedRow(x.What), x.From, x.To, outside.of[what].list())
		f.Remedy = "Move it to where it is cooler, or buy it of a material that is rated there."
		if x.At < x.From {
			f.Severity = max(f.Severity, finding.Caution) // cold takes no strength: it embrittles, and ice bursts
			f.Remedy = fmt.Sprintf("Keep it and its water at %s or warmer while it runs, or buy it of a material that is rated there.", x.From)
		}
		out = append(out, f)
	}
	for _, what := range untold.keys {
		f := finding.Finding{Severity: finding.Note, NotKnown: true}
		untold.of[what].at(&f)
		f.Reason = fmt.Sprintf("it is %s here, and no table says what heat leaves of %s: the ratings of %s are taken as they are written.", s.Ratings.Hottest(), what, untold.of[what].list())
		f.Remedy = "Ask for the pressure at that temperature and write it as `rated`, or move it to where it is cooler."
		out = append(out, f)
	}
	return out
}

// ratedRow says what a table of temperatures rates. Its rows for copper alloys are those of
// a class of fittings: the metal itself stands far more.
func ratedRow(what string) string {
	if what == "bronze" || what == "brass" {
		return what + " fittings by class are"
	}
	return what + " is"
}

// hot is the temperature above which a plastic without a table is spoken of (a judgement:
// data sheets of plastic fittings and hoses speak of water up to about that).
const hot = 50 * quantity.Celsius

// warmSeverity is a stop on high pressure, where an unknown rating is one.
func warmSeverity(s *bom.System, u *graph.Unit) finding.Severity {
	for i := range u.Item.Ports {
		if s.Segments.SegmentOf(u.First + i).High() {
			return finding.Stop
		}
	}
	return finding.Caution
}

// softens names what an item is made of if heat takes its strength: a plastic, rubber, or
// hose of no known standard.
func softens(i *build.Item) (what string, ok bool) {
	if i.IsHose() {
		return "hose of no known standard", true
	}
	made, known := catalog.MaterialNamed(i.Material)
	if !known || made.Group != "plastic" && made.Group != "rubber" {
		return "", false
	}
	return made.Title, true
}
