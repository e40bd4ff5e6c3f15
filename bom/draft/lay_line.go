package draft

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/bom/rule"
	"handtight/catalog"
)

// lines lays what a line of the plant lacks: a hose where nothing gives way, a part in place of the
// boat's own that a draft assumed, equipment that ends a line, and what leads its water two ways.
func (l *layer) lines() bool {
	return l.givesWay() || l.swapBoats() || l.lineEnds() || l.diverts()
}

// turnless counts the places in which a check finds that nothing gives way.
func turnless(list []finding.Finding) int {
	n := 0
	for i := range list {
		n += boolToInt(list[i].Slug == "nothing-turns")
	}
	return n
}

// givesWay lays a hose of the lists into a run in which nothing gives way, the nearest to a vessel
// first: what branches off a pump stands at the pump.
func (l *layer) givesWay() bool {
	if !slices.ContainsFunc(l.parts, func(p *Part) bool {
		return p.Aside == "" && p.item != nil && p.isHose() && l.used[p] < p.Pieces && !l.tried["turn "+p.ID]
	}) {
		return false
	}
	before := turnless(rule.Check(l.sys))
	if before == 0 {
		return false
	}
	list := l.between(func(j *graph.Joint) bool { return j.Known && l.sys.States.Driven(j.A) }, nil)
	atVessel := func(g *gap) int {
		return boolToInt(l.sys.Graph.Ports[g.from].Unit.Item.Kind.Is(catalog.Separates) || l.sys.Graph.Ports[g.to].Unit.Item.Kind.Is(catalog.Separates))
	}
	slices.SortStableFunc(list, func(a, b gap) int { return atVessel(&b) - atVessel(&a) })
	for i := range list {
		g := &list[i]
		g.turns = before
		if l.try(g) {
			return true
		}
	}
	for _, p := range l.parts {
		if p.isHose() {
			l.tried["turn "+p.ID] = true
		}
	}
	return false
}

// swapBoats puts a part in place of the boat's own, where a draft assumed one for want of it: a
// seacock for the sea. What a person wrote of the boat stays.
func (l *layer) swapBoats() bool {
	for _, p := range l.parts {
		if p.Aside != "" || p.item == nil || l.used[p] >= p.Pieces || l.tried["boat "+p.ID] {
			continue
		}
		for _, run := range l.sys.Build.Runs {
			for _, first := range []bool{true, false} {
				if l.swap(p, run, first) {
					return true
				}
			}
		}
		l.tried["boat "+p.ID] = true
	}
	return false
}

// swap tries one end of a run.
func (l *layer) swap(p *Part, run *build.Run, first bool) bool {
	at := 0
	if !first {
		at = len(run.Steps) - 1
	}
	step := &run.Steps[at]
	if !step.Item.Kind.Boats || step.Label != "" || !l.assumed(step.Item.ID) {
		return false
	}
	port := ""
	for i := range chain().Role {
		r := &chain().Role[i]
		if r.Boat != step.Item.Kind.Name || !slices.Contains(r.Kinds, p.Kind.Name) || !r.suits(p) {
			continue
		}
		for _, line := range chain().Line {
			for _, s := range line.Steps {
				if s[0] == r.Name && (s[1] == "") == first {
					port = portOf(s[1]+s[2], func(n string) bool { return p.item.PortIndex(n) >= 0 })
				}
			}
		}
	}
	from, to, ok := l.literal(step)
	if port == "" || !ok {
		return false
	}
	was := l.clone()
	l.named = map[string]bool{}
	name := l.unit(p)
	l.text = slices.Concat(l.text[:from], []byte(quote(name+"."+port)), l.text[to:])
	l.bought[step.Item.ID] = true // it goes, with what was said of it
	sys, why := l.judge(map[string]bool{name: true}, []*Part{p})
	if sys == nil {
		delete(was.bought, step.Item.ID)
		l.back(was)
		l.why[p] = why
		return false
	}
	l.says[p] = append(l.says[p], "goes in place of "+step.Item.ID+", which was taken as the boat's own")
	l.keep(sys)
	return true
}

// assumed reports whether a draft wrote an item of the boat's own for want of a part.
func (l *layer) assumed(id string) bool {
	return strings.Contains(strings.ReplaceAll(string(l.text), "\r\n", "\n"), assumedBoat+"[[item]]\nid   = "+quote(id)+"\n")
}

// assumedBoat stands before an item of the boat's own that a draft took.
const assumedBoat = "# ASSUMED: the boat has its own. ASK: which end it has, and write `ports`.\n"

// clone is the layer as it is, to go back to.
func (l *layer) clone() layer {
	was := *l
	was.used, was.taken, was.says, was.why = maps.Clone(l.used), maps.Clone(l.taken), map[*Part][]string{}, maps.Clone(l.why)
	for p, list := range l.says {
		was.says[p] = slices.Clone(list)
	}
	return was
}

func (l *layer) back(was layer) {
	why := l.why
	*l = was
	l.why = why
}

func (l *layer) keep(sys *bom.System) {
	l.sys = sys
	if !l.loose {
		l.stops, _ = weigh(rule.Check(sys))
	}
	l.tried = map[string]bool{}
}

// lineEnds lays equipment from a port that stands open: a throttle behind the vessels, with what
// leads its brine overboard.
func (l *layer) lineEnds() bool {
	for _, p := range l.parts {
		if p.Aside != "" || p.item == nil || p.Kind.Loose || l.used[p] >= p.Pieces || l.tried["end "+p.ID] || !l.isNew(p) {
			continue
		}
		for i := range chain().Line {
			g, ok := l.lineEnd(p, &chain().Line[i])
			if ok && l.try(&g) {
				l.product(p)
				l.tried = map[string]bool{}
				return true
			}
		}
		l.tried["end "+p.ID] = true
	}
	return false
}

// product leads what a vessel that was laid makes to what stands for it.
func (l *layer) product(p *Part) {
	u, ok := l.sys.Graph.Unit(p.ID)
	if !ok || !p.Kind.Is(catalog.Separates) {
		return
	}
	for i := range chain().Line {
		o := &chain().Line[i]
		port := u.Item.PortIndex(o.Steps[0][2])
		if o.Water == "product" && l.does(o.Steps[0][0], p) && port >= 0 && l.sys.Graph.Port(u, port).Joint == nil {
			from := u.First + port
			l.try(&gap{from: from, to: from, row: l.rest(o, p), open: true, name: o.Name + " of " + u.Name})
		}
	}
}

// lineEnd is the gap for a part that ends one line and begins another, where the part before it
// stands with its port open.
func (l *layer) lineEnd(p *Part, line *line) (g gap, ok bool) {
	n := len(line.Steps) - 1
	if len(line.Branch) > 0 || n < 1 || !l.does(line.Steps[n][0], p) {
		return g, false
	}
	role := line.Steps[n][0]
	from := l.openOf(line, n)
	if from < 0 {
		return g, false
	}
	row := []rowUnit{{part: p, near: portOf(line.Steps[n][1], p.hasPort)}}
	for i := range chain().Line {
		next := &chain().Line[i]
		if next.Steps[0][0] != role || next.Instead != "" || next.Plant != line.Plant {
			continue
		}
		if row[0].far = portOf(next.Steps[0][2], p.hasPort); row[0].far == "" {
			continue
		}
		row = append(row, l.rest(next, p)...)
		break
	}
	return gap{from: from, to: from, part: p, row: row, open: true, name: line.Name + ": " + p.Kind.Name}, true
}

// byBranch puts the joints of the lines first that a part's branch usually stands in, and of a line
// that holds its branches at its end the last.
func (l *layer) byBranch(list []gap, p *Part) {
	var of *line
	for i := range chain().Line {
		if o := &chain().Line[i]; len(o.Branch) > 1 && len(o.Steps) == 1 && l.does(o.Steps[0][0], p) {
			of = o
			break
		}
	}
	if of == nil {
		return
	}
	rank := func(g *gap) (nth, at int) {
		first := &Part{Kind: g.run.Steps[0].Item.Kind}
		for n, name := range of.Branch {
			i := slices.IndexFunc(chain().Line, func(o line) bool { return o.Name == name && l.does(o.Steps[0][0], first) })
			if i < 0 {
				continue
			}
			if chain().Line[i].Held == "last" {
				return n, -g.a
			}
			return n, g.a
		}
		return len(of.Branch), 0
	}
	slices.SortStableFunc(list, func(a, b gap) int {
		n, x := rank(&a)
		m, y := rank(&b)
		return cmp.Or(n-m, x-y)
	})
}

// rest are the units of a line behind its first: one that stands with its port open ends it; those
// of the lists, and the boat's own.
func (l *layer) rest(line *line, but *Part) []rowUnit {
	var row []rowUnit
	for _, s := range line.Steps[1:] {
		if u, port := l.waiting(s); u != nil {
			return append(row, rowUnit{stands: u.Name, near: u.Item.Ports[port].Name, port: u.First + port})
		}
		r := roleOfName(s[0])
		if o := l.spare(r, but); o != nil {
			row = append(row, rowUnit{part: o, near: portOf(s[1], o.hasPort), far: portOf(s[2], o.hasPort)})
			continue
		}
		if r.Boat == "" {
			continue
		}
		k, _ := catalog.KindNamed(r.Boat)
		row = append(row, l.house(r, portOf(s[1], func(n string) bool { return k.PortIndex(n) >= 0 })))
	}
	return row
}

// waiting is the unit of the build that does a step of a line and stands with the port open that the
// step enters; nil for none.
func (l *layer) waiting(step []string) (u *graph.Unit, port int) {
	for _, u := range l.sys.Graph.Units {
		if len(u.Item.Kind.Boundary) > 0 || !l.does(step[0], &Part{Kind: u.Item.Kind}) {
			continue
		}
		n := u.Item.PortIndex(portOf(step[1], func(n string) bool { return u.Item.PortIndex(n) >= 0 }))
		if n >= 0 && l.sys.Graph.Port(u, n).Joint == nil {
			return u, n
		}
	}
	return nil, -1
}

func (p *Part) hasPort(n string) bool { return p.item.PortIndex(n) >= 0 }

// does reports whether a part can do a role.
func (l *layer) does(name string, p *Part) bool {
	return slices.ContainsFunc(chain().Role, func(r role) bool {
		return r.Name == name && slices.Contains(r.Kinds, p.Kind.Name) && r.suits(p)
	})
}

// openOf is the open port of the nearest unit of the build before a step of a line; -1 for none.
func (l *layer) openOf(line *line, n int) int {
	for k := n - 1; k >= 0; k-- {
		for i := len(l.sys.Graph.Units) - 1; i >= 0; i-- {
			u := l.sys.Graph.Units[i]
			it := &Part{Kind: u.Item.Kind}
			if !l.does(line.Steps[k][0], it) {
				continue
			}
			port := u.Item.PortIndex(portOf(line.Steps[k][2], func(n string) bool { return u.Item.PortIndex(n) >= 0 }))
			if port < 0 || l.sys.Graph.Port(u, port).Joint != nil || len(l.sys.Graph.Port(u, port).Port.End.Candidates) == 0 {
				return -1
			}
			return u.First + port
		}
	}
	return -1
}

// diverts lays a part that leads the water of a line two ways: into the line, and from its other
// way out to what that leads to. Both or neither.
func (l *layer) diverts() bool {
	for _, p := range l.parts {
		if p.Aside != "" || p.item == nil || l.used[p] >= p.Pieces || l.tried["two ways "+p.ID] || !l.isNew(p) || len(p.item.Ports) != 3 {
			continue
		}
		l.tried["two ways "+p.ID] = true
		for i := range chain().Line {
			line := &chain().Line[i]
			if k := slices.IndexFunc(line.Steps, func(s []string) bool { return l.does(s[0], p) }); k > 0 && line.Steps[k][2] != "" && l.divert(p, line, k) {
				l.tried = map[string]bool{}
				return true
			}
		}
	}
	return false
}

func (l *layer) divert(p *Part, main *line, k int) bool {
	i := slices.IndexFunc(chain().Line, func(o line) bool { return o.Steps[0][0] == main.Steps[k][0] && len(o.Branch) == 0 })
	if i < 0 {
		return false
	}
	side := &chain().Line[i]
	list := l.between(func(j *graph.Joint) bool { return j.Known || l.boatsEnd(j) }, p)
	slices.Reverse(list)
	for n := range list {
		g := &list[n]
		if !l.suits(p, g) || !l.inOrder(g, main, k) {
			continue
		}
		g.in, g.out = portOf(main.Steps[k][1], p.hasPort), portOf(main.Steps[k][2], p.hasPort)
		was := l.clone()
		stops := l.stops
		l.loose, l.bringing = true, p
		ok := l.try(g)
		l.loose = false
		if ok {
			u, _ := l.sys.Graph.Unit(p.ID)
			port := p.item.PortIndex(portOf(side.Steps[0][2], p.hasPort))
			if u != nil && port >= 0 {
				from := u.First + port
				if l.stops = stops; l.try(&gap{from: from, to: from, part: nil, row: l.rest(side, p), open: true, name: side.Name}) {
					l.bringing = nil
					return true
				}
			}
		}
		l.back(was)
	}
	l.bringing = nil
	return false
}

// ofItsOwn are the stops that equipment brings wherever it stands, and that keep it from no place:
// that nobody said what it holds, and what a state of it does, such as a valve left between its
// positions. They are said where it is laid.
func (l *layer) ofItsOwn(found []finding.Finding, g *gap, units map[string]bool) []finding.Finding {
	parts := []*Part{l.bringing, g.part}
	for _, u := range g.row {
		parts = append(parts, u.part)
	}
	var out []finding.Finding
	for i := range found {
		f := &found[i]
		if f.Severity != finding.Stop {
			continue
		}
		if slices.ContainsFunc(parts, func(p *Part) bool {
			return p != nil && !p.same && (f.NotKnown && units[f.Subject.Unit] && f.Subject.Unit == p.ID || p == l.bringing && strings.Contains(f.Reason, " "+p.ID+" ("+p.Kind.Name+")"))
		}) {
			out = append(out, *f)
		}
	}
	return out
}

// boatsEnd reports whether a joint is with the boat's own, whose end nobody said.
func (l *layer) boatsEnd(j *graph.Joint) bool {
	return l.sys.Graph.Ports[j.A].Unit.Item.Kind.Boats || l.sys.Graph.Ports[j.B].Unit.Item.Kind.Boats
}

// inOrder reports whether a joint stands behind what comes before a step of a line, and before what
// comes behind it.
func (l *layer) inOrder(g *gap, line *line, k int) bool {
	for i := range g.run.Steps {
		it := g.run.Steps[i].Item
		for n, s := range line.Steps {
			of := l.does(s[0], &Part{Kind: it.Kind}) || it.Kind.Boats && roleOfName(s[0]).Boat == it.Kind.Name
			if of && (n < k && i >= g.a || n > k && i < g.a) {
				return false
			}
		}
	}
	return true
}

// endAt numbers the end at a port of the build for the solver; the boat's own as a draft takes it.
func (l *layer) endAt(s *solved, port int) int {
	p := &l.sys.Graph.Ports[port]
	if k := p.Unit.Item.Kind; k.Boats && len(p.Port.End.Candidates) == 0 {
		for i := range chain().Role {
			if chain().Role[i].Boat == k.Name {
				return s.ends.number(endClass{boat: chain().Role[i].End, device: true})
			}
		}
	}
	return s.ends.number(readingClass(p.Port.End, true))
}

// judge reads, walks and checks the build as it would be written, and tells why it cannot be so.
func (l *layer) judge(units map[string]bool, parts []*Part) (*bom.System, string) {
	sys, why := l.walk(units)
	if sys == nil {
		return nil, why
	}
	found := rule.Check(sys)
	stops, _ := weigh(found)
	for i := range found {
		f := &found[i]
		if f.Severity == finding.Stop && !f.NotKnown && slices.ContainsFunc(parts, func(p *Part) bool { return strings.Contains(f.Subject.String(), p.ID) }) {
			return nil, f.Reason
		}
	}
	if stops > l.stops {
		return nil, fmt.Sprintf("a check would find %d stops with it, and finds %d", stops, l.stops)
	}
	return sys, ""
}
