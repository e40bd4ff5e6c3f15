package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

var energyRecoveryStall = Rule{
	Slug:  "energy-recovery-stall",
	Title: "Nothing holds what an energy-recovery pump can come to.",
	Why: `When the membrane passes nothing, the high side comes to the feed pump's shut-off pressure over
the rod's share: a feed of 7 bar on a rod of 10 % makes 70. Vessel, hoses and fittings must
bear it, or a relief must open before; a relief on the feed side guards it at its own set
over the rod's share.`,
	Wrong: `
[[item]]
id = "pump"
kind = "energy recovery pump"
material = "super duplex"
ratio = "8 %"
leak = "1 %"
friction = "0.4 bar"
rated = "100 bar"
ports = { in = '13 mm barb', out = '3/8 NPT female', brine = '3/8 NPT female', waste = '13 mm barb' }
[[item]]
id = "relief"
kind = "relief valve"
material = "super duplex"
set = "95 bar"
full_flow = "98 bar"
flow = "16 L/min"
rated = "100 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female' }
`,
	mend: []string{`ratio = "8 %"`, `ratio = "11 %"`, `
set = "95 bar"
full_flow = "98 bar"
`, `
set = "71 bar"
full_flow = "74 bar"
`},
	block: "pump",
	plant: "recovered",
	harm:  finding.Bursts,
	flows: findEnergyRecoveryStall,
}

func findEnergyRecoveryStall(s *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		rec := m.Recovered
		if rec == nil || rec.Highest <= 0 || m.Recovery == nil {
			continue
		}
		port := m.Recovery.First + m.Recovery.Item.PortIndex("out")
		g := s.Segments.SegmentOf(port)
		if g == nil || !g.Allowable.Known || g.Allowable.Rating.Pressure >= rec.Highest || !pressure.Above(g.Load.Act, g.Allowable.Rating.Pressure) {
			continue
		}
		f := onPlant(m, finding.Stop)
		f.Subject, f.Place = ofUnit(m.Recovery), at(m.Recovery.Mark)
		f.Reason = fmt.Sprintf("with the membrane passing nothing the high side comes to %.0f bar, and %s holds %s.", rec.Highest.Bar(), g.Allowable.What, g.Allowable.Rating.Pressure)
		f.Remedy = fmt.Sprintf("Put a relief on the feed side that passes the whole feed at %.1f bar or less, or take parts that hold %s bar, and set their relief a tenth below that.", (g.Allowable.Rating.Pressure * quantity.Pressure(rec.Device.Ratio)).Bar(), upTo(rec.Highest.Bar(), 5))
		out = append(out, f)
	}
	return out
}
