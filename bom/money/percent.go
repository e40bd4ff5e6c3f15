package money

import (
	"fmt"
	"strings"

	"github.com/bojanz/currency"
	"github.com/cockroachdb/apd/v3"
)

// Percent is a share in hundredths, exactly as written, 0 % or more. Its zero value is 0 %.
type Percent struct{ number apd.Decimal }

// Number gives what stands before the percent sign: "12.5".
func (p Percent) Number() string { return p.number.Text('f') }

// Fraction gives the share of one, exactly: "0.125" for 12.5 %.
func (p Percent) Fraction() string { return p.fraction().Text('f') }

// String gives the number and its sign: "12.5 %".
func (p Percent) String() string { return p.Number() + " %" }

func (p Percent) fraction() *apd.Decimal {
	var d apd.Decimal
	d.Set(&p.number)
	d.Exponent -= 2
	return &d
}

// of answers what the share of base is, rounded half up to base's minor unit.
func (p Percent) of(base *apd.Decimal, code string) (currency.Amount, error) {
	return product(base, p.fraction(), code)
}

var percentForm = form{whole: 3, places: 6, unit: " %", example: "5"}

// ParsePercent reads a share with its sign: "5 %", "12.5%".
//
// Errors: *[InputError], with what to write instead, if the sign is missing or the
// number before it is not plain, is below zero, is 1000 or more, or has more than 6
// decimals. A bare 0.15 gets the hint that it is 15 %.
func ParsePercent(text string) (Percent, error) {
	body, signed := strings.CutSuffix(strings.TrimSpace(text), "%")
	if !signed {
		return Percent{}, unsigned(text, body)
	}
	d, err := percentForm.read(text, body)
	if err != nil {
		return Percent{}, err
	}
	return Percent{*d}, nil
}

// unsigned explains a share without its sign.
func unsigned(text, body string) error {
	lower := strings.ToLower(body)
	for _, word := range []string{"percent", "per cent", "pct", "pc"} {
		if number, ok := strings.CutSuffix(lower, word); ok && plain.MatchString(strings.TrimSpace(number)) {
			return &InputError{text, "spells the percent sign out", percentForm.write(strings.TrimSpace(number))}
		}
	}
	if !plain.MatchString(body) {
		return &InputError{text, "is not a percentage", percentForm.write(percentForm.example) + ", for instance"}
	}
	number := Percent{}
	if d, _, err := apd.NewFromString(body); err == nil {
		number.number.Set(d)
	}
	if number.number.Sign() > 0 && number.number.Cmp(apd.New(1, 0)) < 0 {
		hundredfold := number
		hundredfold.number.Exponent += 2
		hundredfold.number.Reduce(&hundredfold.number)
		return &InputError{text, "has no percent sign",
			fmt.Sprintf("write %s if a fraction was meant, else %s", hundredfold, number)}
	}
	return &InputError{text, "has no percent sign", percentForm.write(body)}
}
