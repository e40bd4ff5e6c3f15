package title

import "bytes"

// hoseFerrule takes the clamp from a ferrule beside the word for hose, where no clamp is named: it is crimped over the
// hose, and has no end.
func (l *line) hoseFerrule(k int) {
	it := &l.tokens[k]
	text := string(l.norm[it.from:it.to])
	if !l.one && text == "ferrule" && (l.says("COMPRESSION") || l.hasWord("nut") || l.hasWord("back")) && it.value(classEnd) == "FERRULE" {
		it.word, it.unread = l.lex.word("the"), false // the ring of a compression end
		return
	}
	if !l.one && (text == "ferrule" || text == "ferrules") && l.says("TUBE") && !l.says("BARB") && anyToken(l.tokens, func(o *token) bool { m := o.is(classKind); return m != nil && m.shape.ends >= 0 }) {
		it.word, it.unread = l.lex.word("compression"), false // ferrule tube fitting: its rings hold the tube
		return
	}
	if l.one || text != "ferrule" && text != "ferrules" || l.says("BARB") || !l.namesHose() && !l.crimps() {
		return
	}
	for j := range l.tokens {
		if j != k && l.tokens[j].value(classEnd) == "FERRULE" {
			return
		}
	}
	it.word = l.lex.word("hose ferrule")
}

// crimps reports a word for crimping a ferrule over a hose.
func (l *line) crimps() bool {
	text := string(l.norm)
	return hasWord(text, "skive") || hasWord(text, "crimp") || hasWord(text, "swage")
}

// namesHose reports whether a word of the line is hose, as a part or as an end.
func (l *line) namesHose() bool {
	for k := range l.tokens {
		if l.tokens[k].hosed() {
			return true
		}
	}
	return false
}

// hosed reports the word for hose, as a part or as an end.
func (it *token) hosed() bool {
	if it.word == nil || it.word.has&(1<<classEnd|1<<classKind) == 0 {
		return false
	}
	m := it.is(classKind)
	return it.value(classEnd) == "HOSE" || m != nil && m.shape.name == "hose"
}

// hoseLength reports whether the whole figure before the M at k is the length of a hose or a tube: the
// line names a hose and a size with an inch mark stands before, or it names a tube behind its wall
// (15 x 1.0 TUBE 6M), and no x joins the figure to another.
func (l *line) hoseLength(k int) bool {
	hose, size, wall := l.namesHose(), false, false
	for j := range l.tokens {
		it := &l.tokens[j]
		size = size || j < k-1 && it.figure != nil && (it.figure.marked || it.figure.frac)
		wall = wall || j < k-1 && it.value(classEnd) == "TUBE" && at(l.tokens, j-2).value(classSep) == "x" && bytes.IndexByte(l.norm[at(l.tokens, j-1).from:at(l.tokens, j-1).to], '.') > 0
	}
	return (hose && size || wall) && at(l.tokens, k-2).value(classSep) == "" && at(l.tokens, k+1).value(classSep) == ""
}

// longForPipe reports a whole number before the M at k that is too large for the thread of a pipe of the millimetres that the
// line gives, of which no word says a thread: pipe PN20 25MM 4M comes in lengths of 4 m.
func (l *line) longForPipe(k int) bool {
	v := l.tokens[k-1].figure.v
	if v < 2 || at(l.tokens, k-2).value(classSep) == "x" || at(l.tokens, k+1).value(classSep) == "x" {
		return false
	}
	first, noun := l.tokens[0].value(classEnd), l.tokens[0].is(classKind)
	if !l.one && k == len(l.tokens)-1 && (first == "TUBE" || first == "TUBING" || noun != nil && noun.shape.ends < 0) && l.sizeElsewhere(k-1) && k > 2 {
		return true // pipe 2" NPT 3M
	}
	pipe := 0.0
	for j := range l.tokens {
		it := &l.tokens[j]
		f := it.figure
		if j != k && (it.is(classSex) != nil || it.is(classFamily) != nil) || f != nil && (f.frac || f.marked) {
			return false
		}
		if f != nil && j != k-1 && (f.kind == mmSize || f.kind == bare && f.whole && pipeOutsides[f.v] && at(l.tokens, j+1).value(classSep) == "x") {
			pipe = max(pipe, f.v)
		}
	}
	return pipe > 0 && v*25.4 > 1.2*pipe
}

// hoseByLength reports whether the whole figure before the small m at k is the length of hose that is
// the part itself, whose bore in millimetres is given too: hose 2 m 13 mm.
func (l *line) hoseByLength(k int) bool {
	bore := false
	for j := range l.tokens {
		it := &l.tokens[j]
		if m := it.is(classKind); m != nil && m.shape.name != "hose" && m.shape.rank > 0 && m.shape.ends >= 0 {
			return false
		}
		bore = bore || it.figure != nil && it.figure.kind == mmSize
	}
	return bore && l.namesHose() && !l.capital(l.tokens[k].from)
}

// perLetter takes the female from the h of kg/h, which is an hour, and any sex from a letter that a
// stroke ties to a unit.
func (l *line) perLetter(k int) {
	it, stroke, unit := &l.tokens[k], at(l.tokens, k-1), at(l.tokens, k-2)
	if it.is(classSex) == nil || it.to-it.from != 1 || !it.glued || stroke.mark != '/' || !stroke.glued {
		return
	}
	if f := unit.figure; onlyUnit(unit.word) && len(unit.word.all()) > 0 || f != nil && f.role.other() {
		it.word, it.unread = l.lex.word("the"), false
	}
}
