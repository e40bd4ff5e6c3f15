package cart

import (
	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
)

// Words beside a figure that call it the inside or the outside of a hose or a tube. Only what
// touches the figure counts, so that each of two figures keeps its own word.
var (
	innerWord = `(?:i\.?\s?d\b\.?|inside(?: diameter)?|inner|internal|bore|innen\pL*(?:-?ø)?|lichte weite|lw|intérieur\pL*|int[ée]rne|int\.?|intern[oa]|interior|inwendig|binnen\pL*|inw\.?)`
	outerWord = `(?:o\.?\s?d\b\.?|ad\b|da\b|outside(?: diameter)?|outer|external|außen\pL*(?:-?ø)?|aussen\pL*|extérieur\pL*|externe|ext\.?|estern[oa]|est\.?|extern[oa]|exterior|uitwendig|buiten\pL*|uitw\.?)`
	millis    = `([0-9]{1,2}(?:[.,][0-9]{1,2})?)\s*mm`
	joinBack  = `\s*\(?\s*`
	joinFront = `\s*[:=.]?\s*(?:(?:ø|durchmesser|diam[eè]tre|diameter|diametro|diámetro|diâmetro|diam\.?)\s*)?[:=]?\s*`

	innerBehind = pattern.New(`(?i)(?:^|[^0-9.,])` + millis + joinBack + innerWord + `(?:[^\pL]|$)`)
	outerBehind = pattern.New(`(?i)(?:^|[^0-9.,])` + millis + joinBack + outerWord + `(?:[^\pL]|$)`)
	innerBefore = pattern.New(`(?i)(?:^|[^\pL])` + innerWord + joinFront + millis + `(?:[^\pL]|$)`)
	outerBefore = pattern.New(`(?i)(?:^|[^\pL])` + outerWord + joinFront + millis + `(?:[^\pL]|$)`)
	twoSizes    = pattern.New(`(?i)(?:^|[^0-9.,/x×])([0-9]{1,2}(?:[.,][0-9])?)\s*(?:mm)?\s*[x×/]\s*([0-9]{1,2}(?:[.,][0-9])?)\s*mm(?:[^\pL]|$)`)
	bareSizes   = pattern.New(`(?i)(?:^|[^0-9.,/x×])([0-9]{1,2}(?:[.,][0-9])?)\s*[x×]\s*([0-9]{1,2}(?:[.,][0-9])?)(?:\s*[,;)]|\s+[\pL]{2,}|$)`)
)

// thickWall is the wall from which on a second figure is a diameter and no wall any more, in
// millimetres (judgement: the tubes of boats have walls to 2.5 mm).
const thickWall = 3.0

// tubeIn gives the inside and the outside of a hose or a tube, each 0 where the words do not call
// a figure so: 8 mm o.d. x 6 mm i.d., Ø int. 13 mm. Two bare figures are inside and outside in
// either order, and a small second one is the wall: 13 x 19 mm, 10 x 1 mm.
func tubeIn(text string) (inner, outer quantity.Length) {
	first := func(forms ...*pattern.Pattern) quantity.Length {
		for _, f := range forms {
			if v := figureIn(f, text); v > 0 {
				return quantity.Length(v)
			}
		}
		return 0
	}
	behindIn, behindOut := first(innerBehind), first(outerBehind)
	switch {
	case behindIn > 0 && behindOut > 0:
		return behindIn, behindOut
	case behindIn > 0:
		return behindIn, unless(first(outerBefore), behindIn)
	case behindOut > 0:
		return unless(first(innerBefore), behindOut), behindOut
	}
	if inner, outer = first(innerBefore), first(outerBefore); inner+outer > 0 {
		return inner, outer
	}
	m := twoSizes.FindStringSubmatch(text)
	if m == nil {
		m = bareSizes.FindStringSubmatch(text)
	}
	if m == nil {
		return 0, 0
	}
	a, b := quantity.Length(decimal(m[1])), quantity.Length(decimal(m[2]))
	switch {
	case b < thickWall && a > 2*b:
		return a - 2*b, a
	case a == b || a > 2.2*b || b > 2.2*a:
		return 0, 0
	}
	return min(a, b), max(a, b)
}

// unless drops a figure that has a word before it and another behind it: the one behind is its own.
func unless(v, taken quantity.Length) quantity.Length {
	if v == taken {
		return 0
	}
	return v
}

func orLength(a, b quantity.Length) quantity.Length {
	if a > 0 {
		return a
	}
	return b
}
