package workbook

import (
	"strings"

	"handtight/bom/facts"
	xlsx "handtight/bom/sheet"
)

const partsName = "Parts"

// partsTitle stands at the head of the sheet. It tells the sheet from one of that name
// that a buyer added to a book from before there was this one.
const partsTitle = "Parts: what each hose, fitting and other part sees and holds"

// partsOf lists the placed units, those that need looking at first.
func partsOf(list []facts.Part) []Part {
	var out []Part
	for i := range list {
		p := &list[i]
		row := Part{
			Name: p.Unit, Kind: p.Kind, Segment: p.Segment, High: p.High, Normal: bar(p.Normal), Worst: bar(p.Worst), Cause: p.Cause,
			Holds: bar(p.Bar), Basis: basis(&p.Allowable), Margin: "not known", Unbounded: p.Unbounded, Over: p.Over,
		}
		if p.LowestCause != "" {
			row.Suction = "vacuum: " + p.LowestCause
		}
		switch m := p.Margin; {
		case m.Known && row.Over:
			row.Margin = bar(facts.Figure(-m.Value))
		case m.Known:
			row.Margin = bar(m)
		case row.Over:
			row.Margin = ""
		}
		out = append(out, row)
	}
	return out
}

// parts writes the sheet of parts.
func (b *book) parts() error {
	l := plainList{
		name: partsName, title: partsTitle, tab: middleColor,
		about: "The worst first: no bound, over what it holds, not known, then the least margin. " +
			"A clamped joint may hold less than its hose and its tail: sheet Segments counts it in.",
		none: "No part is placed but what the boat has.",
		columns: []column{
			{title: "Part", width: 20}, {title: "What it is", width: 16}, {title: "Segment", width: 32}, {title: "High pressure", width: 10},
			{title: "Normal", width: 10}, {title: "Worst", width: 11}, {title: "What causes the worst", width: 30},
			{title: "Suction", width: 28}, {title: "It holds", width: 11}, {title: "Rating from", width: 32}, {title: "Margin", width: 16},
		},
		looks: partLook,
	}
	for _, p := range b.c.Parts {
		margin := p.Margin
		if p.Over {
			margin = strings.TrimSuffix("OVER by "+margin, " by ")
		}
		l.rows = append(l.rows, []string{p.Name, p.Kind, p.Segment, yes(p.High), p.Normal, p.Worst, p.Cause, p.Suction, p.Holds, p.Basis, margin})
	}
	return b.list(l)
}

// The columns of the sheet of parts whose words may be a warning.
const (
	partName   = 0
	partWorst  = 5
	partMargin = 10
)

func partLook(col int, text string) look {
	switch {
	case col == partMargin && strings.HasPrefix(text, "OVER"), col == partWorst && text == "no bound":
		return stopLook
	case col == partName:
		return strongLook
	}
	return wordsLook
}

// partsSheet reports whether a sheet is our sheet of parts, by its name and its title.
func partsSheet(s *xlsx.Sheet) bool {
	return s.Name == partsName && len(s.Rows) > 0 && s.Rows[0].Text(0) == partsTitle
}
