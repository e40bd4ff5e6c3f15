package workbook

import (
	"strconv"

	"github.com/xuri/excelize/v2"
)

// besidesDigits is to how many decimals a total under the table is rounded: no money of ours
// has more, and the shop's sums round it to their own.
const besidesDigits = 3

func besidesKey(n int) string { return "besides|" + strconv.Itoa(n+1) }

// under writes the rows for what is bought besides the list: they count in the sums above.
func (o *buySheet) under() {
	b := o.b
	ground := b.st.id(look{fill: shopFill, bold: true, low: true})
	o.fill(ground)
	o.text(colShop, ground, "Bought besides: choose the shop, write number and price each; it counts in the sums at the top")
	o.endRow("besides", 15)
	words := b.st.id(typedLook)
	figure := b.st.id(look{border: true, mid: true, typed: true, fill: typedFill, format: "General", wrap: true})
	price := b.st.id(look{border: true, right: true, typed: true, fill: typedFill, format: plainMoney(2)})
	total := b.st.id(look{border: true, right: true, format: plainMoney(2)})
	blank := b.st.id(look{border: true})
	hidden := b.st.id(look{})
	for n := range o.end - o.besides + 1 {
		key := besidesKey(n)
		got := b.other[key]
		row := strconv.Itoa(o.row + 1)
		lines := 1
		for _, part := range []struct{ col, style int }{
			{colShop, words}, {colItem, words}, {colCode, words}, {colOrder, figure}, {colPrice, price},
			{colOrdered, figure}, {colPaid, price}, {colReceived, figure}, {colRemark, words},
		} {
			lines = o.straw(part.col, part.style, key, lines)
		}
		o.text(colState, blank, "")
		o.text(colDiff, blank, "")
		count, ordered, paid := letCount+row, letOrdered+row, letPaid+row
		value := any("")
		if got.hasTotal {
			value = toCell(got.total)
		}
		o.formula(colCount, hidden, "IF(ISNUMBER("+ordered+"),"+ordered+",IF(ISNUMBER("+letOrder+row+"),"+letOrder+row+`,""))`, got.count.value())
		o.formula(colTotal, total, "IF("+count+`="","",IF(ISNUMBER(`+paid+"),ROUND("+paid+"*"+count+",3),IF(ISNUMBER("+letPrice+row+"),ROUND("+letPrice+row+"*"+count+`,3),"")))`, value)
		o.formula(colSpent, hidden, "IF(ISNUMBER("+letTotal+row+"),"+letTotal+row+`,"")`, value)
		if n >= b.carry.besides {
			key = "" // nothing stands here: what is typed is found as a row of the buyer's
		}
		o.endRow(key, rowHeight(lines, fontSize))
	}
}

// rules sets what may be typed, and marks lines that are short, or in.
func (o *buySheet) rules() {
	for _, col := range []int{colPaid} {
		o.positive(span(col, o.first, o.end))
	}
	o.positive(span(colPrice, o.first, o.end))
	o.positive(span(colOrder, o.besides, o.end))
	for _, col := range []int{colOrdered, colReceived} {
		o.choices(span(col, o.first, o.last), "yes")
	}
	if len(o.shops) > 0 {
		dv := excelize.NewDataValidation(true)
		dv.SetSqref(span(colShop, o.besides, o.end))
		dv.SetSqrefDropList(fixedSpan(colShop, o.shopHead+1, o.grand-1))
		dv.ShowErrorMessage = false
		o.try(o.b.f.AddDataValidation(o.name, dv))
	}
	row := strconv.Itoa(o.first)
	state := "$" + letters(colState) + row
	o.mark(span(colState, o.first, o.last), "LEFT("+state+`,5)="short"`)
	o.paint(at(colShop, o.first)+":"+at(colDiff, o.last), state+`="in"`)
}

// mark gives cells for which the formula holds a pattern: colour alone says nothing.
func (o *buySheet) mark(cells, formula string) {
	id, err := o.b.f.NewConditionalStyle(&excelize.Style{
		Font: &excelize.Font{Color: stopColor, Bold: true},
		Fill: excelize.Fill{Type: "pattern", Pattern: lightUp, Color: []string{stopColor}},
	})
	o.try(err)
	o.try(o.b.f.SetConditionalFormat(o.name, cells, []excelize.ConditionalFormatOptions{{Type: "formula", Criteria: formula, Format: &id}}))
}

// lightUp is the library's number of a pattern of thin slanting lines.
const lightUp = 14

// paint greys the text of cells for which the formula, written for the first row, holds.
func (s *sheet) paint(cells, formula string) {
	id, err := s.b.f.NewConditionalStyle(&excelize.Style{Font: &excelize.Font{Color: faintColor}})
	s.try(err)
	s.try(s.b.f.SetConditionalFormat(s.name, cells, []excelize.ConditionalFormatOptions{{Type: "formula", Criteria: formula, Format: &id}}))
}

// choices offers words for some cells. Other words, a date say, may be typed.
func (s *sheet) choices(cells string, words ...string) {
	dv := excelize.NewDataValidation(true)
	dv.SetSqref(cells)
	s.try(dv.SetDropList(words))
	dv.ShowErrorMessage = false
	s.try(s.b.f.AddDataValidation(s.name, dv))
}

// positive warns where something else than a number from 0 up is typed.
func (s *sheet) positive(cells string) {
	dv := excelize.NewDataValidation(true)
	dv.SetSqref(cells)
	s.try(dv.SetRange(0, 0, excelize.DataValidationTypeDecimal, excelize.DataValidationOperatorGreaterThanOrEqual))
	dv.SetError(excelize.DataValidationErrorStyleStop, "A number is due here", "Write digits alone, from 0 up. The currency stands at the shop.")
	s.try(s.b.f.AddDataValidation(s.name, dv))
}
