package membrane

import (
	"errors"
	"fmt"

	"handtight/pressure/quantity"
)

// ErrOutOfReach says that no pressure, or no feed, gives what is asked.
var ErrOutOfReach = errors.New("out of reach")

// highest is the pressure up to which a product is looked for.
const highest = 300 * quantity.Bar

// overdrawn reports whether a row fails because too much is made of its feed: less pressure
// or more feed answers.
func overdrawn(err error) bool { return errors.Is(err, ErrTooSalty) || errors.Is(err, ErrUsedUp) }

// PressureFor finds the pressure at which a row makes a product; the run's own pressure is
// not looked at.
//
// Errors: [ErrOutOfReach] where even 300 bar does not give it, or the brine runs out of the
// correlation before; those of [Row.Solve].
func (r Row) PressureFor(product quantity.Flow, run Running) (quantity.Pressure, error) {
	if !(product > 0 && product < run.Feed) {
		return 0, fmt.Errorf("a product of %s from a feed of %s is %w", product, run.Feed, ErrOutOfReach)
	}
	makes := func(p quantity.Pressure) (quantity.Flow, error) {
		run.Pressure = p
		out, err := r.solve(&run, nil, Slices)
		return out.Product, err
	}
	low, high := quantity.Pressure(0), 20*quantity.Bar
	for {
		made, err := makes(high)
		if err != nil && !overdrawn(err) {
			return 0, err
		}
		if err != nil || made >= product {
			break
		}
		if low, high = high, high*1.5; high > highest {
			return 0, fmt.Errorf("a product of %s is %w at any pressure up to %s", product, ErrOutOfReach, highest)
		}
	}
	for range 80 {
		middle := (low + high) / 2
		if made, err := makes(middle); err != nil || made >= product {
			high = middle
		} else {
			low = middle
		}
		if high-low < 1e-9*high {
			break
		}
	}
	if made, err := makes(high); err != nil || made < product*(1-1e-6) || made > product*(1+1e-6) {
		return 0, fmt.Errorf("a product of %s is %w: the brine becomes too salty first", product, ErrOutOfReach)
	}
	return high, nil
}

// FeedFor finds the least feed at which no element of a row takes more than a share of its
// own feed, and the last one leaves a brine flow in each way; the run's own feed is not
// looked at.
//
// Errors: [ErrOutOfReach] where 1,000 L/min a way do not do, or the limits leave nothing.
func (r Row) FeedFor(recovery quantity.Share, brine quantity.Flow, run Running) (quantity.Flow, error) {
	if !(recovery > 0 && recovery < 1 && brine >= 0) {
		return 0, fmt.Errorf("a feed for a recovery of %s is %w", recovery, ErrOutOfReach)
	}
	ways := quantity.Flow(max(r.Parallel, 1))
	for _, o := range r.Others {
		ways += quantity.Flow(max(o.Parallel, 1))
	}
	holds := func(feed quantity.Flow) (bool, error) {
		run.Feed = feed
		out, err := r.solve(&run, nil, Slices)
		if overdrawn(err) {
			return false, nil
		}
		return err == nil && out.MostRecovery <= recovery && out.LeastBrine >= brine, err
	}
	low, high := quantity.Flow(0), 1000*quantity.LitrePerMinute*ways
	if ok, err := holds(high); err != nil || !ok {
		return 0, errors.Join(fmt.Errorf("a feed for a recovery of %s is %w", recovery, ErrOutOfReach), err)
	}
	for range 80 {
		middle := (low + high) / 2
		ok, err := holds(middle)
		if err != nil {
			return 0, err
		}
		if ok {
			high = middle
		} else {
			low = middle
		}
		if high-low < 1e-9*high {
			break
		}
	}
	return high, nil
}
