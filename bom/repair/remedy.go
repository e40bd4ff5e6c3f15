package repair

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/catalog/stock"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// Remedy is one way to mend a joint, with what to buy for it.
type Remedy struct {
	Do     string // "adapt": a chain between the two; "change": another part in one's place
	At     string // the joint, or the unit that is changed
	Unit   *graph.Unit
	Joint  *graph.Joint
	Chain  *Chain // of adapt
	Pieces []*Piece
	New    *stock.Item // of change
	Port   int         // of change: the port of the unit that was wrong
	Joints int         // joints of the place after it
	Why    string
}

// Buy lists what to buy in shop words.
func (r *Remedy) Buy() []string {
	if r.New != nil {
		return []string{r.New.Title()}
	}
	var out []string
	for _, p := range r.Pieces {
		out = append(out, p.Title)
	}
	return out
}

// Paste is what it adds to a build file.
func (r *Remedy) Paste() string {
	if r.New != nil {
		return r.Item(r.ItemID())
	}
	out := ""
	for i, p := range r.Pieces {
		if i > 0 {
			out += "\n"
		}
		out += p.Paste()
	}
	return out
}

// Slugs are the findings about a joint that a part can mend.
var Slugs = []string{
	"flank-angles-differ", "pitches-differ", "ends-of-different-sorts", "parallel-in-taper", "thread-does-not-start", "thread-too-slack", "taper-in-parallel",
	"same-sex", "seats-differ", "nothing-seals", "barb-and-bore-differ", "hands-differ", "flanges-differ",
}

// Commodity reports whether parts of a kind are changed rather than adapted.
func Commodity(kind string) bool { return commodity[kind] }

// Most remedies that are offered for one finding.
const mostRemedies = 3

// commodity are the kinds that are changed rather than adapted: they cost little, and one
// with other ends is on the same shelf.
var commodity = map[string]bool{"hose tail": true, "nipple": true, "bush": true, "elbow": true, "tee": true, "coupling": true, "union": true, "adaptor": true, "plug": true, "cap": true}

// Remedies lists what mends a finding about a joint, the best first: a commodity in the
// place of one of the two parts, and a chain between them. Equipment, and what is aboard
// already, stays.
func Remedies(sys *bom.System, f *finding.Finding) []Remedy {
	if f.Subject.Joint <= 0 || f.Subject.Joint > len(sys.Graph.Joints) || !slices.Contains(Slugs, f.Slug) {
		return nil
	}
	j := sys.Graph.Joints[f.Subject.Joint-1]
	o := Conditions(sys, j)
	var out []Remedy
	for _, port := range []int{j.A, j.B} {
		out = append(out, changes(sys, j, port, o)...)
	}
	slices.SortStableFunc(out, func(a, b Remedy) int { return cmp.Compare(a.New.Usual, b.New.Usual) })
	out = out[:min(len(out), mostRemedies-1)]
	a, b := sys.Graph.Ports[j.A].Port.End, sys.Graph.Ports[j.B].Port.End
	got := Adapt(a, b, o)
	for i := range got.Chains {
		c := &got.Chains[i]
		out = append(out, Remedy{Do: "adapt", At: sys.Graph.JointName(j), Joint: j, Chain: c, Pieces: c.Pieces, Joints: len(c.Joints), Why: got.Ask})
	}
	return out[:min(len(out), mostRemedies)]
}

// Conditions is what a part at a joint must stand: the worst pressure that has a bound, the
// water, what it touches, and whether it lies below the waterline or may not narrow the line.
func Conditions(sys *bom.System, j *graph.Joint) Options {
	load := sys.States.PortLoad(j.A)
	worst, _ := load.Worst()
	if math.IsInf(worst, 1) {
		worst = max(load.Normal, load.Act)
	}
	o := Options{Pressure: quantity.Pressure(max(worst, 1)) * quantity.Bar, Below: j.Run.Below, Count: mostRemedies, Shelf: WithBuild(sys.Build)}
	switch w := sys.Waters; {
	case w.Product(j.A):
		o.Water = "product"
	case w.Sea(j.A):
		o.Water = "sea"
	default:
		o.Water = "fresh"
	}
	o.Wide = load.Low < 0
	for k, port := range [2]int{j.A, j.B} {
		n := &sys.Graph.Ports[port]
		o.Beside[k], o.Hose[k] = n.Unit.Item.Materials(), n.Unit.Item.IsHose()
		o.Wide = o.Wide || relieves(n)
	}
	return o
}

// relieves reports whether a port is the outlet of a relief valve.
func relieves(n *graph.Port) bool {
	return slices.ContainsFunc(n.Unit.Item.Kind.Passages, func(p catalog.Passage) bool { return p.Is == catalog.Relief && p.To == n.Index })
}

// changes lists stock items that could stand in the place of a joint's part: of its kind, its
// material and its other ends, with an end that closes with what stays.
func changes(sys *bom.System, j *graph.Joint, port int, o Options) []Remedy {
	n := &sys.Graph.Ports[port]
	it := n.Unit.Item
	if !commodity[it.Kind.Name] || it.Have > 0 {
		return nil
	}
	stays := sys.Graph.Ports[j.A+j.B-port].Port.End
	var out []Remedy
	for _, s := range stock.Items() {
		if s.Kind != it.Kind.Name || len(s.Ends) != len(it.Ports) {
			continue
		}
		made := catalog.MaterialsIn(s.Material)
		if len(it.Materials()) > 0 && !sameMaterial(made, it.Materials()) || len(it.Materials()) == 0 && !suitable(made, o) {
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
		out = append(out, Remedy{Do: "change", At: n.Unit.Name, Unit: n.Unit, Joint: j, New: s, Port: at, Joints: 1,
			Why: fmt.Sprintf("%s is changed for one whose end fits", n.Unit.Name)})
	}
	slices.SortStableFunc(out, func(a, b Remedy) int {
		return cmp.Or(cmp.Compare(a.New.Usual, b.New.Usual), cmp.Compare(a.New.Steps, b.New.Steps))
	})
	return out
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
			node := sys.Graph.Node(u, i)
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
	cache := map[string]rating{}
	for _, e := range s.Ends {
		class := s.RatesAs
		if s.Class == "" && !pipeThread(e.Family) {
			class = ""
		}
		r := rate(class, s.Material, e, cache)
		switch {
		case e.Family == threads.Barb || e.Family == threads.Push || s.Rated != "":
			if o.Pressure > highPressure {
				return 0, false
			}
		case !r.ok && o.Pressure > highPressure || r.ok && r.r.Pressure < o.Pressure:
			return 0, false
		}
	}
	return wrong, true
}

// suitable reports whether a material may stand where nothing says what the part in place is
// made of.
func suitable(made []*catalog.Material, o Options) bool {
	q := newQuery(o)
	return q.standsIn(&Piece{material: made})
}
