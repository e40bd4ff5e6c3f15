package workbook

import (
	"fmt"
	"strings"

	"handtight/bom/facts"
)

// dutyName is the sheet of what the plants make and take.
const dutyName = "Duty"

// dutyTitle stands at the head of the sheet.
const dutyTitle = "Duty: what it makes and takes"

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
			out = append(out, DutyRow{Plant: p.Name, Note: "Rests on " + r.What + ": " + said + r.Took})
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

// duty writes the sheet of what the plants make and take.
func (b *book) duty() error {
	l := plainList{
		name: dutyName, title: dutyTitle, tab: middleColor,
		about: "Each figure from the worst to the best of what is said; the middle is of new elements. A reckoning and no promise: the element's maker and the data sheets come first.",
		columns: []column{
			{title: "Plant", width: 16}, {title: "What", width: 40}, {title: "Least", width: 10}, {title: "Middle", width: 10},
			{title: "Greatest", width: 10}, {title: "Unit", width: 9}, {title: "Limit", width: 9}, {title: "Margin", width: 9}, {title: "Known by, or what to know", width: 40},
		},
		looks: dutyLook,
	}
	plants, seen := map[string]bool{}, map[string]int{}
	for _, d := range b.c.Duty {
		plants[d.Plant] = true
	}
	for _, d := range b.c.Duty {
		if d.What == "" {
			note := d.Note
			if len(plants) > 1 {
				note = d.Plant + ": " + note
			}
			l.foot = append(l.foot, note)
			continue
		}
		margin := d.Margin
		if d.Over {
			margin = "OVER: " + margin
		}
		cells := []string{d.Plant, d.What, d.Least, d.Middle, d.Greatest, d.Unit, d.Limit, margin, d.Note}
		if len(plants) < 2 {
			cells[0] = "" // its name is in the title of the book
		}
		seen[d.What]++
		l.rows = append(l.rows, listRow{fmt.Sprintf("duty|%s|%s|%d", clean(d.Plant), clean(d.What), seen[d.What]), cells})
	}
	return b.list(l)
}

func dutyLook(col int, text string) look {
	switch {
	case strings.HasPrefix(text, "OVER: "):
		return stopLook
	case col == 1:
		return strongLook
	}
	return wordsLook
}
