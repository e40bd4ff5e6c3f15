package duty

import (
	"errors"
	"fmt"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/each"
	"handtight/pressure/process/line"
	"handtight/pressure/process/membrane"
	"handtight/pressure/process/pump"
	"handtight/pressure/process/sea"
	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

// Of reckons every plant of a build.
func Of(s *bom.System) *Result {
	r := &Result{Build: s.Build}
	in := inputsOf(s.Build)
	plants := plantsOf(s)
	if len(plants) > 0 {
		r.Plants = make([]*Making, len(plants))
	}
	each.Of(len(plants), func(i int) { r.Plants[i] = reckon(s, plants[i], in) })
	return r
}

// reckon is what one plant makes and takes.
func reckon(s *bom.System, p *Plant, in inputs) *Making {
	m := &Making{Plant: p, in: in, plan: s.Build, Notes: append([]Note(nil), in.notes...), product: s.Waters.Product}
	m.name()
	m.water, _ = line.Of(min(max(in.water.Middle(), sea.Coldest), 45), in.salinity.Middle())
	m.back = usualBack + stoodUp(m)
	if m.back > usualBack {
		m.Notes = append(m.Notes, Note{"pressure on the product", fmt.Sprintf("%.2f bar: the tank's height over the pump, and 0.2 bar of hoses", m.back.Bar()), true})
	}
	m.Pressure = in.pressure // until the membrane says another
	m.feed()
	m.make()
	m.Lines = linesOf(s, m)
	if m.Recovered != nil {
		m.behind()
		m.Lines = linesOf(s, m)
	}
	m.limits()
	m.Conditions = conditionsOf(s, m)
	m.Power = powerOf(s, m)
	return m
}

func (m *Making) name() {
	var names []string
	for _, row := range m.Rows {
		for _, v := range row {
			names = append(names, v.Unit.Name)
		}
	}
	if len(names) == 0 {
		for _, u := range m.Pumps {
			names = append(names, u.Name)
		}
	}
	m.Name = strings.Join(names, ", ")
}

// PumpFlow is what a piston pump delivers against a pressure; known is false where nobody says
// what it sweeps.
func PumpFlow(it *build.Item, against quantity.Pressure) (flow span.Span[quantity.Flow], basis string, known bool) {
	p := &it.Process
	faster := Turning(it)
	ev := pump.UsualVolumetric
	if p.Volumetric != nil {
		ev = span.Exactly(*p.Volumetric)
	}
	switch {
	case it.Flow != nil && p.FlowAt != nil:
		flow = span.Empty[quantity.Flow]()
		for _, e := range []quantity.Share{ev.Lo, ev.Hi} {
			slip := quantity.Flow(float64(*it.Flow) * (1/float64(e) - 1))
			for _, f := range []float64{faster.Lo, faster.Hi} {
				flow = flow.Reach(pump.Piston{Swept: *it.Flow + slip, Slip: slip, Rated: *p.FlowAt, Faster: f}.Delivered(against))
			}
		}
		basis = fmt.Sprintf("%s at %s", it.Flow, p.FlowAt)
	case it.Flow != nil:
		share := delivered
		if p.Volumetric != nil {
			share = span.Between(float64(*p.Volumetric), 1)
		}
		flow = span.Between(quantity.Flow(float64(*it.Flow)*share.Lo*faster.Lo), quantity.Flow(float64(*it.Flow)*share.Hi*faster.Hi))
		basis = fmt.Sprintf("%s on its plate, %.2f to %.2f of it delivered", it.Flow, share.Lo, share.Hi)
	case p.Plungers != nil && p.PlungerBore != nil && p.Stroke != nil && (p.Speed != nil || p.MotorSpeed != nil):
		turns := speeds(it)
		lo, err := pump.Displacement(*p.Plungers, *p.PlungerBore, *p.Stroke, turns.Lo, ev.Lo)
		hi, err2 := pump.Displacement(*p.Plungers, *p.PlungerBore, *p.Stroke, turns.Hi, ev.Hi)
		if errors.Join(err, err2) != nil {
			return flow, "", false
		}
		return span.Between(lo, hi), fmt.Sprintf("%d plungers of %s, stroke %s", *p.Plungers, p.PlungerBore, p.Stroke), true
	default:
		return flow, "", false
	}
	if faster != span.Exactly(1.0) {
		basis += fmt.Sprintf(", turning at %s", speedText(it))
	}
	return flow, basis, true
}

// speeds is how fast a pump turns, in turns a minute: behind its pulleys where they are said,
// else at its rated speed.
func speeds(it *build.Item) span.Span[quantity.Speed] {
	p := &it.Process
	ratio := 1.0
	if p.Pulley != nil {
		ratio = p.Pulley.Motor / p.Pulley.Pump
	}
	switch {
	case p.EngineSpeed != nil:
		return span.Between(p.EngineSpeed.Lo, p.EngineSpeed.Hi).Times(ratio)
	case p.MotorSpeed != nil:
		return span.Exactly(*p.MotorSpeed).Times(ratio)
	case p.Speed != nil:
		return span.Exactly(*p.Speed)
	}
	return span.Span[quantity.Speed]{}
}

func speedText(it *build.Item) string {
	n := speeds(it)
	if n.Known() {
		return fmt.Sprintf("%.0f rpm", n.Lo)
	}
	return fmt.Sprintf("%.0f to %.0f rpm", n.Lo, n.Hi)
}

// Turning is how fast a pump turns over its rated speed; 1 where either is not said.
func Turning(it *build.Item) span.Span[float64] {
	n, p := speeds(it), &it.Process
	if p.Speed == nil || n.Hi == 0 {
		return span.Exactly(1.0)
	}
	return span.Between(float64(n.Lo / *p.Speed), float64(n.Hi / *p.Speed))
}

func (m *Making) feed() {
	against := m.in.pressure.Middle()
	m.FeedKnown = len(m.Pumps) > 0
	for _, u := range m.Pumps {
		q, basis, known := PumpFlow(u.Item, against)
		if !known {
			m.FeedKnown = false
			m.Asks = append(m.Asks, fmt.Sprintf("%s: what flow does it deliver, and at what pressure? Nothing about its water is reckoned without.", u.Name))
			continue
		}
		m.Feed.Lo, m.Feed.Hi = m.Feed.Lo+q.Lo, m.Feed.Hi+q.Hi
		m.Notes = append(m.Notes, Note{"flow of " + u.Name, basis, true})
	}
}

// make reckons the membrane: the rows from the graph, the middle, and the two bands.
func (m *Making) make() {
	if len(m.Rows) == 0 {
		m.WhyNot = "no pressure vessel"
		return
	}
	if !m.rows() {
		return
	}
	if m.Recovery != nil {
		m.recovered()
		return
	}
	switch {
	case !m.FeedKnown:
		m.WhyNot = "the pump's flow is not said"
		return
	case !m.in.hasPressure:
		m.WhyNot = "the duty's pressure is not said"
		return
	}
	m.Pressure = m.in.pressure
	m.Box = membrane.Box{Pressure: m.in.pressure, Feed: m.Feed, Temperature: m.in.water, Salinity: m.in.salinity,
		Water: m.in.waterAge, Salt: m.in.saltAge, Back: m.back}
	m.bands()
}

// bands reckons the middle of what is said, what the tolerance of elements of one age leaves, and all
// that can be.
func (m *Making) bands() {
	if m.in.water.Lo < 0 || m.in.water.Hi > 45 {
		m.WhyNot = "its water is below 0 C, where the correlations end and ice is near, or warmer than an element bears (45 C)"
		return
	}
	m.mid = m.Box.Middle(m.in.aged[0], m.in.aged[1])
	var err error
	if m.Middle, err = m.row.Solve(m.mid, nil); err != nil {
		m.WhyNot = err.Error()
		return
	}
	if m.All, err = m.band(m.Box); err == nil {
		err = m.parts()
	}
	if err != nil {
		m.WhyNot = err.Error()
		return
	}
	fresh := m.Box
	fresh.Pressure, fresh.Feed = span.Exactly(m.Box.Pressure.Middle()), span.Exactly(m.Box.Feed.Middle())
	fresh.Temperature, fresh.Salinity = span.Exactly(m.Box.Temperature.Middle()), span.Exactly(m.Box.Salinity.Middle())
	fresh.Water, fresh.Salt = span.Exactly(m.in.aged[0]), span.Exactly(m.in.aged[1])
	if m.New, err = m.band(fresh); err != nil {
		m.WhyNot = err.Error()
		return
	}
	m.Made = true
	m.gaps()
}

// band is over both ends of the elements' class or tolerance. Of the box of "all" each of the ways
// gets its own.
func (m *Making) band(box membrane.Box) (membrane.Band, error) {
	one, own, err := m.ends[0].Bands(box)
	if err != nil {
		return one, err
	}
	two, others, err := m.ends[1].Bands(box)
	if err != nil {
		return two, err
	}
	if box == m.Box {
		for i, w := range m.ways {
			w.all = own[i].Join(others[i])
		}
	}
	return one.Join(two), nil
}

// gaps is what is left of the pressure over the osmotic one, with no water passing.
func (m *Making) gaps() {
	at := func(p quantity.Pressure, t quantity.Temperature, s quantity.Salinity) quantity.Pressure {
		pi, err := sea.OsmoticPressure(t, s)
		if err != nil {
			return 0
		}
		return p - m.back - pi
	}
	m.BestGap = at(m.Pressure.Hi, m.in.water.Lo, m.in.salinity.Lo)
	m.MidGap = at(m.Pressure.Middle(), m.in.water.Middle(), m.in.salinity.Middle())
	m.Drives = m.MidGap > 0
}
