package draft

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom/build"
	"handtight/bom/draft/assign"
	"handtight/catalog"
)

// rowUnit is one of the units that stand behind a branch, the first of them next to the tee.
type rowUnit struct {
	part      *Part         // of the lists; nil else
	stands    string        // a unit of the build; "" else
	boat      *catalog.Kind // of the boat's own, where it is neither
	name, end string        // of the boat's own: its id, and how its end is taken
	near, far string        // ports towards the tee and away from it; "" for none
	port      int           // of the graph, of a unit that stands
}

// row lists what is to hang on a branch for a part of the lists: the part alone, a relief with
// what it leads to, or a whole flush line from its carbon filter or its valve to the house's
// water. back tells that its water flows to the tee.
func (l *layer) row(p *Part) (row []rowUnit, back bool) {
	if n := p.inlet(); p.Kind.Is(catalog.Relieves) && n >= 0 && len(p.item.Ports) == 2 {
		return []rowUnit{{part: p, near: p.item.Ports[n].Name, far: p.item.Ports[1-n].Name}, l.outlet(p)}, false
	} else if n >= 0 {
		return []rowUnit{{part: p, near: p.item.Ports[n].Name}}, false
	}
	return l.flush(p), true
}

// outlet is what a relief leads to: a skin fitting of the lists, or the boat's own.
func (l *layer) outlet(relief *Part) rowUnit {
	r := roleOfName("relief outlet")
	if o := l.spare(r, relief); o != nil {
		for _, port := range []string{"inboard", "in"} {
			if o.item.PortIndex(port) >= 0 {
				return rowUnit{part: o, near: port}
			}
		}
	}
	return l.boats(r, "in")
}

// boats is the boat's own part for a role.
func (l *layer) boats(r *role, port string) rowUnit {
	k, _ := catalog.KindNamed(r.Boat)
	name := idOf(r.Name)
	for n := 2; l.taken[name]; n++ {
		name = fmt.Sprintf("%s-%d", idOf(r.Name), n)
	}
	return rowUnit{boat: k, name: name, end: r.End, near: port}
}

func roleOfName(name string) *role {
	i := slices.IndexFunc(chain().Role, func(r role) bool { return r.Name == name })
	return &chain().Role[i]
}

// spare is a part of the lists that can do a role, and that nothing has taken.
func (l *layer) spare(r *role, but *Part) *Part {
	for _, kind := range r.Kinds {
		for _, p := range l.parts {
			if p != but && p.Aside == "" && p.item != nil && p.Kind.Name == kind && r.suits(p) && l.used[p] < p.Pieces && l.isNew(p) {
				return p
			}
		}
	}
	return nil
}

// flush is the row of a flush line, where a part is the first of its signs and the build has no
// such line; none else.
func (l *layer) flush(p *Part) []rowUnit {
	signs := chain().flushSigns()
	if !slices.Contains(signs, p.Kind.Name) {
		return nil
	}
	for _, u := range l.sys.Graph.Units {
		if slices.Contains(signs, u.Item.Kind.Name) {
			return nil
		}
	}
	for _, o := range l.parts {
		if o == p {
			break
		}
		if o.Aside == "" && slices.Contains(signs, o.Kind.Name) && l.used[o] < o.Pieces {
			return nil // it is laid with that one
		}
	}
	var row []rowUnit
	at := slices.IndexFunc(chain().Line, func(o line) bool { return o.Name == "flush" })
	steps := slices.Clone(chain().Line[at].Steps)
	slices.Reverse(steps)
	for _, step := range steps {
		r := roleOfName(step[0])
		if r.Boat != "" {
			row = append(row, l.house(r, step[2]))
			continue
		}
		if o := l.spare(r, nil); o != nil {
			row = append(row, rowUnit{part: o, near: step[2], far: step[1]})
		}
	}
	return row
}

// house is the build's own supply where it stands open, or a new one of the boat's.
func (l *layer) house(r *role, port string) rowUnit {
	for _, u := range l.sys.Graph.Units {
		if u.Item.Kind.Name != r.Boat {
			continue
		}
		if n := u.Item.PortIndex(port); n >= 0 && l.sys.Graph.Port(u, n).Joint == nil {
			return rowUnit{stands: u.Name, near: port, port: u.First + n}
		}
	}
	return l.boats(r, port)
}

// ends gives the ends of a unit of a row, as the solver numbers them.
func (l *layer) rowEnd(s *solved, u *rowUnit, port string) int {
	switch {
	case u.boat != nil:
		return s.ends.number(endClass{boat: u.end, device: true})
	case u.stands != "":
		return s.ends.number(readingClass(l.sys.Graph.Ports[u.port].Port.End, true))
	}
	n := u.part.item.PortIndex(port)
	if n < 0 || len(u.part.item.Ports[n].End.Candidates) == 0 {
		return s.ends.number(endClass{device: true})
	}
	return s.ends.number(readingClass(u.part.item.Ports[n].End, true))
}

// rowPlaces asks for the chains of a row: from a branch of the first place to its first unit, and
// from each to the next.
func (l *layer) rowPlaces(s *solved, row []rowUnit, may []assign.Grade, lost assign.Cost) []assign.Place {
	var out []assign.Place
	for i := range row {
		pl := assign.Place{From: assign.Branch, To: l.rowEnd(s, &row[i], row[i].near), Grade: may, Lost: lost}
		if i == 0 {
			pl.Hosts = []int{0}
		} else {
			pl.From = l.rowEnd(s, &row[i-1], row[i-1].far)
		}
		out = append(out, pl)
	}
	return out
}

// rowPath names the steps of a row from its tee outward, and notes the units that it makes.
func (l *layer) rowPath(row []rowUnit, chains [][]laid, branch string, back bool, units map[string]bool) []string {
	path := []string{branch}
	for i := range row {
		for _, c := range chains[i] {
			name := l.unit(c.part)
			units[name] = true
			path = append(path, name)
		}
		u := &row[i]
		name := u.stands
		switch {
		case u.part != nil:
			name = l.unit(u.part)
		case u.boat != nil:
			name = u.name
			l.taken[name] = true
			var f fields
			f.text("id", name)
			f.text("kind", u.boat.Name)
			l.hoses += "# ASSUMED: the boat has its own. ASK: which end it has, and write `ports`.\n" + f.write("item") + "\n"
		}
		units[name] = true
		switch {
		case u.far == "" || i == len(row)-1:
			name += "." + u.near
		case back:
			name += "." + u.far + ">" + u.near
		default:
			name += "." + u.near + ">" + u.far
		}
		path = append(path, name)
	}
	if back {
		slices.Reverse(path)
	}
	for i := range path {
		path[i] = quote(path[i])
	}
	return path
}

// flushSigns are the kinds by which a flush line is known.
func (f *chainFile) flushSigns() []string {
	i := slices.IndexFunc(f.Group, func(g sort) bool { return g.Name == "flush" })
	return f.Group[i].Signs
}

// suits reports whether a part may do what it is for at a port: a gauge to 100 bar, or a relief set
// at 60, where a pump drives the pressure, a probe in what is made. A part that has no role may
// stand anywhere.
func (l *layer) suits(p *Part, g *gap) bool {
	port := g.from
	any := false
	for i := range chain().Role {
		r := &chain().Role[i]
		if !slices.Contains(r.Kinds, p.Kind.Name) {
			continue
		}
		any = true
		if !r.suits(p) {
			continue
		}
		for k := range chain().Line {
			o := &chain().Line[k]
			enters := slices.ContainsFunc(o.Steps, func(step []string) bool { return step[0] == r.Name && step[1] != "" })
			if enters && (o.Back || (o.Pressure == "high") == l.sys.States.Driven(port) && (o.Water == "product") == l.sys.Waters.Product(port) && !(slices.Contains(o.Branch, "raw water") && g.spent())) {
				return true
			}
		}
	}
	return !any
}

// spent reports whether the run of a joint has let the pressure go before it: behind a throttle
// or a relief.
func (g *gap) spent() bool {
	return slices.ContainsFunc(g.run.Steps[:g.a], func(s build.Step) bool {
		return s.Item.Kind.Is(catalog.Throttles) || s.Item.Kind.Is(catalog.Relieves) || s.Item.Kind.Is(catalog.Unloads)
	})
}

// feeds reports whether a joint stands in a run that leads to a pump for high pressure: where a
// flush comes in.
func (l *layer) feeds(g *gap) bool {
	for i := g.a; i < len(g.run.Steps); i++ {
		if k := g.run.Steps[i].Item.Kind; k.Has(catalog.PositivePump) || k.Has(catalog.Recovery) {
			return true
		}
		if k := g.run.Steps[i].Item.Kind; len(k.Boundary) > 0 || k.Is(catalog.Filter) {
			return false // behind the filters
		}
	}
	return false
}

// boughtTee is a tee that a draft put in as missing, with the run that hangs on its branch.
func (l *layer) boughtTee(g gap) (gap, bool) {
	step := &g.run.Steps[g.a]
	u, ok := l.sys.Graph.Unit(unitName(step))
	if !ok || g.b != g.a+1 || len(step.Item.Ports) != 3 {
		return g, false
	}
	for n := range step.Item.Ports {
		j := l.sys.Graph.Port(u, n).Joint
		if j == nil || j.Run == g.run {
			continue
		}
		steps := j.Run.Steps
		switch last := len(steps) - 1; {
		case unitName(&steps[0]) == u.Name:
			k := 1
			for k < last && l.bought[steps[k].Item.ID] && len(steps[k].Item.Ports) <= 2 {
				k++
			}
			_, to, ok := l.joint(j.Run, k)
			g.hangs = &hanging{run: j.Run, a: 0, b: k, to: to}
			return g, ok
		case unitName(&steps[last]) == u.Name:
			k := last - 1
			for k > 0 && l.bought[steps[k].Item.ID] && len(steps[k].Item.Ports) <= 2 {
				k--
			}
			from, _, ok := l.joint(j.Run, k+1)
			g.hangs = &hanging{run: j.Run, a: k + 1, b: last + 1, to: from, back: true}
			return g, ok
		}
	}
	return g, false
}

// hanging is what hangs on the branch of a tee that gives way: steps a to b, without b, of its
// run are written again, and `to` is the port that the branch must come to.
type hanging struct {
	run  *build.Run
	a, b int
	to   int
	back bool // the run ends at the tee
}

// rehang writes the steps of a run that hung on the old tee.
func (l *layer) rehang(h *hanging, branch string, chain []laid, units map[string]bool) bool {
	path := []string{branch}
	for _, c := range chain {
		name := l.unit(c.part)
		units[name] = true
		path = append(path, name)
	}
	if h.back {
		slices.Reverse(path)
	}
	for i := range path {
		path[i] = quote(path[i])
	}
	if !h.back {
		return l.edit(&gap{run: h.run, a: h.a, b: h.b}, path)
	}
	from, _, ok := l.literal(&h.run.Steps[h.a])
	_, to, ok2 := l.literal(&h.run.Steps[h.b-1])
	if !ok || !ok2 || strings.Contains(string(l.text[from:to]), "#") {
		return false
	}
	l.text = slices.Concat(l.text[:from], []byte(strings.Join(path, ", ")), l.text[to:])
	return true
}

// runLine is the line on which the gap's run is written.
func (g *gap) runLine() int {
	if g.run == nil {
		return 0
	}
	return g.run.Steps[g.a].Place.Place().Line
}
