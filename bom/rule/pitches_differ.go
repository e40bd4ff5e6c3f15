package rule

var pitchesDiffer = Rule{
	Slug:  "pitches-differ",
	Title: "The two threads have different pitches: it binds after a few turns.",
	Why: `The threads start together and then run out of step until the flanks jam. That is
the feel of "2 turns and hard". Tape hides it and does not cure it: the joint holds
by two or three threads, and leaks along the rest. NPT and BSP share a pitch only at
1/2 and 3/4.`,
	Wrong: `
[[item]]
id = "left"
kind = "nipple"
ports = { a = '1/4 NPT male', b = '1/4 NPT male' }
[[item]]
id = "right"
kind = "coupling"
ports = { a = 'Rc 1/4', b = 'Rc 1/4' }
[[run]]
name = "line"
path = ["left", "right"]
`,
	mend: []string{`ports = { a = 'Rc 1/4', b = 'Rc 1/4' }`, `ports = { a = '1/4 NPT female', b = '1/4 NPT female' }`},
}
