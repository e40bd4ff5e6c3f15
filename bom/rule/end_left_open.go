package rule

var endLeftOpen = Rule{
	Slug:  "end-left-open",
	Title: "The words leave open what an end is, and it matters here.",
	Why: `"1/2 BSP" does not say whether it is parallel or taper; "1/2 male" does not say
which country's. The check takes the worst reading and asks the one question that
settles it. Ask before you order: it is the cheapest repair there is.`,
	Wrong: `
[[item]]
id = "left"
kind = "nipple"
ports = { a = '1/2 BSP male', b = '1/2 BSP male' }
[[item]]
id = "right"
kind = "coupling"
ports = { a = 'Rc 1/2', b = 'Rc 1/2' }
[[run]]
name = "line"
path = ["left", "right"]
`,
	mend: []string{`ports = { a = '1/2 BSP male', b = '1/2 BSP male' }`, `ports = { a = 'R 1/2', b = 'R 1/2' }`},
}
