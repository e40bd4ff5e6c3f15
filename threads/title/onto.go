package title

// ontoOther leaves out the thread of what the part goes onto or stands in for: G 1/2 male to suit G 1/2 female port; passend für G 3/4 Innengewinde,
// R 3/4 AG. It is said behind such words with its sex or its name, up to the next comma, where the line gives an end of the part's own elsewhere.
// The size of a hose or a tube there is that of the end that takes it.
func (l *line) ontoOther() {
	l.headClause()
	if l.one || l.is(ownThread) || l.is(tapThread) || l.is(tail) || l.is(manifold) {
		return // tap connector, hose tail: what it fits is its own end
	}
	onto := goesOntoList.begun()
	for from := range l.tokens {
		w := l.ontoWord(from, onto)
		if w == "" || ontoList.hasWord(w) && !l.portInBreath(from+1) {
			continue
		}
		size := len(w) // in bytes, with one blank between its words
		to := from
		for to < len(l.tokens) && len(l.oneBlank(l.norm[l.tokens[from].from:l.tokens[to].from])) < size {
			to++
		}
		next := at(l.tokens, to)
		sized, threaded := false, false
		for ; to < len(l.tokens) && !l.endsBreath(to); to++ {
			it := &l.tokens[to]
			if v := it.value(classEnd); stoodBeforeList.hasWord(w) {
				threaded = threaded || v != ""
			} else if v == "HOSE" || v == "BARB" || v == "TUBE" || v == "TUBING" || v == "PUSH" {
				return
			}
			sized = sized || it.figure != nil && (it.figure.frac || it.figure.marked || it.figure.sized())
			threaded = threaded || it.is(classSex) != nil || it.is(classFamily) != nil
		}
		if sized && threaded && at(l.tokens, to).value(classSep) == "x" && !stoodBeforeList.hasWord(w) && (next.figure != nil || next.is(classFamily) != nil) {
			l.sexOfCounterpart(from, to)
			return // to suit 1/2 NPT male x JIC male: its own end, said by what it goes onto
		}
		if !sized || !threaded || at(l.tokens, to).value(classSep) == "x" || !l.ownEndBeside(from, to) {
			continue
		}
		l.ignore(l.words(l.tokens[from].from, l.tokens[to-1].to), whyNot[asWhatFor])
		for k := from; k < to; k++ {
			if f := l.tokens[k].figure; f != nil {
				f.drop(asWhatFor)
				f.used = true // named with its words
			}
			l.tokens[k].word, l.tokens[k].unread = l.lex.word("the"), false
		}
		return
	}
}

// headClause leaves out what a line says first, up to a colon, of what the part is for: for pump with G 3/4 male outlet: swivel nut and hose tail 19 mm.
func (l *line) headClause() {
	if l.one || !l.seen.marks.has(':') || l.ontoWord(0, goesOntoList.begun()) == "" && !ontoList.has(l.norm[l.tokens[0].from:l.tokens[0].to]) {
		return
	}
	to, sized, threaded := 0, false, false
	for ; to < len(l.tokens) && l.tokens[to].mark != ':'; to++ {
		it := &l.tokens[to]
		sized = sized || it.figure != nil && (it.figure.frac || it.figure.marked || it.figure.sized() || it.figure.whole)
		threaded = threaded || it.is(classSex) != nil || it.is(classFamily) != nil
		if it.mark == ';' || it.mark == '|' {
			return
		}
	}
	if !sized || !threaded || to+1 >= len(l.tokens) {
		return
	}
	l.ignore(l.words(l.tokens[0].from, l.tokens[to-1].to), whyNot[asWhatFor])
	for k := 0; k <= to; k++ {
		if f := l.tokens[k].figure; f != nil {
			f.drop(asWhatFor)
			f.used = true
		}
		l.tokens[k].word, l.tokens[k].unread, l.tokens[k].mark = l.lex.word("the"), false, 0
	}
}

// sexOfCounterpart takes the sex from a stretch that says what an end goes onto: it may be that of the other thread, and is asked.
func (l *line) sexOfCounterpart(from, to int) {
	for k := from; k < to; k++ {
		it := &l.tokens[k]
		m, family := it.is(classSex), it.is(classFamily)
		switch {
		case m != nil && len(m.sexes) == 1:
			it.word = l.lex.word("thread")
		case family != nil && len(family.sexes) == 1:
			plain := *family
			plain.sexes, plain.extra = nil, nil
			it.word = meaningOf(&plain)
		default:
			continue
		}
		l.ignore(l.words(it.from, it.to), "it may be said of the thread that the part goes onto")
	}
}

// ownEndBeside reports a size with its sex or its name outside a stretch of tokens.
func (l *line) ownEndBeside(from, to int) bool {
	sized, threaded := false, false
	for k := range l.tokens {
		if k >= from && k < to {
			continue
		}
		it := &l.tokens[k]
		sized = sized || it.figure != nil && (it.figure.frac || it.figure.marked || it.figure.dashed || it.figure.sized())
		threaded = threaded || it.is(classSex) != nil || it.is(classFamily) != nil || it.is(classEnd) != nil
	}
	return sized && threaded
}

// ontoWord is the longest word or phrase for going onto something that begins with the token at k; "" if none does.
func (l *line) ontoWord(k int, onto *begunWords) string {
	words := onto.at(l.norm, l.tokens[k].from)
	if len(words) == 0 {
		return ""
	}
	text, longest := l.norm[l.tokens[k].from:], ""
	if l.uneven {
		text = l.oneBlank(text)
	}
	for _, w := range words {
		if len(w) > len(longest) && hasText(text, 0, w) && !alnum(byteAt(text, len(w))) {
			longest = w
		}
	}
	return longest
}

// endsBreath reports a token that ends what such words speak of.
func (l *line) endsBreath(k int) bool {
	it := &l.tokens[k]
	switch it.mark {
	case ',', ';', ':', ')', '|':
		return true
	}
	return it.value(classSep) == "x"
}

// portInBreath reports a word for a port from k to the next comma, and no number before it: for 1/4 NPT female port, and not for 4 outlets.
func (l *line) portInBreath(k int) bool {
	onto := goesOntoList.begun()
	for ; k < len(l.tokens) && !l.endsBreath(k); k++ {
		if l.ontoWord(k, onto) != "" {
			return false
		}
		if l.portNoun(k) {
			return !l.tokens[k-1].figure.digits()
		}
	}
	return false
}
