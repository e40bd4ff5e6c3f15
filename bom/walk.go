package bom

import (
	"fmt"
	"strconv"

	"handtight/bom/source"
	"handtight/catalog"
	"handtight/pressure/nearest"
)

// Walk places the units of every run, joins their ports, and solves the
// pressures of every state. A port joined twice, or a step that cannot be
// entered or left, is a file error; the system is nil then.
func Walk(b *Build) (*System, source.Faults) {
	w := &walker{sys: &System{Build: b, byName: map[string]*Unit{}}, added: map[*Item]int{}}
	w.countPorts()
	for _, run := range b.Runs {
		w.run(run)
	}
	if len(w.faults) > 0 {
		w.faults.Sort()
		return nil, w.faults
	}
	w.sys.segment()
	w.sys.waters = w.sys.newWaters()
	w.sys.gatherReliefs()
	w.sys.solve()
	w.sys.weigh()
	w.sys.rate()
	return w.sys, nil
}

// walker builds the graph, run by run.
type walker struct {
	sys    *System
	added  map[*Item]int // units made by "/+"
	faults source.Faults
}

// countPorts makes room for every node at once: a node is pointed to, so the
// slice must not move.
func (w *walker) countPorts() {
	n := 0
	for _, run := range w.sys.Build.Runs {
		for _, s := range run.Steps {
			n += len(s.Item.Ports)
		}
	}
	w.sys.Ports = make([]Node, 0, n)
}

func (w *walker) fault(m Mark, reason, remedy string) {
	w.faults = append(w.faults, source.Fault{Place: m.Place(), Reason: reason, Remedy: remedy})
}

// visit is one step of a run with its unit and the ways it may be passed.
type visit struct {
	step *Step
	unit *Unit
	ways []way
}

// way is how a unit is passed: entered and left by port indices, -1 at the ends
// of a run.
type way struct{ entry, exit int }

func (w *walker) run(run *Run) {
	visits := make([]visit, len(run.Steps))
	for i := range run.Steps {
		step := &run.Steps[i]
		unit := w.place(step, run)
		visits[i] = visit{step: step, unit: unit, ways: w.ways(unit, step, i == 0, i == len(run.Steps)-1)}
		if len(visits[i].ways) == 0 {
			return // reported
		}
	}
	w.turn(visits)
	for i := 1; i < len(visits); i++ {
		w.join(run, &visits[i-1], &visits[i])
	}
}

// place finds or makes the unit of a step.
func (w *walker) place(step *Step, run *Run) *Unit {
	label := step.Label
	if label == "+" {
		w.added[step.Item]++
		label = "+" + strconv.Itoa(w.added[step.Item])
	}
	name := step.Item.ID
	if label != "" {
		name += "/" + label
	}
	u, ok := w.sys.byName[name]
	if !ok {
		u = &Unit{Item: step.Item, Label: label, Name: name, First: len(w.sys.Ports), Mark: step.Place}
		for i := range step.Item.Ports {
			w.sys.Ports = append(w.sys.Ports, Node{Unit: u, Port: &step.Item.Ports[i], Index: i})
		}
		w.sys.Units = append(w.sys.Units, u)
		w.sys.byName[name] = u
	}
	u.Below = u.Below || run.Below
	return u
}

// ways lists how a step may pass its unit, the written order first.
func (w *walker) ways(u *Unit, step *Step, first, last bool) []way {
	entry, okEntry := w.named(u, step.Entry, step)
	exit, okExit := w.named(u, step.Exit, step)
	if !okEntry || !okExit {
		return nil
	}
	if first && step.Entry != "" && step.Exit != "" || last && step.Exit != "" {
		w.fault(step.Place, fmt.Sprintf("`%s` names a port beyond the end of the run", step.Text), "a run's first step names only the port it leaves by, its last only the one it enters")
		return nil
	}
	if first && exit < 0 {
		exit = entry // a single port begins a run
	}
	var out []way
	for _, c := range w.defaults(u, first, last) {
		switch {
		case first && exit >= 0:
			c.exit = exit
		case last && entry >= 0:
			c.entry = entry
		case entry >= 0 && exit >= 0:
			c = way{entry, exit}
		case !first && !last && entry >= 0 && c.entry != entry:
			continue
		case !first && !last && exit >= 0 && c.exit != exit:
			c = way{c.entry, exit}
		}
		if first {
			c.entry = -1
		}
		if last {
			c.exit = -1
		}
		if c.entry == c.exit && c.entry >= 0 {
			continue // it cannot be left by the port that it is entered by
		}
		if !has(out, c) {
			out = append(out, c)
		}
	}
	out = w.free(u, out)
	if len(out) == 0 || !first && out[0].entry < 0 || !last && out[0].exit < 0 || out[0].entry == out[0].exit {
		w.fault(step.Place, fmt.Sprintf("%s is a %s, and `%s` does not say by which port the run %s it",
			u.Name, u.Item.Kind.Name, step.Text, verb(first, last)), "name a port: "+w.example(u, first || last))
		return nil
	}
	return out
}

func verb(first, last bool) string {
	switch {
	case first:
		return "leaves"
	case last:
		return "enters"
	}
	return "enters and leaves"
}

func (w *walker) example(u *Unit, end bool) string {
	ports := u.Item.Ports
	switch {
	case len(ports) == 0:
		return fmt.Sprintf("a %s has none, so it cannot stand in a run; use `inside` for contents", u.Item.Kind.Name)
	case end || len(ports) < 2:
		return fmt.Sprintf("`%s.%s`", u.Name, ports[len(ports)-1].Name)
	}
	return fmt.Sprintf("`%s.%s>%s`", u.Name, ports[0].Name, ports[len(ports)-1].Name)
}

func has(list []way, c way) bool {
	for _, x := range list {
		if x == c {
			return true
		}
	}
	return false
}

// named finds a port that a step names; -1 if it names none.
func (w *walker) named(u *Unit, port string, step *Step) (int, bool) {
	if port == "" {
		return -1, true
	}
	if i := u.Item.PortIndex(port); i >= 0 {
		return i, true
	}
	var known []string
	for _, p := range u.Item.Ports {
		known = append(known, p.Name)
	}
	remedy := "its ports are " + list(known)
	if near, ok := nearest.Of(port, known); ok {
		remedy = fmt.Sprintf("did you mean `%s`? %s", near, remedy)
	}
	w.fault(step.Place, fmt.Sprintf("%s has no port `%s`", u.Name, port), remedy)
	return -1, false
}

// defaults are the ways through a unit when a step names no port: a directed part
// one way, any other turned either way.
func (w *walker) defaults(u *Unit, first, last bool) []way {
	k := u.Item.Kind
	switch {
	case len(u.Item.Ports) == 0:
		return nil
	case len(u.Item.Ports) == 1:
		return []way{{0, 0}}
	case k.Free:
		return []way{{-1, -1}}
	case !k.Directed:
		return []way{{0, 1}, {1, 0}}
	case len(k.Boundary) > 0 && first:
		return []way{{k.Enter, k.Leave}}
	case len(k.Boundary) > 0 && last:
		return []way{{k.Leave, k.Enter}}
	case len(k.Boundary) > 0:
		return []way{{k.Enter, k.Leave}, {k.Leave, k.Enter}}
	}
	return []way{{k.Enter, k.Leave}}
}

// free drops ways through ports that are taken, while others remain.
func (w *walker) free(u *Unit, ways []way) []way {
	var out []way
	for _, c := range ways {
		if !w.taken(u, c.entry) && !w.taken(u, c.exit) {
			out = append(out, c)
		}
	}
	if len(out) == 0 {
		return ways
	}
	return out
}

func (w *walker) taken(u *Unit, port int) bool { return port >= 0 && w.sys.Node(u, port).Joint != nil }

// join makes the joint between two visits that have been turned.
func (w *walker) join(run *Run, from, to *visit) {
	a, b := from.unit.First+from.ways[0].exit, to.unit.First+to.ways[0].entry
	if w.twice(a, from.step) || w.twice(b, to.step) {
		return
	}
	if a == b {
		w.fault(to.step.Place, w.sys.Ports[a].Name()+" would be joined to itself", "write another unit: `"+to.step.Item.ID+"/+`")
		return
	}
	j := &Joint{Number: len(w.sys.Joints) + 1, A: a, B: b, Run: run, Mark: to.step.Place}
	na, nb := &w.sys.Ports[a], &w.sys.Ports[b]
	j.Mating, j.Open, j.Known = mate(na.Port, nb.Port)
	na.Joint, nb.Joint = j, j
	w.sys.Joints = append(w.sys.Joints, j)
}

// twice reports a port that is joined already, naming both places.
func (w *walker) twice(node int, step *Step) bool {
	n := &w.sys.Ports[node]
	if n.Joint == nil {
		return false
	}
	at := n.Joint.Mark.Place()
	w.fault(step.Place, fmt.Sprintf("%s is joined twice: here, and in %s line %d, column %d (run %q)",
		n.Name(), at.File, at.Line, at.Column, n.Joint.Run.Name),
		fmt.Sprintf("a port takes one joint; for a further unit of the same item write `%s/+`, or a label of your own", n.Unit.Item.ID))
	return true
}

// Passages lists what happens between the ports of a unit.
func (u *Unit) Passages() []catalog.Passage { return u.passages() }
