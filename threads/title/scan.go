package title

import (
	"bytes"
	"slices"
	"unicode/utf8"

	"handtight/threads"
)

// token is one piece of a line: a word with its meanings, a figure, or a mark.
type token struct {
	from, to int
	word     *meanings
	figure   *figure
	mark     byte // a separator or bracket; 0 for words and figures
	glued    bool // no blank before it
	unread   bool
	code     bool // unread, and part of a code
}

// noToken is what stands where a line has no token. It is never written to.
var noToken token

// role is what the token's word of a class makes of the figure beside it.
func (it *token) role(c wordClass) role {
	if m := it.is(c); m != nil {
		return m.role
	}
	return noRole
}

// is gives the sense of a class that the token's word has; nil if it has none.
func (it *token) is(class wordClass) *sense {
	if it.word == nil || it.word.has&(1<<class) == 0 {
		return nil
	}
	return it.word.first(class)
}

// anyToken reports a token of which a test holds.
func anyToken(tokens []token, holds func(*token) bool) bool {
	for k := range tokens {
		if holds(&tokens[k]) {
			return true
		}
	}
	return false
}

// indexToken is the first token of which a test holds; -1 if there is none.
func indexToken(tokens []token, holds func(*token) bool) int {
	for k := range tokens {
		if holds(&tokens[k]) {
			return k
		}
	}
	return -1
}

// scanner cuts a spelling into tokens.
type scanner struct {
	*spelling
	lex    *lexicon
	tokens []token
	key    []byte
	mixed  bool // letters and digits were run together where a phrase was sought last
}

func scan(s *spelling) []token {
	sc := &scanner{spelling: s, lex: readLexicon(), tokens: s.pad.tokens, key: s.pad.key}
	for i := 0; i < len(s.norm); {
		i = sc.step(i)
	}
	s.pad.key = sc.key
	return sc.tokens
}

func (sc *scanner) step(i int) int {
	b := sc.norm[i]
	glued := i > 0 && !isBlank(sc.norm[i-1])
	if end := max(sc.manyPieces(i), sc.codeNamed(i)); end > 0 {
		f := sc.pad.figure()
		f.drop(asCode)
		return sc.addFigure(i, end, glued, f)
	}
	switch {
	case isBlank(b):
		return i + 1
	case digit(b), b == '.' && digit(byteAt(sc.norm, i+1)) && !digit(byteAt(sc.norm, i-1)) && (!letter(byteAt(sc.norm, i-1)) || sc.norm[i-1] == 'x'):
		if end, m := sc.lookUp(i); m != nil && !onlyUnit(m) && !sc.figureFirst(i, end) && !sc.behindCode(i) {
			sc.tokens = append(sc.tokens, token{from: i, to: end, word: m, glued: glued})
			return end
		}
		return sc.number(i, glued)
	case letter(b) || b >= utf8.RuneSelf || b == '%':
		if end := sc.link(i); end > 0 {
			return end
		}
		return sc.wordAt(i, glued)
	}
	return sc.markAt(i, glued)
}

// link gives the end of an address of the web, which says nothing of the part; 0 if none begins at i.
func (sc *scanner) link(i int) int {
	if b := sc.norm[i]; b != 'h' && b != 'w' || !hasText(sc.norm, i, "http://") && !hasText(sc.norm, i, "https://") && !hasText(sc.norm, i, "www.") {
		return 0
	}
	for i < len(sc.norm) && !isBlank(sc.norm[i]) {
		i++
	}
	return i
}

// figureFirst reports that a phrase beginning with a figure is the tail of a
// fraction or a size, and not a word.
func (sc *scanner) figureFirst(i, end int) bool {
	if byteAt(sc.norm, end-1) == 't' && digit(byteAt(sc.norm, end-2)) && byteAt(sc.norm, end-3) == '/' && (byteAt(sc.norm, sc.blanks(end)) == 'x' || !sc.namesValve()) {
		return true // 1/4T x 1/4 NPT is a tube, and no quarter of a turn
	}
	return byteAt(sc.norm, i-1) == '/' || byteAt(sc.norm, end) == '/' || byteAt(sc.norm, end) == '"'
}

// namesValve reports a word for a valve, which a quarter of a turn opens.
func (sc *scanner) namesValve() bool {
	for _, w := range quarterTurnList.words() {
		if bytes.Contains(sc.norm, []byte(w)) {
			return true
		}
	}
	return false
}

func onlyUnit(ms *meanings) bool { return ms == nil || ms.has == 1<<classUnit }

func (sc *scanner) markAt(i int, glued bool) int {
	b := sc.norm[i]
	if b == '!' || b == '?' {
		b = ';' // the end of a sentence
	}
	switch b {
	case '/', '-', ',', ';', '+', '&', '(', ')', ':', '>', '=', '|':
		sc.tokens = append(sc.tokens, token{from: i, to: i + 1, mark: b, glued: glued})
	}
	return i + 1
}

// dashMale reports an M that a blank parts from its number behind a family sized by dash: ORFS M 12 is a male.
func (sc *scanner) dashMale(i int) bool {
	n := len(sc.tokens)
	return n > 0 && isBlank(byteAt(sc.norm, i+1)) && dashWord(sc.tokens[n-1].is(classFamily))
}

// wordAt reads the longest phrase known at a place, a metric thread, a word that
// glues two known ones by an x, or a word that is not known.
func (sc *scanner) wordAt(i int, glued bool) int {
	if glued && !wide(sc.norm, i) && sc.inCode() { // a run of a code takes no wide letter
		end := sc.run(i, true)
		sc.tokens = append(sc.tokens, token{from: i, to: end, glued: glued, unread: true})
		return end
	}
	if end := sc.numberNamed(i); end > 0 {
		f := sc.pad.figure()
		f.drop(asCode)
		return sc.addFigure(i, end, glued, f)
	}
	if sc.norm[i] == 'm' && (!glued || !alnum(byteAt(sc.norm, i-1)) || i >= 3 && byteAt(sc.norm, i-1) >= utf8.RuneSelf && wide(sc.norm, i-3) || sc.behindX(i)) {
		if end := sc.metric(i, glued); end > 0 && !sc.dashMale(i) {
			return end
		}
	}
	if end := sc.special(i, glued); end > 0 {
		return end
	}
	if end, m := sc.lookUp(i); m != nil && !sc.code(i, end) {
		it := token{from: i, to: end, word: m, glued: glued}
		if m.senses[0].class == classSize {
			it.word, it.figure = nil, &figure{kind: fenSize, v: threads.SizeInches(m.senses[0].value), frac: true}
		}
		sc.tokens = append(sc.tokens, it)
		return end
	}
	if n := len(sc.tokens); sc.norm[i] == 'x' && glued && n > 0 && sc.tokens[n-1].figure != nil && (sc.tokens[n-1].figure.marked || sc.tokens[n-1].figure.kind == dnSize) && digit(byteAt(sc.norm, i+1)) {
		sc.tokens = append(sc.tokens, token{from: i, to: i + 1, word: sc.lex.word("x"), glued: true})
		return i + 1 // 2B×1B
	}
	if n := len(sc.tokens); sc.norm[i] == 'x' && glued && n > 0 && sc.tokens[n-1].figure == nil && slices.ContainsFunc(sc.tokens[n-1].word.all(), (*sense).ofEnd) && digit(byteAt(sc.norm, i+1)) {
		sc.tokens = append(sc.tokens, token{from: i, to: i + 1, word: sc.lex.word("x"), glued: true})
		return i + 1 // FPTx16mmBARB
	}
	if end := sc.run(i, true); sc.code(i, i+1) && !wide(sc.norm, i) {
		sc.tokens = append(sc.tokens, token{from: i, to: end, glued: glued})
		return end
	}
	end := sc.run(i, false)
	if wide(sc.norm, i) {
		return sc.wideUnread(i, glued)
	}
	if sc.norm[i] == 'x' && glued && (sc.known(i+1) || end == i+1) {
		sc.tokens = append(sc.tokens, token{from: i, to: i + 1, word: sc.lex.word("x"), glued: true})
		return i + 1
	}
	if x := end - 1; x > i && sc.norm[x] == 'x' && digit(byteAt(sc.norm, end)) {
		if _, m := sc.exact(i, x); (joinable(m) || m != nil && x-i > 3) && !(x == i+1 && !glued && sc.norm[i] == 'k') {
			sc.tokens = append(sc.tokens, token{from: i, to: x, word: m, glued: glued})
			return x
		}
	}
	if x := sc.gluedByX(i, end); x > 0 {
		for from, first := i, true; ; first = false {
			_, word := sc.exact(from, x)
			sc.tokens = append(sc.tokens, token{from: from, to: x, word: word, glued: glued || !first})
			if x == end {
				return end
			}
			sc.tokens = append(sc.tokens, token{from: x, to: x + 1, word: sc.lex.word("x"), glued: true})
			from = x + 1
			if x = sc.gluedByX(from, end); x == 0 {
				x = end
			}
		}
	}
	if x := sc.twoWords(i, end); x > 0 {
		_, first := sc.exact(i, x)
		_, second := sc.exact(x, end)
		sc.tokens = append(sc.tokens, token{from: i, to: x, word: first, glued: glued}, token{from: x, to: end, word: second, glued: true})
		return end
	}
	m := sc.byStem(sc.norm[i:end])
	sc.tokens = append(sc.tokens, token{from: i, to: end, word: m, glued: glued, unread: m == nil})
	return end
}

// twoWords gives where a capital within a word begins its second half, where both are known: UnionCobre.
func (sc *scanner) twoWords(i, end int) int {
	for x := i + 3; x < end-2; x++ {
		if sc.capital(x) && !sc.capital(x-1) {
			_, first := sc.exact(i, x)
			_, second := sc.exact(x, end)
			if first != nil && second != nil {
				return x
			}
		}
	}
	return 0
}

// behindX reports whether the last token is the x right before i: 12SxM20x1.5.
func (sc *scanner) behindX(i int) bool {
	n := len(sc.tokens)
	return n > 0 && sc.tokens[n-1].to == i && sc.tokens[n-1].value(classSep) == "x"
}

// known reports whether a phrase or a metric thread begins at i.
func (sc *scanner) known(i int) bool {
	if byteAt(sc.norm, i) == 'm' && digit(byteAt(sc.norm, i+1)) {
		return true
	}
	_, m := sc.lookUp(i)
	return m != nil
}

// gluedByX finds the x of cxfi, fxf, fptxmpt.
func (sc *scanner) gluedByX(i, end int) int {
	for x := i + 1; x < end-1; x++ {
		if sc.norm[x] != 'x' {
			continue
		}
		_, left := sc.exact(i, x)
		_, right := sc.exact(x+1, end)
		if joinable(left) && (joinable(right) || sc.gluedByX(x+1, end) > 0) {
			return x
		}
	}
	return 0
}

func joinable(ms *meanings) bool {
	return ms != nil && ms.has&(1<<classSex|1<<classFamily|1<<classEnd) != 0
}

func (sc *scanner) exact(from, to int) (int, *meanings) {
	if to == from+1 && sc.norm[from] == 's' && sc.capital(from) {
		return to, sc.lex.word("slip") // SxF
	}
	return to, sc.lex.word(string(sc.norm[from:to]))
}
