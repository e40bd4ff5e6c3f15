package workbook

import (
	"reflect"
	"slices"
	"strconv"
	"strings"
)

// The kinds of rows that hold something typed. They stand in a hidden column of
// the book: changing one needs a new format.
const (
	kindLine    = "line"
	kindJoint   = "joint"
	kindPrice   = "price"
	kindFreight = "freight"
	kindCustoms = "customs"
	kindTax     = "tax"
	kindRate    = "rate"
	kindLoose   = "loose"
)

// Mark is what the buyer typed into one row of a book. Kind says into which
// sort of row: "line" (Ordered, Received, Remark), "joint" (Done, By), a value
// that was changed from Given to Typed ("price", "freight", "customs", "tax",
// "rate"), or "loose", a row that the buyer added, with its words in Label.
type Mark struct {
	Kind, Shop, Key           string
	Label                     string // what the row was, in words
	Ordered, Received, Remark string
	Due                       string // how many that book said to order; "" if it is not known
	Done, By                  string
	Given, Typed              string  // decimals
	Added                     []Added // what stands in columns that the buyer added
}

// Marks are all that was typed into a book, in its order.
type Marks []Mark

// empty reports whether nothing was typed.
func (m Mark) empty() bool {
	return m.Ordered+m.Received+m.Remark+m.Done+m.By == "" && m.Typed == "" && len(m.Added) == 0
}

// isValue reports whether the mark is a changed value.
func (m Mark) isValue() bool {
	return slices.Contains([]string{kindPrice, kindFreight, kindCustoms, kindTax, kindRate}, m.Kind)
}

// markKey finds a row.
type markKey struct{ kind, shop, key string }

// placement is where each mark goes in a book that is written anew.
type placement struct {
	rows  map[markKey]Mark
	aside []asideMark
	kept  int
	// changed tells of lines that were marked as ordered, and of which another
	// number is due now.
	changed []string
	told    map[markKey]bool   // lines whose number changed has that said already
	changes map[markKey]string // what changed in a line since the last issue
	titles  []string           // of the buyer's own columns
}

// asideMark is a mark without a row to stand in, and why.
type asideMark struct {
	Mark
	why string
}

// line gives the mark of a line; a line without one gets the empty mark.
func (p *placement) line(shop, key string) Mark {
	return p.rows[markKey{kindLine, clean(shop), clean(key)}]
}

// joint gives the mark of a joint.
func (p *placement) joint(j *Joint) Mark {
	return p.rows[markKey{kindJoint, "", clean(j.key())}]
}

// key finds a joint again by its two ports and their ends, not by its number: a
// number moves when a joint is added, and a joint whose ends were changed is to
// be made up again.
func (j *Joint) key() string {
	return strings.Join([]string{j.A, j.B, j.EndA, j.EndB}, " | ")
}

// place finds a row for each mark. What has none is set aside, so that nothing
// typed is lost.
func place(c *counted, marks Marks) *placement {
	p := &placement{rows: map[markKey]Mark{}, told: map[markKey]bool{}, changes: map[markKey]string{}}
	known, values := rowsOf(c)
	due := dueOf(c)
	for _, m := range marks {
		for _, a := range m.Added {
			if !slices.Contains(p.titles, a.Column) {
				p.titles = append(p.titles, a.Column)
			}
		}
		k := markKey{m.Kind, m.Shop, m.Key}
		_, taken := p.rows[k]
		switch {
		case m.Kind == kindLoose:
			p.setAside(m, "This row was added by hand.")
		case m.empty():
		case m.isValue():
			p.value(m, values)
		case !known[k] && m.Kind == kindJoint:
			p.setAside(m, "No joint has these ports and ends now.")
		case !known[k]:
			p.setAside(m, "This shop's order has no such line now.")
		case taken:
			p.setAside(m, "A second mark for the same row.")
		default:
			p.rows[k] = m
			p.kept++
			p.compare(m, due[k])
		}
	}
	return p
}

// compare tells when a line was ordered in another number than is due now.
func (p *placement) compare(m Mark, due thousandth) {
	if m.Ordered != "" && m.Due != "" && !sameNumber(m.Due, due.String()) {
		p.told[markKey{m.Kind, m.Shop, m.Key}] = true
		p.changed = append(p.changed, m.Label+": marked as ordered when "+m.Due+" were due, and now it is "+due.String())
	}
}

// dueOf gives what each line orders.
func dueOf(c *counted) map[markKey]thousandth {
	due := map[markKey]thousandth{}
	for i := range c.shops {
		s := &c.shops[i]
		for j := range s.Lines {
			due[markKey{kindLine, clean(s.ID), clean(s.Lines[j].Key)}] = s.lines[j].order
		}
	}
	return due
}

// value sets a changed value aside, unless the build has taken it over.
func (p *placement) value(m Mark, values map[markKey]string) {
	now, known := values[markKey{m.Kind, m.Shop, m.Key}]
	switch {
	case !known:
		p.setAside(m, "What it belonged to is no longer in the order.")
	case now == "":
		p.setAside(m, "The build file knows none: write it there to use it.")
	case !sameNumber(now, m.Typed):
		p.setAside(m, "The build file says "+now+", and that is used: write yours there to use it.")
	}
}

// setAside keeps a mark once, however often the book is written again.
func (p *placement) setAside(m Mark, why string) {
	for _, old := range p.aside {
		if reflect.DeepEqual(old.Mark, m) {
			return
		}
	}
	p.aside = append(p.aside, asideMark{m, why})
}

// rowsOf lists the rows that marks may stand in, and the values now given.
func rowsOf(c *counted) (known map[markKey]bool, values map[markKey]string) {
	known, values = map[markKey]bool{}, map[markKey]string{}
	for i := range c.shops {
		s := &c.shops[i]
		id := clean(s.ID)
		for j := range s.Lines {
			l := &s.Lines[j]
			known[markKey{kindLine, id, clean(l.Key)}] = true
			given := ""
			if l.HasPrice {
				given = l.Price.Number()
			}
			values[markKey{kindPrice, id, clean(l.Key)}] = given
		}
		if s.Currency != "" {
			values[markKey{kindFreight, id, ""}] = s.Freight.Number()
			values[markKey{kindCustoms, id, ""}] = orZero(s.Customs)
			values[markKey{kindTax, id, ""}] = orZero(s.Tax)
		}
	}
	for _, r := range c.Rates {
		values[markKey{kindRate, "", r.Currency}] = r.Rate
	}
	for i := range c.Joints {
		known[markKey{kindJoint, "", clean(c.Joints[i].key())}] = true
	}
	return known, values
}

func orZero(s string) string {
	if s == "" {
		return "0"
	}
	return s
}

// sameNumber compares two decimals as a spreadsheet keeps them.
func sameNumber(a, b string) bool {
	x, errX := strconv.ParseFloat(a, 64)
	y, errY := strconv.ParseFloat(b, 64)
	return errX == nil && errY == nil && x == y
}
