package rule

var nothingSeals = Rule{
	Slug:  "nothing-seals",
	Title: "The threads go together, but neither end brings a seal that the other takes.",
	Why: `Thread and seal are two questions. A flare end screws into an O-ring port, a plain
stud into a port made for an O-ring: the thread holds and the water goes past.`,
	Wrong: `
[[item]]
id = "left"
kind = "nipple"
ports = { a = '-6 JIC male', b = '-6 JIC male' }
[[item]]
id = "right"
kind = "coupling"
ports = { a = '-6 ORB female', b = '-6 ORB female' }
[[run]]
name = "line"
path = ["left", "right"]
`,
	mend: []string{`ports = { a = '-6 JIC male', b = '-6 JIC male' }`, `ports = { a = '-6 ORB male', b = '-6 ORB male' }`},
}
