package workbook

import (
	"fmt"
	"regexp"
	"strings"

	"handtight/bom/facts"
	"handtight/bom/finding"
)

// plainList is a sheet of rows that nobody types into.
type plainList struct {
	name, title, about, none string
	tab                      string
	columns                  []column
	rows                     [][]string
	looks                    func(col int, text string) look // nil: words
}

// plainNumber is a text that is shown as a number: no sign, no leading zero.
var plainNumber = regexp.MustCompile(`^(0|[1-9][0-9]{0,11})(\.[0-9]{1,3})?$`)

func (b *book) list(l plainList) error {
	s := b.newSheet(l.name, l.columns, frame{tab: l.tab, headRow: 3, repeat: 3})
	s.title(l.title, l.about)
	s.head()
	for _, row := range l.rows {
		s.listRow(row, l.looks)
	}
	if len(l.rows) == 0 {
		s.text(0, b.st.id(subLook), l.none)
		s.endRow(16)
	}
	return s.finish()
}

func (s *sheet) listRow(row []string, looks func(col int, text string) look) {
	lines := 1
	for i, text := range row {
		l := wordsLook
		if looks != nil {
			l = looks(i, text)
		}
		if l == wordsLook && plainNumber.MatchString(text) {
			s.auto(i, s.b.st.id(numberLook), text)
		} else {
			s.text(i, s.b.st.id(l), text)
		}
		lines = s.tallest(i, text, lines)
	}
	s.endRow(rowHeight(lines, fontSize))
}

func (b *book) spares() error {
	l := plainList{
		name: "Spares", title: "Spares", tab: middleColor,
		about: "What is carried beyond what is fitted, and why. The order has these counts in it.",
		none:  "No spares are carried.",
		columns: []column{
			{title: "Item", width: 20}, {title: "What it is", width: 34}, {title: "Fitted", width: 9},
			{title: "Spares", width: 9}, {title: "Rule", width: 22}, {title: "Why so many", width: 62},
		},
		looks: strongFirst,
	}
	for _, s := range b.c.Spares {
		l.rows = append(l.rows, []string{s.Item, s.About, s.Fitted, s.Count, s.Rule, s.Why})
	}
	return b.list(l)
}

func strongFirst(col int, _ string) look {
	if col == 0 {
		return strongLook
	}
	return wordsLook
}

func (b *book) segments() error {
	l := plainList{
		name: "Segments", title: "Pressure segments", tab: middleColor,
		about: "Each stretch between what raises, drops or can stop pressure: what it sees, and what its weakest part bears.",
		none:  "The build has no segment.",
		columns: []column{
			{title: "Segment", width: 20}, {title: "Runs", width: 18}, {title: "High pressure", width: 10},
			{title: "Normal", width: 12}, {title: "Worst", width: 12}, {title: "What causes the worst", width: 30},
			{title: "Weakest part", width: 22}, {title: "Its rating", width: 12}, {title: "Rating from", width: 24},
			{title: "Margin", width: 12}, {title: "Proof of the weakest", width: 12},
		},
		looks: segmentLook,
	}
	for _, s := range b.c.Segments {
		margin := s.Margin
		if s.Over {
			margin = strings.TrimSuffix("OVER by "+strings.TrimPrefix(margin, "-"), " by ")
		}
		l.rows = append(l.rows, []string{s.Name, s.Runs, yes(s.High), s.Normal, s.Worst, s.Cause, s.Weakest, s.Rating, s.Basis, margin, s.Proof})
	}
	return b.list(l)
}

func segmentLook(col int, text string) look {
	if text == "OVER" || strings.HasPrefix(text, "OVER by ") || text == "no bound" {
		return stopLook
	}
	return strongFirst(col, text)
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return ""
}

func (b *book) findings() error {
	list := b.c.Findings
	stops := facts.Count(list, finding.Stop)
	l := plainList{
		name: "Findings", title: "Findings", tab: middleColor,
		about: fmt.Sprintf("%s, %s, %s. A stop means: do not order or pressurise before it is settled.", some(stops, "stop"),
			some(facts.Count(list, finding.Caution), "caution"), some(facts.Count(list, finding.Note), "note")),
		none: "The check found nothing to say. It is a check, not a certificate.",
		columns: []column{
			{title: "Severity", width: 10}, {title: "Where", width: 26}, {title: "What was found", width: 54},
			{title: "What to do", width: 44}, {title: "In the file", width: 20}, {title: "Rule", width: 20},
		},
		looks: findingLook,
	}
	if stops > 0 {
		l.tab = stopColor
	}
	for _, f := range list {
		l.rows = append(l.rows, []string{strings.ToUpper(f.Severity), f.At, f.Reason, f.Remedy, placeText(f.File, f.Line), f.Slug})
	}
	return b.list(l)
}

func some(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}

func findingLook(col int, text string) look {
	switch {
	case col == 0 && text == "STOP":
		return stopLook
	case col == 0 && text == "CAUTION":
		return warnLook
	case col == 0, col == 1:
		return strongLook
	}
	return look{wrap: true, border: true, format: "@"}
}

func placeText(file string, line int) string {
	if line == 0 {
		return file
	}
	return fmt.Sprintf("%s, line %d", file, line)
}

func (b *book) assumptions() error {
	s := b.newSheet("Assumptions", []column{
		{title: "What the list rests on", width: 48}, {title: "Value", width: 30}, {title: "Where it comes from", width: 70},
	}, frame{tab: quietColor, headRow: 3, repeat: 3})
	s.title("Assumptions and cautions", "What was taken as given. A check, not a certificate: data sheets, local codes and licensed practice come first.")
	s.head()
	for _, a := range b.c.Assumptions {
		s.listRow([]string{a.What, a.Value, a.Basis}, strongFirst)
	}
	if len(b.c.Cautions) > 0 {
		s.endRow(10)
		ground := b.st.id(look{fill: shopFill, bold: true, size: 11, low: true})
		s.fill(ground)
		s.text(0, ground, "Cautions")
		s.endRow(20)
	}
	for _, c := range b.c.Cautions {
		s.wide(c)
	}
	return s.finish()
}

// wide writes one text over the whole width of the sheet.
func (s *sheet) wide(text string) {
	width := 0.0
	for _, c := range s.columns[:s.shown] {
		width += c.width
	}
	s.text(0, s.b.st.id(look{wrap: true}), text)
	s.endRow(rowHeight(textLines(text, width, fontSize), fontSize))
	s.merge(0, s.shown-1)
}
