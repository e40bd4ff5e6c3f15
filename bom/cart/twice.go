package cart

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"handtight/catalog"
	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
)

var (
	inchFigure = `((?:[0-9][ -])?[0-9]{1,2}/[0-9]{1,2}(?:\s*(?:"|″|”|''|in\b|inch\b|(?i:zoll|pouces?|pollici|pulgadas?)))?|[0-9]{1,2}\s*(?:"|″|”|''|in\b|inch\b|(?i:zoll|pouces?|pollici|pulgadas?)))`
	milliForm  = `([0-9]{1,3}(?:[.,][0-9]{1,2})?\s*mm)`
	boreMilli  = `([0-9]{1,2}(?:[.,][0-9])?\s*mm)`
	sizeFront  = `(?:^|[^0-9.,/x×-]|[^0-9.,/x×-] )`
	bracket    = `\s*(?:\(\s*(?:=|≈|ca\.?|approx\.?)?\s*|=\s*|≈\s*)`
	sizeBack   = `\s*(?:[),;]|$)`
	beside     = `(?:\s*[,/]\s*|\s+)` // between the two bores of a hose that is sold by length
	besideBack = `(?:\s*[),;]|\s+[^\pL0-9\s]|\s+[\pL]{4,}|\s*$)`

	milliInch = pattern.New(sizeFront + milliForm + bracket + inchFigure + sizeBack)
	inchMilli = pattern.New(sizeFront + inchFigure + bracket + milliForm + sizeBack)
	hoseMilli = pattern.New(sizeFront + boreMilli + beside + inchFigure + besideBack)
	hoseInch  = pattern.New(sizeFront + inchFigure + beside + boreMilli + besideBack)
)

// restated is one size that a line says in two units: 19 mm (3/4").
type restated struct {
	a, b         string // as written
	withA, withB string // the line with the one and with the other alone
}

// agree reports whether the two are one size, as near as a hose and its tail must be.
func (s *restated) agree() bool {
	a, b := lengthOf(s.a), lengthOf(s.b)
	return math.Abs(float64(a-b)) <= max(tubeSlack, 0.02*float64(a))
}

// restatedIn finds a size that is said in two units. One that a thread is called by is none, for its
// millimetres are measured.
func restatedIn(text, kind string) (restated, bool) {
	if !strings.Contains(text, "mm") || isA(kind, catalog.Clamp|catalog.Cartridge|catalog.Element|catalog.Tape|catalog.Gauge) {
		return restated{}, false
	}
	forms := []*pattern.Pattern{milliInch, inchMilli}
	if isA(kind, catalog.HoseStock) {
		forms = append(forms, hoseMilli, hoseInch)
	}
	for _, form := range forms {
		m := form.FindStringSubmatchIndex(text)
		if m == nil || ofThread.MatchString(text[m[5]:]) || threadBefore.MatchString(text[:m[2]]) {
			continue
		}
		a, b := text[m[2]:m[3]], text[m[4]:m[5]]
		behind := strings.TrimPrefix(strings.TrimLeft(text[m[5]:], " "), ")")
		return restated{a, b, text[:m[3]] + behind, text[:m[2]] + b + behind}, true
	}
	return restated{}, false
}

// threadBefore are words before a figure that make it the size of a thread.
var threadBefore = pattern.New(`(?i)(?:npt[fm]?|bsp[pt]?|[^\pL](?:g|r|rc|rp))\s*$`)

// lengthOf reads one figure with its unit: 13 mm, 3/8".
func lengthOf(text string) quantity.Length {
	if mm, ok := strings.CutSuffix(text, "mm"); ok {
		return quantity.Length(decimal(strings.TrimSpace(mm)))
	}
	return inchesOf(strings.TrimRightFunc(text, func(r rune) bool { return !unicode.IsDigit(r) }))
}

// settle reads a line that says a size twice. Where the two agree it is read with one; where they do
// not, an end and a bore may be either, and it is asked which.
func (b *builder) settle(l *Line, plain, spec string) {
	s, ok := restatedIn(plain, l.facts.kind)
	if !ok {
		return
	}
	l.Reading = b.reading(s.withA, spec)
	l.facts = factsOf(s.withA, spec, l.Reading)
	if s.agree() {
		return
	}
	f, other := &l.facts, factsOf(s.withB, spec, b.reading(s.withB, spec))
	f.said = append(f.said, fmt.Sprintf("is it %s or %s", s.a, s.b))
	f.orBore = other.bore
	for i := range f.ends {
		if len(f.ends) == len(other.ends) && !slices.Equal(f.ends[i].keys, other.ends[i].keys) {
			f.ends[i].readings = slices.Concat(f.ends[i].readings, other.ends[i].readings)
			f.ends[i].keys = slices.Concat(f.ends[i].keys, other.ends[i].keys)
			f.ends[i].open = true
		}
	}
}
