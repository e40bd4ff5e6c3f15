package cart

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"

	"handtight/bom"
)

// Evidence is one thing that speaks for a match, or against it.
type Evidence struct {
	Name   string // as table/evidence.csv names it
	Points int    // hundredths
	Says   string
}

// The bounds of a match, in hundredths (judgement): from sure on it is taken, if the next
// one is lead points behind; below ask nothing is matched.
const (
	sure = 70
	lead = 10
	ask  = 40
	// nearSure is what a line with a wrong thread must have to be named so.
	nearSure = 60
)

var evidence = sync.OnceValue(func() map[string]Evidence {
	out := map[string]Evidence{}
	for _, r := range readTable("evidence.csv") {
		n, err := strconv.Atoi(r[1])
		if err != nil {
			panic("cart: evidence " + r[0] + " has no points")
		}
		out[r[0]] = Evidence{r[0], n, r[2]}
	}
	return out
})

// match is a line held against one of the build's needs.
type match struct {
	need     *need
	evidence []Evidence
	points   int
	fit      fit // of the ends
	ends     []int
}

func (m *match) add(name string) { m.give(name, evidence()[name].Points) }

func (m *match) give(name string, points int) {
	e := evidence()[name]
	e.Points = points
	m.evidence = append(m.evidence, e)
	m.points += points
}

// need is something to buy, with what a line is compared with.
type need struct {
	*bom.Need
	line  *bom.Line
	index int
	facts facts
	alike int // index of the first need that nothing tells this one from
	codes []string
	only  bool // of its kind
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
	codes := map[string][]string{}
	for _, o := range offers {
		if o.Code != "" {
			codes[o.Item] = append(codes[o.Item], codeKey(o.Code))
		}
	}
	twins := map[string]int{}
	for i, l := range order.Lines {
		n := &need{Need: l.Need, line: l, index: i, facts: needFacts(l.Need), codes: codes[l.Need.Key]}
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
	m.byID[codeKey(n.Key)] = n
	m.byKind[n.facts.kind] = append(m.byKind[n.facts.kind], n)
	for _, c := range n.codes {
		m.byCode[c] = append(m.byCode[c], n)
	}
	for _, k := range fileKeys(n.facts.ends) {
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
		readings := e.readings
		for i := range readings {
			if k := sizeKey(&readings[i]); !slices.Contains(out, k) {
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
	code := codeKey(l.Code)
	var out []match
	for _, n := range m.pool(l, code) {
		if one := compare(l, n, code); one.points > 0 || one.named() {
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
func (m *matcher) pool(l *Line, code string) []*need {
	var out []*need
	if code != "" {
		out = append(out, m.byCode[code]...)
	}
	for _, id := range []string{codeKey(l.Item), code, codeKey(l.Text)} {
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
	if !found && len(l.facts.ends) == 0 {
		rarest = m.byKind[l.facts.kind]
	}
	out = append(out, rarest...)
	slices.SortStableFunc(out, func(a, b *need) int { return cmp.Compare(a.index, b.index) })
	return slices.Compact(out)
}

// compare weighs a line against a need.
func compare(l *Line, n *need, code string) match {
	m := match{need: n}
	if code != "" && slices.Contains(n.codes, code) {
		m.add("code")
	}
	if id := codeKey(n.Key); id != "" && (codeKey(l.Item) == id || code == id || codeKey(l.Text) == id) {
		m.add("item")
	}
	m.kind(&l.facts, n)
	m.compareEnds(&l.facts, &n.facts)
	m.figures(&l.facts, &n.facts)
	if n.facts.material != "" && l.facts.material != "" {
		switch same, open := sameMaterial(l.facts.material, n.facts.material); {
		case same:
			m.add("material")
		case !open:
			m.add("material-differs")
		}
	}
	m.words(&l.facts, n)
	return m
}

// words compares the item's own words with the line's: a few shared ones say little
// where an item has many.
func (m *match) words(l *facts, n *need) {
	own := len(n.facts.words)
	if own == 0 {
		return
	}
	common, least := sharedWords(n.facts.words, l.words), 3
	if n.Item == nil {
		least = 1 // its name says all of it: tape 12 mm
	}
	if share := common * evidence()["words"].Points / max(least, own); share > 0 {
		m.give("words", share)
	}
	if common == own && own >= 3 {
		m.add("all-words")
	}
}

// general kinds say little: an adaptor may be sold as a nipple or a bush.
var general = []string{"adaptor", "tube fitting", "nut", "valve"}

func (m *match) kind(l *facts, n *need) {
	switch {
	case l.kind == "" || n.facts.kind == "":
	case l.kind == n.facts.kind:
		m.add("kind")
		if n.only && len(n.facts.ends) == 0 {
			m.add("only")
		}
	case slices.Contains(general, l.kind) || slices.Contains(general, n.facts.kind):
	default:
		m.add("kind-differs")
	}
}

// figures compares what a part is rated by, where both say it.
func (m *match) figures(l, n *facts) {
	for _, pair := range [][3]float64{{l.micron, n.micron, 0.01}, {l.scale, n.scale, 0.02}, {l.set, n.set, 0.02}} {
		switch a, b := pair[0], pair[1]; {
		case a == 0 || b == 0:
		case a > b*(1-pair[2]) && a < b*(1+pair[2]):
			m.add("figure")
		default:
			m.add("figure-differs")
		}
	}
	m.bore(l, n)
	if l.spec != "" && l.spec == n.spec {
		m.add("spec")
	}
	if n.kind == "hose" && l.length > 0 && n.length > 0 {
		if l.length > n.length*0.99 && l.length < n.length*1.01 {
			m.add("length")
		} else {
			m.add("length-differs")
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
		m.add("figure")
	case apart <= nextBore && l.kind == "hose stock" && n.kind == l.kind:
		m.fit = fitNear
		m.add("bore-near")
	default:
		m.add("figure-differs")
	}
}

// nextBore is how far apart two bores are that are taken for one another, in
// millimetres (judgement: 19 and 20, 12 and 13).
const nextBore = 1.6

// total is the confidence of the match, 0 to 1.
func (m *match) total() float64 { return float64(min(max(m.points, 0), 100)) / 100 }
