package cart

import (
	"fmt"

	"github.com/bojanz/currency"

	"handtight/bom/build"
	"handtight/bom/money"
)

// price compares a line's price with the offer's: by the line's code, else the one
// that the order chose, and only in one currency.
func (j *judge) price(v *Verdict, n *need) {
	l := v.Line
	if !l.Adds {
		v.Also = append(v.Also, SumDiffers)
		v.Reason += fmt.Sprintf(" %s x %s is not the total %s.", l.Amount, l.Price, l.Total)
		if v.Remedy == "" {
			v.Remedy = "Ask the shop which of quantity, price and total is right."
		}
	}
	o := j.offer(l, n)
	if l.Price == "" || o == nil || o.Price == nil {
		return
	}
	if l.Currency == "" || l.Currency != o.Price.CurrencyCode() {
		return
	}
	found, ok := l.each(n, o.Price.Number())
	if !ok {
		return
	}
	a, err := currency.NewAmount(found, l.Currency)
	if err != nil || near(a.Number(), o.Price.Number()) {
		return
	}
	if l.whose != "" && l.Amount > money.Piece {
		if q, ok := quotient(l.Price, l.Amount.String()); !ok || !near(q, o.Price.Number()) {
			j.whosePrice(v)
		}
		return
	}
	word := "more"
	if c, err := a.Cmp(*o.Price); err == nil && c < 0 {
		word = "less"
	}
	v.Also = append(v.Also, OtherPrice)
	v.Reason += fmt.Sprintf(" It costs %s than the offer: %s and not %s %s.", word, shown(a), shown(*o.Price), l.Currency)
	if v.Status == Covers {
		v.Status, v.Also = OtherPrice, v.Also[:len(v.Also)-1]
		v.Remedy = "Ask the shop which price holds, and write it into the offer."
	}
}

// shown writes a price with its currency's decimals, or all that it has.
func shown(a currency.Amount) string {
	if r := a.Round(); r.Equal(a) {
		return r.Number()
	}
	return a.Number()
}

// each gives the price of one as the build counts. The price of a pack or coil is
// divided, unless the line's own figure is the offer's.
func (l *Line) each(n *need, offered string) (string, bool) {
	by := l.Pack
	if n.Unit == "m" {
		by = 0
		if l.Unit != "m" && !l.PerMetre {
			by = l.Length
		}
	}
	if n.Unit == "roll" || by == 0 || by == 1000 || near(l.Price, offered) {
		return l.Price, true
	}
	return quotient(l.Price, by.String())
}

// offer is the one with the line's code, else the one that the order chose.
func (j *judge) offer(l *Line, n *need) *build.Offer {
	if code := codeKey(l.Code); code != "" {
		for _, o := range n.offers {
			if codeKey(o.Code) == code {
				return o
			}
		}
	}
	return n.line.Offer
}

// offered is the offer's price of one; "" if none is known in the line's currency.
func (j *judge) offered(l *Line, n *need) string {
	o := j.offer(l, n)
	if o == nil || o.Price == nil || l.Currency != "" && l.Currency != o.Price.CurrencyCode() {
		return ""
	}
	return o.Price.Number()
}
