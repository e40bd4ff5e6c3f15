package cart

import (
	"errors"

	"handtight/bom/sheet"
	"handtight/pressure/pattern"
)

// readWorkbook reads the sheets of an XLSX workbook.
func readWorkbook(name string, data []byte, c *Cart) ([]tableSheet, error) {
	b, err := sheet.Read(data, sheet.Limits{Rows: maxRows, Columns: maxColumns, CellBytes: 4 * maxCell})
	if err != nil {
		out := &ReadError{Cart: name, Reason: clean(err.Error()), Remedy: "save it again as XLSX, or as CSV"}
		if e := (*sheet.Error)(nil); errors.As(err, &e) {
			out.Reason, out.Remedy, out.Row = clean(e.Reason), e.Remedy, e.Row
		}
		return nil, out
	}
	if b.Links {
		c.note("the workbook has links to other files: they were not followed, and the values last saved are used")
	}
	currencies := map[string]string{"": ""}
	out := make([]tableSheet, len(b.Sheets))
	for i, s := range b.Sheets {
		out[i] = tableSheet{name: clean(s.Name), hidden: s.Hidden}
		for _, r := range s.Rows {
			if cells := cellsOf(r.Cells, currencies); len(cells) > 0 {
				out[i].rows = append(out[i].rows, row{number: r.Number, hidden: r.Hidden, cells: cells})
			}
		}
	}
	return out, nil
}

// cellsOf takes what matters to a cart; blank cells at the end fall away.
func cellsOf(from []sheet.Cell, currencies map[string]string) []cell {
	out := make([]cell, len(from))
	used := 0
	for i, c := range from {
		currency, known := currencies[c.Format]
		if !known {
			currency = currencyOfFormat(c.Format)
			currencies[c.Format] = currency
		}
		out[i] = cell{text: clean(c.Text), date: c.Date, struck: c.Struck, unsolved: c.Unsolved, currency: currency}
		if c.Number {
			out[i].text, out[i].number = decimalText(c.Text)
		}
		if out[i].text != "" || c.Unsolved {
			used = i + 1
		}
	}
	return out[:used]
}

// codeInFormat is a currency in a number format: [$EUR], [$€-407], "USD".
var codeInFormat = pattern.New(`\[\$([^\]-]+)[^\]]*\]|"([^"]+)"|([€£¥])`)

// currencyOfFormat gives the currency that a number format shows.
func currencyOfFormat(format string) string {
	out := ""
	for _, m := range codeInFormat.FindAllStringSubmatch(format, -1) {
		if c := currencyOf(m[1] + m[2] + m[3]); c != "" {
			out = c
		}
	}
	return out
}
