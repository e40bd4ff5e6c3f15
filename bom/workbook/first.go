package workbook

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	xlsx "handtight/bom/sheet"
)

// Books of the first format had no hidden copy: four hidden columns behind the list said of
// each row what it was, and only what the buyer typed into the straw cells can be told. This
// reads them once more, so that a list of before is issued again as one of now.
const (
	firstPrefix = "handtight "
	firstMark   = firstPrefix + "1"
)

// readFirstFormat reads a book of the first format.
func readFirstFormat(b *xlsx.Book) (*earlier, error) {
	e := &earlier{title: b.Title, number: 1, was: map[rowID][]string{}, marks: newCarry(), all: b.Sheets}
	found := false
	var added []string
	for i := range b.Sheets {
		s := &b.Sheets[i]
		head, kind, err := firstHead(s)
		if err != nil {
			return nil, err
		}
		switch {
		case head >= 0:
			found = true
			e.firstRows(s, head, kind)
		case !slices.Contains([]string{"Spares", "Joints", "Segments", "States", "Parts", "Duty", "Findings", "Assumptions", "Rates"}, s.Name):
			added = append(added, strconv.Quote(s.Name))
		}
	}
	switch {
	case !found:
		return nil, &notOurs{"no sheet in it has the mark of a list of ours"}
	case len(added) > 0:
		return nil, &notOurs{"it is of an earlier version, and has what was added by hand and would be lost: sheet " + strings.Join(added, ", sheet ")}
	}
	return e, nil
}

// firstHead finds the marked heads: their row, and the first hidden column; -1 for none.
func firstHead(s *xlsx.Sheet) (row, kind int, err error) {
	for i := range min(len(s.Rows), 40) {
		r := &s.Rows[i]
		for c := range r.Cells {
			text := r.Cells[c].Text
			if !strings.HasPrefix(text, firstPrefix) || r.Text(c+1) != "shop" || r.Text(c+2) != "key" {
				continue
			}
			if text != firstMark {
				return -1, 0, &notOurs{fmt.Sprintf("it is marked %q, and this handtight knows %q", text, firstMark)}
			}
			return i, c, nil
		}
	}
	return -1, 0, nil
}

// firstRows takes up what was typed into the rows of one sheet.
func (e *earlier) firstRows(s *xlsx.Sheet, head, kind int) {
	titles := map[string]int{}
	for c := range kind {
		if title := strings.TrimSpace(s.Rows[head].Text(c)); title != "" {
			if _, twice := titles[title]; !twice {
				titles[title] = c
			}
		}
	}
	for i := head + 1; i < len(s.Rows); i++ {
		r := &s.Rows[i]
		row := firstRow{e: e, Row: r, titles: titles, shop: r.Text(kind + 1), key: r.Text(kind + 2), given: r.Text(kind + 3)}
		row.take(r.Text(kind))
	}
}

// firstRow is a row of a book of the first format, with what its hidden columns say.
type firstRow struct {
	e *earlier
	*xlsx.Row
	titles           map[string]int
	shop, key, given string
}

func (r *firstRow) cell(title string) typed {
	c, ok := r.titles[title]
	if !ok || c >= len(r.Cells) {
		return typed{}
	}
	return typed{Text: strings.TrimSpace(r.Cells[c].Text), Number: r.Cells[c].Number}
}

// keep takes up what stands in a cell that was the buyer's.
func (r *firstRow) keep(sheet, row, to, label string, v typed) {
	if v.Text != "" {
		id := cellID{sheet, row, to}
		r.e.marks.keep(id, v)
		r.e.marks.label(id, label)
	}
}

// over takes up what the buyer typed over a figure that was given.
func (r *firstRow) over(sheet, row, to string, v typed) {
	if v.Text != "" && !sameNumber(v.Text, r.given) {
		id := cellID{sheet, row, to}
		r.e.marks.changes = append(r.e.marks.changes, change{id, r.given, v.Text})
		r.e.marks.label(id, strings.TrimSpace(to+" "+r.shop+" "+r.key))
	}
}

// firstTerms are the kinds of rows that hold what a shop asks, and the columns of now for it.
var firstTerms = map[string]string{"freight": "Freight", "customs": "Customs", "tax": "Tax"}

// take takes up what was typed into a row of a kind.
func (r *firstRow) take(kind string) {
	price := r.cell("Price a unit")
	if price.Text == "" {
		price = r.cell("Typed value")
	}
	label := strings.TrimSuffix(strings.TrimPrefix(r.shop+": "+r.key, ": "), ": ")
	switch kind {
	case "line":
		row := lineKey(r.shop, r.key)
		for _, title := range []string{"Ordered", "Received", "Remark"} {
			r.keep(buyName, row, title, label, r.cell(title))
		}
		if r.given == "" {
			r.keep(buyName, row, buyColumns[colPrice].title, label, price)
		} else {
			r.over(buyName, row, buyColumns[colPrice].title, price)
		}
		r.e.firstAdded(r.Row, r.titles, row)
	case "price":
		r.over(buyName, lineKey(r.shop, r.key), buyColumns[colPrice].title, price)
	case "joint":
		for _, title := range []string{"Done", "By whom"} {
			r.keep(jointsName, r.key, title, label, r.cell(title))
		}
	case "freight", "customs", "tax":
		r.over(ratesName, "terms|"+r.shop, firstTerms[kind], price)
	case "rate":
		if v := r.cell("Rate, used by the sums"); v.Text != "" {
			price = v
		}
		r.over(ratesName, "rate|"+r.key, "Rate", price)
	case "", "loose":
		if kind == "" && (r.given != "" || !firstLoose(r.Row, r.titles)) {
			return
		}
		for _, title := range []string{"Item", "What it was", "Ordered", "Received", "Remark"} {
			r.keep(buyName, "first|"+strconv.Itoa(r.Number), title, "a row added by hand", r.cell(title))
		}
	}
}

// firstLoose reports whether a row without a key has something in a cell that was the buyer's.
func firstLoose(r *xlsx.Row, titles map[string]int) bool {
	for _, title := range []string{"Ordered", "Received", "Remark"} {
		if c, ok := titles[title]; ok && strings.TrimSpace(r.Text(c)) != "" {
			return true
		}
	}
	return false
}

// firstOwn are the heads that the first format wrote on its list.
var firstOwn = []string{
	"Item", "What it is", "Both ends", "Material", "Rating needed", "Rating found", "Shop's code", "Placed", "Planned", "Spare", "Extra", "Have", "Need",
	"ORDER", "Unit", "Pack of", "Price a unit", "Total", "Lead time", "Serves joints", "Ask the shop", "Ordered", "Received", "Remark", "Changed since",
}

// firstAdded takes up a line's cells in columns that the buyer added.
func (e *earlier) firstAdded(r *xlsx.Row, titles map[string]int, row string) {
	if _, list := titles["ORDER"]; !list {
		return
	}
	for title, c := range titles {
		if text := strings.TrimSpace(r.Text(c)); text != "" && !slices.Contains(firstOwn, title) {
			e.marks.keep(cellID{buyName, row, title}, typed{Text: text, Number: r.Cells[c].Number})
			if !slices.Contains(e.marks.added[buyName], title) {
				e.marks.added[buyName] = append(e.marks.added[buyName], title)
			}
		}
	}
}
