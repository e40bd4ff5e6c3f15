package graph

import (
	"fmt"
	"strconv"

	"handtight/bom/build"
	"handtight/bom/source"
	"handtight/pressure/nearest"
)

// Walk places the units of every run and joins their ports. A port joined twice, or a
// step that cannot be entered or left, is a file error; the graph is nil then.
func Walk(b *build.Build) (*Graph, source.Faults) {
	w := &walker{graph: &Graph{Build: b, byName: map[string]*Unit{}, inside: contents(b)}, added: map[*build.Item]int{}, ends: map[string]*build.EndNote{}}
	for _, n := range b.Ends {
		w.ends[n.At.Name()] = n
	}
	w.countPorts()
	for _, run := range b.Runs {
		w.run(run)
	}
	w.notes()
	if len(w.faults) > 0 {
		w.faults.Sort()
		return nil, w.faults
	}
	return w.graph, nil
}

// contents sorts the items that stand inside others by what holds them.
func contents(b *build.Build) map[string][]*build.Item {
	out := map[string][]*build.Item{}
	for _, it := range b.Items {
		if it.Inside != "" {
			out[it.Inside] = append(out[it.Inside], it)
		}
	}
	return out
}

// walker builds the graph, run by run.
type walker struct {
	graph  *Graph
	added  map[*build.Item]int // units made by "/+"
	ends   map[string]*build.EndNote
	faults source.Faults
}

// countPorts makes room for every node at once: a node is pointed to, so the
// slice must not move.
func (w *walker) countPorts() {
	n := 0
	for _, run := range w.graph.Build.Runs {
		for _, s := range run.Steps {
			n += len(s.Item.Ports)
		}
	}
	w.graph.Ports = make([]Port, 0, n)
}

func (w *walker) fault(m build.Mark, reason, remedy string) {
	w.faults = append(w.faults, source.Fault{Place: m.Place(), Reason: reason, Remedy: remedy})
}

// visit is one step of a run with its unit and the routes it may be passed.
type visit struct {
	step   *build.Step
	unit   *Unit
	routes []route
}

// route is how a unit is passed: entered and left by port indices, -1 at the ends
// of a run.
type route struct{ entry, exit int }

func (w *walker) run(run *build.Run) {
	visits := make([]visit, len(run.Steps))
	for i := range run.Steps {
		step := &run.Steps[i]
		unit := w.place(step, run)
		visits[i] = visit{step: step, unit: unit, routes: w.routes(unit, step, i == 0, i == len(run.Steps)-1)}
		if len(visits[i].routes) == 0 {
			return // reported
		}
	}
	w.turn(visits)
	for i := 1; i < len(visits); i++ {
		w.join(run, &visits[i-1], &visits[i])
	}
}

// place finds or makes the unit of a step.
func (w *walker) place(step *build.Step, run *build.Run) *Unit {
	label := step.Label
	if label == "+" {
		w.added[step.Item]++
		label = "+" + strconv.Itoa(w.added[step.Item])
	}
	name := step.Item.ID
	if label != "" {
		name += "/" + label
	}
	u, ok := w.graph.byName[name]
	if !ok {
		u = &Unit{Item: step.Item, Label: label, Name: name, First: len(w.graph.Ports), Mark: step.Place}
		for i := range step.Item.Ports {
			w.graph.Ports = append(w.graph.Ports, w.noted(Port{Unit: u, Port: &step.Item.Ports[i], Index: i}))
		}
		w.graph.Units = append(w.graph.Units, u)
		w.graph.byName[name] = u
	}
	u.Below = u.Below || run.Below
	return u
}

// routes lists how a step may pass its unit, the written order first.
func (w *walker) routes(u *Unit, step *build.Step, first, last bool) []route {
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
	var out []route
	for _, c := range w.defaults(u, first, last) {
		switch {
		case first && exit >= 0:
			c.exit = exit
		case last && entry >= 0:
			c.entry = entry
		case entry >= 0 && exit >= 0:
			c = route{entry, exit}
		case !first && !last && entry >= 0 && c.entry != entry:
			continue
		case !first && !last && exit >= 0 && c.exit != exit:
			c = route{c.entry, exit}
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
			u.Name, u.Item.Kind.Name, step.Text, verb(first, last)), w.example(u, step, first, last))
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

func (w *walker) example(u *Unit, step *build.Step, first, last bool) string {
	ports := u.Item.Ports
	switch {
	case len(ports) == 0:
		return fmt.Sprintf("a %s has no ports, so it cannot stand in a run; use `inside` for contents", u.Item.Kind.Name)
	case last:
		return fmt.Sprintf("name a port: `%s.%s`", u.Name, ports[0].Name)
	case first:
		return fmt.Sprintf("name a port: `%s.%s`", u.Name, ports[len(ports)-1].Name)
	case len(ports) == 1:
		return fmt.Sprintf("nothing runs on through a part of one port: put a tee in its place here, and write a [[run]] of its own with path = [\"tee.branch\", %q]", u.Name)
	}
	in := max(u.Item.PortIndex(step.Entry), 0)
	out := 0
	if in == 0 {
		out = 1
	}
	return fmt.Sprintf("name its ports: `%s.%s>%s`", u.Name, ports[in].Name, ports[out].Name)
}

func has(list []route, c route) bool {
	for _, x := range list {
		if x == c {
			return true
		}
	}
	return false
}

// named finds a port that a step names; -1 if it names none.
func (w *walker) named(u *Unit, port string, step *build.Step) (int, bool) {
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
	remedy := "its ports are " + build.InWords(known)
	if near, ok := nearest.Of(port, known); ok {
		remedy = fmt.Sprintf("did you mean `%s`? %s", near, remedy)
	}
	w.fault(step.Place, fmt.Sprintf("%s has no port `%s`", u.Name, port), remedy)
	return -1, false
}

// defaults are the routes through a unit when a step names no port: a directed part
// one route, any other turned either route.
func (w *walker) defaults(u *Unit, first, last bool) []route {
	k := u.Item.Kind
	switch {
	case len(u.Item.Ports) == 0:
		return nil
	case len(u.Item.Ports) == 1:
		return []route{{0, 0}}
	case k.Free:
		return []route{{-1, -1}}
	case !k.Directed:
		return []route{{0, 1}, {1, 0}}
	case len(k.Boundary) > 0 && first:
		return []route{{k.Enter, k.Leave}}
	case len(k.Boundary) > 0 && last:
		return []route{{k.Leave, k.Enter}}
	case len(k.Boundary) > 0:
		return []route{{k.Enter, k.Leave}, {k.Leave, k.Enter}}
	}
	return []route{{k.Enter, k.Leave}}
}

// free drops routes through ports that are taken, while others remain.
func (w *walker) free(u *Unit, routes []route) []route {
	var out []route
	for _, c := range routes {
		if !w.taken(u, c.entry) && !w.taken(u, c.exit) {
			out = append(out, c)
		}
	}
	if len(out) == 0 {
		return routes
	}
	return out
}

func (w *walker) taken(u *Unit, port int) bool {
	return port >= 0 && w.graph.Port(u, port).Joint != nil
}

// join makes the joint between two visits that have been turned.
func (w *walker) join(run *build.Run, from, to *visit) {
	a, b := from.unit.First+from.routes[0].exit, to.unit.First+to.routes[0].entry
	if w.twice(a, from.step) || w.twice(b, to.step) {
		return
	}
	if a == b {
		w.fault(to.step.Place, w.graph.Ports[a].Name()+" would be joined to itself", "write another unit: `"+to.step.Item.ID+"/+`")
		return
	}
	j := &Joint{Number: len(w.graph.Joints) + 1, A: a, B: b, Run: run, Mark: to.step.Place}
	na, nb := &w.graph.Ports[a], &w.graph.Ports[b]
	j.Mating, j.Open, j.Known = mate(na.Port, nb.Port)
	na.Joint, nb.Joint = j, j
	w.graph.Joints = append(w.graph.Joints, j)
}

// twice reports a port that is joined already, naming both places.
func (w *walker) twice(node int, step *build.Step) bool {
	n := &w.graph.Ports[node]
	if n.Joint == nil {
		return false
	}
	at := n.Joint.Mark.Place()
	w.fault(step.Place, fmt.Sprintf("%s is joined twice: here, and in %s line %d, column %d (run %q)",
		n.Name(), at.File, at.Line, at.Column, n.Joint.Run.Name),
		fmt.Sprintf("a port takes one joint; for a further unit of the same item write `%s/+`, or a label of your own", n.Unit.Item.ID))
	return true
}
