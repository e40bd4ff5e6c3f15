package draft

import (
	"maps"
	"slices"

	"handtight/bom/build"
	"handtight/bom/graph"
	"handtight/catalog"
)

// vessel lays a further vessel behind one that stands: into its brine, with its product at a tee of
// what is made. It is one row then, each with the brine of the one before it. A list that brings a
// pump too is taken for another offer of the whole plant, and no vessel of it is laid.
func (l *layer) vessel() bool {
	for _, p := range l.parts {
		if p.Aside != "" || p.item == nil || !p.Kind.Is(catalog.Separates) || l.used[p] >= p.Pieces || l.tried["vessel "+p.ID] || l.offersPlant() {
			continue
		}
		l.tried["vessel "+p.ID] = true
		id, item := p.ID, p.item
		if it, ok := l.alike(p); ok {
			p.ID, p.item, p.same = it.ID, it, true
		}
		for _, g := range l.between(func(j *graph.Joint) bool { return j.Known && !l.sys.Waters.Product(j.A) }, p) {
			from := &l.sys.Graph.Ports[g.from]
			if !from.Unit.Item.Kind.Is(catalog.Separates) || from.Port.Name != "brine" {
				continue
			}
			if l.vesselAt(p, g) {
				return true
			}
		}
		p.ID, p.item, p.same = id, item, false
	}
	return false
}

// offersPlant reports whether the lists bring what pushes or holds the pressure of a plant.
func (l *layer) offersPlant() bool {
	return slices.ContainsFunc(l.parts, func(p *Part) bool {
		return p.Aside == "" && (p.Kind.Has(catalog.PositivePump) || p.Kind.Has(catalog.Recovery) || p.Kind.Is(catalog.Throttles))
	})
}

// alike is the build's item that a part is a further piece of.
func (l *layer) alike(p *Part) (*build.Item, bool) {
	if p.fallback == nil {
		return nil, false
	}
	it, ok := l.sys.Build.Item(p.fallback.Item())
	if !ok || it.Kind != p.Kind || len(it.Ports) != len(p.item.Ports) {
		return nil, false
	}
	for i := range it.Ports {
		a, b := it.Ports[i].End.Candidates, p.item.Ports[i].End.Candidates
		if len(a) == 0 || !slices.Equal(a, b) {
			return nil, false
		}
	}
	return it, true
}

// vesselAt lays a vessel into one joint and its product at a tee, or does nothing.
func (l *layer) vesselAt(p *Part, g gap) bool {
	was := *l
	was.used, was.taken, was.says = maps.Clone(l.used), maps.Clone(l.taken), maps.Clone(l.says)
	l.loose = true
	ok := l.try(&g)
	l.loose = false
	if ok {
		for _, u := range l.sys.Graph.Units {
			n := u.Item.PortIndex("product")
			if u.Item.ID != p.ID || n < 0 || l.sys.Graph.Port(u, n).Joint != nil {
				continue
			}
			row := []rowUnit{{stands: u.Name, near: "product", port: u.First + n}}
			for _, t := range l.between(func(j *graph.Joint) bool { return j.Known && l.sys.Waters.Product(j.A) }, p) {
				t.row, t.back, t.name = row, true, "product of "+u.Name
				if l.try(&t) {
					l.laidVessel = u
					return true
				}
			}
		}
	}
	why := l.why
	*l = was
	l.why = why
	return false
}
