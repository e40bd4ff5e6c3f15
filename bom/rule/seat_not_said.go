package rule

var seatNotSaid = Rule{
	Slug:  "seat-not-said",
	Title: "A swivel on a high-pressure line does not say what it closes on.",
	Why: `A swivel nut with a parallel thread closes on a flat gasket or on a 60 degree cone.
The gasket goes with any flat end; the cone only with a male that has the 30 degree
chamfer, and the two are not told apart from outside. At tank pressure it is only
asked; where the pressure goes above the limit it is a stop until it is known.`,
	Wrong: `
[duty]
pressure = "57 bar"
[[item]]
id = "pump"
kind = "plunger pump"
stall = "70 bar"
ports = { out = 'G 1/2 male' }
[[item]]
id = "vessel"
kind = "pressure vessel"
rated = "80 bar"
ports = { feed = 'G 1/2 female swivel' }
[[run]]
name = "line"
path = ["pump", "vessel"]
`,
	mend: []string{`ports = { out = 'G 1/2 male' }`, `ports = { out = 'G 1/2 male chamfer' }`, `ports = { feed = 'G 1/2 female swivel' }`, `ports = { feed = 'G 1/2 female swivel 60 cone' }`},
}
