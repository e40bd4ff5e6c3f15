package membrane

import (
	"math"

	"handtight/pressure/process/sea"
	"handtight/pressure/quantity"
)

// element marches through one element; salt is what goes through with the product in kg/s.
func (m *march) element(u *Unit, slices int) (e Each, salt float64, err error) {
	n := float64(slices)
	area, length := float64(u.Area)/n, u.active/n
	before, pressure := m.mass/float64(m.iso.Density(m.salinity())), m.pressure
	var product, drive float64
	for range slices {
		s, err := m.slice(u, area, length)
		if err != nil {
			return Each{}, 0, err
		}
		product += s.flux * area
		salt += s.flux * area * s.through
		drive += s.drive / n
		e.Polarisation = max(e.Polarisation, s.polarisation)
	}
	e.Feed, e.Product = quantity.Flow(before), quantity.Flow(product)
	e.Brine = quantity.Flow(m.mass / float64(m.iso.Density(m.salinity())))
	e.Recovery = quantity.Share(product / before)
	e.Drive, e.Loss = quantity.Pressure(drive), quantity.Pressure(pressure-m.pressure)
	return e, salt, nil
}

// slice is one part of an element, taken at its middle.
type slice struct {
	flux, through, drive, polarisation float64 // m/s, kg/m3, Pa, -
	wall                               float64 // share of salt on the membrane
}

// slice solves for the flux at the middle of a part and takes its water and its salt from
// the stream. The middle has lost half of what the part passes.
//
// Errors: [ErrUsedUp] where the part would pass all that comes in, [ErrTooSalty] where the
// stream or the layer on the membrane leaves the correlation.
func (m *march) slice(u *Unit, area, length float64) (slice, error) {
	s := quantity.Salinity(m.salt / m.mass * 1000)
	rho, mu := float64(m.iso.Density(s)), float64(m.iso.Viscosity(s))
	k, fall := u.film(m.mass/rho, rho, mu, m.diffusivity)
	in := inlet{area: area, k: k * m.film, loss: fall * length, pressure: m.pressure - m.back, taken: area * productDensity / 2 / m.mass, density: rho}

	out := m.at(&in, 0)
	if out.drive > 0 {
		still := out.drive
		out = m.flow(&in, still)
		if still < faint {
			out = m.at(&in, out.flux*still/faint)
			out.drive = out.flux / m.a
		}
	}
	m.last = m.last.then(out.flux)
	if out.flux*in.taken >= 0.5 {
		return out, ErrUsedUp
	}
	m.mass -= out.flux * area * productDensity
	m.salt -= out.flux * area * out.through
	m.pressure -= in.fall(out.flux * in.taken)
	if out.wall > mostSalt || m.salt/m.mass > mostSalt {
		return out, ErrTooSalty
	}
	return out, nil
}

// faint is the pressure over the feed's osmotic pressure below which the flux is let go to
// nothing (judgement). By the model alone a little very salty water passes even at the osmotic
// pressure and below, and a plant makes none that is of use.
const faint = 2e5 // Pa

// mostSalt is the share of salt up to which the osmotic pressure is known.
const mostSalt = float64(sea.MostOsmotic) / 1000

// flow finds the flux that the drive gives: Newton by the secant, held between ends on
// either side. What is left over at a flux, the gap, falls all the way as the flux rises
// (the layer on the membrane grows saltier, and what passes it fresher), so there is one root;
// where even nine tenths of the stream would not do there is none, and that end is given.
func (m *march) flow(in *inlet, still float64) slice {
	low, high := 0.0, min(m.a*in.pressure, 0.9/in.taken)
	// Flux falls smoothly from part to part: it is looked for first on the parabola through
	// the last three.
	j := m.last.next()
	if !(j > low && j < high) {
		j = min(m.a*still, high) * 0.6
	}
	slope := m.slope // of the gap; the last part's is near this one's
	if slope == 0 {
		slope = -(1 + m.a*still/high)
	}
	var out, before slice
	beforeGap, width := 0.0, high
	for try := range 100 {
		out = m.at(in, j)
		gap, moved := m.a*out.drive-j, j-before.flux
		if gap > 0 {
			low = j
		} else {
			high = j
		}
		near := math.Abs(gap)
		if near <= 1e-9*j || high-low <= 1e-14*high {
			break
		}
		steady := try > 0 && math.Abs(moved) > 1e-9*j
		if steady && math.Abs(moved) > 1e-7*j && (gap-beforeGap)/moved < -1 {
			slope = (gap - beforeGap) / moved
		}
		next := j - gap/slope
		if steady && near <= 1e-7*j && next > low && next < high {
			// The last step along the secant needs no look: what is left is a share of the share.
			out.through += (out.through - before.through) / moved * (next - j)
			out.flux = next
			break
		}
		if !(next > low && next < high) || try%8 == 7 && high-low > width/4 {
			next = (low + high) / 2 // also where the steps do not bring the ends together
		}
		if try%8 == 7 {
			width = high - low
		}
		before, beforeGap, j = out, gap, next
	}
	m.slope = slope
	return out
}

// fluxes are the last three, the newest first, and how many there are.
type fluxes struct {
	of    [3]float64
	known int
}

func (f fluxes) then(j float64) fluxes {
	return fluxes{[3]float64{j, f.of[0], f.of[1]}, min(f.known+1, 3)}
}

// next is where the next one is looked for; nothing where there was none.
func (f *fluxes) next() float64 {
	a, b, c := f.of[0], f.of[1], f.of[2]
	switch f.known {
	case 3:
		return 3*(a-b) + c
	case 2:
		return 2*a - b
	}
	return a
}

// inlet is what a part's water finds where it comes in. Its middle carries less by
// what half of the part passes: the film and the loss follow the flow by their powers.
type inlet struct {
	area, k, loss, pressure float64
	taken                   float64 // share of the stream that half a part takes, for a flux of 1 m/s
	density                 float64 // kg/m3
}

// fall is the loss for a share x taken off the stream: (1 - x)^1.7 in three terms.
func (in *inlet) fall(x float64) float64 { return in.loss * (1 - 1.7*x + 0.595*x*x) }

// film is the coefficient for a share x taken off: (1 - x)^0.875 in three terms.
func (in *inlet) film(x float64) float64 { return in.k * (1 - 0.875*x - 0.0546875*x*x) }

// at is a part's middle for a flux. The salt that passes by then is a share of what is at
// the middle, and is taken off it in closed form.
func (m *march) at(in *inlet, j float64) slice {
	x := j * in.taken
	mass := m.mass * (1 - x)
	out := slice{flux: j, polarisation: 1, wall: m.salt / mass}
	if j > 0 {
		out.polarisation = (j + m.b) / (j*math.Exp(-j/in.film(x)) + m.b)
		passes := m.b * out.polarisation / (j + m.b)
		// The density of the middle differs from the inlet's by little: asked once more, it stands.
		salt := m.salt / (mass + j*in.area*passes*in.density/2)
		rho := float64(m.iso.Density(quantity.Salinity(salt * 1000)))
		salt = m.salt / (mass + j*in.area*passes*rho/2)
		out.wall = salt * out.polarisation
		out.through = passes * rho * salt
	}
	out.drive = in.pressure - in.fall(x)/2 - m.osmotic(out.wall) + m.osmotic(out.through/productDensity)
	return out
}

// osmotic is the osmotic pressure in Pa of a share of salt. Beyond the correlation, which
// has a pole at pure salt, it goes on along its tangent: no answer rests on that, but the
// search for one passes there.
func (m *march) osmotic(share float64) float64 {
	if share <= mostSalt {
		return float64(m.iso.OsmoticPressure(quantity.Salinity(share * 1000)))
	}
	const step = 1e-4
	most := float64(m.iso.OsmoticPressure(sea.MostOsmotic))
	return most + (share-mostSalt)/step*(most-float64(m.iso.OsmoticPressure(sea.MostOsmotic-1000*step)))
}
