package cart

import (
	"slices"
	"strings"
)

// general kinds say little: an adaptor may be sold as a nipple or a bush.
var general = []string{"adaptor", "tube fitting", "nut", "valve"}

// soldAs are kinds that shops sell under one another's name.
var soldAs = map[string][]string{
	"filter housing": {"carbon filter"}, "carbon filter": {"filter housing"},
	"shut-off valve": {"selector valve"}, "through-hull": {"seacock"}, "nipple": {"adaptor", "reducer"}, "reducer": {"nipple", "bush"},
	"union": {"coupling"}, "street elbow": {"elbow"},
}

func (m *match) kind(l *facts, n *need) {
	switch {
	case l.kind == "" || n.facts.kind == "":
	case l.kind == n.facts.kind:
		m.add(byKind)
		if n.only && len(n.facts.ends) == 0 {
			m.add(byOnly)
		}
	case slices.Contains(general, l.kind) || slices.Contains(general, n.facts.kind):
	case slices.Contains(soldAs[l.kind], n.facts.kind), l.spells(n.facts.kind):
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

// identified reports whether a line's words alone say that it is the part: by all its ends,
// or by the figure that a part without ends goes by.
func (m *match) identified(l *facts) bool {
	n := m.need
	switch {
	case m.differs != 0:
		return false
	case len(n.facts.ends) > 0:
		return m.fit == fitSame && (m.has(byKind) || len(n.facts.ends) > 1 && l.kind == "" || len(n.facts.ends) > 1 && !m.differs.has(inKind))
	case !m.has(byKind):
		return false
	}
	switch n.facts.kind {
	case "filter cartridge":
		return m.has(byFigure) && (n.facts.micron == 0 || l.micron > 0) || m.has(byTrait) && l.traits.has("carbon") && n.facts.traits.has("carbon")
	case "tape":
		return m.has(byTrait) || len(l.words) <= 1
	case "oil", "seal kit":
		return m.has(byTrait)
	case "membrane element":
		return m.has(byFigure) || n.facts.element.across == 0 && m.has(byOnly)
	}
	return m.has(byFigure) // a clamp, a hose by its bore
}
