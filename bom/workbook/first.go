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
		cell := func(title string) typed {
			c, ok := titles[title]
			if !ok || c >= len(r.Cells) {
				return typed{}
			}
			return typed{Text: strings.TrimSpace(r.Cells[c].Text), Number: r.Cells[c].Number}
		}
		shop, key, given := r.Text(kind+1), r.Text(kind+2), r.Text(kind+3)
		keep := func(sheet, row string, to string, v typed) {
			if v.Text != "" {
				id := cellID{sheet, row, to}
				e.marks.keep(id, v)
				e.marks.label(id, strings.TrimSuffix(strings.TrimPrefix(shop+": "+key, ": "), ": "))
			}
		}
		over := func(sheet, row, to string, v typed) {
			if v.Text != "" && !sameNumber(v.Text, given) {
				id := cellID{sheet, row, to}
				e.marks.changes = append(e.marks.changes, change{id, given, v.Text})
				e.marks.label(id, strings.TrimSpace(to+" "+shop+" "+key))
			}
		}
		price := cell("Price a unit")
		if price.Text == "" {
			price = cell("Typed value")
		}
		switch r.Text(kind) {
		case "line":
			row := lineKey(shop, key)
			for _, title := range []string{"Ordered", "Received", "Remark"} {
				keep(buyName, row, title, cell(title))
			}
			if given == "" {
				keep(buyName, row, buyColumns[colPrice].title, price)
			} else {
				over(buyName, row, buyColumns[colPrice].title, price)
			}
			e.firstAdded(r, titles, row)
		case "price":
			over(buyName, lineKey(shop, key), buyColumns[colPrice].title, price)
		case "joint":
			keep(jointsName, key, "Done", cell("Done"))
			keep(jointsName, key, "By whom", cell("By whom"))
		case "freight":
			over(ratesName, "terms|"+shop, "Freight", price)
		case "customs":
			over(ratesName, "terms|"+shop, "Customs", price)
		case "tax":
			over(ratesName, "terms|"+shop, "Tax", price)
		case "rate":
			if v := cell("Rate, used by the sums"); v.Text != "" {
				price = v
			}
			over(ratesName, "rate|"+key, "Rate", price)
		case "", "loose":
			for _, title := range []string{"Item", "What it was", "Ordered", "Received", "Remark"} {
				if v := cell(title); v.Text != "" && (r.Text(kind) == "loose" || given == "" && firstLoose(r, titles)) {
					id := cellID{buyName, "first|" + strconv.Itoa(r.Number), title}
					e.marks.keep(id, v)
					e.marks.label(id, "a row added by hand")
				}
			}
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
