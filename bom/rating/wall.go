package rating

import (
	"handtight/bom/build"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

// wallEstimate is what the threaded end of a pipe nipple or the like would hold by its
// wall, less the depth of the thread and the mill's tolerance. It is an estimate, and
// never clears a high-pressure segment. ok is false without a `wall`, a thread or a
// metal whose allowable stress is known.
//
// Source: ASME B31.3 304.1.2; see [pressure.WallRating].
func wallEstimate(i *build.Item, port int) (pressure.Rating, bool) {
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

// tubeRating is what rigid tube holds, by its outside, wall and metal: by the table of
// tube in inches, else by an estimate of its wall, which never clears a high-pressure
// segment. ok is false where one of the three is not said, and for what is no metal.
//
// Source: [pressure.TubeRating]; ASME B31.3 304.1.2, see [pressure.WallRating].
func tubeRating(i *build.Item) (pressure.Rating, bool) {
	if i.Outside == nil || i.Wall == nil {
		return pressure.Rating{}, false
	}
	if len(i.Made) == 0 || !i.Made[0].Metal() {
		return pressure.Rating{}, false
	}
	if r, ok := pressure.TubeRating(i.Material, *i.Outside, *i.Wall); ok {
		return r, true
	}
	stress, ok := pressure.AllowableStress(i.Material)
	if !ok {
		return pressure.Rating{}, false
	}
	return pressure.WallRating(*i.Outside, pressure.NetWall(*i.Wall, 0), stress.Value)
}
