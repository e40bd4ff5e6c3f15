package trend

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"handtight/pressure/quantity"
)

// Point is a reading brought to the base's conditions. What could not be is not Read.
type Point struct {
	Date    time.Time
	Product Maybe[quantity.Flow]  // normalised
	Passage Maybe[quantity.Share] // normalised
	Loss    Maybe[quantity.Pressure]
	Filters Maybe[quantity.Pressure] // what the filters lose
	Drive   Maybe[quantity.Pressure]
}

// Change is how a figure's last readings stand to its first: as a share, or for pressures in
// bar, with the scatter of one reading about its neighbours.
type Change struct {
	Known         bool
	First, Last   float64
	By, Scatter   float64 // By is Last/First - 1 for shares, Last - First in bar for pressures
	Sure          bool    // beyond what the scatter explains
	FirstN, LastN int
}

// Answer is what a log says.
type Answer struct {
	Base    Conditions
	Points  []Point
	Raw     Change // product as it was read, a share
	Product Change // normalised, a share
	Passage Change // normalised, a share
	Loss    Change // along the vessel, bar
	Filters Change // lost by the filters, bar
	Before  Change // before the filters, bar
	Water   Change // degrees
	Since   time.Time
	Causes  []Cause // the likeliest first; empty where nothing is wrong
	Missing []string
}

// Cause is the likeliest cause, [Nothing] where nothing is wrong.
func (a *Answer) Cause() Cause {
	if len(a.Causes) == 0 {
		return Nothing
	}
	return a.Causes[0]
}

// ErrTooFew says that a log has too few readings for anything to be said.
var ErrTooFew = errors.New("a log needs at least 6 readings: the first three are the base, the last three are judged")

// enough is how many readings of a figure tell a change: see [ErrTooFew].
const enough = 6

// Look brings a log to the conditions of its first readings and tells what has changed.
// Readings are taken in the order of their dates.
//
// Errors: [ErrTooFew], two readings of one date, and a base that cannot be.
func Look(plant Plant, log []Reading) (*Answer, error) {
	log = slices.Clone(log)
	slices.SortStableFunc(log, func(a, b Reading) int { return a.Date.Compare(b.Date) })
	if len(log) < enough {
		return nil, ErrTooFew
	}
	a := &Answer{}
	a.missing(log)
	if err := a.normalise(plant, log); err != nil {
		return nil, err
	}
	a.Raw = share(column(log, func(r Reading) Maybe[quantity.Flow] { return r.Product }))
	a.Product = share(column(a.Points, func(p Point) Maybe[quantity.Flow] { return p.Product }))
	a.Passage = share(column(a.Points, func(p Point) Maybe[quantity.Share] { return p.Passage }))
	a.Loss = bars(column(a.Points, func(p Point) Maybe[quantity.Pressure] { return p.Loss }))
	a.Filters = bars(column(a.Points, func(p Point) Maybe[quantity.Pressure] { return p.Filters }))
	a.Before = bars(column(log, func(r Reading) Maybe[quantity.Pressure] { return r.BeforeFilters }))
	a.Water = change(column(log, func(r Reading) Maybe[quantity.Temperature] { return r.Water }), func(first, last float64) float64 { return last - first })
	a.name(log)
	return a, nil
}

func (a *Answer) missing(log []Reading) {
	for _, c := range []struct {
		name string
		read func(Reading) bool
	}{
		{"the product", func(r Reading) bool { return r.Product.Read }},
		{"the pressure at the vessel's inlet", func(r Reading) bool { return r.Feed.Read }},
		{"the pressure at its outlet", func(r Reading) bool { return r.Brine.Read }},
		{"the salt in the product", func(r Reading) bool { return r.Salt.Read }},
		{"the water's temperature", func(r Reading) bool { return r.Water.Read }},
		{"the pressure before the filters", func(r Reading) bool { return r.BeforeFilters.Read }},
		{"the pressure after the filters", func(r Reading) bool { return r.AfterFilters.Read }},
	} {
		count := 0
		for _, r := range log {
			if c.read(r) {
				count++
			}
		}
		switch {
		case count == 0:
			a.Missing = append(a.Missing, c.name)
		case count < enough:
			a.Missing = append(a.Missing, fmt.Sprintf("%s often enough (%d of %d times)", c.name, count, enough))
		}
	}
}

// usualRecovery is taken where the pump's flow is not known: it changes the normalised
// figures of all readings alike.
const usualRecovery quantity.Share = 0.10

func (r Reading) conditions(plant Plant) (c Conditions, ok bool) {
	if !r.Product.Read || !r.Feed.Read || !r.Water.Read {
		return c, false
	}
	c = Conditions{Pressure: r.Feed.Value, Water: r.Water.Value, Salinity: plant.Salinity, Salt: r.Salt.Value, Back: 0.2 * quantity.Bar, Recovery: usualRecovery}
	if r.Salinity.Read {
		c.Salinity = r.Salinity.Value
	}
	if r.Brine.Read {
		c.Loss = max(0, r.Feed.Value-r.Brine.Value)
	}
	if plant.Feed > 0 {
		c.Recovery = min(quantity.Share(r.Product.Value/plant.Feed), 0.6)
	}
	return c, true
}

func (a *Answer) normalise(plant Plant, log []Reading) error {
	var base *Reading
	for i := range log {
		if c, ok := log[i].conditions(plant); ok {
			if drive, err := c.Drive(); err == nil && drive > 0 {
				a.Base, base = c, &log[i]
				break
			}
		}
	}
	a.Points = make([]Point, len(log))
	for i, r := range log {
		if i > 0 && r.Date.Equal(log[i-1].Date) {
			return fmt.Errorf("two readings are of %s: keep the one taken after an hour of running", r.Date.Format(time.DateOnly))
		}
		p := &a.Points[i]
		p.Date = r.Date
		if r.BeforeFilters.Read && r.AfterFilters.Read {
			p.Filters = Known(r.BeforeFilters.Value - r.AfterFilters.Value)
		}
		if r.Feed.Read && r.Brine.Read {
			p.Loss = Known(r.Feed.Value - r.Brine.Value)
		}
		c, ok := r.conditions(plant)
		if !ok || base == nil {
			continue
		}
		if q, err := Normalise(r.Product.Value, c, a.Base); err == nil {
			p.Product = Known(q)
			drive, _ := c.Drive()
			p.Drive = Known(drive)
		}
		if r.Salt.Read && r.Product.Value > 0 {
			if sp, err := NormalisePassage(r.Product.Value, base.Product.Value, c, a.Base); err == nil {
				p.Passage = Known(sp)
			}
		}
	}
	return nil
}

func column[R any, Q ~float64](rows []R, of func(R) Maybe[Q]) []float64 {
	var out []float64
	for _, r := range rows {
		if m := of(r); m.Read && !math.IsNaN(float64(m.Value)) {
			out = append(out, float64(m.Value))
		}
	}
	return out
}

func share(v []float64) Change {
	return change(v, func(first, last float64) float64 { return last/first - 1 })
}

func bars(v []float64) Change {
	for i := range v {
		v[i] /= float64(quantity.Bar)
	}
	return change(v, func(first, last float64) float64 { return last - first })
}

// change compares the middle of the last readings with the middle of the first ones.
func change(v []float64, by func(first, last float64) float64) Change {
	if len(v) < enough {
		return Change{}
	}
	k := max(3, len(v)/6)
	c := Change{Known: true, First: median(v[:k]), Last: median(v[len(v)-k:]), FirstN: k, LastN: k}
	c.By = by(c.First, c.Last)
	// How far one reading stands from its neighbours: the middle of the steps, 0.954 of the
	// scatter of one reading if they are as the normal law has it.
	var steps []float64
	for i := 1; i < len(v); i++ {
		steps = append(steps, math.Abs(by(v[i-1], v[i])))
	}
	c.Scatter = median(steps) / 0.954
	c.Sure = math.Abs(c.By) > 2.5*c.Scatter*math.Sqrt(2/float64(k))
	return c
}

func median(v []float64) float64 {
	v = slices.Clone(v)
	slices.Sort(v)
	n := len(v)
	return (v[(n-1)/2] + v[n/2]) / 2
}
