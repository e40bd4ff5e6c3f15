package rule

import (
	"fmt"
	"slices"

	"handtight/bom"
	"handtight/bom/circuit"
	"handtight/bom/finding"
	"handtight/bom/graph"
)

var productPortClosed = Rule{
	Slug:  "product-port-closed",
	Title: "The product cannot leave its vessel.",
	Why: `Water that comes through the membrane and cannot go on brings the product side up to the
pressure of the feed, and when the pump stops it presses the element's glue lines open from the
wrong side. A plugged product port, a valve that is shut in normal running, or a one-way valve
that points back does it. Nothing that can be shut belongs into the product line.`,
	Wrong: `
[[item]]
id = "cap"
kind = "cap"
material = "316"
rated = "200 bar"
ports = { a = '1/4 NPT male' }
[[run]]
name = "product"
path = ["vessel.product", "cap"]
`,
	right: `
[[item]]
id = "jug"
kind = "drain"
[[run]]
name = "product"
path = ["vessel.product", "jug"]
`,
	block: "product",
	plant: "flushed",
	harm:  finding.Bursts,
	check: findClosedProduct,
}

func findClosedProduct(s *bom.System) []finding.Finding {
	var out []finding.Finding
	for _, v := range vessels(s) {
		if !closedProduct(s, v) {
			continue
		}
		p, _ := port(v, "product")
		name := s.Graph.Ports[p].Name()
		f := finding.Finding{
			Severity: finding.Stop, Subject: ofPort(&s.Graph.Ports[p]), Place: at(v.Mark),
			Reason: fmt.Sprintf("in normal running the water that leaves by %s ends nowhere: the product side comes up to the pressure of the feed.", name),
			Remedy: fmt.Sprintf("Lead %s to a tank and a drain with nothing that shuts between; look at each valve in its line, and at the arrows.", name),
		}
		if s.Graph.Plugged(name) {
			f.Reason = fmt.Sprintf("%s stands under `plugged`: the product cannot leave, and comes up to the pressure of the feed.", name)
			f.Remedy = fmt.Sprintf("Take %s off `plugged`, and lead it to a tank and a drain.", name)
		}
		out = append(out, f)
	}
	return out
}

// closedProduct reports whether the product of a vessel ends nowhere in normal running. A port
// that is joined to nothing is found as open.
func closedProduct(s *bom.System, v *graph.Unit) bool {
	p, ok := port(v, "product")
	if !ok {
		return false
	}
	if s.Graph.Ports[p].Joint == nil {
		return s.Graph.Plugged(s.Graph.Ports[p].Name())
	}
	return s.Circuit.DischargeOf(p).Closed() && !leftOpen(s, onward(s, p)) && !openEnd(s, p)
}

// closedProducts tells the ports of product lines that end nowhere: that they come up to the pressure
// of the feed in normal running is found once, at the vessel.
func closedProducts(s *bom.System) func(port int) bool {
	var lines []*circuit.Reached
	for _, v := range vessels(s) {
		if p, ok := port(v, "product"); ok && closedProduct(s, v) {
			lines = append(lines, onward(s, p))
		}
	}
	return func(port int) bool {
		return slices.ContainsFunc(lines, func(r *circuit.Reached) bool { return r.Port(port) })
	}
}

// openEnd reports whether a line ends at a port that is joined to nothing: found as open.
func openEnd(s *bom.System, from int) bool {
	reached := onward(s, from)
	for _, u := range s.Circuit.UnitsAround(from) {
		for i := range u.Item.Ports {
			n := s.Graph.Port(u, i)
			if n.Joint == nil && reached.Port(u.First+i) && !s.Graph.Plugged(n.Name()) {
				return true
			}
		}
	}
	return false
}
