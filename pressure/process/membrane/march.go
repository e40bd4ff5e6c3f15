package membrane

import (
	"math"

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
}

// slice solves for the flux at the middle of a part and takes its water and its salt from
// the stream. The middle has lost half of what the part passes.
func (m *march) slice(u *Unit, area, length float64) (slice, error) {
	s := quantity.Salinity(m.salt / m.mass * 1000)
	rho, mu := float64(m.iso.Density(s)), float64(m.iso.Viscosity(s))
	k, fall := u.film(m.mass/rho, rho, mu, m.diffusivity)
	in := inlet{area: area, k: k * m.film, loss: fall * length, pressure: m.pressure - m.back, taken: area * productDensity / 2 / m.mass}
	at := func(j, through float64) slice { return m.at(&in, j, through) }

	still := at(0, 0)
	out := still
	if still.drive > 0 {
		out = m.flow(at, still, area)
	} else {
		out.flux, out.through = 0, 0
	}
	m.last = m.last.then(point{out.flux, out.through})
	m.mass -= out.flux * area * productDensity
	m.salt -= out.flux * area * out.through
	m.pressure -= in.fall(out.flux * in.taken)
	if m.mass <= 0 || m.salt/m.mass > 0.120 {
		return out, ErrTooSalty
	}
	return out, nil
}

// flow finds where the flux that the drive gives is the flux itself: Newton by the secant,
// held between ends that are known to lie on either side.
func (m *march) flow(at func(j, through float64) slice, still slice, area float64) slice {
	low, high := 0.0, min(m.a*still.drive, 1.8*m.mass/(area*productDensity))
	// Flux and salt fall smoothly from part to part: they are looked for first on the parabola
	// through the last three.
	guess := m.last.next()
	j, through := guess.flux, guess.through
	if !(j > low && j < high) {
		j, through = high*0.6, 0
	}
	slope := m.slope // of the gap; the last part's is near this one's
	if slope == 0 {
		slope = -(1 + m.a*still.drive/high)
	}
	before, beforeGap := 0.0, 0.0
	out := still
	for try := range 60 {
		out = at(j, through)
		gap, moved := m.a*out.drive-j, math.Abs(out.through-through)
		old := through
		through = out.through
		// What goes through with it is a step behind, so an end is no closer than that leaves it.
		if gap > 0 {
			low = j * (1 - 1e-6)
		} else {
			high = j * (1 + 1e-6)
		}
		if near := math.Abs(gap); near <= 1e-9*j && moved <= 1e-7*through || high-low <= 1e-14*high {
			break
		} else if try > 0 && near <= 3e-8*j && moved <= 1e-6*through && math.Abs(j-before) > 1e-9*j {
			// The last step along the secant needs no look: what is left is a share of the share.
			step := -gap / slope
			out.through += (through - old) / (j - before) * step
			j += step
			break
		}
		if try > 0 && math.Abs(j-before) > 1e-7*j && (gap-beforeGap)/(j-before) < -1 {
			slope = (gap - beforeGap) / (j - before)
		}
		next := j - gap/slope
		if !(next > low && next < high) {
			next = (low + high) / 2
		}
		before, beforeGap, j = j, gap, next
	}
	m.slope = slope
	out.flux = j
	return out
}

// point is a part's flux in m/s and what goes through with it in kg/m3.
type point struct{ flux, through float64 }

// points are the last three, the newest first, and how many there are.
type points struct {
	of    [3]point
	known int
}

func (p points) then(q point) points {
	return points{[3]point{q, p.of[0], p.of[1]}, min(p.known+1, 3)}
}

// next is where the next one is looked for; nothing where there was none.
func (p *points) next() point {
	a, b, c := p.of[0], p.of[1], p.of[2]
	switch p.known {
	case 3:
		return point{3*(a.flux-b.flux) + c.flux, 3*(a.through-b.through) + c.through}
	case 2:
		return point{2*a.flux - b.flux, 2*a.through - b.through}
	}
	return a
}

// inlet is what a part's water finds where it comes in. Its middle carries less by
// what half of the part passes: the film and the loss follow the flow by their powers.
type inlet struct {
	area, k, loss, pressure float64
	taken                   float64 // share of the stream that half a part takes, for a flux of 1 m/s
}

// fall is the loss for a share x taken off the stream: (1 - x)^1.7 in three terms.
func (in *inlet) fall(x float64) float64 { return in.loss * (1 - 1.7*x + 0.595*x*x) }

// film is the coefficient for a share x taken off: (1 - x)^0.875 in three terms.
func (in *inlet) film(x float64) float64 { return in.k * (1 - 0.875*x - 0.0546875*x*x) }

// at is a part's middle for a flux, given what was last found to go through.
func (m *march) at(in *inlet, j, through float64) slice {
	x := j * in.taken
	mass := m.mass * (1 - x)
	salt := (m.salt - j*in.area*through/2) / mass
	out := slice{flux: j, polarisation: 1}
	wall := salt
	if j > 0 {
		e := math.Exp(j / in.film(x))
		out.polarisation = e * (j + m.b) / (j + m.b*e)
		wall = salt * out.polarisation
		out.through = m.b * wall * float64(m.iso.Density(quantity.Salinity(salt*1000))) / (j + m.b)
	}
	out.drive = in.pressure - in.fall(x)/2 - float64(m.iso.OsmoticPressure(quantity.Salinity(wall*1000))) + float64(m.iso.OsmoticPressure(quantity.Salinity(out.through)))
	return out
}
