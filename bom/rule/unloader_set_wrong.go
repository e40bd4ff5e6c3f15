package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/catalog"
)

var unloaderSetWrong = Rule{
	Slug:  "unloader-set-wrong",
	Title: "An unloader opens at the duty or below it, or not before the relief.",
	Why: `An unloader leads the pump's flow back when the outlet is shut or stands above its setting. At or
below the duty it does so in normal running, and no water is made; above the relief's setting the
relief opens first, again and again, and wears. An unloader counts as a relief only where its maker
says so (relieves = true): it is worn by work, and a relief is not.`,
	Wrong: `
[[item]]
id = "unloader"
kind = "unloader"
material = "super duplex"
set = "50 bar"
rated = "200 bar"
ports = { in = '3/8 NPT male', out = '3/8 NPT female', bypass = '3/8 NPT female' }
[[item]]
id = "bypass-out"
kind = "overboard"
[[run]]
name = "high pressure"
path = ["pump", "tee", "unloader", "high", "vessel.feed"]
[[run]]
name = "bypass"
path = ["unloader.bypass", "bypass-out"]
`,
	mend:  []string{`set = "50 bar"`, `set = "59 bar"`},
	block: "high run",
	plant: "watered",
	harm:  finding.Spoils,
	check: findUnloader,
}

func findUnloader(s *bom.System) []finding.Finding {
	var out []finding.Finding
	held := s.Build.Duty.Pressure
	for _, u := range s.Graph.Units {
		if !u.Item.Kind.Is(catalog.Unloads) {
			continue
		}
		set := u.Item.Set
		f := finding.Finding{Severity: finding.Caution, Subject: ofUnit(u), Place: at(u.Mark)}
		switch low := lowestRelief(s, u); {
		case set == nil:
			f.Severity, f.NotKnown = finding.Note, true
			f.Reason = fmt.Sprintf("nothing says at what pressure %s opens.", u.Name)
			f.Remedy = fmt.Sprintf("Ask for it and write `set` on `%s`: above the duty, below the relief.", u.Item.ID)
		case held != nil && !s.Build.Duty.PressureTold && *set <= *held:
			f.Severity = finding.Stop
			f.Reason = fmt.Sprintf("%s opens at %s, and the duty is %s: it leads the water back in normal running.", u.Name, set, held)
			f.Remedy = fmt.Sprintf("Set it above the duty and below the relief: %s.", *held*1.05)
		case low != nil && *low.Item.Set <= *set:
			f.Reason = fmt.Sprintf("%s opens at %s, and %s at %s: the relief opens first.", u.Name, set, low.Name, low.Item.Set)
			f.Remedy = fmt.Sprintf("Set %s lower, above the duty, or the relief higher, below the weakest rating.", u.Name)
		default:
			continue
		}
		out = append(out, f)
	}
	return out
}

// lowestRelief is the relief valve around a unit that opens first; nil where there is none.
func lowestRelief(s *bom.System, u *graph.Unit) (low *graph.Unit) {
	for _, v := range s.Circuit.ReliefsAround(u.First) {
		if v != u && v.Item.Set != nil && s.Segments.SegmentOf(v.First+v.Item.PortIndex("in")).High() && (low == nil || *v.Item.Set < *low.Item.Set) {
			low = v
		}
	}
	return low
}
