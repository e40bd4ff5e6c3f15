package workbook

import "fmt"

// sums writes a shop's rows from goods to its total in the build's currency.
func (o *orderSheet) sums(s *countedShop, r shopRows) {
	total := func(row int) string { return at(colTotal, row) }
	input := func(row int) string { return at(colPrice, row) }
	digits := s.digits
	o.sum("Goods", fmt.Sprintf("ROUND(SUM(%s),%d)", span(colTotal, r.first, r.last), digits), s, toCell(s.Goods))

	o.typed(toCell(s.Freight), moneyFormat(s.Currency, int(digits)))
	o.keys(kindFreight, s.ID, "", s.Freight.Number())
	o.sum("Freight, once anything is ordered", fmt.Sprintf(`IF(COUNTIFS(%s,">0",%s,">=0")>0,ROUND(%s,%d),0)`,
		span(colOrder, r.first, r.last), span(colTotal, r.first, r.last), input(r.freight()), digits), s, toCell(s.freight))

	o.typed(textToCell(s.Customs), percentFormat)
	o.keys(kindCustoms, s.ID, "", orZero(s.Customs))
	o.sum("Customs on goods and freight", fmt.Sprintf("ROUND((%s+%s)*%s/100,%d)",
		total(r.goods), total(r.freight()), input(r.customs()), digits), s, toCell(s.CustomsSum))

	o.typed(textToCell(s.Tax), percentFormat)
	o.keys(kindTax, s.ID, "", orZero(s.Tax))
	o.sum("Tax on goods, freight and customs", fmt.Sprintf("ROUND((%s+%s+%s)*%s/100,%d)",
		total(r.goods), total(r.freight()), total(r.customs()), input(r.tax()), digits), s, toCell(s.TaxSum))

	o.strongSum("Shop total", fmt.Sprintf("ROUND(SUM(%s),%d)", span(colTotal, r.goods, r.tax()), digits),
		moneyFormat(s.Currency, int(digits)), toCell(s.Sum))
	o.formula(colPrice, o.b.st.id(look{fill: sumFill, right: true, format: rateFormat}),
		ratesName+"!"+fixed(rateColumn, o.b.rateRow(s.Currency)), textToCell(s.rate))
	o.strongSum("Shop total in "+o.b.c.Currency+", at the rate beside", fmt.Sprintf("ROUND(%s*%s,%d)",
		total(r.total()), input(r.inBuild()), o.b.digits),
		moneyFormat(o.b.c.Currency, o.b.digits), toCell(s.InBuild))
}

// percentFormat shows 5 as 5 %; the number stays what the build file says.
const percentFormat = `General\ "%"`

// typed puts an input of the buyer's into the price column.
func (o *orderSheet) typed(value float64, format string) {
	o.number(colPrice, o.b.st.id(look{right: true, typed: true, border: true, fill: typedFill, format: format}), value)
}

// sum writes one sum row in the shop's currency.
func (o *orderSheet) sum(label, formula string, s *countedShop, value float64) {
	o.sumRow(look{fill: sumFill, right: true}, label, formula, moneyFormat(s.Currency, int(s.digits)), value)
}

func (o *orderSheet) strongSum(label, formula, format string, value float64) {
	o.sumRow(look{fill: sumFill, right: true, bold: true}, label, formula, format, value)
}

// sumRow writes a label, right up to the input, and the sum. The ground covers
// the cells that nothing was put into before.
func (o *orderSheet) sumRow(l look, label, formula, format string, value float64) {
	ground := o.b.st.id(l)
	for i := range o.shown {
		if o.cells[i] == nil {
			o.text(i, ground, "")
		}
	}
	o.text(colPack, ground, label)
	l.format = format
	o.formula(colTotal, o.b.st.id(l), formula, value)
	o.endRow(15)
}
