package pump

import (
	"errors"
	"fmt"

	"handtight/pressure/process/power"
	"handtight/pressure/quantity"
)

// Recovery is an energy-recovery pump: the feed pushes a piston, the brine comes back on
// its rod side and pushes with it. What the rod displaces cannot come back, and becomes
// product: the recovery is the rod's, whatever the membrane.
type Recovery struct {
	Ratio    quantity.Share    // rod area over piston area
	Leak     quantity.Share    // of the swept volume
	Friction quantity.Pressure // on the feed side
	Waste    quantity.Pressure // against which the spent brine leaves
	Line     quantity.Pressure // lost between the feed pump and it; a head that it stands below takes away from it
}

// Vessel is what stands on the high side: the pressure at which a product passes at a
// feed, and the loss from its inlet to its outlet there.
type Vessel func(product, feed quantity.Flow) (held, loss quantity.Pressure, err error)

// Point of running of an energy-recovery pump.
type Run struct {
	Feed    quantity.Flow     // taken from the feed pump
	High    quantity.Flow     // sent to the membrane
	Product quantity.Flow     // what the membrane must pass
	Held    quantity.Pressure // the high side
	Inlet   quantity.Pressure // needed on the feed side
	Water   quantity.Power    // put in by the feed
}

func (r Recovery) check() error {
	switch {
	case !(r.Ratio > 0 && r.Ratio < 1):
		return fmt.Errorf("an energy-recovery pump has a rod area between 0 and 100 %% of its piston's; found %s", r.Ratio)
	case !(r.Leak >= 0 && r.Leak < r.Ratio):
		return fmt.Errorf("a leak of %s leaves no product of a rod of %s", r.Leak, r.Ratio)
	case !(r.Friction >= 0 && r.Waste >= 0):
		return errors.New("friction and the waste's pressure are not below zero")
	}
	return nil
}

// At is how the pump runs at a feed:
//
//	high = feed (1 - leak), product = feed (ratio - leak)
//	inlet = ratio held + (1 - ratio) (waste + loss) + friction
//
// Errors: a ratio or a leak that cannot be, and those of the vessel.
// Source: the balance of force and volume on the piston (derived; judgement). What the feed
// puts in is what the product takes, and losses: a test holds it to that.
func (r Recovery) At(feed quantity.Flow, vessel Vessel) (Run, error) {
	if err := r.check(); err != nil {
		return Run{}, err
	}
	if !(feed > 0) {
		return Run{}, errors.New("an energy-recovery pump needs a feed")
	}
	run := Run{Feed: feed, High: quantity.Flow(float64(feed) * float64(1-r.Leak)), Product: quantity.Flow(float64(feed) * float64(r.Ratio-r.Leak))}
	held, loss, err := vessel(run.Product, run.High)
	if err != nil {
		return Run{}, err
	}
	run.Held = held
	share := quantity.Pressure(r.Ratio)
	run.Inlet = share*held + (1-share)*(r.Waste+loss) + r.Friction
	run.Water = power.Hydraulic(feed, run.Inlet, 0)
	return run, nil
}

// ErrStalls says that a feed pump cannot push what the membrane asks for.
var ErrStalls = errors.New("the feed pump stalls: the membrane asks for more than its pressure times the piston gives")

// On finds where the pump runs on a feed pump's curve: more feed asks for more pressure, and
// the curve gives less. The greatest feed that the curve still pushes is taken.
//
// Errors: [ErrStalls], and those of [Recovery.At].
func (r Recovery) On(curve Curve, vessel Vessel) (Run, error) {
	short := func(q quantity.Flow) (bool, Run, error) {
		run, err := r.At(q, vessel)
		return err != nil || run.Inlet+r.Line > curve.Pressure(q), run, err
	}
	// A feed is looked for at which it runs at all: at a trickle no membrane passes its share.
	var best Run
	var failed error
	low, high := quantity.Flow(0), curve.Open()
	for _, share := range []float64{0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1} {
		q := curve.Open() * quantity.Flow(share)
		bad, run, err := short(q)
		failed = errors.Join(failed, err)
		if !bad {
			low, best = q, run
		} else if low > 0 {
			high = q
			break
		}
	}
	if low == 0 {
		return Run{}, errors.Join(ErrStalls, failed)
	}
	for range 40 {
		middle := (low + high) / 2
		if bad, run, _ := short(middle); bad {
			high = middle
		} else {
			low, best = middle, run
		}
	}
	return best, nil
}

// Highest is what the high side can come to when the membrane passes nothing: the feed's
// shut-off over the ratio. A relief on the feed side guards it at its own set over the ratio.
//
// Errors: a ratio that cannot be.
func (r Recovery) Highest(shutoff quantity.Pressure) (quantity.Pressure, error) {
	if err := r.check(); err != nil {
		return 0, err
	}
	return shutoff / quantity.Pressure(r.Ratio), nil
}
