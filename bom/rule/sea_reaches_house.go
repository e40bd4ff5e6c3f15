package rule

import (
	"handtight/bom"
	"handtight/bom/finding"
)

var seaReachesHouse = Rule{
	Slug:  "sea-reaches-house",
	Title: "Sea water can run back into the boat's drinking water.",
	Why: `The flush line joins the drinking water and the sea. The house pump is off when its tank
is empty or its switch is, and then only a one-way valve holds the sea water back: a solenoid
that sticks, or a valve left open, salts the tank. Codes for drinking water ask for more than
one such valve, or for a gap of air (common practice): ask what holds where the boat is
registered.`,
	Wrong: `
[[item]]
id = "nipple"
kind = "nipple"
material = "super duplex"
rated = "16 bar"
ports = { a = '1/2 NPT male', b = '1/2 NPT male' }
[[run]]
name = "flush"
path = ["house", "carbon", "valve", "nipple", "tee.branch"]
`,
	right: `
[[run]]
name = "flush"
path = ["house", "carbon", "valve", "check", "tee.branch"]
`,
	block: "flush",
	plant: "flushed",
	harm:  finding.Spoils,
	check: findBackflow,
}

func findBackflow(s *bom.System) []finding.Finding {
	return ofEach(s.Running.Backflows(), finding.Caution,
		"nothing holds sea water back from %s: with its pump off and the flush valve open, it runs into the drinking water.",
		"Put a one-way valve between the flush valve and the plant, its arrow to the plant; where there is one, look at its arrow.")
}
