package rule

var taperInParallel = Rule{
	Slug:  "taper-in-parallel",
	Title: "A taper male in a parallel female that needs a seat or a washer: nothing closes.",
	Why: `A taper male closes by wedging; a female that is made for a seat or for a washer
gives it nothing to wedge in but its first turns. Under a swivel nut the male must
bring the seat: a G male with its chamfer, or an NPT male with the 30 degree chamfer
under an NPSM swivel.`,
	Wrong: `
[[item]]
id = "left"
kind = "nipple"
ports = { a = '1/2 NPT male', b = '1/2 NPT male' }
[[item]]
id = "right"
kind = "coupling"
ports = { a = '1/2 NPSM female', b = '1/2 NPSM female' }
[[run]]
name = "line"
path = ["left", "right"]
`,
	mend: []string{`ports = { a = '1/2 NPT male', b = '1/2 NPT male' }`, `ports = { a = '1/2 NPSM male', b = '1/2 NPSM male' }`},
}
