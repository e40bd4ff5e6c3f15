package cart

import (
	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

// holds gives what a line says that it holds: its rating, and that of its class; the lower
// rules. The full scale of a gauge is none.
func (l *facts) holds(n *need) (quantity.Pressure, bool) {
	if isA(n.Kind, catalog.Gauge) {
		return 0, false
	}
	holds, known := l.rated, l.rated > 0
	lower := func(p quantity.Pressure, ok bool) {
		if ok && (!known || p < holds) {
			holds, known = p, true
		}
	}
	if l.class != "" {
		lower(l.classRating(&n.facts))
	}
	if l.spec != "" {
		bore := l.bore
		if bore == 0 {
			bore = n.facts.bore
		}
		r, ok := pressure.HoseRating(pressure.Spec(l.spec), bore)
		lower(r.Pressure, ok)
	}
	return holds, known
}

// classRating is what the class gives the weakest of the line's ends, or of the planned ones
// where the line says none.
func (l *facts) classRating(n *facts) (lowest quantity.Pressure, ok bool) {
	ends := l.ends
	if len(ends) == 0 {
		ends = n.ends
	}
	material := orWords(l.material, n.material)
	for _, e := range ends {
		for i := range e.readings {
			end := &e.readings[i]
			if !end.Family.Threaded() {
				continue
			}
			if r, known := pressure.FittingRating(l.class, material, end.Family.String(), end.Sex == 1, end.Size); known && (!ok || r.Pressure < lowest) {
				lowest, ok = r.Pressure, true
			}
		}
	}
	return lowest, ok
}

// compareMaterial holds a material to the planned one and to the waters of the place.
// Another one that the water suits as well is asked about.
func (m *match) compareMaterial(l *facts, n *need) {
	if l.material == "" || n.facts.material == "" || isA(n.facts.kind, catalog.Hose|catalog.HoseStock) {
		return
	}
	same, open := sameMaterial(l.material, n.facts.material)
	switch {
	case same:
		m.add(byMaterial)
	case open && vague[l.material] != nil:
		if n.place != nil && len(n.place.waters) > 0 && !(l.material == "plastic" && !n.place.high) {
			m.asks.add(inMaterial)
		}
	case open:
		m.add(byMaterial)
	default:
		m.add(byMaterialDiffers)
		if n.asWell(l.material) {
			m.asks.add(inMaterial)
		} else {
			m.differs.add(inMaterial)
			m.metals = metalOf(l.material) != metalOf(n.facts.material)
		}
	}
}

func metalOf(material string) bool {
	m, ok := catalog.MaterialNamed(material)
	return ok && m.Metal()
}

// asWell reports whether the place's waters suit a material no less than the planned one.
func (n *need) asWell(material string) bool {
	got, ok := catalog.MaterialNamed(material)
	planned, known := catalog.MaterialNamed(n.facts.material)
	if !ok || !known || n.place == nil || got.Metal() != planned.Metal() {
		return false
	}
	return n.place.suits(got) >= n.place.suits(planned) && n.place.suits(got) > catalog.No
}
