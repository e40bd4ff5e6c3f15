package duty

import (
	"errors"
	"fmt"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/graph"
	"handtight/pressure/pattern"
	"handtight/pressure/process/power"
	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

// Power is what the plant takes.
type Power struct {
	Water    span.Span[quantity.Power] // into the water
	Shaft    span.Span[quantity.Power] // at the pump's shaft
	Motor    span.Span[quantity.Power] // at the motors' shafts: with the belts' loss
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
	Drain    string // what the current is of where a battery drives no piston pump, in words
	Why      string // why no current is known, in words
	Cannot   string // an impossibility, in words
	Pumps    []PumpPower

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
	if len(m.Pumps) == 0 || !m.in.hasPressure {
		return nil
	}
	p := &Power{}
	for _, u := range m.Pumps {
		one, ok := drivenBy(s, m, u)
		if !ok {
			return nil
		}
		p.Pumps = append(p.Pumps, one)
		p.Water, p.Shaft, p.Motor, p.Electric = plus(p.Water, one.Water), plus(p.Shaft, one.Shaft), plus(p.Motor, one.Motor), plus(p.Electric, one.Electric)
		p.MidMotor += one.MidMotor
		p.basis(one.basis)
		p.engine(&one)
	}
	p.feeders(m)
	p.amps(s, m)
	p.day(s, m)
	return p
}

// plus is the sum of two figures that are known between ends.
func plus[Q ~float64](a, b span.Span[Q]) span.Span[Q] { return span.Between(a.Lo+b.Lo, a.Hi+b.Hi) }

// basis adds what a figure rests on, once.
func (p *Power) basis(text string) {
	switch {
	case p.Basis == "":
		p.Basis = text
	case !strings.Contains(p.Basis, text):
		p.Basis += "; " + text
	}
}

// PumpPower is what one piston pump takes.
type PumpPower struct {
	Unit                   *graph.Unit
	Water                  span.Span[quantity.Power] // into the water
	Shaft, Motor, Electric span.Span[quantity.Power] // see [Power]
	MidMotor, mid          quantity.Power            // at the middle, at the motor's shaft and at the battery
	Volts                  quantity.Voltage
	Battery                bool
	Torque                 span.Span[quantity.Torque] // at the engine, where its speeds are said
	basis                  string
}

// drivenBy reckons a pump from the best to the worst of its flow, its pressure and its efficiencies;
// false where these are no efficiencies.
func drivenBy(s *bom.System, m *Making, u *graph.Unit) (p PumpPower, ok bool) {
	it := u.Item
	q, _, _ := PumpFlow(it, m.in.pressure.Middle())
	inlet := m.inlet(u)
	trains, basis := trainsOf(it, s.Build)
	mid := power.Train{Pump: mean(trains.Worst.Pump, trains.Best.Pump), Belt: mean(trains.Worst.Belt, trains.Best.Belt), Motor: mean(trains.Worst.Motor, trains.Best.Motor), Inverter: mean(trains.Worst.Inverter, trains.Best.Inverter)}
	best, err := drive(q.Lo, m.in.pressure.Lo, inlet.Hi, trains.Best)
	worst, err2 := drive(q.Hi, m.in.pressure.Hi, inlet.Lo, trains.Worst)
	middle, err3 := drive(q.Middle(), m.in.pressure.Middle(), inlet.Middle(), mid)
	if errors.Join(err, err2, err3) != nil {
		return p, false
	}
	if at := it.Process.EngineSpeed; at != nil {
		// Each flow goes with its own speed: idle with the least, cruising with the greatest.
		idle, err := drive(q.Lo, m.in.pressure.Hi, inlet.Lo, trains.Worst)
		fast, err2 := drive(q.Hi, m.in.pressure.Lo, inlet.Hi, trains.Best)
		if errors.Join(err, err2) != nil {
			return p, false
		}
		p.Torque = span.Empty[quantity.Torque]()
		for _, end := range []struct {
			watts quantity.Power
			turns quantity.Speed
		}{{best.motor, at.Lo}, {idle.motor, at.Lo}, {fast.motor, at.Hi}, {worst.motor, at.Hi}} {
			t, err := power.Torque(end.watts, end.turns)
			if err != nil {
				return p, false
			}
			p.Torque = p.Torque.Reach(t)
		}
	}
	if best.boosted {
		basis += fmt.Sprintf(", its inlet's pressure of up to %.1f bar taken off", inlet.Hi.Bar())
	}
	p.Unit, p.basis = u, basis
	p.Water, p.Shaft, p.Motor = span.Between(best.water, worst.water), span.Between(best.shaft, worst.shaft), span.Between(best.motor, worst.motor)
	p.Electric, p.MidMotor, p.mid = span.Between(best.battery, worst.battery), middle.motor, middle.battery
	p.Volts, p.Battery = it.Battery(s.Build.Duty.Supply)
	if !p.Battery && build.NamesMains(it.Motor) && s.Build.Duty.Supply != nil && *s.Build.Duty.Supply <= build.BatteryLimit {
		p.Volts, p.Battery = *s.Build.Duty.Supply, true // behind an inverter
	}
	return p, true
}

// inlet is the pressure before a piston pump that its feed pump gives; nothing where it is not
// reckoned, or where it draws for itself.
func (m *Making) inlet(u *graph.Unit) span.Span[quantity.Pressure] {
	if m.Lines != nil && m.Lines.Solved {
		for i := range m.Lines.Inlets {
			if x := &m.Lines.Inlets[i]; x.Pump == u && x.HasFeed && x.FeedKnown {
				return span.Between(max(x.Pressure.Lo, 0), max(x.Pressure.Hi, 0))
			}
		}
	}
	return span.Span[quantity.Pressure]{}
}

// driven is a pump's power at one flow, pressure and train.
type driven struct {
	water, shaft, motor, battery quantity.Power
	boosted                      bool // the inlet's pressure is taken off
}

// drive takes the inlet's pressure off where it is more than a twentieth: see [power.Boosted].
func drive(q quantity.Flow, p, inlet quantity.Pressure, t power.Train) (d driven, err error) {
	d.water = power.Hydraulic(q, p, 0)
	asked := d.water
	if inlet > p/20 {
		d.boosted = true
		d.water = power.Hydraulic(q, p, inlet)
		shaft, err := power.Boosted(q, p, inlet, t.Pump)
		if err != nil {
			return d, err
		}
		asked = quantity.Power(float64(shaft) * float64(t.Pump))
	}
	d.battery, d.motor, d.shaft, err = power.Electric(asked, t)
	return d, err
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

// engine is the torque that a belt asks of an engine.
func (p *Power) engine(one *PumpPower) {
	if one.Unit.Item.Process.EngineSpeed != nil {
		p.Torque, p.EngineKnown = plus(p.Torque, one.Torque), true
	}
}

// amps is the current at the battery, behind the cable where it is said: of the piston pumps that it
// drives, and of what else the plant takes from it.
func (p *Power) amps(s *bom.System, m *Making) {
	asks, mid, drives := p.asked()
	if p.Why != "" {
		return
	}
	if !drives {
		p.others(s, m)
		return
	}
	ps := s.Build.Power
	var r power.Ohm
	if ps != nil && ps.Cable != nil && ps.CableLength != nil {
		r, _ = power.Cable{Section: power.SquareMillimetre(*ps.Cable), Length: *ps.CableLength}.Resistance()
	}
	if p.Plate {
		at := func(w quantity.Power) quantity.Current { return quantity.Current(float64(w) / float64(p.Volts)) }
		p.Current, p.MidAmps, p.Sagged = span.Between(at(asks.Lo), at(asks.Hi)), at(mid), at(asks.Hi)
	} else {
		p.behindCable(asks, mid, r, ps)
	}
	p.All = plus(p.Current, p.Feeder)
	if r > 0 {
		c := &CableUse{Drop: span.Between(quantity.Voltage(float64(r)*float64(p.Current.Lo)), quantity.Voltage(float64(r)*float64(p.Current.Hi)))}
		c.Share = span.Between(quantity.Share(c.Drop.Lo/p.Volts), quantity.Share(c.Drop.Hi/p.Volts))
		c.Strict, _ = power.Section(p.Current.Hi, *ps.CableLength, p.Volts*quantity.Voltage(power.DropStrict))
		c.Common, _ = power.Section(p.Current.Hi, *ps.CableLength, p.Volts*quantity.Voltage(power.DropAllowed))
		p.Cable = c
	}
}

// asked adds up what the piston pumps ask of the battery, by their plates where they have one; drives is
// false where it drives none of them. Two voltages are not added up, and [Power.Why] says so.
func (p *Power) asked() (asks span.Span[quantity.Power], mid quantity.Power, drives bool) {
	p.Plate = true
	for i := range p.Pumps {
		one := &p.Pumps[i]
		if !one.Battery {
			continue
		}
		if drives && one.Volts != p.Volts {
			p.Battery, p.Plate, p.Why = false, false, fmt.Sprintf("its pumps take %s and %s, and are not added up", p.Volts, one.Volts)
			return asks, mid, false
		}
		drives = true
		p.Battery, p.Volts = true, one.Volts
		own, it := one.Electric, &one.Unit.Item.Process
		if c := it.MotorCurrent; c != nil {
			w := quantity.Power(float64(*c) * float64(one.Volts))
			own, one.mid = span.Exactly(w), w
			if !power.Possible(*c, one.Volts, one.Water.Lo) {
				p.Cannot = fmt.Sprintf("%s at %s are %.0f W, and the water alone takes %.0f W", c, one.Volts, float64(w), float64(one.Water.Lo))
			}
		} else {
			p.Plate = false
		}
		if has := it.MotorPower; p.Cannot == "" && has != nil && *has < one.Water.Lo {
			p.Cannot = fmt.Sprintf("a motor of %s cannot give the water %.0f W", has, float64(one.Water.Lo))
		}
		asks, mid = plus(asks, own), mid+one.mid
	}
	p.Plate = p.Plate && drives
	return asks, mid, drives
}

// behindCable is the current of a power at the end of a cable; where the cable cannot bring it, that of a
// battery without one.
func (p *Power) behindCable(asks span.Span[quantity.Power], mid quantity.Power, r power.Ohm, ps *build.PowerSupply) {
	lo, err := power.Current(asks.Lo, p.Volts, r)
	hi, err2 := power.Current(asks.Hi, p.Volts, r)
	p.MidAmps, _ = power.Current(mid, p.Volts, r)
	p.Sagged, _ = power.Current(asks.Hi, sagging(p.Volts), r)
	if err != nil {
		p.Cannot = fmt.Sprintf("a cable of %s and %s there and back cannot bring %.0f W at %s at any current", ps.Cable, ps.CableLength, float64(asks.Lo), p.Volts)
		lo, _ = power.Current(asks.Lo, p.Volts, 0)
	}
	if err != nil || err2 != nil {
		hi, _ = power.Current(asks.Hi, p.Volts, 0)
	}
	p.Current = span.Between(lo, hi)
}

// sagging is a battery's voltage under load near its end: 11.5 V of 12.
func sagging(v quantity.Voltage) quantity.Voltage { return v * 11.5 / 12 }

var clutched = pattern.New(`(?i)\bclutch`)

// clutch is what the coil of a pump's clutch takes at 12 V (memory; a coil of 2.45 ohm, 4.9 A, stands in
// the service manual of a field sprayer, page "Pump Drive Electric Clutch").
var clutch = span.Between[quantity.Current](3, 5)

// others is the current of a plant whose piston pumps no battery drives: its feed pumps', and that of
// the clutches that hold its pumps to an engine.
func (p *Power) others(s *bom.System, m *Making) {
	said := true
	for _, u := range m.FeedPumps {
		v, ok := u.Item.Battery(s.Build.Duty.Supply)
		if !ok {
			continue
		}
		p.Battery, p.Volts = true, v
		said = said && u.Item.Process.Current != nil
	}
	var coils span.Span[quantity.Current]
	for _, u := range m.Pumps {
		if clutched.MatchString(u.Item.Motor) {
			coils = plus(coils, clutch)
		}
	}
	if coils.Hi > 0 && !p.Battery && s.Build.Duty.Supply != nil && *s.Build.Duty.Supply <= build.BatteryLimit {
		p.Battery, p.Volts = true, *s.Build.Duty.Supply
	}
	if !p.Battery {
		return
	}
	p.Plate = said && coils.Hi == 0
	p.Drain = "the feed pump as it is said"
	switch {
	case len(m.FeedPumps) == 0:
		p.Drain = ""
	case !said:
		p.Drain = "a feed pump of 3 to 8 A (memory)"
	}
	if coils.Hi > 0 {
		p.Drain = strings.TrimPrefix(p.Drain+", a clutch of 3 to 5 A (memory)", ", ")
	}
	p.Current, p.MidAmps = coils, coils.Middle()
	p.All = plus(p.Current, p.Feeder)
	p.Sagged = p.Current.Hi
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
