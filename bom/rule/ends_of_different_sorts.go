package rule

import "handtight/bom/finding"

var endsOfDifferentSorts = Rule{
	Slug:  "ends-of-different-sorts",
	Title: "The two ends are of different sorts: a thread and a hose tail, say.",
	Why: `Something is missing between them: the tail that carries the hose, or the fitting
that carries the tube. Lists leave it out because it has no place in a drawing.`,
	Wrong: `
[[item]]
id = "left"
kind = "nipple"
ports = { a = '1/2 NPT male', b = '1/2 NPT male' }
[[item]]
id = "right"
kind = "coupling"
ports = { a = '13 mm barb', b = '13 mm barb' }
[[run]]
name = "line"
path = ["left", "right"]
`,
	mend: []string{`ports = { a = '13 mm barb', b = '13 mm barb' }`, `ports = { a = '1/2 NPT female', b = '1/2 NPT female' }`},
	harm: finding.DoesNotGoTogether,
}
