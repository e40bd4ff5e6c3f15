package duty

import (
	"errors"
	"fmt"

	"handtight/bom/build"
	"handtight/pressure/process/membrane"
	"handtight/pressure/process/pump"
	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

// What is taken of an energy-recovery pump where nothing is said (judgement).
var (
	usualLeak     = span.Between[quantity.Share](0, 0.02)
	usualFriction = span.Between(0.2*quantity.Bar, 0.8*quantity.Bar)
)

// wasteBack is what the spent brine leaves against (judgement: a short hose overboard).
const wasteBack = 0.3 * quantity.Bar

// recovered reckons a plant whose pressure nobody sets: the membrane comes to the pressure
// at which it passes what the rod displaces.
func (m *Making) recovered() {
	it := m.Recovery.Item
	p := &it.Process
	if p.Ratio == nil {
		m.WhyNot = "the rod ratio of " + m.Recovery.Name + " is not said"
		m.Asks = append(m.Asks, m.Recovery.Name+": what share of the piston's area is the rod's? Its recovery and its pressure come of it, and nothing is reckoned without.")
		return
	}
	leak, friction := usualLeak, usualFriction
	if p.Leak != nil {
		leak = span.Exactly(*p.Leak)
	}
	leak.Hi = min(leak.Hi, *p.Ratio/2)
	if p.Friction != nil {
		friction = span.Exactly(*p.Friction)
	}
	m.Notes = append(m.Notes, Note{"rod ratio of " + m.Recovery.Name, p.Ratio.String(), true},
		Note{"leak", leak.String() + " of the swept volume", p.Leak != nil}, Note{"friction", friction.String() + " on the feed side", p.Friction != nil})
	rec := &Recovered{Device: pump.Recovery{Ratio: *p.Ratio, Leak: leak.Middle(), Friction: friction.Middle(), Waste: wasteBack}, Curve: m.feedCurve(), leak: leak, friction: friction}
	if it.Flow == nil && rec.Curve == nil {
		m.WhyNot = "the feed of " + m.Recovery.Name + " is not said"
		m.Asks = append(m.Asks, m.Recovery.Name+": what feed flow does it take, or what is the feed pump's curve? Nothing is reckoned without.")
		return
	}
	if m.in.water.Lo < 0 || m.in.water.Hi > 45 {
		m.WhyNot = "its water is below 0 C, where the correlations end and ice is near, or warmer than an element bears (45 C)"
		return
	}
	m.runs(rec)
}

// behind reckons it again with what the line loses between the feed pump and it, which shortens the feed
// pump's curve: with clean filters, and at the middle with all of them at the end of their life.
func (m *Making) behind() {
	rec := m.Recovered
	if rec == nil || rec.Curve == nil || !m.Made || !m.Lines.Solved || len(m.Lines.Inlets) != 1 {
		return
	}
	i, gives := &m.Lines.Inlets[0], rec.Curve.Pressure(rec.Middle.Feed)
	clean, dirty := gives-i.Middle, gives-i.Dirty
	rec.Device.Line = dirty
	rec.Dirty, _, rec.DirtyErr = m.running(rec, m.row, m.middleWater(), rec.Device)
	rec.Device.Line = clean
	m.runs(rec)
}

// middleWater is the sea's water at the middle of what is said.
func (m *Making) middleWater() membrane.Running {
	return membrane.Running{Temperature: m.in.water.Middle(), Salinity: m.in.salinity.Middle(), Back: m.back, Water: m.in.aged[0], Salt: m.in.aged[1]}
}

// running is how a device runs on its feed, with what the membrane then makes.
func (m *Making) running(rec *Recovered, row membrane.Row, base membrane.Running, device pump.Recovery) (r pump.Run, out membrane.Result, err error) {
	vessel := func(product, q quantity.Flow) (held, loss quantity.Pressure, err error) {
		base.Feed = q
		if held, err = row.PressureFor(product, base); err != nil {
			return 0, 0, err
		}
		base.Pressure = held
		out, err := row.Solve(base, nil)
		return held, out.Loss, err
	}
	if rec.Curve != nil {
		r, err = device.On(*rec.Curve, vessel)
	} else {
		r, err = device.At(*m.Recovery.Item.Flow, vessel)
	}
	if err != nil {
		return r, out, err
	}
	base.Feed, base.Pressure = r.High, r.Held
	out, err = row.Solve(base, nil)
	return r, out, err
}

// runs reckons the middle and both ends.
func (m *Making) runs(rec *Recovered) {
	base := m.middleWater()
	run := func(row membrane.Row, base membrane.Running, device pump.Recovery) (pump.Run, membrane.Result, error) {
		return m.running(rec, row, base, device)
	}
	m.Made, rec.LongerKnown = false, false
	middle, made, err := run(m.row, base, rec.Device)
	if err != nil {
		m.WhyNot = err.Error()
		rec.Stalls = errors.Is(err, pump.ErrStalls)
		m.Recovered = rec
		return
	}
	rec.Middle, m.Middle = middle, made
	if more, out, err := run(m.row.Longer(), base, rec.Device); err == nil {
		rec.Longer, rec.LongerKnown = out, true
		rec.LongerHeld = more.Held
	}
	hard, easy := rec.Device, rec.Device
	hard.Leak, hard.Friction, easy.Leak, easy.Friction = rec.leak.Lo, rec.friction.Hi, rec.leak.Hi, rec.friction.Lo
	cold := membrane.Running{Temperature: m.in.water.Lo, Salinity: m.in.salinity.Hi, Back: m.back, Water: m.in.waterAge.Lo, Salt: 1}
	hardest, hardMade, err := run(m.ends[0], cold, hard)
	rec.Hardest, rec.Stalls = hardest, errors.Is(err, pump.ErrStalls)
	warm := membrane.Running{Temperature: m.in.water.Hi, Salinity: m.in.salinity.Lo, Back: m.back, Salt: m.in.saltAge.Hi}
	easiest, easyMade, err2 := run(m.ends[1], warm, easy)
	warm.Water, warm.Salt = m.in.aged[0], m.in.aged[1]
	_, rec.Warmest, _ = run(m.row, warm, rec.Device)
	rec.Easiest = easiest
	if err2 != nil || err != nil && !rec.Stalls {
		m.WhyNot = fmt.Sprint(errors.Join(err, err2))
		return
	}
	if rec.Stalls {
		hardMade, rec.Hardest = made, middle
	}
	if rec.Curve != nil {
		rec.Highest, _ = rec.Device.Highest(rec.Curve.Shutoff())
	}
	m.Recovered, m.Made, m.Drives, m.FeedKnown = rec, true, true, true
	rec.Takes, m.Feed = span.Empty[quantity.Flow](), span.Empty[quantity.Flow]()
	for _, r := range []pump.Run{middle, easiest, rec.Hardest} {
		rec.Takes, m.Feed = rec.Takes.Reach(r.Feed), m.Feed.Reach(r.High)
	}
	m.Pressure = span.Between(rec.Easiest.Held, rec.Hardest.Held)
	m.mid = base
	m.mid.Feed, m.mid.Pressure = middle.High, middle.Held
	m.New, m.All = bandOf(made), bandOf(made).Join(bandOf(hardMade)).Join(bandOf(easyMade))
	if err := m.parts(); err != nil {
		m.Made, m.WhyNot = false, err.Error()
		return
	}
	for _, w := range m.ways {
		w.all = bandOf(w.middle)
		if len(m.ways) == 1 {
			w.all = m.All
		}
	}
	m.gaps()
}

// bandOf is the band of one result.
func bandOf(r membrane.Result) membrane.Band {
	return membrane.Band{
		Product: span.Exactly(r.Product), Salt: span.Exactly(r.Salt), Recovery: span.Exactly(r.Recovery), MostRecovery: span.Exactly(r.MostRecovery),
		FirstRecovery: span.Exactly(r.First.Recovery), LastRecovery: span.Exactly(r.Last.Recovery), Brine: span.Exactly(r.Brine), LeastBrine: span.Exactly(r.LeastBrine), MostFeed: span.Exactly(r.MostFeed),
		BrineSalinity: span.Exactly(r.BrineSalinity), Drive: span.Exactly(r.Drive), LastDrive: span.Exactly(r.Last.Drive), Flux: span.Exactly(r.Flux),
		Polarisation: span.Exactly(r.Polarisation), Loss: span.Exactly(r.Loss), MostLoss: span.Exactly(r.MostLoss),
	}
}

// feedCurve is the lower curve of the plant's feed pump; nil where there is none, or more than
// one, or nothing says it.
func (m *Making) feedCurve() *pump.Curve {
	if len(m.FeedPumps) != 1 {
		return nil
	}
	lower, _, ok := curves(m.FeedPumps[0].Item)
	if !ok {
		return nil
	}
	return &lower
}

// curves is the curve of a feed pump: as said, or the two ends of what its shut-off pressure
// and its open flow leave.
func curves(it *build.Item) (lower, upper pump.Curve, ok bool) {
	if len(it.Process.Curve) > 1 {
		var points []pump.Point
		for _, p := range it.Process.Curve {
			points = append(points, pump.Point(p))
		}
		c, err := pump.NewCurve(points...)
		return c, c, err == nil
	}
	if it.Shutoff == nil || it.Flow == nil || !(*it.Shutoff > 0 && *it.Flow > 0) {
		return lower, upper, false
	}
	lower, upper, err := pump.Between(*it.Shutoff, *it.Flow)
	return lower, upper, err == nil
}
