package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
)

var turnsFitNothing = Rule{
	Slug:  "turns-fit-nothing",
	Title: "A joint went in by hand as far as none of its readings would.",
	Why: `How far two threads go together by hand follows from their tapers and tolerances. A taper
that runs in twice as far is worn, was cut with the wrong tap, or is another thread than is
written. The nearest reading is not taken for it: both threads are to be measured.`,
	Wrong: `
[[item]]
id = "left"
kind = "nipple"
ports = { a = '1/4 NPT male', b = '1/4 NPT male' }
[[item]]
id = "right"
kind = "coupling"
ports = { a = '1/4 NPT female', b = '1/4 NPT female' }
[[run]]
name = "line"
path = ["left", "right"]
[[joint]]
at = ["left.b", "right.a"]
turns = "12"
`,
	mend: []string{`turns = "12"`, `turns = "4"`},
	check: func(s *bom.System) []finding.Finding {
		var out []finding.Finding
		for _, x := range standing(s) {
			if !x.Read || !x.Fit.NothingFits() || x.Joint.Note == nil {
				continue
			}
			f := ofStanding(s, x, grave(x), fmt.Sprintf("it went in by hand: %s turns; no reading of its ends goes so far. A thread is worn, cut wrong, or another than is written.", x.Joint.Note.Turns),
				"Open it without pressure and measure both threads (`handtight identify`); do not force it.")
			f.NotKnown = true
			out = append(out, f)
		}
		return out
	},
}
