package rule

var seatsDiffer = Rule{
	Slug:  "seats-differ",
	Title: "The threads fit, but the two seats do not close on each other.",
	Why: `Cones, chamfers and flat faces close only on their own kind. 37 and 45 degree
flares share their thread at several sizes; 60 and 30 degree cones share the British
one; the nut goes up, the metal touches on a line, and it weeps under pressure.`,
	Wrong: `
[[item]]
id = "left"
kind = "nipple"
ports = { a = '-4 JIC male', b = '-4 JIC male' }
[[item]]
id = "right"
kind = "coupling"
ports = { a = '-4 SAE45 female swivel', b = '-4 SAE45 female swivel' }
[[run]]
name = "line"
path = ["left", "right"]
`,
	mend: []string{`ports = { a = '-4 SAE45 female swivel', b = '-4 SAE45 female swivel' }`, `ports = { a = '-4 JIC female swivel', b = '-4 JIC female swivel' }`},
}
