package cart

import (
	"fmt"
	"regexp"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"handtight/bom/money"
)

var (
	countCell = regexp.MustCompile(`^(?:x\s*)?([0-9][0-9.,' ]*)\s*x?\s*([\pL.]*)$`)
)

// amount reads how many a line buys: from its column, else from its words.
func (b *builder) amount(l *Line, r *row) {
	l.Unit = unitOf(b.get(r, RoleUnit).text)
	if p := b.get(r, RolePack); p.text != "" {
		l.Pack, _ = b.count(p, l)
	}
	c := b.get(r, RoleQuantity)
	b.fromText(l, c.text == "")
	switch {
	case c.text == "" && !l.Counted && l.Length > 0 && edgeLength(l.Text):
		l.Amount, l.Counted, l.Unit, l.Length = l.Length, true, "m", 0 // Suction hose 19 mm, 1.5m
	case c.text == "" && !l.Counted && l.Doubt == "":
		l.Doubt = "the line says no quantity"
	case c.text == "":
	case unknown(c.text):
		l.Doubt = fmt.Sprintf("its quantity is %q", c.text)
	default:
		l.Amount, l.Counted = b.count(c, l)
		if !l.Counted && l.Doubt == "" {
			l.Doubt = fmt.Sprintf("its quantity %q is no plain number", c.text)
		}
	}
	b.smallUnits(l)
}

// count reads a cell with a number and perhaps a unit: 2, 2x, 3 ea, 1.5m.
func (b *builder) count(c cell, l *Line) (money.Quantity, bool) {
	if c.number {
		return thousandths(c.text)
	}
	m := countCell.FindStringSubmatch(strings.ToLower(c.text))
	if m == nil || c.date {
		return 0, false
	}
	unit := unitOf(m[2])
	if m[2] != "" && unit == "" && m[2] != "x" {
		return 0, false
	}
	n, ok := b.numbers.number(m[1])
	if !ok {
		if n, ok = wholeOf(m[1]); !ok {
			l.Doubt = fmt.Sprintf("its quantity %q may be thousands or decimals", c.text)
			return 0, false
		}
	}
	if unit != "" {
		l.Unit = unit
	}
	return thousandths(n)
}

// wholeOf reads 2,000 and 2.000 as two where nothing tells the decimal sign and no boat takes
// two thousand: a count that ends in three zeros is how programs write a whole one.
func wholeOf(text string) (string, bool) {
	t := spacers.Replace(text)
	if len(t) > 4 && (t[len(t)-4] == ',' || t[len(t)-4] == '.') && strings.HasSuffix(t, "000") && len(t) <= 6 {
		return t[:len(t)-4], true
	}
	return "", false
}

// smallUnits turns centimetres, millimetres and feet into metres.
func (b *builder) smallUnits(l *Line) {
	switch l.Unit {
	case "cm":
		l.Amount, l.Unit = l.Amount/100, "m"
	case "mm":
		l.Amount, l.Unit = l.Amount/1000, "m"
	case "ft":
		l.Amount, l.Unit = l.Amount*3048/10_000, "m" // the international foot, 0.3048 m exactly
	}
}

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
		packOf: regexp.MustCompile(`(?i)(?:^|[^\pL])` + unit("pack") + `\.?` + each + `\s*([0-9]+)(?:[^0-9.,/"']|$)`),
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
	f := inText()
	text := l.Text
	lower := strings.ToLower(text)
	l.PerMetre = within("permetre", text)
	if l.Unit == "" && saysAny(lower, "ft", "foot", "fuß", "pie") && perFoot.MatchString(text) {
		l.Unit = "ft"
	}
	forms := []*regexp.Regexp{f.packOf, f.ofPack, f.setOf}
	if !mayPack(lower) {
		forms = nil
	}
	for _, form := range forms {
		if m := form.FindStringSubmatch(text); m != nil && l.Pack == 0 {
			if n, ok := thousandths(m[1]); ok && n > money.Piece && n <= 1000*money.Piece {
				l.Pack, l.Bundle = n, form == f.setOf
			}
		}
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

var severalForm = regexp.MustCompile(`\(\s*(?:per |je |la |le |1 )?(\pL+)\s*\)|[,;]\s*(\pL+)\s*$`)

// perFoot are words of what is sold by the foot.
var perFoot = regexp.MustCompile(`(?i)\b(?:per|by the|each|/)\s*(?:ft|foot)\b|/\s?ft\b|\bpro fuß|\bal pie\b|\bau pied\b`)

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
	var forms []*regexp.Regexp
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

// Quantity tells how much of something the line brings, counted in the unit that the
// build counts it in: "pc", "m" or "roll". offered is the offer's price of one, "" if
// none is known: it tells pieces from packs. how says what was multiplied; doubt says
// why it is not known.
func (l *Line) Quantity(unit, offered string) (q money.Quantity, how, doubt string) {
	switch {
	case !l.Counted:
		return 0, "", orWords(l.Doubt, "the line says no quantity")
	case unit == "m":
		return l.metres()
	case l.Unit == "m":
		return 0, "", "it is counted in metres, and the build counts pieces"
	case l.Amount%money.Piece != 0:
		return 0, "", fmt.Sprintf("%s pieces cannot be", l.Amount)
	case l.Pack <= money.Piece || unit == "roll":
		return l.Amount, "", ""
	}
	return l.packs(offered)
}

// packs tells packs from pieces. A unit that says pieces, or says nothing, is taken for
// pieces only where no pack can be meant, or where the price is that of one piece.
func (l *Line) packs(offered string) (money.Quantity, string, string) {
	if (l.Unit == "pc" || l.Unit == "") && l.Amount >= l.Pack && !l.Bundle {
		byPack, ok := quotient(l.Price, l.Pack.String())
		switch {
		case offered != "" && l.Price != "" && near(l.Price, offered):
			return l.Amount, "", ""
		case offered != "" && ok && near(byPack, offered):
		case l.Amount%l.Pack != 0:
			return l.Amount, "", ""
		default:
			return 0, "", fmt.Sprintf("a pack holds %s, and the line says %s: it may mean pieces or packs", l.Pack, l.Amount)
		}
	}
	if l.Amount > 100_000*money.Piece {
		return 0, "", "the quantity is beyond what a boat holds"
	}
	return l.Amount / money.Piece * l.Pack, fmt.Sprintf("%s packs of %s", l.Amount, l.Pack), ""
}

func orWords(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

func (l *Line) metres() (money.Quantity, string, string) {
	switch {
	case l.Unit == "m" || l.PerMetre:
		return l.Amount, "", ""
	case l.Length > 0 && l.Amount%money.Piece == 0 && l.Amount <= 10_000*money.Piece:
		return l.Amount / money.Piece * l.Length, fmt.Sprintf("%s x %s m", l.Amount, l.Length), ""
	case l.Length > 0:
		return 0, "", fmt.Sprintf("%s pieces of %s m cannot be", l.Amount, l.Length)
	}
	return 0, "", fmt.Sprintf("the line says %s, and not whether metres or pieces, or how long one is", l.Amount)
}
