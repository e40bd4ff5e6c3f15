package rule

var flankAnglesDiffer = Rule{
	Slug:  "flank-angles-differ",
	Title: "One thread has 60 degree flanks and the other 55: it seems to tighten and never seals.",
	Why: `At 1/2 and 3/4 inch NPT and BSP have 14 threads an inch both, so they screw
together for a few turns and feel right. The flanks touch along a line only; what
tape closes in the harbour opens under pressure. It is the commonest wrong pair on
boats that shop in several countries.`,
	Wrong: `
[[item]]
id = "left"
kind = "nipple"
ports = { a = '1/2 NPT male', b = '1/2 NPT male' }
[[item]]
id = "right"
kind = "coupling"
ports = { a = 'Rc 1/2', b = 'Rc 1/2' }
[[run]]
name = "line"
path = ["left", "right"]
`,
	mend: []string{`ports = { a = 'Rc 1/2', b = 'Rc 1/2' }`, `ports = { a = '1/2 NPT female', b = '1/2 NPT female' }`},
}
