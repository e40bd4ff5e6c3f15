package bom

import (
	"handtight/pressure"
	"handtight/pressure/quantity"
)

// wallEstimate is what the threaded end of a pipe nipple or the like would hold by its
// wall, less the depth of the thread and the mill's tolerance. It is an estimate, and
// never clears a high-pressure segment. ok is false without a `wall`, a thread or a
// metal whose allowable stress is known.
//
// Source: ASME B31.3 304.1.2; see [pressure.WallRating].
func (i *Item) wallEstimate(port int) (pressure.Rating, bool) {
	end := i.Ports[port].End
	if i.Wall == nil || len(end.Candidates) == 0 || end.Candidates[0].Form == nil {
		return pressure.Rating{}, false
	}
	stress, ok := pressure.AllowableStress(i.Material)
	if !ok {
		return pressure.Rating{}, false
	}
	form := end.Candidates[0].Form
	net := pressure.NetWall(*i.Wall, quantity.Length(form.Height().Millimetres()))
	return pressure.WallRating(quantity.Length(form.Major.Millimetres()), net, stress.Value)
}
