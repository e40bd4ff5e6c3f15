package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
)

var measuredOtherwise = Rule{
	Slug:  "measured-otherwise",
	Title: "What was measured of an end is none of what its words say.",
	Why: `A calliper says more than a memory, and a mark on the part more than a calliper. Where the
figures are those of another thread, the end is judged by the figures; where they are those
of none, it is judged by its words and is not known. Measure again, on clean crests: the
outside of a male, the inside of a female.`,
	Wrong: `
[[item]]
id = "left"
kind = "nipple"
ports = { a = 'G 3/4 male', b = 'G 3/4 male' }
[[item]]
id = "right"
kind = "coupling"
ports = { a = 'G 3/4 female', b = 'G 3/4 female' }
[[run]]
name = "line"
path = ["left", "right"]
[[end]]
at = "left.b"
od = "25.0 mm"
pitch = "2 mm"
`,
	mend: []string{`
od = "25.0 mm"
pitch = "2 mm"
`, `
od = "26.4 mm"
tpi = "14"
`},
	check: func(s *bom.System) []finding.Finding {
		var out []finding.Finding
		for i := range s.Graph.Ports {
			n := &s.Graph.Ports[i]
			if n.Note == nil || !n.Note.Found.Conflict && !n.Note.Found.NothingFits() {
				continue
			}
			reason := fmt.Sprintf("the figures of %s fit no thread of the tables.", n.Name())
			if !n.Note.Found.NothingFits() {
				reason = fmt.Sprintf("%s is `%s` by its words, and %s by its figures.", n.Name(), words(n.Port.Text), n.Note.Found.List[0].End)
			}
			out = append(out, finding.Finding{
				Severity: cautionUnless(s.Segments.SegmentOf(i).High()), NotKnown: true, Subject: ofPort(n), Place: at(n.Note.Place),
				Reason: reason, Remedy: "Measure again, and read the mark on the part; write in the item what it is, or mend the figures of the [[end]].",
			})
		}
		return out
	},
}

func words(text string) string {
	if text == "" {
		return "not said"
	}
	return text
}
