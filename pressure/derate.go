package pressure

import (
	"fmt"
	"strings"
	"sync"

	"handtight/pressure/nearest"
	"handtight/pressure/quantity"
)

// Factor is what remains of a rating at a temperature.
type Factor struct {
	Value  float64 // 1 is all of it
	Text   string
	Source string
	Status Status
}

// Apply returns the rating lowered by the factor, and says so in its text.
func (f Factor) Apply(r Rating) Rating {
	if f.Value == 1 {
		return r
	}
	r.Text = fmt.Sprintf("%s, times %.3g (%s)", r.Text, f.Value, f.Text)
	r.Pressure *= quantity.Pressure(f.Value)
	r.Status = max(r.Status, f.Status)
	return r
}

// RangeError says that a temperature is outside what a table rates.
type RangeError struct {
	What         string // "SAE 100R8 (EN 855 R8) in water"
	At, From, To quantity.Temperature
	AtMost       Factor // what is left at the end of the table: beyond it no more is
}

// Error gives what is rated from where to where, and what to do.
func (e *RangeError) Error() string {
	return fmt.Sprintf("%s is not rated at %s, only from %s to %s; choose another material or bring the temperature inside", e.What, e.At, e.From, e.To)
}

// UnknownError says that a table does not hold what was asked for.
type UnknownError struct {
	Text    string // as it was written
	Nearest string // "" if none is near
	Known   []string
}

// Error gives what is known instead.
func (e *UnknownError) Error() string {
	hint := ""
	if e.Nearest != "" {
		hint = fmt.Sprintf("did you mean %q? ", e.Nearest)
	}
	return fmt.Sprintf("no temperature table for %q; %sknown are %s", e.Text, hint, strings.Join(e.Known, ", "))
}

type hoseRange struct {
	hose, medium, source string
	from, to             quantity.Temperature
	status               Status
}

var hoseRanges = sync.OnceValue(func() []hoseRange {
	var out []hoseRange
	for _, r := range eachRow("hose_temperature") {
		from, _ := r.number("from_c")
		to, _ := r.number("to_c")
		out = append(out, hoseRange{r["hose"], r["medium"], r["source"], quantity.Temperature(from), quantity.Temperature(to), statusNamed(r["status"])})
	}
	return out
})

// DerateHose returns the factor for a hose with water inside and air around it.
//
// It is 1 inside the standard's range and there is none outside: EN 853, 854 and
// 857 hose carries water of 0 to 70 C. The range for hydraulic fluid is taken for
// the air; ranges that no source states are those of EN 853, marked [Judgement].
// Errors: *RangeError if either temperature is outside; *UnknownError for an unknown spec.
//
// Source: EN 853:2015, EN 854:2015, EN 857:2015 scopes; table/hose_temperature.csv.
func DerateHose(spec Spec, water, air quantity.Temperature) (Factor, error) {
	parts := spec.parts()
	if len(parts) == 0 {
		e := &UnknownError{Text: string(spec)}
		for _, s := range KnownSpecs() {
			e.Known = append(e.Known, string(s))
		}
		near, _ := NearestSpec(string(spec))
		e.Nearest = string(near)
		return Factor{}, e
	}
	f := Factor{Value: 1}
	for _, p := range parts {
		for _, r := range hoseRanges() {
			if r.hose != p.spec {
				continue
			}
			at, what := water, p.title+" in water"
			if r.medium == "air" {
				at, what = air, p.title+" in air"
			}
			if at < r.from || at > r.to {
				return Factor{}, &RangeError{What: what, At: at, From: r.from, To: r.to, AtMost: Factor{Value: 1}}
			}
			// the less known of the two ranges is what the answer rests on
			if r.status > f.Status {
				f.Status, f.Source = r.status, sourceText(r.source)
				f.Text = fmt.Sprintf("%s, %s to %s", what, r.from, r.to)
			}
		}
	}
	return f, nil
}

type deratePoint struct {
	at     quantity.Temperature
	factor float64
	status Status
	source string
	step   bool
}

type derateTable struct {
	what   string
	points []deratePoint
}

var derateTables = sync.OnceValue(func() []derateTable {
	var out []derateTable
	for _, r := range eachRow("derate") {
		if len(out) == 0 || out[len(out)-1].what != r["what"] {
			out = append(out, derateTable{what: r["what"]})
		}
		at, _ := r.number("temp_c")
		factor, _ := r.number("factor")
		t := &out[len(out)-1]
		t.points = append(t.points, deratePoint{quantity.Temperature(at), factor, statusNamed(r["status"]), r["source"], r["between"] == "step"})
	}
	return out
})

// DerateMaterial returns the factor for a fitting or pipe of a material at a
// temperature: the hotter of its water and the air around it.
//
// The factor runs in a straight line between the rows of table/derate.csv, and in
// steps for push-in fittings, which are rated "to" a temperature. It is 1 from 0 C
// to the temperature that the material is rated at. material is in words; "PVC
// threaded" (none above 43.3 C), "class 150" and "push-in fitting" are tables of their own.
// Errors: *RangeError outside the table; *UnknownError for a material without one.
//
// Source: Machinery's Handbook 31st edition p.2770 table 14 for PVC; the others on their rows.
func DerateMaterial(material string, at quantity.Temperature) (Factor, error) {
	t, err := derateTableFor(material)
	if err != nil {
		return Factor{}, err
	}
	first, last := t.points[0], t.points[len(t.points)-1]
	if !(at >= first.at && at <= last.at) { // so that NaN is outside too
		end := last
		if at < first.at {
			end = first
		}
		return Factor{}, &RangeError{What: t.what, At: at, From: first.at, To: last.at, AtMost: Factor{
			Value: end.factor, Text: fmt.Sprintf("%s at %s, the end of its table", t.what, end.at), Source: sourceText(end.source), Status: end.status,
		}}
	}
	lo, hi := first, first
	for _, p := range t.points {
		hi = p
		if p.at >= at {
			break
		}
		lo = p
	}
	value := hi.factor
	if !hi.step && hi.at > lo.at {
		value = lo.factor + (hi.factor-lo.factor)*float64((at-lo.at)/(hi.at-lo.at))
	}
	return Factor{Value: value, Text: fmt.Sprintf("%s at %s", t.what, at), Source: sourceText(hi.source), Status: max(lo.status, hi.status)}, nil
}

func derateTableFor(material string) (derateTable, error) {
	name := strings.ToLower(strings.TrimSpace(material))
	made := materialNamed(material)
	switch made {
	case "316L", "stainless":
		made = "316"
	case "PE100", "PE80":
		made = "PE"
	}
	var known []string
	for _, t := range derateTables() { // by its own name first: "threaded PVC" is also PVC
		if strings.EqualFold(t.what, name) {
			return t, nil
		}
		known = append(known, t.what)
	}
	for _, t := range derateTables() {
		if t.what == made {
			return t, nil
		}
	}
	near, _ := nearest.Of(material, known)
	return derateTable{}, &UnknownError{Text: material, Nearest: near, Known: known}
}
