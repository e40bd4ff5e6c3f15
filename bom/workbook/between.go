package workbook

import (
	"fmt"
	"slices"
	"strings"
)

// between finds what changed in each line since the last issue.
func (c *carry) between(k *counted) []string {
	c.now.details = map[string]string{}
	var ordered, others []string
	for i := range k.shops {
		s := &k.shops[i]
		for j := range s.Lines {
			l := &s.Lines[j]
			key := lineKey(s.ID, l.Key)
			if c.was[rowID{buyName, key}] == nil {
				continue
			}
			var changes []string
			tell := func(what, before, now string) {
				if before != now && !sameNumber(before, now) {
					changes = append(changes, what+" "+orNone(before)+" -> "+orNone(now))
				}
			}
			price := ""
			if l.HasPrice {
				price = l.Price.Number()
			}
			if before, ok := c.wasAt(cellID{buyName, key, buyColumns[colOrder].title}); ok {
				tell("order", before, s.lines[j].order.String())
			}
			if before, ok := c.wasAt(cellID{buyName, key, buyColumns[colPrice].title}); ok && !strings.HasPrefix(before, strawSign) {
				tell("price", before, price)
			} else if ok && l.HasPrice {
				tell("price", "", price)
			}
			before, ok := c.wasAt(cellID{detailsName, key, "Must hold"})
			if ok || l.RatingNeeded != "" && c.was[rowID{detailsName, key}] != nil {
				tell("must hold", holds(before), holds(clean(l.RatingNeeded)))
			}
			if len(changes) == 0 {
				continue
			}
			c.now.details[key] = strings.Join(changes, "\n")
			text := l.Item + ", " + l.About + ": " + strings.Join(changes, "; ")
			if v := c.peek(cellID{buyName, key, buyColumns[colOrdered].title}); !v.empty() {
				ordered = append(ordered, text+"; marked as ordered: "+v.shown())
			} else {
				others = append(others, text)
			}
		}
	}
	return append(ordered, others...)
}

// wasAt is what a cell said when it was written.
func (c *carry) wasAt(id cellID) (string, bool) {
	row, ok := c.was[rowID{id.sheet, id.key}]
	i := slices.Index(c.was[rowID{id.sheet, columnsKey}], id.title)
	if !ok || i < 0 {
		return "", false
	}
	if i >= len(row) {
		return "", true
	}
	return strings.TrimPrefix(row[i], textSign), true
}

// both decides between prices that the build and the buyer changed: the build's stands, and the
// buyer's goes where what was paid is written, if nothing stands there.
func (c *carry) both(k *counted) []string {
	var out []string
	now := map[string]string{}
	for i := range k.shops {
		s := &k.shops[i]
		for j := range s.Lines {
			if l := &s.Lines[j]; l.HasPrice {
				now[lineKey(s.ID, l.Key)] = l.Price.Number()
			}
		}
	}
	kept := c.changes[:0]
	for _, x := range c.changes {
		price, known := now[x.id.key]
		paid := cellID{x.id.sheet, x.id.key, buyColumns[colPaid].title}
		if x.id.sheet != buyName || x.id.title != buyColumns[colPrice].title || !known || sameNumber(price, x.was) || sameNumber(price, x.typed) {
			kept = append(kept, x)
			continue
		}
		out = append(out, told(c.labels[rowID{x.id.sheet, x.id.key}], x.id.title, x.was, x.typed, price))
		if number, ok := decimalOf(x.typed); ok && c.peek(paid).empty() {
			c.keep(paid, typed{Text: number, Number: true})
			continue
		}
		kept = append(kept, x)
	}
	c.changes = kept
	return out
}

// asks finds rows under the table that read as a line of the build.
func (c *carry) asks(k *counted) []string {
	var out []string
	for n := range c.besides {
		key := besidesKey(n)
		cell := func(col int) string {
			return strings.ToLower(tidy(c.peek(cellID{buyName, key, buyColumns[col].title}).Text))
		}
		what, code := cell(colItem), cell(colCode)
		if what == "" && code == "" {
			continue
		}
		for i := range k.shops {
			for j := range k.shops[i].Lines {
				l := &k.shops[i].Lines[j]
				named := what != "" && (what == strings.ToLower(l.Item) || strings.Contains(what, "["+strings.ToLower(l.Item)) || what == strings.ToLower(tidy(clean(l.Words))))
				if named || code != "" && l.Code != "" && code == strings.ToLower(clean(l.Code)) {
					out = append(out, fmt.Sprintf("row %d under the table reads as %s: does it stand in its place? Then write 0 as ordered at the line", n+1, l.Item))
				}
			}
		}
	}
	return slices.Compact(out)
}
