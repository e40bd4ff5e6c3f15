package title

import (
	"strings"
)

// endMarks takes what numbers the two ends of a hose out of the line: E1: JIC -6 ..., E2: ...; kant A: ..., kant B: .... A figure
// or a letter there is no size and no sex, and where both are named the hose has both its ends.
func (l *line) endMarks() {
	if l.one || !l.seen.marks.has(':') && !l.seen.marks.has('=') {
		return
	}
	seen := 0
	for k := 0; k+2 < len(l.tokens); k++ {
		name, mark, colon := &l.tokens[k], &l.tokens[k+1], &l.tokens[k+2]
		if colon.mark != ':' && colon.mark != '=' || name.figure != nil || mark.to-mark.from != 1 || !endMarkList.has(l.norm[name.from:name.to]) {
			continue
		}
		switch l.norm[mark.from] {
		case '1', '2', 'a', 'b':
		default:
			continue
		}
		if mark.figure != nil {
			mark.figure.drop(asEndMark)
		}
		mark.word, mark.unread = l.lex.word("the"), false
		name.word, name.unread = l.lex.word("the"), false
		colon.mark = ','
		seen++
	}
	l.both = l.both || seen == 2
}

// codeCells takes a cell of a list that is nothing but letters, digits and hyphens for the number of the part: AD-12 | Adapter |
// -8 ORB. The letters of a thread with its size are a cell of their own too: G-12 is none.
func (l *line) codeCells() {
	if l.one || !l.seen.marks.has('|') {
		return
	}
	from := 0
	for k := 0; k <= len(l.tokens); k++ {
		if k < len(l.tokens) && l.tokens[k].mark != '|' {
			continue
		}
		for first := from == 0; first && from+1 < k && l.tokens[from].unread && !l.tokens[from+1].glued; {
			from++ // the shop's name before the first cell
		}
		if l.codeCell(from, k) {
			l.takeForCode(from, k)
		}
		from = k + 1
	}
}

// codesNamed takes letters and digits with a hyphen between them for the part's number where a word for one stands before: art. no. F-1207,
// SKU G-12, item M12-08.
func (l *line) codesNamed() {
	if l.one || !l.seen.word(classBefore) {
		return
	}
	for k := range l.tokens {
		if l.tokens[k].role(classBefore) != asCode || !l.numbersParts(k) {
			continue
		}
		from := k + 1
		for it := at(l.tokens, from); it.mark == ':' || it.mark == '.' || it.mark == '#' || it.mark == '=' || it.role(classBefore) == asCode || it.mark == '-' && at(l.tokens, from+1).role(classBefore) == asCode; it = at(l.tokens, from) {
			from++ // art.-no.:
		}
		end, hyphen, letters, digits := from, false, false, false
		for ; end < len(l.tokens) && (end == from || l.tokens[end].glued); end++ {
			it := &l.tokens[end]
			if it.mark != 0 && it.mark != '-' {
				break
			}
			hyphen = hyphen || it.mark == '-'
			for _, c := range l.norm[it.from:it.to] {
				letters, digits = letters || letter(c), digits || digit(c)
			}
		}
		if !hyphen || !letters || !digits {
			continue
		}
		l.takeForCode(from, end)
	}
}

// takeForCode takes all from one token to another for the part's number.
func (l *line) takeForCode(from, to int) {
	for k := from; k < to; k++ {
		it := &l.tokens[k]
		if it.figure != nil {
			it.figure.drop(asCode)
		} else if it.mark == 0 {
			it.word, it.unread = l.lex.word("the"), false
		}
		it.mark = 0
	}
}

// codeCell reports capitals, then digits behind a hyphen, and nothing else, from one token to another.
func (l *line) codeCell(from, to int) bool {
	if to-from < 3 || l.tokens[from].is(classFamily) != nil && l.tokens[from].is(classFamily).value != "FLARE" || l.tokens[from].is(classBefore) != nil {
		return false
	}
	text := l.as[l.at[l.tokens[from].from]:l.at[l.tokens[to-1].to]]
	letters := 0
	for letters < len(text) && text[letters] >= 'A' && text[letters] <= 'Z' {
		letters++
	}
	rest := text[letters:]
	other := false
	for k := range l.tokens {
		f := l.tokens[k].figure
		other = other || f != nil && (k < from || k >= to) && (f.frac || f.marked || f.dashed || f.sized())
	}
	return other && letters > 0 && letters < 5 && strings.Contains(rest, "-") && strings.Trim(rest, "-0123456789") == "" && !strings.HasSuffix(rest, "-")
}

// measures takes the diameter and the length of a vessel, an element or a housing, 2.5 x 21", for its measures and no sizes of its ends.
func (l *line) measures() {
	if l.one || !l.is(vessel) && !l.is(housing) && !l.is(elementSized) {
		return
	}
	for k := 0; k+2 < len(l.tokens); k++ {
		across, long := l.tokens[k].figure, l.tokens[k+2].figure
		if l.tokens[k+1].value(classSep) != "x" || across == nil || long == nil || across.kind != bare || across.frac || across.v > widestHousing || long.v < shortestHousing || long.v > longestHousing || long.frac || !long.marked && long.kind != bare {
			continue
		}
		across.drop(asElement)
		long.drop(asElement)
		l.tokens[k+1].word = l.lex.word("the")
	}
}

// The measures of housings and vessels in inches that are no threads. A judgement: elements are 2.5 to 8 inches across and 14 to 40 long,
// housings of cartridges 9 3/4 inches and more.
const (
	widestHousing   = 8
	shortestHousing = 9
	longestHousing  = 80
)

// pins takes the thread from the metric size of an electric plug, which its poles stand behind: M12 4-pin, M12 5-polig.
func (l *line) pins() {
	if l.one || !l.seen.figure(metricSize) {
		return
	}
	for k := range l.tokens {
		f := l.tokens[k].figure
		if f == nil || f.kind != metricSize || f.pitch > 0 {
			continue
		}
		j := k + 1
		if at(l.tokens, j).mark == '-' || at(l.tokens, j).mark == ',' {
			j++
		}
		poles := at(l.tokens, j)
		word := at(l.tokens, j+1)
		if word.mark == '-' {
			word = at(l.tokens, j+2)
		}
		if poles.figure.digits() && poleList.has(l.norm[word.from:word.to]) {
			f.drop(asMeasure)
			poles.figure.drop(asCount)
		}
	}
}

// letteredSizes is the first letter that stands for a size, A: 1/4 B: 3/8, and stands again where the ends are said: barb B x male A. Which size is which end's
// is not followed, and is asked. "" if there is none.
func (l *line) letteredSizes() string {
	var keys []string
	for k := 0; k+2 < len(l.tokens); k++ {
		letter := &l.tokens[k]
		sign, size := l.tokens[k+1].mark, l.tokens[k+2].figure
		end := l.tokens[k].to
		if f := l.tokens[k+1].figure; f.digitsAsRead() && l.tokens[k+1].glued && k+3 < len(l.tokens) { // D1: 1/2
			sign, size, end = l.tokens[k+2].mark, l.tokens[k+3].figure, l.tokens[k+1].to
		}
		if letter.to-letter.from == 1 && letter.figure == nil && letter.mark == 0 && (sign == ':' || sign == '=') && size != nil && (size.frac || size.marked || size.sized()) {
			keys = append(keys, string(l.norm[letter.from:end]))
		}
	}
	if len(keys) < 2 {
		return ""
	}
	text := string(l.norm)
	for _, key := range keys {
		for from := 0; ; {
			at := strings.Index(text[from:], key)
			if at < 0 {
				break
			}
			at += from
			from = at + len(key)
			sign := strings.TrimLeft(text[from:], " ")
			if !alnumIn(text, at-1) && !alnumIn(text, from) && !strings.HasPrefix(sign, ":") && !strings.HasPrefix(sign, "=") && l.capital(at) {
				return strings.ToUpper(key)
			}
		}
	}
	return ""
}
