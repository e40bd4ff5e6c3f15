package money

import (
	"fmt"
	"strings"
	"unicode"

	"github.com/cockroachdb/apd/v3"

	"handtight/pressure/pattern"
)

// InputError says why a text was not taken, and what to write in its place.
type InputError struct {
	Text   string // what was found
	Reason string // a clause that follows the text: "has a decimal comma"
	Remedy string // what to do: "write 12.50"
}

func (e *InputError) Error() string {
	return fmt.Sprintf("%q %s: %s", e.Text, e.Reason, e.Remedy)
}

// form is what a kind of number may look like.
type form struct {
	whole   int    // digits before the point, at most
	places  int    // digits after it, at most
	unit    string // what follows the number, with its space
	example string // a number to show when none can be guessed
}

// read takes body, a part of text, as a plain number of this form.
func (f form) read(text, body string) (*apd.Decimal, error) {
	body = strings.TrimSpace(body)
	if !plain.MatchString(body) {
		reason, remedy := f.explain(body)
		return nil, &InputError{text, reason, remedy}
	}
	whole, fraction, _ := strings.Cut(body, ".")
	if len(strings.TrimLeft(whole, "0")) > f.whole {
		return nil, &InputError{text, "is too large",
			fmt.Sprintf("write a number of at most %d digits before the point", f.whole)}
	}
	if len(fraction) > f.places {
		return nil, &InputError{text, fmt.Sprintf("has %d decimals", len(fraction)),
			fmt.Sprintf("write at most %d", f.places)}
	}
	d, _, err := apd.NewFromString(body)
	if err != nil {
		return nil, &InputError{text, "is not a plain number", f.write(f.example)}
	}
	return d, nil
}

func (f form) write(number string) string { return "write " + number + f.unit }

// Marks that people put between thousands, apart from the comma and the point:
// spaces (plain, no-break, narrow, thin), apostrophes and the underscore of programs.
const spacers = " \u00a0\u202f\u2009'\u2019_"

var (
	plain     = pattern.New(`^[0-9]+(\.[0-9]+)?$`)
	negative  = pattern.New(`^[-\x{2212}]\s*[0-9.,]+$`)
	undefined = pattern.New(`(?i)^[-+]?(nan|inf|infinity)$`)
	powers    = pattern.New(`^[0-9]+(\.[0-9]+)?[eE][-+]?[0-9]+$`)
	oneComma  = pattern.New(`^[1-9][0-9]{0,2},[0-9]{3}$`)
	decComma  = pattern.New(`^[0-9]+,[0-9]+$`)
	commas    = pattern.New(`^[0-9]{1,3}(,[0-9]{2,3})+(\.[0-9]+)?$`)
	points    = pattern.New(`^[0-9]{1,3}(\.[0-9]{3})+,[0-9]+$|^[0-9]{1,3}(\.[0-9]{3}){2,}$`)
	spaced    = pattern.New(`^[0-9]{1,3}([` + spacers + `][0-9]{3})+([.,][0-9]+)?$`)
)

// explain names the habit behind a number that is not plain, and its plain form.
func (f form) explain(s string) (reason, remedy string) {
	switch {
	case s == "":
		return "holds no number", f.write(f.example)
	case undefined.MatchString(s):
		return "is not a number", f.write(f.example)
	case negative.MatchString(s):
		return "is below zero", "write 0" + f.unit + " or more"
	case powers.MatchString(s):
		return "is written in powers of ten", "write it out in full"
	case oneComma.MatchString(s):
		return "has a comma that may mark thousands or decimals",
			f.write(strings.ReplaceAll(s, ",", "")) + ", or " + strings.ReplaceAll(s, ",", ".") + f.unit
	case decComma.MatchString(s):
		return "has a decimal comma", f.write(strings.ReplaceAll(s, ",", "."))
	case commas.MatchString(s):
		return "has thousands marks", f.write(strings.ReplaceAll(s, ",", ""))
	case points.MatchString(s):
		return "has points between thousands", f.write(swapMarks(s))
	case spaced.MatchString(s):
		return "has thousands marks", f.write(strings.ReplaceAll(dropAny(s, spacers), ",", "."))
	}
	return f.explainRest(s)
}

// explainRest deals with a number that something stands before or after.
func (f form) explainRest(s string) (reason, remedy string) {
	if plain.MatchString("0" + s) {
		return "has no digit before the point", f.write("0" + s)
	}
	if plain.MatchString(s + "0") {
		return "has no digit after the point", f.write(strings.TrimSuffix(s, "."))
	}
	bare := strings.TrimSpace(strings.TrimFunc(s, func(r rune) bool {
		return !unicode.IsDigit(r) && r != '.' && r != ',' && r != '-' && r != '\u2212'
	}))
	if plain.MatchString(bare) {
		return "holds more than the number", f.write(bare)
	}
	return "is not a plain number", "write digits with a decimal point, such as " + f.example + f.unit
}

// swapMarks turns 1.240,50 into 1240.50.
func swapMarks(s string) string {
	return strings.ReplaceAll(strings.ReplaceAll(s, ".", ""), ",", ".")
}

func dropAny(s, marks string) string {
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune(marks, r) {
			return -1
		}
		return r
	}, s)
}
