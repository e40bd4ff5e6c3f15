package rule

var endNotSaid = Rule{
	Slug:  "end-not-said",
	Title: "Nothing says what an end is, so its joint is not judged.",
	Why: `A pump, a meter or a tank is often sold with its connection left out of the words.
The joint may be the one that does not fit. Measure it, or ask for the data sheet.`,
	Wrong: `
[[item]]
id = "left"
kind = "nipple"
ports = { a = '1/2 NPT male', b = '1/2 NPT male' }
[[item]]
id = "meter"
kind = "flow meter"
[[run]]
name = "line"
path = ["left", "meter"]
`,
	mend: []string{`
kind = "flow meter"
`, `
kind = "flow meter"
ports = { in = '1/2 NPT female', out = '1/2 NPT female' }
`},
}
