package cart

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"handtight/bom"
)

// The bounds of a match, in hundredths (judgement): from sure on it is taken, if the next
// one is lead points behind; below ask nothing is matched.
const (
	sure = 70
	lead = 10
	ask  = 40
	// nearSure is what a line with a wrong thread must have to be named so.
	nearSure = 60
)

// match is a line held against one of the build's needs.
type match struct {
	need *need
	weight
	fit  fit             // of the ends
	laid [mostEnds]uint8 // see laying
}

// end gives which of the line's ends lies on one of the item's; -1 for none.
func (m *match) end(at int) int {
	if at >= mostEnds {
		return -1
	}
	return int(m.laid[at]) - 1
}

// need is something to buy, with what a line is compared with.
type need struct {
	*bom.Need
	line   *bom.Line
	index  int
	facts  facts
	alike  int // index of the first need that nothing tells this one from
	offers []*bom.Offer
	codes  []string
	keys   []string // the sizes of its ends, with those of alike tubes
	id     string   // its key, as codes compare
	only   bool     // of its kind
}

// matcher finds needs for lines.
type matcher struct {
	needs  []*need
	byCode map[string][]*need
	byID   map[string]*need
	byKind map[string][]*need
	byEnd  map[string][]*need
	seen   map[string][]match // by what was compared
}

func newMatcher(order *bom.Order, offers []*bom.Offer) *matcher {
	m := &matcher{byCode: map[string][]*need{}, byID: map[string]*need{}, byKind: map[string][]*need{}, byEnd: map[string][]*need{}, seen: map[string][]match{}}
	offered := map[string][]*bom.Offer{}
	for _, o := range offers {
		offered[o.Item] = append(offered[o.Item], o)
	}
	twins := map[string]int{}
	for i, l := range order.Lines {
		if l.Filler {
			continue // anything does; these lines stand last
		}
		n := &need{Need: l.Need, line: l, index: i, facts: needFacts(l.Need), offers: offered[l.Need.Key], id: codeKey(l.Need.Key)}
		for _, o := range n.offers {
			if o.Code != "" {
				n.codes = append(n.codes, codeKey(o.Code))
			}
		}
		key := n.twin()
		if first, ok := twins[key]; ok {
			n.alike = first
		} else {
			twins[key], n.alike = i, i
		}
		m.file(n)
	}
	for _, list := range m.byKind {
		if len(list) == 1 {
			list[0].only = true
		}
	}
	return m
}

// file enters a need under all that a line may have in common with it.
func (m *matcher) file(n *need) {
	m.needs = append(m.needs, n)
	m.byID[n.id] = n
	m.byKind[n.facts.kind] = append(m.byKind[n.facts.kind], n)
	for _, c := range n.codes {
		m.byCode[c] = append(m.byCode[c], n)
	}
	n.keys = fileKeys(n.facts.ends)
	for _, k := range n.keys {
		m.byEnd[k] = append(m.byEnd[k], n)
	}
}

// twin is all that tells a need from another: two with one twin are the same thing to buy.
func (n *need) twin() string {
	f := n.facts
	parts := []string{f.kind, f.material, f.spec, n.About}
	for _, v := range []float64{f.rated, f.micron, f.scale, f.set, f.bore, f.length} {
		parts = append(parts, strconv.FormatFloat(v, 'g', -1, 64))
	}
	for _, e := range f.ends {
		for i := range e.readings {
			parts = append(parts, e.readings[i].String())
		}
	}
	return strings.Join(parts, "|")
}

// codeKey makes codes compare: capitals, blanks and hyphens are written as people like.
func codeKey(code string) string { return strings.ReplaceAll(normal(code), " ", "") }

// fileKeys are the sizes that ends are filed under: a tube also under what alike
// tubes round to.
func fileKeys(ends []ending) []string {
	out := endKeys(ends)
	for _, e := range ends {
		readings := e.readings
		for i := range readings {
			d := float64(readings[i].Diameter)
			if readings[i].Family.Threaded() || d <= 0 {
				continue
			}
			for _, k := range []string{tubeKey(d - tubeSlack), tubeKey(d + tubeSlack)} {
				if !slices.Contains(out, k) {
					out = append(out, k)
				}
			}
		}
	}
	return out
}

// endKeys are the sizes of ends, without thread or sex.
func endKeys(ends []ending) []string {
	var out []string
	for _, e := range ends {
		for _, k := range e.keys {
			if !slices.Contains(out, k) {
				out = append(out, k)
			}
		}
	}
	return out
}

// candidates holds a line against every need that it has something in common with,
// best first; ties stay in the order of the build.
func (m *matcher) candidates(l *Line) []match {
	key := l.Code + "\x00" + l.Item + "\x00" + l.Text + "\x00" + strings.Join(l.facts.words, " ")
	if got, ok := m.seen[key]; ok {
		return got
	}
	names := namesOf(l)
	var out []match
	for _, n := range m.pool(l, &names) {
		if !names.of(n) && !mayFit(&l.facts, n) {
			continue
		}
		if one := weigh(l, n, &names); one.points > 0 || one.named() {
			out = append(out, one)
		}
	}
	slices.SortStableFunc(out, func(a, b match) int {
		return cmp.Or(cmp.Compare(b.points, a.points), cmp.Compare(a.need.index, b.need.index))
	})
	out = out[:min(len(out), mostKept)]
	m.seen[key] = out
	return out
}

// mostKept is how many of the best matches are kept for a line.
const mostKept = 12

// pool lists the needs worth comparing. A line with sizes of its own is compared with
// needs of those sizes: through the size that fewest of them have.
func (m *matcher) pool(l *Line, names *names) []*need {
	var out []*need
	if names.code != "" {
		out = append(out, m.byCode[names.code]...)
	}
	for _, id := range []string{names.item, names.code, names.text} {
		if n, ok := m.byID[id]; ok && id != "" {
			out = append(out, n)
		}
	}
	var rarest []*need
	found := false
	for _, k := range endKeys(l.facts.ends) {
		if list := m.byEnd[k]; len(list) > 0 && (!found || len(list) < len(rarest)) {
			rarest, found = list, true
		}
	}
	if !found {
		rarest = m.byKind[l.facts.kind]
	}
	out = append(out, rarest...)
	slices.SortStableFunc(out, func(a, b *need) int { return cmp.Compare(a.index, b.index) })
	return slices.Compact(out)
}

// names are what a line may name an item by, as codes compare.
type names struct{ code, item, text string }

func namesOf(l *Line) names { return names{codeKey(l.Code), codeKey(l.Item), codeKey(l.Text)} }

// of reports whether the names are the need's.
func (names *names) of(n *need) bool {
	return names.code != "" && slices.Contains(n.codes, names.code) || n.id != "" && (names.item == n.id || names.code == n.id || names.text == n.id)
}

// mayFit is a quick look before the weighing: every end of the line has a size that the
// need has too, or the line has ends to spare.
func mayFit(l *facts, n *need) bool {
	if len(n.facts.ends) == 0 || len(l.ends) > len(n.facts.ends) {
		return true
	}
	for i := range l.ends {
		if !slices.ContainsFunc(l.ends[i].keys, func(k string) bool { return slices.Contains(n.keys, k) }) {
			return false
		}
	}
	return true
}

// compare weighs a line against a need.
func compare(l *Line, n *need) match {
	names := namesOf(l)
	return weigh(l, n, &names)
}

func weigh(l *Line, n *need, names *names) match {
	m := match{need: n}
	if names.code != "" && slices.Contains(n.codes, names.code) {
		m.add(byCode)
	}
	if n.id != "" && (names.item == n.id || names.code == n.id || names.text == n.id) {
		m.add(byItem)
	}
	m.kind(&l.facts, n)
	m.compareEnds(&l.facts, &n.facts)
	m.figures(&l.facts, &n.facts)
	if n.facts.material != "" && l.facts.material != "" {
		switch same, open := sameMaterial(l.facts.material, n.facts.material); {
		case same:
			m.add(byMaterial)
		case !open:
			m.add(byMaterialDiffers)
		}
	}
	m.ownWords(&l.facts, n)
	return m
}

// ownWords compares the item's own words with the line's: a few shared ones say little
// where an item has many.
func (m *match) ownWords(l *facts, n *need) {
	own := len(n.facts.words)
	if own == 0 {
		return
	}
	common, least := sharedWords(n.facts.words, l.words), 3
	if n.Item == nil {
		least = 1 // its name says all of it: tape 12 mm
	}
	m.share(common, max(least, own))
	if common == own && own >= 3 {
		m.add(byAllWords)
	}
}

// general kinds say little: an adaptor may be sold as a nipple or a bush.
var general = []string{"adaptor", "tube fitting", "nut", "valve"}

func (m *match) kind(l *facts, n *need) {
	switch {
	case l.kind == "" || n.facts.kind == "":
	case l.kind == n.facts.kind:
		m.add(byKind)
		if n.only && len(n.facts.ends) == 0 {
			m.add(byOnly)
		}
	case slices.Contains(general, l.kind) || slices.Contains(general, n.facts.kind):
	default:
		m.add(byKindDiffers)
	}
}

// figures compares what a part is rated by, where both say it.
func (m *match) figures(l, n *facts) {
	for _, pair := range [][3]float64{{l.micron, n.micron, 0.01}, {l.scale, n.scale, 0.02}, {l.set, n.set, 0.02}} {
		switch a, b := pair[0], pair[1]; {
		case a == 0 || b == 0:
		case a > b*(1-pair[2]) && a < b*(1+pair[2]):
			m.add(byFigure)
		default:
			m.add(byFigureDiffers)
		}
	}
	m.bore(l, n)
	if l.spec != "" && l.spec == n.spec {
		m.add(bySpec)
	}
	if n.kind == "hose" && l.length > 0 && n.length > 0 {
		if l.length > n.length*0.99 && l.length < n.length*1.01 {
			m.add(byLength)
		} else {
			m.add(byLengthDiffers)
		}
	}
}

// bore compares the bores of hoses. One of the next size is taken for the right one and
// does not fit.
func (m *match) bore(l, n *facts) {
	apart := math.Abs(l.bore - n.bore)
	switch {
	case l.bore == 0 || n.bore == 0:
	case apart <= tubeSlack:
		m.add(byFigure)
	case apart <= nextBore && l.kind == "hose stock" && n.kind == l.kind:
		m.fit = fitNear
		m.add(byBoreNear)
	default:
		m.add(byFigureDiffers)
	}
}

// nextBore is how far apart two bores are that are taken for one another, in
// millimetres (judgement: 19 and 20, 12 and 13).
const nextBore = 1.6
