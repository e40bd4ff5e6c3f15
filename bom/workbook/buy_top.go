package workbook

import (
	"fmt"
	"strconv"

	"github.com/bojanz/currency"
)

// The heads of the shops' rows, by column of the table under them.
var shopTitles = map[int]string{
	colShop: "Shop", colItem: "Its name and lines", colCode: "Goods", colOrder: "Freight", colPrice: "Customs", colTotal: "Tax",
	colOrdered: "Total", colDiff: "Ordered so far", colRemark: "Difference so far",
}

func (o *buySheet) shopHeads() {
	style := o.b.st.id(headLook)
	for i := range o.shown() {
		text := shopTitles[i]
		if i == colReceived {
			text = "In " + o.b.c.Currency
		}
		o.text(i, style, text)
	}
	o.endRow("shops", 2*lineHeight+4)
	o.merge(colOrdered, colPaid)
	o.merge(colReceived, colState)
}

// sums are what a shop comes to, with what is bought there besides the list.
type sums struct {
	goods, freight, customs, tax, total, inBuild, spent, diff currency.Amount
}

// shop writes one shop's row.
func (o *buySheet) shop(s *countedShop, row int) {
	b, d := o.b, strconv.Itoa(int(s.digits))
	got := b.sums[s.ID]
	plain := b.st.id(look{border: true, right: true, format: plainMoney(int(s.digits))})
	strong := b.st.id(look{border: true, right: true, bold: true, format: moneyFormat(s.Currency, int(s.digits))})
	inBuild := b.st.id(look{border: true, right: true, bold: true, format: moneyFormat(b.c.Currency, b.digits)})
	shops, totals := fixedSpan(colShop, o.first, o.end), fixedSpan(colTotal, o.first, o.end)
	me := "$" + at(colShop, row)
	terms := b.termsRow(s)
	o.text(colShop, b.st.id(strongLook), s.label())
	name := fmt.Sprintf("%s: %s", s.Name, some(len(s.Lines), "line"))
	o.text(colItem, b.st.id(wordsLook), name)
	o.formula(colCode, plain, fmt.Sprintf("ROUND(SUMIFS(%s,%s,%s),%s)", totals, shops, me, d), toCell(got.goods))
	free := ratesName + "!" + fixed(termFree, terms)
	bought := fmt.Sprintf(`COUNTIFS(%s,%s,%s,">0",%s,">=0")+COUNTIFS(%s,%s,%s,">0")`, fixedSpan(colShop, o.first, o.last), me,
		fixedSpan(colOrder, o.first, o.last), fixedSpan(colTotal, o.first, o.last), fixedSpan(colShop, o.besides, o.end), me, fixedSpan(colTotal, o.besides, o.end))
	o.formula(colOrder, plain, fmt.Sprintf("IF(%s=0,0,IF(AND(ISNUMBER(%s),%s>=%s),0,ROUND(%s,%s)))", bought, free, at(colCode, row), free,
		ratesName+"!"+fixed(termFreight, terms), d), toCell(got.freight))
	o.formula(colPrice, plain, fmt.Sprintf("ROUND((%s+%s)*%s/100,%s)", at(colCode, row), at(colOrder, row), ratesName+"!"+fixed(termCustoms, terms), d), toCell(got.customs))
	o.formula(colTotal, plain, fmt.Sprintf("ROUND((%s+%s+%s)*%s/100,%s)", at(colCode, row), at(colOrder, row), at(colPrice, row),
		ratesName+"!"+fixed(termTax, terms), d), toCell(got.tax))
	o.formula(colOrdered, strong, fmt.Sprintf("ROUND(SUM(%s:%s),%s)", at(colCode, row), at(colTotal, row), d), toCell(got.total))
	o.text(colPaid, strong, "")
	o.formula(colReceived, inBuild, fmt.Sprintf("ROUND(%s*%s,%d)", at(colOrdered, row), ratesName+"!"+fixed(termRate, terms), b.digits), toCell(got.inBuild))
	o.text(colState, inBuild, "")
	o.formula(colDiff, plain, fmt.Sprintf("ROUND(SUMIFS(%s,%s,%s),%s)", fixedSpan(colSpent, o.first, o.end), shops, me, d), toCell(got.spent))
	o.formula(colRemark, plain, fmt.Sprintf("ROUND(SUMIFS(%s,%s,%s),%s)", fixedSpan(colDiff, o.first, o.end), shops, me, d), toCell(got.diff))
	o.endRow("shop|"+clean(s.ID), rowHeight(max(o.tallest(colItem, name, 1), o.tallest(colShop, s.label(), 1)), fontSize))
	o.merge(colOrdered, colPaid)
	o.merge(colReceived, colState)
}

// grandTotal writes the row that closes the shops.
func (o *buySheet) grandTotal() {
	b := o.b
	l := look{fill: headFill, color: whiteColor, bold: true, low: true}
	o.fill(b.st.id(l))
	o.text(colItem, b.st.id(l), "Grand total in "+b.c.Currency)
	l.right, l.format = true, moneyFormat(b.c.Currency, b.digits)
	plain := l
	plain.format = plainMoney(b.digits)
	first, last := o.shopHead+1, o.grand-1
	sum, spent, diff := "0", "0", "0"
	if len(o.shops) > 0 {
		rates := ratesName + "!" + fixedSpan(termRate, b.termsRow(o.shops[0]), b.termsRow(o.shops[len(o.shops)-1]))
		sum = fmt.Sprintf("ROUND(SUM(%s),%d)", span(colReceived, first, last), b.digits)
		spent = fmt.Sprintf("ROUND(SUMPRODUCT(%s,%s),%d)", span(colDiff, first, last), rates, b.digits)
		diff = fmt.Sprintf("ROUND(SUMPRODUCT(%s,%s),%d)", span(colRemark, first, last), rates, b.digits)
	}
	all := b.grandSums()
	o.formula(colReceived, b.st.id(l), sum, toCell(all.inBuild))
	o.formula(colDiff, b.st.id(plain), spent, toCell(all.spent))
	o.formula(colRemark, b.st.id(plain), diff, toCell(all.diff))
	o.endRow("grand", 16)
	o.merge(colReceived, colState)
}

// grandSums adds up the shops in the build's currency; what was spent so far is converted
// whole, as the formula does.
func (b *book) grandSums() sums {
	all := sums{inBuild: zero(b.c.Currency), spent: zero(b.c.Currency), diff: zero(b.c.Currency)}
	for i := range b.c.shops {
		s := &b.c.shops[i]
		got, ok := b.sums[s.ID]
		if !ok {
			continue
		}
		all.inBuild, _ = add(all.inBuild, got.inBuild)
		for _, part := range []struct {
			to   *currency.Amount
			from currency.Amount
		}{{&all.spent, got.spent}, {&all.diff, got.diff}} {
			if here, err := part.from.Convert(b.c.Currency, s.rate); err == nil {
				*part.to, _ = add(*part.to, here)
			}
		}
	}
	all.spent, all.diff = all.spent.Round(), all.diff.Round()
	return all
}

// plainMoney is a number format without the currency's code, which stands beside.
func plainMoney(decimals int) string {
	f := "#,##0"
	if decimals > 0 {
		f += "."
		for range decimals {
			f += "0"
		}
	}
	return f
}
