package rule

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/catalog"
)

var reliefDischarge = Rule{
	Slug:  "relief-discharge",
	Title: "A relief valve discharges where it should not, or where its water goes round and heats.",
	Why: `A relief valve lifts without a warning, and passes the pump's whole flow at full
pressure: a jet of it goes through skin. Its outlet is led by hose to where nobody
stands and nothing is shut: overboard above the waterline, or back to the pump's
inlet. There the same water goes round and heats, so stop the pump within minutes: that is a
note, and no fault. Into a tank it salts the drinking water; into a drain
it may fill the boat.`,
	Wrong: `
[[item]]
id = "relief"
kind = "relief valve"
set = "65 bar"
ports = { in = '1/4 NPT male', out = '3/8 NPT female' }
[[item]]
id = "tail"
kind = "hose tail"
ports = { a = '3/8 NPT male', b = '13 mm barb' }
[[item]]
id = "stock"
kind = "hose stock"
bore = "13 mm"
rated = "10 bar"
[[hose]]
id = "hose"
of = "stock"
length = "1 m"
[[item]]
id = "galley"
kind = "drain"
[[run]]
name = "relief"
path = ["relief", "tail", "hose", "galley"]
`,
	mend: []string{`
id = "galley"
kind = "drain"
`, `
id = "side"
kind = "overboard"
`, `path = ["relief", "tail", "hose", "galley"]`, `path = ["relief", "tail", "hose", "side"]`},
	harm:  finding.Floods,
	check: findDischarge,
}

func findDischarge(s *bom.System) []finding.Finding {
	var out []finding.Finding
	waters := s.Waters
	for _, u := range s.Graph.Units {
		port := u.Item.PortIndex("out")
		if !u.Item.Kind.Is(catalog.Relieves) || port < 0 {
			continue
		}
		in := u.First + u.Item.PortIndex("in")
		if waters.House(in) || waters.Product(in) {
			continue // the house's own water, or the product, may well run to a drain or a tank
		}
		spills := "the pump's whole flow of sea water"
		if waters.Sea(in) && !behindPump(s, u) {
			spills = "sea water"
		}
		f := finding.Finding{
			Severity: finding.Caution, Subject: ofUnit(u), Place: at(u.Mark),
			Remedy: "Lead it by hose overboard above the waterline, without a valve, or back to the pump's inlet.",
		}
		d := s.Circuit.DischargeOf(u.First + port)
		switch {
		case d.Pump && behindPump(s, u):
			f.Severity = finding.Note
			f.Reason = fmt.Sprintf("%s leads back to the inlet of the pump: while it is lifted, the same water goes round and heats.", u.Name)
			f.Remedy = "When it lifts, stop the pump within minutes, and find out why it lifted. To be rid of the heat, lead it overboard above the waterline, without a valve."
		case d.Overboard || d.Pump:
			continue
		case s.Graph.Ports[u.First+port].Joint == nil:
			if !openly(s, u, "out") {
				continue // an open port, which is found by its own rule
			}
			f.Severity = cautionUnless(behindPump(s, u))
			f.Reason = fmt.Sprintf("%s is left open: when it lifts, it sprays %s into the space around it.", u.Name+".out", spills)
		case len(d.Inside) > 0:
			f.Severity = cautionUnless(behindPump(s, u))
			f.Reason = fmt.Sprintf("%s discharges into %s: %s without a warning.", u.Name, inside(d.Inside), spills)
		default:
			continue // a closed line, which is found as a relief that is cut off
		}
		out = append(out, f)
	}
	return out
}

// behindPump reports whether a relief stands on the outlet of a plunger pump.
func behindPump(s *bom.System, relief *graph.Unit) bool {
	in := relief.First + relief.Item.PortIndex("in")
	return slices.ContainsFunc(s.Circuit.UnitsAround(in), func(p *graph.Unit) bool {
		return p.Item.Kind.Is(catalog.DrivesHigh) && s.Circuit.Reaches(outletOf(p), in, true)
	})
}

func inside(list []*graph.Unit) string {
	var names []string
	for _, u := range list {
		names = append(names, fmt.Sprintf("%s (%s)", u.Name, u.Item.Kind.Name))
	}
	return strings.Join(names, ", ")
}

// openly reports whether the build says that a port is meant to be open.
func openly(s *bom.System, u *graph.Unit, port string) bool {
	for _, r := range s.Build.LeftOpen {
		if r.Unit == u.Name && r.Port == port {
			return true
		}
	}
	return false
}
