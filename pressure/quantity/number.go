package quantity

import (
	"strconv"
	"strings"

	"handtight/pressure/pattern"
)

// number is what stands before the unit.
type number struct {
	value float64
	text  string // the figures as written, without sign
	minus bool
	rest  string // what follows: the unit
}

var (
	signs    = pattern.New(`^[+-][+\s-]*`)
	mixed    = pattern.New(`^(\d+)(?:\s+|\s*-\s*)(\d+)/(\d+)`)
	fraction = pattern.New(`^(\d+)/(\d+)`)
	decimal  = pattern.New(`^(?:\d+(?:[.,]\d+)*|[.,]\d+)`)
	thousand = pattern.New(`^[1-9]\d{0,2},\d{3}$`)
	second   = pattern.New(`^[.,+-]?\s*\d`)
)

// spelling brings what keyboards and web pages write to plain signs. An inch
// mark is written out, so that it is a unit like any other.
var spelling = strings.NewReplacer(
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
	"⅓", " 1/3", "⅔", " 2/3", "⁄", "/", "−", "-", "–", "-", "—", "-", "\u00a0", " ", "\u202f", " ", "\u2009", " ",
	"''", " in", "\"", " in", "″", " in", "”", " in", "“", " in", "’’", " in",
)

// readNumber takes the number off the front of a text. The reason is empty when
// it could; the remedy may be empty when an example says enough.
func readNumber(text string) (n number, reason, remedy string) {
	text = strings.TrimSpace(spelling.Replace(text))
	if s := signs.FindString(text); s != "" {
		if strings.Count(s, "-")+strings.Count(s, "+") > 1 {
			return n, "has two signs", "write the number with one sign at most"
		}
		n.minus, text = strings.Contains(s, "-"), text[len(s):]
	}
	if m := mixed.FindStringSubmatch(text); m != nil {
		part, ok := quotient(m[2], m[3])
		if !ok || part >= 1 {
			return n, "has a fraction that is not one", `write a whole number and a part below one, such as 1 1/2`
		}
		n.value, n.text = float(m[1])+part, m[0]
	} else if m := fraction.FindStringSubmatch(text); m != nil {
		part, ok := quotient(m[1], m[2])
		if !ok {
			return n, "divides by nothing", `write a fraction such as 3/8`
		}
		n.value, n.text = part, m[0]
	} else if d := decimal.FindString(text); d != "" {
		v, why, what := readDecimal(d, text[len(d):])
		if why != "" {
			return n, why, what
		}
		n.value, n.text = v, d
	} else {
		return n, "has no number", ""
	}
	n.rest = strings.TrimSpace(text[len(n.text):])
	if second.MatchString(n.rest) {
		return n, "holds more than one number", "write one number with one unit, and 1500 without a gap"
	}
	if n.minus {
		n.value = -n.value
	}
	return n, "", ""
}

// readDecimal reads figures with a point or a comma; rest is only for the remedy.
func readDecimal(d, rest string) (v float64, reason, remedy string) {
	switch {
	case strings.Count(d, ".")+strings.Count(d, ",") > 1:
		return 0, "has more than one point or comma in its number", "write one decimal point and no thousands separators, such as 1500.5"
	case thousand.MatchString(d):
		whole, part, _ := strings.Cut(d, ",")
		big, small := whole+part, whole+"."+part
		return 0, "may mean " + big + " or " + small, `write "` + big + rest + `" or "` + small + rest + `"`
	}
	return float(strings.Replace(d, ",", ".", 1)), "", ""
}

func quotient(over, under string) (float64, bool) {
	d := float(under)
	if d == 0 {
		return 0, false
	}
	return float(over) / d, true
}

// float reads figures that a pattern has already found to be a number.
func float(s string) float64 {
	v, _ := strconv.ParseFloat(s, 64)
	return v
}
