package membrane

import (
	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

// Box is all the ways in which a row may be run: each figure between two ends.
type Box struct {
	Pressure    span.Span[quantity.Pressure]
	Feed        span.Span[quantity.Flow]
	Temperature span.Span[quantity.Temperature]
	Salinity    span.Span[quantity.Salinity]
	Water, Salt span.Span[float64] // factors on the permeabilities, 1 for new
	Back        quantity.Pressure
}

// Band is the ends of what a row makes over a box.
type Band struct {
	Product       span.Span[quantity.Flow]
	Salt          span.Span[MilligramPerLitre]
	Recovery      span.Span[quantity.Share]
	MostRecovery  span.Span[quantity.Share] // of any one element
	FirstRecovery span.Span[quantity.Share]
	LastRecovery  span.Span[quantity.Share]
	LeastBrine    span.Span[quantity.Flow] // of a way
	MostFeed      span.Span[quantity.Flow] // of a way
	Brine         span.Span[quantity.Flow]
	BrineSalinity span.Span[quantity.Salinity]
	Drive         span.Span[quantity.Pressure]
	LastDrive     span.Span[quantity.Pressure]
	Flux          span.Span[Permeability]
	Polarisation  span.Span[float64]
	Loss          span.Span[quantity.Pressure]
	MostLoss      span.Span[quantity.Pressure] // of any one element
	// Dry is set where at a corner the pressure makes no water at all: the salinity of the product
	// is then of the other corners.
	Dry bool
}

// Band visits the 64 corners of the box: product, salinity and recovery rise or fall
// steadily with each of its figures, so that the least and the greatest are there.
//
// Errors: those of [Row.Solve], of the first corner that has one.
func (r Row) Band(box Box) (Band, error) {
	b := emptyBand()
	var failed error
	span.Corners(6, func(c span.Corner) {
		if failed != nil || box.repeats(c) {
			return
		}
		run := box.at(c)
		out, err := r.solve(&run, nil, Slices)
		if err != nil {
			failed = err
			return
		}
		b.reach(&out)
	})
	return b, failed
}

// Bands is [Row.Band], and the band of each of the rows side by side beside it.
//
// Errors: those of [Row.Band].
func (r Row) Bands(box Box) (whole Band, each []Band, err error) {
	if len(r.Others) == 0 {
		whole, err = r.Band(box)
		return whole, []Band{whole}, err
	}
	whole = emptyBand()
	parts := make([]Result, 1+len(r.Others))
	for range parts {
		each = append(each, emptyBand())
	}
	span.Corners(6, func(c span.Corner) {
		if err != nil || box.repeats(c) {
			return
		}
		run := box.at(c)
		var out Result
		if out, err = r.parted(&run, parts, Slices); err != nil {
			return
		}
		whole.reach(&out)
		for i := range parts {
			each[i].reach(&parts[i])
		}
	})
	return whole, each, err
}

// at is the running at a corner.
func (b *Box) at(c span.Corner) Running {
	return Running{
		Pressure: span.At(c, 0, b.Pressure), Feed: span.At(c, 1, b.Feed), Temperature: span.At(c, 2, b.Temperature),
		Salinity: span.At(c, 3, b.Salinity), Water: span.At(c, 4, b.Water), Salt: span.At(c, 5, b.Salt), Back: b.Back,
	}
}

func emptyBand() Band {
	return Band{
		LeastBrine: span.Empty[quantity.Flow](), MostFeed: span.Empty[quantity.Flow](),
		Product: span.Empty[quantity.Flow](), Salt: span.Empty[MilligramPerLitre](), Recovery: span.Empty[quantity.Share](),
		MostRecovery: span.Empty[quantity.Share](), FirstRecovery: span.Empty[quantity.Share](), LastRecovery: span.Empty[quantity.Share](), Brine: span.Empty[quantity.Flow](), BrineSalinity: span.Empty[quantity.Salinity](),
		Drive: span.Empty[quantity.Pressure](), LastDrive: span.Empty[quantity.Pressure](), Flux: span.Empty[Permeability](),
		Polarisation: span.Empty[float64](), Loss: span.Empty[quantity.Pressure](), MostLoss: span.Empty[quantity.Pressure](),
	}
}

// repeats reports whether a corner is another's again, because a figure is known.
func (b *Box) repeats(c span.Corner) bool {
	known := [...]bool{b.Pressure.Known(), b.Feed.Known(), b.Temperature.Known(), b.Salinity.Known(), b.Water.Known(), b.Salt.Known()}
	for i, k := range known {
		if k && c>>i&1 == 1 {
			return true
		}
	}
	return false
}

func (b *Band) reach(out *Result) {
	b.Product = b.Product.Reach(out.Product)
	if out.Product > 0 {
		b.Salt = b.Salt.Reach(out.Salt)
	} else {
		b.Dry = true
	}
	b.Recovery, b.MostRecovery = b.Recovery.Reach(out.Recovery), b.MostRecovery.Reach(out.MostRecovery)
	b.FirstRecovery, b.LastRecovery = b.FirstRecovery.Reach(out.First.Recovery), b.LastRecovery.Reach(out.Last.Recovery)
	b.LeastBrine, b.MostFeed = b.LeastBrine.Reach(out.LeastBrine), b.MostFeed.Reach(out.MostFeed)
	b.Brine, b.BrineSalinity = b.Brine.Reach(out.Brine), b.BrineSalinity.Reach(out.BrineSalinity)
	b.Drive, b.LastDrive = b.Drive.Reach(out.Drive), b.LastDrive.Reach(out.Last.Drive)
	b.Flux, b.Polarisation = b.Flux.Reach(out.Flux), b.Polarisation.Reach(out.Polarisation)
	b.Loss, b.MostLoss = b.Loss.Reach(out.Loss), b.MostLoss.Reach(out.MostLoss)
}

// Join is the band of both: of rows that may be one or the other, such as elements
// whose sheet is not known and that are anywhere between two of their class.
func (b Band) Join(c Band) Band {
	return Band{
		LeastBrine: join(b.LeastBrine, c.LeastBrine), MostFeed: join(b.MostFeed, c.MostFeed),
		Product: join(b.Product, c.Product), Salt: join(b.Salt, c.Salt), Recovery: join(b.Recovery, c.Recovery),
		MostRecovery: join(b.MostRecovery, c.MostRecovery), FirstRecovery: join(b.FirstRecovery, c.FirstRecovery), LastRecovery: join(b.LastRecovery, c.LastRecovery),
		Brine: join(b.Brine, c.Brine), BrineSalinity: join(b.BrineSalinity, c.BrineSalinity), Drive: join(b.Drive, c.Drive),
		LastDrive: join(b.LastDrive, c.LastDrive), Flux: join(b.Flux, c.Flux), Polarisation: join(b.Polarisation, c.Polarisation),
		Loss: join(b.Loss, c.Loss), MostLoss: join(b.MostLoss, c.MostLoss), Dry: b.Dry || c.Dry,
	}
}

func join[Q ~float64](a, b span.Span[Q]) span.Span[Q] { return a.Reach(b.Lo).Reach(b.Hi) }

// Middle is the running at the middle of each figure, with both factors as given.
func (b Box) Middle(water, salt float64) Running {
	return Running{Pressure: b.Pressure.Middle(), Feed: b.Feed.Middle(), Temperature: b.Temperature.Middle(),
		Salinity: b.Salinity.Middle(), Back: b.Back, Water: water, Salt: salt}
}
