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
	var out []Fact
	add := func(name, words, unit string, lo, hi float64, from ...string) {
		if !math.IsNaN(lo+hi) && !math.IsInf(lo, 0) && !math.IsInf(hi, 0) {
			out = append(out, Fact{name, words, lo, hi, unit, from})
		}
	}
	var rests []string
	for _, n := range m.Notes {
		rests = append(rests, n.What+": "+n.Took)
	}
	if m.FeedKnown {
		add("feed_flow", "water into the vessels", "L/min", m.Feed.Lo.LitresPerMinute(), m.Feed.Hi.LitresPerMinute())
	}
	if m.Made {
		a := m.All
		if m.Recovered != nil {
			add("feed_taken", "water that its pump takes, its leak in it", "L/min", m.Recovered.Takes.Lo.LitresPerMinute(), m.Recovered.Takes.Hi.LitresPerMinute())
			add("held_pressure", "pressure that the membrane comes to", "bar", m.Pressure.Lo.Bar(), m.Pressure.Hi.Bar(), rests...)
			add("feed_pressure", "pressure needed of the feed pump", "bar", m.Recovered.Easiest.Inlet.Bar(), m.Recovered.Hardest.Inlet.Bar())
		}
		add("product", "fresh water", "L/h", a.Product.Lo.LitresPerHour(), a.Product.Hi.LitresPerHour(), rests...)
		if a.Salt.Hi >= a.Salt.Lo {
			add("product_salinity", "salt in it", "mg/L", float64(a.Salt.Lo), float64(a.Salt.Hi), rests...)
		}
		add("recovery", "share of the feed that becomes fresh water", "%", a.Recovery.Lo.Percent(), a.Recovery.Hi.Percent())
		add("recovery_first", "share taken by the first element", "%", a.FirstRecovery.Lo.Percent(), a.FirstRecovery.Hi.Percent())
		add("recovery_last", "share taken by the last element", "%", a.LastRecovery.Lo.Percent(), a.LastRecovery.Hi.Percent())
		add("brine", "brine", "L/min", a.Brine.Lo.LitresPerMinute(), a.Brine.Hi.LitresPerMinute())
		add("brine_salinity", "salt in the brine", "g/kg", float64(a.BrineSalinity.Lo), float64(a.BrineSalinity.Hi))
		add("ndp", "net driving pressure", "bar", a.Drive.Lo.Bar(), a.Drive.Hi.Bar())
		add("flux", "flux", "L/m2/h", a.Flux.Lo.LitresPerSquareMetreHour(), a.Flux.Hi.LitresPerSquareMetreHour())
		add("polarisation", "salt at the membrane over the salt in the stream, at most", "", a.Polarisation.Lo, a.Polarisation.Hi)
		add("vessel_drop", "loss along the vessels", "bar", a.Loss.Lo.Bar(), a.Loss.Hi.Bar())
	}
	if m.Lines != nil && m.Lines.Solved {
		for _, i := range m.Lines.Inlets {
			if i.HasFeed && !i.FeedKnown {
				continue
			}
			add("inlet_pressure", "pressure before "+i.Pump.Name+", filters clean", "bar", i.Pressure.Lo.Bar(), i.Pressure.Hi.Bar())
			if m.Recovered != nil { // its flow gives way to a filter that fills: see dirtyText
				continue
			}
			if i.OneKnown {
				add("inlet_one_dirty", "pressure before "+i.Pump.Name+", one filter or another at the end of its life", "bar", i.OneDirty.Lo.Bar(), i.OneDirty.Hi.Bar())
			}
			if len(i.Filters) > 0 {
				add("inlet_dirty", "pressure before "+i.Pump.Name+", filters at the end of their life", "bar", i.Dirty.Bar(), i.Dirty.Bar())
			}
			if i.NPSHKnown {
				add("npsh_margin", "head at its inlet over what it needs", "m", (i.NPSH.Lo - i.Needs.Hi).Metres(), (i.NPSH.Hi - i.Needs.Lo).Metres())
			}
		}
	}
	minute := func(name, words string, q quantity.Flow) {
		add(name, words, "L/min", q.LitresPerMinute(), q.LitresPerMinute())
	}
	if c := m.Condition("product to drain"); c != nil {
		minute("drain_flow", "fresh water to the drain, with the selector turned, at the middle", c.Product)
	}
	if c := m.Condition("flush"); c != nil && len(m.Rows) > 0 {
		minute("flush_flow", "fresh water through a vessel in the flush", c.Vessel)
	}
	if c := m.Condition("flush with the pump running"); c != nil && len(m.Rows) > 0 {
		minute("flush_running_flow", "through a vessel in a flush with the pump running", c.Vessel)
		minute("flush_running_house", "of it the house gives", c.House)
		minute("flush_running_sea", "and what is drawn from the sea or a tank beside it", c.Sea)
	}
	if p := m.Power; p != nil {
		add("water_power", "power into the water", "W", float64(p.Water.Lo), float64(p.Water.Hi))
		if p.Motor.Hi > 0 {
			add("motor_power", "power at the motor's shaft", "W", float64(p.Motor.Lo), float64(p.Motor.Hi), p.Basis)
		}
		if p.Battery {
			add("current", fmt.Sprintf("current at %s, feed pump included", p.Volts), "A", float64(p.All.Lo), float64(p.All.Hi), p.Basis)
			if p.Wh.Hi > 0 {
				add("watt_hours_per_litre", "energy for a litre", "Wh/L", p.Wh.Lo, p.Wh.Hi)
			}
		}
		if p.DayKnown {
			add("hours", "hours for the day's water", "h", p.Hours.Lo, p.Hours.Hi)
			if p.Battery {
				add("amp_hours", "charge for it", "Ah", p.Ah.Lo, p.Ah.Hi)
			}
			if p.SunKnown {
				add("sun_share", "share that the sun carries", "%", 100*p.Sun.Lo, 100*p.Sun.Hi)
			}
		}
		if p.EngineKnown {
			add("torque", "torque that it takes of the engine", "N m", float64(p.Torque.Lo), float64(p.Torque.Hi))
		}
	}
	return out
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
