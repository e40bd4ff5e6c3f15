package draft

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"handtight/bom/draft/assign"
	"handtight/threads"
)

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
		out[0].withHoses(steps)
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
