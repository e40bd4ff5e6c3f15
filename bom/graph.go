package bom

import (
	"slices"

	"handtight/catalog"
	"handtight/threads"
)

// System is the build as a graph: ports are nodes; joints and the passages
// inside units are its edges.
type System struct {
	Build    *Build
	Units    []*Unit
	Ports    []Node
	Joints   []*Joint
	Segments []*Segment
	States   []*State

	byName    map[string]*Unit
	cells     *cells
	normal    []*State // by connected part of the build; nil where nothing runs
	segmentOf []*Segment
	partUnits [][]*Unit // by connected part of the build
	waters    *Waters
	reliefs   map[*Unit]Reliefs
	loaded    []Load // by cell
	holds     holds
}

// Unit is one placed instance of an item.
type Unit struct {
	Item  *Item
	Label string
	Name  string // "elbow/2"
	First int    // its first port in System.Ports
	Below bool   // some run that holds it lies below the waterline
	Mark  Mark   // where it was first placed
}

// Node is one port of one unit.
type Node struct {
	Unit  *Unit
	Port  *Port
	Index int // within the unit
	Joint *Joint
}

// Name gives the port in full: "elbow/2.a".
func (n *Node) Name() string { return n.Unit.Name + "." + n.Port.Name }

// Joint is two ports joined.
type Joint struct {
	Number int // from 1, in the order of the runs; written on the tag
	A, B   int // indices into System.Ports
	Run    *Run
	Mating threads.Mating // of the worst readings
	Open   bool           // the readings of its ends differ in verdict
	Known  bool           // both ends were said and read
	Mark   Mark
	hold   Hold
}

// Unit finds a unit by its name.
func (s *System) Unit(name string) (*Unit, bool) {
	u, ok := s.byName[name]
	return u, ok
}

// Node returns the node of a unit's port, by index within the unit.
func (s *System) Node(u *Unit, port int) *Node { return &s.Ports[u.First+port] }

// JointName gives both ports of a joint: "elbow/2.a - tee.branch".
func (s *System) JointName(j *Joint) string {
	return s.Ports[j.A].Name() + " - " + s.Ports[j.B].Name()
}

// passages lists what happens between the ports of a unit.
func (u *Unit) passages() []catalog.Passage {
	k := u.Item.Kind
	if !k.Free && len(k.Ports) == len(u.Item.Ports) {
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

// boundary reports whether a port of the unit is open to sea, tank or drain: its
// kind says so and nothing is joined to it; a boat's own part always is.
func (s *System) boundary(u *Unit, port int) bool {
	for _, b := range u.Item.Kind.Boundary {
		if b == port {
			return u.Item.Kind.Boats || s.Node(u, port).Joint == nil
		}
	}
	return false
}

// leftOpen reports whether the build means a port to stand open.
func (s *System) leftOpen(name string) bool {
	return slices.ContainsFunc(s.Build.LeftOpen, func(r PortRef) bool { return r.Unit+"."+r.Port == name })
}

// Words gives a port's end as it was read, or as it was written where several
// readings are left; "an end not said" without either.
func (p *Port) Words() string {
	switch {
	case len(p.End.Candidates) == 1:
		return p.End.Candidates[0].String()
	case p.Text != "":
		return p.Text
	}
	return "an end not said"
}

// AtBoundary reports whether a port is open to sea, tank or drain by its kind.
func (s *System) AtBoundary(port int) bool {
	n := &s.Ports[port]
	return s.boundary(n.Unit, n.Index)
}
