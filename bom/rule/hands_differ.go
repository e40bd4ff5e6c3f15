package rule

var handsDiffer = Rule{
	Slug:  "hands-differ",
	Title: "One thread is left hand, the other right hand.",
	Why: `A left-hand thread is cut the other way round: it never starts in a right-hand
one, whatever its size. Gas and some drain fittings have it, to keep them from being
mistaken. The finding names both; buy one of the two in the other hand.`,
	Wrong: `
[[item]]
id = "left"
kind = "nipple"
ports = { a = 'G 1/2 male LH', b = 'G 1/2 male LH' }
[[item]]
id = "right"
kind = "coupling"
ports = { a = 'G 1/2 female', b = 'G 1/2 female' }
[[run]]
name = "line"
path = ["left", "right"]
`,
	mend: []string{`ports = { a = 'G 1/2 female', b = 'G 1/2 female' }`, `ports = { a = 'G 1/2 female LH', b = 'G 1/2 female LH' }`},
}
