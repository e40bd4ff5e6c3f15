package draft

import (
	"fmt"
	"slices"

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
			a.Stiff = 1
		}
		a.Grade = s.grades(pc, p)
		a.Seldom = s.seldom(pc, p, a.Grade)
		problem.Places = append(problem.Places, a)
	}
	problem.Ends = len(s.ends.list)
	problem.Tables = []assign.Table{s.ends.table(p.low, false), s.ends.table(p.high, true)}
	price(problem)
	s.problem = problem
	s.answer = assign.Solve(problem)
	s.soften()
	return s
}

// withHoses fills the places afresh where one for high pressure lacks what gives way, with the hoses that
// could be made up for it: only of the plant that was taken, for there is far more to try then.
func (s *solved) withHoses(steps int) {
	if !s.stands() {
		return
	}
	s.ends.soften(&s.problem.Tables[1], pressuresOf(s.plant).high)
	price(s.problem)
	s.problem.Steps = steps
	s.answer = assign.Solve(s.problem)
	s.soften()
}

// price tells what each place costs that no chain is made for.
func price(problem *assign.Problem) {
	for i := range problem.Places {
		a := &problem.Places[i]
		t := &problem.Tables[a.Table]
		a.Lost = assign.Cost{Missing: 2} // a branch: its piece, and what it takes to come to it
		if a.From == assign.Branch {
			continue
		}
		if t.Soft != nil {
			a.Stiff = asPieces + 1 // a hose that is made up, and an adaptor at one of its ends
		}
		if a.Fixed && softly(problem, a) > 0 {
			a.Lost.Missing = softly(problem, a)
			a.Lost.Length = a.Lost.Missing // what is bought stands in it: a branch may as well stand here as elsewhere
		} else if t.Joints[a.From*problem.Ends+a.To] != assign.No {
			a.Lost.Missing = 1 + boolToInt(a.Fixed) // they join as they are, at most with a question
		} else if n := int(t.Buy[a.From*problem.Ends+a.To]); n > 0 {
			a.Lost.Missing = n + boolToInt(a.Fixed && a.Table == 1)*a.Stiff
		} else {
			a.Lost = assign.Cost{Stops: 1}
		}
	}
}

// stands reports whether a place for high pressure stands fast at both its ends and lacks a piece.
func (s *solved) stands() bool {
	for i := range s.problem.Places {
		pl, m := &s.problem.Places[i], &s.answer.Places[i]
		if pl.Fixed && pl.Table == 1 && (!m.OK || m.Stiff || m.Buy > 0 || slices.ContainsFunc(m.Chain, func(st assign.Step) bool { return st.Buy > 0 })) {
			return true
		}
	}
	return false
}

// soften fills places for low pressure that nothing fills, and whose ends are both screwed down,
// with what is left over and one piece to buy at most as many as were to buy: a tail and a hose that
// wait for a second tail are better there than a nipple, which gives no way.
func (s *solved) soften() {
	for i := range s.answer.Places {
		pl := s.problem.Places[i]
		if s.answer.Places[i].OK || pl.From == assign.Branch || !pl.Fixed || pl.Table == 1 || pl.Lost.Stops > 0 || pl.Lost.Missing == 0 {
			continue
		}
		one := *s.problem
		one.Classes = slices.Clone(one.Classes)
		for k := range one.Classes {
			if one.Classes[k].Count != assign.Cut {
				one.Classes[k].Count = s.answer.Left[k]
			}
		}
		most := pl.Lost.Missing
		pl.Lost.Missing++
		one.Places = []assign.Place{pl}
		got := assign.Solve(&one)
		m := got.Places[0]
		if !m.OK || m.Stiff || got.Cost.Missing > most || len(m.Chain) == 0 {
			continue
		}
		s.answer.Places[i], s.answer.Left = m, got.Left
		s.answer.Cost.Questions += got.Cost.Questions
		s.answer.Cost.LeftOver -= len(m.Chain)
		for _, step := range m.Chain {
			s.answer.Cost.LeftOver += boolToInt(one.Classes[step.Class].Count == assign.Cut)
		}
		s.answer.Cost.Length += got.Cost.Length - pl.Lost.Length
	}
}

// softly is how many pieces are to buy for a place with a hose among them; 0 where none is known.
func softly(p *assign.Problem, a *assign.Place) int {
	if soft := p.Tables[a.Table].Soft; soft != nil {
		return int(soft[a.From*p.Ends+a.To])
	}
	return 0
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

// seldom names the classes that a place seldom has: in a low line a made-up hose that holds the
// high pressure, and below the waterline a hose that is narrower than what the parts of that
// line have barbs for, which starves the pump. Both may stand there, and are asked about.
func (s *solved) seldom(pc *place, p pressures, grade []assign.Grade) []bool {
	if pc.line.Pressure == "high" {
		return nil
	}
	out := make([]bool, len(s.classes))
	wide := quantity.Length(0)
	if pc.line.Below {
		wide = s.plant.barb(pc.line)
	}
	for i := range s.classes {
		part := s.classes[i].parts[0]
		holds, known := holdsOf(part)
		switch {
		case part.isHose() && known && holds >= p.high:
		case s.classes[i].cut && !part.Says.Outside && part.Says.Bore > 0 && part.Says.Bore < wide*9/10: // one size is within a millimetre
		default:
			continue
		}
		out[i] = true
		if grade[i] == assign.May {
			grade[i] = assign.MayAsks
		}
	}
	return out
}

// barb is the least hose that the parts of a line themselves have barbs for; 0 where they have
// none.
func (pl *plant) barb(l *line) quantity.Length {
	least := quantity.Length(0)
	for _, step := range l.Steps {
		for _, u := range pl.all(step[0]) {
			if u.part == nil || u.part.item == nil {
				continue
			}
			for i := range u.part.item.Ports {
				for _, e := range u.part.item.Ports[i].End.Candidates {
					if d := quantity.Length(e.Diameter.Millimetres()); e.Family == threads.Barb && d > 0 && (least == 0 || d < least) {
						least = d
					}
				}
			}
		}
	}
	return least
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
