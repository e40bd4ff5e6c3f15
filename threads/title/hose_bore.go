package title

import "handtight/threads"

// boreNamedFirst leaves out the size that stands right behind the word for a hose, or behind its grade, where the hose's grade or its
// length follows before any word of an end, and threads follow that: Hydraulikslange 3/8" 2SN 1200 mm, G 3/8 ... It is the bore, whatever
// its ends are, and none of their words hold for it.
func (l *line) boreNamedFirst() {
	if l.one || l.shape != nil && !l.is(hose) && !l.is(nut) || l.says("BARB") || l.says("PUSH") || l.says("COMPRESSION") || l.is(madeUp) && l.connects() && !l.layers() {
		return
	}
	l.endTwice()
	bore, behind := l.boreBehindHose()
	if bore < 0 {
		bore, behind = l.boreBeforeHose()
	}
	if bore < 0 || !l.threadFrom(behind) {
		return
	}
	f := l.tokens[bore].figure
	f.drop(asBoreOf)
	l.shape, l.evidence = l.lex.shapes["hose"], true
	for k := range l.tokens[:bore] {
		if l.tokens[k].value(classEnd) == "TUBE" {
			l.tokens[k].word = l.lex.word("the") // tubo: the hose, and no end of it
		}
	}
}

// boreBehindHose gives the size that is the hose's own, and where the words of its ends may begin; -1 where the line does not part the
// one from the other by a grade or a length.
func (l *line) boreBehindHose() (bore, behind int) {
	bore, noun, parted := -1, false, false
	for k := range l.tokens {
		it := &l.tokens[k]
		f := it.figure
		switch {
		case f != nil && bore < 0 && noun && f.couldBeBore():
			bore = k
		case f != nil && f.sized():
			return l.partedBore(bore, k, parted)
		case f != nil:
			parted = parted || bore >= 0 && (f.role == asLength || f.kind == pressureFigure)
		case hoseGradeWord(it):
			noun, parted = true, parted || bore >= 0
		case l.isHoseNoun(it):
			if bore >= 0 && !parted {
				return -1, 0 // 3/8 hose, 1/4 hose
			}
			noun = true
		case it.is(classFamily) != nil, it.is(classSex) != nil, it.value(classAttr) == "nut", it.value(classAttr) == "swivel", it.is(classKind) != nil, it.is(classEnd) != nil && it.value(classEnd) != "TUBE", it.value(classSep) == "x":
			return l.partedBore(bore, k, parted)
		}
	}
	return -1, 0
}

func (l *line) partedBore(bore, k int, parted bool) (int, int) {
	if !parted {
		return -1, 0
	}
	return bore, k
}

// couldBeBore reports a size that hose comes in.
func (f *figure) couldBeBore() bool {
	return f.kind == inchSize && f.v <= threads.Length(longestBore).Inches() || f.kind == dnSize || f.kind == dashSize || f.kind == mmSize && f.v <= longestBore
}

// isHoseNoun reports a word for hose, or for the tube that Italian and the Iberian languages call it by.
func (l *line) isHoseNoun(it *token) bool {
	m := it.is(classKind)
	return it.value(classEnd) == "HOSE" || it.value(classEnd) == "TUBE" && l.layers() || m != nil && m.shape.traits&hose != 0
}

// threadFrom reports a size with the name of a thread, or one that only a thread has, at k or behind it.
func (l *line) threadFrom(k int) bool {
	sized, named := false, false
	for ; k < len(l.tokens); k++ {
		it := &l.tokens[k]
		if f := it.figure; f != nil && f.sized() {
			if f.kind == metricSize && f.pitch > 0 || f.kind == unSize || f.kind == coneSize {
				return true
			}
			sized = sized || f.kind == inchSize || f.kind == dashSize
		}
		named = named || it.is(classFamily) != nil || it.is(classSex) != nil || it.value(classAttr) == "nut"
	}
	return sized && named
}

// boreBeforeHose gives the size right before the word for a hose, where nothing but figures that are no sizes and small words stand before it,
// and both ends of the hose follow: 4000 psi 1/4 hose JIC 4 F x F. -1 if there is none.
func (l *line) boreBeforeHose() (bore, behind int) {
	for k := range l.tokens {
		it := &l.tokens[k]
		f := it.figure
		switch {
		case f != nil && f.couldBeBore() && f.sized():
			if at(l.tokens, k+1).value(classEnd) != "HOSE" || !l.twoEndsFrom(k+2) {
				return -1, 0
			}
			return k, k + 2
		case f != nil && f.sized(), it.is(classFamily) != nil, it.is(classSex) != nil, it.is(classEnd) != nil, it.is(classKind) != nil:
			return -1, 0
		}
	}
	return -1, 0
}

// twoEndsFrom reports that both ends of a hose are given from k on: two sizes, two sexes, or one that is said to come twice.
func (l *line) twoEndsFrom(k int) bool {
	sizes, sexes := 0, 0
	for ; k < len(l.tokens); k++ {
		it := &l.tokens[k]
		if f := it.figure; f != nil && f.sized() {
			sizes++
		}
		if m := it.is(classSex); m != nil {
			sexes += len(m.sexes)
		}
	}
	return sizes > 1 || sizes == 1 && sexes > 1 || l.both
}

// endTwice reads the x2 that a line of a hose ends with behind its one end: 3/8 hose BSPP female x2. Both ends are so.
func (l *line) endTwice() {
	last := len(l.tokens) - 1
	if last < 3 || !l.namesHose() || !l.tokens[last].glued || l.norm[l.tokens[last-1].from] != 'x' || l.tokens[last-1].glued || l.tokens[last].figure == nil || l.tokens[last].figure.v != 2 {
		return
	}
	said := 0
	for k := range l.tokens {
		said += len(l.tokens[k].saidSexes())
	}
	if said != 1 || len(at(l.tokens, last-2).saidSexes()) != 1 {
		return
	}
	l.both, l.shape, l.evidence = true, l.lex.shapes["hose"], true
	l.tokens[last].figure.drop(asCount)
}
