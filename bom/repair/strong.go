package repair

import (
	"cmp"
	"slices"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/catalog/stock"
	"handtight/pressure"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// ofTurning mends a rigid chain: a part of the same ends in which something turns, in the place
// of a small part at the joint, or such a part put into it.
func ofTurning(sys *bom.System, f *finding.Finding) []Remedy {
	j := jointOf(sys, f)
	if j == nil {
		return nil
	}
	o := Conditions(sys, j)
	var out []Remedy
	for _, port := range []int{j.A, j.B} {
		u := sys.Graph.Ports[port].Unit
		if len(u.Item.Ports) != 2 || !u.Item.Kind.Is(catalog.Commodity) || u.Item.Have > 0 {
			continue
		}
		for _, s := range twin(u, o, false, func(s *stock.Item) bool { return kindTurns(s.Kind) }) {
			out = append(out, Remedy{Do: "change", At: u.Name, Unit: u, Joint: j, New: s, Before: 2, Joints: 2, Needs: o.Pressure, Why: "its nut turns last"})
		}
	}
	slices.SortStableFunc(out, func(a, b Remedy) int { return cmp.Compare(a.New.Usual, b.New.Usual) })
	out = out[:min(len(out), mostRemedies-1)]
	o.Turns = true
	return append(out, adapts(sys, j, o)...)
}

// WhyNot says why no part mends a finding: what must be asked first, or the first wall that
// every chain meets; "" where neither is known.
func WhyNot(sys *bom.System, f *finding.Finding) string {
	for _, r := range Remedies(sys, f) {
		if r.Do == "ask" {
			return r.Why
		}
	}
	j := jointOf(sys, f)
	if j == nil {
		return ""
	}
	o := Conditions(sys, j)
	o.Turns = f.Slug == "nothing-turns"
	got := Adapt(sys.Graph.Ports[j.A].Port.End, sys.Graph.Ports[j.B].Port.End, o)
	if o.Turns && got.None != "" {
		return "no union or swivel of these ends is stocked (" + got.None + "): a short hose between two tails turns last"
	}
	return got.None
}

// twin lists fittings with the ends of a unit that could stand in its place, both ways round; of
// its material, or of any other that the water allows.
func twin(u *graph.Unit, o Options, other bool, wanted func(*stock.Item) bool) []*stock.Item {
	var out []*stock.Item
	for _, s := range stock.Items() {
		if len(s.Ends) != len(u.Item.Ports) || !wanted(s) || !bears(s, o.Pressure) {
			continue
		}
		made, mine := materialsOf(s), u.Item.Materials()
		if !other && len(mine) > 0 && !sameMaterial(made, mine) || (other || len(mine) == 0) && !suitable(made, o) {
			continue
		}
		switch {
		case sameEnds(s, u):
		case len(s.Ends) == 2 && !u.Item.Kind.Directed && sameEnds(turned(s), u):
			s = turned(s)
		default:
			continue
		}
		out = append(out, s)
	}
	slices.SortStableFunc(out, func(a, b *stock.Item) int { return cmp.Compare(a.Usual, b.Usual) })
	return out
}

// sameEnds reports whether a fitting has a unit's ends, port by port, however they close.
func sameEnds(s *stock.Item, u *graph.Unit) bool {
	for i, e := range s.Ends {
		c := u.Item.Ports[i].End.Candidates
		if len(c) != 1 || c[0].Family != e.Family || c[0].Size != e.Size || c[0].Sex != e.Sex || c[0].Swivel != e.Swivel {
			return false
		}
	}
	return true
}

// ofOpen mends a port that is joined to nothing, if a plug or a cap is made for it. A plug is
// put on a branch or a drain only: what water must leave by is joined, and never capped.
func ofOpen(sys *bom.System, f *finding.Finding) []Remedy {
	u, ok := sys.Graph.Unit(f.Subject.Unit)
	if !ok || len(u.Item.Ports) < 3 && !slices.Contains(u.Item.Kind.Optional, f.Subject.Port) {
		return nil
	}
	at := u.Item.PortIndex(f.Subject.Port)
	if at < 0 {
		return nil
	}
	open := sys.Graph.Port(u, at)
	o := under(sys, u.First+at)
	q := newQuery(o)
	var out []Remedy
	for _, s := range stock.Items() {
		if len(s.Ends) != 1 || !kindOf(s.Kind).Is(catalog.Plug) || !bears(s, o.Pressure) || !q.standsIn(&Piece{Kind: s.Kind, material: materialsOf(s)}) {
			continue
		}
		closes := len(open.Port.End.Candidates) > 0
		for _, c := range open.Port.End.Candidates {
			m := threads.Mate(c, s.Ends[0])
			closes = closes && m.Verdict.Holds()
		}
		if mine := u.Item.Materials(); closes && (len(mine) == 0 || sameMaterial(mine, materialsOf(s))) {
			out = append(out, Remedy{Do: "adapt", At: open.Name(), Unit: u, Plug: s, Open: open, Joints: 1, Needs: o.Pressure, Why: "nothing is joined there"})
		}
	}
	slices.SortStableFunc(out, func(a, b Remedy) int { return cmp.Compare(a.Plug.Usual, b.Plug.Usual) })
	return out
}

// ofWeak mends a part that is not known to hold what it sees, or is known not to: the same part
// in a class that does. Only a small part that is not aboard yet is bought again.
func ofWeak(sys *bom.System, f *finding.Finding) []Remedy {
	units := []string{f.Subject.Unit, f.Subject.Unit2}
	for _, s := range f.Also {
		units = append(units, s.Unit, s.Unit2)
	}
	other := f.Slug == "threads-too-weak" // its material is what is too weak
	var out []Remedy
	seen := map[string]bool{"": true}
	for _, name := range units {
		u, ok := sys.Graph.Unit(name)
		if !ok || seen[name] || !u.Item.Kind.Is(catalog.Commodity) || u.Item.Have > 0 {
			continue
		}
		seen[name] = true
		o := worst(sys, u)
		for _, s := range twin(u, o, other, func(s *stock.Item) bool { return s.Kind == u.Item.Kind.Name && sure(s, o.Pressure) }) {
			out = append(out, Remedy{Do: "change", At: u.Item.ID, Unit: u, New: s, All: true, count: placed(sys, u.Item), Before: 2, Joints: 2, Needs: o.Pressure, Why: "the same part in a class that holds " + o.Pressure.String()})
			break // the usual one of each part
		}
	}
	return out
}

// placed is how many units of an item stand in a build.
func placed(sys *bom.System, it *build.Item) int {
	n := 0
	for _, u := range sys.Graph.Units {
		if u.Item == it {
			n++
		}
	}
	return n
}

// sure reports whether a fitting has a class of its own by which it holds a pressure, and not
// an estimate or a claim.
func sure(s *stock.Item, p quantity.Pressure) bool {
	if s.Class == "" {
		return false
	}
	for _, e := range s.Ends {
		r := rate(s.RatesAs, s.Material, e, map[string]rating{})
		if !r.ok || r.r.Basis.Guess() || r.r.Basis == pressure.Claim || r.r.Pressure < p {
			return false
		}
	}
	return true
}

// worst is what a unit must stand at its worst port.
func worst(sys *bom.System, u *graph.Unit) Options {
	o := under(sys, u.First)
	for p := range u.Item.Ports {
		if x := under(sys, u.First+p); x.Pressure > o.Pressure {
			o.Pressure = x.Pressure
		}
	}
	return o
}

// under is what stands at one port must stand.
func under(sys *bom.System, port int) Options {
	load := sys.States.PortLoad(port)
	top, _ := load.Worst()
	if top.Unbounded() {
		top = max(load.Normal, load.Act)
	}
	if g := sys.Segments.SegmentOf(port); g.High() {
		if p, ok := sys.Segments.Needs(g); ok {
			top = max(top, p) // what the findings of its line ask of every part
		}
	}
	o := Options{Pressure: max(top, quantity.Bar), Below: sys.Graph.Ports[port].Unit.Below, Count: mostRemedies}
	switch w := sys.Waters; {
	case w.Product(port):
		o.Water = "product"
	case w.Sea(port):
		o.Water = "sea"
	default:
		o.Water = "fresh"
	}
	return o
}
