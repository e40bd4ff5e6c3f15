package repair

import (
	"fmt"
	"slices"

	"handtight/catalog"
	"handtight/pressure"
	"handtight/threads"
	"handtight/threads/adapt"
)

// query is a search with its rules, each of which can be dropped to find out which wall
// stands in the way.
type query struct {
	o      Options
	shelf  *Shelf
	drop   map[string]bool
	serves map[served]bool
	metals map[metals]bool
	any    bool    // one chain is enough, whichever
	narrow float64 // inches: nothing may be narrower; 0: no bound
}

// served is an end of a piece, asked whether every reading of a given end takes it.
type served struct {
	e    threads.End
	last bool
}

// metals are the first materials of two pieces that touch.
type metals struct{ a, b *catalog.Material }

func newQuery(o Options) *query {
	return &query{o: o, shelf: o.Shelf, drop: map[string]bool{}, metals: map[metals]bool{}}
}

// wish is what the search itself minds.
func (q *query) wish() adapt.Wish {
	w := adapt.Wish{
		Pressure: q.o.Pressure, Most: q.o.Most, Strict: q.o.Below || q.o.Pressure > highPressure,
		Accept: q.accepts, Pair: q.pairs,
	}
	if q.drop["most"] {
		w.Most = 3
	}
	if q.drop["pressure"] {
		w.Pressure = 0
	}
	w.Best = q.best
	return w
}

// sort tells pieces apart that another piece may or may not touch.
type sort struct {
	bush, turns bool
	made        *catalog.Material
}

// best keeps of pieces with the same two ends as many of each sort as are shown: what a chain
// is put in order by is a sum over its pieces, so that a further one only makes a worse chain.
func (q *query) best(list []adapt.Piece) []adapt.Piece {
	if len(list) <= q.o.Count {
		return list
	}
	groups := map[sort][]int{}
	weights := make([]weight, len(list))
	var order []sort
	for i, x := range list {
		p := q.shelf.pieces[x.Index]
		weights[i] = q.weigh(&adapt.Chain{Pieces: list[i : i+1]}, x.In, x.Out)
		key := sort{bush: p.kind.Is(catalog.Bush), turns: p.turns()}
		if len(p.material) > 0 {
			key.made = p.material[0]
		}
		if groups[key] == nil {
			order = append(order, key)
		}
		groups[key] = append(groups[key], i)
	}
	var out []adapt.Piece
	for _, key := range order {
		of := groups[key]
		slices.SortFunc(of, func(a, b int) int { return q.compare(&weights[a], &weights[b]) })
		for _, i := range of[:min(len(of), q.o.Count)] {
			out = append(out, list[i])
		}
	}
	return out
}

// chains searches the first readings, and keeps the best of what serves all of them.
func (q *query) chains(a, b threads.EndReading) []Chain {
	w := q.wish()
	q.serves = map[served]bool{}
	q.narrow = q.least(a.Candidates[0], b.Candidates[0])
	var kept []Chain
	w.Will = func(c *adapt.Chain) bool { return q.takes(c, a, b, w) && q.refused(c) == "" }
	q.shelf.stock.Each(a.Candidates[0], b.Candidates[0], w, func(c *adapt.Chain) bool {
		weight := q.weigh(c, a.Candidates[0], b.Candidates[0])
		if len(kept) == q.o.Count && q.before(&kept[len(kept)-1].weight, &weight) {
			return true
		}
		chain := q.keep(c, weight)
		at, _ := slices.BinarySearchFunc(kept, &chain, func(k Chain, x *Chain) int { return q.compare(&k.weight, &x.weight) })
		if kept = slices.Insert(kept, at, chain); len(kept) > q.o.Count {
			kept = kept[:q.o.Count]
		}
		return !q.any
	})
	for i := range kept {
		q.say(&kept[i])
	}
	return kept
}

// keep makes a chain of what the search handed over.
func (q *query) keep(c *adapt.Chain, w weight) Chain {
	chain := Chain{Joints: slices.Clone(c.Joints), weight: w}
	for _, p := range c.Pieces {
		chain.Pieces = append(chain.Pieces, q.shelf.pieces[p.Index])
		chain.Turned = append(chain.Turned, p.Turned)
	}
	return chain
}

// takes reports whether a chain joins every reading of both ends.
func (q *query) takes(c *adapt.Chain, a, b threads.EndReading, w adapt.Wish) bool {
	all := func(r threads.EndReading, s served) bool {
		if len(r.Candidates) == 1 {
			return true // the search has asked
		}
		ok, known := q.serves[s]
		if !known {
			ok = !slices.ContainsFunc(r.Candidates, func(x threads.End) bool { _, ok := adapt.Direct(x, s.e, w); return !ok })
			q.serves[s] = ok
		}
		return ok
	}
	return all(a, served{c.Pieces[0].In, false}) && all(b, served{c.Pieces[len(c.Pieces)-1].Out, true})
}

// accepts reports whether a piece may stand in a chain at all.
func (q *query) accepts(i int) bool {
	p := q.shelf.pieces[i]
	if p.kind.Is(catalog.Elbow) || p.kind.Is(catalog.HoseTail) && q.o.Pressure > highPressure || p.hidden(q.shelf) {
		return false // an elbow turns the line, which nobody asked for
	}
	if q.o.Material != "" && !q.drop["material"] && !p.isOf(q.o.Material) && !p.kind.Is(catalog.Hose) {
		return false
	}
	if !q.drop["water"] && !q.standsIn(p) {
		return false
	}
	if !q.drop["pressure"] && !q.holds(p) {
		return false
	}
	if q.narrow > 0 && slices.ContainsFunc(p.Ends[:], func(e threads.End) bool {
		wide := threads.SizeInches(e.Size)
		return wide > 0 && wide < q.narrow
	}) {
		return false
	}
	return !(p.kind.Is(catalog.Bush) && p.Steps >= 3 && q.o.Pressure > highPressure)
}

// least is the bore, as a nominal size in inches, that a chain may not narrow; 0 where
// nothing forbids it or a size is not known.
func (q *query) least(a, b threads.End) float64 {
	if !q.o.Wide {
		return 0
	}
	return min(threads.SizeInches(a.Size), threads.SizeInches(b.Size))
}

// holds reports whether a piece is rated for the pressure; below high pressure a piece
// without a rating may stand, and is said to be without.
func (q *query) holds(p *Piece) bool {
	r, ok := p.Holds()
	if p.kind.Is(catalog.Hose) {
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
		if q.o.Water == "sea" && (!q.near(m, q.o.Beside[0]) || !q.near(m, q.o.Beside[1])) {
			return false
		}
	}
	return !(q.o.Water == "sea" && (len(p.material) == 0 && !p.kind.Is(catalog.Hose)))
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

// near reports whether a material may touch what a given end is made of in sea water.
func (q *query) near(m *catalog.Material, beside []*catalog.Material) bool {
	return len(beside) == 0 || q.touch(m, beside[0])
}

// touch reports whether two materials stand within the galvanic limit of each other.
func (q *query) touch(a, b *catalog.Material) bool {
	key := metals{a, b}
	ok, known := q.metals[key]
	if !known {
		least, _, both := catalog.GalvanicGap(a, b)
		ok = !both || least <= catalog.GalvanicLimit
		q.metals[key] = ok
	}
	return ok
}

// pairs reports whether two pieces may touch: no bush in a bush, and in sea water no metals
// further apart than the galvanic limit.
func (q *query) pairs(i, k int) bool {
	a, b := q.shelf.pieces[i], q.shelf.pieces[k]
	if a.kind.Is(catalog.Bush) && b.kind.Is(catalog.Bush) {
		return false
	}
	return q.o.Water != "sea" || len(a.material) == 0 || len(b.material) == 0 || q.touch(a.material[0], b.material[0])
}

// say writes what is to be minded of a chain, and finds its weakest piece.
func (q *query) say(c *Chain) {
	add := func(list *[]string, format string, args ...any) {
		if s := fmt.Sprintf(format, args...); !slices.Contains(*list, s) {
			*list = append(*list, s)
		}
	}
	all := true
	for _, p := range c.Pieces {
		if p.kind.Is(catalog.Hose) {
			continue
		}
		for _, m := range p.material {
			if q.suits(m) == catalog.Caution {
				add(&c.Notes, "%s in this water: with care", m.Title)
			}
		}
		if q.brittle(p) {
			add(&c.Cautions, "plastic below the waterline (%s) breaks where metal bends: only a part that its maker sells for there (common practice)", p.Words)
		}
		r, ok := p.Holds()
		if !ok {
			all = false
			add(&c.Cautions, "nothing says what %s holds: ask for its data sheet", p.Words)
			continue
		}
		if c.Holds == nil || r.Pressure < c.Holds.Pressure {
			c.Holds, c.Weakest = &r, p
		}
		if q.guessed(r) {
			add(&c.Cautions, "only %s says that %s holds %s: ask for a data sheet of %s or more", article(r.Basis), p.Words, r.Pressure, q.o.Pressure)
		}
	}
	if !all {
		c.Holds, c.Weakest = nil, nil
	}
	for i := range c.Joints {
		m := &c.Joints[i]
		if m.Verdict == threads.LowPressureOnly {
			add(&c.Cautions, "a joint that closes at low pressure only: %s", m.Reason())
		}
		if q.soft(c, i) {
			add(&c.Notes, "a plastic tube under an olive needs an insert, or the olive crushes it: ask the shop for the insert of its bore")
		}
		if q.o.Below && (m.A.Family == threads.Bore || m.B.Family == threads.Bore) {
			add(&c.Notes, "two clamps on a tail below the waterline, and a tail long enough for them (common practice)")
		}
		if q.galls(c, i) {
			add(&c.Notes, "stainless in a stainless taper seizes: paste against galling on the thread, and turn it slowly")
		}
	}
}

// brittle reports whether a piece is a plastic fitting below the waterline.
func (q *query) brittle(p *Piece) bool {
	return q.o.Below && !p.kind.Is(catalog.Hose) && slices.ContainsFunc(p.material, func(m *catalog.Material) bool { return m.Group == "plastic" })
}

// soft reports whether an olive of a joint closes on a tube of plastic.
func (q *query) soft(c *Chain, joint int) bool {
	m := &c.Joints[joint]
	if m.A.Family != threads.Compression && m.B.Family != threads.Compression {
		return false
	}
	for _, k := range []int{joint - 1, joint} {
		if k >= 0 && k < len(c.Pieces) && c.Pieces[k].kind.Is(catalog.Hose) && slices.ContainsFunc(c.Pieces[k].material, func(m *catalog.Material) bool { return m.Group == "plastic" }) {
			return true
		}
	}
	return false
}

// guessed reports whether a rating at high pressure rests on no standard of the piece's own.
func (q *query) guessed(r pressure.Rating) bool {
	return q.o.Pressure > highPressure && (r.Basis.Guess() || r.Basis == pressure.Claim)
}

// article is what a rating that is no standard's own rests on, in words.
func article(b pressure.Basis) string {
	if b == pressure.Claim {
		return "what makers commonly claim"
	}
	return "an estimate"
}
