package rule

var parallelInTaper = Rule{
	Slug:  "parallel-in-taper",
	Title: "A parallel male in a taper female: only the first thread touches.",
	Why: `A straight male in a taper hole binds after a turn or two and hangs on those. On a
through-hull below the waterline it is dangerous for its strength rather than for
its drips: most of the thread carries nothing, and the valve can break off. It is
also why a ball valve must not be put on a straight through-hull.`,
	Wrong: `
[[item]]
id = "left"
kind = "nipple"
ports = { a = 'G 1/2 male', b = 'G 1/2 male' }
[[item]]
id = "right"
kind = "coupling"
ports = { a = 'Rc 1/2', b = 'Rc 1/2' }
[[run]]
name = "line"
path = ["left", "right"]
`,
	mend: []string{`ports = { a = 'G 1/2 male', b = 'G 1/2 male' }`, `ports = { a = 'R 1/2', b = 'R 1/2' }`},
}
