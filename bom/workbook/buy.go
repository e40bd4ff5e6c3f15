package workbook

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"handtight/bom/facts"
	"handtight/bom/finding"
)

// The columns of the sheet to buy by.
const (
	colShop = iota
	colItem
	colCode
	colOrder
	colPrice
	colTotal
	colOrdered
	colPaid
	colReceived
	colState
	colDiff
	colRemark
	colSpent
	colCount
	colCame
	colUnit
	colMoney
)

// buyColumns fit a sheet of paper across in type of 9 points: 140.5 units of 7 pixels, with
// margins of a quarter inch on the narrower of A4 and Letter.
var buyColumns = []column{
	colShop:     {title: "Shop", width: 9.8},
	colItem:     {title: "Item and what it is", width: 48.8},
	colCode:     {title: "Code", width: 11.6},
	colOrder:    {title: "Order", width: 7.4},
	colPrice:    {title: "Price each", width: 8.2},
	colTotal:    {title: "Total", width: 8.4},
	colOrdered:  {title: "Ordered", width: 8.2, straw: true},
	colPaid:     {title: "Paid each", width: 8.2, straw: true},
	colReceived: {title: "Received", width: 8.6, straw: true},
	colState:    {title: "State", width: 7},
	colDiff:     {title: "Difference", width: 9.8},
	colRemark:   {title: "Remark", width: 9.8, straw: true},
	colSpent:    {title: "Spent", width: 9, hidden: true},
	colCount:    {title: "Ordered as a number", width: 9, hidden: true},
	colCame:     {title: "Received as a number", width: 9, hidden: true},
	colUnit:     {title: "Unit", width: 9, hidden: true}, // the formats show both; readers of tables do not
	colMoney:    {title: "Currency", width: 9, hidden: true},
}

// noPrice stands as the total of what has to be ordered without a known price.
const noPrice = "no price"

// leastBesides is how many rows for what is bought besides a book has at the least, and
// spareBesides how many of them are empty.
const (
	leastBesides = 15
	spareBesides = 5
)

// buyRow is one line of the table: where it stands in the content.
type buyRow struct {
	shop *countedShop
	line *Line
	q    quantities
}

// buySheet writes what to buy, in one flat table, under the sums by shop.
type buySheet struct {
	*sheet
	rows  []buyRow
	shops []*countedShop // those with a currency

	shopHead, grand, headRow, first, last, besides, end int // rows
	line                                                lineStyles
}

// lineKey finds a line again.
func lineKey(shop, key string) string { return "line|" + clean(shop) + "|" + clean(key) }

// label is how the table names a shop: its id and its money.
func (s *countedShop) label() string {
	switch {
	case s.Currency == "":
		return "?"
	case s.ID == "":
		return s.Currency
	}
	return clean(s.ID) + " " + s.Currency
}

// buyRows sorts the lines by shop, and within it by what is worst to get wrong.
func (k *counted) buyRows() []buyRow {
	var out []buyRow
	for i := range k.shops {
		s := &k.shops[i]
		first := len(out)
		for j := range s.Lines {
			out = append(out, buyRow{s, &s.Lines[j], s.lines[j]})
		}
		slices.SortStableFunc(out[first:], func(a, b buyRow) int { return cmp.Compare(b.line.Danger, a.line.Danger) })
	}
	return out
}

// layout says where everything stands.
func (o *buySheet) layout() {
	b := o.b
	for i := range b.c.shops {
		if b.c.shops[i].Currency != "" {
			o.shops = append(o.shops, &b.c.shops[i])
		}
	}
	o.rows = b.c.buyRows()
	o.shopHead = 4
	if b.c.unpriced > 0 {
		o.shopHead++
	}
	o.grand = o.shopHead + len(o.shops) + 1
	o.headRow = o.grand + 2
	o.first = o.headRow + 1
	o.last = o.headRow + max(len(o.rows), 1)
	o.besides = o.last + 2
	o.end = o.besides + max(leastBesides, b.carry.besides+spareBesides) - 1
}

func (b *book) buy() error {
	o := &buySheet{sheet: &sheet{b: b}}
	o.layout()
	freeze := o.headRow
	if len(o.shops) > 8 {
		freeze = 0 // the heads and what stands above them would fill the window
	}
	o.sheet = b.newSheet(buyName, b.widened(), frame{tab: headFill, head: o.headRow, freeze: freeze, filter: o.last, locked: true, wide: true})
	o.line = b.lineStyles()
	o.rules()
	o.top()
	o.head()
	for i := range o.rows {
		o.oneLine(&o.rows[i])
	}
	if len(o.rows) == 0 {
		o.text(colItem, b.st.id(subLook), "Nothing is to be bought.")
		o.endRow("nothing", 14)
	}
	o.under()
	return o.finish()
}

// top writes the rows above the table.
func (o *buySheet) top() {
	b := o.b
	o.text(colShop, b.st.id(titleLook), b.c.Title)
	o.endRow("title", 18)
	when := ""
	if b.c.RatesDate != "" {
		when = " at the rates of " + b.c.RatesDate + " (sheet Findings)"
	}
	o.wide("about", "Prices in each shop's money, totals in "+b.c.Currency+when+". The straw-coloured cells are yours: "+
		"a number, or yes for all that is listed; sums and differences follow. To sort, lift the protection (it has no password).", subLook)
	o.banner()
	if b.c.unpriced > 0 {
		count := fmt.Sprintf(`COUNTIF(%s,"%s")`, fixedSpan(colTotal, o.first, o.last), noPrice)
		o.formula(colShop, b.st.id(look{bold: true, color: warnColor}),
			fmt.Sprintf(`IF(%s=0,"",%s&"%s")`, count, count, unpricedText), fmt.Sprint(b.c.unpriced)+unpricedText)
		o.endRow("unpriced", 13)
	}
	o.shopHeads()
	for i, s := range o.shops {
		o.shop(s, o.shopHead+1+i)
	}
	o.grandTotal()
	o.endRow("gap", 6)
}

const unpricedText = " to order without a price: the totals are without them. Ask, and write the price under Price each."

// banner says over the whole width whether the order may go out.
func (o *buySheet) banner() {
	list := o.b.c.Findings
	stops, cautions := facts.Count(list, finding.Stop), facts.Count(list, finding.Caution)
	l, text := look{color: faintColor}, "No stops. "
	bad := look{color: stopColor, bold: true, size: 12}
	switch {
	case stops == 1:
		l, text = bad, "DO NOT ORDER: 1 stop. Sheet Findings says what to settle first."
	case stops > 1:
		l, text = bad, fmt.Sprintf("DO NOT ORDER: %d stops. Sheet Findings says what to settle first.", stops)
	case cautions == 1:
		text += "1 caution: read it on sheet Findings before you order."
	case cautions > 1:
		text += fmt.Sprintf("%d cautions: read them on sheet Findings before you order.", cautions)
	}
	o.wide("banner", strings.TrimSpace(text), l)
}

// fixedSpan names the cells of one column so that they stay the same when copied.
func fixedSpan(col, from, to int) string { return fixed(col, from) + ":" + fixed(col, to) }

// widened gives the columns, those of money as wide as their longest: a program shows a number
// that does not fit as a row of crosses. What they take, the item's and the remark's give.
func (b *book) widened() []column {
	columns := slices.Clone(buyColumns)
	more := 0.0
	wide := func(col int, text string, larger float64) {
		if w := figureWidth(text) * larger; w > columns[col].width {
			more += w - columns[col].width
			columns[col].width = w
		}
	}
	for i := range b.c.shops {
		s := &b.c.shops[i]
		for j := range s.lines {
			wide(colOrder, s.lines[j].order.String()+" "+s.Lines[j].Unit, boldWider)
		}
		if s.Currency == "" {
			continue
		}
		wide(colPrice, money(s.dearest(), s.finest()), 1)
		wide(colPaid, money(s.dearest(), s.finest()), 1)
		wide(colTotal, money(toCell(s.Goods), int(s.digits)), 1)
		wide(colDiff, money(toCell(s.Goods), int(s.digits)), 1)
		wide(colCode, money(toCell(s.Goods), int(s.digits)), 1)
		wide(colOrder, money(toCell(s.freight), int(s.digits)), 1)
		wide(colPrice, money(toCell(s.CustomsSum), int(s.digits)), 1)
	}
	columns[colItem].width = math.Max(columns[colItem].width-more, 30)
	return columns
}

// figureWidth gives the column width that shows a figure on one line.
func figureWidth(text string) float64 {
	return (textWidth(text, fontSize) + cellMargin + 2) / digitWidth
}

// money is about how an amount is shown, for its width alone.
func money(number float64, decimals int) string {
	whole := fmt.Sprintf("%.0f", math.Trunc(number))
	return whole + strings.Repeat(",", (len(whole)-1)/3) + "." + strings.Repeat("0", decimals)
}

// dearest gives the highest price of a shop.
func (s *countedShop) dearest() (most float64) {
	for i := range s.Lines {
		if s.Lines[i].HasPrice {
			most = max(most, toCell(s.Lines[i].Price))
		}
	}
	return most
}

// finest gives the most decimals that a price of the shop shows.
func (s *countedShop) finest() int {
	most := int(s.digits)
	for i := range s.Lines {
		if s.Lines[i].HasPrice {
			most = max(most, priceDecimals(s.Lines[i].Price, s.digits))
		}
	}
	return most
}
