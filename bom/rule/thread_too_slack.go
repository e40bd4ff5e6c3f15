package rule

var threadTooSlack = Rule{
	Slug:  "thread-too-slack",
	Title: "The male is too small for the female: it screws in loosely and pulls out.",
	Why: `It turns easily, may even feel snug with tape, and holds by the tips of the
threads or by one or two turns of them. Under pressure it is thrown out. If a
fitting wobbles when it is half way in, it is not that thread.`,
	Wrong: `
[[item]]
id = "left"
kind = "nipple"
ports = { a = 'G 1/4 male', b = 'G 1/4 male' }
[[item]]
id = "right"
kind = "coupling"
ports = { a = 'M14x1.5 female', b = 'M14x1.5 female' }
[[run]]
name = "line"
path = ["left", "right"]
`,
	mend: []string{`ports = { a = 'G 1/4 male', b = 'G 1/4 male' }`, `ports = { a = 'M14x1.5 male', b = 'M14x1.5 male' }`},
}
