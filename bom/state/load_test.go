package state

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/pressure/quantity"
)

// A load keeps the highest and the lowest of all states: one that gives no more pressure
// than another, and a vacuum, is not passed over.
func TestLoadcovers(t *testing.T) {
	normal, act := &State{Name: "normal"}, &State{Name: "a valve shut"}
	fails, starves := &State{Name: "a filter clogged", Failure: true}, &State{Name: "another clogged", Failure: true}
	seen := func(states ...*State) *Load {
		var l Load
		figures := map[*State][2]quantity.Pressure{normal: {2, 0}, act: {1, -1}, fails: {3, 0}, starves: {1, -1}}
		for _, st := range states {
			if high, low := figures[st][0], figures[st][1]; !l.covers(st, high, low) {
				l.take(st, high, low)
			}
		}
		return &l
	}
	for _, c := range []struct {
		why    string
		states []*State
		byLow  *State
		byFail *State
	}{
		{"an act with less pressure and a vacuum", []*State{normal, act}, act, nil},
		{"a failure with less pressure than another, and a vacuum", []*State{normal, fails, starves}, starves, fails},
		{"of two alike the first is named", []*State{normal, act, starves}, act, starves},
	} {
		l := seen(c.states...)
		require.Equal(t, quantity.Pressure(-1), l.Low, c.why)
		require.Same(t, c.byLow, l.ByLow, c.why)
		require.Equal(t, c.byFail, l.ByFail, c.why)
		require.Same(t, normal, l.ByAct, c.why)
	}
}

// The worst of a load: no bound by an act, then by a failure, then the higher figure.
func TestWorstLoad(t *testing.T) {
	act, fail := &State{Name: "act"}, &State{Name: "fail", Failure: true}
	for _, c := range []struct {
		why   string
		load  Load
		worst quantity.Pressure
		by    *State
	}{
		{"nothing pushes", Load{}, 0, nil},
		{"the act is the higher", Load{Act: 65, ByAct: act, Fail: 55, ByFail: fail}, 65, act},
		{"the failure is the higher", Load{Act: 55, ByAct: act, Fail: 65, ByFail: fail}, 65, fail},
		{"alike: the act, which is worse to answer for", Load{Act: 55, ByAct: act, Fail: 55, ByFail: fail}, 55, act},
		{"no bound by a failure", Load{Act: 55, ByAct: act, NoBoundFail: fail}, quantity.NoBound(), fail},
		{"no bound by both", Load{Act: 55, ByAct: act, NoBound: act, NoBoundFail: fail}, quantity.NoBound(), act},
	} {
		worst, by := c.load.Worst()
		require.Equal(t, c.worst, worst, c.why)
		require.Equal(t, c.by, by, c.why)
	}
}
