package workbook

import (
	"fmt"
	"strings"

	"handtight/bom/facts"
	"handtight/bom/finding"
)

// findingSpans are the columns of the sheet of rates that a finding's cells take, from and to.
var findingSpans = [][2]int{{0, 0}, {1, 2}, {3, 5}, {6, 6}}

// findings writes under the rates what was found, what the list rests on, and the cautions.
func (s *sheet) findings() {
	list := s.b.c.Findings
	s.endRow("", 6)
	s.wide("findings", fmt.Sprintf("%s, %s, %s. A stop means: do not order or pressurise before it is settled. A check, not a certificate: data sheets, local codes and licensed practice come first.",
		some(facts.Count(list, finding.Stop), "stop"), some(facts.Count(list, finding.Caution), "caution"), some(facts.Count(list, finding.Note), "note")), look{bold: true})
	s.findingRow("findings head", []string{"Severity", "Where", "What was found", "What to do"}, func(int, string) look { return headLook })
	for _, f := range list {
		where := f.At
		if p := placeText(f.File, f.Line); p != "" {
			where += "\n" + p
		}
		s.findingRow("finding|"+f.Slug+"|"+clean(f.At), []string{strings.ToUpper(f.Severity), where, f.Reason, f.Remedy}, findingLook)
	}
	if len(s.b.c.Assumptions) > 0 {
		s.wide("rests head", "What the list rests on", headLook)
	}
	for _, a := range s.b.c.Assumptions {
		s.wide("rests|"+clean(a.What), a.What+": "+a.Value+" ("+a.Basis+")", wordsLook)
	}
	for i, text := range s.b.c.Cautions {
		s.wide(fmt.Sprint("foot|", i), text, look{})
	}
}

// findingRow writes cells over the columns of the rates.
func (s *sheet) findingRow(key string, cells []string, looks func(col int, text string) look) {
	lines := 1
	for i, text := range cells {
		from, to := findingSpans[i][0], findingSpans[i][1]
		style, width := s.b.st.id(looks(i, text)), 0.0
		for c := from; c <= to; c++ {
			width += s.columns[c].width
			s.text(c, style, "")
		}
		s.text(from, style, text)
		lines = max(lines, textLines(text, width, fontSize))
	}
	s.endRow(key, rowHeight(lines, fontSize))
	for _, span := range findingSpans {
		if span[0] < span[1] {
			s.merge(span[0], span[1])
		}
	}
}
