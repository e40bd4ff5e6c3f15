package cart

import (
	"slices"
	"strconv"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/order"
	"handtight/catalog"
)

// need is something to buy, with what a line is compared with.
type need struct {
	*order.Need
	line   *order.Line
	index  int
	facts  facts
	place  *place // what its places ask; nil where it is in none
	alike  int    // index of the first need that nothing tells this one from
	offers []*build.Offer
	codes  []string
	keys   []string // the sizes of its ends, with those of alike tubes
	id     string   // its key, as codes compare
	only   bool     // of its kind
	filled bool     // nothing else of the build goes into it: a housing comes with its cartridge
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

func newMatcher(sys *bom.System, order *order.Order) *matcher {
	m := &matcher{
		byCode: map[string][]*need{}, byID: map[string]*need{}, byKind: map[string][]*need{}, byEnd: map[string][]*need{},
		byEnds: map[string][]*need{}, seen: map[string][]match{},
	}
	offered := sys.Build.OffersByItem()
	places := placesOf(sys)
	twins := map[string]int{}
	holds := map[string]bool{}
	for _, l := range order.Lines {
		if l.Need != nil && l.Need.Item != nil && l.Need.Item.Inside != "" {
			holds[l.Need.Item.Inside] = true
		}
	}
	for i, l := range order.Lines {
		if l.Filler {
			continue // anything does; these lines stand last
		}
		n := &need{Need: l.Need, line: l, index: i, facts: needFacts(l.Need), place: places[l.Need.Item], offers: offered[l.Need.Key], id: codeKey(l.Need.Key)}
		n.runsOn(sys)
		n.filled = n.Item != nil && !holds[n.Item.ID]
		if n.Item != nil && n.Item.Inside != "" {
			if holder, ok := sys.Build.Item(n.Item.Inside); ok {
				n.facts.heldBy(holder)
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
	if isA(n.Kind, catalog.Electric) {
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
		keys[i] = strconv.Itoa(int(e.Family)) + "/" + strconv.Itoa(int(sexOf(e))) + "/" + strconv.FormatBool(e.Left) + "/" + ends[i].keys[0]
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
	if isA(f.kind, catalog.Filter) && !isA(f.kind, catalog.Carbon) && !n.filled {
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
