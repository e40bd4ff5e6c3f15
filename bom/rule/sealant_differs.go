package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/threads/evidence"
)

var sealantDiffers = Rule{
	Slug:  "sealant-differs",
	Title: "What was found on a joint is not what closes such a pair.",
	Why: `Tape on a parallel thread closes nothing: its washer does. Tape or paste on a flare keeps
the cones apart. Either what closes the joint is missing, or the thread is another than is
written: a taper that somebody took for a parallel one. Look before anything else is done.`,
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
sealant = "tape"
`,
	mend: []string{`sealant = "tape"`, `sealant = "washer"`},
	check: func(s *bom.System) []finding.Finding {
		var out []finding.Finding
		for _, x := range standing(s) {
			m := &x.Joint.Mating
			if x.Joint.Note == nil || !x.Joint.Known || x.Joint.Open || !m.Verdict.Holds() {
				continue
			}
			found := x.Joint.Note.Sealant
			if !evidence.WrongSealant(m, found) || evidence.Missing(m, found) {
				continue
			}
			out = append(out, ofStanding(s, x, grave(x), fmt.Sprintf("it was found closed with %s, and %s is what closes such a pair.", found, m.Closes()),
				"Open it without pressure and read the thread: if it is what is written, put in what closes it; if it is a taper, mend the item."))
		}
		return out
	},
}
