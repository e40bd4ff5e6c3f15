package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/bom/wetting"
	"handtight/catalog"
	"handtight/pressure/quantity"
)

var galvanicPair = Rule{
	Slug:  "galvanic-pair",
	Title: "Two metals touch under sea water, and one eats the other.",
	Why: `Two metals in contact under sea water make a battery, and the less noble one goes into
solution. More than 0.2 V apart it goes quickly. The areas decide how quickly: a small
part of the less noble metal screwed into a large one of the nobler is soon gone, a
large one beside a small noble one lasts for years. Apart by at least that much is a caution;
where only the ends of their ranges are, as of 316 and bronze, a note. A length of hose
or a plastic fitting between them ends it.`,
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
material = "titanium"
[[run]]
name = "raw water"
below_waterline = true
path = ["hull", "tail"]
`,
	mend:  []string{`material = "titanium"`, `material = "bronze"`},
	check: findGalvanic,
}

// couple is two metals in contact.
type couple struct {
	noble, base *catalog.Material
	least, most quantity.Voltage
}

func findGalvanic(s *bom.System) []finding.Finding {
	waters := s.Waters
	var list gathered[string]
	first := map[string]couple{}
	for _, j := range s.Graph.Joints {
		c, ok := coupled(s, waters, j)
		if !ok {
			continue
		}
		key := c.noble.Name + " " + c.base.Name
		x := ofJoint(s, j)
		list.members(key).add(x.String(), x, j.Mark)
		first[key] = c
	}
	var out []finding.Finding
	for _, k := range list.keys {
		c, g := first[k], list.of[k]
		f := finding.Finding{Severity: finding.Note}
		span := fmt.Sprintf("%.2f to %.2f V", c.least.Volts(), c.most.Volts())
		if c.least > catalog.GalvanicLimit {
			f.Severity = finding.Caution
		}
		g.at(&f)
		f.Reason = fmt.Sprintf("%s touches %s under sea water, %s apart: the %s goes, the faster the smaller it is beside the %s.",
			c.noble.Title, c.base.Title, span, c.base.Title, c.noble.Title)
		f.Remedy = fmt.Sprintf("Buy both of one metal, or put a hose between them (above the waterline a plastic fitting does); at the least keep the %s the larger part and look at it each season.", c.base.Title)
		out = append(out, f)
	}
	return out
}

// coupled finds the worst pair of metals that a joint brings together under sea
// water. A joint that is to be made otherwise, and a metal that sea water attacks by
// itself, are not said twice.
func coupled(s *bom.System, waters *wetting.Waters, j *graph.Joint) (worst couple, found bool) {
	if !waters.Sea(j.A) || !j.Mating.Verdict.Holds() || !metallic(s, j) {
		return worst, false
	}
	water := catalog.RawSea
	if s.Segments.SegmentOf(j.A).High() {
		water = catalog.PressedSea
	}
	for _, a := range metals(s.Graph.Ports[j.A].Unit) {
		for _, b := range metals(s.Graph.Ports[j.B].Unit) {
			least, most, ok := catalog.GalvanicGap(a, b)
			if !ok || a == b || most <= catalog.GalvanicLimit || most <= worst.most || a.In(water) == catalog.No || b.In(water) == catalog.No {
				continue
			}
			worst, found = couple{least: least, most: most}, true
			worst.noble, worst.base = catalog.Nobler(a, b)
		}
	}
	return worst, found
}

// metallic reports whether a joint brings metal on metal: threads, neither of
// plastic; a hose on its tail is none.
func metallic(s *bom.System, j *graph.Joint) bool {
	for _, p := range []int{j.A, j.B} {
		list := s.Graph.Ports[p].Port.End.Candidates
		if len(list) == 0 || !list[0].Family.Threaded() || list[0].Plastic {
			return false
		}
	}
	return true
}
