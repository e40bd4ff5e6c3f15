package duty

import (
	"fmt"
	"math"

	"handtight/pressure/process/membrane"
	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

// Facts lists every figure of a plant with its ends, in the order of the water.
func (m *Making) Facts() []Fact {
	var f figures
	if m.FeedKnown {
		put(&f, "feed_flow", "water into the vessels", "L/min", m.Feed, quantity.Flow.LitresPerMinute)
	}
	f.made(m)
	if m.Lines != nil && m.Lines.Solved {
		for i := range m.Lines.Inlets {
			f.inlet(&m.Lines.Inlets[i], m.Recovered != nil)
		}
	}
	f.conditions(m)
	if m.Power != nil {
		f.power(m.Power)
	}
	return f
}

// figures are facts as they are gathered.
type figures []Fact

// put adds a figure in the unit that `in` gives; one that is not finite is left out.
func put[Q ~float64](f *figures, name, words, unit string, s span.Span[Q], in func(Q) float64, from ...string) {
	if lo, hi := in(s.Lo), in(s.Hi); !math.IsNaN(lo+hi) && !math.IsInf(lo, 0) && !math.IsInf(hi, 0) {
		*f = append(*f, Fact{name, words, lo, hi, unit, from})
	}
}

// bare is a figure in the unit that its type holds.
func bare[Q ~float64](q Q) float64 { return float64(q) }

// made is what the membrane makes, and what it takes for that.
func (f *figures) made(m *Making) {
	if !m.Made {
		return
	}
	var rests []string
	for _, n := range m.Notes {
		rests = append(rests, n.What+": "+n.Took)
	}
	if r := m.Recovered; r != nil {
		put(f, "feed_taken", "water that its pump takes, its leak in it", "L/min", r.Takes, quantity.Flow.LitresPerMinute)
		put(f, "held_pressure", "pressure that the membrane comes to", "bar", m.Pressure, quantity.Pressure.Bar, rests...)
		put(f, "feed_pressure", "pressure needed of the feed pump", "bar", span.Span[quantity.Pressure]{Lo: r.Easiest.Inlet, Hi: r.Hardest.Inlet}, quantity.Pressure.Bar)
	}
	a := &m.All
	put(f, "product", "fresh water", "L/h", a.Product, quantity.Flow.LitresPerHour, rests...)
	if a.Salt.Hi >= a.Salt.Lo {
		put(f, "product_salinity", "salt in it", "mg/L", a.Salt, bare, rests...)
	}
	put(f, "recovery", "share of the feed that becomes fresh water", "%", a.Recovery, quantity.Share.Percent)
	put(f, "recovery_first", "share taken by the first element", "%", a.FirstRecovery, quantity.Share.Percent)
	put(f, "recovery_last", "share taken by the last element", "%", a.LastRecovery, quantity.Share.Percent)
	put(f, "brine", "brine", "L/min", a.Brine, quantity.Flow.LitresPerMinute)
	put(f, "brine_salinity", "salt in the brine", "g/kg", a.BrineSalinity, bare)
	put(f, "ndp", "net driving pressure", "bar", a.Drive, quantity.Pressure.Bar)
	put(f, "flux", "flux", "L/m2/h", a.Flux, membrane.Permeability.LitresPerSquareMetreHour)
	put(f, "polarisation", "salt at the membrane over the salt in the stream, at most", "", a.Polarisation, bare)
	put(f, "vessel_drop", "loss along the vessels", "bar", a.Loss, quantity.Pressure.Bar)
}

// inlet is what stands before a pump. The flow of one that its own brine drives gives way to a filter
// that fills: see dirtyText.
func (f *figures) inlet(i *Inlet, recovered bool) {
	if i.HasFeed && !i.FeedKnown {
		return
	}
	before := "pressure before " + i.Pump.Name + ", "
	put(f, "inlet_pressure", before+"filters clean", "bar", i.Pressure, quantity.Pressure.Bar)
	if recovered {
		return
	}
	if i.OneKnown {
		put(f, "inlet_one_dirty", before+"one filter or another at the end of its life", "bar", i.OneDirty, quantity.Pressure.Bar)
	}
	if len(i.Filters) > 0 {
		put(f, "inlet_dirty", before+"filters at the end of their life", "bar", span.Exactly(i.Dirty), quantity.Pressure.Bar)
	}
	if i.NPSHKnown {
		margin := span.Span[quantity.Length]{Lo: i.NPSH.Lo - i.Needs.Hi, Hi: i.NPSH.Hi - i.Needs.Lo}
		put(f, "npsh_margin", "head at its inlet over what it needs", "m", margin, quantity.Length.Metres)
	}
}

// conditions are the flows at the middle while it is rinsed or flushed.
func (f *figures) conditions(m *Making) {
	minute := func(name, words string, q quantity.Flow) {
		put(f, name, words, "L/min", span.Exactly(q), quantity.Flow.LitresPerMinute)
	}
	if c := m.Condition("product to drain"); c != nil {
		minute("drain_flow", "fresh water to the drain, with the selector turned, at the middle", c.Product)
	}
	if len(m.Rows) == 0 {
		return
	}
	if c := m.Condition("flush"); c != nil {
		minute("flush_flow", "fresh water through a vessel in the flush", c.Vessel)
	}
	if c := m.Condition("flush with the pump running"); c != nil {
		minute("flush_running_flow", "through a vessel in a flush with the pump running", c.Vessel)
		minute("flush_running_house", "of it the house gives", c.House)
		minute("flush_running_sea", "and what is drawn from the sea or a tank beside it", c.Sea)
	}
}

// power is what drives it, and for how long.
func (f *figures) power(p *Power) {
	put(f, "water_power", "power into the water", "W", p.Water, bare)
	if p.Motor.Hi > 0 {
		put(f, "motor_power", "power at the motor's shaft", "W", p.Motor, bare, p.Basis)
	}
	if p.Battery {
		put(f, "current", fmt.Sprintf("current at %s, feed pump included", p.Volts), "A", p.All, bare, p.Basis)
		if p.Wh.Hi > 0 {
			put(f, "watt_hours_per_litre", "energy for a litre", "Wh/L", p.Wh, bare)
		}
	}
	if p.DayKnown {
		put(f, "hours", "hours for the day's water", "h", p.Hours, bare)
		if p.Battery {
			put(f, "amp_hours", "charge for it", "Ah", p.Ah, bare)
		}
		if p.SunKnown {
			put(f, "sun_share", "share that the sun carries", "%", p.Sun, func(share float64) float64 { return 100 * share })
		}
	}
	if p.EngineKnown {
		put(f, "torque", "torque that it takes of the engine", "N m", p.Torque, bare)
	}
}

// FilmSpread is what the film coefficient's own uncertainty of -25 to +50 % moves the product
// by, at the middle: calibration and march alike.
func (m *Making) FilmSpread() (low, high float64, ok bool) {
	if !m.Made || !(m.Middle.Product > 0) {
		return 0, 0, false
	}
	s := span.Exactly(0.0)
	for _, film := range []float64{0.75, 1.5} {
		row, ok := m.withFilm(film)
		if !ok {
			return 0, 0, false
		}
		run := m.mid
		run.Film = film
		out, err := row.Solve(run, nil)
		if err != nil {
			return 0, 0, false
		}
		s = s.Reach(float64(out.Product/m.Middle.Product) - 1)
	}
	return s.Lo, s.Hi, true
}

// withFilm is the plant's rows calibrated with another film coefficient.
func (m *Making) withFilm(film float64) (out membrane.Row, ok bool) {
	for i, w := range m.ways {
		row := membrane.Row{Parallel: len(w.vessels)}
		for _, e := range w.elements {
			u, err := e.withFilm(film)
			if err != nil {
				return out, false
			}
			row.Units = append(row.Units, u)
		}
		if i == 0 {
			out = row
		} else {
			out.Others = append(out.Others, row)
		}
	}
	return out, true
}

// Point is one point of a curve: a band at a pressure or a temperature.
type Point struct {
	At       float64 // bar or C
	Made     bool
	Product  span.Span[float64] // L/h
	Salt     span.Span[float64] // mg/L
	Recovery span.Span[float64] // %
	Middle   float64            // L/h
}

// curves are the product against the pressure, from 40 bar to the element's limit, and
// against the water's temperature, 2 to 32 C. None where the membrane is not reckoned, or
// the pressure is not set by hand.
func (m *Making) Curves() (pressure, temperature []Point) {
	if !m.Made || m.Recovered != nil {
		return nil, nil
	}
	top := 69.0
	if l, ok := m.Limit("element_pressure"); ok {
		top = l.Limit
	}
	const points = 25
	for i := range points {
		p := quantity.Pressure(40+(max(top, 41)-40)*float64(i)/(points-1)) * quantity.Bar
		box, mid := m.Box, m.mid
		box.Pressure, mid.Pressure = span.About(p, byHand), p
		pressure = append(pressure, m.point(p.Bar(), box, mid))
	}
	for c := quantity.Temperature(2); c <= 32; c += 2 {
		box, mid := m.Box, m.mid
		box.Temperature, mid.Temperature = span.Exactly(c), c
		temperature = append(temperature, m.point(float64(c), box, mid))
	}
	return pressure, temperature
}

func (m *Making) point(at float64, box membrane.Box, mid membrane.Running) Point {
	p := Point{At: at}
	band, err := m.band(box)
	out, err2 := m.row.Solve(mid, nil)
	if err != nil || err2 != nil {
		return p
	}
	p.Made, p.Middle = true, out.Product.LitresPerHour()
	p.Product = span.Between(band.Product.Lo.LitresPerHour(), band.Product.Hi.LitresPerHour())
	if band.Salt.Hi >= band.Salt.Lo {
		p.Salt = span.Between(float64(band.Salt.Lo), float64(band.Salt.Hi))
	}
	p.Recovery = span.Between(band.Recovery.Lo.Percent(), band.Recovery.Hi.Percent())
	return p
}
