package facts

import (
	"cmp"
	"fmt"

	"handtight/bom/duty"
	"handtight/bom/finding"
	"handtight/pressure/process/span"
	"handtight/pressure/process/trend"
)

// Duty is what a build makes and takes, as it is shown.
type Duty struct {
	Build    string      `json:"build"`
	State    string      `json:"state"` // normal running
	With     []string    `json:"with"`  // what was changed for it
	Plants   []DutyPlant `json:"plants"`
	Findings []Finding   `json:"findings"` // those that rest on a flow
	Log      *DutyLog    `json:"log,omitempty"`
	Beside   []string    `json:"beside,omitempty"` // what the change does, in words

	File string `json:"-"`
}

// DutyPlant is one plant of a build.
type DutyPlant struct {
	Name    string      `json:"name"`
	Made    bool        `json:"made"`    // its product could be reckoned
	WhyNot  string      `json:"why_not"` // "" where it could
	Facts   []DutyFact  `json:"facts"`
	Limits  []DutyLimit `json:"limits"`
	Lines   []DutyLine  `json:"lines"`
	Says    []string    `json:"says"` // what follows, a sentence each
	Rests   []DutyBasis `json:"rests_on"`
	Ask     []string    `json:"ask"`
	Curves  *DutyCurves `json:"curves,omitempty"`
	Others  []DutyOther `json:"conditions"` // ways of running beside the normal one
	Upgrade string      `json:"upgrade"`    // what one element more asks for; "" where it is not reckoned
}

// DutyFact is a figure from its least to its greatest.
type DutyFact struct {
	Name   string   `json:"name"`
	Words  string   `json:"words"`
	Low    Number   `json:"lo"`
	Middle Number   `json:"middle"` // of what is said, new elements where no age is said; null where there is none
	High   Number   `json:"hi"`
	Unit   string   `json:"unit"`
	From   []string `json:"from"`
}

// DutyLimit is a bound and how far from it the plant stays.
type DutyLimit struct {
	Name   string `json:"name"`
	Words  string `json:"words"`
	Value  Number `json:"value"` // at the middle
	Low    Number `json:"lo"`
	High   Number `json:"hi"`
	Limit  Number `json:"limit"`
	Stops  Number `json:"stops_at"` // the generous end
	Margin Number `json:"margin"`
	Unit   string `json:"unit"`
	Holds  bool   `json:"holds"`
	From   string `json:"from"`
}

// DutyLine is a hose with what runs in it.
type DutyLine struct {
	Unit  string `json:"unit"`
	Where string `json:"where"`
	Low   Number `json:"flow_lo"` // L/min
	High  Number `json:"flow_hi"`
	Speed Number `json:"speed"` // m/s, at the greatest flow
	Loss  Number `json:"loss"`  // bar, at the greatest flow
}

// DutyOther is a way of running beside the normal one: product to drain, flush, flush with the pump
// running. Flows in L/min at the middle of what is said.
type DutyOther struct {
	Name    string          `json:"name"`
	Words   string          `json:"words"`
	Vessel  Number          `json:"vessel"`  // through the vessel that gets least
	House   Number          `json:"house"`   // given by the house supply
	Sea     Number          `json:"sea"`     // drawn from the sea and from tanks
	Balance Number          `json:"balance"` // what comes in less what goes out, over what comes in
	Lines   []DutyOtherLine `json:"lines"`
}

// DutyOtherLine is a hose with what runs in it then.
type DutyOtherLine struct {
	Unit string `json:"unit"`
	Flow Number `json:"flow"`
}

// DutyBasis is what a figure rests on.
type DutyBasis struct {
	What string `json:"what"`
	Took string `json:"took"`
	Said bool   `json:"said"`
}

// DutyCurves are the product against pressure and against temperature.
type DutyCurves struct {
	Pressure    []DutyPoint `json:"pressure"`    // at: bar
	Temperature []DutyPoint `json:"temperature"` // at: C
}

// DutyPoint is a point of a curve; product in L/h, salt in mg/L, recovery in %.
type DutyPoint struct {
	At         float64 `json:"at"`
	Product    Number  `json:"product"`
	ProductLow Number  `json:"product_lo"`
	ProductTop Number  `json:"product_hi"`
	SaltLow    Number  `json:"salt_lo"`
	SaltTop    Number  `json:"salt_hi"`
}

// DutyLog is what the readings of a log say.
type DutyLog struct {
	Readings  int      `json:"readings"`
	Cause     string   `json:"cause"`
	Others    []string `json:"others"`
	Since     string   `json:"since"`
	LookFirst string   `json:"look_first"`
	DoNot     string   `json:"do_not"`
	Product   Number   `json:"product_by"` // %, as it was read
	Normal    Number   `json:"normalised_product_by"`
	Passage   Number   `json:"normalised_salt_passage_by"`
	Loss      Number   `json:"vessel_loss_by"` // bar
	Filters   Number   `json:"filter_loss_by"` // bar
	Water     Number   `json:"water_by"`       // C
	Missing   []string `json:"missing"`
	Unused    []string `json:"columns_not_used"`
}

// DutyOf shows what a build makes; with curves where they are asked for.
func DutyOf(r *duty.Result, findings []finding.Finding, with []string, curves bool) *Duty {
	d := &Duty{Build: r.Build.Name, File: r.Build.File, State: "normal running", With: append([]string{}, with...), Plants: []DutyPlant{}, Findings: Findings(findings)}
	for _, m := range r.Plants {
		d.Plants = append(d.Plants, dutyPlant(m, curves))
	}
	return d
}

var wheres = map[duty.Where]string{duty.Suction: "before the pump", duty.HighSide: "high pressure", duty.Brine: "brine", duty.Product: "product", duty.Other: "other"}

func dutyPlant(m *duty.Making, curves bool) DutyPlant {
	p := DutyPlant{Name: m.Name, Made: m.Made, WhyNot: m.WhyNot, Facts: []DutyFact{}, Limits: []DutyLimit{}, Lines: []DutyLine{}, Says: append([]string{}, m.Says()...), Rests: []DutyBasis{}, Ask: append([]string{}, m.Asks...), Upgrade: cmp.Or(m.UpgradeText(), m.LongerText())}
	for _, f := range m.Facts() {
		row := DutyFact{Name: f.Name, Words: f.Words, Low: Figure(f.Lo), High: Figure(f.Hi), Unit: f.Unit, From: append([]string{}, f.From...)}
		if v, ok := m.MiddleOf(f.Name); ok {
			row.Middle = Figure(v)
		}
		p.Facts = append(p.Facts, row)
	}
	for _, l := range m.Limits {
		p.Limits = append(p.Limits, DutyLimit{Name: l.Name, Words: l.Words, Value: Figure(l.Middle), Low: Figure(l.Value.Lo), High: Figure(l.Value.Hi),
			Limit: Figure(l.Strict), Stops: Figure(l.Limit), Margin: Figure(l.Margin()), Unit: l.Unit, Holds: !l.Fails() && !l.Doubtful(), From: l.From})
	}
	if m.Lines != nil {
		for _, h := range m.Lines.Hoses {
			row := DutyLine{Unit: h.Unit.Name, Where: wheres[h.Where], Low: Figure(h.Flow.Lo.LitresPerMinute()), High: Figure(h.Flow.Hi.LitresPerMinute())}
			if h.Known {
				row.Speed, row.Loss = Figure(h.Speed.Hi.MetresPerSecond()), bars(h.Loss.Hi)
			}
			p.Lines = append(p.Lines, row)
		}
	}
	p.Others = others(m)
	for _, n := range m.Notes {
		p.Rests = append(p.Rests, DutyBasis(n))
	}
	if curves {
		byPressure, byTemperature := m.Curves()
		p.Curves = &DutyCurves{dutyPoints(byPressure), dutyPoints(byTemperature)}
	}
	return p
}

func others(m *duty.Making) []DutyOther {
	out := []DutyOther{}
	for i := range m.Conditions {
		c := &m.Conditions[i]
		o := DutyOther{Name: c.Name, Words: c.Words, Vessel: Figure(c.Vessel.LitresPerMinute()), House: Figure(c.House.LitresPerMinute()), Sea: Figure(c.Sea.LitresPerMinute()), Balance: Figure(c.Open), Lines: []DutyOtherLine{}}
		for _, u := range m.Units() {
			if q, ok := c.Flow[u]; ok && u.Item.IsHose() {
				o.Lines = append(o.Lines, DutyOtherLine{u.Name, Figure(q.LitresPerMinute())})
			}
		}
		out = append(out, o)
	}
	return out
}

// In is what runs in a hose then; unknown where it is no way of it.
func (o *DutyOther) In(unit string) Number {
	for _, l := range o.Lines {
		if l.Unit == unit {
			return l.Flow
		}
	}
	return Number{}
}

func dutyPoints(list []duty.Point) []DutyPoint {
	out := []DutyPoint{}
	for _, q := range list {
		p := DutyPoint{At: q.At}
		if q.Made {
			p.Product, p.ProductLow, p.ProductTop = Figure(q.Middle), Figure(q.Product.Lo), Figure(q.Product.Hi)
			if q.Salt != (span.Span[float64]{}) {
				p.SaltLow, p.SaltTop = Figure(q.Salt.Lo), Figure(q.Salt.Hi)
			}
		}
		out = append(out, p)
	}
	return out
}

// DutyLogOf shows what a log says; unused are the headings of it that nothing was read from.
func DutyLogOf(a *trend.Answer, unused []string) *DutyLog {
	l := &DutyLog{Readings: len(a.Points), Cause: a.Cause().String(), Others: []string{}, LookFirst: a.Cause().First(), DoNot: a.Cause().Not(), Missing: append([]string{}, a.Missing...), Unused: append([]string{}, unused...)}
	for i, c := range a.Causes {
		if i > 0 {
			l.Others = append(l.Others, c.String())
		}
	}
	if !a.Since.IsZero() {
		l.Since = a.Since.Format("2006-01-02")
	}
	by := func(c trend.Change, times float64) Number {
		if !c.Known {
			return Number{}
		}
		return Figure(c.By * times)
	}
	l.Product, l.Normal, l.Passage = by(a.Raw, 100), by(a.Product, 100), by(a.Passage, 100)
	l.Loss, l.Filters, l.Water = by(a.Loss, 1), by(a.Filters, 1), by(a.Water, 1)
	return l
}

// Range prints a figure's ends for people: "26.1 to 37.0 L/h".
func (f *DutyFact) Range() string {
	if f.Low.Value == f.High.Value {
		return trim(f.Low.Value) + unit(f.Unit)
	}
	return trim(f.Low.Value) + " to " + trim(f.High.Value) + unit(f.Unit)
}

func unit(u string) string {
	if u == "" {
		return ""
	}
	return " " + u
}

// trim prints three figures.
func trim(v float64) string {
	switch a := max(v, -v); {
	case a >= 100:
		return fmt.Sprintf("%.0f", v)
	case a >= 10:
		return fmt.Sprintf("%.1f", v)
	}
	return fmt.Sprintf("%.2f", v)
}

// Figures prints a number with three figures; "-" where it is not known.
func (n Number) Figures() string {
	if !n.Known {
		return "-"
	}
	return trim(n.Value)
}

// FourLines is what a plant makes in four lines at most, for those who ask for something else:
// "fresh water 27.1 to 43.2 L/h".
func (p *DutyPlant) FourLines() []string {
	var out []string
	for _, name := range []string{"product", "product_salinity", "recovery", "current"} {
		for i := range p.Facts {
			if p.Facts[i].Name == name {
				out = append(out, p.Facts[i].Words+" "+p.Facts[i].Range())
			}
		}
	}
	if len(out) == 0 && p.WhyNot != "" && p.WhyNot != "no pressure vessel" {
		out = append(out, "its fresh water is not reckoned: "+p.WhyNot)
	}
	return out
}
