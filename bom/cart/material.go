package cart

import (
	"strings"

	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/title"
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
	said, planned := l.madeOf(n.facts.kind), n.facts.madeOf(n.facts.kind)
	if said == "" || planned == "" || isA(n.facts.kind, catalog.HoseStock) {
		return
	}
	same, open := sameMaterial(said, planned)
	switch {
	case same:
		m.add(byMaterial)
	case open && vague[said] != nil:
		if n.place != nil && len(n.place.waters) > 0 && !(said == "plastic" && !n.place.high) && !n.anySuits(said) {
			m.asks.add(inMaterial)
		}
	case open:
		m.add(byMaterial)
	default:
		m.add(byMaterialDiffers)
		if n.asWell(said) {
			m.asks.add(inMaterial)
		} else {
			m.differs.add(inMaterial)
			m.metals = metalOf(said) != metalOf(planned)
		}
	}
}

// besides keeps the materials that a line names beside the first: two that a shop sells under one title,
// or that of something on the part. Rubber and PTFE are of its seals and seats, and plastic on a metal
// part is its handle.
func (f *facts) besides(text string, r *threads.Reading) {
	if isA(f.kind, catalog.Hose|catalog.HoseStock) {
		return
	}
	for _, name := range r.Materials {
		m, ok := catalog.MaterialNamed(name)
		if name == "carbon steel" && stainless(f.material) && !plainSteel.MatchString(text) {
			continue // acciaio 316, CrNi-Stahl 1.4404
		}
		if same, open := sameMaterial(name, f.material); ok && !same && !open && (m.Metal() || m.Group == "plastic" && name != "ptfe" && !metalOf(f.material)) {
			f.others = append(f.others, name)
		}
	}
}

// plainSteel are words of a steel that is not stainless; the bare word is said of stainless too.
var plainSteel = pattern.New(`(?i)carbon[ei]?\b|kohlenstoff|carbono|carbonio|mild steel|zinc|zink|\bgalv|plated|schwarz|\b(?:steel|stahl|acier|acciaio|acero|staal)\s*(?:[,;/)]|$)`)

func stainless(material string) bool {
	m, ok := catalog.MaterialNamed(material)
	return ok && m.Stainless()
}

// unsuited gives a material that a line names beside the first, and that its place suits less than the
// planned one; "" for none.
func (n *need) unsuited(l *facts) string {
	for _, name := range l.others {
		if same, _ := sameMaterial(name, n.facts.material); n.place != nil && n.facts.material != "" && !same && !n.asWell(name) {
			return name
		}
	}
	return ""
}

// madeOf is the material that a part of a kind is bought by: of a hose that is made up the
// metal of its ends.
func (f *facts) madeOf(kind string) string {
	if isA(kind, catalog.Hose) {
		return f.metal
	}
	return f.material
}

// anySuits reports whether the waters of the place suit whatever a vague word turns out to be:
// stainless of any grade does in fresh water.
func (n *need) anySuits(word string) bool {
	for _, name := range vague[word] {
		m, ok := catalog.MaterialNamed(name)
		if !ok || n.place.suits(m) < catalog.Suitable {
			return false
		}
	}
	return true
}

// endMetal gives the metal of a hose's ends: of the part of the text that speaks of them, or
// else of all of it. Of several none is said.
func endMetal(text string) string {
	for _, part := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(",;()/", r) }) {
		if endWords.MatchString(part) {
			if metal := metalIn(part); metal != "" {
				return metal
			}
		}
	}
	return metalIn(text)
}

// endWords are what shops call the ends of a hose.
var endWords = pattern.New(`(?i)\bends?\b|fittings?|couplings?|\btails?\b|inserts?|armatur|embout|raccord|koppeling|terminal|racor|conex|ferrule|nippel|ss\b`)

func metalIn(text string) string {
	metal := ""
	for _, m := range catalog.MaterialsIn(text) {
		switch {
		case !m.Metal() || m.Name == metal:
		case metal != "":
			return ""
		default:
			metal = m.Name
		}
	}
	if metal == "" {
		if m, ok := catalog.MaterialNamed(materialWord(text)); ok && m.Metal() {
			metal = m.Name
		}
	}
	return metal
}

// materialWord is the material of a text in any language that the reader of titles knows; "" for none.
func materialWord(text string) string { return title.Read("part, " + text).Material }

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
