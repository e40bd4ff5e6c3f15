package rule

import (
	"fmt"
	"math"
	"strings"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/bom/running"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

var suctionTooFast = Rule{
	Slug:  "suction-too-fast",
	Title: "The water runs too fast in a suction hose.",
	Why: `A pump can only take what the air above pushes into it. Fast water in the suction line loses
pressure by friction, and a plunger pump asks for its water in strokes, which loses more:
the pump then knocks, wears and delivers less. Pages on suction lines ask for 0.5 to 1.5
metres a second; handbooks of plunger pumps for 0.9 or less (memory). Above 1.5 it is a
caution, above 0.9 a note. Speed is the pump's flow over the bore: half the bore is four times
the speed; and what two pumps share carries the flow of both. A feed pump whose plate says more than
the pump behind it takes draws no more than that.`,
	Wrong: `
[duty]
pressure = "56 bar"
[[item]]
id = "hull"
kind = "through-hull"
ports = { inboard = '10 mm barb' }
[[item]]
id = "stock"
kind = "hose stock"
bore = "10 mm"
rated = "6 bar"
vacuum = "0.9 bar"
[[hose]]
id = "hose"
of = "stock"
length = "1 m"
[[item]]
id = "pump"
kind = "plunger pump"
flow = "9 L/min"
ports = { in = '10 mm barb', out = '1/2 NPT female' }
[[run]]
name = "suction"
path = ["hull", "hose", "pump"]
`,
	mend:  []string{`ports = { inboard = '10 mm barb' }`, `ports = { inboard = '19 mm barb' }`, `bore = "10 mm"`, `bore = "19 mm"`, `ports = { in = '10 mm barb', out = '1/2 NPT female' }`, `ports = { in = '19 mm barb', out = '1/2 NPT female' }`},
	harm:  finding.Spoils,
	flows: findFast,
}

// findFast speaks once of the pumps that draw through one line: of its narrowest hose. What runs
// in it is reckoned where the flows are; else it is what the pumps' plates say.
func findFast(s *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	at := map[string]int{} // place in out, by the pumps
	fastest := map[string]quantity.Velocity{}
	speak := func(d running.Draw, who string, reckoned bool) {
		bore, ok := duty.BoreSaid(s.Build, d.Hose.Item)
		if !ok {
			return
		}
		v, ok := pressure.LineSpeed(d.Flow, bore)
		if !ok || v <= pressure.SuctionGood || v <= fastest[who] {
			return
		}
		if _, said := at[who]; !said {
			at[who] = len(out)
			out = append(out, finding.Finding{})
		}
		fastest[who] = v
		out[at[who]] = tooFast(d, bore, v, reckoned)
	}
	most := map[*graph.Unit]quantity.Flow{} // that runs in a hose in normal running, where it is reckoned
	for _, m := range r.Plants {
		for _, h := range m.Lines.Hoses {
			if _, known := most[h.Unit]; !known && h.Flow.Hi > 0 {
				most[h.Unit] = h.Flow.Hi
			}
		}
	}
	seen := map[*graph.Unit]bool{}
	for _, d := range s.Running.Draws() {
		seen[d.Hose] = true
		q, ok := most[d.Hose]
		if ok {
			d.Flow = q
		}
		who := names(d.Pumps)
		if ok { // lines one behind the other carry the same water: one finding
			who = d.Flow.String()
		}
		speak(d, who, ok)
	}
	for _, m := range r.Plants { // lines side by side, and pumps of which the plate says no flow
		for _, h := range m.Lines.Hoses {
			if h.Where == duty.Suction && !seen[h.Unit] {
				speak(running.Draw{Hose: h.Unit, Pumps: m.FromSea(), Flow: h.Flow.Hi}, h.Flow.Hi.String(), true)
			}
		}
	}
	return out
}

func tooFast(d running.Draw, bore quantity.Length, v quantity.Velocity, reckoned bool) finding.Finding {
	f := finding.Finding{Severity: finding.Note, Subject: ofUnit(d.Hose), Place: at(d.Hose.Mark)}
	if v > pressure.SuctionMost {
		f.Severity = finding.Caution
	}
	verb, by := "draws", " by its plate"
	if len(d.Pumps) > 1 {
		verb, by = "together draw", " by their plates"
	}
	if reckoned {
		by = ""
	}
	f.Reason = fmt.Sprintf("%s %s up to %s%s through %s, %s in the bore: %.2f m/s, and a suction line should stay below %.1f.",
		names(d.Pumps), verb, d.Flow, by, d.Hose.Name, bore, v, pressure.SuctionGood)
	wide, _ := pressure.BoreFor(d.Flow*1.02, pressure.SuctionGood) // a wider line loses less, and a little more runs in it
	f.Remedy = fmt.Sprintf("Take hose of %s bore or more, and tails to suit.", quantity.Length(math.Ceil(wide.Millimetres())))
	return f
}

// names lists units for a sentence: "a", "a and b", "a, b and c".
func names(list []*graph.Unit) string {
	var out []string
	for _, u := range list {
		out = append(out, u.Name)
	}
	if len(out) < 2 {
		return strings.Join(out, "")
	}
	return strings.Join(out[:len(out)-1], ", ") + " and " + out[len(out)-1]
}
