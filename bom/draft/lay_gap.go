package draft

import (
	"slices"

	"handtight/bom/build"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/threads"
)

// gap is a place in the build for a chain of pieces.
type gap struct {
	from, to int        // ports of the graph
	run      *build.Run // nil: both stand open, and get a run
	a, b     int        // steps a to b, without b, give way; none where they are equal
	part     *Part      // that a tee is put in for; nil elsewhere
	row      []rowUnit  // what stands behind that tee: the part, and what goes with it
	back     bool       // its water flows to the tee
	name     string     // of the run that hangs on the tee; "" for one by its part
	hangs    *hanging   // what hung on a tee that gives way; nil elsewhere
	open     bool       // its row begins at the port `from`, which stands open
	in, out  string     // ports of a part in line that has more than two; "" elsewhere
	turns    int        // in how many places nothing gives way now: there must be fewer; 0 elsewhere
}

// best is the joint for a part's tee after which a check finds the least.
func (l *layer) best(p *Part) (out gap, ok bool) {
	least := 0
	l.dry = true
	for _, g := range l.hosts(p) {
		if l.try(&g) && (!ok || l.least < least) {
			out, ok, least = g, true, l.least
		}
		l.dry = true
	}
	l.dry = false
	return out, ok
}

// joint finds the ports by which two steps of a run that follow each other are joined.
func (l *layer) joint(run *build.Run, i int) (a, b int, ok bool) {
	for _, j := range l.sys.Graph.Joints {
		x, y := l.sys.Graph.Ports[j.A].Unit, l.sys.Graph.Ports[j.B].Unit
		if j.Run == run && x.Name == unitName(&run.Steps[i-1]) && y.Name == unitName(&run.Steps[i]) {
			return j.A, j.B, true
		}
	}
	return 0, 0, false
}

func unitName(s *build.Step) string {
	if s.Label != "" {
		return s.Item.ID + "/" + s.Label
	}
	return s.Item.ID
}

// standIns are the rows of pieces that a draft put in for what was missing, the longest first.
func (l *layer) standIns() []gap {
	var out []gap
	for _, run := range l.sys.Build.Runs {
		for a := 1; a < len(run.Steps)-1; a++ {
			for b := a + 1; b < len(run.Steps) && l.bought[run.Steps[b-1].Item.ID] && len(run.Steps[b-1].Item.Ports) <= 2; b++ {
				from, _, ok := l.joint(run, a)
				_, to, ok2 := l.joint(run, b)
				if ok && ok2 {
					out = append(out, gap{from: from, to: to, run: run, a: a, b: b})
				}
			}
			if l.bought[run.Steps[a].Item.ID] && a+1 < len(run.Steps) {
				from, _, ok := l.joint(run, a)
				_, to, ok2 := l.joint(run, a+1)
				if g, tee := l.boughtTee(gap{from: from, to: to, run: run, a: a, b: a + 1}); ok && ok2 && tee {
					out = append(out, g)
				}
			}
		}
	}
	slices.SortStableFunc(out, func(x, y gap) int { return (y.b - y.a) - (x.b - x.a) })
	return out
}

// misfits are the joints that are known not to hold.
func (l *layer) misfits() []gap {
	return l.between(func(j *graph.Joint) bool {
		return j.Known && !j.Mating.Verdict.Holds() && j.Mating.Verdict != threads.LowPressureOnly
	}, nil)
}

func (l *layer) between(want func(*graph.Joint) bool, part *Part) []gap {
	var out []gap
	for _, run := range l.sys.Build.Runs {
		for i := 1; i < len(run.Steps); i++ {
			from, to, ok := l.joint(run, i)
			if ok && want(l.sys.Graph.Ports[to].Joint) {
				out = append(out, gap{from: from, to: to, run: run, a: i, b: i, part: part})
			}
		}
	}
	return out
}

// openPairs are two ends that stand open, of parts that nothing else joins yet in that place.
func (l *layer) openPairs() []gap {
	var open []int
	for i := range l.sys.Graph.Ports {
		p := &l.sys.Graph.Ports[i]
		if p.Joint == nil && !l.sys.Graph.AtBoundary(i) && len(p.Port.End.Candidates) > 0 && !named(l.sys.Build.Plugged, p.Name()) && !named(l.sys.Build.LeftOpen, p.Name()) {
			open = append(open, i)
		}
	}
	var out []gap
	for n, a := range open {
		for _, b := range open[n+1:] {
			if l.sys.Graph.Ports[a].Unit != l.sys.Graph.Ports[b].Unit {
				out = append(out, gap{from: a, to: b})
			}
		}
	}
	return out
}

// tees are the joints that a tee of the lists could be put into, for each part that wants one.
func (l *layer) tees() []gap {
	var out []gap
	for _, p := range l.parts {
		if p.Aside == "" && p.item != nil && !p.Kind.Loose && !fittingKind(p.Kind) && !p.isHose() && l.used[p] < p.Pieces && (p.inlet() >= 0 || p.inLine()) && l.isNew(p) {
			if list := l.hosts(p); len(list) > 0 {
				out = append(out, list[0]) // one for all: the best is looked for then
			}
		}
	}
	return out
}

// hosts are the joints that a part could be put into, or a tee for it: for a flush those before
// the pump, the last first.
func (l *layer) hosts(p *Part) []gap {
	list := slices.DeleteFunc(l.between(func(j *graph.Joint) bool { return j.Known }, p), func(g gap) bool { return !l.suits(p, &g) })
	if p.inLine() && !slices.Contains(chain().flushSigns(), p.Kind.Name) {
		return list
	}
	row, back := l.row(p)
	if back {
		if len(row) == 0 && p.inLine() {
			return list // a flush stands already: it may be for a line of its own
		}
		list = slices.DeleteFunc(list, func(g gap) bool { return !l.feeds(&g) })
		slices.Reverse(list)
	}
	if slices.ContainsFunc(chain().Line, func(o line) bool {
		return o.Near == "pump" && !o.Back && slices.Contains(roleOfName(o.Steps[0][0]).Kinds, p.Kind.Name) && roleOfName(o.Steps[0][0]).suits(p)
	}) { // of joints that a check finds alike, the one next to the pump
		slices.Reverse(list)
		slices.SortStableFunc(list, func(a, b gap) int { return boolToInt(l.feeds(&b)) - boolToInt(l.feeds(&a)) })
	}
	l.byBranch(list, p)
	for i := range list {
		list[i].row, list[i].back = row, back
	}
	return list
}

// isNew reports whether the build has nothing of the part's kind that its line could be for: a gauge
// for the feed is not the one for the pressure side.
func (l *layer) isNew(p *Part) bool {
	if p.fallback == nil {
		return true
	}
	it, ok := l.sys.Build.Item(p.fallback.Item())
	if !ok || it.Kind != p.Kind {
		return ok
	}
	has := &Part{Kind: it.Kind}
	if it.Scale != nil {
		has.Says.Scale = *it.Scale
	}
	if it.Set != nil {
		has.Says.Set = *it.Set
	}
	return p.fallback.IsWrong() && !slices.ContainsFunc(chain().Role, func(r role) bool {
		return r.Sign != "" && slices.Contains(r.Kinds, p.Kind.Name) && r.suits(p) && r.suits(has)
	}) && slices.ContainsFunc(chain().Role, func(r role) bool { return r.Sign != "" && slices.Contains(r.Kinds, p.Kind.Name) && r.suits(p) })
}

// inlet is the port by which a part hangs on a branch: its only one, or that of a relief.
func (p *Part) inlet() int {
	if len(p.item.Ports) == 1 && !p.Kind.Boats && len(p.item.Ports[0].End.Candidates) > 0 && len(p.Kind.Boundary) == 0 {
		return 0
	}
	if p.Kind.Is(catalog.Relieves) {
		return 0
	}
	return -1
}

// inLine reports whether a part has a way in and a way out, and nothing else.
func (p *Part) inLine() bool {
	return len(p.item.Ports) == 2 && len(p.Kind.Boundary) == 0 && !p.Kind.Boats && p.inlet() < 0 &&
		len(p.item.Ports[0].End.Candidates) > 0 && len(p.item.Ports[1].End.Candidates) > 0
}

// way is the port by which the water enters a part in line, and that by which it leaves.
func (p *Part) way() (in, out int) {
	if p.Kind.Is(catalog.Separates) {
		return p.item.PortIndex("feed"), p.item.PortIndex("brine")
	}
	if p.Kind.Enter == 1 {
		return 1, 0
	}
	return 0, 1
}

// way is how the water goes through the gap's part.
func (g *gap) way() (in, out int) {
	if g.in != "" {
		return g.part.item.PortIndex(g.in), g.part.item.PortIndex(g.out)
	}
	return g.part.way()
}

// inLine reports whether the gap's part goes into the line itself.
func (g *gap) inLine() bool { return g.part != nil && len(g.row) == 0 }

// takes reports whether a part is one that the gap is for.
func (g *gap) takes(p *Part) bool {
	return p == g.part || slices.ContainsFunc(g.row, func(u rowUnit) bool { return u.part == p })
}
