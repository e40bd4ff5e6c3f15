package rule

import "handtight/bom/finding"

var threadDoesNotStart = Rule{
	Slug:  "thread-does-not-start",
	Title: "The male is too large for the female: it does not start by hand.",
	Why: `Forced with a spanner it cuts a new thread across the old one, and both parts are
lost. The sizes of the standards stand for pipe bores and not for anything that can
be measured on the thread: 1/2 NPT is over 21 mm across.`,
	Wrong: `
[[item]]
id = "left"
kind = "nipple"
ports = { a = '3/4 NPT male', b = '3/4 NPT male' }
[[item]]
id = "right"
kind = "coupling"
ports = { a = '1/2 NPT female', b = '1/2 NPT female' }
[[run]]
name = "line"
path = ["left", "right"]
`,
	mend: []string{`ports = { a = '1/2 NPT female', b = '1/2 NPT female' }`, `ports = { a = '3/4 NPT female', b = '3/4 NPT female' }`},
	harm: finding.DoesNotGoTogether,
}
