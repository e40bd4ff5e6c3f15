package workbook

import (
	"fmt"
	"strconv"

	"github.com/xuri/excelize/v2"
)

// lineStyles are the style numbers of a line, looked up once.
type lineStyles struct {
	words, strong, code, figure, some, order, unit, lead, typed, noPrice, sum int
	prices                                                                    map[int]int // of a shop, by the decimals shown
}

func (b *book) lineStyles() lineStyles {
	return lineStyles{
		words:   b.st.id(wordsLook),
		strong:  b.st.id(strongLook),
		code:    b.st.id(look{wrap: true, border: true, format: "@"}),
		figure:  b.st.id(look{border: true, mid: true, format: "General"}),
		some:    b.st.id(look{border: true, mid: true, format: `General;-General;"–"`}),
		order:   b.st.id(look{border: true, mid: true, format: "General", bold: true, fill: sumFill}),
		unit:    b.st.id(look{border: true, mid: true}),
		lead:    b.st.id(look{border: true, wrap: true, indent: true}),
		typed:   b.st.id(typedLook),
		noPrice: b.st.id(look{border: true, right: true, bold: true, color: warnColor, format: "General"}),
	}
}

// shop writes a shop's heading, its lines and its sums.
func (o *orderSheet) shop(s *countedShop, r shopRows) {
	ground := o.b.st.id(look{fill: shopFill, bold: true, size: 11, low: true})
	o.fill(ground)
	o.text(colItem, ground, shopHeading(s))
	o.endRow(20)
	st := o.line
	st.prices = map[int]int{}
	st.sum = o.b.st.id(look{border: true, right: true, format: moneyFormat(s.Currency, int(s.digits))})
	for i := range s.Lines {
		o.oneLine(s, &s.Lines[i], s.lines[i], st)
	}
	if s.Currency != "" {
		o.sums(s, r)
	}
	o.endRow(8)
}

func shopHeading(s *countedShop) string {
	switch {
	case s.ID == "" && s.Name == "":
		return "No offer yet: find a shop, and ask for the price"
	case s.Currency == "":
		return s.Name
	}
	return fmt.Sprintf("%s: prices in %s", s.Name, s.Currency)
}

// oneLine writes one line of a shop.
func (o *orderSheet) oneLine(s *countedShop, l *Line, q quantities, st lineStyles) {
	mark := o.b.placed.line(s.ID, l.Key)
	lines := 1
	for _, part := range []struct {
		col, style int
		text       string
	}{
		{colItem, st.strong, l.Item}, {colAbout, st.words, l.About}, {colEnds, st.words, l.Ends},
		{colMaterial, st.words, l.Material}, {colNeeded, st.words, l.RatingNeeded}, {colFound, st.words, l.RatingFound},
		{colCode, st.code, l.Code}, {colUnit, st.unit, l.Unit}, {colLead, st.lead, l.Lead},
		{colJoints, st.words, l.Joints}, {colAsk, st.words, l.Question},
		{colOrdered, st.typed, mark.Ordered}, {colReceived, st.typed, mark.Received}, {colRemark, st.typed, mark.Remark},
	} {
		o.text(part.col, part.style, part.text)
		lines = o.tallest(part.col, part.text, lines)
	}
	lines = o.own(s, l, mark, st, lines)
	o.figures(q, st)
	given := o.price(s, l, q, st)
	o.keys(kindLine, s.ID, l.Key, given)
	o.endRow(rowHeight(lines, fontSize))
}

// figures writes the quantities; need and order are formulas. The inner ROUND
// keeps a binary rest such as 0.1 + 0.2 - 0.3 from becoming one more pack.
func (o *orderSheet) figures(q quantities, st lineStyles) {
	for i, n := range [...]thousandth{q.placed, q.planned, q.spare, q.extra, q.have} {
		o.number(colPlaced+i, st.some, n.cell())
	}
	row := strconv.Itoa(o.row + 1)
	o.formula(colNeed, st.figure, "ROUND(SUM("+placedCol+row+":"+extraCol+row+")-"+haveCol+row+",3)", q.need.cell())
	if q.pack == 0 {
		o.formula(colOrder, st.order, "MAX("+needCol+row+",0)", q.order.cell())
		o.text(colPack, st.figure, "")
		return
	}
	o.formula(colOrder, st.order, "IF("+needCol+row+"<=0,0,ROUND(ROUNDUP(ROUND("+needCol+row+"/"+packCol+row+",9),0)*"+packCol+row+",3))",
		q.order.cell())
	o.number(colPack, st.figure, q.pack.cell())
}

// The letters of the columns that a line's formulas read.
var (
	placedCol, extraCol, haveCol         = letters(colPlaced), letters(colExtra), letters(colHave)
	needCol, orderCol, packCol, priceCol = letters(colNeed), letters(colOrder), letters(colPack), letters(colPrice)
)

// price writes a line's price and total, and returns the price as it was given.
// A price that is not known is an empty cell for the buyer, never a zero.
func (o *orderSheet) price(s *countedShop, l *Line, q quantities, st lineStyles) (given string) {
	row := strconv.Itoa(o.row + 1)
	price, order := priceCol+row, orderCol+row
	if l.HasPrice {
		o.number(colPrice, o.priceStyle(s, priceDecimals(l.Price, s.digits), st), toCell(l.Price))
		o.formula(colTotal, st.sum, "ROUND("+price+"*"+order+","+strconv.Itoa(int(s.digits))+")", toCell(l.Total))
		return l.Price.Number()
	}
	value := ""
	if q.order > 0 {
		value = noPrice
	}
	if s.Currency == "" {
		o.text(colPrice, st.figure, "")
		o.formula(colTotal, st.noPrice, fmt.Sprintf(`IF(%s>0,"%s","")`, order, noPrice), value)
		return ""
	}
	o.put(colPrice, excelize.Cell{StyleID: o.b.st.id(look{border: true, right: true, typed: true, fill: typedFill,
		format: moneyFormat(s.Currency, int(s.digits))})})
	o.formula(colTotal, o.b.st.id(look{border: true, right: true, bold: true, color: warnColor,
		format: moneyFormat(s.Currency, int(s.digits))}),
		fmt.Sprintf(`IF(ISNUMBER(%s),ROUND(%s*%s,%d),IF(%s>0,"%s",""))`, price, price, order, s.digits, order, noPrice), value)
	return ""
}

// priceStyle gives the style of a price with that many decimals.
func (o *orderSheet) priceStyle(s *countedShop, decimals int, st lineStyles) int {
	id, ok := st.prices[decimals]
	if !ok {
		id = o.b.st.id(look{border: true, right: true, format: moneyFormat(s.Currency, decimals)})
		st.prices[decimals] = id
	}
	return id
}

// keys writes the hidden cells by which a mark finds its row again.
func (s *sheet) keys(kind, shop, key, given string) {
	if s.hidden == 0 {
		s.hidden = s.b.st.id(look{format: "@"})
	}
	for i, text := range []string{kind, shop, key, given} {
		s.text(s.shown+i, s.hidden, text)
	}
}
