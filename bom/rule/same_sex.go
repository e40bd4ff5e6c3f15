package rule

import "handtight/bom/finding"

var sameSex = Rule{
	Slug:  "same-sex",
	Title: "Both ends are male, or both are female.",
	Why: `A male thread goes into a female one; two of a kind only touch. On a list it
happens when a nipple, a socket or a gauge is bought by its size alone. A hose's
two bores, or two tails, are the same case.`,
	Wrong: `
[[item]]
id = "left"
kind = "nipple"
ports = { a = '1/2 NPT male', b = '1/2 NPT male' }
[[item]]
id = "right"
kind = "adaptor"
ports = { a = '1/2 NPT male', b = '1/2 NPT male' }
[[run]]
name = "line"
path = ["left", "right"]
`,
	mend: []string{`
kind = "adaptor"
ports = { a = '1/2 NPT male', b = '1/2 NPT male' }
`, `
kind = "coupling"
ports = { a = '1/2 NPT female', b = '1/2 NPT female' }
`},
	harm: finding.DoesNotGoTogether,
}
