package cart

import (
	"fmt"
	"strings"

	"handtight/bom/money"
	"handtight/catalog"
	"handtight/pressure/pattern"
	"handtight/threads"
	"handtight/threads/title"
)

// Line is one line of a cart as it was read. What the line does not say is unknown: a
// Price of "" is not free, and a quantity that is not Counted is not one.
type Line struct {
	Cart  string
	Sheet string // of a workbook
	Row   int    // the file's own number
	Text  string // as it is written, all columns that describe the part
	Code  string // the shop's
	Item  string // the build's own id, where the cart has it

	Amount   money.Quantity // as counted: pieces, packs or metres, see Unit
	Counted  bool
	Unit     string         // "pc", "m", "roll", "coil", "pack", "set", "l", "" where it does not say
	Pack     money.Quantity // pieces in a pack; 0 where it does not say
	Bundle   bool           // the pack is a pair or a set: one is ordered as one
	Length   money.Quantity // metres of one piece or coil; 0 where it does not say
	PerMetre bool           // the words say that it is sold by the metre
	Doubt    string         // why the quantity is not known

	Price    string // of one, as sold; "" unknown
	Total    string // of the line; "" unknown
	Currency string // "" unknown
	Adds     bool   // false when quantity times price is not the total

	Out     string // why the line stays out of the sums: struck out, quantity 0; "" if it counts
	Reading threads.Reading
	facts   facts
	whose   string // the heading of prices that may be of one or of the line
	added   string // what columns beside the text add to it
	marks   marks
}

// Where gives the line's place: "elbe.csv line 7".
func (l *Line) Where() string {
	if l.Sheet != "" {
		return fmt.Sprintf("%s, sheet %s, row %d", l.Cart, l.Sheet, l.Row)
	}
	return fmt.Sprintf("%s line %d", l.Cart, l.Row)
}

// lines reads the rows below the headings.
func (c *Cart) lines(l *layout, o Options) {
	rows := l.sheet.rows[l.head+1:]
	b := builder{lay: l, cart: c, numbers: l.numbers(rows), readings: map[string]threads.Reading{}}
	if l.head >= 0 {
		b.headCurrency(&l.sheet.rows[l.head])
	}
	first := len(c.Lines)
	for i := range rows {
		if line, ok := b.line(&rows[i]); ok {
			c.Lines = append(c.Lines, line)
		}
	}
	if _, said := o.Columns[RolePrice]; !said {
		c.pricesOf(l, first)
	}
	if b.hidden > 0 {
		c.note("hidden rows stay out of the sums%s: %d", inSheet(l.sheet.name), b.hidden)
	}
	if b.unsolved > 0 {
		c.note("formulas without a value are unknown%s: %d; save the workbook again in a spreadsheet program", inSheet(l.sheet.name), b.unsolved)
	}
}

// numbers learns the decimal sign of each column that holds numbers.
func (l *layout) numbers(rows []row) marks {
	var texts []string
	for _, role := range []Role{RolePrice, RoleTotal, RoleQuantity} {
		for _, k := range l.columns[role] {
			for i := range rows {
				if c := rows[i].cell(k); !c.number && !c.date {
					texts = append(texts, c.text)
				}
			}
		}
	}
	return learn(texts)
}

// builder makes lines of rows.
type builder struct {
	lay      *layout
	cart     *Cart
	numbers  marks
	currency string // of the headings
	hidden   int
	unsolved int
	readings map[string]threads.Reading
}

// headCurrency finds the currency in the headings of the prices.
func (b *builder) headCurrency(head *row) {
	for _, role := range []Role{RolePrice, RoleTotal} {
		for _, k := range b.lay.columns[role] {
			if c := currencyOf(head.text(k)); c != "" && b.currency == "" {
				b.currency = c
			}
			if within("gross", head.text(k)) {
				b.cart.note("the column %q has prices with tax; the build's offers are without", head.text(k))
			}
		}
	}
}

func (b *builder) get(r *row, role Role) cell {
	for _, k := range b.lay.columns[role] {
		if c := r.cell(k); c.text != "" || c.unsolved {
			return c
		}
	}
	return cell{}
}

// line reads one row; false for one that holds nothing but marks between sections.
func (b *builder) line(r *row) (Line, bool) {
	l := Line{Cart: b.cart.Name, Sheet: b.lay.sheet.name, Row: r.number, Adds: true, marks: b.numbers}
	l.Text, l.Code, l.Item = unguarded(b.words(r)), unguarded(b.get(r, RoleCode).text), b.get(r, RoleItem).text
	for _, c := range r.cells {
		if c.unsolved {
			b.unsolved++
		}
	}
	if l.Text == "" && l.Code == "" && l.Item == "" {
		if l.Text = b.rest(r); strings.Trim(l.Text, "-=_*. |") == "" {
			return l, false
		}
	}
	b.amount(&l, r)
	b.money(&l, r)
	b.understand(&l, r)
	b.out(&l, r)
	return l, true
}

// unguarded takes off the mark that keeps a cell from being reckoned as a formula.
func unguarded(text string) string {
	if len(text) > 1 && text[0] == '\'' && strings.IndexByte("=+-@", text[1]) >= 0 {
		return text[1:]
	}
	return text
}

// words joins the columns that describe the part, each once.
func (b *builder) words(r *row) string {
	var parts []string
	for _, role := range []Role{RoleText, RoleSize} {
		for _, k := range b.lay.columns[role] {
			c := r.cell(k)
			if c.text == "" || role == RoleText && (c.number || plainNumber(c.text)) && len(b.lay.columns[RoleText]) > 1 {
				continue // the number of a position
			}
			joined := strings.Join(parts, ", ")
			if !strings.Contains(joined, c.text) {
				parts = append(parts, c.text)
			}
		}
	}
	return strings.Join(parts, ", ")
}

// plainNumber reports whether a cell of text holds digits and nothing else.
func plainNumber(text string) bool { return strings.Trim(text, "0123456789") == "" }

// rest gives all of a row that has no text in its place: nothing is dropped.
func (b *builder) rest(r *row) string {
	var parts []string
	for _, c := range r.cells {
		if c.text != "" {
			parts = append(parts, c.text)
		}
	}
	return strings.Join(parts, " | ")
}

// out tells why a line does not count.
func (b *builder) out(l *Line, r *row) {
	status := b.get(r, RoleStatus).text
	struck := b.struck(r)
	switch {
	case r.hidden:
		b.hidden++
		l.Out = "its row is hidden"
	case struck:
		l.Out = "it is struck out"
	case l.Counted && l.Amount == 0:
		l.Out = "its quantity is 0"
	case is("cancelled", status) || is("cancelled", b.get(r, RoleQuantity).text):
		l.Out = "it is marked as not wanted"
	case is("aboard", status) || is("aboard", b.get(r, RolePrice).text) || is("aboard", b.get(r, RoleTotal).text) || is("aboard", b.get(r, RoleQuantity).text):
		l.Out = "it is marked as aboard already; write `have` on the item in the build, so that it counts"
	case l.Item == "" && is("sum", l.Text):
		l.Out = "it is a sum, a tax or the carriage, and no part"
	case l.Item == "" && (l.Code == "" || l.Text == "") && (begins("sum", orWords(l.Text, l.Code)) || l.Code == "" && l.facts.kind == "" && len(l.facts.ends) == 0 && startsWith("sum", l.Text)):
		l.Out = "it is a sum, a tax or the carriage, and no part"
	}
}

// struck reports whether the text, or else the code, is struck out.
func (b *builder) struck(r *row) bool {
	for _, role := range []Role{RoleText, RoleCode, RoleItem} {
		if c := b.get(r, role); c.text != "" {
			return c.struck || strings.HasPrefix(c.text, "~~") && strings.HasSuffix(c.text, "~~")
		}
	}
	return false
}

// gradeStroke is a grade of steel with a stroke behind it, which is no fraction: 316/316L, 304/brass.
var gradeStroke = pattern.New(`\b(30[34]L?|31[67]L?|316Ti|2205|2507)/`)

var membraneWords = pattern.New(`(?i)[\pL-]*membra[\pL-]*`)

var cartridgeWords = pattern.New(`(?i)[\pL-]*(?:cartouche|cartucc|cartuch|kerze|patro|cartridge)[\pL-]*`)

// understand reads what the words say of the part.
func (b *builder) understand(l *Line, r *row) {
	text := l.Text
	for _, role := range []Role{RoleMaterial, RoleRating} {
		add := b.get(r, role).text
		if add != "" && role == RoleRating && !strings.ContainsFunc(add, func(c rune) bool { return c > '9' }) {
			add = "" // a figure without its unit
		}
		if add != "" && !strings.Contains(strings.ToLower(text), strings.ToLower(add)) {
			text += ", " + add
		}
	}
	text = strings.Trim(text, "~")
	l.added = strings.TrimPrefix(text, l.Text)
	plain, spec := withoutSpec(plainly(withoutQuantity(text)))
	l.Reading = b.reading(plain, spec)
	l.facts = factsOf(plain, spec, l.Reading)
	b.settle(l, plain, spec)
	if denied := specDenied(text); denied != "" && l.facts.spec != "" {
		l.facts.spec = ""
		l.facts.doubted("of what standard is it (its words say %q)", denied)
	}
}

// pressureNext are the words and figures of a pressure, at the beginning of a text: behind a stroke they are no end.
var pressureNext = pattern.New(`(?i)^(?:burst|berst|platz|test|proof|prüf|prova|prueba|essai|épreuve|éclatement|scoppio|rotura|max|wp\b|bp\b|[0-9]+(?:[.,][0-9]+)?\s*(?:bar|psi|mpa|kpa|kg/cm2))`)

// strokesOfEnds writes a stroke that stands apart between two ends as an x. Between two pressures, or the words for them, it stays.
func strokesOfEnds(text string) string {
	parts := strings.Split(text, " / ")
	var out strings.Builder
	for n, part := range parts {
		switch {
		case n == 0:
		case pressureNext.MatchString(part):
			out.WriteString(" / ")
		default:
			out.WriteString(" x ")
		}
		out.WriteString(part)
	}
	return out.String()
}

// reading reads the ends of a line's words, once for all lines of the same words.
func (b *builder) reading(plain, spec string) threads.Reading {
	reading, seen := b.readings[plain]
	if !seen {
		ends := plain
		if spec != "" {
			ends = nominalForm.ReplaceAllString(withoutDash(plain), " ") // the hose's own size
		}
		if lower := strings.ToLower(ends); saysAny(lower, "bar", "psi", "pa", "kg/") {
			ends = otherPressure.ReplaceAllString(toleranceForm.ReplaceAllString(ends, " "), " ")
		}
		if strings.Contains(ends, "/") {
			ends = flowSpan.ReplaceAllString(ends, "$1 ")
		}
		ends = gradeStroke.ReplaceAllString(ends, "$1 / ")
		reading = title.Read(strokesOfEnds(ends))
		if isA(kindIn(wordList(ends)), catalog.Separates) && (len(reading.Ends) == 0 || !isA(reading.Kind, catalog.Separates)) {
			reading = title.Read("pressure vessel, " + membraneWords.ReplaceAllString(ends, " ")) // a vessel is called after what is in it
		}
		if kind := kindIn(wordList(ends)); isA(kind, catalog.Filter) && isA(reading.Kind, catalog.Cartridge) {
			reading = title.Read(kind + ", " + cartridgeWords.ReplaceAllString(ends, " ")) // a housing, likewise
		}
		b.readings[plain] = reading
	}
	return reading
}
