package workbook

import (
	"fmt"
	"strings"

	"handtight/bom/facts"
)

// dutyTitle stands at the head of the table.
const dutyTitle = "Duty: what it makes and takes"

// restsOn begins a sentence about what a plant's figures rest on.
const restsOn = "Rests on "

// DutyRow is a figure of a plant, a limit, or, with a Note alone, a sentence under the table.
type DutyRow struct {
	Plant, What, Least, Middle, Greatest, Unit, Limit, Margin, Note string
	Over                                                            bool
}

// dutyOf lays out what each plant makes and takes: its figures, its limits, its hoses, and what
// follows from them.
func dutyOf(plants []facts.DutyPlant) []DutyRow {
	var out []DutyRow
	known := func(n facts.Number) string { return strings.TrimPrefix(n.Figures(), "-") }
	for i := range plants {
		p := &plants[i]
		if !p.Made {
			continue
		}
		for _, f := range p.Facts {
			out = append(out, DutyRow{Plant: p.Name, What: f.Words, Least: known(f.Low), Middle: known(f.Middle), Greatest: known(f.High), Unit: f.Unit})
		}
		for _, l := range p.Limits {
			out = append(out, DutyRow{Plant: p.Name, What: l.Words, Least: l.Low.Figures(), Middle: l.Value.Figures(), Greatest: l.High.Figures(), Unit: l.Unit,
				Limit: l.Limit.Figures(), Margin: l.Margin.Figures(), Note: l.From, Over: !l.Holds})
		}
		out = append(out, dutyHoses(p, known)...)
		for _, s := range append(append([]string{}, p.Says...), p.Upgrade) {
			if s != "" {
				out = append(out, DutyRow{Plant: p.Name, Note: s})
			}
		}
		for _, r := range p.Rests {
			said := "said, "
			if !r.Said {
				said = "not said, "
			}
			out = append(out, DutyRow{Plant: p.Name, Note: restsOn + r.What + ": " + said + r.Took})
		}
		for _, q := range p.Ask {
			out = append(out, DutyRow{Plant: p.Name, Note: "Ask: " + q})
		}
	}
	return out
}

// dutyHoses says what runs in the hoses, those alike in one row.
func dutyHoses(p *facts.DutyPlant, known func(facts.Number) string) []DutyRow {
	var out []DutyRow
	at := map[DutyRow]int{}
	for _, h := range p.Lines {
		if h.High.Value < 1e-3 {
			continue
		}
		row := DutyRow{Plant: p.Name, Least: known(h.Low), Greatest: known(h.High), Unit: "L/min",
			Note: h.Speed.Figures() + " m/s, loses " + h.Loss.Figures() + " bar; " + h.Where}
		if n, ok := at[row]; ok {
			out[n].What += ", " + h.Unit
			continue
		}
		at[row] = len(out)
		row.What = "in " + h.Unit
		out = append(out, row)
	}
	return out
}

// dutySpans are the columns that a figure's cells take: what it is and in which unit, the least,
// the middle and the greatest of it, and what is to know.
var dutySpans = [][2]int{{0, 2}, {3, 3}, {4, 4}, {5, 5}, {6, 6}}

// duty writes what the plants make and take under the findings and the questions.
func (s *sheet) duty() {
	list := s.b.c.Duty
	if len(list) == 0 {
		return
	}
	several := severalPlants(list)
	s.endRow("", 6)
	s.wide("duty", dutyTitle, titleLook)
	s.wide("duty about", "Each from the worst to the best of what is said; the middle is of new elements where no age is said. A reckoning, no promise: maker and data sheets come first.", subLook)
	s.spanRow("duty head", dutySpans, []string{"What, and its unit", "Least", "Middle", "Greatest", "Limit, margin, known by, or what to know"}, func(int, string) look { return headLook })
	seen := map[string]int{}
	for _, d := range list {
		if d.What == "" {
			continue
		}
		what, know := d.What, d.Note
		if d.Unit != "" {
			what += ", " + d.Unit
		}
		if several {
			what = d.Plant + ": " + what
		}
		if d.Limit != "" {
			know = strings.TrimSuffix("limit "+d.Limit+", margin "+d.Margin+", "+d.Note, ", ")
		}
		if d.Over {
			know = "OVER: " + know
		}
		seen[d.What]++
		s.spanRow(fmt.Sprintf("duty|%s|%s|%d", clean(d.Plant), clean(d.What), seen[d.What]), dutySpans, []string{what, d.Least, d.Middle, d.Greatest, know}, dutyLook)
	}
}

// severalPlants reports whether the rows are of more than one plant: else its name is in the
// title of the book.
func severalPlants(list []DutyRow) bool {
	for i := range list {
		if list[i].Plant != list[0].Plant {
			return true
		}
	}
	return false
}

// dutyNotes are the sentences about the duty, without figures in columns.
func dutyNotes(list []DutyRow) []string {
	var out []string
	several := severalPlants(list)
	last := "" // the plant whose figures the last sentence says the basis of
	for _, d := range list {
		basis, rests := strings.CutPrefix(d.Note, restsOn)
		if d.What == "" && rests && last == d.Plant {
			out[len(out)-1] += "; " + basis
			continue
		}
		last = ""
		if d.What == "" && rests {
			last = d.Plant
		}
		switch {
		case d.What != "" || d.Note == "":
		case several:
			out = append(out, d.Plant+": "+d.Note)
		default:
			out = append(out, d.Note)
		}
	}
	return out
}

func dutyLook(col int, text string) look {
	switch {
	case col == 4 && strings.HasPrefix(text, "OVER: "):
		return stopLook
	case col == 0:
		return strongLook
	case col < 4:
		return numberLook
	}
	return wordsLook
}
