package bom

import (
	"math"
	"slices"

	"handtight/pressure"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// Hold is what a unit's port, a joint or a segment holds.
type Hold struct {
	Rating   pressure.Rating
	Known    bool
	Estimate bool    // what rules is an estimate: never enough on high pressure
	Derated  bool    // lowered for the duty's temperatures
	Left     float64 // what those leave of a figure for cold water, as of a data sheet: 1 is all; 0 of a joint
	Sheet    *pressure.Rating
	Table    *pressure.Rating // the standard that the part is sold to
	What     string           // the member that rules, of a segment
}

// lower takes in another hold: the lower rules.
func (h *Hold) lower(o Hold) {
	if o.Known && (!h.Known || o.Rating.Pressure < h.Rating.Pressure) {
		*h = o
	}
}

// holds caches what items' ports hold: ratings are looked up once an item, and
// each sort of end once a build.
type holds struct {
	items map[*Item][]Hold
	ends  map[endKind]endRating
	warm  warmth
	left  map[warmKind]warmLeft
}

// endKind is all that a fitting's rating depends on.
type endKind struct {
	class, material, size string
	family                threads.Family
	male                  bool
	sheet                 bool // the part has a data sheet: what makers claim of its sort is left out
}

type endRating struct {
	rating pressure.Rating
	ok     bool
}

func newHolds(w warmth) holds {
	return holds{map[*Item][]Hold{}, map[endKind]endRating{}, w, map[warmKind]warmLeft{}}
}

// of gives what a port of an item holds.
func (h holds) of(it *Item, port int) Hold {
	list, ok := h.items[it]
	if !ok {
		list = make([]Hold, len(it.Ports))
		for i := range it.Ports {
			list[i] = h.hold(it, i)
		}
		h.items[it] = list
	}
	return list[port]
}

// fitting looks an end's rating up, once.
func (h holds) fitting(it *Item, material string, end *threads.End) (pressure.Rating, bool) {
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
func (c holds) hold(i *Item, port int) Hold {
	var h Hold
	warm, _ := c.factor(i) // outside its table: found by a rule
	if i.Rated != nil && slices.Contains(i.Kind.Rates, port) {
		r := warm.Apply(pressure.OfDataSheet(*i.Rated, i.ID))
		h.Sheet = &r
	}
	standard, guess := c.table(i, port)
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
	h.Estimate = h.Rating.Basis == pressure.Estimate
	h.Derated, h.Left = h.Known && warm.Value != 1, warm.Value
	h.What = i.ID
	return h
}

// table looks up the standard of a hose, or of the end of a fitting, and an estimate that
// may only lower it. Either is the zero rating where there is none.
func (c holds) table(i *Item, port int) (standard, guess pressure.Rating) {
	if i.IsHose() {
		return c.hose(i, port)
	}
	standard, ok := c.end(i, port, i.Material)
	if !ok && i.Rated == nil {
		standard, _ = i.wallEstimate(port)
	}
	return standard, pressure.Rating{}
}

// end looks up the standard of one end of a material, the lowest of its readings.
func (c holds) end(i *Item, port int, material string) (pressure.Rating, bool) {
	var lowest []pressure.Rating
	for k := range i.Ports[port].End.Candidates {
		if r, ok := c.fitting(i, material, &i.Ports[port].End.Candidates[k]); ok {
			lowest = append(lowest, r)
		}
	}
	return pressure.Lower(lowest...)
}

// exempt reports whether a port's pressure is not the item's business: the boat's
// own parts, and ports that its data sheet's rating does not speak for.
func (i *Item) exempt(port int) bool {
	return i.Kind.Boats || !slices.Contains(i.Kind.Rates, port)
}

// JointHold is what the joint itself holds: a clamp on a tail, or a makeshift
// joint's limit. Known is false for a threaded joint that seals: its ends rule.
func (s *System) JointHold(j *Joint) Hold { return j.hold }

func (s *System) jointHold(j *Joint) Hold {
	if !j.Known {
		return Hold{}
	}
	a, b := &s.Ports[j.A], &s.Ports[j.B]
	for _, n := range []*Node{a, b} {
		if len(n.Port.End.Candidates) > 0 && n.Port.End.Candidates[0].Family == threads.Bore {
			bore := quantity.Length(n.Port.End.Candidates[0].Diameter)
			it := n.Unit.Item
			if r, ok := pressure.ClampJoint(bore, it.Spec, it.Material); ok {
				return Hold{Rating: r, Known: true, What: s.JointName(j)}
			}
		}
	}
	return Hold{}
}

// rate gives every segment its weakest member.
func (s *System) rate() {
	cache := newHolds(s.Build.warmth())
	for _, j := range s.Joints {
		j.hold = s.jointHold(j)
	}
	for _, g := range s.Segments {
		for _, p := range g.Ports {
			n := &s.Ports[p]
			if n.Unit.Item.exempt(n.Index) {
				continue
			}
			h := cache.of(n.Unit.Item, n.Index)
			h.What = n.Unit.Name
			if !h.Known && !slices.Contains(g.Unrated, n.Unit) {
				g.Unrated = append(g.Unrated, n.Unit)
			}
			g.Hold.lower(h)
		}
		for _, j := range g.Joints {
			g.Hold.lower(s.JointHold(j))
		}
	}
	s.holds = cache
}

// PortHold is what a port of a unit holds.
func (s *System) PortHold(port int) Hold {
	n := &s.Ports[port]
	if n.Unit.Item.exempt(n.Index) {
		return Hold{}
	}
	h := s.holds.of(n.Unit.Item, n.Index)
	h.What = n.Unit.Name
	return h
}

// Margin is what the weakest member holds beyond the worst pressure, in bar;
// false when either is not known.
func (g *Segment) Margin() (float64, bool) {
	worst, _ := g.Load.Worst()
	if !g.Hold.Known || math.IsInf(worst, 1) {
		return 0, false
	}
	return g.Hold.Rating.Pressure.Bar() - worst, true
}
