package cart

import (
	"strings"

	"github.com/cockroachdb/apd/v3"

	"handtight/bom/money"
	"handtight/pressure/pattern"
)

// marks say which sign stands before the decimals in a cart: '.', ',' or 0 where
// nothing tells.
type marks struct{ decimal byte }

// spacers stand between thousands and nowhere else.
var spacers = strings.NewReplacer(" ", "", "\u00a0", "", "\u202f", "", "\u2009", "", "'", "", "’", "", "_", "")

var (
	figures   = pattern.New(`[0-9][0-9.,]*`)
	bothSigns = pattern.New(`^[0-9]{1,3}(?:,[0-9]{3})+\.[0-9]+$|^[0-9]{1,3}(?:\.[0-9]{3})+,[0-9]+$`)
	repeated  = pattern.New(`^[0-9]{1,3}(?:(?:,[0-9]{3}){2,}|(?:\.[0-9]{3}){2,})$`)
	oneSign   = pattern.New(`^[0-9]+[.,][0-9]+$`)
)

// learn finds the decimal sign from the numbers of a cart. A sign with two others than
// three digits behind it is decimal; so is the last of two kinds; the one that is
// repeated is not. A cart that does it both ways tells nothing.
func learn(texts []string) marks {
	votes := map[byte]int{}
	for _, t := range texts {
		if d := speaks(figures.FindString(spacers.Replace(t))); d != 0 {
			votes[d]++
		}
	}
	switch {
	case votes['.'] > 0 && votes[','] == 0:
		return marks{'.'}
	case votes[','] > 0 && votes['.'] == 0:
		return marks{','}
	}
	return marks{}
}

// speaks tells the decimal sign of one number; 0 if it may be either.
func speaks(n string) byte {
	n = strings.TrimRight(n, ".,")
	last := strings.LastIndexAny(n, ".,")
	switch {
	case last < 0:
		return 0
	case bothSigns.MatchString(n):
		return n[last]
	case repeated.MatchString(n):
		return other(n[last])
	case oneSign.MatchString(n) && (len(n)-last-1 != 3 || last > 3 || n[0] == '0'):
		return n[last]
	}
	return 0
}

func other(sign byte) byte {
	if sign == ',' {
		return '.'
	}
	return ','
}

// number reads a number as this cart writes it and gives it with a decimal point. It
// is not ok when it is no number, or may be two.
func (m marks) number(text string) (string, bool) {
	n := strings.TrimRight(spacers.Replace(text), ".,")
	if figures.FindString(n) != n || n == "" {
		return "", false
	}
	decimal := speaks(n)
	if decimal == 0 {
		decimal = m.decimal
	}
	if last := strings.LastIndexAny(n, ".,"); last >= 0 {
		if decimal == 0 {
			return "", false
		}
		thousands := string(other(decimal))
		whole, rest, _ := strings.Cut(n, string(decimal))
		if strings.ContainsAny(rest, ".,") || !grouped(whole, thousands) {
			return "", false
		}
		n = strings.ReplaceAll(whole, thousands, "")
		if rest != "" {
			n += "." + rest
		}
	}
	return decimalText(n)
}

// grouped reports whether the sign of thousands stands where thousands are.
func grouped(whole, sign string) bool {
	parts := strings.Split(whole, sign)
	for i, p := range parts {
		if i > 0 && len(p) != 3 || p == "" || i == 0 && len(parts) > 1 && len(p) > 3 {
			return false
		}
	}
	return true
}

// The most that a number may have: 15 digits are what a spreadsheet keeps.
const (
	keptDigits = 15
	places     = 6
	longest    = 60
)

// decimalText writes a number with a decimal point and without a power of ten, at most
// six decimals; false if it is none, or beyond what a cart holds.
func decimalText(text string) (string, bool) {
	if len(text) > longest {
		return text, false
	}
	d, _, err := apd.NewFromString(text)
	if err != nil || d.Form != apd.Finite || d.Exponent > 12 || d.Exponent < -330 {
		return text, false
	}
	context := apd.BaseContext.WithPrecision(keptDigits)
	context.Rounding = apd.RoundHalfUp
	if _, err := context.Round(d, d); err != nil {
		return text, false
	}
	if d.Exponent < -places {
		if _, err := apd.BaseContext.WithPrecision(400).Quantize(d, d, -places); err != nil {
			return text, false
		}
	}
	d.Reduce(d)
	if d.IsZero() {
		return "0", true
	}
	return d.Text('f'), true
}

// thousandths reads a decimal as a quantity; false if it is below zero, has more than
// three decimals, or is beyond a million.
func thousandths(decimal string) (money.Quantity, bool) {
	d, _, err := apd.NewFromString(decimal)
	if err != nil || d.Negative || d.Exponent < -3 {
		return 0, false
	}
	d.Exponent += 3
	n, err := d.Int64()
	if err != nil || n > 1_000_000_000 {
		return 0, false
	}
	return money.Quantity(n), true
}

// quotient gives a / b to six decimals, half up.
func quotient(a, b string) (string, bool) {
	x, _, errX := apd.NewFromString(a)
	y, _, errY := apd.NewFromString(b)
	if errX != nil || errY != nil || y.IsZero() {
		return "", false
	}
	context := apd.BaseContext.WithPrecision(40)
	var d apd.Decimal
	if _, err := context.Quo(&d, x, y); err != nil {
		return "", false
	}
	return decimalText(d.Text('f')[:min(len(d.Text('f')), longest)])
}

// near reports whether two prices are the same at two decimals.
func near(a, b string) bool {
	x, okX := cents(a)
	y, okY := cents(b)
	return okX && okY && x == y
}

func cents(decimal string) (string, bool) {
	d, _, err := apd.NewFromString(decimal)
	if err != nil || d.Form != apd.Finite || d.Exponent > 12 {
		return "", false
	}
	context := apd.BaseContext.WithPrecision(60)
	context.Rounding = apd.RoundHalfUp
	if _, err := context.Quantize(d, d, -2); err != nil {
		return "", false
	}
	return d.Text('f'), true
}
