package rule

import (
	"fmt"
	"math"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

var suctionTooFast = Rule{
	Slug:  "suction-too-fast",
	Title: "The water runs too fast in a suction hose.",
	Why: `A pump can only take what the air above pushes into it. Fast water in the suction line loses
pressure by friction, and a plunger pump asks for its water in strokes, which loses more:
the pump then knocks, wears and delivers less. Pages on suction lines ask for 0.5 to 1.5
metres a second; handbooks of plunger pumps for 0.9 or less (memory). Above 1.5 it is a
caution, above 0.9 a note. Speed is the pump's flow over the bore: half the bore is four times
the speed.`,
	Wrong: `
[duty]
pressure = "55 bar"
[[item]]
id = "hull"
kind = "through-hull"
ports = { inboard = '10 mm barb' }
[[item]]
id = "stock"
kind = "hose stock"
bore = "10 mm"
rated = "6 bar"
vacuum = "0.9 bar"
[[hose]]
id = "hose"
of = "stock"
length = "1 m"
[[item]]
id = "pump"
kind = "plunger pump"
flow = "8 L/min"
ports = { in = '10 mm barb', out = '1/2 NPT female' }
[[run]]
name = "suction"
path = ["hull", "hose", "pump"]
`,
	Right: `
[duty]
pressure = "55 bar"
[[item]]
id = "hull"
kind = "through-hull"
ports = { inboard = '19 mm barb' }
[[item]]
id = "stock"
kind = "hose stock"
bore = "19 mm"
rated = "6 bar"
vacuum = "0.9 bar"
[[hose]]
id = "hose"
of = "stock"
length = "1 m"
[[item]]
id = "pump"
kind = "plunger pump"
flow = "8 L/min"
ports = { in = '19 mm barb', out = '1/2 NPT female' }
[[run]]
name = "suction"
path = ["hull", "hose", "pump"]
`,
	check: findFast,
}

// findFast speaks once of each pump: of its narrowest suction hose.
func findFast(s *bom.System) []finding.Finding {
	waters := s.Waters()
	var out []finding.Finding
	for _, p := range s.Units {
		if k := p.Item.Kind.Name; k != "plunger pump" && k != "feed pump" || p.Item.Flow == nil {
			continue
		}
		var narrow *bom.Unit
		for _, h := range s.SuctionHoses(p, waters) {
			if h.Item.Bore != nil && (narrow == nil || *h.Item.Bore < *narrow.Item.Bore) {
				narrow = h
			}
		}
		if narrow == nil {
			continue
		}
		v, ok := pressure.LineSpeed(*p.Item.Flow, *narrow.Item.Bore)
		if !ok || v <= pressure.SuctionGood {
			continue
		}
		f := finding.Finding{Severity: finding.Note, At: narrow.Name, Place: at(narrow.Mark)}
		if v > pressure.SuctionMost {
			f.Severity = finding.Caution
		}
		wide, _ := pressure.BoreFor(*p.Item.Flow, pressure.SuctionGood)
		f.Reason = fmt.Sprintf("%s draws %s through %s, %s in the bore: %.1f m/s, and a suction line should stay below %.1f.",
			p.Name, p.Item.Flow, narrow.Name, narrow.Item.Bore, v, pressure.SuctionGood)
		f.Remedy = fmt.Sprintf("Take hose of %s bore or more, and tails to suit.", quantity.Length(math.Ceil(wide.Millimetres())))
		out = append(out, f)
	}
	return out
}
