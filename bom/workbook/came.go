package workbook

import (
	"errors"
	"slices"
	"strings"
)

// Receipt is what a buyer wrote into a book: line by line what was ordered, paid and received,
// and what was bought besides the list.
type Receipt struct {
	Title   string // the build that the book was made for
	Lines   []CameLine
	Besides []CameBesides
	Partial string // why it may not be whole; "" if it is
}

// CameLine is one line of the list. Figures are decimals as text; "" where nothing was written,
// and as it was written where it is no number.
type CameLine struct {
	Shop, Key string // as the build names them
	Code      string // the shop's, as listed
	Row       int    // of the sheet
	Order     string // what the list asked for
	Listed    string // the price on the list; "" if none was known
	Ordered   string
	Paid      string // price of one
	Received  string
	Remark    string
	State     string // as the sheet shows it: "short 2", "due", "in", "?"; "" where nothing was written
}

// CameBesides is one row of what was bought besides.
type CameBesides struct {
	Row                                         int
	Shop, Currency                              string // "" where the row does not say them as the list does
	What, Code, Number, Price, Received, Remark string
}

// Came reads what a buyer wrote into a book of ours.
//
// Errors: *[ForeignFileError] when it is no workbook of ours, or one of the first format, which
// had no prices paid.
func Came(path string, data []byte) (*Receipt, error) {
	e, err := readEarlier(data)
	var foreign *notOurs
	if errors.As(err, &foreign) {
		return nil, &ForeignFileError{path, foreign.why}
	}
	if err != nil {
		return nil, err
	}
	if e.marks != nil {
		return nil, &ForeignFileError{path, "it is of an earlier version, which had no room for what was paid; issue it again with order first"}
	}
	defer e.x.Close()
	out := &Receipt{Title: e.title}
	if !e.whole {
		out.Partial = "its hidden copy is gone: rows are known by their keys alone"
	}
	i := slices.IndexFunc(e.sheets, func(o oldSheet) bool { return o.name == buyName })
	if i < 0 {
		return nil, &ForeignFileError{path, "its sheet Buy is gone"}
	}
	c := e.carryOver()
	m := &matcher{e: e, o: &e.sheets[i], c: newCarry(), given: map[string]bool{}}
	m.c.was = e.was
	m.match()
	for n := range m.o.rows {
		if parts := strings.SplitN(m.keys[n], "|", 3); parts[0] == "line" && len(parts) == 3 {
			out.Lines = append(out.Lines, c.line(m, n, parts[1], parts[2]))
		}
	}
	for n := range c.besides {
		out.Besides = append(out.Besides, c.other(n))
	}
	return out, nil
}

// cameCell is what was typed under a head.
func (c *carry) cameCell(key string, col int) typed {
	return c.peek(cellID{buyName, key, buyColumns[col].title})
}

// said is a figure as a decimal, else the words.
func (v typed) said() string {
	if f := v.figure(); f.ok {
		return f.text
	}
	if number, ok := decimalOf(v.Text); ok {
		return number
	}
	return strings.TrimSpace(v.shown())
}

func (c *carry) line(m *matcher, n int, shop, key string) CameLine {
	k := lineKey(shop, key)
	l := CameLine{Shop: shop, Key: key, Row: m.o.rows[n].Number}
	l.Key, _, _ = strings.Cut(key, shareSign)
	l.Code, _ = c.wasAt(cellID{buyName, k, buyColumns[colCode].title})
	l.Order, _ = c.wasAt(cellID{buyName, k, buyColumns[colOrder].title})
	l.Listed, _ = c.wasAt(cellID{buyName, k, buyColumns[colPrice].title})
	paid := c.cameCell(k, colPaid)
	if strings.HasPrefix(l.Listed, strawSign) { // the list knew no price: what stands there is the buyer's
		l.Listed = ""
		if paid.empty() {
			paid = c.cameCell(k, colPrice)
		}
	}
	for _, x := range c.changes { // a price that was written over is one that was paid
		if x.id == (cellID{buyName, k, buyColumns[colPrice].title}) && paid.empty() {
			paid = typedText(x.typed)
		}
	}
	ordered, received := c.cameCell(k, colOrdered), c.cameCell(k, colReceived)
	l.Ordered, l.Paid, l.Received, l.Remark = ordered.said(), paid.said(), received.said(), c.cameCell(k, colRemark).shown()
	if q, err := parseQuantity(l.Order); err == nil {
		order := maybe{l.Order, q.cell(), true}
		count := ordered.orAll(order)
		due := order
		if count.ok {
			due = count
		}
		l.State = state(order, ordered, received, count, received.orAll(due))
	}
	return l
}

func (c *carry) other(n int) CameBesides {
	k := besidesKey(n)
	cell := func(col int) typed { return c.cameCell(k, col) }
	first := func(a, b typed) string {
		if a.empty() {
			return b.said()
		}
		return a.said()
	}
	b := CameBesides{
		Row: n + 1, What: strings.TrimSpace(cell(colItem).shown()), Code: strings.TrimSpace(cell(colCode).shown()),
		Number: first(cell(colOrdered), cell(colOrder)), Price: first(cell(colPaid), cell(colPrice)),
		Received: cell(colReceived).said(), Remark: cell(colRemark).shown(),
	}
	if shop, code, ok := strings.Cut(strings.TrimSpace(cell(colShop).Text), " "); ok {
		b.Shop, b.Currency = shop, strings.TrimSpace(code)
	}
	return b
}
