package membrane

import (
	"errors"
	"math"

	"handtight/pressure/quantity"
)

// ErrUnparted says that no way was found in which the feed parts between unlike rows.
var ErrUnparted = errors.New("how the feed parts between the unlike rows is not found")

// one is row i of those side by side: the row itself, then its others.
func (r *Row) one(i int) Row {
	if i > 0 {
		return r.Others[i-1]
	}
	return Row{Units: r.Units, Parallel: r.Parallel}
}

// Parts is how a feed parts between a row and its [Row.Others], and what each then makes.
//
// Errors: those of [Row.Solve], of the row that has one.
func (r Row) Parts(run Running) ([]Result, error) {
	out := make([]Result, 1+len(r.Others))
	_, err := r.parted(&run, out, Slices)
	return out, err
}

// parted finds the flows at which all rows lose the same between the inlet and the outlet that
// they share, and adds up what they make. A row's loss grows with nearly the same power of its
// flow in all of them, so each pass brings the losses together by a factor of about ten.
func (r *Row) parted(run *Running, parts []Result, slices int) (Result, error) {
	n := 1 + len(r.Others)
	share := make([]float64, n)
	sum := 0.0
	for i := range share {
		row := r.one(i)
		share[i] = row.opens()
		sum += share[i]
	}
	const power = 1.7 // of a row's loss in its flow
	for range 100 {
		var out Result
		var area, drive, flux float64
		least, most := math.Inf(1), 0.0
		losses := make([]float64, n)
		for i := range share {
			share[i] /= sum
			own, row := *run, r.one(i)
			own.Feed = quantity.Flow(share[i]) * run.Feed
			got, err := row.solve(&own, nil, slices)
			if err != nil {
				return Result{}, err
			}
			if parts != nil {
				parts[i] = got
			}
			losses[i] = float64(got.Loss)
			least, most = min(least, losses[i]), max(most, losses[i])
			out.add(&got, i == 0)
			a := row.area()
			area += a
			drive += float64(got.Drive) * a
			flux += float64(got.Flux) * a
		}
		if !(least > 0) || math.IsInf(most, 0) {
			return Result{}, ErrUnparted
		}
		if most-least <= 1e-9*most {
			out.Drive, out.Flux = quantity.Pressure(drive/area), Permeability(flux/area)
			out.Recovery = quantity.Share(out.Product / run.Feed)
			out.BrineSalinity = quantity.Salinity(out.SaltOut / out.MassOut * 1000)
			if out.Product > 0 {
				out.Salt = MilligramPerLitre((out.SaltIn - out.SaltOut) / float64(out.Product) * 1000)
			}
			return out, nil
		}
		sum = 0
		for i := range share {
			share[i] *= math.Pow(math.Sqrt(least*most)/losses[i], 1/power)
			sum += share[i]
		}
	}
	return Result{}, ErrUnparted
}

// add puts what a further row makes to the sum; of the single elements the hardest pressed stay.
func (out *Result) add(row *Result, first bool) {
	if first {
		*out = *row
		return
	}
	out.Product += row.Product
	out.Brine += row.Brine
	out.MassIn, out.MassOut, out.SaltIn, out.SaltOut = out.MassIn+row.MassIn, out.MassOut+row.MassOut, out.SaltIn+row.SaltIn, out.SaltOut+row.SaltOut
	out.Polarisation = max(out.Polarisation, row.Polarisation)
	out.Loss, out.MostLoss, out.MostRecovery = max(out.Loss, row.Loss), max(out.MostLoss, row.MostLoss), max(out.MostRecovery, row.MostRecovery)
	out.LeastBrine, out.MostFeed = min(out.LeastBrine, row.LeastBrine), max(out.MostFeed, row.MostFeed)
	if row.First.Recovery > out.First.Recovery {
		out.First = row.First
	}
	if row.Last.Drive < out.Last.Drive {
		out.Last = row.Last
	}
}

// opens is how readily a row lets water through beside others: its flow for a loss, to a factor
// that all share, by friction that goes with the 1.7th power of the speed.
func (r *Row) opens() float64 {
	resists := 0.0
	for i := range r.Units {
		u := &r.Units[i]
		resists += u.active * math.Pow(u.section, -1.7) * math.Pow(u.hydraulic, -1.3)
	}
	if !(resists > 0) {
		return 0
	}
	return float64(max(r.Parallel, 1)) * math.Pow(resists, -1/1.7)
}

// area is the membrane of all ways of a row.
func (r *Row) area() (sum float64) {
	for i := range r.Units {
		sum += float64(r.Units[i].Area)
	}
	return sum * float64(max(r.Parallel, 1))
}

// Longer is the row, and each beside it, with one element more like its last.
func (r Row) Longer() Row {
	grow := func(u []Unit) []Unit { return append(append([]Unit(nil), u...), u[len(u)-1]) }
	out := Row{Units: grow(r.Units), Parallel: r.Parallel}
	for _, o := range r.Others {
		out.Others = append(out.Others, Row{Units: grow(o.Units), Parallel: o.Parallel})
	}
	return out
}
