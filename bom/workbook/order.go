package workbook

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom/facts"
	"handtight/bom/finding"
)

// The columns of the order, and behind them the hidden ones by which what the
// buyer typed finds its line again.
const (
	colItem = iota
	colAbout
	colEnds
	colMaterial
	colNeeded
	colFound
	colCode
	colPlaced
	colPlanned
	colSpare
	colExtra
	colHave
	colNeed
	colOrder
	colUnit
	colPack
	colPrice
	colTotal
	colLead
	colJoints
	colAsk
	colOrdered
	colReceived
	colRemark
	colKind
)

// hiddenColumns carry the marks' keys; the first one's head is the book's mark.
var hiddenColumns = []column{
	{title: formatMark, width: 12, hidden: true}, {title: "shop", width: 12, hidden: true},
	{title: "key", width: 12, hidden: true}, {title: "given", width: 12, hidden: true},
}

var orderColumns = slices.Concat([]column{
	colItem:     {title: "Item", width: 12},
	colAbout:    {title: "What it is", width: 17},
	colEnds:     {title: "Both ends", width: 18},
	colMaterial: {title: "Material", width: 9},
	colNeeded:   {title: "Rating needed", width: 11},
	colFound:    {title: "Rating found", width: 11.5},
	colCode:     {title: "Shop's code", width: 10.5},
	colPlaced:   {title: "Placed", width: 3.8, tilt: true},
	colPlanned:  {title: "Planned", width: 3.8, tilt: true},
	colSpare:    {title: "Spare", width: 3.8, tilt: true},
	colExtra:    {title: "Extra", width: 3.8, tilt: true},
	colHave:     {title: "Have", width: 3.8, tilt: true},
	colNeed:     {title: "Need", width: 4.4, tilt: true},
	colOrder:    {title: "ORDER", width: 5, tilt: true},
	colUnit:     {title: "Unit", width: 5.4},
	colPack:     {title: "Pack of", width: 4, tilt: true},
	colPrice:    {title: "Price a unit", width: 11.5},
	colTotal:    {title: "Total", width: 12.5},
	colLead:     {title: "Lead time", width: 9},
	colJoints:   {title: "Serves joints", width: 8},
	colAsk:      {title: "Ask the shop", width: 16},
	colOrdered:  {title: "Ordered", width: 8.5},
	colReceived: {title: "Received", width: 9},
	colRemark:   {title: "Remark", width: 14.5},
}, hiddenColumns)

// The rows above the lines.
const (
	totalRow    = 3
	unpricedRow = 4
	bannerRow   = 5
	headRow     = 6
)

// noPrice stands as the total of what has to be ordered without a known price.
const noPrice = "no price"

// shopRows says where a shop stands: its lines from first to last, then its sums
// from goods on, if it has a currency.
type shopRows struct{ first, last, goods int }

func (r shopRows) freight() int { return r.goods + 1 }
func (r shopRows) customs() int { return r.goods + 2 }
func (r shopRows) tax() int     { return r.goods + 3 }
func (r shopRows) total() int   { return r.goods + 4 }
func (r shopRows) inBuild() int { return r.goods + 5 }

// layout places the shops; end is the row of the grand total.
func layout(shops []countedShop) (rows []shopRows, end int) {
	row := headRow + 1
	for _, s := range shops {
		r := shopRows{first: row + 1, last: row + len(s.Lines)}
		row = r.last + 1
		if s.Currency != "" {
			r.goods = row
			row = r.inBuild() + 1
		}
		rows = append(rows, r)
		row++ // a gap
	}
	return rows, row
}

// orderSheet writes what to order, by shop.
type orderSheet struct {
	*sheet
	rows []shopRows
	end  int
	line lineStyles
}

func (b *book) order() error {
	repeat := headRow
	if facts.Count(b.c.Findings, finding.Stop) > 0 {
		repeat = bannerRow
	}
	o := &orderSheet{sheet: b.newSheet(orderName, withAdded(widened(b.c), b.placed.ownHeads()),
		frame{tab: headFill, headRow: headRow, repeat: repeat, freezeCol: 1, locked: true, room: maxAdded})}
	o.rows, o.end = layout(b.c.shops)
	o.line = b.lineStyles()
	o.rules()
	o.top()
	o.head()
	for i := range b.c.shops {
		o.shop(&b.c.shops[i], o.rows[i])
	}
	o.grand()
	return o.finish()
}

// top writes the rows above the head.
func (o *orderSheet) top() {
	b := o.b
	when := ""
	if b.c.RatesDate != "" {
		when = " at the rates of " + b.c.RatesDate + " (sheet Rates)"
	}
	o.title(b.c.Title, "The order, by shop. Prices in each shop's currency, totals in "+b.c.Currency+when+
		". The straw-coloured cells are yours to fill in; the sums follow.")
	big := b.st.id(look{bold: true, size: 12})
	o.text(colItem, big, "Grand total")
	o.formula(colEnds, b.st.id(look{bold: true, size: 12, left: true, format: moneyFormat(b.c.Currency, b.digits)}),
		at(colTotal, o.end), toCell(b.c.Total))
	o.endRow(20)
	o.merge(colEnds, colNeeded)
	totals := span(colTotal, headRow+1, o.end)
	count := fmt.Sprintf(`COUNTIF(%s,"%s")`, totals, noPrice)
	o.formula(colItem, b.st.id(look{bold: true, color: warnColor}),
		fmt.Sprintf(`IF(%s=0,"",%s&" to order without a price: the total is without them. Ask, and write the price into its straw-coloured cell, or name a shop for it in the build file.")`, count, count),
		unpricedText(b.c.unpriced))
	o.endRow(15)
	o.banner()
}

func unpricedText(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprintf("%d to order without a price: the total is without them. Ask, and write the price into its straw-coloured cell, or name a shop for it in the build file.", n)
}

// banner says over the whole width whether the order may go out.
func (o *orderSheet) banner() {
	stops, cautions := facts.Count(o.b.c.Findings, finding.Stop), facts.Count(o.b.c.Findings, finding.Caution)
	l, text := look{fill: sumFill, low: true}, "No stops. "
	switch {
	case stops == 1:
		l, text = look{fill: stopColor, color: whiteColor, bold: true, size: 12, low: true},
			"1 STOP: do not order before it is settled, see sheet Findings"
	case stops > 1:
		l, text = look{fill: stopColor, color: whiteColor, bold: true, size: 12, low: true},
			fmt.Sprintf("%d STOPS: do not order before they are settled, see sheet Findings", stops)
	case cautions == 1:
		text += "1 caution: read it on sheet Findings before you order."
	case cautions > 1:
		text += fmt.Sprintf("%d cautions: read them on sheet Findings before you order.", cautions)
	}
	style := o.b.st.id(l)
	o.fill(style)
	o.text(colItem, style, text)
	o.endRow(20)
}

// grand writes the closing row.
func (o *orderSheet) grand() {
	l := look{fill: headFill, color: whiteColor, bold: true, size: grandSize, low: true, right: true}
	o.fill(o.b.st.id(l))
	o.text(colPrice, o.b.st.id(l), "Grand total")
	l.format = moneyFormat(o.b.c.Currency, o.b.digits)
	var parts []string
	for i, r := range o.rows {
		if o.b.c.shops[i].Currency != "" {
			parts = append(parts, at(colTotal, r.inBuild()))
		}
	}
	if len(parts) == 0 {
		parts = []string{"0"}
	}
	o.formula(colTotal, o.b.st.id(l), fmt.Sprintf("ROUND(%s,%d)", strings.Join(parts, "+"), o.b.digits), toCell(o.b.c.Total))
	o.endRow(20)
}
