package rule

import (
	"cmp"
	"fmt"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/bom/rating"
	"handtight/bom/segment"
	"handtight/pressure"
	"handtight/threads"
)

var ratingUnknown = Rule{
	Slug:  "rating-unknown",
	Title: "Nothing says what pressure a part holds.",
	Why: `"High pressure" is a word and not a rating. Where a line runs above 10 bar, a part
without a data sheet or a standard by size is a stop, and an estimate alone does not
clear it; at low pressure it is a note. Write "rated" from the data sheet, a "class" for
a fitting, or a "spec" for a hose. A class is of one standard: it says nothing of a
thread or a metal that the standard does not have.`,
	Wrong: `
[[item]]
id = "pump"
kind = "plunger pump"
flow = "9 L/min"
ports = { in = '1/2 NPT female', out = '3/8 NPT female' }
`,
	mend: []string{`
flow = "9 L/min"
`, `
flow = "9 L/min"
rated = "100 bar"
`},
	block: "pump",
	harm:  finding.Bursts,
	check: findUnrated,
}

// findUnrated speaks once for each item on high pressure, and once for each
// low-pressure segment.
func findUnrated(s *bom.System) []finding.Finding {
	var out []finding.Finding
	said, high := map[*build.Item]bool{}, map[*build.Item]bool{}
	for _, g := range s.Segments.All {
		for _, u := range g.Unrated {
			high[u.Item] = high[u.Item] || g.High()
		}
	}
	for _, g := range s.Segments.All {
		var low members
		for _, u := range g.Unrated {
			if !g.High() {
				if !high[u.Item] { // the low side of a throttle is answered with the high one
					low.unit(u)
				}
				continue
			}
			if !said[u.Item] {
				said[u.Item] = true
				out = append(out, unrated(s, g, u, cmp.Or(classGap(s, g, u), hoseGap(u), "nothing says what it holds"), asked(u)))
			}
		}
		for _, u := range g.Units {
			if !g.High() || said[u.Item] {
				continue
			}
			if h, ok := estimated(s, g, u); ok {
				said[u.Item] = true
				out = append(out, guessed(s, g, u, h))
			}
		}
		if len(low.names) > 0 {
			f := finding.Finding{
				Severity: finding.Note, NotKnown: true,
				Reason: fmt.Sprintf("no rating is known of %s in %s; up to %s here.", low.list(), g.Name, worstOf(g)),
				Remedy: "Ask for the pressure rating and write `rated`.",
			}
			low.at(&f)
			out = append(out, f)
		}
	}
	return out
}

func unrated(s *bom.System, g *segment.Segment, u *graph.Unit, why, ask string) finding.Finding {
	return finding.Finding{
		Severity: finding.Stop, NotKnown: true, Subject: ofUnit(u), Place: at(u.Mark),
		Reason: fmt.Sprintf("%s stands in a line of high pressure (%s), and %s.", u.Name, bars(g.Load.Normal), why),
		Remedy: ask + least(s, g) + ".",
	}
}

func asked(u *graph.Unit) string {
	if u.Item.Kind.Length && u.Item.Spec != "" && u.Item.Bore == nil {
		return fmt.Sprintf("`%s` is rated by its bore: write `bore` on `%s`", u.Item.Spec, u.Item.ID)
	}
	if u.Item.Class != "" {
		return fmt.Sprintf("Write `rated` on `%s` from its data sheet", u.Item.ID)
	}
	if u.Item.Kind.Length {
		return fmt.Sprintf("Write `rated` on `%s` from its data sheet, or its `spec`", u.Item.ID)
	}
	for i := range u.Item.Ports {
		for _, end := range u.Item.Ports[i].End.Candidates {
			if pressure.ClassGap(commonClass, u.Item.Material, end.Family.String(), end.Sex == threads.Male, end.Size) != "" {
				return fmt.Sprintf("Write `rated` on `%s` from its data sheet", u.Item.ID)
			}
		}
	}
	if u.Item.Material == "" {
		return fmt.Sprintf("Write `rated` on `%s` from its data sheet, or its `class` and `material`", u.Item.ID)
	}
	return fmt.Sprintf("Write `rated` on `%s` from its data sheet, or its `class`", u.Item.ID)
}

// commonClass is the class of forged fittings that shops have: a part whose ends it says nothing of
// is not asked for one.
const commonClass = "class 3000"

// classGap says why the class of a unit tells nothing of a port of it in a segment; "" for
// a unit without a class.
func classGap(s *bom.System, g *segment.Segment, u *graph.Unit) string {
	for i := range u.Item.Ports {
		if s.Segments.SegmentOf(u.First+i) != g || s.Ratings.Port(u.First+i).Known {
			continue
		}
		for _, end := range u.Item.Ports[i].End.Candidates {
			if why := pressure.ClassGap(u.Item.Class, u.Item.Material, end.Family.String(), end.Sex == threads.Male, end.Size); why != "" {
				return why
			}
		}
	}
	return ""
}

// hoseGap says why the spec or the wall of a hose or a pipe tells nothing; "" where neither
// is said.
func hoseGap(u *graph.Unit) string {
	it := u.Item
	if !it.IsHose() {
		return ""
	}
	if spec, ok := pressure.HoseSpec(it.Spec); ok && it.Bore != nil {
		return pressure.HoseGap(spec, *it.Bore)
	}
	return pressure.PipeGap(strings.Join([]string{it.Pipe, it.Spec, it.Material}, ", "))
}

// guessed speaks of a unit that only an estimate rates: of a hose of a known standard it
// is the ends that are in doubt.
func guessed(s *bom.System, g *segment.Segment, u *graph.Unit, h rating.Allowable) finding.Finding {
	about := bars(h.Rating.Pressure)
	switch h.Rating.Basis {
	case pressure.MakersSeries:
		return unrated(s, g, u, fmt.Sprintf("of its size the standard says nothing that is known, and one maker's series has %s (%s)", about, h.Rating.Text),
			fmt.Sprintf("Write `rated` on `%s` from the data sheet of this very hose", u.Item.ID))
	case pressure.OtherSize:
		return unrated(s, g, u, fmt.Sprintf("its size is not in the table, and another size has %s (%s)", about, h.Rating.Text),
			fmt.Sprintf("Write `rated` on `%s` from the data sheet of this very hose", u.Item.ID))
	}
	if u.Item.IsHose() && h.Table != nil && !h.Table.Basis.Guess() {
		return unrated(s, g, u, fmt.Sprintf("its end fittings are known by an estimate only, of %s, which is less than the hose holds", about),
			fmt.Sprintf("Write `rated` on `%s` as the shop that makes it up states it", u.Item.ID))
	}
	return unrated(s, g, u, fmt.Sprintf("only an estimate, of %s, says what it holds", about), asked(u))
}

// estimated finds a port of a unit in a segment of which only a guess is known.
func estimated(s *bom.System, g *segment.Segment, u *graph.Unit) (rating.Allowable, bool) {
	for i := range u.Item.Ports {
		h := s.Ratings.Port(u.First + i)
		if s.Segments.SegmentOf(u.First+i) != g || !h.Known || !h.Estimate {
			continue
		}
		if h.Rating.Basis != pressure.Estimate && overloaded(h, s.States.PortLoad(u.First+i)) != nil {
			continue // even another's figure is too little: under-rated says so
		}
		return h, true
	}
	return rating.Allowable{}, false
}

// least says what a part must hold in a segment; nothing where no figure has a bound.
func least(s *bom.System, g *segment.Segment) string {
	p, ok := s.Segments.Needs(g)
	if !ok {
		return ""
	}
	return fmt.Sprintf("; it needs %s or more", barsUp(p))
}

// worstOf is the highest pressure of a segment that has a bound, in words.
func worstOf(g *segment.Segment) string { return bars(max(g.Load.Act, g.Load.Fail)) }
