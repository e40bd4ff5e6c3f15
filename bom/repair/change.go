package repair

import (
	"cmp"
	"fmt"
	"slices"
	"sync"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/catalog/stock"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// byKind is the generic stock by kind of part.
var byKind = sync.OnceValue(func() map[string][]*stock.Item {
	out := map[string][]*stock.Item{}
	for _, s := range stock.Items() {
		out[s.Kind] = append(out[s.Kind], s)
	}
	return out
})

// named are the materials of the stock, each read once.
var named = sync.OnceValue(func() map[string][]*catalog.Material {
	out := map[string][]*catalog.Material{}
	for _, s := range stock.Items() {
		if _, ok := out[s.Material]; !ok {
			out[s.Material] = catalog.MaterialsIn(s.Material)
		}
	}
	return out
})

func materialsOf(s *stock.Item) []*catalog.Material { return named()[s.Material] }

// changes lists stock items that could stand in the place of a joint's part: of its kind, its
// material and its other ends, with an end that closes with what stays.
func changes(sys *bom.System, j *graph.Joint, port int, o Options) []Remedy {
	n := &sys.Graph.Ports[port]
	it := n.Unit.Item
	if !it.Kind.Is(catalog.Commodity) || it.Have > 0 {
		return nil
	}
	stays := sys.Graph.Ports[j.A+j.B-port].Port.End
	var out []Remedy
	for _, s := range byKind()[it.Kind.Name] {
		if len(s.Ends) != len(it.Ports) {
			continue
		}
		made := materialsOf(s)
		if len(it.Materials()) > 0 && !sameMaterial(made, it.Materials()) && !(soft(stays) && plastic(s) && suitable(made, o)) || len(it.Materials()) == 0 && !suitable(made, o) {
			continue
		}
		at, ok := place(sys, n.Unit, n.Index, s, stays, o)
		if !ok && len(s.Ends) == 2 && !it.Kind.Directed {
			s = turned(s)
			at, ok = place(sys, n.Unit, n.Index, s, stays, o)
		}
		if !ok {
			continue
		}
		out = append(out, Remedy{Do: "change", At: n.Unit.Name, Unit: n.Unit, Joint: j, New: asLong(s, it), Port: at, Before: 1, Joints: 1, Needs: o.Pressure,
			Why: fmt.Sprintf("%s is changed for one whose end fits", n.Unit.Name)})
	}
	slices.SortStableFunc(out, func(a, b Remedy) int {
		return cmp.Or(cmp.Compare(a.New.Usual, b.New.Usual), cmp.Compare(a.New.Steps, b.New.Steps))
	})
	return out
}

// asLong is a stock item with tails as long as those of the item that it replaces: a long one, with
// room for two clamps, is sold in the same sizes (common practice).
func asLong(s *stock.Item, it *build.Item) *stock.Item {
	t := *s
	t.Ends, t.Texts = slices.Clone(s.Ends), slices.Clone(s.Texts)
	for i := range t.Ends {
		if t.Ends[i].Family == threads.Barb && slices.ContainsFunc(it.Ports[i].End.Candidates, func(e threads.End) bool { return e.Long }) {
			t.Ends[i].Long = true
			t.Texts[i] += " long"
		}
	}
	return &t
}

// soft reports whether an end that stays is of plastic: a metal taper splits it, so that a part of
// plastic may take the place of one of metal.
func soft(stays threads.EndReading) bool {
	return slices.ContainsFunc(stays.Candidates, func(e threads.End) bool { return e.Plastic })
}

// plastic reports whether every thread of a fitting is of plastic.
func plastic(s *stock.Item) bool {
	return !slices.ContainsFunc(s.Ends, func(e threads.End) bool { return e.Family.Threaded() && !e.Plastic })
}

// turned is a stock item with its two ends in the other order.
func turned(s *stock.Item) *stock.Item {
	t := *s
	t.Ends, t.Texts = []threads.End{s.Ends[1], s.Ends[0]}, []string{s.Texts[1], s.Texts[0]}
	return &t
}

// place finds how a stock item stands in a unit's place: its ends in the order of the unit's
// ports, the wrong one closing with what stays, every other one closing with what it is joined
// to now. It is rated for the pressure, by the same rules as a chain.
func place(sys *bom.System, u *graph.Unit, wrong int, s *stock.Item, stays threads.EndReading, o Options) (port int, ok bool) {
	for i, e := range s.Ends {
		far := stays
		if i != wrong {
			node := sys.Graph.Port(u, i)
			if node.Joint == nil {
				continue
			}
			far = sys.Graph.Ports[node.Joint.A+node.Joint.B-(u.First+i)].Port.End
		}
		for _, c := range far.Candidates {
			m := threads.Mate(e, c)
			if !m.Verdict.Holds() {
				return 0, false
			}
		}
		if len(far.Candidates) == 0 {
			return 0, false
		}
	}
	if !bears(s, o.Pressure) {
		return 0, false
	}
	return wrong, true
}

// bears reports whether every end of a fitting is rated for a pressure; below high pressure one
// without a rating may stand.
func bears(s *stock.Item, p quantity.Pressure) bool {
	for _, e := range s.Ends {
		class := s.RatesAs
		if s.Class == "" && !pipeThread(e.Family) {
			class = ""
		}
		r := rate(class, s.Material, e, map[string]rating{})
		switch {
		case e.Family == threads.Barb || e.Family == threads.Push || s.Rated != "":
			if p > highPressure {
				return false
			}
		case !r.ok && p > highPressure || r.ok && r.r.Pressure < p:
			return false
		}
	}
	return true
}

// suitable reports whether a material may stand where nothing says what the part in place is
// made of.
func suitable(made []*catalog.Material, o Options) bool {
	q := newQuery(o)
	return q.standsIn(&Piece{material: made})
}
