package draft

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/read"
	"handtight/bom/rule"
	"handtight/threads"
)

// put writes a chain into the text, and reads, walks and checks the build. Where the build does not
// take it, the layer goes back to what it was, and why is told.
func (l *layer) put(g *gap, chains [][]laid) (next *bom.System, why string) {
	was := l.clone()
	t := &trial{layer: l, g: g, chains: chains, units: map[string]bool{}, from: l.sys.Graph.Ports[g.from].Name(), to: l.sys.Graph.Ports[g.to].Name()}
	sys, found, why := t.judged()
	if sys == nil || l.dry {
		l.back(was)
	}
	if sys == nil {
		return nil, why
	}
	stops, all := weigh(found)
	if l.dry {
		l.least = all
		return sys, ""
	}
	t.tell()
	if l.sys = sys; !l.loose {
		l.stops = stops
	}
	return sys, ""
}

// trial is a gap with the chains that are to fill it.
type trial struct {
	*layer
	g        *gap
	chains   [][]laid
	units    map[string]bool // that it makes
	branch   string          // the port that the next chain starts at
	from, to string
}

// judged writes the trial, walks and checks it; nil and why where it cannot be so.
func (t *trial) judged() (*bom.System, []finding.Finding, string) {
	if !t.write() {
		return nil, nil, "its run cannot be changed where it is written: a comment stands among the steps that give way"
	}
	sys, why := t.walk(t.units)
	if sys == nil {
		return nil, nil, why
	}
	found := rule.Check(sys)
	if why := t.refusal(found); why != "" {
		return nil, nil, why
	}
	return sys, found, ""
}

// write changes the run of the gap or adds one, and hangs on its branch what is to hang there.
func (t *trial) write() bool {
	t.named = map[string]bool{}
	steps := t.steps()
	// What stands further down is written first: it moves nothing before it.
	late := t.g.hangs != nil && t.g.hangs.run.Steps[t.g.hangs.a].Place.Place().Line > t.g.runLine()
	if late && !t.rehang(t.g.hangs, t.branch, t.chains[1], t.units) {
		return false
	}
	switch {
	case t.g.open:
		t.branch = t.from
		t.addRun(t.g.name, t.rowPath(t.g.row, t.chains, t.branch, false, t.units))
	case t.g.run == nil:
		t.addRun("between "+t.from+" and "+t.to, slices.Concat([]string{quote(t.from)}, steps, []string{quote(t.to)}))
	case !t.edit(t.g, steps):
		return false
	}
	if t.g.hangs != nil && !late && !t.rehang(t.g.hangs, t.branch, t.chains[1], t.units) {
		return false
	}
	if len(t.g.row) > 0 && !t.g.open {
		name := cmp.Or(t.g.name, t.g.part.Kind.Name+" at "+t.branch)
		if t.g.back && t.g.name == "" {
			name = "flush"
		}
		t.addRun(name, t.rowPath(t.g.row, t.chains[1:], t.branch, t.g.back, t.units))
	}
	return true
}

// steps names what goes into the run of the gap: the first chain, and the part in line with the
// chain behind it. A row that begins at an open port is written with its own run.
func (t *trial) steps() []string {
	var steps []string
	add := func(p *Part, in, out int) (name string) {
		name = t.unit(p)
		t.units[name] = true
		step := name
		if in >= 0 {
			step += "." + p.item.Ports[in].Name + ">" + p.item.Ports[out].Name
		}
		steps = append(steps, quote(step))
		return name
	}
	for _, c := range t.chains[0] {
		if t.g.open {
			break
		}
		in := -1
		if !c.part.isStock() && len(c.part.item.Ports) > 2 {
			in = c.in
		}
		name := add(c.part, in, c.out)
		if c.side >= 0 {
			t.branch = name + "." + c.part.item.Ports[c.side].Name
		}
	}
	if t.g.inLine() {
		in, out := t.g.way()
		add(t.g.part, in, out)
		for _, c := range t.chains[1] {
			add(c.part, -1, -1)
		}
	}
	return steps
}

// refusal tells why a check of the whole speaks against the trial; "" where it does not.
func (t *trial) refusal(found []finding.Finding) string {
	touches := func(text string) bool {
		return slices.ContainsFunc(t.chains[0], func(c laid) bool { return strings.Contains(text, c.part.ID) })
	}
	for i := range found { // a stop that the piece itself brings
		if f := &found[i]; f.Severity == finding.Stop && !f.NotKnown && touches(f.Subject.String()) {
			return f.Reason
		}
	}
	if t.g.turns > 0 && turnless(found) >= t.g.turns {
		return "nothing gives way with it either"
	}
	stops, _ := weigh(found)
	if stops-len(t.ofItsOwn(found, t.g, t.units)) <= t.stops || t.loose {
		return ""
	}
	for i := range found {
		if f := &found[i]; f.Severity == finding.Stop && touches(f.Subject.String()+f.Reason) {
			return f.Reason
		}
	}
	return "a check would find a further stop with it"
}

// tell says of every piece that was laid where it went.
func (t *trial) tell() {
	what := t.where()
	say := func(p *Part, text string) { t.says[p] = append(t.says[p], text) }
	for _, c := range slices.Concat(t.chains...) {
		if !c.part.own {
			say(c.part, what)
		}
	}
	if t.g.inLine() {
		say(t.g.part, what)
	}
	if !t.g.open {
		what = "goes on " + t.branch + ", between " + t.from + " and " + t.to
	}
	for _, u := range t.g.row {
		if u.part != nil {
			say(u.part, what)
		}
	}
}

// where tells where the gap is, and why it was one.
func (t *trial) where() string {
	between := "goes between " + t.from + " and " + t.to
	switch {
	case t.g.a < t.g.b:
		return between + ", in place of " + unitName(&t.g.run.Steps[t.g.a]) + ", which was to buy"
	case t.g.open:
		return "goes on " + t.from + ", which stood open"
	case t.g.turns > 0:
		return between + ", where nothing gave way"
	case t.g.run == nil:
		return between + ", which stood open"
	case t.g.part == nil:
		return between + ", which did not join"
	}
	return between
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
