package facts

import (
	"fmt"
	"slices"

	"handtight/bom"
	"handtight/bom/circuit"
	"handtight/bom/state"
	"handtight/pressure/quantity"
)

// Assumption is a value that the list rests on, and where it comes from.
type Assumption struct{ What, Value, Basis string }

// assumptions lists what the list rests on: the duty, the spares' wishes, and the
// judgements of the tool.
func assumptions(sys *bom.System) []Assumption {
	b := sys.Build
	var out []Assumption
	add := func(what, value, basis string) { out = append(out, Assumption{what, value, basis}) }
	if p := b.Duty.Pressure; p != nil {
		add("Pressure held on the throttle", p.String(), "the build file")
	}
	for _, t := range []struct {
		what string
		at   *quantity.Temperature
	}{{"Sea water, for the ratings", b.Duty.Water}, {"Air around the parts, for the ratings", b.Duty.Space}} {
		if t.at != nil {
			add(t.what, t.at.String(), "the build file; a data sheet is taken to speak of cold water")
		}
	}
	for _, s := range []struct{ key, what, value string }{
		{"away", "Time between shops", b.Spares.Away.Calendar()},
		{"hours", "Running hours in that time", b.Spares.Hours.String()},
		{"confidence", "Chance of having enough spares", percent(b.Spares.Confidence)},
		{"spoil", "Chance that a fitting is spoiled while fitting", percent(b.Spares.Spoil)},
	} {
		basis := "the build file"
		if slices.Contains(b.Spares.Assumed, s.key) {
			basis = "assumed, since the build file does not say (judgement)"
		}
		add(s.what, s.value, basis)
	}
	add("High pressure begins above", fmt.Sprintf("%.0f bar", state.HighPressure.Bar()), "judgement")
	add("A relief passing the whole flow stands at", fmt.Sprintf("%.1f times its set pressure", circuit.FullFlowFactor), "judgement, unless its data sheet says (`full_flow`)")
	add("A tail fits a bore within", "0.6 mm; with a clamp at low pressure to 1.5 mm", "judgement")
	add("Tape", "half as much again for joints that are made twice", "common practice")
	add("Rounding", "half up: each line in the shop's currency, then customs, then tax; each shop's total converted once", "the tool's rule")
	add("Proof of the weakest", "one and a half times its rating, twice for a hose by its standard", "ASME B31.3-2016 345.4.2(a), SAE J517; a limit for a shop's test with gauges and relief taken off: on the boat the first test goes to the relief's setting and no further")
	add("What threads bear", "an estimate by the area that would shear, screwed together by hand, at the loosest parts", "FED-STD-H28/2, ASME B31.3 table A-1: it rates nothing")
	add("Friction in the lines", "left out: the highest pressure decides what bursts", "the tool's rule")
	return out
}

func percent(f float64) string { return quantity.Decimals(f*100, 1) + " %" }
