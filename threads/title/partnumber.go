package title

import (
	"bytes"
	"strings"

	"handtight/threads"
)

// The sizes of hose ends and adaptors of hydraulics stand in their part numbers alone where a list gives the words without
// them: letters, and two sizes in sixteenths of an inch, ADBB-04-06. Of metric cones the first is the tube in mm. Common practice of
// that trade; what is read so is asked.

// sizesOfNumber takes the sizes of the ends from such a number, where no other size is said.
func (l *line) sizesOfNumber() {
	if l.one {
		return
	}
	from, to, ok := l.hydraulicNumber()
	if !ok {
		return
	}
	var families []int
	named := false // a family is named since the last x
	for k := range l.tokens {
		it := &l.tokens[k]
		if k >= from && k < to {
			continue
		}
		if f := it.figure; f != nil && (f.sized() || f.frac || f.marked || f.dashed || f.kind == bare && at(l.tokens, k-1).value(classSep) == "x") {
			return
		}
		named = named && it.value(classSep) != "x"
		if m := it.is(classFamily); m != nil && m.value != "THREAD" && !named {
			families, named = append(families, k), true
		}
	}
	first, second := l.tokens[to-3].figure, l.tokens[to-1].figure
	v := [2]float64{first.v, second.v}
	series := l.duty(to)
	switch {
	case len(families) == 0 && series != 0 && coneFits(v[0], series):
		l.insertSize(l.lastSex(to), &figure{kind: coneSize, v: v[0], series: series, numbered: true})
	case len(families) == 0 || len(families) > 2:
		return
	default:
		for n := len(families) - 1; n >= 0; n-- { // from behind, so that the places before stay
			f := &figure{kind: inchSize, v: v[n] / 16, frac: true, numbered: true}
			if dashWord(l.tokens[families[n]].is(classFamily)) {
				f = &figure{kind: dashSize, v: v[n], whole: true, numbered: true}
			}
			l.insertSize(families[n], f)
		}
	}
	first.drop(asCode)
	second.drop(asCode)
	l.tokens[from].word, l.tokens[from].unread = nil, true // its letters say nothing of their own
}

// hydraulicNumber gives the tokens of the first such number: letters, and two numbers of two digits behind hyphens.
func (l *line) hydraulicNumber() (from, to int, ok bool) {
	if bytes.Count(l.norm, []byte("-")) < 2 {
		return 0, 0, false
	}
	number := func(k int) bool {
		f := at(l.tokens, k).figure
		return f != nil && f.whole && !f.frac && !f.marked && at(l.tokens, k-1).mark == '-' && l.tokens[k].to-l.tokens[k].from == len("00") && f.v >= 2 && f.v <= 48
	}
	for from < len(l.tokens) {
		for to = from + 1; to < len(l.tokens) && l.tokens[to].glued; to++ {
		}
		if head := &l.tokens[from]; to-from >= 5 && head.figure == nil && head.mark == 0 && letter(l.norm[head.from]) && number(to-1) && number(to-3) {
			return from, to, true
		}
		from = to
	}
	return 0, 0, false
}

// duty is the series that the words of a metric end say: light or heavy.
func (l *line) duty(code int) byte {
	text := string(l.norm[l.tokens[code-1].to:])
	if !hasWord(text, "metric") {
		return 0
	}
	switch {
	case hasWord(text, "light"), hasWord(text, "l/duty"):
		return 'l'
	case hasWord(text, "heavy"), hasWord(text, "h/duty"):
		return 's'
	}
	return 0
}

// lastSex is the last token behind the code that says a sex, else the code's last.
func (l *line) lastSex(code int) int {
	at := code - 1
	for k := code; k < len(l.tokens); k++ {
		if l.tokens[k].is(classSex) != nil {
			at = k
		}
	}
	return at
}

// insertSize puts a figure that no letters of the line are behind the token at k.
func (l *line) insertSize(k int, f *figure) {
	it := token{from: l.tokens[k].to, to: l.tokens[k].to, figure: f}
	l.tokens = append(l.tokens[:k+1], append([]token{it}, l.tokens[k+1:]...)...)
}

// unsizedNumber names the part number of a line of which nothing is read, where it speaks of a sex or a thread: the sizes
// may stand in it.
func (l *line) unsizedNumber(ends []threads.EndReading) {
	if l.one || len(ends) > 0 || len(l.unjudged) > 0 {
		return
	}
	from, to, ok := l.hydraulicNumber()
	if !ok {
		return
	}
	l.unjudged = append(l.unjudged, l.words(l.tokens[from].from, l.tokens[to-1].to)+" (the sizes may stand in it)")
}

// numbersParts reports that the word at k speaks of a part's number: ref, article, part no; a number of steel says no alone.
func (l *line) numbersParts(k int) bool {
	word := strings.TrimRight(string(l.norm[l.tokens[k].from:l.tokens[k].to]), ".")
	if word != "no" && word != "nr" && word != "nº" {
		return true
	}
	before := at(l.tokens, k-1)
	switch strings.TrimRight(string(l.norm[before.from:before.to]), ".") {
	case "part", "art", "item", "ref", "order", "cat", "stock", "article", "artikel":
		return true
	}
	return false
}
