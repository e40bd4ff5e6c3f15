package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
)

var hoseCorrugated = Rule{
	Slug:  "hose-corrugated",
	Title: "A corrugated hose loses more than is reckoned with.",
	Why: `The folds of a corrugated hose lose two to four times what a smooth bore does (memory). Here
four times are taken; before a pump that is not much to have.`,
	Wrong: `
[[item]]
id = "stock"
kind = "hose stock"
bore = "19 mm"
corrugated = true
rated = "6 bar"
vacuum = "0.9 bar"
`,
	mend: []string{`
corrugated = true
`, `
`},
	block: "suction",
	plant: "watered",
	harm:  finding.Spoils,
	flows: findHoseCorrugated,
}

func findHoseCorrugated(s *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		if m.Lines == nil || !m.Lines.Solved {
			continue
		}
		for _, h := range m.Lines.Hoses {
			stock, _ := s.Build.Item(h.Unit.Item.Of)
			if h.Where != duty.Suction || !h.Unit.Item.Process.Corrugate && (stock == nil || !stock.Process.Corrugate) {
				continue
			}
			f := onPump(m, finding.Note)
			f.Subject, f.Place = ofUnit(h.Unit), at(h.Unit.Mark)
			f.Reason = fmt.Sprintf("it is corrugated: up to %.0f mbar are lost in it, four times a smooth one's.", 1000*h.Loss.Hi.Bar())
			f.Remedy = "Take hose with a smooth bore before a pump, and take `corrugated` out."
			out = append(out, f)
			break
		}
	}
	return out
}
