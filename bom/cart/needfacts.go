package cart

import (
	"strings"

	"handtight/bom/build"
	"handtight/bom/order"
	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/quantity"
	"handtight/threads/title"
)

// needFacts gathers what is known of something that the build needs.
func needFacts(n *order.Need) facts {
	if n.Item == nil {
		f := factsOf(n.Key+", "+n.About, "", title.Read(n.Key))
		f.kind = n.Kind
		if isA(n.Kind, catalog.Clamp) {
			f.bore, f.ends = boreIn(n.Key, ""), nil
		}
		return f
	}
	it := n.Item
	text := strings.Join([]string{it.About, it.Title, it.Spec}, ", ")
	list := wordList(n.Kind + ", " + text)
	f := facts{kind: n.Kind, material: materialOf(it.Material), class: it.Class, words: distinct(wordList(it.ID + ", " + text)), traits: traitsIn(list)}
	f.read(text)
	f.scale, f.set = 0, 0
	for i := range it.Ports {
		if p := &it.Ports[i]; p.Said && len(p.End.Candidates) > 0 {
			f.ends = append(f.ends, planned(p.End.Candidates))
			f.ends[len(f.ends)-1].port = p.Name
			if p.Name == "branch" {
				f.branch = len(f.ends)
			}
		}
	}
	if spec, ok := pressure.HoseSpec(it.Spec); ok {
		f.spec = string(spec)
	}
	if isA(f.kind, catalog.Hose) {
		f.metal = endMetal(it.Material)
	}
	if it.Kind.Selector {
		f.traits |= traitsIn(wordList("three-way"))
	}
	f.figures(it)
	return f
}

// heldBy gives contents the size of what they are in, where they have none of their own.
func (f *facts) heldBy(holder *build.Item) {
	text := holder.About + ", " + holder.Title + ", " + holder.Process.Size
	switch {
	case isA(f.kind, catalog.Cartridge) && f.tall == 0:
		f.tall = tallIn(text)
	case isA(f.kind, catalog.Element) && f.element.across == 0:
		f.element = elementIn(text)
	}
	f.traits |= traitsIn(wordList(holder.Kind.Name + ", " + text))
}

func (f *facts) figures(it *build.Item) {
	for to, from := range map[*quantity.Pressure]*quantity.Pressure{&f.rated: it.Rated, &f.scale: it.Scale, &f.set: it.Set} {
		if from != nil {
			*to = *from
		}
	}
	for _, l := range []struct{ to, from *quantity.Length }{{&f.micron, it.Micron}, {&f.bore, it.Outside}, {&f.bore, it.Bore}, {&f.length, it.Length}} {
		if l.from != nil {
			*l.to = *l.from
		}
	}
	if it.Flow != nil {
		f.flow = flowRange{*it.Flow, *it.Flow}
	}
	if it.Shutoff != nil {
		f.cut = *it.Shutoff
	}
	for _, p := range it.Process.Curve { // what it gives at no pressure, and the pressure at no flow
		f.flow.from, f.flow.to, f.cut = max(f.flow.from, p.Flow), max(f.flow.to, p.Flow), max(f.cut, p.Pressure)
	}
	if r := it.Process.MeterFrom; r != nil {
		f.flow = flowRange{r.Lo, r.Hi}
	}
	if isA(f.kind, catalog.SkinFitting) {
		f.hull = hullSize(it.Process.Size, nil)
	}
	if it.Process.Size != "" && isA(f.kind, catalog.Element|catalog.Separates) {
		f.element = elementIn(it.Process.Size)
	}
	if v := voltsIn(it.Motor); v[0] > 0 {
		f.volts, f.current = v, currentIn(it.Motor)
	}
}
