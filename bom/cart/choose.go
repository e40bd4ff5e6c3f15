package cart

import (
	"fmt"
	"strconv"
	"strings"
)

// read turns sheets into lines.
func (c *Cart) read(sheets []tableSheet, o Options) error {
	lays, err := c.choose(sheets, o)
	if err != nil {
		return err
	}
	for i := range lays {
		l := &lays[i]
		if err := l.override(c.Name, o.Columns); err != nil {
			return err
		}
		for _, s := range l.said {
			c.note("%s%s", s, inSheet(l.sheet.name))
		}
		if l.head < 0 && len(o.Columns) == 0 {
			l.columns = l.guess()
			c.Plain = true
			c.note("no headings were found%s, so only the texts were read; say --columns text=1,quantity=2 if the columns hold more", inSheet(l.sheet.name))
		}
		c.lines(l, o)
	}
	c.assignCurrency(o)
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
func (c *Cart) choose(sheets []tableSheet, o Options) ([]layout, error) {
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
