package title

// partNumbered reports a figure of a part's number: with others behind hyphens (2404-08-08, ref 7704-06-04, 03-4471 at
// the beginning), or glued to a name of three letters or more (ZPC8).
func (l *line) partNumbered(k int, f *figure) bool {
	if !f.whole {
		return false
	}
	tied := func(dash, far *token) bool { return dash.mark == '-' && dash.glued && far.glued }
	behind := at(l.tokens, k+2)
	if !f.marked && tied(at(l.tokens, k+1), behind) {
		if f.v >= 1000 && behind.figure.digits() {
			return true
		}
		if l.onlyStrange(k) && behind.figure.plain() && behind.to-behind.from > 2 && l.sizeElsewhere(k) {
			return true
		}
	}
	before, name := at(l.tokens, k-2).figure, at(l.tokens, k-1)
	if tied(name, &l.tokens[k]) && before != nil && before.role == asCode {
		return true
	}
	return l.tokens[k].glued && name.to == l.tokens[k].from && name.unread && name.to-name.from > 2 && letter(l.norm[name.from])
}

// onlyStrange reports whether nothing that is understood stands before k: a shop's name, or nothing.
func (l *line) onlyStrange(k int) bool {
	for j := range l.tokens[:k] {
		if !l.tokens[j].unread {
			return false
		}
	}
	return true
}

// leastPieces is how many runs of letters and of digits, by turns, no size has and a code may have: 15F4M4P.
const leastPieces = 6

// manyPieces gives the end of a code that letters and digits change in by turns, without a stroke, a stop or an x; 0 if none begins.
func (sc *scanner) manyPieces(i int) int {
	if !sc.blended || !digit(sc.norm[i]) || alnum(byteAt(sc.norm, i-1)) {
		return 0
	}
	_, first := sc.digits(i)
	if first >= len(sc.norm) || !letter(sc.norm[first]) {
		return 0
	}
	pieces, end := 0, i
	for ; end < len(sc.norm) && alnum(sc.norm[end]) && sc.norm[end] != 'x'; end++ {
		if end == i || digit(sc.norm[end]) != digit(sc.norm[end-1]) {
			pieces++
		}
	}
	if pieces < leastPieces || end < len(sc.norm) && !isBlank(sc.norm[end]) && sc.norm[end] != ',' && sc.norm[end] != ')' {
		return 0
	}
	return end
}

// inCode reports whether the tokens since the last blank are a code: letters that
// mean nothing, and figures behind them.
func (sc *scanner) inCode() bool {
	figures := false
	for k := len(sc.tokens) - 1; k >= 0; k-- {
		it := &sc.tokens[k]
		if it.figure != nil {
			if it.figure.frac || it.figure.marked || it.figure.kind != bare && it.figure.kind != junkFigure {
				return false
			}
			figures = true
		}
		if it.unread && it.to-it.from < 5 && it.to-it.from > 1 && !wide(sc.norm, it.from) && sc.norm[it.from] < 0x80 {
			return figures
		}
		if !it.glued || it.mark != 0 && it.mark != '-' {
			return false
		}
	}
	return false
}

// code reports whether a short word is only the beginning of a code that runs
// on in digits and letters that mean nothing (R2AT).
func (sc *scanner) code(i, end int) bool {
	all := sc.run(i, true)
	if end >= all || end-i > 2 || !digit(byteAt(sc.norm, end)) {
		return false
	}
	_, stop := sc.digits(end)
	if stop >= all || sc.norm[stop] >= 0x80 || sc.norm[stop] == 'x' {
		return false
	}
	if _, m := sc.lookUpRun(stop, false); m != nil {
		return false
	}
	return true
}

// behindCode reports whether a figure is glued to letters that mean nothing, so that it
// is theirs and no part of a mixed number: KX4 1/4.
func (sc *scanner) behindCode(i int) bool {
	n := len(sc.tokens)
	return n > 0 && sc.tokens[n-1].unread && sc.tokens[n-1].to == i || sc.endsCode(i)
}

// strangeAt reports whether the word that begins at a place is not understood: of DN-32-1 1/4 it is.
func (sc *scanner) strangeAt(from int) bool {
	if c := sc.norm[from]; byteAt(sc.norm, from+1) == '-' && digit(byteAt(sc.norm, from+2)) {
		return c != 'm' && c != 'f' && c != 'g' && c != 'r' // C-310-2
	}
	for k := range sc.tokens {
		if sc.tokens[k].from == from {
			return sc.tokens[k].unread
		}
	}
	return false
}

// endsCode reports the last number of a part's number: of letters and numbers that two hyphens join, B-400-3, or with a
// hyphen and letters between its numbers, B-42S4.
func (sc *scanner) endsCode(i int) bool {
	hyphens, digits, from := 0, false, i
	for from > 0 && !isBlank(sc.norm[from-1]) {
		from--
		if sc.norm[from] == '-' {
			hyphens++
		}
		digits = digits || digit(sc.norm[from])
	}
	if from == i || !letter(sc.norm[from]) || !digits || !sc.strangeAt(from) {
		return false
	}
	if sc.norm[i-1] == '-' {
		return hyphens >= 2
	}
	last := at(sc.tokens, len(sc.tokens)-1)
	return letter(sc.norm[i-1]) && last.to-last.from == 1 && last.is(classFamily) == nil && hyphens > 0 && digits
}

// numberNamed gives the end of a part's number behind the word or the sign for one, SKU FP-5512-E, # RM-38A2: two letters or more,
// a hyphen, and three digits or more, or two where the letters are no word. 0 if none begins at i.
func (sc *scanner) numberNamed(i int) int {
	n, sign := len(sc.tokens), i-1
	for sign > 0 && isBlank(sc.norm[sign]) {
		sign--
	}
	if n > 0 && sc.tokens[n-1].mark == ':' {
		n--
	}
	named := n > 0 && sc.tokens[n-1].role(classBefore) == asCode && (isBlank(byteAt(sc.norm, i-1)) || byteAt(sc.norm, i-1) == ':')
	if !named && byteAt(sc.norm, sign) != '#' {
		return 0
	}
	end, digits, letters := i, 0, sc.run(i, false)-i
	for ; end < len(sc.norm) && (alnum(sc.norm[end]) || sc.norm[end] == '-'); end++ {
		if digit(sc.norm[end]) {
			digits++
		}
	}
	strange := letters > 2 && sc.lex.words[string(sc.norm[i:i+letters])] == nil
	if named && sc.mixedCode(i, end) {
		return end
	}
	if letters < 2 || byteAt(sc.norm, i+letters) != '-' || digits < 3 && !(strange && digits > 1) || end < len(sc.norm) && !isBlank(sc.norm[end]) && sc.norm[end] != ',' && sc.norm[end] != ')' {
		return 0
	}
	return end
}

// codeNamed gives the end of a part's number that begins with a digit and stands behind the word for one, code 4M4F; 0 if none
// begins at i.
func (sc *scanner) codeNamed(i int) int {
	n := len(sc.tokens)
	if !sc.blended || n == 0 || !digit(sc.norm[i]) || sc.tokens[n-1].role(classBefore) != asCode || !isBlank(byteAt(sc.norm, i-1)) {
		return 0
	}
	if end := sc.run(i, true); sc.mixedCode(i, end) {
		return end
	}
	return 0
}

// mixedCode reports letters and digits by turns, three runs or more, that begin and end at a blank and hold no x: 4M4F behind code.
func (sc *scanner) mixedCode(i, end int) bool {
	runs := 1
	for k := i + 1; k < end; k++ {
		if sc.norm[k] == 'x' || sc.norm[k] == '-' {
			return false
		}
		if digit(sc.norm[k]) != digit(sc.norm[k-1]) {
			runs++
		}
	}
	return runs > 3 && end-i > 3 && (end == len(sc.norm) || isBlank(sc.norm[end]))
}
