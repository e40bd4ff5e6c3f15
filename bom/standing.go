package bom

import (
	"slices"

	"handtight/catalog"
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
func (s *System) Standings() []Standing {
	w := s.waters
	flush := s.bonds(func(e *edge) bool {
		return w.rinsed[e.from] && rinses(e, false) || w.rinsed[e.to] && rinses(e, true)
	})
	normal := s.bonds(func(e *edge) bool { return e.is != catalog.Relief && !e.shutNormally() })
	flushed, runs := s.runsThrough(flush), s.runsThrough(normal)
	for p := range flushed {
		flushed[p] = flushed[p] && w.Rinsed(p)
	}
	dead := branchesOff(flushed, runs, normal)
	out := make([]Standing, len(s.Ports))
	for p := range s.Ports {
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
func branchesOff(flushed, runs []bool, bonds []bond) []bool {
	still := newSets(len(runs))
	for _, b := range bonds {
		if !runs[b.from] && !runs[b.to] {
			still.join(b.from, b.to)
		}
	}
	mouth := make([]bool, len(runs)) // of a set that leads to a flushed port
	for _, b := range bonds {
		if flushed[b.from] && !runs[b.to] {
			mouth[still.find(b.to)] = true
		}
		if flushed[b.to] && !runs[b.from] {
			mouth[still.find(b.from)] = true
		}
	}
	out := make([]bool, len(runs))
	for p := range out {
		out[p] = mouth[still.find(p)]
	}
	return out
}

// bonds links the ports by the joints, and by the passages that let water pass.
func (s *System) bonds(passes func(e *edge) bool) []bond {
	var out []bond
	for _, j := range s.Joints {
		out = append(out, bond{len(out), j.A, j.B})
	}
	for _, u := range s.Units {
		for way, p := range u.passages() {
			from, to := u.First+p.From, u.First+p.To
			if passes(&edge{unit: u, from: s.cells.of[from], to: s.cells.of[to], is: p.Is, closable: p.Closable, way: way}) {
				out = append(out, bond{len(out), from, to})
			}
		}
	}
	return out
}

// runsThrough says of each port whether water can run through it: whether there is an end
// of the pipework on both sides of every bond that holds it to the rest alone.
func (s *System) runsThrough(bonds []bond) []bool {
	w := weave(len(s.Ports), bonds)
	ends := s.pipeEnds(w)
	dead := make(sums, len(s.Ports)+1) // by place, how many bridges cut it off from every end
	mark := func(c cutOff, n float64) {
		dead[c.first] += n
		dead[c.last+1] -= n
	}
	for _, span := range w.spans {
		if ends.over(span) == 0 {
			mark(span, 1)
		}
	}
	for _, b := range bonds {
		cut, bridge := w.cuts[b.name]
		if !bridge {
			continue
		}
		whole := w.spans[w.piece[b.from]]
		if ends.over(cut) == 0 {
			mark(cut, 1)
		}
		if ends.over(whole) == ends.over(cut) {
			mark(whole, 1)
			mark(cut, -1)
		}
	}
	dead.run()
	out := make([]bool, len(s.Ports))
	for p := range out {
		out[p] = dead[w.order[p]] == 0
	}
	return out
}

// pipeEnds sums, along a walk through the ports, where water enters or leaves the
// pipework, or may: a port that is open to sea, tank or drain, and one joined to nothing.
func (s *System) pipeEnds(w *woven) sums {
	ends := make(sums, len(s.Ports)+1)
	for p := range s.Ports {
		if n := &s.Ports[p]; s.boundary(n.Unit, n.Index) || n.Joint == nil && !s.plugged(n.Name()) {
			ends[w.order[p]+1]++
		}
	}
	ends.run()
	return ends
}

// plugged reports whether a port is said to be plugged by its maker.
func (s *System) plugged(name string) bool {
	return slices.ContainsFunc(s.Build.Plugged, func(r PortRef) bool { return r.Unit+"."+r.Port == name })
}
