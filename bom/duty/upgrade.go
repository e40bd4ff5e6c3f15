package duty

import (
	"handtight/pressure/process/line"
	"handtight/pressure/process/membrane"
	"handtight/pressure/process/power"
	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

// Upgrade is what one element more in each row asks for.
type Upgrade struct {
	Least, Most  quantity.Flow // feed: by 15 % an element and the generous brine; by 10 % and the strict one
	LeastKnown   bool
	MostKnown    bool
	AtNow        membrane.Result // with the pump as it is
	Makes        span.Span[quantity.Flow]
	Power        span.Span[quantity.Power]
	Current      span.Span[quantity.Current]
	HasCurrent   bool
	Bore         quantity.Length // of the suction hose at 0.9 m/s
	FirstAtNow   quantity.Share
	SaltAtNow    membrane.MilligramPerLitre
	SaltWith     span.Span[membrane.MilligramPerLitre]
	EnoughAsItIs bool // the pump as it is does
}

// Upgrade reckons a further element like the last at the duty's middle; ok is false where the
// membrane is not reckoned, or nobody sets its pressure.
func (m *Making) Upgrade() (u Upgrade, ok bool) {
	if !m.Made || m.Recovered != nil || !m.Drives {
		return u, false
	}
	return m.asks(m.row.Longer())
}

// Needs reckons what the elements as they are ask for; ok as of [Making.Upgrade].
func (m *Making) Needs() (u Upgrade, ok bool) {
	if !m.Made || m.Recovered != nil || !m.Drives {
		return u, false
	}
	return m.asks(m.row)
}

func (m *Making) asks(row membrane.Row) (u Upgrade, ok bool) {
	now, err := row.Solve(m.mid, nil)
	if err != nil {
		return u, false
	}
	u.AtNow, u.FirstAtNow, u.SaltAtNow = now, now.MostRecovery, now.Salt
	brine := span.Span[quantity.Flow]{}
	for _, w := range m.ways { // the hardest to please
		brine = span.Between(max(brine.Lo, w.last().class.MinBrine.Lo), max(brine.Hi, w.last().class.MinBrine.Hi))
	}
	if brine.Hi == 0 {
		brine = span.Between(3.33*quantity.LitrePerMinute, 5*quantity.LitrePerMinute)
	}
	least, err := row.FeedFor(0.15, brine.Lo, m.mid)
	u.LeastKnown = err == nil
	most, err := row.FeedFor(0.10, brine.Hi, m.mid)
	u.MostKnown = err == nil
	if !u.LeastKnown {
		return u, false
	}
	u.Least, u.Most = least, most
	ends := []quantity.Flow{least}
	if u.MostKnown {
		ends = append(ends, most)
	}
	u.Makes, u.SaltWith = span.Empty[quantity.Flow](), span.Empty[membrane.MilligramPerLitre]()
	for _, q := range ends {
		run := m.mid
		run.Feed = q
		if out, err := row.Solve(run, nil); err == nil {
			u.Makes, u.SaltWith = u.Makes.Reach(out.Product), u.SaltWith.Reach(out.Salt)
		}
	}
	u.EnoughAsItIs = m.mid.Feed >= least
	trains := power.Usual
	if len(m.Pumps) == 1 {
		trains, _ = trainsOf(m.Pumps[0].Item, m.plan)
	}
	w := power.Hydraulic(least, m.mid.Pressure, 0)
	if u.Power, err = power.Range(w, trains); err != nil {
		return u, false
	}
	if m.Power != nil && m.Power.Battery && m.Power.Drain == "" {
		u.HasCurrent = true
		u.Current = span.Between(quantity.Current(float64(u.Power.Lo)/float64(m.Power.Volts)), quantity.Current(float64(u.Power.Hi)/float64(m.Power.Volts)))
	}
	// A suction hose that keeps to 0.9 m/s.
	for bore := quantity.Length(6); ; bore++ {
		if (line.Bore{Diameter: bore}).Speed(least) <= 0.9 || bore > 200 {
			u.Bore = bore
			break
		}
	}
	return u, true
}
