package rule

import (
	"fmt"
	"strings"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/catalog"
)

var materialNotForSeawater = Rule{
	Slug:  "material-not-for-seawater",
	Title: "Sea water attacks what a part is made of.",
	Why: `Sea water takes the zinc out of brass and leaves a sponge that breaks without warning;
it pits 304 and rusts iron. Such a part is a stop. Stainless 316 pits under seals and in
threads where sea water stands still: at high pressure it is common, since the better
alloys are dear, and never safe. Where the fresh-water flush reaches it, it is a note;
where no flush does, a caution. Bronze, super duplex, titanium and, at low pressure,
plastics stand sea water.`,
	Wrong: `
[[item]]
id = "hull"
kind = "through-hull"
ports = { inboard = '3/4 NPT male' }
material = "bronze"
[[item]]
id = "tail"
kind = "hose tail"
ports = { a = '3/4 NPT female', b = '19 mm barb long' }
material = "brass"
[[run]]
name = "raw water"
below_waterline = true
path = ["hull", "tail"]
`,
	Right: `
[[item]]
id = "hull"
kind = "through-hull"
ports = { inboard = '3/4 NPT male' }
material = "bronze"
[[item]]
id = "tail"
kind = "hose tail"
ports = { a = '3/4 NPT female', b = '19 mm barb long' }
material = "bronze"
[[run]]
name = "raw water"
below_waterline = true
path = ["hull", "tail"]
`,
	check: findNotForSea,
}

// inSea is how one material of a unit stands the sea water that wets it.
type inSea struct {
	material *catalog.Material
	water    catalog.Water
	answer   catalog.Suitability
	rinsed   bool
}

func (x inSea) severity() finding.Severity {
	switch {
	case x.answer == catalog.No:
		return finding.Stop
	case x.rinsed && x.material.Stainless():
		return finding.Note
	}
	return finding.Caution
}

// key groups what has one cause and one remedy: stainless that is rinsed, or is not,
// whatever its pressure.
func (x inSea) key() string {
	water := x.water
	if x.answer == catalog.Caution && x.material.Stainless() {
		water = 0
	}
	return fmt.Sprintf("%d %d %s", x.severity(), water, x.material.Name)
}

func findNotForSea(s *bom.System) []finding.Finding {
	waters := s.Waters()
	var list gathered[string]
	first := map[string]inSea{}
	for _, u := range s.Units {
		if u.Item.Kind.Boats {
			continue
		}
		for _, m := range made(u) {
			x, bad := standsIn(s, waters, u, m)
			if !bad {
				continue
			}
			list.add(x.key(), u.Name, u.Mark)
			if known, ok := first[x.key()]; !ok || x.water > known.water {
				first[x.key()] = x
			}
		}
	}
	var out []finding.Finding
	for _, k := range list.keys {
		out = append(out, notForSea(first[k], list.of[k]))
	}
	return out
}

// standsIn judges a material at the port of its unit where it stands worst.
func standsIn(s *bom.System, waters *bom.Waters, u *bom.Unit, m *catalog.Material) (x inSea, bad bool) {
	x = inSea{material: m, answer: catalog.Suitable, rinsed: true}
	for i := range u.Item.Ports {
		p := u.First + i
		if !waters.Sea(p) {
			continue
		}
		water := catalog.RawSea
		if s.PortLoad(p).Normal > bom.HighPressure {
			water = catalog.PressedSea
		}
		x.rinsed = x.rinsed && waters.Rinsed(p)
		if a := m.In(water); a != catalog.NotKnown && (a < x.answer || a == x.answer && water > x.water) {
			x.answer, x.water = a, water
		}
	}
	return x, x.answer == catalog.No || x.answer == catalog.Caution
}

var waterWords = map[catalog.Water]string{
	catalog.RawSea: "in raw sea water", catalog.PressedSea: "in sea water, at high pressure",
}

func notForSea(x inSea, g *members) finding.Finding {
	f := finding.Finding{Severity: x.severity()}
	g.at(&f)
	verb := "is"
	if len(g.names) > 1 {
		verb = "are"
	}
	f.Reason = fmt.Sprintf("%s %s of %s %s: %s.", g.list(), verb, x.material.Title, waterWords[x.water], strings.TrimSuffix(x.material.Why, "."))
	switch {
	case x.answer == catalog.No:
		f.Remedy = "Buy it of " + better(x.water) + "."
	case f.Severity == finding.Note:
		f.Remedy = "Flush with fresh water after each use, leave no sea water standing in it, and look under the seals once a season."
	case x.material.Stainless():
		f.Remedy = "Lead a fresh-water flush through it and rinse after each use, or buy it of " + better(x.water) + "."
	case x.water == catalog.PressedSea:
		f.Remedy = "Buy it of " + better(x.water) + "."
	default:
		f.Remedy = "Look at it each season and renew it in time, or buy it of " + better(x.water) + "."
	}
	return f
}

// better names what stands a water.
func better(w catalog.Water) string {
	if w == catalog.PressedSea {
		return "super duplex, 6 % Mo stainless or titanium (316 only where it is flushed with fresh water)"
	}
	return "bronze, or of a plastic for low pressure"
}
