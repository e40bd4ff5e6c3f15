package cart

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"handtight/bom"
)

// The bounds of a match, in hundredths (judgement): of two that a line may be, the one ahead
// by lead is taken; below ask nothing is asked about; from nearSure on a line that is wrong
// in one thing is named with what it is like.
const (
	lead     = 10
	ask      = 40
	nearSure = 50
)

// match is a line held against one of the build's needs.
type match struct {
	need *need
	score
	differs aspectSet       // in what the line is wrong there
	asks    aspectSet       // what must be asked of it
	fit     fit             // of the ends
	others  int             // ends that are of another size or sort
	sorts   bool            // the one other end is of another sort, and not of another size
	laid    [mostEnds]uint8 // see laying
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
	place  *place // what its places ask; nil where it is in none
	alike  int    // index of the first need that nothing tells this one from
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
	byEnds map[string][]*need // by all ends exactly
	seen   map[string][]match // by what was compared
}

func newMatcher(sys *bom.System, order *bom.Order) *matcher {
	m := &matcher{
		byCode: map[string][]*need{}, byID: map[string]*need{}, byKind: map[string][]*need{}, byEnd: map[string][]*need{},
		byEnds: map[string][]*need{}, seen: map[string][]match{},
	}
	offered := sys.Build.OffersByItem()
	places := placesOf(sys)
	twins := map[string]int{}
	for i, l := range order.Lines {
		if l.Filler {
			continue // anything does; these lines stand last
		}
		n := &need{Need: l.Need, line: l, index: i, facts: needFacts(l.Need), place: places[l.Need.Item], offers: offered[l.Need.Key], id: codeKey(l.Need.Key)}
		n.runsOn(sys)
		if n.Item != nil && n.Item.Inside != "" {
			if holder, ok := sys.Build.Item(n.Item.Inside); ok {
				n.facts.inside(holder)
			}
		}
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

// runsOn gives a pump or a coil the boat's voltage where the item names none.
func (n *need) runsOn(sys *bom.System) {
	supply := sys.Build.Duty.Supply
	if supply == nil || n.facts.volts[0] > 0 || n.Item == nil || n.Item.Motor != "" {
		return
	}
	if n.Kind == "feed pump" || n.Kind == "solenoid valve" {
		n.facts.volts[0] = *supply
	}
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
	if k := exactly(n.facts.ends); k != "" {
		m.byEnds[k] = append(m.byEnds[k], n)
	}
}

// exactly is all that a line's ends must have in common with an item's to be the same ones;
// "" where a word is open.
func exactly(ends []ending) string {
	if len(ends) < 2 {
		return "" // one end says little
	}
	var keys [mostEnds]string
	if len(ends) > len(keys) {
		return ""
	}
	for i := range ends {
		if len(ends[i].readings) != 1 || ends[i].open {
			return ""
		}
		e := &ends[i].readings[0]
		keys[i] = strconv.Itoa(int(e.Family)) + "/" + strconv.Itoa(int(e.Sex)) + "/" + ends[i].keys[0]
	}
	list := keys[:len(ends)]
	slices.Sort(list)
	return strings.Join(list, "|")
}

// twin is all that tells a need from another: two with one twin are the same thing to buy.
// A housing is the same whatever cartridge is put into it.
func (n *need) twin() string {
	f := n.facts
	about := n.About
	if f.kind == "filter housing" {
		f.micron = 0
		about = micronForm.ReplaceAllString(about, " ")
	}
	parts := []string{f.kind, f.material, f.class, f.spec, about}
	for _, v := range []float64{float64(f.rated), float64(f.micron), float64(f.scale), float64(f.set), float64(f.bore), float64(f.length)} {
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

// candidates holds a line against every need that it has something in common with, best
// first: those that differ in least, then by evidence; ties stay in the order of the build.
func (m *matcher) candidates(l *Line) []match {
	key := l.Code + "\x00" + l.Item + "\x00" + l.Text + "\x00" + l.added
	if got, ok := m.seen[key]; ok {
		return got
	}
	names := namesOf(l)
	var out []match
	exact := m.byEnds[exactly(l.facts.ends)]
	for _, n := range m.called(&names) {
		if c := compareWith(l, n, &names); !c.byChance(&names) {
			out = append(out, c)
		}
	}
	for _, n := range exact {
		out = m.weighIn(out, l, n, &names)
	}
	if !slices.ContainsFunc(out, func(c match) bool { return c.differs == 0 }) {
		for _, n := range m.pool(l) {
			if !slices.Contains(exact, n) {
				out = m.weighIn(out, l, n, &names)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b match) int {
		return cmp.Or(cmp.Compare(min(a.differs.count(), 3), min(b.differs.count(), 3)), cmp.Compare(b.points, a.points), cmp.Compare(a.need.index, b.need.index))
	})
	out = out[:min(len(out), mostKept)]
	m.seen[key] = out
	return out
}

// byChance reports whether a short code is another shop's for another thing: FH-10 is a
// housing here, and a fuel hose there.
func (m *match) byChance(names *names) bool {
	return len(names.code) <= 4 && m.differs.has(inKind) && !m.has(byItem) && m.fit != fitSame && !m.has(byFigure) && !m.has(byMaterial)
}

// weighIn adds what a line comes to against a need, if it has anything of it.
func (m *matcher) weighIn(out []match, l *Line, n *need, names *names) []match {
	if names.of(n) && slices.ContainsFunc(out, func(c match) bool { return c.need == n }) {
		return out // called by its name already
	}
	if one := compareWith(l, n, names); one.points > 0 && (!one.named() || !one.byChance(names)) {
		out = append(out, one)
	}
	return out
}

// mostKept is how many of the best matches are kept for a line.
const mostKept = 12

// called lists the needs that a line names by their id or an offer's code.
func (m *matcher) called(names *names) []*need {
	var out []*need
	if names.code != "" {
		out = append(out, m.byCode[names.code]...)
	}
	for _, id := range []string{names.item, names.code, names.text} {
		if n, ok := m.byID[id]; ok && id != "" {
			out = append(out, n)
		}
	}
	slices.SortStableFunc(out, func(a, b *need) int { return cmp.Compare(a.index, b.index) })
	return slices.Compact(out)
}

// pool lists the needs worth comparing: those of the line's kind, or of a size that few
// have, one end of which may be another.
func (m *matcher) pool(l *Line) []*need {
	var out []*need
	sizes := 0
	for _, k := range endKeys(l.facts.ends) {
		list := m.byEnd[k]
		if sizes++; len(list) > mostAlike {
			for _, n := range list {
				if mayFit(&l.facts, n) {
					out = append(out, n)
				}
			}
			continue
		}
		out = append(out, list...)
	}
	if kin := m.byKind[l.facts.kind]; sizes == 0 || len(kin) <= mostAlike {
		out = append(out, kin...)
	}
	slices.SortStableFunc(out, func(a, b *need) int { return cmp.Compare(a.index, b.index) })
	return slices.Compact(out)
}

// mostAlike is how many needs of one size, or of one kind, are looked at for a line that is
// wrong in one end; of more only those are, of which every size is right.
const mostAlike = 100

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

// compare holds a line against a need.
func compare(l *Line, n *need) match {
	names := namesOf(l)
	return compareWith(l, n, &names)
}

func compareWith(l *Line, n *need, names *names) match {
	m := match{need: n}
	if names.code != "" && slices.Contains(n.codes, names.code) {
		m.add(byCode)
	}
	if n.id != "" && (names.item == n.id || names.code == n.id || names.text == n.id) {
		m.add(byItem)
	}
	m.kind(&l.facts, n)
	m.compareEnds(&l.facts, &n.facts)
	m.compareFigures(&l.facts, n)
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
