package cart

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"handtight/bom/money"
	"handtight/threads"
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
	marks   marks
}

// Where gives the line's place: "elbe.csv line 7".
func (l *Line) Where() string {
	if l.Sheet != "" {
		return fmt.Sprintf("%s, sheet %s, row %d", l.Cart, l.Sheet, l.Row)
	}
	return fmt.Sprintf("%s line %d", l.Cart, l.Row)
}

// read turns sheets into lines.
func (c *Cart) read(sheets []sheet, o Options) error {
	lays, err := c.choose(sheets, o)
	if err != nil {
		return err
	}
	for i := range lays {
		l := &lays[i]
		if err := l.override(c.Name, o.Columns); err != nil {
			return err
		}
		if l.head < 0 && len(o.Columns) == 0 {
			l.columns = l.guess()
			c.note("no headings were found%s, so only the texts were read; say --columns text=1,quantity=2 if the columns hold more", inSheet(l.sheet.name))
		}
		c.lines(l, o)
	}
	c.settleCurrency(o)
	return nil
}

func inSheet(name string) string {
	if name == "" {
		return ""
	}
	return fmt.Sprintf(" in sheet %q", name)
}

// choose takes the sheets that are a cart: visible ones with headings, and of them those
// with prices if any has some. What is left out is noted.
func (c *Cart) choose(sheets []sheet, o Options) ([]layout, error) {
	var lays []layout
	var names []string
	for i := range sheets {
		s := &sheets[i]
		names = append(names, s.name)
		if o.Sheet != "" && !strings.EqualFold(s.name, o.Sheet) || len(s.rows) == 0 {
			continue
		}
		if s.hidden && o.Sheet == "" {
			c.note("sheet %q is hidden and was not read; say --sheet to read it", s.name)
			continue
		}
		lays = append(lays, lay(s))
	}
	if o.Sheet != "" && len(lays) == 0 {
		return nil, &ReadError{Cart: c.Name, Reason: fmt.Sprintf("there is no sheet %q with anything in it", o.Sheet), Remedy: "its sheets are " + strings.Join(names, ", ")}
	}
	for _, better := range []func(*layout) bool{func(l *layout) bool { return l.head >= 0 }, (*layout).complete, (*layout).priced} {
		lays = c.only(lays, better)
	}
	defer func() {
		if len(c.skipped) > 0 {
			c.note("another sheet looks more like the cart, so not read were %s; say --sheet to read one", strings.Join(c.skipped, ", "))
		}
	}()
	if len(lays) > 1 && lays[0].head < 0 {
		lays = c.only(lays, func(l *layout) bool { return l.sheet == lays[0].sheet })
	}
	return lays, nil
}

// only keeps the sheets that are better, if any is.
func (c *Cart) only(lays []layout, better func(*layout) bool) []layout {
	var good []layout
	for i := range lays {
		if better(&lays[i]) {
			good = append(good, lays[i])
		}
	}
	if len(good) == 0 {
		return lays
	}
	for i := range lays {
		if !better(&lays[i]) {
			c.skipped = append(c.skipped, strconv.Quote(lays[i].sheet.name))
		}
	}
	return good
}

// guess takes the column with most letters as the text, without headings.
func (l *layout) guess() map[Role][]int {
	count := map[int]int{}
	most := -1
	for i := range l.sheet.rows {
		for k, c := range l.sheet.rows[i].cells {
			if !c.number {
				count[k] += min(len(c.text), 200)
			}
		}
	}
	for k := range maxColumns {
		if count[k] > 0 && (most < 0 || count[k] > count[most]) {
			most = k
		}
	}
	return map[Role][]int{RoleText: {most}}
}

// lines reads the rows below the headings.
func (c *Cart) lines(l *layout, o Options) {
	rows := l.sheet.rows[l.head+1:]
	b := builder{lay: l, cart: c, numbers: l.numbers(rows), readings: map[string]threads.Reading{}}
	if l.head >= 0 {
		b.headCurrency(&l.sheet.rows[l.head])
	}
	for i := range rows {
		if line, ok := b.line(&rows[i]); ok {
			c.Lines = append(c.Lines, line)
		}
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
	l.Text, l.Code, l.Item = b.words(r), b.get(r, RoleCode).text, b.get(r, RoleItem).text
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
	b.out(&l, r)
	b.understand(&l, r)
	return l, true
}

// words joins the columns that describe the part, each once.
func (b *builder) words(r *row) string {
	var parts []string
	for _, role := range []Role{RoleText, RoleSize} {
		for _, k := range b.lay.columns[role] {
			c := r.cell(k)
			if c.text == "" || role == RoleText && c.number && len(b.lay.columns[RoleText]) > 1 {
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
	case l.Item == "" && (l.Code == "" || l.Text == "") && begins("sum", orWords(l.Text, l.Code)):
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
	plain, spec := withoutSpec(withoutQuantity(text))
	reading, seen := b.readings[plain]
	if !seen {
		reading = threads.Read(plain)
		b.readings[plain] = reading
	}
	l.Reading = reading
	l.facts = factsOf(plain, spec, reading)
}

// priceInText is a price that the words hold: a number with its currency beside it.
var priceInText = regexp.MustCompile(`(?i)(€|£|\b(?:eur|usd|gbp|nzd|aud|chf|us\$|nz\$))\s*([0-9][0-9.,]*)|([0-9][0-9.,]*)\s*(€|£|(?:eur|usd|gbp|nzd|aud|chf)\b)`)

// money reads the price, the total and their currency.
func (b *builder) money(l *Line, r *row) {
	price, total := b.get(r, RolePrice), b.get(r, RoleTotal)
	l.Price, l.Total = b.sum(price), b.sum(total)
	l.Currency = currencyOf(b.get(r, RoleCurrency).text)
	for _, c := range []cell{price, total} {
		if l.Currency == "" {
			l.Currency = currencyOf(c.text)
		}
		if l.Currency == "" {
			l.Currency = c.currency
		}
	}
	if m := priceInText.FindStringSubmatch(l.Text); m != nil && l.Price == "" && l.Total == "" && price.text == "" && total.text == "" {
		if n, ok := b.numbers.number(m[2] + m[3]); ok && n != "0" {
			l.Price, l.Currency = n, currencyOf(m[1]+m[4])
		}
	}
	if l.Currency == "" {
		l.Currency = b.currency
	}
	if l.Price != "" && l.Total != "" && l.Counted && l.Amount > 0 {
		l.Adds = addsUp(l)
	}
	if l.Price == "" && l.Total != "" && l.Counted && l.Amount > 0 {
		l.Price, _ = quotient(l.Total, l.Amount.String())
	}
}

// sum reads a sum of money; "" for 0, ??, a blank, words, or a number that may be two.
func (b *builder) sum(c cell) string {
	if c.text == "" || c.date || unknown(c.text) {
		return ""
	}
	n, ok := c.text, c.number
	if !c.number {
		bare := figures.FindAllString(spacers.Replace(c.text), -1)
		if len(bare) != 1 || strings.Contains(c.text, "%") {
			return ""
		}
		n, ok = b.numbers.number(bare[0])
	}
	if whole, _, _ := strings.Cut(n, "."); len(whole) > dearest {
		return ""
	}
	if !ok || n == "0" || strings.HasPrefix(n, "-") || strings.HasPrefix(strings.TrimSpace(c.text), "-") {
		return ""
	}
	return n
}

// dearest is how many digits a price may have before its point.
const dearest = 12

func unknown(text string) bool {
	_, ok := classes()["unknown"][strings.ToLower(strings.TrimSpace(text))]
	return ok || strings.Trim(text, "? ") == ""
}

// addsUp reports whether quantity times price is the total, within the last digit of
// every piece.
func addsUp(l *Line) bool {
	each, ok := quotient(l.Total, l.Amount.String())
	if !ok {
		return true
	}
	return near(each, l.Price)
}

// settleCurrency gives lines without a currency the cart's: said by the person, or the
// only one that the other lines name.
func (c *Cart) settleCurrency(o Options) {
	seen := map[string]int{}
	for i := range c.Lines {
		if cur := c.Lines[i].Currency; cur != "" {
			seen[cur]++
		}
	}
	only := o.Currency
	for cur := range seen {
		if only == "" && len(seen) == 1 {
			only = cur
		}
	}
	c.Currency = only
	for i := range c.Lines {
		if c.Lines[i].Currency == "" {
			c.Lines[i].Currency = only
		}
	}
}
