package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/pressure/quantity"
)

var voltagesDiffer = Rule{
	Slug:  "voltages-differ",
	Title: "A motor or a coil is of another voltage than the boat's supply.",
	Why: `A motor of 24 V on 12 V turns at half its speed and may not start against pressure; one of
12 V on 24 V burns, and so does a valve's coil. The voltage is read from a part's ` + "`motor`" + `, its
title or its ` + "`about`" + `, and held against ` + "`supply`" + ` of the duty; "12/24 V" goes with both. A part of the
mains, or one that a converter feeds, is not spoken of.`,
	Wrong: `
[duty]
pressure = "56 bar"
supply = "12 V"
[[item]]
id = "feed"
kind = "feed pump"
about = "diaphragm pump, 24 V"
shutoff = "2.5 bar"
ports = { in = '19 mm barb', out = '19 mm barb' }
[[item]]
id = "intake"
kind = "seacock"
ports = { inboard = '19 mm barb' }
[[item]]
id = "stock"
kind = "hose stock"
bore = "19 mm"
vacuum = "0.9 bar"
[[hose]]
id = "hose"
of = "stock"
length = "1 m"
[[run]]
name = "raw water"
path = ["intake", "hose", "feed"]
`,
	mend:  []string{`supply = "12 V"`, `supply = "24 V"`},
	harm:  finding.Fire,
	check: findVoltages,
}

// findVoltages speaks once of each unit whose words name a battery voltage, and not the supply's.
func findVoltages(s *bom.System) []finding.Finding {
	supply := s.Build.Duty.Supply
	if supply == nil || *supply > build.BatteryLimit {
		return nil
	}
	var out []finding.Finding
	for _, u := range s.Graph.Units {
		texts := []string{u.Item.Motor, u.Item.Title, u.Item.About}
		if len(build.BatteryVolts(texts...)) == 0 {
			continue
		}
		var volts []quantity.Voltage // of the first text that names another: of two texts each must go with the supply
		for _, text := range texts {
			if said := build.BatteryVolts(text); len(volts) == 0 && len(said) > 0 && !build.GoesWith(said, *supply) {
				volts = said
			}
		}
		if len(volts) == 0 {
			continue
		}
		f := finding.Finding{
			Severity: finding.Caution, Subject: ofUnit(u), Place: at(u.Mark), Cause: volts[0].String(),
			Reason: fmt.Sprintf("%s is said to be of %s, and the supply is %s.", u.Name, volts[0], supply),
			Remedy: fmt.Sprintf("Take one of %s, or one for both; if %s is right, write supply = %q under [duty], or what feeds it (\"converter\") in its words.", supply, volts[0], volts[0]),
		}
		out = append(out, f)
	}
	return out
}
