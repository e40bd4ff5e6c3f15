package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/threads/evidence"
)

var closingPartMissing = Rule{
	Slug:  "closing-part-missing",
	Title: "What closes a joint was looked for, and is not there.",
	Why: `Parallel threads hold and do not close: the washer on the face does. A taper thread leaves
a spiral gap that only tape or paste fills. Somebody looked and found nothing, so it is
known that the joint is not closed; that it looks dry says little.`,
	Wrong: `
[[item]]
id = "left"
kind = "nipple"
ports = { a = 'G 1/2 male', b = 'G 1/2 male' }
[[item]]
id = "right"
kind = "coupling"
ports = { a = 'G 1/2 female', b = 'G 1/2 female' }
[[run]]
name = "line"
path = ["left", "right"]
[[joint]]
at = ["left.b", "right.a"]
sealant = "none"
`,
	mend: []string{`sealant = "none"`, `sealant = "washer"`},
	check: func(s *bom.System) []finding.Finding {
		var out []finding.Finding
		for _, x := range standing(s) {
			m := &x.Joint.Mating
			if x.Joint.Note == nil || !x.Joint.Known || x.Joint.Open || !m.Verdict.Holds() || !evidence.Missing(m, x.Joint.Note.Sealant) {
				continue
			}
			out = append(out, ofStanding(s, x, finding.Stop, fmt.Sprintf("%s closes it, and nothing was found.", m.Closes()),
				fmt.Sprintf("Open it without pressure and put in %s; then write what is there now as `sealant`.", m.Closes())))
		}
		return out
	},
}
