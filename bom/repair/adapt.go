package repair

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"handtight/bom/build"
	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/adapt"
)

// Options say what a chain must stand.
type Options struct {
	Pressure quantity.Pressure // every joint and piece must hold it; 0: 3 bar, and the answer says so
	Water    string            // "sea", "product", "fresh"; "" is not said
	Material string            // of the pieces; "" is any that will do
	Most     int               // pieces; 0: two, one below the waterline
	Below    bool              // below the waterline
	Turns    bool              // something in it must turn last
	ByPrice  bool              // the cheaper before the shorter
	Count    int               // chains shown; 0: three
	Build    *build.Build      // whose items and offers may be used as well
}

// Answer is what to buy, or why nothing will do.
type Answer struct {
	Direct  *threads.Mating // the ends join already; nothing to buy
	Chains  []Chain         // the best first
	None    string          // the first wall that every chain meets; "" where a chain is found
	Ask     string          // what would tell the readings of an open end apart; "" where they are one
	Assumed string          // what was taken since it was not said
}

// Chain is pieces to buy, with the joints that they make.
type Chain struct {
	Pieces   []*Piece
	Turned   []bool // the piece's second end looks at the first given end
	Joints   []threads.Mating
	Holds    *pressure.Rating // of the weakest piece; nil where one is not known
	Weakest  *Piece
	Cautions []string
	Notes    []string // of its materials: they do not make a chain worse than another
}

// article is what a rating that is no standard's own rests on, in words.
func article(b pressure.Basis) string {
	if b == pressure.Claim {
		return "what makers commonly claim"
	}
	return "an estimate"
}

// assumed is the pressure of a joint of which nothing is said: a house system's (judgement).
const assumed = 3 * quantity.Bar

// highPressure is what generic fittings without a rating are kept away from: the same bound
// as everywhere (a judgement).
const highPressure = 10 * quantity.Bar

// Adapt finds the pieces to buy between two ends that stay.
func Adapt(a, b threads.EndReading, o Options) Answer {
	var out Answer
	if o.Pressure <= 0 {
		o.Pressure = assumed
		out.Assumed = "judged at 3 bar, since no pressure is given"
	}
	if o.Most <= 0 {
		o.Most = 2
	}
	if o.Below {
		o.Most = 1
	}
	if o.Count <= 0 {
		o.Count = 3
	}
	if len(a.Candidates) == 0 || len(b.Candidates) == 0 {
		out.None = "an end is not understood"
		return out
	}
	if m, ok := directly(a, b, o); ok {
		out.Direct = &m
		return out
	}
	if why := never(a, b, o); why != "" {
		out.None = why
		return out
	}
	q := newQuery(o)
	out.Chains = q.chains(a, b)
	if len(a.Candidates) > 1 || len(b.Candidates) > 1 {
		out.Ask = ask(a, b)
	}
	if len(out.Chains) == 0 {
		out.None = q.why(a, b)
		return out
	}
	q.sort(out.Chains, a.Candidates[0], b.Candidates[0])
	out.Chains = out.Chains[:min(len(out.Chains), o.Count)]
	return out
}

// directly reports whether every reading of the ends joins as it is.
func directly(a, b threads.EndReading, o Options) (worst threads.Mating, ok bool) {
	for _, x := range a.Candidates {
		for _, y := range b.Candidates {
			m := threads.Mate(x, y)
			if !m.Verdict.Holds() {
				return worst, false
			}
			worst = m
		}
	}
	return worst, true
}

// never names what a fitter would not do at all.
func never(a, b threads.EndReading, o Options) string {
	skin := func(r threads.EndReading) bool {
		return slices.ContainsFunc(r.Candidates, func(e threads.End) bool { return e.Family == threads.NPS })
	}
	if o.Below && (skin(a) || skin(b)) {
		return "below the waterline nothing may stand between a skin fitting and its seacock: change one of the two, for a seacock on a flange with the straight thread, or a fitting of the valve's own thread"
	}
	for _, r := range []threads.EndReading{a, b} {
		for _, e := range r.Candidates {
			switch {
			case e.Family == threads.PG:
				return "nobody makes an adaptor from a cable gland's thread to a pipe: replace the part"
			case e.Left:
				return "no left-hand adaptor is stocked: replace the part with the left-hand thread"
			}
		}
	}
	return ""
}

// ask says what tells the readings of an open end apart.
func ask(a, b threads.EndReading) string {
	for _, r := range []threads.EndReading{a, b} {
		if len(r.Candidates) > 1 {
			var words []string
			for _, e := range r.Candidates {
				words = append(words, e.String())
			}
			return "which of these is it: " + strings.Join(words, ", ") + "?"
		}
	}
	return ""
}

// query is a search with its rules, each of which can be dropped to find out which wall
// stands in the way.
type query struct {
	o     Options
	shelf *shelf
	drop  map[string]bool
}

func newQuery(o Options) *query {
	return &query{o: o, shelf: shelfOf(o.Build), drop: map[string]bool{}}
}

// Most chains that are looked at before they are ordered: more only repeat one another.
const mostChains = 4000

// chains searches the first readings, and keeps what serves all of them.
func (q *query) chains(a, b threads.EndReading) []Chain {
	w := adapt.Wish{
		Pressure: q.o.Pressure, Most: q.o.Most, Strict: q.o.Below || q.o.Pressure > highPressure, Limit: mostChains,
		Accept: q.accepts, Pair: q.pairs,
	}
	if q.drop["most"] {
		w.Most = 3
	}
	var out []Chain
	for _, c := range q.shelf.stock.Chains(a.Candidates[0], b.Candidates[0], w) {
		chain := Chain{Joints: c.Joints}
		for _, p := range c.Pieces {
			chain.Pieces = append(chain.Pieces, q.shelf.pieces[p.Index])
			chain.Turned = append(chain.Turned, p.Turned)
		}
		if q.serves(&chain, a, b, w) && q.fits(&chain) {
			q.weigh(&chain)
			out = append(out, chain)
		}
	}
	return out
}

// end is the end of a chain's piece that looks at the first given end, or away from it.
func (c *Chain) end(i int, away bool) threads.End {
	k := 0
	if away != c.Turned[i] {
		k = 1
	}
	return c.Pieces[i].Ends[k]
}

// serves reports whether a chain joins every reading of both ends.
func (q *query) serves(c *Chain, a, b threads.EndReading, w adapt.Wish) bool {
	for _, x := range a.Candidates {
		if _, ok := adapt.Direct(x, c.end(0, false), w); !ok {
			return false
		}
	}
	for _, y := range b.Candidates {
		if _, ok := adapt.Direct(c.end(len(c.Pieces)-1, true), y, w); !ok {
			return false
		}
	}
	return true
}

// accepts reports whether a piece may stand in a chain at all.
func (q *query) accepts(i int) bool {
	p := q.shelf.pieces[i]
	if p.Kind == "elbow" || p.Kind == "hose tail" && q.o.Pressure > highPressure {
		return false // an elbow turns the line, which nobody asked for
	}
	if q.o.Material != "" && !q.drop["material"] && !p.isOf(q.o.Material) && p.Kind != "hose" {
		return false
	}
	if !q.drop["water"] && !q.standsIn(p) {
		return false
	}
	if !q.drop["pressure"] && !q.holds(p) {
		return false
	}
	return !(p.Kind == "bush" && p.Steps >= 3 && q.o.Pressure > highPressure)
}

// holds reports whether a piece is rated for the pressure; below high pressure a piece
// without a rating may stand, and is said to be without.
func (q *query) holds(p *Piece) bool {
	r, ok := p.Holds()
	if p.Kind == "hose" {
		return q.o.Pressure <= highPressure
	}
	if !ok {
		return q.o.Pressure <= highPressure
	}
	return r.Pressure >= q.o.Pressure
}

// standsIn reports whether a piece's material may be used in the water.
func (q *query) standsIn(p *Piece) bool {
	for _, m := range p.material {
		if q.suits(m) == catalog.No {
			return false
		}
		if q.o.Water == "sea" && (m.Name == "brass" || strings.Contains(m.Name, "galvanised") || m.Name == "steel" || m.Name == "304") {
			return false
		}
	}
	return !(q.o.Water == "sea" && (len(p.material) == 0 && p.Kind != "hose"))
}

func (q *query) suits(m *catalog.Material) catalog.Suitability {
	switch q.o.Water {
	case "sea":
		if q.o.Pressure > highPressure {
			return m.In(catalog.PressedSea)
		}
		return m.In(catalog.RawSea)
	case "product":
		return m.In(catalog.Product)
	}
	return catalog.Suitable
}

// pairs reports whether two pieces may touch: no bush in a bush, and in sea water no metals
// further apart than the galvanic limit.
func (q *query) pairs(i, k int) bool {
	a, b := q.shelf.pieces[i], q.shelf.pieces[k]
	if a.Kind == "bush" && b.Kind == "bush" {
		return false
	}
	if q.o.Water != "sea" || len(a.material) == 0 || len(b.material) == 0 {
		return true
	}
	least, _, ok := catalog.GalvanicGap(a.material[0], b.material[0])
	return !ok || least <= catalog.GalvanicLimit
}

// fits drops what no joint judge sees: a metal taper male in a plastic female, and a chain in
// which nothing turns where something must.
func (q *query) fits(c *Chain) bool {
	for i := range c.Joints {
		male, female := c.Joints[i].A, c.Joints[i].B
		if male.Sex == threads.Female {
			male, female = female, male
		}
		if male.Family.Facts().Tapered && !male.Plastic && female.Plastic {
			return false
		}
	}
	if !q.o.Turns {
		return true
	}
	for i, p := range c.Pieces {
		if p.Kind == "union" || p.Ends[0].Swivel || p.Ends[1].Swivel || c.Joints[i].A.Swivel || c.Joints[i].B.Swivel {
			return true
		}
	}
	return false
}

// weigh finds a chain's weakest piece and what to mind of it.
func (q *query) weigh(c *Chain) {
	add := func(format string, args ...any) {
		if s := fmt.Sprintf(format, args...); !slices.Contains(c.Cautions, s) {
			c.Cautions = append(c.Cautions, s)
		}
	}
	all := true
	for _, p := range c.Pieces {
		r, ok := p.Holds()
		if p.Kind == "hose" {
			continue
		}
		if !ok {
			all = false
			add("nothing says what %s holds: ask for its data sheet", p.Words)
			continue
		}
		if c.Holds == nil || r.Pressure < c.Holds.Pressure {
			c.Holds, c.Weakest = &r, p
		}
		if q.o.Pressure > highPressure && (r.Basis.Guess() || r.Basis == pressure.Claim) {
			add("only %s says that %s holds %s: ask for a data sheet of %s or more", article(r.Basis), p.Words, r.Pressure, q.o.Pressure)
		}
		for _, m := range p.material {
			if q.suits(m) == catalog.Caution {
				c.Notes = append(c.Notes, fmt.Sprintf("%s in this water: with care", m.Title))
			}
		}
	}
	if !all {
		c.Holds, c.Weakest = nil, nil
	}
	for i := range c.Joints {
		if m := &c.Joints[i]; m.Verdict == threads.LowPressureOnly {
			add("a joint that closes at low pressure only: %s", m.Reason())
		}
	}
}

// sort puts the best first: fewest cautions, pieces, further families, steps beyond one;
// price where all have one; fewest seals to lose; then the name.
func (q *query) sort(list []Chain, a, b threads.End) {
	families := func(c *Chain) int {
		chain := adapt.Chain{}
		for i := range c.Pieces {
			chain.Pieces = append(chain.Pieces, adapt.Piece{In: c.end(i, false), Out: c.end(i, true)})
		}
		return len(chain.Families(a, b))
	}
	steps := func(c *Chain) int {
		n := 0
		for _, p := range c.Pieces {
			n += max(0, p.Steps-1)
		}
		return n
	}
	loose := func(c *Chain) int {
		n := 0
		for i := range c.Joints {
			if c.Joints[i].Verdict == threads.SealsWith {
				n++
			}
		}
		return n
	}
	name := func(c *Chain) string {
		var out []string
		for _, p := range c.Pieces {
			out = append(out, p.ID)
		}
		return strings.Join(out, " ")
	}
	slices.SortStableFunc(list, func(x, y Chain) int {
		price := comparePrice(&x, &y)
		first := 0
		if q.o.ByPrice {
			first = price
		}
		return cmp.Or(first,
			cmp.Compare(len(x.Cautions), len(y.Cautions)), cmp.Compare(len(x.Pieces), len(y.Pieces)), cmp.Compare(families(&x), families(&y)),
			cmp.Compare(steps(&x), steps(&y)), price, cmp.Compare(rank(&x), rank(&y)), cmp.Compare(loose(&x), loose(&y)), cmp.Compare(name(&x), name(&y)))
	})
}

// rank prefers the usual make: what is heavier or dearer than need be comes later.
func rank(c *Chain) int {
	n := 0
	for _, p := range c.Pieces {
		n += p.Usual
	}
	return n
}

// comparePrice compares two chains all of whose pieces have an offer; 0 else.
func comparePrice(x, y *Chain) int {
	sum := func(c *Chain) (float64, bool) {
		total := 0.0
		for _, p := range c.Pieces {
			if p.Price == nil {
				return 0, false
			}
			var f float64
			if _, err := fmt.Sscan(p.Price.Number(), &f); err != nil {
				return 0, false
			}
			total += f
		}
		return total, true
	}
	a, okA := sum(x)
	b, okB := sum(y)
	if !okA || !okB {
		return 0
	}
	return cmp.Compare(a, b)
}
