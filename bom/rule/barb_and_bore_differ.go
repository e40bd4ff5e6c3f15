package rule

var barbAndBoreDiffer = Rule{
	Slug:  "barb-and-bore-differ",
	Title: "The tail and the bore of the hose are of different sizes.",
	Why: `A tail holds when it is within 0.6 mm of the bore. Up to 1.5 mm a clamp hides it at
tank pressure; beyond that the hose creeps off or splits (these limits are a
judgement). 3/4 inch is 19.05 mm and goes with 19 mm hose; 5/8 inch is 15.9 mm.`,
	Wrong: `
[[item]]
id = "tail"
kind = "hose tail"
ports = { a = '1/2 NPT male', b = '16 mm barb long' }
[[item]]
id = "stock"
kind = "hose stock"
bore = "19 mm"
rated = "6 bar"
[[hose]]
id = "hose"
of = "stock"
length = "1 m"
[[run]]
name = "line"
path = ["tail", "hose"]
`,
	mend: []string{`ports = { a = '1/2 NPT male', b = '16 mm barb long' }`, `ports = { a = '1/2 NPT male', b = '19 mm barb long' }`},
}
