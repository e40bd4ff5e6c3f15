package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/finding"
)

var ratingUnknown = Rule{
	Slug:  "rating-unknown",
	Title: "Nothing says what pressure a part holds.",
	Why: `"High pressure" is a word and not a rating. Where a line runs above 10 bar, a part
without a data sheet or a standard by size is a stop, and an estimate alone does not
clear it; at low pressure it is a note. Write "rated" from the data sheet, a "class" for
a fitting, or a "spec" for a hose.`,
	Wrong: `
[[item]]
id = "pump"
kind = "plunger pump"
flow = "8 L/min"
ports = { in = '1/2 NPT female', out = '3/8 NPT female' }
`,
	Right: `
[[item]]
id = "pump"
kind = "plunger pump"
flow = "8 L/min"
rated = "100 bar"
ports = { in = '1/2 NPT female', out = '3/8 NPT female' }
`,
	block: "pump",
	check: findUnrated,
}

// findUnrated speaks once for each item on high pressure, and once for each
// low-pressure segment.
func findUnrated(s *bom.System) []finding.Finding {
	var out []finding.Finding
	said := map[*bom.Item]bool{}
	for _, g := range s.Segments {
		var low members
		for _, u := range g.Unrated {
			if !g.High() {
				low.add(u.Name, u.Mark)
				continue
			}
			if !said[u.Item] {
				said[u.Item] = true
				out = append(out, unrated(g, u, "nothing says what it holds"))
			}
		}
		for _, u := range g.Units {
			if g.High() && !said[u.Item] && estimated(s, g, u) {
				said[u.Item] = true
				out = append(out, unrated(g, u, "only an estimate says what it holds"))
			}
		}
		if len(low.names) > 0 {
			f := finding.Finding{
				Severity: finding.Note,
				Reason:   fmt.Sprintf("no rating is known of %s in %s; up to %s here.", low.list(), g.Name, worstOf(g)),
				Remedy:   "Ask for the pressure rating and write `rated`.",
			}
			low.at(&f)
			out = append(out, f)
		}
	}
	return out
}

func unrated(g *bom.Segment, u *bom.Unit, why string) finding.Finding {
	return finding.Finding{
		Severity: finding.Stop, At: u.Name, Place: at(u.Mark),
		Reason: fmt.Sprintf("%s stands in a line of high pressure (%s), and %s.", u.Name, bars(g.Load.Normal), why),
		Remedy: fmt.Sprintf("Write `rated` on `%s` from its data sheet, or its `class` or `spec`%s.", u.Item.ID, least(g)),
	}
}

// estimated reports whether all that is known of a unit in a segment is estimates.
func estimated(s *bom.System, g *bom.Segment, u *bom.Unit) bool {
	for i := range u.Item.Ports {
		if h := s.PortHold(u.First + i); s.SegmentOf(u.First+i) == g && h.Known && h.Estimate {
			return true
		}
	}
	return false
}

// least says what a part must hold in a segment; nothing where no figure has a bound.
func least(g *bom.Segment) string {
	if max(g.Load.Act, g.Load.Fail) == 0 {
		return ""
	}
	return fmt.Sprintf("; it needs %s or more", worstOf(g))
}

// worstOf is the highest pressure of a segment that has a bound, in words.
func worstOf(g *bom.Segment) string { return bars(max(g.Load.Act, g.Load.Fail)) }
