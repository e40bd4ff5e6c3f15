package cart

import (
	"regexp"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"handtight/bom/money"
	"handtight/pressure/pattern"
)

// textForms are the ways in which words say a quantity, a pack or a length.
type textForms struct{ lead, tail, packOf, ofPack, setOf, length *regexp.Regexp }

var inText = sync.OnceValue(func() textForms {
	unit := func(kinds ...string) string {
		var all []string
		for _, k := range kinds {
			all = append(all, wordsOf(k)...)
		}
		return "(?:" + strings.Join(all, "|") + ")"
	}
	number := `([0-9]+(?:[.,][0-9]+)?)`
	each := `(?:\s*(?:` + strings.Join(eachWords(), "|") + `))*`
	counted := unit("pc", "pack", "roll", "coil", "set")
	return textForms{
		lead:   regexp.MustCompile(`(?i)^\s*` + number + `\s*(?:x\s*|(` + counted + `|m|` + unit("m") + `)(?:\.|\s|$))`),
		tail:   regexp.MustCompile(`(?i)[\s,;(](?:x([0-9]+)|([0-9]+)\s*(?:x|(` + counted + `)\.?)|qty\.?:?\s*([0-9]+))\)?\s*$`),
		packOf: regexp.MustCompile(`(?i)(?:^|[^\pL])` + unit("pack") + `\.?` + each + `\s*([0-9]+)[.,]?(?:[^0-9.,/"']|$)`),
		ofPack: regexp.MustCompile(`(?i)(?:^|[^\pL0-9.,/])([0-9]+)\s*(?:er|-)?[ -]*(?:` + unit("pack") + `|` + unit("pc") + `\s*/\s*` + unit("pack") + `)(?:[^\pL]|$)`),
		setOf:  regexp.MustCompile(`(?i)(?:^|[^\pL])` + unit("set") + `\s+(?:of|à|a|von|de|da|di|med|av)\s+([0-9]+)(?:\s*` + unit("pc") + `)?\s*(?:[,;)]|$)`),
		length: regexp.MustCompile(`(?i)(?:^|[^\pL0-9.,/])` + number + `\s*(m|mtr|mtrs|metres?|meters?|mètres?|metri|metros?|lfm|ft|м|米)(?:[^\pL0-9²³]|$)`),
	}
})

// eachWords are the small words between a pack and its number.
func eachWords() []string {
	var out []string
	for _, r := range readTable("words.csv") {
		if r[0] == "each" {
			for _, w := range strings.Split(r[2], "|") {
				out = append(out, regexp.QuoteMeta(w))
			}
		}
	}
	longestFirst(out)
	return out
}

// wordsOf lists the words of a unit for a pattern, longest first.
func wordsOf(kind string) []string {
	var out []string
	for _, r := range readTable("words.csv") {
		if r[0] != "unit" || r[1] != kind {
			continue
		}
		for _, w := range strings.Split(r[2], "|") {
			if len(w) > 1 {
				out = append(out, regexp.QuoteMeta(w))
			}
		}
	}
	longestFirst(out)
	return out
}

// fromText reads pack and length from the words, and the quantity if it has no column.
func (b *builder) fromText(l *Line, quantity bool) {
	text := l.Text
	lower := strings.ToLower(text)
	l.PerMetre = within("permetre", text) || perMetre.MatchString(text)
	if l.Unit == "" && saysAny(lower, "ft", "foot", "fuß", "pie") && perFoot.MatchString(text) {
		l.Unit = "ft"
	}
	if l.Pack == 0 && mayPack(lower) {
		l.Pack, l.Bundle = packIn(text)
	}
	if l.Pack == 0 && strings.ContainsAny(text, "(,;") {
		l.Pack = severalOf(text)
		l.Bundle = l.Pack > 0
	}
	if m := lengthIn(text); m != nil {
		l.Length = metres(m[1], m[2])
	}
	if !quantity {
		return
	}
	if number, unit, _, ok := leadOf(text); ok {
		b.said(l, number, unit)
	} else if number, unit, _, ok := tailOf(text); ok && l.Pack == 0 {
		b.said(l, number, unit)
	}
}

// packIn gives how many pieces the words say that a pack holds, 0 for none; a set is bought as one.
func packIn(text string) (n money.Quantity, bundle bool) {
	f := inText()
	for _, form := range []*regexp.Regexp{f.packOf, f.ofPack, f.setOf} {
		if m := form.FindStringSubmatch(text); m != nil {
			if n, ok := thousandths(m[1]); ok && n > money.Piece && n <= 1000*money.Piece {
				return n, form == f.setOf
			}
		}
	}
	return 0, false
}

// severalOf gives how many a word counts that stands by itself, at the end or in brackets:
// (pair), dozen; 0 for none.
func severalOf(text string) money.Quantity {
	m := severalForm.FindStringSubmatch(text)
	if m == nil {
		return 0
	}
	for class, n := range map[string]money.Quantity{"pair": 2, "dozen": 12} {
		if is(class, m[1]+m[2]) {
			return n * money.Piece
		}
	}
	return 0
}

var severalForm = pattern.New(`\(\s*(?:per |je |la |le |1 )?(\pL+)\s*\)|[,;]\s*(\pL+)\s*$`)

// perMetre are the signs of what is sold by the metre: €/m, /mt. l/m is a flow.
var perMetre = pattern.New(`(?i)(?:€|£|\$|\beur|\busd|\bgbp|\bchf|[\s(])\s?/\s?(?:m|mt|ml|mtr|met(?:re|er)|mètre|metro)\b|[,;(]\s*(?:le |au |al |el |per |par |pro |je )?(?:ml|mt|lfm|lm)\s*\)?\s*$`)

// perFoot are words of what is sold by the foot.
var perFoot = pattern.New(`(?i)\b(?:per|by the|each|/)\s*(?:ft|foot)\b|/\s?ft\b|\(\s*ft\s*\)|\bpro fuß|\bal pie\b|\bau pied\b`)

// leadOf finds a quantity before the words: 2x, 3 ea, 1.5m. A size may stand so too:
// 2 x 1/2, 2.5 x 40.
func leadOf(text string) (number, unit, rest string, ok bool) {
	m := inText().lead.FindStringSubmatchIndex(text)
	if m == nil {
		return "", "", "", false
	}
	number, rest = text[m[2]:m[3]], text[m[1]:]
	if m[4] >= 0 {
		unit = text[m[4]:m[5]]
	}
	next, _ := utf8.DecodeRuneInString(strings.TrimSpace(rest))
	whole := !strings.ContainsAny(number, ".,")
	return number, unit, rest, (unit != "" || unicode.IsLetter(next)) && (whole || unitOf(unit) == "m")
}

// tailOf finds a quantity behind the words: x2, (4 pcs). Behind a size it may be one
// more of its figures.
func tailOf(text string) (number, unit, rest string, ok bool) {
	if !mayTail(text) {
		return "", "", "", false
	}
	last, from := lastOf(text, tailLength)
	m := inText().tail.FindStringSubmatchIndex(last)
	if m == nil {
		return "", "", "", false
	}
	for _, k := range []int{2, 4, 8} {
		if m[k] >= 0 {
			number = last[m[k]:m[k+1]]
		}
	}
	if m[6] >= 0 {
		unit = last[m[6]:m[7]]
	}
	rest = strings.TrimRight(text[:from+m[0]], " ,;(")
	end, _ := utf8.DecodeLastRuneInString(rest)
	return number, unit, rest, unit != "" || rest != "" && !unicode.IsDigit(end) && end != '"'
}

// edgeLength reports whether a length ends the words of something that is bought by
// length: there it is how much, and elsewhere how long one is.
func edgeLength(text string) bool {
	if !mayLength(text) {
		return false
	}
	m := inText().length.FindStringIndex(text)
	return m != nil && m[1] == len(text) && saysHose(text)
}

// said takes a quantity out of the words.
func (b *builder) said(l *Line, number, unit string) {
	n, ok := thousandths(strings.Replace(number, ",", ".", 1))
	if !ok {
		return
	}
	if u := unitOf(unit); u != "" {
		l.Unit = u
	}
	if l.Unit != "m" && n%money.Piece != 0 {
		return // 1.5 of a piece is no quantity
	}
	l.Amount, l.Counted = n, true
	if l.Unit == "m" {
		l.Length = 0
	}
}

func metres(number, unit string) money.Quantity {
	q, ok := thousandths(strings.Replace(number, ",", ".", 1))
	if !ok {
		return 0
	}
	if strings.EqualFold(unit, "ft") {
		return q * 3048 / 10_000
	}
	return q
}

// withoutQuantity takes out of a text what says how many, so that no end is seen in it.
func withoutQuantity(text string) string {
	f := inText()
	if _, _, rest, ok := leadOf(text); ok {
		text = rest
	}
	var forms []interface{ FindStringIndex(text string) []int }
	lower := strings.ToLower(text)
	if mayPack(lower) {
		forms = append(forms, f.packOf, f.ofPack, f.setOf)
	}
	if mayPrice(lower) {
		forms = append(forms, priceInText)
	}
	for _, form := range forms {
		if m := form.FindStringIndex(text); m != nil {
			text = strings.TrimSpace(text[:m[0]] + " " + text[m[1]:])
		}
	}
	if _, _, rest, ok := tailOf(text); ok {
		text = rest
	}
	return strings.Trim(text, " ,;")
}
