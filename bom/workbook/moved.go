package workbook

import "strings"

// movedRows are rows that stood on a sheet of their own in earlier issues, by the beginning of
// their keys, and where they stand now.
var movedRows = []struct{ from, key, to string }{
	{"Hoses", "hose|", jointsName},
	{"Rates", "rate|", ratesName},
	{"Rates", "terms|", ratesName},
	{"Questions", "question|", ratesName},
	{"Duty", "duty|", ratesName},
}

// movedTitles are heads that a column has no longer, by sheet of now and head.
var movedTitles = map[[2]string]string{
	{ratesName, "Answer"}: answerTitle,
	{ratesName, "About"}:  answerTitle,
}

// titleNow is the head of a column as it is now.
func titleNow(sheet, title string) string {
	if now, ok := movedTitles[[2]string{sheet, title}]; ok {
		return now
	}
	return title
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
		next := cellID{to, id.key, titleNow(to, id.title)}
		if next == id {
			continue
		}
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
		id.title = titleNow(id.sheet, id.title)
	}
	for i, id := range c.noted {
		c.noted[i].sheet = movedTo(id)
	}
	move(c.paints)
	move(c.notes)
	move(c.labels)
	for id, byTitle := range c.paints {
		for title, p := range byTitle {
			if now := titleNow(id.sheet, title); now != title {
				delete(byTitle, title)
				byTitle[now] = p
			}
		}
	}
	for id, list := range c.notes {
		for i := range list {
			list[i].title = titleNow(id.sheet, list[i].title)
		}
	}
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
