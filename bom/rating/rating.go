package rating

import (
	"slices"
	"sync"

	"handtight/bom/build"
	"handtight/bom/graph"
	"handtight/pressure"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// Allowable is what a unit's port, a joint or a segment holds.
type Allowable struct {
	Rating   pressure.Rating
	Known    bool
	Estimate bool    // what rules is a guess ([pressure.Basis.Guess]): never enough on high pressure
	Derated  bool    // lowered for the duty's temperatures
	Left     float64 // what those leave of a figure for cold water, as of a data sheet: 1 is all; 0 of a joint
	Sheet    *pressure.Rating
	Table    *pressure.Rating // the standard that the part is sold to
	What     string           // the member that rules, of a segment
}

// Lower takes in another hold: the lower rules.
func (h *Allowable) Lower(o Allowable) {
	if o.Known && (!h.Known || o.Rating.Pressure < h.Rating.Pressure) {
		*h = o
	}
}

// Ratings say what each port and each joint of a build may carry. They may be asked by several
// goroutines at once.
type Ratings struct {
	graph  *graph.Graph
	table  table
	ports  []*Allowable // of each port, what its item holds there
	joints []Allowable  // by number
}

// Of looks up what the ports and joints of a graph may carry.
func Of(g *graph.Graph) *Ratings {
	s := &Ratings{graph: g, table: newTable(warmthOf(g.Build))}
	s.ports = make([]*Allowable, len(g.Ports))
	for _, u := range g.Units {
		list := s.table.of(u.Item)
		for i := range list {
			s.ports[u.First+i] = &list[i]
		}
	}
	s.joints = make([]Allowable, 0, len(g.Joints))
	for _, j := range g.Joints {
		s.joints = append(s.joints, s.rateJoint(j))
	}
	return s
}

// AsWorded is what a port of an item would hold by words of its description in place of the keys that
// rate it: by a pressure as of a data sheet, else by the class or the standard of a hose alone.
func (s *Ratings) AsWorded(it *build.Item, w build.Worded, port int) Allowable {
	as := *it
	as.Rated = w.Rated
	if w.Class != "" {
		as.Class, as.Pipe = w.Class, w.Class
	}
	if w.Spec != "" {
		as.Spec = w.Spec
	}
	return newTable(s.table.warm).allowable(&as, port)
}

// table caches what items' ports hold: ratings are looked up once an item, and
// each sort of end once a build.
type table struct {
	items  map[*build.Item][]Allowable
	ends   map[endKind]endRating
	sheets map[quantity.Pressure]pressure.Rating // of data sheets, the source left out
	clamps map[clampKind]endRating
	hoses  map[hoseKind]endRating // without their ends
	warm   warmth
	asked  *sync.Mutex // of left, which rules ask for too
	left   map[warmKind]warmLeft
}

// endKind is all that a fitting's rating depends on.
type endKind struct {
	class, material, size string
	family                threads.Family
	male                  bool
	sheet                 bool // the part has a data sheet: what makers claim of its sort is left out
}

// clampKind is all that a clamp's rating depends on.
type clampKind struct {
	bore           quantity.Length
	spec, material string
}

// hoseKind is all that a hose's rating depends on, its ends left out.
type hoseKind struct {
	pipe, spec, material string
	bore, outside, wall  quantity.Length // below zero: not said
}

type endRating struct {
	rating pressure.Rating
	ok     bool
}

func newTable(w warmth) table {
	return table{
		items: map[*build.Item][]Allowable{}, ends: map[endKind]endRating{}, sheets: map[quantity.Pressure]pressure.Rating{}, clamps: map[clampKind]endRating{}, hoses: map[hoseKind]endRating{},
		warm: w, asked: &sync.Mutex{}, left: map[warmKind]warmLeft{},
	}
}

// of gives what the ports of an item hold; of one that nobody rates, nothing.
func (h table) of(it *build.Item) []Allowable {
	list, ok := h.items[it]
	if !ok {
		list = make([]Allowable, len(it.Ports))
		for i := range it.Ports {
			if !it.Exempt(i) {
				list[i] = h.allowable(it, i)
			}
		}
		h.items[it] = list
	}
	return list
}

// fitting looks an end's rating up, once.
func (h table) fitting(it *build.Item, material string, end *threads.End) (pressure.Rating, bool) {
	kind := endKind{it.Class, material, end.Size, end.Family, end.Sex == threads.Male, it.Rated != nil}
	got, ok := h.ends[kind]
	if !ok {
		look := pressure.FittingRating
		if kind.sheet {
			look = pressure.FittingStandard
		}
		got.rating, got.ok = look(kind.class, kind.material, kind.family.String(), kind.male, kind.size)
		h.ends[kind] = got
	}
	return got.rating, got.ok
}

// hold works out what a port of the item holds: its data sheet, and the standard
// that it is sold to, both lowered for the duty's temperatures; the lower rules. A data
// sheet is taken to speak of cold water. Without a data sheet, the end of a hose that is
// only estimated lowers the hose, and the hold is then an estimate.
func (c table) allowable(i *build.Item, port int) Allowable {
	var h Allowable
	warm, _ := c.factor(i) // outside its table: found by a rule
	if i.Rated != nil && slices.Contains(i.Kind.Rates, port) {
		r := warm.Apply(c.sheet(i))
		h.Sheet = &r
	}
	standard, guess := c.standard(i, port)
	ratings := make([]pressure.Rating, 0, 2)
	if h.Sheet != nil {
		ratings = append(ratings, *h.Sheet)
	}
	if standard.Basis != 0 {
		r := warm.Apply(standard)
		h.Table = &r
		ratings = append(ratings, r)
	}
	h.Rating, h.Known = pressure.Governing(ratings...)
	if h.Sheet == nil && guess.Basis != 0 {
		h.Rating, h.Known = pressure.Lower(h.Rating, warm.Apply(guess))
	}
	h.Estimate = h.Rating.Basis.Guess()
	h.Derated, h.Left = h.Known && warm.Value != 1, warm.Value
	h.What = i.ID
	return h
}

// sheet is the rating of an item's data sheet.
func (c table) sheet(i *build.Item) pressure.Rating {
	r, ok := c.sheets[*i.Rated]
	if !ok {
		r = pressure.OfDataSheet(*i.Rated, "")
		c.sheets[*i.Rated] = r
	}
	r.Source = i.ID
	return r
}

// clamp is what a clamp over the hose of an item holds.
func (c table) clamp(bore quantity.Length, it *build.Item) (pressure.Rating, bool) {
	kind := clampKind{bore, it.Spec, it.Material}
	got, ok := c.clamps[kind]
	if !ok {
		got.rating, got.ok = pressure.ClampJoint(bore, it.Spec, it.Material)
		c.clamps[kind] = got
	}
	return got.rating, got.ok
}

// standard looks up the standard of a hose, or of the end of a fitting, and an estimate that
// may only lower it. Either is the zero rating where there is none.
func (c table) standard(i *build.Item, port int) (standard, guess pressure.Rating) {
	if i.IsHose() {
		return c.hose(i, port)
	}
	standard, ok := c.end(i, port, i.Material)
	if !ok && i.Rated == nil {
		standard, _ = wallEstimate(i, port)
	}
	return standard, pressure.Rating{}
}

// end looks up the standard of one end of a material, the lowest of its readings.
func (c table) end(i *build.Item, port int, material string) (pressure.Rating, bool) {
	var lowest []pressure.Rating
	for k := range i.Ports[port].End.Candidates {
		if r, ok := c.fitting(i, material, &i.Ports[port].End.Candidates[k]); ok {
			lowest = append(lowest, r)
		}
	}
	return pressure.Lower(lowest...)
}

// Joint is what the joint itself holds: a clamp on a tail, or what closes a joint that seals to a limit
// only. Known is false where its ends rule; what a makeshift holds is judged with its thread.
func (s *Ratings) Joint(j *graph.Joint) Allowable { return s.joints[j.Number-1] }

func (s *Ratings) rateJoint(j *graph.Joint) Allowable {
	if !j.Known {
		return Allowable{}
	}
	a, b := &s.graph.Ports[j.A], &s.graph.Ports[j.B]
	for _, n := range []*graph.Port{a, b} {
		if len(n.Port.End.Candidates) > 0 && n.Port.End.Candidates[0].Family == threads.Bore {
			bore := quantity.Length(n.Port.End.Candidates[0].Diameter)
			it := n.Unit.Item
			if r, ok := s.table.clamp(bore, it); ok {
				return Allowable{Rating: r, Known: true, What: s.graph.JointName(j)}
			}
		}
	}
	if m := &j.Mating; !j.Open && m.Verdict.Holds() && m.HasLimit {
		return Allowable{Rating: pressure.OfClosing(m.Limit, m.Closes(), m.Source()), Known: true, What: s.graph.JointName(j)}
	}
	return Allowable{}
}

// Port is what a port of a unit holds.
func (s *Ratings) Port(port int) Allowable {
	n := &s.graph.Ports[port]
	if n.Unit.Item.Exempt(n.Index) {
		return Allowable{}
	}
	h := *s.ports[port]
	h.What = n.Unit.Name
	return h
}
