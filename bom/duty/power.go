package duty

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/pressure/pattern"
	"handtight/pressure/process/power"
	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

// Power is what the plant takes.
type Power struct {
	Water    span.Span[quantity.Power] // into the water
	Shaft    span.Span[quantity.Power] // at the pump's shaft
	Motor    span.Span[quantity.Power] // at the motor's shaft: with the belt's loss
	Electric span.Span[quantity.Power] // at the battery, or the inverter's input; the feed pump in it
	MidMotor quantity.Power
	Volts    quantity.Voltage
	Battery  bool                        // a battery gives it
	Current  span.Span[quantity.Current] // of the piston pump's motor
	MidAmps  quantity.Current
	Feeder   span.Span[quantity.Current] // of the feed pumps
	All      span.Span[quantity.Current] // of both
	Sagged   quantity.Current            // at the sagged voltage, at the worst
	Plate    bool                        // the current is from the motor's plate
	Basis    string
	Cannot   string // an impossibility, in words

	Cable *CableUse

	Wh, Hours, Ah span.Span[float64]
	DayKnown      bool
	Sun           span.Span[float64] // share, 1 for all
	SunKnown      bool
	Torque        span.Span[quantity.Torque] // at the engine
	EngineKnown   bool
}

// CableUse is the cable of the supply.
type CableUse struct {
	Drop           span.Span[quantity.Voltage]
	Share          span.Span[quantity.Share]
	Strict, Common power.SquareMillimetre // needed for 3 % and for 10 % at the greatest current
}

var (
	brushless = pattern.New(`(?i)\bbrushless\b|\bBLDC\b|\bEC motor\b`)
	belted    = pattern.New(`(?i)\bbelt`)
	straight  = pattern.New(`(?i)\bdirect(?:ly)?[\s-]*(?:drive|driven|coupled)\b|\bcoupl`)
)

// trainsOf is what stands between battery and water, from worst to best.
func trainsOf(it *build.Item, b *build.Build) (power.Trains, string) {
	p := &it.Process
	t := power.Usual
	basis := "pump 0.83 to 0.90"
	if p.Efficiency != nil {
		t.Worst.Pump, t.Best.Pump = *p.Efficiency, *p.Efficiency
		basis = "pump " + p.Efficiency.String()
	}
	switch {
	case belted.MatchString(it.Motor), p.Pulley != nil:
		basis += ", belt 0.93 to 0.97"
	case straight.MatchString(it.Motor):
		t.Worst.Belt, t.Best.Belt = 1, 1
		basis += ", no belt"
	default:
		t.Best.Belt = 1
		basis += ", belt or none 0.93 to 1"
	}
	switch {
	case p.MotorEfficiency != nil:
		t.Worst.Motor, t.Best.Motor = *p.MotorEfficiency, *p.MotorEfficiency
		basis += ", motor " + p.MotorEfficiency.String()
	case brushless.MatchString(it.Motor):
		t.Worst.Motor, t.Best.Motor = 0.80, 0.88
		basis += ", motor without brushes 0.80 to 0.88 (memory)"
	default:
		basis += ", motor 0.75 to 0.85 (memory)"
	}
	if build.NamesMains(it.Motor) {
		t.Worst.Inverter, t.Best.Inverter = 0.85, 0.93
		if b.Power != nil && b.Power.Inverter != nil {
			t.Worst.Inverter, t.Best.Inverter = *b.Power.Inverter, *b.Power.Inverter
		}
		basis += ", inverter " + span.Between(t.Worst.Inverter, t.Best.Inverter).String()
	}
	return t, basis
}

// powerOf reckons what the plant takes; nil where its flow or its pressure is not known.
func powerOf(s *bom.System, m *Making) *Power {
	if !m.FeedKnown {
		return nil
	}
	if m.Recovery != nil {
		return feederPower(s, m)
	}
	if len(m.Pumps) != 1 || !m.in.hasPressure {
		return nil
	}
	it := m.Pumps[0].Item
	q, _, _ := PumpFlow(it, m.in.pressure.Middle())
	p := &Power{Water: span.Between(power.Hydraulic(q.Lo, m.in.pressure.Lo, 0), power.Hydraulic(q.Hi, m.in.pressure.Hi, 0))}
	middle := power.Hydraulic(q.Middle(), m.in.pressure.Middle(), 0)
	trains, basis := trainsOf(it, s.Build)
	p.Basis = basis
	best, bestMotor, bestShaft, err := power.Electric(p.Water.Lo, trains.Best)
	if err != nil {
		return nil
	}
	worst, worstMotor, worstShaft, _ := power.Electric(p.Water.Hi, trains.Worst)
	p.Electric, p.Motor, p.Shaft = span.Between(best, worst), span.Between(bestMotor, worstMotor), span.Between(bestShaft, worstShaft)
	mid := power.Train{Pump: mean(trains.Worst.Pump, trains.Best.Pump), Belt: mean(trains.Worst.Belt, trains.Best.Belt), Motor: mean(trains.Worst.Motor, trains.Best.Motor), Inverter: mean(trains.Worst.Inverter, trains.Best.Inverter)}
	midW, midMotor, _, _ := power.Electric(middle, mid)
	p.MidMotor = midMotor
	p.engine(it)
	volts, battery := it.Battery(s.Build.Duty.Supply)
	if !battery && build.NamesMains(it.Motor) && s.Build.Duty.Supply != nil && *s.Build.Duty.Supply <= build.BatteryLimit {
		volts, battery = *s.Build.Duty.Supply, true // behind an inverter
	}
	if battery {
		p.Battery, p.Volts = true, volts
		p.amps(s, m, it, midW)
	}
	p.day(s, m)
	return p
}

// Takes is the electric power of a piston pump at the duty, from the best to the worst of its
// flow, the pressure and the efficiencies; known is false where its flow or the pressure is not
// said.
func Takes(it *build.Item, b *build.Build) (watts span.Span[quantity.Power], known bool) {
	in := inputsOf(b)
	q, _, ok := PumpFlow(it, in.pressure.Middle())
	if !ok || !in.hasPressure {
		return watts, false
	}
	trains, _ := trainsOf(it, b)
	lo, _, _, err := power.Electric(power.Hydraulic(q.Lo, in.pressure.Lo, 0), trains.Best)
	hi, _, _, err2 := power.Electric(power.Hydraulic(q.Hi, in.pressure.Hi, 0), trains.Worst)
	return span.Between(lo, hi), err == nil && err2 == nil
}

func mean(a, b quantity.Share) quantity.Share { return (a + b) / 2 }

// engine is the torque that the belt asks of an engine.
func (p *Power) engine(it *build.Item) {
	if it.Process.EngineSpeed == nil {
		return
	}
	lo, err := power.Torque(p.Motor.Lo, it.Process.EngineSpeed.Hi)
	hi, err2 := power.Torque(p.Motor.Hi, it.Process.EngineSpeed.Lo)
	if err == nil && err2 == nil {
		p.Torque, p.EngineKnown = span.Between(lo, hi), true
	}
}

// amps is the current at the battery, behind the cable where it is said.
func (p *Power) amps(s *bom.System, m *Making, it *build.Item, mid quantity.Power) {
	var r power.Ohm
	ps := s.Build.Power
	if ps != nil && ps.Cable != nil && ps.CableLength != nil {
		r, _ = power.Cable{Section: power.SquareMillimetre(*ps.Cable), Length: *ps.CableLength}.Resistance()
	}
	sag := p.Volts * 11.5 / 12
	p.feeders(m)
	plate := it.Process.MotorCurrent
	switch {
	case plate != nil:
		p.Plate, p.Current, p.MidAmps, p.Sagged = true, span.Exactly(*plate), *plate, *plate
		if least := power.Hydraulic(m.Feed.Lo, m.in.pressure.Lo, 0); !power.Possible(*plate, p.Volts, least) {
			p.Cannot = fmt.Sprintf("%s at %s are %.0f W, and the water alone takes %.0f W", plate, p.Volts, float64(*plate)*float64(p.Volts), float64(least))
		}
	default:
		lo, err := power.Current(p.Electric.Lo, p.Volts, r)
		hi, err2 := power.Current(p.Electric.Hi, p.Volts, r)
		p.MidAmps, _ = power.Current(mid, p.Volts, r)
		p.Sagged, _ = power.Current(p.Electric.Hi, sag, r)
		if err != nil {
			p.Cannot = fmt.Sprintf("a cable of %s and %s there and back cannot bring %.0f W at %s at any current", ps.Cable, ps.CableLength, float64(p.Electric.Lo), p.Volts)
			lo, _ = power.Current(p.Electric.Lo, p.Volts, 0)
		}
		if err != nil || err2 != nil {
			hi, _ = power.Current(p.Electric.Hi, p.Volts, 0)
		}
		p.Current = span.Between(lo, hi)
	}
	if p.Cannot == "" && it.Process.MotorPower != nil {
		least := power.Hydraulic(m.Feed.Lo, m.in.pressure.Lo, 0)
		if *it.Process.MotorPower < least {
			p.Cannot = fmt.Sprintf("a motor of %s cannot give the water %.0f W", it.Process.MotorPower, float64(least))
		}
	}
	p.All = span.Between(p.Current.Lo+p.Feeder.Lo, p.Current.Hi+p.Feeder.Hi)
	if r > 0 {
		c := &CableUse{Drop: span.Between(quantity.Voltage(float64(r)*float64(p.Current.Lo)), quantity.Voltage(float64(r)*float64(p.Current.Hi)))}
		c.Share = span.Between(quantity.Share(c.Drop.Lo/p.Volts), quantity.Share(c.Drop.Hi/p.Volts))
		c.Strict, _ = power.Section(p.Current.Hi, *ps.CableLength, p.Volts*quantity.Voltage(power.DropStrict))
		c.Common, _ = power.Section(p.Current.Hi, *ps.CableLength, p.Volts*quantity.Voltage(power.DropAllowed))
		p.Cable = c
	}
}

// feeders is what the feed pumps take: as said, else 3 to 8 A each (memory).
func (p *Power) feeders(m *Making) {
	for _, u := range m.FeedPumps {
		if build.OtherDrive(u.Item.Motor) {
			continue
		}
		i := span.Between[quantity.Current](3, 8)
		if c := u.Item.Process.Current; c != nil {
			i = span.Exactly(*c)
		}
		p.Feeder.Lo, p.Feeder.Hi = p.Feeder.Lo+i.Lo, p.Feeder.Hi+i.Hi
	}
}

// feederPower is of a plant whose feed pump gives all the power.
func feederPower(s *bom.System, m *Making) *Power {
	if m.Recovered == nil || !m.Made || len(m.FeedPumps) == 0 {
		return nil
	}
	rec := m.Recovered
	p := &Power{Water: span.Between(min(rec.Middle.Water, rec.Easiest.Water, rec.Hardest.Water), max(rec.Middle.Water, rec.Easiest.Water, rec.Hardest.Water))}
	volts, battery := m.FeedPumps[0].Item.Battery(s.Build.Duty.Supply)
	if !battery {
		return p
	}
	p.Battery, p.Volts = true, volts
	said := m.FeedPumps[0].Item.Process.Current != nil
	p.feeders(m)
	if !said { // a small pump and its motor together: 0.3 to 0.55 of the electric power (memory)
		p.Feeder = span.Between(quantity.Current(float64(p.Water.Lo)/0.55/float64(volts)), quantity.Current(float64(p.Water.Hi)/0.30/float64(volts)))
		p.Basis = "feed pump and motor together 0.30 to 0.55 (memory): ask for its current"
	}
	p.Current, p.All, p.Plate = p.Feeder, p.Feeder, said
	p.MidAmps, p.Sagged = p.Feeder.Middle(), p.Feeder.Hi
	p.Electric = span.Between(quantity.Power(float64(p.Feeder.Lo)*float64(volts)), quantity.Power(float64(p.Feeder.Hi)*float64(volts)))
	if said && !power.Possible(p.Feeder.Hi, volts, p.Water.Lo) {
		p.Cannot = fmt.Sprintf("%s at %s are %.0f W, and the water alone takes %.0f W", p.Feeder.Hi, volts, float64(p.Feeder.Hi)*float64(volts), float64(p.Water.Lo))
	}
	p.day(s, m)
	return p
}

// day is a litre's watt hours, and the day's hours, charge and sun.
func (p *Power) day(s *bom.System, m *Making) {
	if !m.Made || !(m.All.Product.Lo > 0) {
		return
	}
	if p.Battery {
		p.Wh = span.Between(float64(p.All.Lo)*float64(p.Volts)/m.All.Product.Hi.LitresPerHour(), float64(p.All.Hi)*float64(p.Volts)/m.All.Product.Lo.LitresPerHour())
	}
	if s.Build.Duty.Litres == nil {
		return
	}
	litres := s.Build.Duty.Litres.Litres()
	p.DayKnown = true
	p.Hours = span.Between(litres/m.All.Product.Hi.LitresPerHour(), litres/m.All.Product.Lo.LitresPerHour())
	if !p.Battery {
		return
	}
	p.Ah = span.Between(p.Hours.Lo*float64(p.All.Lo), p.Hours.Hi*float64(p.All.Hi))
	ps := s.Build.Power
	if ps == nil || ps.Solar == nil {
		return
	}
	sun := span.Between(3.0, 6.0)
	if ps.Sun != nil {
		sun = span.Between(ps.Sun.Lo.Hours(), ps.Sun.Hi.Hours())
	}
	gives := span.Between(float64(*ps.Solar)*sun.Lo*0.65, float64(*ps.Solar)*sun.Hi*0.80)
	volts := float64(p.Volts)
	p.Sun, p.SunKnown = span.Between(gives.Lo/(p.Ah.Hi*volts), gives.Hi/(p.Ah.Lo*volts)), true
}
