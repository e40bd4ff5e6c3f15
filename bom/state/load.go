package state

import "handtight/pressure/quantity"

// Load is what a port, a unit or a segment sees over all states. The figures are
// the highest that have a bound; states without one are named apart.
type Load struct {
	Normal      quantity.Pressure // in the normal state
	Act         quantity.Pressure // highest by the normal course or a person's act
	ByAct       *State
	Fail        quantity.Pressure // highest by a single failure
	ByFail      *State
	NoBound     *State            // an act, or the normal course, in which nothing opens
	NoBoundFail *State            // a failure in which nothing opens
	Low         quantity.Pressure // lowest, at most 0
	ByLow       *State
}

// Worst is the highest pressure of all, infinite where a state has no bound, and
// the state that gives it; nil where nothing can push.
func (l *Load) Worst() (quantity.Pressure, *State) {
	switch {
	case l.NoBound != nil:
		return quantity.NoBound(), l.NoBound
	case l.NoBoundFail != nil:
		return quantity.NoBound(), l.NoBoundFail
	case l.ByFail != nil && l.Fail > l.Act:
		return l.Fail, l.ByFail
	}
	return l.Act, l.ByAct
}

// take adds a state's pressures to the load.
func (l *Load) take(st *State, high, low quantity.Pressure) {
	l.least(low, st)
	if st.Name == "normal" {
		l.Normal = max(l.Normal, high)
	}
	switch {
	case high.Unbounded() && st.Failure:
		first(&l.NoBoundFail, st)
	case high.Unbounded():
		first(&l.NoBound, st)
	case st.Failure:
		keepHigher(&l.Fail, &l.ByFail, high, st)
	default:
		keepHigher(&l.Act, &l.ByAct, high, st)
	}
}

// covers reports whether a state's pressures add nothing to the load. The normal state is
// the first that a junction sees, so that it is never covered.
func (l *Load) covers(st *State, high, low quantity.Pressure) bool {
	if st.Failure {
		return high <= l.Fail && low >= l.Low && l.ByFail != nil
	}
	return high <= l.Act && l.ByAct != nil && (low > l.Low || low == 0)
}

// least keeps the lower pressure. On a tie an act rules, since it is judged the harder;
// else the earlier state.
func (l *Load) least(low quantity.Pressure, st *State) {
	if low < l.Low || low < 0 && low == l.Low && l.ByLow.Failure && !st.Failure {
		l.Low, l.ByLow = low, st
	}
}

// Merge adds another load, as of a further junction of a segment.
func (l *Load) Merge(o *Load) {
	l.Normal = max(l.Normal, o.Normal)
	keepHigher(&l.Act, &l.ByAct, o.Act, o.ByAct)
	keepHigher(&l.Fail, &l.ByFail, o.Fail, o.ByFail)
	first(&l.NoBound, o.NoBound)
	first(&l.NoBoundFail, o.NoBoundFail)
	if o.ByLow != nil {
		l.least(o.Low, o.ByLow)
	}
}

func first(v **State, st *State) {
	if *v == nil {
		*v = st
	}
}

// keepHigher keeps the higher pressure; on a tie the earlier state, so that the normal
// state is named where an act adds nothing.
func keepHigher(v *quantity.Pressure, by **State, high quantity.Pressure, st *State) {
	if st != nil && (*by == nil || high > *v) {
		*v, *by = high, st
	}
}

// loads gives each junction its load over all states.
func (s *States) loads() []Load {
	out := make([]Load, s.Circuit.Junctions)
	var high, low []quantity.Pressure // by zone
	for _, st := range s.All {
		f := &st.field
		high, low = high[:0], low[:0]
		for zone := range f.Count() {
			h, l := f.Bounds(zone)
			high, low = append(high, h), append(low, l)
		}
		for i, junction := range s.Circuit.Nets[st.part] {
			zone := f.Zone(i)
			if l := &out[junction]; !l.covers(st, high[zone], low[zone]) {
				l.take(st, high[zone], low[zone])
			}
		}
	}
	return out
}

// PortLoad is the load of one port.
func (s *States) PortLoad(port int) *Load { return &s.loaded[s.Circuit.JunctionOf[port]] }
