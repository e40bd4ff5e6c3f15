package trend

import "time"

// Where a change counts. Cleaning is due at a loss of 10 to 15 % of the normalised product
// or as much more loss along the vessel (manual of a small plant; page on normalisation); a
// cartridge is changed at 0.7 to 1 bar (manual of a small plant). The others are judgements.
const (
	lessProduct   = -0.10
	someLess      = -0.06
	moreSalt      = 0.15
	dirtyFilter   = 0.7  // bar
	filterRise    = 0.25 // bar
	startsToPull  = 0.2  // bar left behind the filters
	pumpTakesLess = 0.15 // bar more before the filters
	takesSomeLess = 0.06 // the same behind a feed pump whose pressure hardly falls with its flow
	coldBy        = -4.0 // degrees
	rawLess       = -0.10
)

// name tells the causes apart, the plainest evidence first.
func (a *Answer) name(log []Reading) {
	if a.filterBlocked(log) {
		a.Causes = append(a.Causes, BlockedFilter)
	}
	less := a.Product.Known && a.Product.Sure && a.Product.By <= lessProduct
	salty := a.Passage.Known && a.Passage.Sure && a.Passage.By >= moreSalt
	worn := a.pumpWorn() || less && a.takesLess()
	if worn {
		a.Causes = append(a.Causes, PumpWear)
	}
	switch {
	case worn: // what the element shows is the pump's doing
	case less && salty:
		a.Causes = append(a.Causes, Scale)
	case less:
		a.Causes = append(a.Causes, Fouling)
	case salty && !(a.Product.Known && a.Product.Sure && a.Product.By <= someLess):
		a.Causes = append(a.Causes, LeakingSeal)
	case salty:
		a.Causes = append(a.Causes, Unclear)
	}
	rawLower := a.Raw.Known && a.Raw.Sure && a.Raw.By <= rawLess
	if len(a.Causes) == 0 && rawLower && a.Water.Known && a.Water.By <= coldBy {
		a.Causes = append(a.Causes, ColdWater)
	}
	if len(a.Causes) == 0 && rawLower && !a.Product.Known {
		a.Causes = append(a.Causes, Unclear)
	}
	if len(a.Causes) > 0 {
		a.Since = a.since(log)
	}
	if len(a.Causes) == 0 && len(a.Missing) > 0 {
		a.Causes = append(a.Causes, Partly)
	}
}

func (a *Answer) filterBlocked(log []Reading) bool {
	if !a.Filters.Known || a.Filters.By < filterRise {
		return false
	}
	left := log[len(log)-1].AfterFilters
	return a.Filters.Last >= dirtyFilter || left.Read && left.Value.Bar() < startsToPull && a.Before.Known && a.Before.By < pumpTakesLess
}

// pumpWorn: a worn pump takes less, so a feed pump with a curve stands higher before the
// filters, and the filters and the vessel lose less. Without gauges at the filters only a loss
// along the vessel that is plainly less tells it.
func (a *Answer) pumpWorn() bool {
	if a.Before.Known {
		return a.Before.Sure && a.Before.By >= pumpTakesLess && !(a.Filters.Known && a.Filters.By > filterRise)
	}
	return a.Loss.Known && a.Loss.Sure && a.Loss.By < -0.2*a.Loss.First && a.Loss.First > 0
}

// takesLess reports whether the feed pump stands higher although its filters lose no more: where its
// curve is flat that is all that a worn pump shows. It is believed only beside less water,
// for which a foul element would leave the feed pump as it was.
func (a *Answer) takesLess() bool {
	if !(a.Before.Known && a.Before.Sure && a.Before.By >= takesSomeLess && a.Filters.Known) {
		return false
	}
	// Less feed also leaves saltier brine, and so more salt passing; dirt alone does not. Beside
	// it the cartridges may have gathered some.
	return a.Filters.By <= 0.02 || a.Filters.By <= 0.1 && a.Passage.Known && a.Passage.By >= 0.07
}

// since is the first reading from which on what the first cause shows by is half of its
// change or more.
func (a *Answer) since(log []Reading) time.Time {
	of := func(i int) (float64, bool) { p := a.Points[i].Product; return float64(p.Value), p.Read }
	c := a.Product
	switch a.Causes[0] {
	case BlockedFilter:
		of = func(i int) (float64, bool) { p := a.Points[i].Filters; return p.Value.Bar(), p.Read }
		c = a.Filters
	case PumpWear:
		of = func(i int) (float64, bool) { return log[i].BeforeFilters.Value.Bar(), log[i].BeforeFilters.Read }
		c = a.Before
	case LeakingSeal:
		of = func(i int) (float64, bool) { p := a.Points[i].Passage; return float64(p.Value), p.Read }
		c = a.Passage
	case ColdWater:
		of = func(i int) (float64, bool) { return float64(log[i].Water.Value), log[i].Water.Read }
		c = a.Water
	}
	found := log[len(log)-1].Date
	for i := len(log) - 1; i >= 0; i-- {
		v, ok := of(i)
		if !ok {
			continue
		}
		if (v-c.First)*(c.Last-c.First) < (c.Last-c.First)*(c.Last-c.First)/2 {
			break
		}
		found = log[i].Date
	}
	return found
}
