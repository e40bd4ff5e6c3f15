package rule

import (
	"fmt"
	"math"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
	"handtight/pressure/quantity"
)

var lineTooFast = Rule{
	Slug:  "line-too-fast",
	Title: "The water runs too fast in a line.",
	Why: `Fast water loses pressure, wears and hammers. In a line under high pressure 4.5 m/s are the
end of what pages on hydraulic lines ask for, in the product's 2 m/s (a judgement). The flow is
the true one: what the pump delivers, less the product behind the vessel, at the middle of what is
said; on an engine at its greatest speed. Lines before the
pump are looked at by suction-too-fast.`,
	Wrong: `
[[hose]]
id = "high"
material = "super duplex ends"
spec = "SAE 100R8"
bore = '3/16"'
length = "1 m"
ends = ['3/8 NPT male', '3/8 NPT female swivel']
`,
	mend:  []string{`bore = '3/16"'`, `bore = '3/8"'`},
	block: "pressure hose",
	plant: "watered",
	harm:  finding.Spoils,
	flows: findLineTooFast,
}

func findLineTooFast(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		if m.Lines == nil || !m.Lines.Solved {
			continue
		}
		for _, h := range m.Lines.Hoses {
			most := map[duty.Where]quantity.Velocity{duty.HighSide: 4.5, duty.Product: 2}[h.Where]
			if most == 0 || !h.Known || h.Judged.Speed <= most {
				continue
			}
			f := onPump(m, finding.Caution)
			f.Subject, f.Place = ofUnit(h.Unit), at(h.Unit.Mark)
			f.Reason = fmt.Sprintf("%s run through it at %.1f to %.1f m/s; %.1f are the most there.", litresAMinute(h.Flow), h.Speed.Lo, h.Speed.Hi, most)
			bore, _ := duty.BoreOf(r.Build, h.Unit.Item)
			f.Remedy = fmt.Sprintf("Take %s bore or more, and ends to suit.", quantity.Length(math.Ceil(bore.Millimetres()*math.Sqrt(float64(h.Speed.Hi/most))))*quantity.Millimetre)
			out = append(out, f)
		}
	}
	return out
}
