package workbook

import (
	"strings"

	"handtight/bom/facts"
	xlsx "handtight/bom/sheet"
)

// dutyName is the sheet of what the plants make and take.
const dutyName = "Duty"

// dutyTitle stands at the head of the sheet. It tells the sheet from one of that name that a
// buyer made.
const dutyTitle = "Duty: what it makes and takes"

// DutyRow is a figure of a plant, a limit, or what follows.
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
		for _, f := range p.Facts {
			out = append(out, DutyRow{Plant: p.Name, What: f.Words, Least: known(f.Low), Middle: known(f.Middle), Greatest: known(f.High), Unit: f.Unit})
		}
		for _, l := range p.Limits {
			out = append(out, DutyRow{Plant: p.Name, What: l.Words, Least: l.Low.Figures(), Middle: l.Value.Figures(), Greatest: l.High.Figures(), Unit: l.Unit,
				Limit: l.Limit.Figures(), Margin: l.Margin.Figures(), Note: l.From, Over: !l.Holds})
		}
		for _, h := range p.Lines {
			if h.High.Value < 1e-3 {
				continue
			}
			out = append(out, DutyRow{Plant: p.Name, What: "in " + h.Unit + " (" + h.Where + ")", Least: known(h.Low), Greatest: known(h.High), Unit: "L/min",
				Note: h.Speed.Figures() + " m/s, loses " + h.Loss.Figures() + " bar"})
		}
		for _, s := range append(append([]string{}, p.Says...), p.Upgrade) {
			if s != "" {
				out = append(out, DutyRow{Plant: p.Name, What: "what follows", Note: s})
			}
		}
		for _, r := range p.Rests {
			said := "said: "
			if !r.Said {
				said = "not said: "
			}
			out = append(out, DutyRow{Plant: p.Name, What: "rests on " + r.What, Note: said + r.Took})
		}
		for _, q := range p.Ask {
			out = append(out, DutyRow{Plant: p.Name, What: "ask", Note: q})
		}
	}
	return out
}

// duty writes the sheet of what the plants make and take.
func (b *book) duty() error {
	l := plainList{
		name: dutyName, title: dutyTitle, tab: middleColor,
		about: "Each figure from the worst to the best of what is said; the middle is of new elements. A reckoning and no promise: the element's maker and the data sheets come first.",
		none:  "The build has no pump and no pressure vessel.",
		columns: []column{
			{title: "Plant", width: 16}, {title: "What", width: 40}, {title: "Least", width: 10}, {title: "Middle", width: 10},
			{title: "Greatest", width: 10}, {title: "Unit", width: 9}, {title: "Limit", width: 9}, {title: "Margin", width: 9}, {title: "Known by, or what to know", width: 60},
		},
		looks: dutyLook,
	}
	for _, d := range b.c.Duty {
		margin := d.Margin
		if d.Over {
			margin = "OVER: " + margin
		}
		l.rows = append(l.rows, []string{d.Plant, d.What, d.Least, d.Middle, d.Greatest, d.Unit, d.Limit, margin, d.Note})
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

// dutySheet reports whether a sheet is the one that [book.duty] writes.
func dutySheet(s *xlsx.Sheet) bool {
	return s.Name == dutyName && len(s.Rows) > 0 && s.Rows[0].Text(0) == dutyTitle
}
