package read

import (
	"fmt"
	"slices"

	"handtight/bom/build"
	"handtight/bom/money"
	"handtight/bom/source"
	"handtight/catalog"
	"handtight/pressure/nearest"
	"handtight/pressure/quantity"
)

// What the spares section is taken to say where it is silent (judgements, shown
// as such on the assumptions sheet).
const (
	defaultConfidence = 0.95
	defaultSpoil      = 0.03
)

// head reads what only the build's own file has: build, duty, spares, rates.
func (r *reader) head(root *source.Table) {
	b, ok := root.Table("build")
	if !ok {
		if _, misspelt := nearest.Of("build", root.Keys()); !root.Has("build") && !misspelt {
			root.FaultHere("the file has no [build] section, so it is not a build file", "begin it with [build], name = \"…\" and currency = \"EUR\"; `handtight new DIR` writes an example")
		}
	} else {
		r.build.Name, _ = b.RequiredText("name", "Kittiwake: 24 V desalinator")
		if code, ok := b.RequiredText("currency", "EUR"); ok {
			r.build.Currency = r.currency(b, "currency", code)
		}
		r.build.Plugged = portRefs(b, "plugged")
		r.build.LeftOpen = portRefs(b, "left_open")
		r.build.Origin = origin(b)
	}
	r.duty(root)
	r.power(root)
	r.spares(root)
	r.rates(root)
}

func (r *reader) currency(t *source.Table, key, code string) string {
	if err := money.CheckCode(code); err != nil {
		refuse(t, key, err, "write a three-letter code of ISO 4217, such as \"EUR\"")
		return ""
	}
	return code
}

func (r *reader) duty(root *source.Table) {
	t, ok := root.Table("duty")
	if !ok {
		return
	}
	d := &r.build.Duty
	d.Pressure = take(t, "pressure", "58 bar", quantity.ParsePressure)
	d.Product = take(t, "product", "45 L/h", quantity.ParseFlow)
	r.dutyRanges(t)
	d.Space = take(t, "space", "45 C", quantity.ParseTemperature)
	d.Supply = readSupply(t)
	d.Pressure, d.Product, d.Supply = above(t, "pressure", d.Pressure), above(t, "product", d.Product), above(t, "supply", d.Supply)
	d.Place = build.MarkOf(t, "")
	t.Done()
}

// above refuses a figure that is not above zero.
func above[T ~float64](t *source.Table, key string, v *T) *T {
	if v != nil && !(*v > 0) {
		t.Fault(key, "nothing runs at none of it", "write a figure above 0")
		return nil
	}
	return v
}

func (r *reader) spares(root *source.Table) {
	s := &r.build.Spares
	s.Confidence, s.Spoil = defaultConfidence, defaultSpoil
	t, ok := root.Table("spares")
	if !ok {
		s.Assumed = []string{"away", "hours", "confidence", "spoil"}
		return
	}
	if v := take(t, "away", "9 months", quantity.ParseDuration); v != nil {
		s.Away = r.within(t, "away", *v)
	}
	if v := take(t, "hours", "250 h", quantity.ParseDuration); v != nil {
		s.Hours = r.within(t, "hours", *v)
	}
	s.Confidence = share(t, "confidence", "95 %", s.Confidence, 1)
	s.Spoil = share(t, "spoil", "3 %", s.Spoil, 0.5)
	for _, key := range []string{"away", "hours", "confidence", "spoil"} {
		if !t.Has(key) {
			s.Assumed = append(s.Assumed, key)
		}
	}
	t.Done()
}

// longestAway bounds the time that spares are counted for: beyond it counts mean nothing.
const longestAway = quantity.Duration(100 * 365.25 * 24 * 3600)

func (r *reader) within(t *source.Table, key string, d quantity.Duration) quantity.Duration {
	if d > longestAway {
		t.Fault(key, "this is more than 100 years, and the most that spares are counted for", "write the time between two places to buy, like \"6 months\"")
		return longestAway
	}
	return d
}

// share reads a chance below a limit.
func share(t *source.Table, key, hint string, otherwise, limit float64) float64 {
	v := take(t, key, hint, quantity.ParseShare)
	if v == nil {
		return otherwise
	}
	if f := v.Fraction(); f > 0 && f < limit || f == 0 && key == "spoil" {
		return f
	}
	t.Fault(key, fmt.Sprintf("%s is not a chance that can be worked with", v), fmt.Sprintf("write a share above 0 %% and below %.0f %%", 100*limit))
	return otherwise
}

func (r *reader) rates(root *source.Table) {
	r.build.Rates = money.Rates{Base: r.build.Currency, Of: map[string]money.Rate{}}
	r.build.RateAt = map[string]build.Mark{}
	t, ok := root.Table("rates")
	if !ok {
		return
	}
	if date, ok := t.Date("date"); ok {
		r.build.Rates.Date = date
	} else if !t.Has("date") {
		t.FaultHere("the rates have no date", "write the day they were looked up: date = 2026-11-20")
	}
	for _, code := range t.Keys() {
		if code == "date" {
			continue
		}
		if err := money.CheckCode(code); err != nil {
			t.Known(code)
			refuse(t, code, err, "write a three-letter code of ISO 4217, such as EUR")
			continue
		}
		text, ok := t.Text(code, "1.92")
		if !ok {
			continue
		}
		rate, err := money.ParseRate(text)
		switch {
		case err != nil:
			refuse(t, code, err, "write what one "+code+" costs, like \"1.92\"")
		case code == r.build.Currency:
			t.Fault(code, code+" is the build's own currency", "take the line out: one "+code+" is one "+code)
		default:
			r.build.Rates.Of[code] = rate
			r.build.RateAt[code] = build.MarkOf(t, code)
		}
	}
	t.Done()
}

func portRefs(t *source.Table, key string) []build.PortRef {
	var out []build.PortRef
	for i, text := range t.Texts(key, "vessel.spare") {
		unit, port, ok := splitLast(text)
		if !ok {
			t.FaultAt(fmt.Sprintf("`%s` names no port", text), "write a unit and its port, like \"vessel.spare\"", key, i)
			continue
		}
		out = append(out, build.PortRef{Unit: unit, Port: port, Place: build.MarkOf(t, key, i)})
	}
	return out
}

// needs reports what the build cannot do without, once all is read.
func (r *reader) needs() {
	b := r.build
	if len(b.Runs) == 0 {
		if r.main != nil && !r.main.Has("run") {
			r.main.FaultHere("the build has no [[run]]: nothing is joined to anything", "write the units in flow order: [[run]], name = \"raw water\", path = [\"intake\", \"strainer\"]")
		}
		return
	}
	needsDuty := slices.ContainsFunc(b.Items, func(i *build.Item) bool { return i.Kind != nil && i.Kind.Is(catalog.DrivesHigh) })
	if needsDuty && b.Duty.Pressure == nil && r.main != nil {
		if d, ok := r.main.Table("duty"); !ok || !d.Has("pressure") {
			r.main.FaultHere("a plunger pump needs to know the pressure that is held on the throttle", "write [duty] and pressure = \"58 bar\" (the figure that the membrane's data sheet asks for)")
		}
	}
}
