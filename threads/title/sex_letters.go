package title

// muffeLetters reads the m/m of Danish lists behind a muffe, a coupling, which is female at both ends: muffe to muffe.
func (l *line) muffeLetters(k int) {
	it := &l.tokens[k]
	if text := string(l.norm[it.from:it.to]); l.one || text != "m/m" && text != "m-m" || l.shape == nil || l.shape.name != "coupling" {
		return
	}
	kinds, muffe := 0, false
	for j := range l.tokens {
		if l.tokens[j].is(classKind) != nil {
			kinds++
			muffe = string(l.norm[l.tokens[j].from:l.tokens[j].to]) == "muffe"
		}
	}
	if kinds == 1 && muffe {
		it.word = l.lex.word("ww")
	}
}

// cyrillicPair reads the capitals ВН of a valve, a union, an elbow or a nipple, where no other sex is said: inside and
// outside, as ВВ and НН are, and not the short of the word for inside, which its stop or small letters show.
func (l *line) cyrillicPair(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if l.one || string(l.norm[it.from:it.to]) != "вн" || !l.capital(it.from) || !l.capital(it.to-len("н")) || !l.bothCases() || byteAt(l.norm, it.to) == '.' || next.mark == '-' || next.mark == '/' {
		return
	}
	if !l.is(valve) && !l.is(union) && !l.is(elbow) && !l.is(nipple) || l.takesTubes() {
		return
	}
	sizes := 0
	for j := range l.tokens {
		if f := l.tokens[j].figure; f != nil && (f.kind == bare || f.kind < pressureFigure) {
			sizes++
		}
		if j != k && l.tokens[j].is(classSex) != nil || l.tokens[j].value(classSep) == "x" || sizes > 1 {
			return // 3/4 ВН x 20: the sex of the one thread
		}
	}
	it.word = l.lex.word("вз")
}

// letterSex are single letters that are a sex behind a size in inches: Ukrainian З, Greek Α and Θ.
var letterSex = map[string]string{"з": "male", "α": "male", "θ": "female"}

// germanLetter reads the i (innen) or a (aussen) that stands alone behind an inch size, or
// behind the thread's name that follows one.
func (l *line) germanLetter(k int) {
	it, prev, next := &l.tokens[k], at(l.tokens, k-1), at(l.tokens, k+1)
	if prev.is(classFamily) != nil {
		prev = at(l.tokens, k-2)
	}
	if prev.figure == nil || prev.figure.kind != inchSize {
		return
	}
	ends := k+1 == len(l.tokens) || next.value(classSep) == "x" || next.mark != 0
	if sex := letterSex[string(l.norm[it.from:it.to])]; sex != "" && (ends || l.capital(it.from) && next.figure == nil) {
		it.word, it.unread = l.lex.word(sex), false
		return
	}
	if it.to-it.from != 1 || it.value(classSep) != "weak" {
		return
	}
	ends = k+1 == len(l.tokens) || next.value(classSep) == "x" || next.mark != 0
	c := l.norm[it.from]
	if !ends || c != 'i' && c != 'a' {
		return
	}
	it.word = l.lex.word("ig")
	if c == 'a' {
		it.word = l.lex.word("ag")
	}
}

// largestRussian is the largest size of GOST 6111 in inches.
const largestRussian = 2

// russianLetter takes the thread of GOST 6111 from a K that no size of it follows: K1/4 is one, the capital
// of К 1/4 too, and 3/8 K-10A and K6 are not.
func (l *line) russianLetter(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if m := it.is(classFamily); m == nil || m.value != "NPT" || string(l.norm[it.from:it.to]) != "k" {
		return
	}
	if next.figure == nil || (!next.glued || it.to != next.from) && !(!it.glued && l.capital(it.from) && next.figure.frac) || next.figure.whole && next.figure.v > largestRussian {
		it.word, it.unread = nil, true
	}
}
