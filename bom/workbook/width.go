package workbook

import (
	"slices"
	"strconv"
	"strings"
)

// widened gives the order's columns, those of figures as wide as their longest:
// a program shows a number that does not fit as a row of crosses.
func widened(c *counted) []column {
	columns := slices.Clone(orderColumns)
	wide := func(col int, text string, larger float64) {
		columns[col].width = max(columns[col].width, figureWidth(text)*larger)
	}
	for i := range c.shops {
		s := &c.shops[i]
		for j := range s.Lines {
			q := s.lines[j]
			for n, figure := range []thousandth{q.placed, q.planned, q.spare, q.extra, q.have, q.need} {
				wide(colPlaced+n, figure.String(), 1)
			}
			wide(colOrder, q.order.String(), boldWider)
			wide(colPack, q.pack.String(), 1)
			if l := &s.Lines[j]; l.HasPrice {
				wide(colPrice, money(l.Price.Number(), s.Currency, priceDecimals(l.Price, s.digits)), 1)
			}
		}
		if s.Currency != "" {
			wide(colPrice, money(s.Freight.Number(), s.Currency, int(s.digits)), 1)
			wide(colTotal, money(s.Sum.Number(), s.Currency, int(s.digits)), boldWider)
			wide(colTotal, money(s.InBuild.Number(), c.Currency, 2), boldWider)
		}
	}
	wide(colTotal, money(c.Total.Number(), c.Currency, 2), boldWider*grandSize/fontSize)
	return columns
}

// grandSize is the size of the grand total's figures, in points.
const grandSize = 11

// figureWidth gives the column width that shows a figure on one line.
func figureWidth(text string) float64 {
	return (textWidth(text, fontSize) + cellMargin) / digitWidth
}

// money is about how an amount is shown, for its width alone.
func money(number, code string, decimals int) string {
	whole := strconv.FormatFloat(textToCell(number), 'f', 0, 64)
	return whole + strings.Repeat(",", len(whole)/3) + "." + strings.Repeat("0", decimals) + " " + code
}
