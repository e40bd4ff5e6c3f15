package title

// markFrench gives the inch size of a French pair the pair's family.
func (l *line) markFrench(v float64) {
	for k := range l.tokens {
		if f := l.tokens[k].figure; f != nil && f.kind == inchSize && f.v == v {
			f.kind = frenchSize
		}
	}
}

// frenchApart joins the two numbers of French pipe sizes that stand apart behind the name of a
// fitting: mamelon 20 27.
func (l *line) frenchApart() {
	if l.seen.plain < 2 {
		return
	}
	fitting := false
	for k := 0; k+1 < len(l.tokens); k++ {
		if m := l.tokens[k].is(classKind); m != nil {
			fitting = m.shape.ends >= 0
		}
		bore, outside := l.tokens[k].figure, l.tokens[k+1].figure
		if !fitting || !bore.plain() || !outside.plain() || l.tokens[k+1].glued || at(l.tokens, k-1).parted() || at(l.tokens, k+2).parted() {
			continue
		}
		if v := l.lex.pairs[[2]int{int(bore.v), int(outside.v)}]; v > 0 {
			bore.kind, bore.v, bore.whole = frenchSize, v, false
			l.tokens[k].to = l.tokens[k+1].to
			l.tokens = append(l.tokens[:k+1], l.tokens[k+2:]...)
		}
	}
}

// frenchPair finds a bore/outside name of the French trade: 15/21, 20x27.
func (sc *scanner) frenchPair(i int) int {
	second := len(sc.tokens) > 1 && sc.tokens[len(sc.tokens)-2].figure != nil && sc.tokens[len(sc.tokens)-2].figure.kind == frenchSize
	if digit(byteAt(sc.norm, i-1)) || byteAt(sc.norm, i-1) == '.' || byteAt(sc.norm, i-1) == '/' && !second {
		return 0
	}
	_, end := sc.digits(i)
	from := end + 1
	if x := sc.blanks(end); x > end && byteAt(sc.norm, x) == 'x' && (sc.behindSex(i) || sc.onlyFrench(sc.blanks(x+1))) {
		end, from = x, sc.blanks(x+1) // M 12 x 17
	}
	if b := byteAt(sc.norm, end); b != '/' && b != 'x' && b != '-' {
		return 0
	}
	_, stop := sc.digits(from)
	if stop == from || byteAt(sc.norm, stop) == '.' && digit(byteAt(sc.norm, stop+1)) || byteAt(sc.norm, stop) == '/' && !(byteAt(sc.norm, end) == 'x' && sc.secondFrenchPair(stop+1)) {
		return 0
	}
	if sc.frenchValue(i, stop) == 0 || sc.measuredBehind(stop) {
		return 0
	}
	return stop
}

// secondFrenchPair reports the second of two pairs that a stroke parts: 33x42/26x34.
func (sc *scanner) secondFrenchPair(i int) bool {
	_, end := sc.digits(i)
	if byteAt(sc.norm, end) != 'x' {
		return false
	}
	_, stop := sc.digits(end + 1)
	return stop > end+1 && sc.frenchValue(i, stop) > 0
}

// onlyFrench reports an outside in mm that pipe of no other trade has, so that its pair may stand apart behind
// the name of a fitting: manchon 20 x 27.
func (sc *scanner) onlyFrench(i int) bool {
	n, stop := sc.digits(i)
	last := at(sc.tokens, len(sc.tokens)-1)
	if last.value(classSep) == "x" || byteAt(sc.norm, sc.blanks(stop)) == 'x' {
		return false // three numbers: a tee's
	}
	named := anyToken(sc.tokens, func(it *token) bool { m := it.is(classKind); return m != nil && m.shape.ends >= 0 })
	return named && (n == 21 || n == 27 || n == 34 || n == 49)
}

// behindSex reports whether M or F stands by itself before a figure.
func (sc *scanner) behindSex(i int) bool {
	for i > 0 && isBlank(sc.norm[i-1]) {
		i--
	}
	c := byteAt(sc.norm, i-1)
	return (c == 'm' || c == 'f') && !alnum(byteAt(sc.norm, i-2))
}

// measuredBehind reports whether a unit that no thread has follows (5/10 micron).
func (sc *scanner) measuredBehind(i int) bool {
	from := sc.blanks(i)
	end, m := sc.lookUp(from)
	for _, s := range m.all() {
		if s.class == classUnit && s.value != "inch" && len(m.all()) == 1 && (end-from > 1 || !digit(byteAt(sc.norm, sc.blanks(end)))) {
			return true // 20/27 L 120 mm: a length
		}
	}
	return false
}

func (sc *scanner) frenchValue(i, end int) float64 {
	a, mid := sc.digits(i)
	if isBlank(byteAt(sc.norm, mid)) {
		mid = sc.blanks(mid)
	}
	b, _ := sc.digits(sc.blanks(mid + 1))
	return sc.lex.pairs[[2]int{a, b}]
}
