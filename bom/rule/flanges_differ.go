package rule

var flangesDiffer = Rule{
	Slug:  "flanges-differ",
	Title: "Two clamp ferrules have flanges of different size.",
	Why: `The clamp and its gasket close on the flanges, not on the tubes: one flange serves
several tubes, so that 1 and 1 1/2 inch go together, and 1 1/2 and 2 inch do not.`,
	Wrong: `
[[item]]
id = "left"
kind = "nipple"
ports = { a = '1 1/2 in ferrule', b = '1 1/2 in ferrule' }
[[item]]
id = "right"
kind = "coupling"
ports = { a = '2 in ferrule', b = '2 in ferrule' }
[[run]]
name = "line"
path = ["left", "right"]
`,
	mend: []string{`ports = { a = '2 in ferrule', b = '2 in ferrule' }`, `ports = { a = '1 in ferrule', b = '1 in ferrule' }`},
}
