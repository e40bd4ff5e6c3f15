package state

import (
	"handtight/bom/circuit"
	"handtight/catalog"
	"handtight/pressure/network"
	"handtight/pressure/quantity"
)

// HighPressure is the boundary between low and high pressure: our own
// (a judgement), above what a house system or a feed pump gives and below what any
// membrane needs.
const HighPressure = 10 * quantity.Bar

// Driven reports whether a pump, of whatever kind, or the duty brings a port above
// [HighPressure]: in normal running, or with every relief failed and nothing else amiss.
// What the hand sets a throttle to is then no bound, so that neither a duty that is written
// too low nor a relief that is set so, or is missing, makes low pressure of it.
func (s *States) Driven(port int) bool { return s.driven[s.Circuit.JunctionOf[port]] }

func (s *States) drive() {
	s.driven = make([]bool, s.Circuit.Junctions)
	for net, st := range s.normal {
		if st == nil {
			continue
		}
		n := s.Circuit.Network(net, &circuit.Condition{NoReliefs: true})
		n.Duty = quantity.NoBound()
		failed := network.Solve(n, true)
		for i, junction := range s.Circuit.Nets[net] {
			s.driven[junction] = max(st.field.High(i), failed.High(i)) > HighPressure
		}
	}
	if duty := s.Graph.Build.Duty.Pressure; duty == nil || *duty <= HighPressure {
		return
	}
	for i := range s.Circuit.Links {
		if e := &s.Circuit.Links[i]; e.Is == catalog.Membrane {
			s.driven[e.From] = true
		}
	}
}
