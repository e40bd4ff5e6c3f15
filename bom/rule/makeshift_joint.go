package rule

var makeshiftJoint = Rule{
	Slug:  "makeshift-joint",
	Title: "The joint may hold at low pressure, and must not be trusted with more.",
	Why: `Some pairs work in kitchens and gardens: a taper male in a parallel port, a metal
taper in a plastic one, a tail a millimetre off its hose. The finding says up to what
pressure the joint may be left, and what makes it a proper one. Above the limit it
is a stop.`,
	Wrong: `
[[item]]
id = "left"
kind = "nipple"
ports = { a = 'R 1/2', b = 'R 1/2' }
[[item]]
id = "right"
kind = "coupling"
ports = { a = 'G 1/2 female', b = 'G 1/2 female' }
[[run]]
name = "line"
path = ["left", "right"]
`,
	mend: []string{`ports = { a = 'G 1/2 female', b = 'G 1/2 female' }`, `ports = { a = 'Rp 1/2', b = 'Rp 1/2' }`},
}
