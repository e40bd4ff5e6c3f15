package workbook

import (
	"fmt"

	"github.com/xuri/excelize/v2"
)

// rules sets the choices for the buyer's columns of the order, and greys a line
// once it has been received, or needs nothing ordered.
func (o *orderSheet) rules() {
	first, last := headRow+1, o.end
	o.choices(span(colOrdered, first, last), "yes", "part")
	o.choices(span(colReceived, first, last), "yes", "part")
	lines := at(colItem, first) + ":" + at(colAsk, last)
	kind, got := fmt.Sprintf(`$%s%d="%s"`, letters(o.shown), first, kindLine), fmt.Sprintf("$%s%d", letters(colReceived), first)
	o.paint(lines, fmt.Sprintf(`AND(%s,%s<>"",%s<>"part",%s<>"no")`, kind, got, got, got), "E6EAEB")
	o.paint(lines, fmt.Sprintf(`AND(%s,$%s%d=0)`, kind, letters(colOrder), first), "")
	for _, r := range o.rows {
		if r.goods > 0 {
			o.positive(span(colPrice, r.first, r.tax()))
		}
	}
}

// choices offers words for some cells. Other words, a date say, may be typed.
func (s *sheet) choices(cells string, words ...string) {
	dv := excelize.NewDataValidation(true)
	dv.SetSqref(cells)
	s.try(dv.SetDropList(words))
	dv.ShowErrorMessage = false
	s.try(s.b.f.AddDataValidation(s.name, dv))
}

// positive takes only numbers from 0 up in some cells.
func (s *sheet) positive(cells string) {
	dv := excelize.NewDataValidation(true)
	dv.SetSqref(cells)
	s.try(dv.SetRange(0, 0, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorGreaterThanOrEqual))
	dv.SetError(excelize.DataValidationErrorStyleStop, "A number is due here", "Write digits alone, from 0 up. The currency or the % stands there by itself.")
	s.try(s.b.f.AddDataValidation(s.name, dv))
}

// paint greys the text, and with a fill the ground, of cells for which the
// formula, written for the first row, holds.
func (s *sheet) paint(cells, formula, fill string) {
	st := &excelize.Style{Font: &excelize.Font{Color: faintColor}}
	if fill != "" {
		st.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{fill}}
	}
	id, err := s.b.f.NewConditionalStyle(st)
	s.try(err)
	s.try(s.b.f.SetConditionalFormat(s.name, cells, []excelize.ConditionalFormatOptions{
		{Type: "formula", Criteria: formula, Format: &id},
	}))
}
