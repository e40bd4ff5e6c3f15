package cart

import (
	"slices"
	"strings"
	"sync"

	"handtight/catalog"
)

// isA reports whether a kind's name is that of one with any of some roles.
func isA(kind string, any catalog.Role) bool { return kind != "" && catalog.IsKind(kind, any) }

// hoseKind and stockKind are what a made-up hose and hose by the metre are called.
var (
	hoseKind  = sync.OnceValue(func() string { return catalog.OfRole(catalog.Hose).Name })
	stockKind = sync.OnceValue(func() string { return catalog.OfRole(catalog.HoseStock).Name })
)

// soldAs are kinds that shops sell under one another's name; "*" is any: an adaptor may be
// sold as a nipple or a bush.
var soldAs = sync.OnceValue(func() map[string][]string {
	out := map[string][]string{}
	for _, r := range readTable("sold_as.csv") {
		out[r[0]] = strings.Split(r[1], "|")
	}
	return out
})

// general reports whether a kind's name says little.
func general(kind string) bool { return slices.Contains(soldAs()[kind], "*") }

func (m *match) kind(l *facts, n *need) {
	switch {
	case l.kind == "" || n.facts.kind == "":
	case l.kind == n.facts.kind:
		m.add(byKind)
		if n.only && len(n.facts.ends) == 0 {
			m.add(byOnly)
		}
	case general(l.kind) || general(n.facts.kind):
	case slices.Contains(soldAs()[l.kind], n.facts.kind), l.kind != "other" && !l.forPart && l.spells(n.facts.kind):
	default:
		m.add(byKindDiffers)
		m.differs.add(inKind)
	}
}

// spells reports whether a line has all words of a kind's own name.
func (f *facts) spells(kind string) bool {
	for w := range strings.FieldsSeq(kind) {
		if _, ok := slices.BinarySearch(f.words, w); !ok {
			return false
		}
	}
	return true
}

// vouched reports whether more than ends speaks for a part whose kind is not said, or only by a name
// that says little: two push-in ends are those of a union, and no flow meter.
func (m *match) vouched(l *facts) bool {
	return l.kind != "" && !general(l.kind) || onShelf(m.need.facts.kind) || m.has(byFigure)
}

// identified reports whether a line's words alone say that it is the part: by all its ends,
// or by the figure that a part without ends goes by.
func (m *match) identified(l *facts) bool {
	n := m.need
	switch {
	case m.differs != 0:
		return false
	case len(n.facts.ends) > 0:
		return m.fit == fitSame && (m.has(byKind) || len(n.facts.ends) > 1 && m.vouched(l))
	case !m.has(byKind):
		return false
	}
	switch {
	case isA(n.facts.kind, catalog.Cartridge):
		if n.facts.traits.has("carbon") {
			return l.traits.has("carbon") // its length is that of every cartridge for the housing
		}
		return m.has(byFigure) && (n.facts.micron == 0 || l.micron > 0)
	case isA(n.facts.kind, catalog.Tape):
		return m.has(byTrait) || len(l.words) <= 1
	case isA(n.facts.kind, catalog.Oil|catalog.SealKit):
		return m.has(byTrait)
	case isA(n.facts.kind, catalog.Element):
		return m.has(byFigure) || n.facts.element.across == 0 && m.has(byOnly)
	}
	return m.has(byFigure) || m.has(byGrips) // a clamp, a hose by its bore
}
