package draft

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"handtight/bom/build"
	"handtight/catalog"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// unit is one thing that has a role: a piece of a part, or the boat's own.
type unit struct {
	role  string
	part  *Part         // nil: the boat's own
	kind  *catalog.Kind // of the boat's own
	id    string        // in the build file
	label string        // "2": the second piece of its item
	end   string        // of the boat's own: "led", "thread" or "open"
}

// name is the unit in a path.
func (u *unit) name() string {
	if u.label != "" {
		return u.id + "/" + u.label
	}
	return u.id
}

func (u *unit) has(port string) bool {
	if u.part == nil {
		return u.kind.PortIndex(port) >= 0
	}
	return slices.Contains(u.part.ports, port) || u.part.Kind.PortIndex(port) >= 0
}

// reading is the end at a port; false where it is not said.
func (u *unit) reading(port string) (threads.EndReading, bool) {
	if u.part == nil || u.part.item == nil {
		return threads.EndReading{}, false
	}
	i := u.part.item.PortIndex(port)
	if i < 0 || !u.part.item.Ports[i].Said {
		return threads.EndReading{}, false
	}
	return u.part.item.Ports[i].End, true
}

// fixed reports whether it is screwed to the boat. Of the boat's own that is not known.
func (u *unit) fixed() bool { return u.part != nil && u.part.Kind.Fixed }

// plant is what the parts were taken for: one plant, or the first of several.
type plant struct {
	sort   sort
	layout string             // "" where there is one vessel at most
	units  map[string][]*unit // by role
	lacks  []*role            // roles that no part has, and that are needed or usual
	nth    int                // 0 of the first
	turns  turns
	more   []*plant // the others, of the first
}

// every lists the plants.
func (pl *plant) every() []*plant { return append([]*plant{pl}, pl.more...) }

// all lists the units of a role in every plant.
func (pl *plant) all(role string) []*unit {
	var out []*unit
	for _, p := range pl.every() {
		out = append(out, p.units[role]...)
	}
	return out
}

// sorts lists the sorts of plant that the parts could be, the likeliest first.
func sorts(all []*Part) []sort {
	var out []sort
	for _, s := range chain().Plant {
		if slices.ContainsFunc(all, func(p *Part) bool { return p.Aside == "" && slices.Contains(s.Signs, p.Kind.Name) }) {
			out = append(out, s)
		}
	}
	return out
}

// leastSigns is how many of the parts that only a plant has must be there for one to be seen:
// a pump alone may be a car wash (judgement).
const leastSigns = 2

// isPlant reports whether the parts are those of a plant, by what nothing else has.
func isPlant(all []*Part) (seen []string, ok bool) {
	for _, p := range all {
		if p.Aside != "" || slices.Contains(seen, p.Kind.Name) {
			continue
		}
		for _, r := range chain().Role {
			if slices.Contains([]string{"pump", "vessel", "throttle", "relief"}, r.Name) && slices.Contains(r.Kinds, p.Kind.Name) {
				seen = append(seen, p.Kind.Name)
				break
			}
		}
		if p.Kind.Is(catalog.Element) {
			seen = append(seen, p.Kind.Name)
		}
	}
	vessel := slices.ContainsFunc(seen, func(kind string) bool { return catalog.IsKind(kind, catalog.Separates|catalog.Element) })
	return seen, vessel && len(seen) >= leastSigns
}

// noPlant says why parts are no plant: which of its signs they have, and what else of them a
// plant has too.
func noPlant(all []*Part, seen []string) string {
	out := "no plant is seen in these lists: a pump that pushes against a membrane, and a vessel with its membrane, are its signs"
	if len(seen) > 0 {
		out += "; only this was found: " + strings.Join(seen, ", ")
	}
	var beside []string
	for i := range chain().Role {
		for _, kind := range chain().Role[i].Kinds {
			if pieces(all, kind) > 0 && !slices.Contains(seen, kind) && !slices.Contains(beside, kind) {
				beside = append(beside, kind)
			}
		}
	}
	if len(beside) > 0 {
		out += "; of what a plant has beside them the lists hold " + strings.Join(beside, ", ") + ": add the lists with those signs, or lay these to a build that stands with --into"
	}
	return out
}

// highScale is the full scale from which a gauge is one for the pressure side (judgement: a
// feed side has a few bar, and a gauge is read in its upper half).
const highScale = 25 * quantity.Bar

// turns are the ways in which a plant may be another with the same parts.
type turns struct {
	layout  string            // of the vessels
	number  int               // of plants
	without []string          // optional roles that are left open, with the number of their plant
	instead map[string]string // a line's name, and of the one that stands in for it
	shared  bool              // the plants share the lines that can be
	pick    map[string]int    // of a role with the number of its plant: which of the pieces that can do it, 0 the first
}

// open reports whether a role of a plant is left open.
func (t *turns) open(role string, nth int) bool { return slices.Contains(t.without, roleAt(role, nth)) }

func roleAt(role string, nth int) string { return fmt.Sprint(role, " ", nth) }

// newPlant gives every part its role.
func newPlant(all []*Part, s sort, t turns) *plant {
	number := t.number
	list := make([]*plant, number)
	for n := range list {
		list[n] = &plant{sort: s, layout: t.layout, units: map[string][]*unit{}, nth: n, turns: t}
	}
	left := map[*Part]int{}
	for _, p := range all {
		if p.Aside == "" {
			left[p] = p.Pieces
		}
	}
	active := signed(all, chain().Group)
	for i := range chain().Role {
		r := &chain().Role[i]
		if r.Plant != "" && r.Plant != s.Name {
			continue
		}
		can := r.among(all, left)
		for n, pl := range list {
			if t.shared && n > 0 && !r.Once && r.inShared(s.Name) {
				continue
			}
			if r.Beside != "" && len(pl.units[r.Beside]) == 0 {
				continue
			}
			if (r.With == "" || active[r.With] > n) && !t.open(r.Name, n) {
				pl.fill(r, can, left, number)
			}
		}
	}
	list[0].more = list[1:]
	return list[0]
}

// signed counts, of each group, the pieces of the sign that the parts have most of.
func signed(all []*Part, groups []sort) map[string]int {
	out := map[string]int{}
	for _, g := range groups {
		for _, kind := range g.Signs {
			out[g.Name] = max(out[g.Name], pieces(all, kind))
		}
	}
	return out
}

// pieces counts the pieces of kinds.
func pieces(all []*Part, kinds ...string) int {
	n := 0
	for _, p := range all {
		if p.Aside == "" && slices.Contains(kinds, p.Kind.Name) {
			n += p.Pieces
		}
	}
	return n
}

// numbers lists how many plants the parts of a sort could be, the likeliest first: as many as
// each of the roles has that a plant has once, and else one with spares.
func numbers(all []*Part, s sort) []int {
	least := 0
	for i := range chain().Role {
		if r := &chain().Role[i]; r.Once && (r.Plant == "" || r.Plant == s.Name) {
			if n := pieces(all, r.Kinds...); least == 0 || n < least {
				least = n
			}
		}
	}
	if least = min(least, mostPlants); least < 2 {
		return []int{1}
	}
	return []int{least, 1}
}

// mostPlants is how many plants are drafted of one bag.
const mostPlants = 4

// among lists the parts that can do a role, the likeliest first.
func (r *role) among(all []*Part, left map[*Part]int) []*Part {
	var can []*Part
	for _, kind := range r.Kinds {
		for _, p := range all {
			if left[p] > 0 && p.Kind.Name == kind && r.suits(p) {
				can = append(can, p)
			}
		}
	}
	if r.Order == "coarse first" {
		slices.SortStableFunc(can, func(a, b *Part) int { return cmp.Compare(b.Says.Micron, a.Says.Micron) })
	}
	return can
}

// lines lists the lines of the plant: those of its sort, and one that stands in for another.
func (pl *plant) lines() []line {
	var out []line
	for _, l := range chain().Line {
		stands := l.Instead != "" && pl.turns.instead[l.Instead] == l.Name && pl.boats(l.Own)
		turned := pl.turns.instead[l.Name]
		if turned != "" {
			i := slices.IndexFunc(chain().Line, func(o line) bool { return o.Name == turned })
			turned = map[bool]string{true: turned}[pl.boats(chain().Line[i].Own)]
		}
		if (l.Plant == "" || l.Plant == pl.sort.Name) && (stands || l.Instead == "" && turned == "") {
			out = append(out, l)
		}
	}
	return out
}

// boats reports whether a role has nothing but the boat's own.
func (pl *plant) boats(role string) bool {
	u := pl.units[role]
	return len(u) > 0 && u[0].part == nil
}

// fill gives a role its pieces. Where there are several plants, those that stand in a row are
// dealt out in turn.
func (pl *plant) fill(r *role, can []*Part, left map[*Part]int, plants int) {
	if len(r.After) > 0 {
		intake := pl.units["intake"]
		if len(intake) == 0 || intake[0].part == nil || !slices.Contains(r.After, intake[0].part.Kind.Name) {
			return
		}
	}
	var row []*Part // each piece
	for _, p := range can {
		for range left[p] {
			row = append(row, p)
		}
	}
	switch {
	case len(row) == 0 && r.Boat != "":
		k, _ := catalog.KindNamed(r.Boat)
		u := &unit{role: r.Name, kind: k, id: idOf(r.Name), end: r.End}
		if pl.nth > 0 {
			u.label = fmt.Sprint(pl.nth + 1)
		}
		pl.units[r.Name] = []*unit{u}
		return
	case len(row) == 0:
		if r.Need != optional {
			pl.lacks = append(pl.lacks, r)
		}
		return
	}
	waiting := plants - pl.nth
	if r.Order != "" && uneven(row, waiting) {
		waiting = 1 // a row of its own, and not to be divided
	}
	pick := 0
	if at := pl.turns.pick[roleAt(r.Name, pl.nth)]; !r.Many && at < len(row) {
		pick = at
	}
	for i, p := range row {
		if i != pick && !r.Many || r.Many && i%waiting > 0 {
			continue
		}
		u := &unit{role: r.Name, part: p, id: p.ID}
		if at := p.Pieces - left[p]; at > 0 {
			u.label = fmt.Sprint(at + 1)
		}
		pl.units[r.Name] = append(pl.units[r.Name], u)
		left[p]--
		if p.Role == "" {
			p.Role = r.Name
		}
	}
}

// uneven reports whether the pieces of some fineness do not come out even among plants.
func uneven(row []*Part, plants int) bool {
	count := map[string]int{}
	for _, p := range row {
		count[p.Says.Micron.String()]++
	}
	for _, n := range count {
		if n%plants > 0 {
			return true
		}
	}
	return false
}

// inShared reports whether a role stands in a line that plants may share.
func (r *role) inShared(plant string) bool {
	return slices.ContainsFunc(chain().Line, func(l line) bool {
		return l.Shared && (l.Plant == "" || l.Plant == plant) && slices.ContainsFunc(l.Steps, func(step []string) bool { return step[0] == r.Name })
	})
}

// suits reports whether a part has the sign that tells the role from another of the same kind.
// A gauge without a scale is let pass for either, the first that comes.
func (r *role) suits(p *Part) bool {
	scale := p.Says.Scale
	if scale == 0 {
		scale = p.Says.Rated
	}
	switch r.Sign {
	case "scale high":
		return scale == 0 || scale >= highScale
	case "scale low":
		return scale < highScale
	case "set high":
		return p.Says.Set == 0 || p.Says.Set >= highScale
	case "set low":
		return p.Says.Set > 0 && p.Says.Set < highScale
	case "rated high":
		return p.Says.Rated >= highScale
	case "rated low":
		return p.Says.Rated < highScale
	}
	return true
}

// boatItem writes the boat's own part.
func (u *unit) boatItem() fields {
	var f fields
	f.text("id", u.id)
	f.text("kind", u.kind.Name)
	return f
}

// attach gives parts what was read back of their items.
func attach(all []*Part, b *build.Build) {
	for _, p := range all {
		if it, ok := b.Item(p.ID); ok && p.Aside == "" {
			p.item = it
		}
	}
}
