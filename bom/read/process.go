package read

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"handtight/bom/build"
	"handtight/bom/source"
	"handtight/catalog"
	"handtight/pressure/pattern"
	"handtight/pressure/process/pump"
	"handtight/pressure/quantity"
)

// Between what figures the engine reckons: beyond, a figure is a slip of the pen.
const (
	mostSalinity  quantity.Salinity    = 120
	coldestWater  quantity.Temperature = -2.5
	hottestWater  quantity.Temperature = 100
	mostElements                       = 100
	longestYears                       = 30
	steepestRatio quantity.Share       = 0.9
)

// dutyRanges reads what the duty says of the water, each one figure or two.
func (r *reader) dutyRanges(t *source.Table) {
	d := &r.build.Duty
	d.Salinities = ranged(t, "salinity", "34 to 36 g/kg", quantity.ParseSalinity)
	if s := d.Salinities; s != nil {
		if s.Hi > mostSalinity {
			t.Fault("salinity", fmt.Sprintf("%s is saltier than any sea: a brine of %s is where the correlations end", s.Hi, mostSalinity), "write the sea's salinity, like \"35 g/kg\" (the Baltic has about 7, the open ocean 33 to 38, the Red Sea 41)")
			d.Salinities = nil
		} else {
			d.Salinity = &s.Hi
		}
	}
	d.Waters = ranged(t, "water", "15 to 25 C", quantity.ParseTemperature)
	if w := d.Waters; w != nil {
		if w.Lo < coldestWater || w.Hi > hottestWater {
			t.Fault("water", fmt.Sprintf("sea water of %s is not what a boat draws", w), "write its temperature in C, like \"15 to 25 C\", or with its unit where it is in F")
			d.Waters = nil
		} else {
			d.Water = &w.Hi
		}
	}
	d.Litres = above(t, "litres", take(t, "litres", "120 L", quantity.ParseVolume))
	if d.Age = take(t, "age", "3 years", quantity.ParseDuration); d.Age != nil && d.Age.Days() > longestYears*366 {
		t.Fault("age", fmt.Sprintf("elements of %s have long failed", d.Age), "write how long the elements have been in use, like \"3 years\"")
		d.Age = nil
	}
	if text, ok := t.Text("lift", "0.5 m"); ok {
		d.Lift = signedLength(t, "lift", text)
	}
}

// signedLength reads a length that may be below zero: under the water.
func signedLength(t *source.Table, key, text string) *quantity.Length {
	minus := strings.HasPrefix(strings.TrimSpace(text), "-")
	l, err := quantity.ParseLength(strings.TrimPrefix(strings.TrimSpace(text), "-"))
	switch {
	case err != nil:
		refuse(t, key, err, "write it like \"0.5 m\", or \"-0.3 m\" for below the waterline")
		return nil
	case l > 20*quantity.Metre:
		t.Fault(key, fmt.Sprintf("no pump lifts water %s", l), "write how high the pump stands above the water, like \"0.5 m\"")
		return nil
	case minus:
		l = -l
	}
	return &l
}

func ranged[Q ~float64](t *source.Table, key, hint string, parse func(string) (Q, error)) *quantity.Range[Q] {
	return take(t, key, hint, func(text string) (quantity.Range[Q], error) { return quantity.ParseRange(text, parse) })
}

// power reads the section of the electric supply.
func (r *reader) power(root *source.Table) {
	t, ok := root.Table("power")
	if !ok {
		return
	}
	r.build.Power = &build.PowerSupply{
		Battery: above(t, "battery", take(t, "battery", "400 Ah", quantity.ParseCharge)), Usable: efficiency(t, "usable", "50 %"),
		Solar: take(t, "solar", "600 W", quantity.ParsePower), Sun: ranged(t, "sun", "4 to 5 h", quantity.ParseDuration),
		Inverter: efficiency(t, "inverter", "90 %"), Cable: above(t, "cable", take(t, "cable", "16 mm2", quantity.ParseSection)),
		CableLength: above(t, "cable_length", take(t, "cable_length", "6 m", quantity.ParseLength)),
		Alternator:  above(t, "alternator", take(t, "alternator", "80 A", quantity.ParseCurrent)),
		Breaker:     above(t, "breaker", take(t, "breaker", "80 A", quantity.ParseCurrent)), Place: build.MarkOf(t, ""),
	}
	if s := r.build.Power.Sun; s != nil && s.Hi.Hours() > 24 {
		t.Fault("sun", "a day has 24 hours, and full sun in few of them", "write the hours of full sun of a day, like \"5 h\"")
	}
	t.Done()
}

// efficiency reads a share above 0 and up to 100 %; "7" and "700 %" are slips.
func efficiency(t *source.Table, key, hint string) *quantity.Share {
	v := take(t, key, hint, quantity.ParseShare)
	if v != nil && !(*v > 0 && *v <= 1) {
		t.Fault(key, fmt.Sprintf("%s cannot be: nothing gives more than goes in", v), "write a share above 0 and up to 100 %, like \""+hint+"\"")
		return nil
	}
	return v
}

// process reads the keys of a part that the reckoning of flows takes.
func (r *reader) process(t *source.Table, it *build.Item) {
	p := &it.Process
	p.Kv = above(t, "kv", take(t, "kv", "2.5 m3/h", quantity.ParseFlow))
	switch k := it.Kind; {
	case k.Is(catalog.Element):
		r.element(t, p)
	case k.Is(catalog.SkinFitting):
		p.Size, _ = t.Text("size", "3/4\"")
	case k.Is(catalog.Separates):
		p.Size = sizeCode(t)
		p.Elements = counted(t, "elements", mostElements)
	case k.Is(catalog.DrivesHigh):
		r.plunger(t, p)
	case k.Is(catalog.DrivesFeed):
		p.Curve = curve(t)
		p.SelfPriming = take(t, "self_priming", "1.5 m", quantity.ParseLength)
		p.Current = above(t, "current", take(t, "current", "6 A", quantity.ParseCurrent))
	case k.Is(catalog.Recovers):
		p.Ratio = efficiency(t, "ratio", "10 %")
		if p.Ratio != nil && *p.Ratio > steepestRatio {
			t.Fault("ratio", fmt.Sprintf("a rod of %s of its piston leaves no room for the brine", p.Ratio), "write the rod's area over the piston's, like \"10 %\"")
			p.Ratio = nil
		}
		p.Leak = take(t, "leak", "1 %", quantity.ParseShare)
		if p.Leak != nil && p.Ratio != nil && *p.Leak >= *p.Ratio {
			t.Fault("leak", fmt.Sprintf("a leak of %s leaves no product of a rod of %s", p.Leak, p.Ratio), "write how much of the swept volume leaks back, like \"1 %\"")
			p.Leak = nil
		}
		p.Friction = take(t, "friction", "0.4 bar", quantity.ParsePressure)
	case k.Is(catalog.Filter | catalog.Strainer | catalog.Cartridge):
		p.Loss, p.LossDirty = lossAt(t, "loss"), lossAt(t, "loss_dirty")
		if it.Flow == nil {
			it.Flow = above(t, "flow", take(t, "flow", "20 L/min", quantity.ParseFlow))
		}
	case k.Is(catalog.FlowMeter):
		p.MeterFrom = ranged(t, "scale", "20 to 100 L/h", quantity.ParseFlow)
		if p.MeterFrom != nil && p.MeterFrom.Single() {
			p.MeterFrom = &quantity.Range[quantity.Flow]{Hi: p.MeterFrom.Hi} // what was read is shared
		}
		if !t.Has("scale") {
			p.MeterFrom = meterWords(it.Title + " | " + it.About)
		}
	case k.Is(catalog.Store):
		if text, ok := t.Text("height", "0.8 m"); ok {
			p.Height = signedLength(t, "height", text)
		}
	case k.Is(catalog.Unloads):
		p.Relieves, _ = t.Bool("relieves")
		if p.Relieves && it.Set == nil && !t.Has("set") {
			t.Fault("relieves", "an unloader that is counted on as a relief opens at a pressure, and none is said", "write its `set` too, like set = \"62 bar\"; or leave `relieves` out")
		}
	case k.Is(catalog.Accumulator):
		p.Precharge = above(t, "precharge", take(t, "precharge", "25 bar", quantity.ParsePressure))
		p.Gas = wish(t, "gas", "nitrogen", "air", "oxygen")
	case k.Is(catalog.HoseStock):
		r.hoseProcess(t, p)
	}
}

// meterScale finds what a meter reads in its words: "6 to 70 L/h", "0.5-4 gpm".
var meterScale = pattern.New(`(?i)(\d[\d.,]*)\s*(?:to|-|–|…|\.\.+|bis|à|a)\s*(\d[\d.,]*\s*(?:l|litres?|liters?|gal|gallons?)?\s?(?:/\s?|p)(?:hr?|min|m|d|day)\b)`)

// meterWords is the scale that a meter's title or description says; nil where they say none.
func meterWords(text string) *quantity.Range[quantity.Flow] {
	m := meterScale.FindStringSubmatch(text)
	if m == nil {
		return nil
	}
	scale, err := quantity.ParseRange(m[1]+" to "+m[2], quantity.ParseFlow)
	if err != nil || scale.Single() {
		return nil
	}
	return &scale
}

func (r *reader) hoseProcess(t *source.Table, p *build.Process) {
	p.Roughness = take(t, "roughness", "0.005 mm", quantity.ParseLength)
	p.Corrugate, _ = t.Bool("corrugated")
}

func (r *reader) element(t *source.Table, p *build.Process) {
	p.Size = sizeCode(t)
	p.Product = above(t, "product", take(t, "product", "700 gpd", quantity.ParseFlow))
	p.Tolerance, p.Rejection, p.RejectionMin = efficiency(t, "tolerance", "15 %"), efficiency(t, "rejection", "99.4 %"), efficiency(t, "rejection_min", "99.2 %")
	for key, v := range map[string]**quantity.Share{"rejection": &p.Rejection, "rejection_min": &p.RejectionMin} {
		if *v != nil && (**v < 0.9 || **v >= 1) {
			t.Fault(key, fmt.Sprintf("a seawater element holds back more than 90 %% and less than all; found %s", *v), "write it like \"99.4 %\"")
			*v = nil
		}
	}
	p.Area = above(t, "area", take(t, "area", "2.8 m2", quantity.ParseArea))
	if p.Area != nil && (p.Area.SquareMetres() > mostArea || p.Area.SquareMetres() < leastArea) {
		t.Fault("area", fmt.Sprintf("no element has %s of membrane: small ones have 1 to 8 m2, those of 8 inches up to 41", p.Area), "write the area that its sheet says, like \"2.8 m2\"")
		p.Area = nil
	}
	p.TestPressure = above(t, "test_pressure", take(t, "test_pressure", "54 bar", quantity.ParsePressure))
	p.TestSalt = above(t, "test_salt", take(t, "test_salt", "32 g/L", quantity.ParseConcentration))
	p.TestRecovery, p.MaxRecovery = efficiency(t, "test_recovery", "8 %"), efficiency(t, "max_recovery", "15 %")
	p.Spacer = above(t, "spacer", take(t, "spacer", "0.71 mm", quantity.ParseLength))
	p.MaxPressure = above(t, "max_pressure", take(t, "max_pressure", "69 bar", quantity.ParsePressure))
	p.MaxFlow, p.MinBrine = above(t, "max_flow", take(t, "max_flow", "15 L/min", quantity.ParseFlow)), above(t, "min_brine", take(t, "min_brine", "5 L/min", quantity.ParseFlow))
	p.MaxDrop = above(t, "max_drop", take(t, "max_drop", "1 bar", quantity.ParsePressure))
	if p.MaxWater = take(t, "max_water", "45 C", quantity.ParseTemperature); p.MaxWater != nil && !(*p.MaxWater > 0 && *p.MaxWater <= hottestWater) {
		t.Fault("max_water", fmt.Sprintf("no element bears %s, and none fails below ice", p.MaxWater), "write the temperature that its sheet allows, like \"45 C\"")
		p.MaxWater = nil
	}
}

// leastArea and mostArea bound the membrane of one element in m2 (judgement: a tenth of the smallest
// and half as much again as the largest that are made).
const (
	leastArea = 0.05
	mostArea  = 60
)

func (r *reader) plunger(t *source.Table, p *build.Process) {
	p.FlowAt = above(t, "flow_at", take(t, "flow_at", "70 bar", quantity.ParsePressure))
	p.Speed, p.MotorSpeed = above(t, "speed", take(t, "speed", "1450 rpm", quantity.ParseSpeed)), above(t, "motor_speed", take(t, "motor_speed", "1750 rpm", quantity.ParseSpeed))
	p.EngineSpeed = ranged(t, "engine_speed", "900 to 2200 rpm", quantity.ParseSpeed)
	p.Pulley = pulleys(t)
	p.Volumetric, p.Efficiency, p.MotorEfficiency = efficiency(t, "volumetric", "94 %"), efficiency(t, "efficiency", "86 %"), efficiency(t, "motor_efficiency", "80 %")
	p.MotorPower = above(t, "motor_power", take(t, "motor_power", "1.1 kW", quantity.ParsePower))
	p.MotorCurrent = above(t, "motor_current", take(t, "motor_current", "52 A", quantity.ParseCurrent))
	p.NPSH = take(t, "npsh", "2 m", quantity.ParseLength)
	p.PlungerBore, p.Stroke = above(t, "plunger_bore", take(t, "plunger_bore", "12 mm", quantity.ParseLength)), above(t, "stroke", take(t, "stroke", "14 mm", quantity.ParseLength))
	p.Plungers = counted(t, "plungers", 12)
}

func counted(t *source.Table, key string, most int) *int {
	n, ok := t.Whole(key)
	if !ok {
		return nil
	}
	if n < 1 || n > most {
		t.Fault(key, fmt.Sprintf("%d cannot be", n), fmt.Sprintf("write a whole number from 1 to %d", most))
		return nil
	}
	return &n
}

var sizeForm = pattern.New(`(?i)^\s*(\d{4})\s*$|^\s*(2\.5|4)\s*(?:in|inch|")?\s*[x×]\s*(21|40)\s*(?:in|inch|")?\s*$`)

// sizeCode reads "2540" or "2.5 x 40".
func sizeCode(t *source.Table) string {
	text, ok := t.Text("size", "2540")
	if !ok {
		return ""
	}
	m := sizeForm.FindStringSubmatch(text)
	switch {
	case m == nil:
		t.Fault("size", fmt.Sprintf("`%s` is no size of an element", text), "write tenths of an inch across and inches long: \"2540\", or \"2.5 x 40\"")
		return ""
	case m[1] != "":
		return m[1]
	}
	return map[string]string{"2.5": "25", "4": "40"}[m[2]] + m[3]
}

var pulleyForm = pattern.New(`^\s*(\d+(?:[.,]\d+)?)\s*:\s*(\d+(?:[.,]\d+)?)\s*$`)

// pulleys reads "80:112", motor to pump.
func pulleys(t *source.Table) *build.Pulleys {
	text, ok := t.Text("pulley", "80:112")
	if !ok {
		return nil
	}
	m := pulleyForm.FindStringSubmatch(text)
	if m == nil {
		t.Fault("pulley", fmt.Sprintf("`%s` are no two pulleys", text), "write their diameters, motor first: \"80:112\"")
		return nil
	}
	a, _ := strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
	b, _ := strconv.ParseFloat(strings.Replace(m[2], ",", ".", 1), 64)
	if !(a > 0 && b > 0) {
		t.Fault("pulley", "a pulley of nothing turns nothing", "write both diameters, motor first: \"80:112\"")
		return nil
	}
	return &build.Pulleys{Motor: a, Pump: b}
}

var atForm = pattern.New(`(?i)^(.+?)\s+at\s+(.+)$`)

// lossAt reads "0.1 bar at 7 L/min".
func lossAt(t *source.Table, key string) *build.LossAt {
	text, ok := t.Text(key, "0.1 bar at 7 L/min")
	if !ok {
		return nil
	}
	m := atForm.FindStringSubmatch(text)
	if m == nil {
		t.Fault(key, fmt.Sprintf("`%s` does not say at what flow", text), "write both, like \"0.1 bar at 7 L/min\"")
		return nil
	}
	p, err := quantity.ParsePressure(m[1])
	q, err2 := quantity.ParseFlow(m[2])
	if err = errors.Join(err, err2); err != nil || !(q > 0) {
		refuse(t, key, err, "write both, like \"0.1 bar at 7 L/min\"")
		if err == nil {
			t.Fault(key, "nothing is lost at no flow", "write both, like \"0.1 bar at 7 L/min\"")
		}
		return nil
	}
	return &build.LossAt{Pressure: p, Flow: q}
}

// curve reads a feed pump's points: [["0 L/min", "2.5 bar"], ["14 L/min", "0 bar"]].
func curve(t *source.Table) []build.CurvePoint {
	const hint = `write flow and pressure of each point: curve = [["0 L/min", "2.5 bar"], ["14 L/min", "0 bar"]]`
	rows, said, ok := t.Pairs("curve")
	if !said {
		return nil
	}
	if !ok {
		t.Fault("curve", "a curve is a list of points, each a flow and a pressure", hint)
		return nil
	}
	var out []build.CurvePoint
	var points []pump.Point
	for i, pair := range rows {
		q, err := quantity.ParseFlow(pair[0])
		p, err2 := quantity.ParsePressure(pair[1])
		if err = errors.Join(err, err2); err != nil {
			t.FaultAt(fmt.Sprintf("point %d is no flow and pressure: %s", i+1, strings.ReplaceAll(err.Error(), "\n", "; ")), hint, "curve", i)
			return nil
		}
		out, points = append(out, build.CurvePoint{Flow: q, Pressure: p}), append(points, pump.Point{Flow: q, Pressure: p})
	}
	if _, err := pump.NewCurve(points...); err != nil {
		var rises *pump.RiseError
		if errors.As(err, &rises) {
			t.FaultAt(fmt.Sprintf("%s at %s does not lie below the point before: a feed pump's pressure falls as its flow grows", out[rises.Point].Pressure, out[rises.Point].Flow),
				"write the points from no flow to no pressure, falling", "curve", rises.Point)
			return nil
		}
		t.Fault("curve", err.Error(), hint)
		return nil
	}
	return out
}

// recoveryStall gives energy-recovery pumps what they can come to: the feed pumps' shut-off over
// the ratio; and the duty that figure where none is said, for what the membrane comes to by
// itself is reckoned later, and is never more.
func (r *reader) recoveryStall() {
	b := r.build
	var shutoff quantity.Pressure
	known := false
	for _, it := range b.Items {
		if it.Kind != nil && it.Kind.Is(catalog.DrivesFeed) {
			if it.Shutoff == nil && len(it.Process.Curve) > 0 {
				it.Shutoff = &it.Process.Curve[0].Pressure
			}
			if it.Shutoff != nil {
				shutoff, known = shutoff+*it.Shutoff, true
			}
		}
	}
	for _, it := range b.Items {
		if it.Kind == nil || !it.Kind.Is(catalog.Recovers) || it.Process.Ratio == nil || !known || it.Stall != nil {
			continue
		}
		stall := shutoff / quantity.Pressure(*it.Process.Ratio)
		it.Stall = &stall
		if b.Duty.Pressure == nil && !slices.ContainsFunc(b.Items, func(i *build.Item) bool { return i.Kind != nil && i.Kind.Is(catalog.DrivesHigh) }) {
			b.Duty.Pressure, b.Duty.PressureTold = &stall, true
		}
	}
}
