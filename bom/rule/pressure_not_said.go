package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/catalog"
)

var pressureNotSaid = Rule{
	Slug:  "pressure-not-said",
	Title: "Nothing says how hard a pump or a supply pushes, so it is reckoned as nothing.",
	Why: `A feed pump against a shut line stands at its shut-off pressure, a house system at what
its switch is set to. Both reach hoses and housings, and the product side of a clogged
selector. Left unsaid they count as zero, and the pressures downstream of them are too
low. The figure is on the pump's plate or data sheet.`,
	Wrong: `
[[item]]
id = "house"
kind = "house supply"
ports = { out = '1/2 NPT male' }
[[item]]
id = "carbon"
kind = "carbon filter"
rated = "8 bar"
ports = { in = '1/2 NPT female', out = '1/2 NPT female' }
[[run]]
name = "flush"
path = ["house", "carbon"]
`,
	mend: []string{`
kind = "house supply"
`, `
kind = "house supply"
pressure = "3 bar"
`},
	harm:  finding.Bursts,
	check: findUnsaidPressure,
}

func findUnsaidPressure(s *bom.System) []finding.Finding {
	var out []finding.Finding
	said := map[*build.Item]bool{}
	for _, u := range s.Graph.Units {
		key, hint, reckoned := "", "", "without pressure"
		switch it := u.Item; {
		case it.Kind.Has(catalog.FeedPump) && it.Shutoff == nil:
			key, hint = "shutoff", "its pressure against a shut line, from its data sheet"
		case it.Kind.Supply && it.Pressure == nil:
			key, hint = "pressure", "what its pressure switch cuts out at"
		case it.Kind.Has(catalog.Recovery) && it.Process.Ratio == nil:
			key, hint, reckoned = "ratio", "the area of its rod over that of its piston, from its data sheet", "without bound"
		case it.Kind.Has(catalog.Regulator) && it.Set == nil:
			key, hint, reckoned = "set", "what it holds before it", "as behind a throttle, at the duty"
		}
		if key == "" || said[u.Item] {
			continue
		}
		said[u.Item] = true
		out = append(out, finding.Finding{
			Severity: finding.Caution, NotKnown: true, Subject: ofUnit(u), Place: at(u.Mark),
			Reason: fmt.Sprintf("nothing says how hard %s (%s) pushes, so what lies behind it is reckoned %s.", u.Name, u.Item.Kind.Name, reckoned),
			Remedy: fmt.Sprintf("Write `%s` on `%s`: %s.", key, u.Item.ID, hint),
		})
	}
	return out
}
