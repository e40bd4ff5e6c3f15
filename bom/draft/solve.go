package draft

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"handtight/bom/draft/assign"
	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// class is pieces of the bag that are alike for the solver: perhaps of several lines.
type class struct {
	parts []*Part
	ends  []int
	cut   bool
}

// solved is a plant with its places filled.
type solved struct {
	plant   *plant
	parts   []*Part
	places  []place
	classes []class
	answer  *assign.Answer
	ends    *ends
	problem *assign.Problem
	refused map[*Part]string // why a part, the first of its class, stands in no place; "" where it does in some
}

// pressures are what places are judged at.
type pressures struct{ low, high quantity.Pressure }

// What is taken where the parts do not say it. The feed side of small plants has one to three
// bar, and a plant for sea water works at 50 to 60 (common practice).
const (
	assumedFeed = 3 * quantity.Bar
	assumedHigh = 60 * quantity.Bar
)

// pressuresOf takes the pressure side from the relief valve, which opens above everything; of several
// plants, from the one with the most, since a piece may come into either.
func pressuresOf(pl *plant) pressures {
	p := pressures{assumedFeed, assumedHigh}
	said := false
	for _, u := range pl.all("relief") {
		if u.part != nil && u.part.Says.Set > 0 && (!said || u.part.Says.Set > p.high) {
			p.high, said = u.part.Says.Set, true
		}
	}
	return p
}

// solve fills the places of a plant from the bag.
func solve(pl *plant, all []*Part, steps int) *solved {
	s := &solved{plant: pl, parts: all, places: pl.places(), ends: newEnds(), refused: map[*Part]string{}}
	s.classify(all)
	p := pressuresOf(pl)
	problem := &assign.Problem{Steps: steps}
	for i := range s.classes {
		problem.Classes = append(problem.Classes, s.assignClass(&s.classes[i], i))
	}
	for i := range s.places {
		pc := &s.places[i]
		a := assign.Place{Rank: pc.rank, From: assign.Branch, To: s.portEnd(pc.to), Hosts: pc.hosts, Table: boolToInt(pc.line.Pressure == "high")}
		a.Near = map[string]assign.Near{"first": assign.AtFrom, "last": assign.AtTo}[pc.line.Held]
		if pc.from != nil {
			a.From = s.portEnd(*pc.from)
			a.Fixed = pc.from.u.fixed() && pc.to.u.fixed()
		}
		a.Grade = s.grades(pc, p)
		problem.Places = append(problem.Places, a)
	}
	problem.Ends = len(s.ends.list)
	problem.Tables = []assign.Table{s.ends.table(p.low, false), s.ends.table(p.high, true)}
	for i := range problem.Places {
		a := &problem.Places[i]
		a.Lost = assign.Cost{Missing: 2} // a branch: its piece, and what it takes to come to it
		if a.From == assign.Branch {
			continue
		}
		if problem.Tables[a.Table].Joints[a.From*problem.Ends+a.To] != assign.No {
			a.Lost.Missing = 1 + boolToInt(a.Fixed) // they join as they are, at most with a question
		} else if n := int(problem.Tables[a.Table].Buy[a.From*problem.Ends+a.To]); n > 0 {
			a.Lost.Missing = n + boolToInt(a.Fixed && a.Table == 1) // nothing in it gives way: hoses for high pressure are made to measure
		} else {
			a.Lost = assign.Cost{Stops: 1}
		}
	}
	s.problem = problem
	s.answer = assign.Solve(problem)
	return s
}

// mostPorts is up to how many ports a piece is put into a place: a manifold of more is left over,
// for none of its outlets may stand open.
const mostPorts = 6

// classify puts alike pieces of the bag together.
func (s *solved) classify(all []*Part) {
	of := map[string]int{}
	for _, p := range all {
		if p.Aside != "" || p.item == nil {
			continue
		}
		var list []int
		cut := p.isStock()
		switch {
		case cut:
			e, ok := p.tubeEnd()
			if !ok {
				continue
			}
			n := s.ends.number(endClass{readings: []threads.End{e}})
			list = []int{n, n}
		case fittingKind(p.Kind) && len(p.item.Ports) <= mostPorts || p.isHose():
			for i := range p.item.Ports {
				c := readingClass(p.item.Ports[i].End, false)
				c.madeUp = p.isHose()
				list = append(list, s.ends.number(c))
			}
		default:
			continue
		}
		key := fmt.Sprint(cut, list, p.Kind.Name, p.item.Material, p.item.Class, p.item.Rated, p.item.Spec)
		if p.item.Rated != nil {
			key = fmt.Sprint(cut, list, p.Kind.Name, p.item.Material, p.item.Class, *p.item.Rated, p.item.Spec)
		}
		i, ok := of[key]
		if !ok {
			i = len(s.classes)
			of[key] = i
			s.classes = append(s.classes, class{ends: list, cut: cut})
		}
		s.classes[i].parts = append(s.classes[i].parts, p)
	}
}

func (s *solved) assignClass(c *class, rank int) assign.Class {
	a := assign.Class{Ends: c.ends, Rank: rank, Bends: c.parts[0].Kind.Is(catalog.Elbow) || c.parts[0].Kind.Turns || c.parts[0].isHose()}
	a.Gives = c.parts[0].isHose() || c.cut || c.parts[0].Kind.Turns
	for i := range c.parts[0].item.Ports {
		a.Gives = a.Gives || c.parts[0].item.Ports[i].End.Swivel
	}
	for _, p := range c.parts {
		a.Count += p.Pieces
	}
	if c.cut {
		a.Count = assign.Cut
	}
	return a
}

// portEnd numbers the end at a port.
func (s *solved) portEnd(p port) int {
	if p.u.part == nil {
		return s.ends.number(endClass{boat: p.u.end, device: true})
	}
	r, ok := p.u.reading(p.name)
	if !ok {
		return s.ends.number(endClass{device: true})
	}
	return s.ends.number(readingClass(r, true))
}

// grades says which classes may stand in a place.
func (s *solved) grades(pc *place, p pressures) []assign.Grade {
	out := make([]assign.Grade, len(s.classes))
	need := p.low
	if pc.line.Pressure == "high" {
		need = p.high
	}
	for i := range s.classes {
		part := s.classes[i].parts[0]
		grade, why := gradeOf(part, pc.line, need)
		out[i] = grade
		if _, told := s.refused[part]; grade != assign.Refused {
			s.refused[part] = "" // it stands in some place
		} else if !told {
			s.refused[part] = why
		}
	}
	return out
}

// gradeOf judges a piece for a line: what it holds, and what its metal does in the water.
func gradeOf(p *Part, l *line, need quantity.Pressure) (assign.Grade, string) {
	for _, m := range p.item.Materials() {
		if l.Water == "sea" && m.In(catalog.RawSea) == catalog.No {
			return assign.Refused, fmt.Sprintf("%s does not last in sea water", m.Title)
		}
	}
	holds, known := holdsOf(p)
	switch {
	case known && holds < need:
		return assign.Refused, fmt.Sprintf("it holds %s, and the %s side has %s", holds, l.Pressure, need)
	case !known && l.Pressure == "high":
		if p.isStock() {
			return assign.Refused, "nothing says that it holds the high pressure"
		}
		return assign.MayAsks, ""
	}
	return assign.May, ""
}

// holdsOf is what a piece holds by its own words, its class, or its hose's standard.
func holdsOf(p *Part) (quantity.Pressure, bool) {
	if p.item.Rated != nil {
		return *p.item.Rated, true
	}
	if p.isHose() || p.isStock() {
		spec, ok := pressure.HoseSpec(p.item.Spec)
		if !ok || p.item.Bore == nil {
			return 0, false
		}
		r, ok := pressure.HoseRating(spec, *p.item.Bore)
		return r.Pressure, ok
	}
	least, known := quantity.Pressure(0), false
	for i := range p.item.Ports {
		for _, e := range p.item.Ports[i].End.Candidates {
			r, ok := pressure.FittingRating(p.item.Class, p.item.Material, e.Family.String(), e.Sex == threads.Male, e.Size)
			if !ok {
				return 0, false
			}
			if !known || r.Pressure < least {
				least, known = r.Pressure, true
			}
		}
	}
	return least, known
}

// best solves every reading of what the parts may be, and gives them with the likeliest first:
// what a person named, more plants where the parts tell so, and then the cheapest.
func best(all []*Part, o *Options) []*solved {
	var out []*solved
	steps := o.Steps
	if steps <= 0 {
		steps = assign.Enough
	}
	for _, k := range sorts(all) {
		for _, n := range o.plants(numbers(all, k), all, k) {
			layouts := []string{""}
			if vessels(all) > n {
				layouts = []string{"series", "parallel"}
			}
			for _, layout := range layouts {
				out = append(out, solve(newPlant(all, k, turns{layout: layout, number: n}), all, steps/hasty))
			}
		}
	}
	slices.SortStableFunc(out, func(a, b *solved) int {
		return cmp.Or(boolToInt(b.plant.is(o.Like))-boolToInt(a.plant.is(o.Like)), len(b.plant.more)-len(a.plant.more), a.plant.lacking(needed, usual)-b.plant.lacking(needed, usual), a.answer.Cost.Compare(b.answer.Cost))
	})
	if len(out) > 0 {
		out[0] = out[0].turned(all, steps/hasty)
		if !out[0].answer.Proven {
			if whole := solve(newPlant(all, out[0].plant.sort, out[0].plant.turns), all, steps); whole.answer.Cost.Compare(out[0].answer.Cost) <= 0 {
				out[0] = whole
			}
		}
	}
	return out
}

// hasty is into which part of the steps each of the plants is searched that parts could be;
// the one that is taken is searched in full.
const hasty = 8

// turned turns a plant as long as that makes it cheaper: several share a line, a line is led as
// another one that stands for it, where a branch is left, a role takes another of its parts, and
// an optional part that the bag does not pipe is left out.
func (s *solved) turned(all []*Part, steps int) *solved {
	now, tried := s, 0
	try := func(turn func(t *turns)) {
		if tried++; tried > mostTurns {
			return
		}
		t := now.plant.turns
		t.instead, t.pick, t.without = maps.Clone(t.instead), maps.Clone(t.pick), slices.Clone(t.without)
		if t.instead == nil {
			t.instead = map[string]string{}
		}
		if t.pick == nil {
			t.pick = map[string]int{}
		}
		turn(&t)
		now = now.cheaper(solve(newPlant(all, s.plant.sort, t), all, steps))
	}
	if len(s.plant.more) > 0 {
		try(func(t *turns) { t.shared = true })
	}
	for i := range chain().Line {
		l := &chain().Line[i]
		if l.Instead != "" && now.branchLeft() && slices.ContainsFunc(now.plant.every(), func(p *plant) bool { return p.boats(l.Own) }) {
			try(func(t *turns) { t.instead[l.Instead] = l.Name })
		}
	}
	for _, at := range now.unpiped() {
		for _, n := range now.others(at) {
			try(func(t *turns) { t.pick[at.String()] = n })
		}
	}
	for _, at := range now.unpiped() {
		if at.role.Need == optional {
			try(func(t *turns) { t.without = append(t.without, at.String()) })
		}
	}
	return now
}

// branchLeft reports whether a piece with a branch is left over.
func (s *solved) branchLeft() bool {
	for i, n := range s.answer.Left {
		if n > 0 && len(s.problem.Classes[i].Ends) > 2 {
			return true
		}
	}
	return false
}

// cheaper is the cheaper of two plants. A needed role that no part has counts as a piece to buy, and a
// part that no role takes as left over.
func (s *solved) cheaper(o *solved) *solved {
	a, b := s.answer.Cost, o.answer.Cost
	a.LeftOver, a.Missing = a.LeftOver-s.plant.pieces(), a.Missing+s.plant.lacking(needed)
	b.LeftOver, b.Missing = b.LeftOver-o.plant.pieces(), b.Missing+o.plant.lacking(needed)
	if b.Compare(a) < 0 {
		return o
	}
	return s
}

// pieces counts the pieces that roles take.
func (pl *plant) pieces() int {
	n := 0
	for _, p := range pl.every() {
		for _, list := range p.units {
			for _, u := range list {
				n += boolToInt(u.part != nil)
			}
		}
	}
	return n
}

// roleOf is a role of one of the plants.
type roleOf struct {
	role *role
	nth  int
}

func (r roleOf) String() string { return roleAt(r.role.Name, r.nth) }

// unpiped lists the roles with a part beside which something is to buy.
func (s *solved) unpiped() []roleOf {
	var out []roleOf
	for i := range s.places {
		m := &s.answer.Places[i]
		whole := m.OK && m.Buy == 0 && !m.Stiff && !slices.ContainsFunc(m.Chain, func(st assign.Step) bool { return st.Buy > 0 })
		if whole {
			continue
		}
		for _, u := range []*unit{s.places[i].to.u, s.places[i].fromUnit()} {
			if u == nil || u.part == nil {
				continue
			}
			if at := (roleOf{s.plant.roleNamed(u.role), s.places[i].plant}); !slices.Contains(out, at) {
				out = append(out, at)
			}
		}
	}
	return out
}

// sameEnds reports whether two parts are alike to what is screwed to them.
func sameEnds(a, b *Part) bool {
	return slices.EqualFunc(a.ends, b.ends, func(x, y threads.EndReading) bool { return x.Words == y.Words })
}

// mostTurns is how many other ways of the plant that is taken are tried.
const mostTurns = 16

// mostPicks is how many other parts are tried for a role.
const mostPicks = 3

// others lists the other pieces that could do a role, by their number among those that are
// left when it is filled: parts that another role took, or none.
func (s *solved) others(at roleOf) []int {
	if at.role.Many {
		return nil
	}
	units := s.plant.every()[at.nth].units[at.role.Name]
	if len(units) == 0 || units[0].part == nil {
		return nil
	}
	now := units[0].part
	var out []int
	n := 0
	taken := map[*Part]int{}
	for _, kind := range at.role.Kinds {
		for _, p := range s.parts {
			if p.Aside != "" || p.Kind.Name != kind || !at.role.suits(p) {
				continue
			}
			for k := range p.Pieces {
				if s.earlier(p, at, taken) {
					continue
				}
				if k == 0 && n > 0 && len(out) < mostPicks && !sameEnds(p, now) {
					out = append(out, n)
				}
				n++
			}
		}
	}
	return out
}

// earlier reports whether a piece of a part was taken by a role that is filled before.
func (s *solved) earlier(p *Part, at roleOf, taken map[*Part]int) bool {
	n := 0
	for i := range chain().Role {
		r := &chain().Role[i]
		for nth, pl := range s.plant.every() {
			if r == at.role && nth >= at.nth {
				break
			}
			for _, u := range pl.units[r.Name] {
				n += boolToInt(u.part == p)
			}
		}
		if r == at.role {
			break
		}
	}
	taken[p]++
	return taken[p] <= n
}

// roleNamed is the role of a plant by its name.
func (pl *plant) roleNamed(name string) *role {
	for i := range chain().Role {
		if r := &chain().Role[i]; r.Name == name && (r.Plant == "" || r.Plant == pl.sort.Name) {
			return r
		}
	}
	return nil
}

func (p *place) fromUnit() *unit {
	if p.from == nil {
		return nil
	}
	return p.from.u
}

// why says by what the plant was known.
func (s *solved) why() []string {
	var out []string
	pl := s.plant
	if n := len(pl.every()); n > 1 {
		out = append(out, numberWord(n)+" plants, for each of the parts that a plant has once is there as often")
	}
	out = append(out, fmt.Sprintf("%s: %s", strings.Join(pl.sort.Signs, " and "), pl.sort.Says))
	if i := slices.IndexFunc(chain().Layout, func(o sort) bool { return o.Name == pl.layout }); i >= 0 {
		out = append(out, chain().Layout[i].Says)
	}
	return out
}

// plants are the numbers of plants to draft: those that the parts tell, or what was answered.
func (o *Options) plants(told []int, all []*Part, s sort) []int {
	switch o.Answers["plants"] {
	case "one":
		return []int{1}
	case "more":
		return []int{max(told[0], min(mostPlants, pieces(all, s.Signs...)))}
	}
	return told
}

// vessels counts the vessels that the parts bring.
func vessels(all []*Part) int {
	for i := range chain().Role {
		if r := &chain().Role[i]; r.Name == "vessel" {
			return pieces(all, r.Kinds...)
		}
	}
	return 0
}

// lacking counts the roles of some needs that no part has, in all plants.
func (pl *plant) lacking(needs ...string) int {
	n := 0
	for _, p := range pl.every() {
		for _, r := range p.lacks {
			n += boolToInt(slices.Contains(needs, r.Need))
		}
	}
	return n
}

// numberWord is a number of plants as Options.Like names it.
func numberWord(n int) string { return [...]string{"no", "one", "two", "three", "four"}[n] }

// title names the plant as Options.Like does.
func (pl *plant) title() string {
	words := []string{pl.sort.Name}
	if pl.layout != "" {
		words = append(words, pl.layout)
	}
	if n := len(pl.every()); n > 1 {
		words = append(words, numberWord(n))
	}
	return strings.Join(words, " ")
}

// is reports whether a person's word names the plant.
func (pl *plant) is(like string) bool {
	if like == "" {
		return false
	}
	for _, w := range strings.Fields(strings.ToLower(like)) {
		if w != pl.sort.Name && w != pl.layout && w != numberWord(len(pl.every())) {
			return false
		}
	}
	return true
}
