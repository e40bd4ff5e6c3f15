package rule

import (
	"fmt"
	"math"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

var accumulatorPrecharge = Rule{
	Slug:  "accumulator-precharge",
	Title: "An accumulator's gas stands too high to take water, or too low for its bladder.",
	Why: `An accumulator takes water once the pressure is over that of its gas: with a pre-charge above all
that it can see it takes none, and with one below a third of the running pressure the bladder is
pressed so small that it wears (from memory: makers name a quarter to a third). The maker's sheet
comes first.`,
	Wrong: `
[[item]]
id = "accumulator"
kind = "accumulator"
material = "super duplex"
precharge = "75 bar"
gas = "nitrogen"
rated = "200 bar"
ports = { in = '3/8 NPT male' }
`,
	mend:  []string{`precharge = "75 bar"`, `precharge = "30 bar"`},
	block: "accumulator",
	plant: "damped",
	harm:  finding.Spoils,
	flows: findPrecharge,
}

// leastPrecharge is the least pre-charge as a share of the running pressure (memory).
const leastPrecharge = 1.0 / 3

func findPrecharge(s *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, u := range accumulators(s) {
		pre := u.Item.Process.Precharge
		runs, load := standsAt(s, r, u), s.States.PortLoad(u.First)
		f := finding.Finding{Severity: finding.Caution}
		switch {
		case pre == nil:
			f.Severity, f.NotKnown = finding.Note, true
			f.Reason = fmt.Sprintf("nothing says at what pressure the gas of %s stands.", u.Name)
			f.Remedy = "Ask for its pre-charge and its gas, and write `precharge` and `gas`."
		case load.Act > 0 && *pre > load.Act+pressure.Slack:
			f.Reason = fmt.Sprintf("the gas of %s stands at %s, and the most that it sees is %s: it takes no water.", u.Name, pre, bars(load.Act))
			f.Remedy = fmt.Sprintf("Have it charged to %s, half to six tenths of the running pressure, or as its sheet says.", bars(quantity.Bar.Times(math.Round(runs.Middle().Bar()*0.55))))
		case runs.Middle() > 0 && *pre < runs.Middle()*leastPrecharge:
			f.Severity = finding.Note
			f.Reason = fmt.Sprintf("the gas of %s stands at %s, less than a third of the %s of normal running: its bladder is pressed small and wears.", u.Name, pre, bars(runs.Middle()))
			f.Remedy = fmt.Sprintf("Have it charged to %s, half to six tenths of the running pressure, or as its sheet says.", bars(quantity.Bar.Times(math.Round(runs.Middle().Bar()*0.55))))
		default:
			continue
		}
		f.Subject, f.Place = ofUnit(u), at(u.Mark)
		out = append(out, f)
	}
	return out
}

// accumulators are those that stand in a run.
func accumulators(s *bom.System) []*graph.Unit {
	var out []*graph.Unit
	for _, u := range s.Graph.Units {
		if u.Item.Kind.Is(catalog.Accumulator) {
			out = append(out, u)
		}
	}
	return out
}
