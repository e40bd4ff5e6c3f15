package title

// runningMetre takes the thread from the mb behind a number, metr bieżący, where hose or pipe is named and no other thread.
func (l *line) runningMetre(k int) {
	it, f := &l.tokens[k], at(l.tokens, k-1).figure
	next := at(l.tokens, k+1).figure
	if string(l.norm[it.from:it.to]) == "mb" && !l.one && !l.capital(it.from) && !it.glued && f.digitsOrDecimals() && !l.namesHose() && !l.says("TUBE") && !anyToken(l.tokens, func(o *token) bool { return dashWord(o.is(classFamily)) && string(l.norm[o.from:o.to]) != "mb" }) {
		it.word, it.unread = nil, true // millibars, or metres
		f.drop(asMeasure)
		return
	}
	behind := f == nil && next.plain() && !at(l.tokens, k+1).glued
	if string(l.norm[it.from:it.to]) != "mb" || l.one || l.capital(it.from) || !behind && (f == nil || f.kind != bare || f.marked) || !l.namesHose() && !l.says("TUBE") {
		return
	}
	for j := range l.tokens {
		if j != k && l.tokens[j].is(classFamily) != nil {
			return
		}
	}
	it.word, it.unread = l.lex.word("the"), false
	if behind {
		f = next
	}
	f.drop(asLength)
}

// timesMetre reads the x mt that a piece of a hose's line ends with: it is sold by the metre.
func (l *line) timesMetre(k int) {
	it, x, next := &l.tokens[k], at(l.tokens, k-1), at(l.tokens, k+1)
	text := string(l.norm[it.from:it.to])
	if l.one || text != "mt" && text != "mts" && text != "mtr" || x.value(classSep) != "x" || !l.namesHose() || next.to > next.from && next.mark == 0 {
		return
	}
	x.word = l.lex.word("the")
	it.word, it.unread = l.lex.word("por metro"), false
}

// perMetre takes the male from the m of $14.90/m.
func (l *line) perMetre(k int) {
	it, stroke, price := &l.tokens[k], at(l.tokens, k-1), at(l.tokens, k-2)
	if l.one || string(l.norm[it.from:it.to]) != "m" || !it.glued || stroke.mark != '/' || !stroke.glued || price.figure == nil {
		return
	}
	rand := at(l.tokens, k-3)
	inRand := rand.is(classFamily) != nil && rand.to-rand.from == 1 && price.glued && l.norm[rand.from] == 'r'
	if !l.priceAt(k-2) && !inRand {
		return
	}
	it.word, it.unread = l.lex.word("per m"), false
	price.figure.drop(asPrice)
	if inRand {
		rand.word, rand.unread = l.lex.word("the"), false
	}
}

// byLength reports a word for what is sold by its length, or a price for a metre or a foot where no thread is named: $14.90/m.
func (l *line) byLength() bool {
	if anyToken(l.tokens, func(it *token) bool { return it.value(classNoise) == "by-length" }) {
		return true
	}
	if anyToken(l.tokens, func(it *token) bool { return it.is(classFamily) != nil || it.is(classSex) != nil }) {
		return false
	}
	for k := range l.tokens {
		unit := at(l.tokens, k+2)
		if at(l.tokens, k+1).mark != '/' || !l.priceAt(k) {
			continue
		}
		switch string(l.norm[unit.from:unit.to]) {
		case "m", "mt", "mtr", "metre", "meter", "ft", "lm":
			return true
		}
	}
	return false
}

// priceAt reports a figure that is written as a price: $14.9, 14.90.
func (l *line) priceAt(k int) bool {
	return at(l.tokens, k).figure != nil && (l.priced(k) || l.twoDecimals(at(l.tokens, k)))
}

// cableMetres reads the M behind a number for metres where the word for a cable stands before it: cable 3M, lead 3 M.
func (l *line) cableMetres(k int) {
	it, f := &l.tokens[k], at(l.tokens, k-1).figure
	word := at(l.tokens, k-2)
	if l.one || l.norm[it.from] != 'm' || !f.digitsOrDecimals() || word.to == word.from || !cableList.has(l.norm[word.from:word.to]) {
		return
	}
	it.word, it.unread = l.lex.word("the"), false
	f.drop(asLength)
}
