package workbook

import (
	"fmt"
	"slices"
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
	for _, g := range oneCause(list) {
		f := g[0]
		s.findingRow("finding|"+f.Slug+"|"+clean(f.At), groupCells(g), findingLook)
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

// oneCause puts the findings of one cause together, as text and page do, in the order of the first.
func oneCause(list []facts.Finding) [][]facts.Finding {
	var out [][]facts.Finding
	at := map[string]int{}
	for i := range list {
		f := &list[i]
		key := fmt.Sprint(f.Severity, "|", f.Group, "|", f.Slug, "|", f.Cause)
		n, ok := at[key]
		if !ok || f.Group == 0 {
			n = len(out)
			at[key], out = n, append(out, nil)
		}
		out[n] = append(out[n], *f)
	}
	return out
}

// groupCells are the cells of a cause: how grave, every place, and what is said of them, each
// sentence once.
func groupCells(g []facts.Finding) []string {
	var where, reasons, remedies []string
	add := func(list *[]string, text string) {
		if text != "" && !slices.Contains(*list, text) {
			*list = append(*list, text)
		}
	}
	line := ""
	for i := range g {
		if p := placeText(g[i].File, g[i].Line); p != line && p != "" && i > 0 {
			where = append(where, line)
			line = p
		} else if i == 0 {
			line = p
		}
		add(&where, g[i].At)
		add(&reasons, g[i].Reason)
		add(&remedies, g[i].Remedy)
	}
	add(&where, line)
	if len(g) > 1 {
		where = append([]string{fmt.Sprintf("%d places of one cause", len(g))}, where...)
	}
	return []string{strings.ToUpper(g[0].Severity), strings.Join(where, "\n"), strings.Join(reasons, " "), strings.Join(remedies, " ")}
}
