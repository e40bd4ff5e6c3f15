package workbook

import (
	"strconv"
	"strings"

	"github.com/bojanz/currency"
)

// lineStyles are the style numbers of a line, looked up once.
type lineStyles struct {
	shop, words, ask, code, link, state, typed, hidden, noPrice int
	orders                                                      map[string]int // by unit
	money                                                       map[int]int    // by decimals
	straw                                                       map[int]int
}

func (b *book) lineStyles() lineStyles {
	return lineStyles{
		shop:    b.st.id(look{border: true, wrap: true}),
		words:   b.st.id(wordsLook),
		ask:     b.st.id(warnLook),
		code:    b.st.id(look{wrap: true, border: true, format: "@"}),
		link:    b.st.id(look{wrap: true, border: true, format: "@", color: linkColor, under: true}),
		state:   b.st.id(look{border: true, mid: true}),
		typed:   b.st.id(typedLook),
		hidden:  b.st.id(look{}),
		noPrice: b.st.id(look{border: true, right: true, bold: true, color: warnColor, format: "General"}),
		orders:  map[string]int{}, money: map[int]int{}, straw: map[int]int{},
	}
}

// amount gives the style of money with that many decimals.
func (o *buySheet) amount(decimals int) int {
	id, ok := o.line.money[decimals]
	if !ok {
		id = o.b.st.id(look{border: true, right: true, format: plainMoney(decimals)})
		o.line.money[decimals] = id
	}
	return id
}

// strawMoney gives the style of a price that is the buyer's to write.
func (o *buySheet) strawMoney(decimals int) int {
	id, ok := o.line.straw[decimals]
	if !ok {
		id = o.b.st.id(look{border: true, right: true, typed: true, fill: typedFill, format: plainMoney(decimals)})
		o.line.straw[decimals] = id
	}
	return id
}

// ordered gives the style of a number to order: the unit stands behind it.
func (o *buySheet) ordered(unit string) int {
	id, ok := o.line.orders[unit]
	if !ok {
		id = o.b.st.id(look{border: true, mid: true, bold: true, fill: sumFill, format: unitFormat(unit)})
		o.line.orders[unit] = id
	}
	return id
}

// unitFormat shows a number with its unit.
func unitFormat(unit string) string {
	unit = strings.Map(func(r rune) rune {
		if r == '"' || r == '\\' || r < ' ' {
			return -1
		}
		return r
	}, unit)
	if unit == "" {
		return "General"
	}
	if len([]rune(unit)) > 12 {
		unit = string([]rune(unit)[:12])
	}
	return `General\ "` + unit + `"`
}

// oneLine writes one line of the table.
func (o *buySheet) oneLine(r *buyRow) {
	s, l := r.shop, r.line
	key := lineKey(s.ID, l.Key)
	said := o.say(r, key)
	lines := max(o.tallest(colItem, said, 1), o.tallest(colShop, s.label(), 1), o.tallest(colCode, l.Code, 1))
	words := o.line.words
	if l.Question != "" {
		words = o.line.ask
	}
	o.text(colShop, o.line.shop, s.label())
	o.text(colItem, words, said)
	code := o.line.code
	if link := l.link(); link != "" && l.Code != "" && o.b.links < mostLinks {
		o.b.links++
		code = o.line.link
		o.try(o.b.f.SetCellHyperLink(o.name, at(colCode, o.row+1), link, "External"))
	}
	o.text(colCode, code, l.Code)
	o.number(colOrder, o.ordered(l.Unit), r.q.order.cell())
	decimals := int(s.digits)
	if l.HasPrice {
		decimals = priceDecimals(l.Price, s.digits)
		o.number(colPrice, o.amount(decimals), toCell(l.Price))
	} else if s.Currency != "" {
		o.straw(colPrice, o.strawMoney(decimals), key, 1)
	} else {
		o.text(colPrice, o.line.shop, "")
	}
	got := o.b.lines[key]
	o.formulas(r, got)
	styled := func(col int) int {
		if col == colPaid && s.Currency != "" {
			return o.strawMoney(decimals)
		}
		return o.line.typed
	}
	quantity := o.b.st.id(look{border: true, mid: true, typed: true, fill: typedFill, format: "General", wrap: true})
	lines = o.straw(colOrdered, quantity, key, lines)
	lines = o.straw(colPaid, styled(colPaid), key, lines)
	lines = o.straw(colReceived, quantity, key, lines)
	lines = o.straw(colRemark, o.line.typed, key, lines)
	o.text(colUnit, o.line.hidden, l.Unit)
	o.text(colMoney, o.line.hidden, s.Currency)
	o.endRow(key, rowHeight(lines, fontSize))
}

// mostLinks is how many codes become links: the library puts them in one by one, and each
// looks at all before it.
const mostLinks = 1000

// link is the shop's page of a line, if it is one that may be opened.
func (l *Line) link() string {
	if strings.HasPrefix(l.URL, "https://") || strings.HasPrefix(l.URL, "http://") {
		return l.URL
	}
	return ""
}

// say writes what a line is, in a shop's words, and under it the build's name for it.
func (o *buySheet) say(r *buyRow, key string) string {
	l := r.line
	words := l.Words
	if words == "" {
		words = l.About
	}
	name := l.Item
	if r.q.pack > 1000 && r.q.order > 0 && l.Unit != "m" {
		name += ", " + some(int(r.q.order/r.q.pack), "pack") + " of " + r.q.pack.String()
	}
	if l.Share != "" {
		name += ", " + l.Share
	}
	text := words
	switch joined := words + " [" + name + "]"; {
	case strings.EqualFold(words, name):
	case words == "":
		text = name
	case textLines(joined, o.columns[colItem].width, fontSize) == textLines(words, o.columns[colItem].width, fontSize):
		text = joined
	default:
		text = words + "\n[" + name + "]"
	}
	if l.Question != "" {
		text = "ASK FIRST (sheet Findings): " + text
	}
	if told := o.b.carry.changed[rowID{o.name, key}]; told != "" {
		text += "\n" + told
	}
	return text
}

// formulas writes what follows from a line's figures and what was typed into it.
func (o *buySheet) formulas(r *buyRow, got lineSums) {
	row, d := strconv.Itoa(o.row+1), strconv.Itoa(int(r.shop.digits))
	order, price, ordered, paid, received := letOrder+row, letPrice+row, letOrdered+row, letPaid+row, letReceived+row
	spent, count, came := letSpent+row, letCount+row, letCame+row
	style := o.amount(int(r.shop.digits))
	none := ""
	if r.q.order > 0 {
		none = noPrice
	}
	switch {
	case r.line.HasPrice:
		o.formula(colTotal, style, "ROUND("+price+"*"+order+","+d+")", toCell(r.line.Total))
	default:
		value := any(none)
		if got.hasTotal {
			value = toCell(got.total)
		}
		o.formula(colTotal, o.line.noPrice, "IF(ISNUMBER("+price+"),ROUND("+price+"*"+order+","+d+"),IF("+order+`>0,"`+noPrice+`",""))`, value)
	}
	o.formula(colCount, o.line.hidden, numberOr(ordered, order), got.count.value())
	o.formula(colCame, o.line.hidden, "IF(ISNUMBER("+received+"),"+received+",IF("+allOf(received)+",IF("+count+`="",`+order+","+count+`),""))`, got.came.value())
	o.formula(colSpent, o.line.hidden, "IF("+count+`="","",IF(ISNUMBER(`+paid+"),ROUND("+paid+"*"+count+","+d+"),IF(ISNUMBER("+price+"),ROUND("+price+"*"+count+","+d+`),"")))`, got.spentValue())
	o.formula(colState, o.line.state, stateFormula(order, ordered, received, count, came), got.state)
	o.formula(colDiff, style, "IF("+spent+`="","",ROUND(`+spent+"-IF(ISNUMBER("+letTotal+row+"),"+letTotal+row+",0),"+d+"))", got.diffValue())
}

// The letters of the columns that a line's formulas read.
var (
	letOrder, letPrice, letTotal     = letters(colOrder), letters(colPrice), letters(colTotal)
	letOrdered, letPaid, letReceived = letters(colOrdered), letters(colPaid), letters(colReceived)
	letSpent, letCount, letCame      = letters(colSpent), letters(colCount), letters(colCame)
)

// allOf is the condition that a cell says all.
func allOf(cell string) string {
	return "OR(" + cell + `="yes",` + cell + `="all",` + cell + `="x")`
}

// numberOr reads a number, or a word for all of it.
func numberOr(cell, all string) string {
	return "IF(ISNUMBER(" + cell + ")," + cell + ",IF(" + allOf(cell) + "," + all + `,""))`
}

// stateFormula says in a word or two how a line stands.
func stateFormula(order, ordered, received, count, came string) string {
	due := "IF(" + count + `="",` + order + "," + count + ")"
	return "IF(AND(" + ordered + `="",` + received + `=""),"",IF(AND(` + ordered + `<>"",` + count + `=""),"?",IF(AND(` + count + `<>"",` + count + "<" + order +
		`),"short "&ROUND(` + order + "-" + count + ",3),IF(" + received + `="","due",IF(` + came + `="","?",IF(` + came + "<" + due + `,"short "&ROUND(` + due + "-" + came + `,3),"in"))))))`
}

// lineSums are the results of a line's formulas.
type lineSums struct {
	total       currency.Amount
	hasTotal    bool
	count, came maybe
	spent, diff currency.Amount
	hasSpent    bool
	state       string
}

// maybe is a number, or an empty text.
type maybe struct {
	text string
	f    float64
	ok   bool
}

func (m maybe) value() any {
	if !m.ok {
		return ""
	}
	return m.f
}

func (s lineSums) spentValue() any {
	if !s.hasSpent {
		return ""
	}
	return toCell(s.spent)
}

func (s lineSums) diffValue() any {
	if !s.hasSpent {
		return ""
	}
	return toCell(s.diff)
}
