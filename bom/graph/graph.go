package graph

import (
	"fmt"
	"slices"

	"handtight/bom/build"
	"handtight/catalog"
	"handtight/threads"
	"handtight/threads/evidence"
)

// Graph is the build as a graph: ports are nodes; joints and the passages inside units are
// its edges.
type Graph struct {
	Build  *build.Build
	Units  []*Unit
	Ports  []Port
	Joints []*Joint

	byName map[string]*Unit
	inside map[string][]*build.Item // by the id of what holds them
}

// Contents lists the items that stand inside another, in the order of the build.
func (g *Graph) Contents(holder *build.Item) []*build.Item { return g.inside[holder.ID] }

// Unit is one placed instance of an item.
type Unit struct {
	Item  *build.Item
	Label string
	Name  string     // "elbow/2"
	First int        // its first port in Graph.Ports
	Below bool       // some run that holds it lies below the waterline
	Mark  build.Mark // where it was first placed
}

// Port is one port of one unit.
type Port struct {
	Unit  *Unit
	Port  *build.Port
	Index int // within the unit
	Joint *Joint
	Note  *build.EndNote // what is known of this one end; nil if nothing is. Port is then the note's
}

// Name gives the port in full: "elbow/2.a".
func (n *Port) Name() string { return n.Unit.Name + "." + n.Port.Name }

// Joint is two ports joined.
type Joint struct {
	Number int // from 1, in the order of the runs; written on the tag
	A, B   int // indices into Graph.Ports
	Run    *build.Run
	Mating threads.Mating // of the worst readings
	Open   bool           // the readings of its ends differ in verdict
	Known  bool           // both ends were said and read
	Mark   build.Mark
	Note   *build.JointNote // what is known of it, where it stands; nil if nothing is
	Fit    *evidence.Fit    // what its ends may be together, where something is known of it or them; nil elsewhere
}

// Unit finds a unit by its name.
func (g *Graph) Unit(name string) (*Unit, bool) {
	u, ok := g.byName[name]
	return u, ok
}

// Node returns the node of a unit's port, by index within the unit.
func (g *Graph) Port(u *Unit, port int) *Port { return &g.Ports[u.First+port] }

// JointName gives both ports of a joint: "elbow/2.a - tee.branch".
func (g *Graph) JointName(j *Joint) string {
	return g.Ports[j.A].Name() + " - " + g.Ports[j.B].Name()
}

// Passages lists what happens between the ports of a unit.
func (u *Unit) Passages() []catalog.Passage {
	k := u.Item.Kind
	if !k.Free && len(k.Ports) == len(u.Item.Ports) {
		if k.Has(catalog.Unload) {
			return unloading(k.Passages, u.Item.Process.Relieves)
		}
		return k.Passages
	}
	var out []catalog.Passage
	for _, f := range u.Item.Free {
		out = append(out, catalog.Passage{From: f.From, To: f.To, Is: f.Is})
	}
	for _, p := range k.Passages { // of a manifold with fewer ports than its kind may have
		p.From, p.To = u.Item.PortIndex(k.Ports[p.From]), u.Item.PortIndex(k.Ports[p.To])
		if p.From >= 0 && p.To >= 0 {
			out = append(out, p)
		}
	}
	return out
}

// unloading are passages of which one unloads: as a relief where its maker says that it relieves,
// else as shut, for nothing may rest on it.
func unloading(list []catalog.Passage, relieves bool) []catalog.Passage {
	out := slices.Clone(list)
	for i := range out {
		switch {
		case out[i].Is == catalog.Unload && relieves:
			out[i].Is = catalog.Relief
		case out[i].Is == catalog.Unload:
			out[i].Is = catalog.Shut
		}
	}
	return out
}

// Boundary reports whether a port of the unit is open to sea, tank or drain: its
// kind says so and nothing is joined to it; a boat's own part always is.
func (g *Graph) Boundary(u *Unit, port int) bool {
	for _, b := range u.Item.Kind.Boundary {
		if b == port {
			return u.Item.Kind.Boats || g.Port(u, port).Joint == nil
		}
	}
	return false
}

// LeftOpen reports whether the build means a port to stand open.
func (g *Graph) LeftOpen(name string) bool {
	return slices.ContainsFunc(g.Build.LeftOpen, func(r build.PortRef) bool { return r.Unit+"."+r.Port == name })
}

// AtBoundary reports whether a port is open to sea, tank or drain by its kind.
func (g *Graph) AtBoundary(port int) bool {
	n := &g.Ports[port]
	return g.Boundary(n.Unit, n.Index)
}

// Title names a unit with its kind where the name does not say it.
func (u *Unit) Title() string {
	if u.Item.ID == u.Item.Kind.Name {
		return u.Name
	}
	return fmt.Sprintf("%s (%s)", u.Name, u.Item.Kind.Name)
}

// Plugged reports whether a port is said to be plugged by its maker.
func (g *Graph) Plugged(name string) bool {
	return slices.ContainsFunc(g.Build.Plugged, func(r build.PortRef) bool { return r.Unit+"."+r.Port == name })
}

// Begins reports whether a unit is the first of a run.
func (g *Graph) Begins(u *Unit) bool {
	for i := range u.Item.Ports {
		if j := g.Port(u, i).Joint; j != nil && g.Ports[j.A].Unit == u && j.Run.Steps[0].Item == u.Item {
			return true
		}
	}
	return false
}
