package cart

import (
	"fmt"
	"strings"

	"github.com/cockroachdb/apd/v3"

	"handtight/bom/money"
)

// eachPrice are words of a heading that say whose price it is: of one.
var eachPrice = []string{
	"unit", "each", "ea", "per", "einzel", "einzelpreis", "stück", "stückpreis", "stuckpreis", "e", "ep", "je", "unitaire", "pu", "p u", "unitario", "unit", "ud", "pz",
	"unitário", "stuk", "stukprijs", "styck", "styckpris", "stk", "rate",
}

// pricesOf tells whether prices are of one or of the line, where there is no column of
// totals and the heading does not say: by the sum below them. Where that does not tell,
// the lines say so, and it is asked when it matters.
func (c *Cart) pricesOf(l *layout, first int) {
	if len(l.columns[RolePrice]) == 0 || len(l.columns[RoleTotal]) > 0 || l.head < 0 {
		return
	}
	heading := l.sheet.rows[l.head].text(l.columns[RolePrice][0])
	for _, w := range strings.Fields(normal(heading)) {
		for _, each := range eachPrice {
			if w == each {
				return
			}
		}
	}
	lines := c.Lines[first:]
	var ofLines, ofUnits apd.Decimal
	several := false
	var sums []string
	for i := range lines {
		line := &lines[i]
		switch {
		case line.Price == "":
		case line.Out != "":
			sums = append(sums, line.Price)
		case line.Counted:
			several = several || line.Amount > money.Piece
			addTo(&ofLines, line.Price, money.Piece)
			addTo(&ofUnits, line.Price, line.Amount)
		}
	}
	if !several {
		return
	}
	for _, s := range sums {
		asLines, asUnits := near(s, ofLines.Text('f')), near(s, ofUnits.Text('f'))
		switch {
		case asUnits && !asLines:
			return
		case asLines && !asUnits:
			c.note("the prices under %q are those of whole lines: their sum is %s", heading, s)
			for i := range lines {
				lines[i].wholePrice()
			}
			return
		}
	}
	for i := range lines {
		lines[i].whose = heading
	}
}

// wholePrice takes the price for that of the line.
func (l *Line) wholePrice() {
	if l.Price == "" || !l.Counted || l.Amount == 0 || l.Out != "" {
		return
	}
	l.Total = l.Price
	l.Price, _ = quotient(l.Total, l.Amount.String())
}

// addTo adds an amount times a price; a number that is none adds nothing.
func addTo(sum *apd.Decimal, price string, amount money.Quantity) {
	p, _, err := apd.NewFromString(price)
	if err != nil {
		return
	}
	context := apd.BaseContext.WithPrecision(40)
	var q, product apd.Decimal
	if _, _, err := q.SetString(amount.String()); err != nil {
		return
	}
	if _, err := context.Mul(&product, p, &q); err == nil {
		_, _ = context.Add(sum, sum, &product)
	}
}

// whosePrice asks whose price stands in a cart, of one or of the line, once a cart.
func (j *judge) whosePrice(v *Verdict) {
	for _, q := range j.report.Questions {
		if q.Cart == v.Line.Cart && strings.HasPrefix(q.Ask, "Is the price") {
			return
		}
	}
	j.report.Questions = append(j.report.Questions, Question{
		Cart: v.Line.Cart, Line: v.Line.Row, Settles: 1,
		Ask: fmt.Sprintf("Is the price under %q that of one or of the whole line? Nothing in the cart tells; say --columns price=%s for one, total=%s for the line.", v.Line.whose, v.Line.whose, v.Line.whose),
	})
}
