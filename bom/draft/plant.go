package draft

import (
	"cmp"
	"fmt"
	"slices"

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
	end   string        // of the boat's own: "hose" or "thread"
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

// plant is what the parts were taken for.
type plant struct {
	sort   string // of chain.toml
	layout string // "" where there is one vessel at most
	why    []string
	units  map[string][]*unit // by role
	lacks  []*role            // roles that no part has, and that are needed or usual
	spares map[*Part]int      // pieces beyond what a role takes
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
		if p.Kind.Name == "membrane element" {
			seen = append(seen, p.Kind.Name)
		}
	}
	vessel := slices.Contains(seen, "pressure vessel") || slices.Contains(seen, "membrane element")
	return seen, vessel && len(seen) >= leastSigns
}

// highScale is the full scale from which a gauge is one for the pressure side (judgement: a
// feed side has a few bar, and a gauge is read in its upper half).
const highScale = 25 * quantity.Bar

// newPlant gives every part its role.
func newPlant(all []*Part, s sort, layout string) *plant {
	pl := &plant{sort: s.Name, layout: layout, units: map[string][]*unit{}, spares: map[*Part]int{}}
	f := chain()
	left := map[*Part]int{}
	for _, p := range all {
		if p.Aside == "" {
			left[p] = p.Pieces
		}
	}
	active := map[string]bool{"": true}
	for _, g := range f.Group {
		for _, p := range all {
			if p.Aside == "" && slices.Contains(g.Signs, p.Kind.Name) {
				active[g.Name] = true
			}
		}
	}
	for i := range f.Role {
		r := &f.Role[i]
		if r.Plant != "" && r.Plant != s.Name || !active[r.With] {
			continue
		}
		pl.fill(r, all, left)
	}
	for p, n := range left {
		if n > 0 && n < p.Pieces {
			pl.spares[p] = n
		}
	}
	return pl
}

// fill gives a role its parts.
func (pl *plant) fill(r *role, all []*Part, left map[*Part]int) {
	if len(r.After) > 0 {
		intake := pl.units["intake"]
		if len(intake) == 0 || intake[0].part == nil || !slices.Contains(r.After, intake[0].part.Kind.Name) {
			return
		}
	}
	var can []*Part
	for _, kind := range r.Kinds {
		for _, p := range all {
			if left[p] > 0 && p.Kind.Name == kind && signed(r.Sign, p) {
				can = append(can, p)
			}
		}
	}
	if r.Order == "coarse first" {
		slices.SortStableFunc(can, func(a, b *Part) int { return cmp.Compare(b.Says.Micron, a.Says.Micron) })
	}
	switch {
	case len(can) == 0 && r.Boat != "":
		k, _ := catalog.KindNamed(r.Boat)
		pl.units[r.Name] = []*unit{{role: r.Name, kind: k, id: idOf(r.Name), end: r.End}}
		return
	case len(can) == 0:
		if r.Need != optional {
			pl.lacks = append(pl.lacks, r)
		}
		return
	case !r.Many:
		can = can[:1]
	}
	for _, p := range can {
		n := 1
		if r.Many {
			n = left[p]
		}
		for k := range n {
			u := &unit{role: r.Name, part: p, id: p.ID}
			if at := p.Pieces - left[p] + k; at > 0 {
				u.label = fmt.Sprint(at + 1)
			}
			pl.units[r.Name] = append(pl.units[r.Name], u)
		}
		left[p] -= n
		if p.Role == "" {
			p.Role = r.Name
		}
	}
}

// signed reports whether a part has the sign that tells a role from another of the same kind.
// A gauge without a scale is let pass for either, the first that comes.
func signed(sign string, p *Part) bool {
	scale := max(p.Says.Scale, p.Says.Rated)
	switch sign {
	case "scale high":
		return scale == 0 || scale >= highScale
	case "scale low":
		return scale < highScale
	}
	return true
}

// vessels counts the vessels that the parts bring.
func vessels(all []*Part) int {
	n := 0
	for _, p := range all {
		if p.Aside == "" && p.Kind.Name == "pressure vessel" {
			n += p.Pieces
		}
	}
	return n
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
