package choose

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/graph"
	"handtight/bom/repair"
	"handtight/catalog"
	"handtight/catalog/stock"
	"handtight/threads"
	"handtight/threads/title"
)

// choice is one item that may stand in a variable's place.
type choice struct {
	item   *build.Item
	turned bool   // its second port stands where the first did
	family string // as its option says
	stock  bool   // a generic fitting, of which no offer is known
}

// variable is an item that is placed, or one unit of it, with what may stand there.
type variable struct {
	item    *build.Item
	unit    *graph.Unit // nil: all units of the item
	choices []choice    // the first is the item itself
}

// name is what people call the variable.
func (v *variable) name() string {
	if v.unit != nil {
		return v.unit.Name
	}
	return v.item.ID
}

// mostStock is how many generic fittings may stand in the place of one: the usual ones.
const mostStock = 16

// variables lists what may be chosen: the items that options name, and beside them the small
// parts, which are made with other ends.
func variables(sys *bom.System, made bool) []*variable {
	b := sys.Build
	var out []*variable
	of := map[string][]*variable{}
	placed := map[*build.Item][]*graph.Unit{}
	for _, u := range sys.Graph.Units {
		placed[u.Item] = append(placed[u.Item], u)
	}
	add := func(it *build.Item, perUnit bool) {
		if !perUnit {
			v := newVariable(it, nil)
			out, of[it.ID] = append(out, v), append(of[it.ID], v)
			return
		}
		for _, u := range placed[it] {
			v := newVariable(it, u)
			out, of[it.ID] = append(out, v), append(of[it.ID], v)
		}
	}
	for _, o := range b.Options {
		it, other := b.ByID[o.For], b.ByID[o.Item]
		if it == nil || other == nil || it == other || len(it.Ports) > 0 && len(placed[it]) == 0 || other.Kind.Loose != it.Kind.Loose {
			continue
		}
		if of[it.ID] == nil {
			add(it, made && slices.ContainsFunc(b.Options, func(x build.Option) bool { return x.For == o.For && x.PerUnit }))
		}
		for _, v := range of[it.ID] {
			v.take(choice{item: other, family: o.Family})
		}
	}
	if !made {
		return out
	}
	for _, it := range b.Items {
		if of[it.ID] != nil || !it.Kind.Is(catalog.Commodity) && !it.IsHose() || it.Have > 0 || len(placed[it]) == 0 {
			continue
		}
		v := newVariable(it, nil)
		had := len(v.choices)
		if it.IsHose() {
			for _, h := range reEnded(it) {
				v.choices = append(v.choices, choice{item: h, stock: true})
			}
		}
		for _, s := range remade(it) {
			v.take(choice{item: repair.Stand(s, it, repair.StockID(s)+"-for-"+it.ID), stock: true})
		}
		if len(v.choices) > had {
			out = append(out, v)
		}
	}
	return out
}

// newVariable is an item or a unit with itself as its choice, turned round too.
func newVariable(it *build.Item, u *graph.Unit) *variable {
	v := &variable{item: it, unit: u, choices: []choice{{item: it}}}
	if len(it.Ports) == 2 && !it.Kind.Directed {
		v.choices = append(v.choices, choice{item: it, turned: true})
	}
	return v
}

// take adds a choice, both ways round where the part may be turned.
func (v *variable) take(c choice) {
	v.choices = append(v.choices, c)
	if len(c.item.Ports) == 2 && len(v.item.Ports) == 2 && !c.item.Kind.Directed {
		c.turned = true
		v.choices = append(v.choices, c)
	}
}

// remade lists the generic fittings that an item could be bought as instead: of its kind,
// material and class, each pipe thread of its size in some standard and sex, every other end
// as it is.
func remade(it *build.Item) []*stock.Item {
	var out []*stock.Item
	for _, s := range stock.Items() {
		if s.Kind != it.Kind.Name || len(s.Ends) != len(it.Ports) || !made(s, it) || !sameBores(s, it) {
			continue
		}
		out = append(out, s)
	}
	slices.SortStableFunc(out, func(a, b *stock.Item) int { return cmp.Or(cmp.Compare(a.Usual, b.Usual), cmp.Compare(a.ID, b.ID)) })
	return out[:min(len(out), mostStock)]
}

// made reports whether a fitting is of an item's material, and not of a lighter class.
func made(s *stock.Item, it *build.Item) bool {
	mine := it.Materials()
	if len(mine) > 0 && !slices.ContainsFunc(catalog.MaterialsIn(s.Material), func(m *catalog.Material) bool { return slices.Contains(mine, m) }) {
		return false
	}
	return it.Class == "" || s.Class == "" || s.Class == it.Class || s.Class == "class "+it.Class
}

func sameBores(s *stock.Item, it *build.Item) bool {
	same := true
	for i, e := range s.Ends {
		c := it.Ports[i].End.Candidates
		if len(c) != 1 {
			return false
		}
		pipe := standardOf[e.Family] != "" && standardOf[c[0].Family] != ""
		if pipe && e.Size == c[0].Size && e.Swivel == c[0].Swivel && e.Plastic == c[0].Plastic {
			same = same && e.Family == c[0].Family && e.Sex == c[0].Sex
			continue
		}
		if pipe || e.Family != c[0].Family || e.Size != c[0].Size || e.Sex != c[0].Sex {
			return false
		}
	}
	return !same && slices.ContainsFunc(s.Ends, func(e threads.End) bool { return standardOf[e.Family] != "" })
}

// hoseEnds are the ends that a hose is made up with instead of one with a pipe thread, by
// standard: a fixed male, and a nut on a cone. Source: common practice.
var hoseEnds = map[string]string{"NPT": "%s NPT male", "BSP": "G %s female swivel 60 cone"}

// reEnded lists a hose made up with other ends: each end that has a pipe thread of one standard
// has it of another, in the same size. Ends of other sorts stay, and so does all else.
func reEnded(it *build.Item) []*build.Item {
	out := []*build.Item{it}
	for i := range it.Ports {
		c := it.Ports[i].End.Candidates
		if len(c) != 1 || standardOf[c[0].Family] == "" {
			continue
		}
		for _, h := range slices.Clone(out) {
			for _, standard := range Standards {
				end, err := title.ReadEnd(fmt.Sprintf(hoseEnds[standard], c[0].Size))
				if err != nil || len(end.Candidates) != 1 || standard == standardOf[c[0].Family] {
					continue
				}
				made := *h
				made.ID += "-" + h.Ports[i].Name + "-" + strings.ToLower(standard)
				made.Ports = slices.Clone(h.Ports)
				made.Ports[i].End, made.Ports[i].Text = end, end.Candidates[0].String()
				out = append(out, &made)
			}
		}
	}
	return out[1:]
}
