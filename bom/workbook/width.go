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
		for j := range s.lines {
			q := &s.lines[j]
			for n, figure := range [...]thousandth{q.placed, q.planned, q.spare, q.extra, q.have, q.need} {
				if figure.long() {
					wide(colPlaced+n, figure.String(), 1)
				}
			}
			if q.order.long() {
				wide(colOrder, q.order.String(), boldWider)
			}
			if q.pack.long() {
				wide(colPack, q.pack.String(), 1)
			}
		}
		if s.Currency != "" {
			wide(colPrice, money(s.dearest(), s.Currency, s.finest()), 1)
			wide(colPrice, money(toCell(s.Freight), s.Currency, int(s.digits)), 1)
			wide(colTotal, money(toCell(s.Sum), s.Currency, int(s.digits)), boldWider)
			wide(colTotal, money(toCell(s.InBuild), c.Currency, 2), boldWider)
		}
	}
	wide(colTotal, money(toCell(c.Total), c.Currency, 2), boldWider*grandSize/fontSize)
	return columns
}

// grandSize is the size of the grand total's figures, in points.
const grandSize = 11

// figureWidth gives the column width that shows a figure on one line.
func figureWidth(text string) float64 {
	return (textWidth(text, fontSize) + cellMargin) / digitWidth
}

// money is about how an amount is shown, for its width alone.
func money(number float64, code string, decimals int) string {
	whole := strconv.FormatFloat(number, 'f', 0, 64)
	return whole + strings.Repeat(",", len(whole)/3) + "." + strings.Repeat("0", decimals) + " " + code
}

// long reports whether a quantity may need more than the two digits that every
// column of figures has room for.
func (q thousandth) long() bool { return q%1000 != 0 || q >= 100_000 || q < 0 }

// dearest gives the highest price of a shop.
func (s *countedShop) dearest() (most float64) {
	for i := range s.Lines {
		if s.Lines[i].HasPrice {
			most = max(most, toCell(s.Lines[i].Price))
		}
	}
	return most
}

// finest gives the most decimals that a price of the shop shows.
func (s *countedShop) finest() int {
	most := int(s.digits)
	for i := range s.Lines {
		if s.Lines[i].HasPrice {
			most = max(most, priceDecimals(s.Lines[i].Price, s.digits))
		}
	}
	return most
}
