package draft

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/read"
	"handtight/bom/rule"
	"handtight/threads"
)

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
	for _, c := range slices.Concat(chains...) {
		if c.part.own {
			continue
		}
		l.says[c.part] = append(l.says[c.part], what)
	}
	if g.inLine() {
		l.says[g.part] = append(l.says[g.part], what)
	}
	for _, u := range g.row {
		if u.part != nil && g.open {
			l.says[u.part] = append(l.says[u.part], what)
		} else if u.part != nil {
			l.says[u.part] = append(l.says[u.part], "goes on "+branch+", between "+from+" and "+to)
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
