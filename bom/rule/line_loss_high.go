package rule

import (
	"fmt"
	"math"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
	"handtight/pressure/quantity"
)

var lineLossHigh = Rule{
	Slug:  "line-loss-high",
	Title: "A line loses too much pressure.",
	Why: `Before the pump a line should lose less than 0.2 bar without its filters, on the high side
less than 1 bar, on the product side less than 0.3 (judgements). Friction is by Churchill's
factor for smooth hose, with tails counted in.`,
	Wrong: `
[[item]]
id = "stock"
kind = "hose stock"
bore = "8 mm"
rated = "6 bar"
vacuum = "0.9 bar"
`,
	mend:  []string{`bore = "8 mm"`, `bore = "19 mm"`},
	block: "suction",
	plant: "watered",
	harm:  finding.Spoils,
	flows: findLineLossHigh,
}

func findLineLossHigh(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		if m.Lines == nil || !m.Lines.Solved {
			continue
		}
		for _, side := range []struct {
			where duty.Where
			most  quantity.Pressure
			words string
		}{{duty.Suction, mostBefore, "before the pump"}, {duty.HighSide, quantity.Bar, "under high pressure"}, {duty.Product, 0.3 * quantity.Bar, "of the product"}} {
			var sum quantity.Pressure
			var worst *duty.Hose
			for i := range m.Lines.Hoses {
				h := &m.Lines.Hoses[i]
				if h.Where != side.where || !h.Known {
					continue
				}
				sum += h.Judged.Loss
				if worst == nil || h.Judged.Loss > worst.Judged.Loss {
					worst = h
				}
			}
			if worst == nil || sum <= side.most {
				continue
			}
			f := onPump(m, finding.Caution)
			f.Subject, f.Place = ofUnit(worst.Unit), at(worst.Unit.Mark)
			f.Reason = fmt.Sprintf("the hoses %s lose %.2f bar; %.1f are the most there.", side.words, sum.Bar(), side.most.Bar())
			bore, _ := duty.BoreOf(r.Build, worst.Unit.Item)
			f.Remedy = fmt.Sprintf("Take %s bore or more there, and fewer tails.", quantity.Length(math.Ceil(bore.Millimetres()*math.Pow(float64(sum/side.most), 0.25)))*quantity.Millimetre)
			out = append(out, f)
		}
	}
	return out
}

// mostBefore is what the hoses before a pressure pump may lose.
const mostBefore = 0.2 * quantity.Bar
