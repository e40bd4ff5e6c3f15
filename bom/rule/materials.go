package rule

import (
	"cmp"
	"fmt"
	"strings"

	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/catalog"
)

// made lists the materials of a unit that water may attack: all that its text names;
// of a hose the metals of its ends only, since its liner is the hose standard's business.
func made(u *graph.Unit) []*catalog.Material {
	if u.Item.IsHose() {
		return metalsOf(u.Item.Materials())
	}
	return u.Item.Materials()
}

// metals lists the metals of a unit.
func metals(u *graph.Unit) []*catalog.Material { return metalsOf(u.Item.Materials()) }

func metalsOf(list []*catalog.Material) []*catalog.Material {
	var out []*catalog.Material
	for _, m := range list {
		if m.Metal() {
			out = append(out, m)
		}
	}
	return out
}

// members is units, or joints, that one finding speaks of.
type members struct {
	names    []string
	subjects []finding.Subject
	marks    []build.Mark
	known    map[string]bool
}

func (g *members) add(name string, subject finding.Subject, mark build.Mark) {
	if g.known[name] {
		return
	}
	if g.known == nil {
		g.known = map[string]bool{}
	}
	g.known[name] = true
	g.names, g.subjects, g.marks = append(g.names, name), append(g.subjects, subject), append(g.marks, mark)
}

func (g *members) unit(u *graph.Unit) { g.add(u.Name, ofUnit(u), u.Mark) }

// at places a finding at the first of the group, and notes the others.
func (g *members) at(f *finding.Finding) {
	f.Subject, f.Also, f.Place = g.subjects[0], g.subjects[1:], at(g.marks[0])
	for _, m := range g.marks[1:] {
		f.Related = append(f.Related, at(m))
	}
}

// list names the group's members for people; a long list is cut.
func (g *members) list() string {
	const most = 8
	if len(g.names) > most {
		return fmt.Sprintf("%s and %d more", strings.Join(g.names[:most], ", "), len(g.names)-most)
	}
	return strings.Join(g.names, ", ")
}

// gathered keeps members by a key, in the order in which they began.
type gathered[K cmp.Ordered] struct {
	keys []K
	of   map[K]*members
}

func (g *gathered[K]) unit(key K, u *graph.Unit) { g.members(key).unit(u) }

// members are those of a key, none of them at first.
func (g *gathered[K]) members(key K) *members {
	if g.of == nil {
		g.of = map[K]*members{}
	}
	if g.of[key] == nil {
		g.of[key] = &members{}
		g.keys = append(g.keys, key)
	}
	return g.of[key]
}
