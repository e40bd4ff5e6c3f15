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
	mark     byte // a separator or bracket; 0 for words and figures
	glued    bool // no blank before it
	word     []*sense
	figure   *figure
	unread   bool
	code     bool // unread, and part of a code
}

// role is what the token's word of a class makes of the figure beside it.
func (it *token) role(c wordClass) role {
	if m := it.is(c); m != nil {
		return m.role
	}
	return noRole
}

func (it *token) is(class wordClass) *sense {
	for _, m := range it.word {
		if m.class == class {
			return m
		}
	}
	return nil
}

// scanner cuts a spelling into tokens.
type scanner struct {
	*spelling
	lex     *lexicon
	tokens  []token
	key     []byte
	blended bool // letters and digits run together somewhere
}

func scan(s *spelling) []token {
	sc := &scanner{spelling: s, lex: readLexicon(), tokens: s.pad.tokens, key: s.pad.key}
	for i := 1; i < len(s.norm) && !sc.blended; i++ {
		sc.blended = digit(s.norm[i]) != digit(s.norm[i-1]) && alnum(s.norm[i]) && alnum(s.norm[i-1])
	}
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
	for _, w := range list("quarter-turn") {
		if bytes.Contains(sc.norm, []byte(w)) {
			return true
		}
	}
	return false
}

func onlyUnit(ms []*sense) bool {
	for _, m := range ms {
		if m.class != classUnit {
			return false
		}
	}
	return true
}

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
		if m[0].class == classSize {
			it.word, it.figure = nil, &figure{kind: fenSize, v: threads.SizeInches(m[0].value), frac: true}
		}
		sc.tokens = append(sc.tokens, it)
		return end
	}
	if n := len(sc.tokens); sc.norm[i] == 'x' && glued && n > 0 && sc.tokens[n-1].figure != nil && (sc.tokens[n-1].figure.marked || sc.tokens[n-1].figure.kind == dnSize) && digit(byteAt(sc.norm, i+1)) {
		sc.tokens = append(sc.tokens, token{from: i, to: i + 1, word: sc.lex.word("x"), glued: true})
		return i + 1 // 2B×1B
	}
	if n := len(sc.tokens); sc.norm[i] == 'x' && glued && n > 0 && sc.tokens[n-1].figure == nil && slices.ContainsFunc(sc.tokens[n-1].word, (*sense).ofEnd) && digit(byteAt(sc.norm, i+1)) {
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

// known reports whether a phrase or a metric thread begins at i.
func (sc *scanner) known(i int) bool {
	if byteAt(sc.norm, i) == 'm' && digit(byteAt(sc.norm, i+1)) {
		return true
	}
	_, m := sc.lookUp(i)
	return m != nil
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

func joinable(ms []*sense) bool {
	for _, m := range ms {
		if m.class == classSex || m.class == classFamily || m.class == classEnd {
			return true
		}
	}
	return false
}

func (sc *scanner) exact(from, to int) (int, []*sense) {
	if to == from+1 && sc.norm[from] == 's' && sc.capital(from) {
		return to, sc.lex.word("slip") // SxF
	}
	return to, sc.lex.word(string(sc.norm[from:to]))
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
