package running

import (
	"handtight/bom/circuit"
	"handtight/catalog"
	"handtight/pressure/network/connected"
)

// Standing says what becomes of the sea water at a port between uses. The zero value is
// of a port that no sea water wets.
type Standing uint8

// What becomes of it, from best.
const (
	Flushed Standing = iota + 1 // the fresh-water flush runs through and takes it away
	DeadEnd                     // no water ever runs through, and the flush runs past its mouth: a gauge, a plug
	Stands                      // the flush does not run through: it is left standing there
)

// Standings says of each port, by its number, what becomes of the sea water there.
//
// Water runs through a port that lies between two ends of the pipework: cut off by one
// joint or passage, and without an end of its own, a branch is dead. The flush ends at the
// house supply and wherever it comes out; pumps and check valves hold it off what lies
// behind them. In normal running every sea, tank and drain is an end. So is a port that is
// joined to nothing and is not said to be plugged: what comes there is not known.
func (s *Running) Standings() []Standing {
	w := s.Waters
	flush := s.edgesOf(func(e *circuit.Link) bool {
		return w.Rinses(e)
	})
	normal := s.edgesOf(func(e *circuit.Link) bool { return e.Is != catalog.Relief && !e.ShutNormally() })
	flushed, runs := s.runsThrough(flush), s.runsThrough(normal)
	for p := range flushed {
		flushed[p] = flushed[p] && w.Rinsed(p)
	}
	dead := branchesOff(flushed, runs, normal)
	out := make([]Standing, len(s.Graph.Ports))
	for p := range s.Graph.Ports {
		switch {
		case !w.Sea(p):
		case flushed[p]:
			out[p] = Flushed
		case dead[p]:
			out[p] = DeadEnd
		default:
			out[p] = Stands
		}
	}
	return out
}

// branchesOff marks the ports through which nothing runs, and that hang on a flushed one
// by such ports alone.
func branchesOff(flushed, runs []bool, edges []connected.Edge) []bool {
	still := connected.NewSets(len(runs))
	for _, b := range edges {
		if !runs[b.From] && !runs[b.To] {
			still.Join(b.From, b.To)
		}
	}
	mouth := make([]bool, len(runs)) // of a set that leads to a flushed port
	for _, b := range edges {
		if flushed[b.From] && !runs[b.To] {
			mouth[still.Find(b.To)] = true
		}
		if flushed[b.To] && !runs[b.From] {
			mouth[still.Find(b.From)] = true
		}
	}
	out := make([]bool, len(runs))
	for p := range out {
		out[p] = mouth[still.Find(p)]
	}
	return out
}

// edgesOf links the ports by the joints, and by the passages that let water pass.
func (s *Running) edgesOf(passes func(e *circuit.Link) bool) []connected.Edge {
	out := make([]connected.Edge, 0, len(s.Graph.Joints)+len(s.Graph.Units))
	for _, j := range s.Graph.Joints {
		out = append(out, connected.Edge{From: j.A, To: j.B})
	}
	var link circuit.Link
	for _, u := range s.Graph.Units {
		for position, p := range u.Passages() {
			from, to := u.First+p.From, u.First+p.To
			link = circuit.Link{Unit: u, From: s.Circuit.JunctionOf[from], To: s.Circuit.JunctionOf[to], Is: p.Is, Closable: p.Closable, Position: position}
			if passes(&link) {
				out = append(out, connected.Edge{From: from, To: to})
			}
		}
	}
	return out
}

// RunsThrough says of each port whether water can run through it by the links that let it
// pass.
func (s *Running) RunsThrough(passes func(e *circuit.Link) bool) []bool {
	return s.runsThrough(s.edgesOf(passes))
}

// runsThrough says of each port whether water can run through it: whether there is an end
// of the pipework on both sides of every bridge that holds it to the rest alone.
func (s *Running) runsThrough(edges []connected.Edge) []bool {
	w := connected.Search(len(s.Graph.Ports), edges)
	ends := s.pipeEnds(w)
	dead := make(sums, len(s.Graph.Ports)+1) // by place, how many bridges cut it off from every end
	mark := func(c connected.Span, n float64) {
		dead[c.First] += n
		dead[c.Last+1] -= n
	}
	for _, span := range w.Spans {
		if ends.over(span) == 0 {
			mark(span, 1)
		}
	}
	for i, b := range edges {
		cut, bridge := w.Bridge(i)
		if !bridge {
			continue
		}
		whole := w.Spans[w.Piece[b.From]]
		if ends.over(cut) == 0 {
			mark(cut, 1)
		}
		if ends.over(whole) == ends.over(cut) {
			mark(whole, 1)
			mark(cut, -1)
		}
	}
	dead.run()
	out := make([]bool, len(s.Graph.Ports))
	for p := range out {
		out[p] = dead[w.Order[p]] == 0
	}
	return out
}

// pipeEnds sums, along a walk through the ports, where water enters or leaves the
// pipework, or may: a port that is open to sea, tank or drain, and one joined to nothing.
func (s *Running) pipeEnds(w *connected.Walk) sums {
	ends := make(sums, len(s.Graph.Ports)+1)
	for p := range s.Graph.Ports {
		if n := &s.Graph.Ports[p]; s.Graph.Boundary(n.Unit, n.Index) || n.Joint == nil && !s.Graph.Plugged(n.Name()) {
			ends[w.Order[p]+1]++
		}
	}
	ends.run()
	return ends
}
