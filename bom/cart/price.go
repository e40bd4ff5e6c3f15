package cart

import (
	"strings"

	"github.com/bojanz/currency"

	"handtight/pressure/pattern"
)

// priceInText is a price that the words hold: a number with its currency beside it.
var priceInText = pattern.New(`(?i)(€|£|\b(?:eur|usd|gbp|nzd|aud|chf|us\$|nz\$))\s*([0-9][0-9.,]*)|([0-9][0-9.,]*)\s*(€|£|(?:eur|usd|gbp|nzd|aud|chf)\b)`)

// money reads the price, the total and their currency.
func (b *builder) money(l *Line, r *row) {
	price, total := b.get(r, RolePrice), b.get(r, RoleTotal)
	l.Price, l.Total = b.sum(price), b.sum(total)
	l.Currency = currencyOf(b.get(r, RoleCurrency).text)
	for _, c := range []cell{price, total} {
		if l.Currency == "" {
			l.Currency = currencyOf(c.text)
		}
		if l.Currency == "" {
			l.Currency = c.currency
		}
	}
	if l.Price == "" && l.Total == "" && price.text == "" && total.text == "" && mayPrice(strings.ToLower(l.Text)) {
		if m := priceInText.FindStringSubmatch(l.Text); m != nil {
			if n, ok := b.numbers.number(m[2] + m[3]); ok && n != "0" {
				l.Price, l.Currency = n, currencyOf(m[1]+m[4])
			}
		}
	}
	if l.Currency == "" {
		l.Currency = b.currency
	}
	if l.Price != "" && l.Total != "" && l.Counted && l.Amount > 0 {
		l.Adds = addsUp(l)
	}
	if l.Price == "" && l.Total != "" && l.Counted && l.Amount > 0 {
		l.Price, _ = quotient(l.Total, l.Amount.String())
	}
}

// mayPrice reports whether a text may hold a price.
func mayPrice(lower string) bool {
	return saysAny(lower, "€", "£", "$", "eur", "usd", "gbp", "nzd", "aud", "chf")
}

// sum reads a sum of money; "" for 0, ??, a blank, words, or a number that may be two.
func (b *builder) sum(c cell) string {
	if c.text == "" || c.date || unknown(c.text) {
		return ""
	}
	n, ok := c.text, c.number
	if !c.number {
		bare := figures.FindAllString(spacers.Replace(c.text), -1)
		if len(bare) != 1 || strings.Contains(c.text, "%") {
			return ""
		}
		n, ok = b.numbers.number(bare[0])
	}
	if whole, _, _ := strings.Cut(n, "."); len(whole) > dearest {
		return ""
	}
	if !ok || n == "0" || strings.HasPrefix(n, "-") || strings.HasPrefix(strings.TrimSpace(c.text), "-") {
		return ""
	}
	return n
}

// dearest is how many digits a price may have before its point.
const dearest = 12

func unknown(text string) bool {
	_, ok := classes()["unknown"][strings.ToLower(strings.TrimSpace(text))]
	return ok || strings.Trim(text, "? ") == ""
}

// addsUp reports whether quantity times price is the total, within the last digit of
// every piece.
func addsUp(l *Line) bool {
	each, ok := quotient(l.Total, l.Amount.String())
	if !ok {
		return true
	}
	return near(each, l.Price)
}

// assignCurrency gives lines without a currency the cart's: said by the person, or the
// only one that the other lines name.
func (c *Cart) assignCurrency(o Options) {
	seen := map[string]int{}
	for i := range c.Lines {
		if cur := c.Lines[i].Currency; cur != "" {
			seen[cur]++
		}
	}
	only := o.Currency
	for cur := range seen {
		if only == "" && len(seen) == 1 {
			only = cur
		}
	}
	c.Currency = only
	for i := range c.Lines {
		if c.Lines[i].Currency == "" {
			c.Lines[i].Currency = only
		}
	}
}

// PriceText gives the price with all decimals of its currency: "6.90"; "" if it is
// unknown.
func (l *Line) PriceText() string {
	if a, err := currency.NewAmount(l.Price, l.Currency); l.Price != "" && err == nil {
		return shown(a)
	}
	return l.Price
}
