package rule

import (
	"fmt"
	"strings"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/bom/running"
	"handtight/catalog"
)

var materialNotForSeawater = Rule{
	Slug:  "material-not-for-seawater",
	Title: "Sea water attacks what a part is made of.",
	Why: `Sea water takes the zinc out of brass and leaves a sponge that breaks without warning;
it pits 304 and rusts iron. Such a part is a stop. Stainless 316 pits under seals and in
threads where sea water stands still: at high pressure it is common, since the better
alloys are dear, and never safe. Sea water stands between uses wherever the fresh-water
flush does not run through: from the intake to where the flush comes in, and in the whole
build if there is no flush. There 316 is a caution, since a flush mends it. Where the flush
runs through it, it is a note; so it is in a dead end off a flushed line, such as a gauge or
a relief valve, which no flush can run through. Stainless without a grade may be 304: at
high pressure that is a caution until the shop has said which. Copper-nickel and alloy 400
stand sea water that runs, and are a note where it stands. Bronze, super duplex, titanium
and, at low pressure, plastics stand both.`,
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
	mend:  []string{`material = "brass"`, `material = "bronze"`},
	check: findNotForSea,
}

// attacked is the parts of one key, by what they are in.
type attacked struct {
	all    members
	places gathered[string]
	of     map[string]inSea // of each place
}

func (g *attacked) add(x inSea, u *graph.Unit) {
	g.all.unit(u)
	g.places.unit(x.where(), u)
	if g.of == nil {
		g.of = map[string]inSea{}
	}
	g.of[x.where()] = x
}

func findNotForSea(s *bom.System) []finding.Finding {
	waters, standings := s.Waters, s.Running.Standings()
	var keys []string
	groups := map[string]*attacked{}
	for _, u := range s.Graph.Units {
		if u.Item.Kind.Boats {
			continue
		}
		for _, m := range made(u) {
			x, wet := standsIn(s, waters, standings, u, m)
			if !wet || !x.bad() {
				continue
			}
			k := x.key()
			if groups[k] == nil {
				groups[k] = &attacked{}
				keys = append(keys, k)
			}
			groups[k].add(x, u)
		}
	}
	var out []finding.Finding
	for _, k := range keys {
		out = append(out, groups[k].finding())
	}
	return out
}

// finding names the parts of each place apart, so that every word of it is true of each.
func (g *attacked) finding() finding.Finding {
	f := finding.Finding{Severity: finding.Note}
	g.all.at(&f)
	var said []string
	var m *catalog.Material
	for i, place := range g.places.keys {
		x, list := g.of[place], g.places.of[place]
		m, f.Severity = x.material, min(f.Severity, x.severity())
		of := " "
		if i == 0 && len(list.names) == 1 {
			of = " is of " + m.Title + " "
		} else if i == 0 {
			of = " are of " + m.Title + " "
		}
		said = append(said, list.list()+of+place)
	}
	f.Reason = fmt.Sprintf("%s: %s.", strings.Join(said, "; "), strings.TrimSuffix(m.WhyIn(g.worst()), "."))
	f.Remedy = g.remedy(m, f.Severity)
	return f
}

func (g *attacked) remedy(m *catalog.Material, severity finding.Severity) string {
	stands, dead := g.some(running.Stands), g.some(running.DeadEnd)
	switch {
	case m.NoGrade():
		return "Ask the shop for the grade, and write it as `material`. If it is 304, buy another; 316 lasts where a fresh-water flush runs through it after each use."
	case g.worst() == catalog.Hull:
		return "Buy it of bronze, or of a plastic that is declared for the skin of a hull (ISO 9093-2, ANSI/UL 1121)."
	case severity == finding.Stop:
		return "Buy " + g.better(with316) + "."
	case m.Stainless() && severity == finding.Caution:
		return "Lead a fresh-water flush through it and rinse after each use, or buy " + g.better("") + "."
	case m.Stainless() && dead:
		return "Flush with fresh water after each use, and look under the seals once a season: in the dead ends first, since no flush runs through them."
	case m.Stainless():
		return "Flush with fresh water after each use, leave no sea water standing in it, and look under the seals once a season."
	case severity == finding.Note && stands:
		return "Lead a fresh-water flush through it, or look at it each season and renew it in time."
	case severity == finding.Note || !g.high():
		return "Look at it each season and renew it in time, or buy " + g.better("") + "."
	}
	return "Buy " + g.better(with316) + "."
}

// some reports whether some part is left in such a place, to its harm.
func (g *attacked) some(standing running.Standing) bool {
	for _, x := range g.of {
		if x.standing == standing && x.hurtByStanding() {
			return true
		}
	}
	return false
}

// high reports whether some part is at high pressure, low whether some is not.
func (g *attacked) high() bool { return g.wet(catalog.PressedSea) }
func (g *attacked) low() bool  { return g.wet(catalog.RawSea) }

// worst is the water whose words the finding gives: the sea outside, where a part keeps
// it out.
func (g *attacked) worst() catalog.Water {
	if g.wet(catalog.Hull) {
		return catalog.Hull
	}
	return catalog.RawSea
}

func (g *attacked) wet(w catalog.Water) bool {
	for _, x := range g.of {
		if x.water == w {
			return true
		}
	}
	return false
}

// with316 is said to whom 316 would be a step up.
const with316 = " (316 only where it is flushed with fresh water)"

// better names what stands the waters of the group, with a word on 316 at high pressure.
func (g *attacked) better(on316 string) string {
	const low, high = "bronze, or above the waterline of polypropylene for low pressure", "super duplex, 6 % Mo stainless or titanium"
	switch {
	case g.high() && g.low():
		return "what is at high pressure of " + high + on316 + ", the rest of " + low
	case g.high():
		return "it of " + high + on316
	}
	return "it of " + low
}
