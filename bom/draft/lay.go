package draft

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/draft/assign"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/bom/money"
	"handtight/bom/read"
	"handtight/bom/rule"
	"handtight/catalog"
	"handtight/threads"
)

// layer lays pieces of later lists into places of a build that stands: where a piece to buy was
// put, where two ends do not join, where two stand open, and at a tee put between two that are
// joined, and what [layer.lines] lays. After each it reads, walks and checks the build again, and keeps
// only what joins as a check judges it and brings no further stop, but for those of [layer.ofItsOwn].
type layer struct {
	sys    *bom.System // with what is laid
	file   string
	text   []byte // the build's own, with the steps that were changed
	parts  []*Part
	used   map[*Part]int
	says   map[*Part][]string
	why    map[*Part]string // why a part was not laid where it came nearest
	hoses  string           // cut for what is laid
	runs   string           // that are added
	bought map[string]bool  // items that a draft put in for what was missing
	taken  map[string]bool
	stops  int
	own    []*Part         // that the build has and that stand nowhere: extra pieces, stock to cut from
	least  int             // what a check finds, weighed
	named  map[string]bool // units that the chain in hand takes
	dry    bool            // only tried: nothing is kept
	tried  map[string]bool

	loose      bool        // further stops are let pass: the rest comes with the next piece
	bringing   *Part       // equipment that is laid in two steps; nil else
	laidVessel *graph.Unit // the last vessel that was laid; nil for none
}

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

func newLayer(sys *bom.System, text []byte, parts []*Part, taken map[string]bool) *layer {
	l := &layer{sys: sys, file: sys.Build.File, text: text, parts: parts, used: map[*Part]int{}, says: map[*Part][]string{}, why: map[*Part]string{}, taken: taken, tried: map[string]bool{}}
	l.bought = boughtItems(sys.Build, text)
	l.stops, _ = weigh(rule.Check(sys))
	l.own = ownParts(sys.Build)
	return l
}

// weigh counts the stops, and all that a check finds, a caution as ten notes.
func weigh(list []finding.Finding) (stops, all int) {
	stops = finding.Count(list, finding.Stop)
	return stops, stops*1000 + finding.Count(list, finding.Caution)*10 + finding.Count(list, finding.Note)
}

// ownParts are the build's own pieces that stand nowhere and may help to lay what is new.
func ownParts(b *build.Build) []*Part {
	var out []*Part
	for _, it := range b.Items {
		p := &Part{Kind: it.Kind, ID: it.ID, item: it, Pieces: int(it.Extra / money.Piece), own: true}
		switch {
		case p.isStock() && it.Bore != nil:
			p.Says.Bore = *it.Bore
		case p.isStock() && it.Outside != nil:
			p.Says.Bore, p.Says.Outside = *it.Outside, true
		case p.Pieces > 0 && fittingKind(it.Kind) && it.Place.Place().File == b.File: // how many are left is written where it stands, and no included file is changed
		default:
			continue
		}
		out = append(out, p)
	}
	return out
}

// boughtItems finds the items that stand under the heading of what is missing, and the hoses cut
// from them.
func boughtItems(b *build.Build, text []byte) map[string]bool {
	out := map[string]bool{}
	at := 0
	lines := strings.Split(string(text), "\n")
	missing := make([]bool, len(lines))
	for i, row := range lines {
		if strings.HasPrefix(row, "# --- ") {
			at = boolToInt(strings.HasPrefix(row, missingHead))
		}
		missing[i] = at == 1
	}
	for _, it := range b.Items {
		p := it.Place.Place()
		if p.File == b.File && p.Line > 0 && p.Line <= len(lines) && missing[p.Line-1] {
			out[it.ID] = true
		}
	}
	for _, it := range b.Items {
		if out[it.Of] {
			out[it.ID] = true
		}
	}
	return out
}

// missingHead begins the part of a draft that holds what is to buy.
const missingHead = "# --- Missing"

// lay lays what it can, one gap after the other.
func (l *layer) lay() {
	for l.step() || l.vessel() || l.lines() {
	}
	l.takeExtra()
	l.drop()
}

func (l *layer) step() bool {
	for _, gaps := range []func() []gap{l.standIns, l.misfits, l.openPairs, l.tees} {
		for _, g := range gaps() {
			key := fmt.Sprint(l.sys.Graph.Ports[g.from].Name(), l.sys.Graph.Ports[g.to].Name(), g.b-g.a, g.hangs != nil)
			if g.part != nil {
				key = "part " + g.part.ID
			}
			if l.tried[key] {
				continue
			}
			if g.part != nil {
				best, ok := l.best(g.part)
				if !ok {
					l.tried[key] = true
					continue
				}
				g = best
			}
			if l.try(&g) {
				l.tried = map[string]bool{}
				return true
			}
			l.tried[key] = true
		}
	}
	return false
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

// try fills a gap, and keeps it where the check of the whole has no further stop. Pieces of a
// chain that the check refuses are not taken there again.
func (l *layer) try(g *gap) bool {
	refused := map[*Part]bool{}
	for range 4 {
		chains, ok := l.solve(g, refused)
		if !ok {
			return false
		}
		next, why := l.put(g, chains)
		if next != nil {
			return true
		}
		if g.part != nil {
			l.why[g.part] = why
		}
		if len(chains[0]) == 0 {
			return false // with no piece to refuse the next trial would be the same
		}
		for _, s := range chains[0] {
			l.why[s.part] = why
			refused[s.part] = true
		}
	}
	return false
}

// inLine reports whether the gap's part goes into the line itself.
func (g *gap) inLine() bool { return g.part != nil && len(g.row) == 0 }

// takes reports whether a part is one that the gap is for.
func (g *gap) takes(p *Part) bool {
	return p == g.part || slices.ContainsFunc(g.row, func(u rowUnit) bool { return u.part == p })
}

// laid is one piece in a chain.
type laid struct {
	part    *Part
	in, out int
	side    int // branch that the next chain starts at; -1 for none
}

// solve asks for a chain of the pieces that are left.
func (l *layer) solve(g *gap, refused map[*Part]bool) (chains [][]laid, ok bool) {
	var left []*Part
	for _, p := range slices.Concat(l.parts, l.own) {
		if p.Aside == "" && !refused[p] && !(p.own && l.bought[p.ID]) && !g.takes(p) && (p.isStock() || l.used[p] < p.Pieces) {
			left = append(left, p)
		}
	}
	s := &solved{ends: newEnds(), refused: map[*Part]string{}}
	for _, p := range left { // each line a class of its own
		one := &solved{ends: s.ends}
		one.classify([]*Part{p})
		if len(one.classes) == 1 && (len(one.classes[0].ends) == 2 || len(g.row) > 0 || g.hangs != nil) {
			s.classes = append(s.classes, one.classes...)
		}
	}
	if len(s.classes) == 0 && !g.inLine() && !g.open {
		return nil, false
	}
	end := func(port int) int {
		return l.endAt(s, port)
	}
	p := &assign.Problem{}
	for i := range s.classes {
		c := s.assignClass(&s.classes[i], i)
		if c.Count > 0 {
			c.Count -= l.used[s.classes[i].parts[0]]
		}
		p.Classes = append(p.Classes, c)
	}
	lost := assign.Cost{Stops: 1}
	may := make([]assign.Grade, len(p.Classes))
	p.Places = []assign.Place{{From: end(g.from), To: end(g.to), Grade: may, Lost: lost}}
	switch {
	case g.open:
		p.Places = l.rowPlaces(s, g.row, may, lost)
		p.Places[0].From, p.Places[0].Hosts = end(g.from), nil
	case g.inLine():
		in, out := g.way()
		at := func(i int) int { return s.ends.number(readingClass(g.part.item.Ports[i].End, true)) }
		p.Places = append(p.Places, assign.Place{From: at(out), To: p.Places[0].To, Grade: may, Lost: lost})
		p.Places[0].To = at(in)
	case g.hangs != nil:
		p.Places = append(p.Places, assign.Place{From: assign.Branch, To: end(g.hangs.to), Hosts: []int{0}, Grade: may, Lost: lost})
	default:
		p.Places = append(p.Places, l.rowPlaces(s, g.row, may, lost)...)
	}
	p.Ends = len(s.ends.list)
	p.Tables = []assign.Table{{Joints: make([]assign.Joint, p.Ends*p.Ends), Buy: make([]uint8, p.Ends*p.Ends)}} // nothing is to buy
	for a := range p.Ends {
		for b := range p.Ends {
			p.Tables[0].Joints[a*p.Ends+b] = join(&s.ends.list[a], &s.ends.list[b], assumedFeed)
		}
	}
	answer := assign.Solve(p)
	out := make([][]laid, len(answer.Places))
	for i, m := range answer.Places {
		if !m.OK || m.Buy > 0 {
			return nil, false
		}
		for _, step := range m.Chain {
			if step.Buy > 0 {
				return nil, false
			}
			out[i] = append(out[i], laid{part: s.classes[step.Class].parts[0], in: step.In, out: step.Out, side: -1})
		}
		if i == 1 && m.Host == 0 && m.HostAt >= 0 {
			out[0][m.HostAt].side = m.Side
		}
	}
	fresh := slices.ContainsFunc(out[0], func(c laid) bool { return !c.part.own })
	return out, fresh || g.inLine() || g.open || len(g.row) > 0 && len(out[0]) > 0
}

// put writes a chain into the text, and reads, walks and checks it.
func (l *layer) put(g *gap, chains [][]laid) (next *bom.System, why string) {
	chain := chains[0]
	was := *l
	used, taken := map[*Part]int{}, map[string]bool{}
	for p, n := range l.used {
		used[p] = n
	}
	for id := range l.taken {
		taken[id] = true
	}
	back := func(reason string) (*bom.System, string) {
		says, reasons, tried := l.says, l.why, l.tried
		*l = was
		l.used, l.taken, l.says, l.why, l.tried = used, taken, says, reasons, tried
		return nil, reason
	}
	l.named = map[string]bool{}
	var steps []string
	units := map[string]bool{}
	branch := ""
	for _, c := range chain {
		if g.open {
			break // written with its row
		}
		name := l.unit(c.part)
		units[name] = true
		if c.side >= 0 {
			branch = name + "." + c.part.item.Ports[c.side].Name
		}
		if !c.part.isStock() && len(c.part.item.Ports) > 2 {
			name += "." + c.part.item.Ports[c.in].Name + ">" + c.part.item.Ports[c.out].Name
		}
		steps = append(steps, quote(name))
	}
	if g.inLine() {
		in, out := g.way()
		name := l.unit(g.part)
		units[name] = true
		steps = append(steps, quote(name+"."+g.part.item.Ports[in].Name+">"+g.part.item.Ports[out].Name))
		for _, c := range chains[1] {
			name := l.unit(c.part)
			units[name] = true
			steps = append(steps, quote(name))
		}
	}
	from, to := l.sys.Graph.Ports[g.from].Name(), l.sys.Graph.Ports[g.to].Name()
	const fixed = "its run cannot be changed where it is written: a comment stands among the steps that give way"
	late := g.hangs != nil && g.hangs.run.Steps[g.hangs.a].Place.Place().Line > g.runLine() // what stands further down is written first: it moves nothing before it
	if late && !l.rehang(g.hangs, branch, chains[1], units) {
		return back(fixed)
	}
	if g.open {
		branch = from
		l.addRun(g.name, l.rowPath(g.row, chains, branch, false, units))
	} else if g.run == nil {
		l.addRun("between "+from+" and "+to, slices.Concat([]string{quote(from)}, steps, []string{quote(to)}))
	} else if !l.edit(g, steps) {
		return back(fixed)
	}
	if g.hangs != nil && !late && !l.rehang(g.hangs, branch, chains[1], units) {
		return back(fixed)
	}
	if len(g.row) > 0 && !g.open {
		name := g.part.Kind.Name + " at " + branch
		switch {
		case g.name != "":
			name = g.name
		case g.back:
			name = "flush"
		}
		l.addRun(name, l.rowPath(g.row, chains[1:], branch, g.back, units))
	}
	sys, why := l.walk(units)
	if sys == nil {
		return back(why)
	}
	found := rule.Check(sys)
	stops, all := weigh(found)
	for i := range found { // a stop that the piece itself brings
		f := &found[i]
		if f.Severity == finding.Stop && !f.NotKnown && slices.ContainsFunc(chain, func(c laid) bool { return strings.Contains(f.Subject.String(), c.part.ID) }) {
			return back(f.Reason)
		}
	}
	if g.turns > 0 && turnless(found) >= g.turns {
		return back("nothing gives way with it either")
	}
	own := l.ofItsOwn(found, g, units)
	if stops-len(own) > l.stops && !l.loose {
		i := slices.IndexFunc(found, func(f finding.Finding) bool {
			return f.Severity == finding.Stop && slices.ContainsFunc(chain, func(c laid) bool { return strings.Contains(f.Subject.String()+f.Reason, c.part.ID) })
		})
		if i >= 0 {
			return back(found[i].Reason)
		}
		return back("a check would find a further stop with it")
	}
	if l.dry {
		back("")
		l.least = all
		return sys, ""
	}
	what := "goes between " + from + " and " + to
	switch {
	case g.a < g.b:
		what += ", in place of " + unitName(&g.run.Steps[g.a]) + ", which was to buy"
	case g.open:
		what = "goes on " + from + ", which stood open"
	case g.turns > 0:
		what += ", where nothing gave way"
	case g.run == nil:
		what += ", which stood open"
	case g.part == nil:
		what += ", which did not join"
	}
	stopsAt := ""
	for i := range own {
		first, _, _ := strings.Cut(own[i].Reason, ". ")
		stopsAt += "; a check stops at it: " + strings.TrimSuffix(first, ".")
	}
	for _, c := range slices.Concat(chains...) {
		if c.part.own {
			continue
		}
		l.says[c.part] = append(l.says[c.part], what)
	}
	if g.inLine() {
		l.says[g.part] = append(l.says[g.part], what+stopsAt)
	}
	for _, u := range g.row {
		if u.part != nil && g.open {
			l.says[u.part] = append(l.says[u.part], what+stopsAt)
		} else if u.part != nil {
			l.says[u.part] = append(l.says[u.part], "goes on "+branch+", between "+from+" and "+to+stopsAt)
		}
	}
	if l.sys = sys; !l.loose {
		l.stops = stops
	}
	return sys, ""
}

// walk reads and walks the build as it would be written; nil and why where it cannot be, or where
// one of the units does not join.
func (l *layer) walk(units map[string]bool) (*bom.System, string) {
	b, faults := read.Parse(l.file, []byte(l.whole()))
	var sys *bom.System
	if len(faults) == 0 {
		sys, faults = bom.Walk(b)
	}
	if len(faults) > 0 {
		return nil, "the build would not be read with it: " + faults[0].Reason
	}
	for _, j := range sys.Graph.Joints {
		a, b := &sys.Graph.Ports[j.A], &sys.Graph.Ports[j.B]
		if (units[a.Unit.Name] || units[b.Unit.Name]) && j.Known && !j.Open && !j.Mating.Verdict.Holds() && j.Mating.Verdict != threads.LowPressureOnly {
			return nil, a.Name() + " and " + b.Name() + " do not join"
		}
	}
	return sys, ""
}

// unit names a further unit of a part; of stock, a piece that is cut.
func (l *layer) unit(p *Part) string {
	l.used[p]++
	if !p.isStock() {
		name := p.ID
		for n := 2; ; n++ {
			if _, stands := l.sys.Graph.Unit(name); !stands && !l.named[name] {
				break
			}
			name = fmt.Sprintf("%s/%d", p.ID, n)
		}
		l.named[name] = true
		return name
	}
	id := ""
	for n := 1; id == "" || l.taken[id]; n++ {
		id = fmt.Sprintf("%s-%d", p.ID, n)
	}
	l.taken[id] = true
	var f fields
	f.text("id", id)
	f.text("of", p.ID)
	f.text("length", "1 m")
	l.hoses += "# ASSUMED: measure it\n" + f.write(tableHose) + "\n"
	return id
}

func (l *layer) addRun(name string, path []string) {
	var r fields
	r.text("name", name)
	r.add("path", "["+strings.Join(path, ", ")+"]")
	l.runs += r.write("run") + "\n"
}

// whole is the build as it would be written, its parts without their comments.
func (l *layer) whole() string {
	var b strings.Builder
	b.Write(l.text)
	b.WriteString("\n\n")
	for _, p := range l.parts {
		if l.used[p] > 0 && !p.same {
			b.WriteString(p.table() + "\n")
		}
	}
	b.WriteString(l.hoses + l.runs)
	return b.String()
}
