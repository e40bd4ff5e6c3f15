package workbook

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom/facts"
	"handtight/bom/finding"
)

// findingSpans are the columns of the sheet of rates that a finding's cells take, from and to.
var findingSpans = [][2]int{{0, 0}, {1, 1}, {2, 5}, {6, 6}}

// findings writes under the rates what was found.
func (s *sheet) findings() {
	list := s.b.c.Findings
	s.endRow("", 6)
	s.wide("findings", fmt.Sprintf("%s, %s, %s. A stop means: do not order or pressurise before it is settled. A check, not a certificate: data sheets come first.",
		some(facts.Count(list, finding.Stop), "stop"), some(facts.Count(list, finding.Caution), "caution"), some(facts.Count(list, finding.Note), "note")), look{bold: true})
	s.findingRow("findings head", []string{"Severity", "Where", "What was found", "What to do"}, func(int, string) look { return headLook })
	for _, g := range oneCause(list) {
		f := g[0]
		s.findingRow("finding|"+f.Slug+"|"+clean(f.At), groupCells(g), findingLook)
	}
}

// cautions writes the usual cautions over the whole width.
func (s *sheet) cautions() {
	s.endRow("", 6)
	for i, text := range s.b.c.Cautions {
		s.wide(fmt.Sprint("caution|", i), text, look{})
	}
}

// rests writes what the list rests on, and what the figures of the duty do: over the whole width,
// on a sheet that has room. What one basis bears stands in one row.
func (s *sheet) rests() {
	list := restsOf(s.b.c.Assumptions)
	said := dutyNotes(s.b.c.Duty)
	if len(list)+len(said) == 0 {
		return
	}
	s.endRow("", 6)
	s.wide("rests head", "What the list rests on", headLook)
	for _, r := range list {
		s.wide("rests|"+clean(r.key), r.text, wordsLook)
	}
	for i, text := range said {
		s.wide(fmt.Sprint("duty note|", i), text, wordsLook)
	}
}

// restMost is how many letters one row gathers: a row of a sheet is at most 409 points high, and
// what is beyond that is neither seen nor printed.
const restMost = 1500

// rest is a row of what the list rests on, under the first thing that it says.
type rest struct{ key, basis, text string }

func restsOf(list []Assumption) []rest {
	var out []rest
	for _, a := range list {
		says := a.What + ": " + a.Value
		if i := slices.IndexFunc(out, func(r rest) bool { return r.basis == a.Basis && len(r.text)+len(says) < restMost }); i >= 0 {
			out[i].text += "; " + says
			continue
		}
		out = append(out, rest{a.What, a.Basis, says})
	}
	for i := range out {
		out[i].text += " (" + out[i].basis + ")"
	}
	return out
}

// findingRow writes cells over the columns of the rates.
func (s *sheet) findingRow(key string, cells []string, looks func(col int, text string) look) {
	s.spanRow(key, findingSpans, cells, looks)
}

// spanRow writes cells that each take several columns, from and to. One that is the buyer's to
// fill in is left out of the cells, and is the last.
func (s *sheet) spanRow(key string, spans [][2]int, cells []string, looks func(col int, text string) look) {
	lines := 1
	if len(cells) < len(spans) {
		lines = s.straw(spans[len(cells)][0], s.b.st.id(typedLook), key, lines)
	}
	for i, text := range cells {
		from, to := spans[i][0], spans[i][1]
		style, width := s.b.st.id(looks(i, text)), 0.0
		for c := from; c <= to; c++ {
			width += s.columns[c].width
			s.text(c, style, "")
		}
		s.text(from, style, text)
		lines = max(lines, textLines(text, width, fontSize))
	}
	s.endRow(key, rowHeight(lines, fontSize))
	for _, span := range spans {
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
