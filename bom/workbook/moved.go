package workbook

import "strings"

// movedRows are rows that stood on a sheet of their own in earlier issues, by the beginning of
// their keys, and where they stand now.
var movedRows = []struct{ from, key, to string }{
	{"Hoses", "hose|", jointsName},
	{"Rates", "rate|", ratesName},
	{"Rates", "terms|", ratesName},
}

// movedTo gives the sheet on which a row stands now.
func movedTo(id rowID) string {
	for _, m := range movedRows {
		if id.sheet == m.from && strings.HasPrefix(id.key, m.key) {
			return m.to
		}
	}
	return id.sheet
}

// moved takes what was typed into rows of such a sheet along to where they stand now.
func (c *carry) moved() {
	for i, id := range c.order {
		to := movedTo(rowID{id.sheet, id.key})
		if to == id.sheet {
			continue
		}
		next := cellID{to, id.key, id.title}
		if v, ok := c.cells[id]; ok {
			delete(c.cells, id)
			c.cells[next] = v
		}
		if why, ok := c.why[id]; ok {
			c.why[next] = why
		}
		c.order[i] = next
	}
	for i := range c.changes {
		id := &c.changes[i].id
		id.sheet = movedTo(rowID{id.sheet, id.key})
	}
	for i, id := range c.noted {
		c.noted[i].sheet = movedTo(id)
	}
	move(c.paints)
	move(c.notes)
	move(c.labels)
}

// move gives the rows of a map their sheets of now.
func move[V any](m map[rowID]V) {
	for id, v := range m {
		if to := movedTo(id); to != id.sheet {
			delete(m, id)
			m[rowID{to, id.key}] = v
		}
	}
}
