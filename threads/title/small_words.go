package title

import (
	"bytes"
	"slices"
	"strings"
)

// leftLetter reads the L that is glued behind the size of a G or a metric thread, as gas fittings have it: G3/8L, M16x1.5-L. Behind a tube it is the
// series of a cone.
func (l *line) leftLetter(k int) {
	it := &l.tokens[k]
	j := k - 1
	if at(l.tokens, j).mark == '-' && l.tokens[j].glued {
		j--
	}
	f := at(l.tokens, j).figure
	if l.one || !it.glued || it.to != it.from+1 || !l.capital(it.from) || l.norm[it.from] != 'l' || f == nil || it.is(classSep) != nil && it.value(classSep) == "x" {
		return
	}
	m := at(l.tokens, j-1).is(classFamily)
	if f.kind == metricSize && f.pitch > 0 || f.frac && m != nil && m.value == "BSPP" || f.frac && m != nil && m.value == "G" {
		it.word, it.unread = l.lex.word("lh"), false
	}
}

// italianOuter reads est, short for esterno, behind a size, where the line has int or gas too.
func (l *line) italianOuter(k int) {
	it, prev := &l.tokens[k], at(l.tokens, k-1)
	if word := string(l.norm[it.from:it.to]); l.one || word != "est" && word != "est." || prev.figure == nil || !prev.figure.frac && !prev.figure.marked {
		return
	}
	if anyToken(l.tokens, func(o *token) bool {
		w := string(l.norm[o.from:o.to])
		return w == "int" || w == "int." || w == "gas" || w == "fem" || w == "interno"
	}) {
		it.word, it.unread = l.lex.word("maschio"), false
	}
}

// electricPlug takes a plug or a socket behind the name of another part, in a line that speaks of a sensor or of its plug's standard, for what comes with
// it; not one that a size stands behind.
func (l *line) electricPlug(k int) {
	it := &l.tokens[k]
	switch string(l.norm[it.from:it.to]) {
	case "plug", "plugs", "socket":
	default:
		return
	}
	next := at(l.tokens, k+1).figure
	if l.one || l.shape == nil || l.portNoun(k-1) || next != nil && (next.frac || next.marked || next.sized()) || !electricList.in(l.norm) {
		return
	}
	l.ignore(l.words(it.from, it.to), "it comes with the part")
	it.word, it.unread = l.lex.word("the"), false
}

// nutOfBulkhead takes the nut that is said with a bulkhead, or with a part whose ends are both said, for what comes with it: mit Mutter. A swivel
// nut has a word of its own.
func (l *line) nutOfBulkhead(k int) {
	it, before := &l.tokens[k], at(l.tokens, k-1)
	switch string(l.norm[it.from:it.to]) {
	case "mutter", "moer":
	default:
		return
	}
	with := string(l.norm[before.from:before.to])
	if l.one || with != "mit" && with != "met" && with != "med" && with != "m" || !l.is(bulkhead) && !l.is(union) && !l.is(wall) && !throughWallList.in(l.norm) {
		return
	}
	l.ignore(l.words(it.from, it.to), "it comes with the part")
	it.word, it.unread = l.lex.word("the"), false
}

// femaleNPT reads NPTF as the female of NPT where NPTM stands in the line too, and not as the dryseal thread.
func (l *line) femaleNPT(k int) {
	it := &l.tokens[k]
	switch string(l.norm[it.from:it.to]) {
	case "nptf", "npt-f", "npt f":
	default:
		return
	}
	if !l.one && (bytes.Contains(l.norm, []byte("nptm")) || bytes.Contains(l.norm, []byte("npt-m"))) {
		it.word, it.unread = l.lex.word("fnpt"), false
	}
}

// sortBehind reads the sort of a valve behind its noun and a comma, as catalogues have it: Valve, relief.
func (l *line) sortBehind(k int) {
	it, sort := &l.tokens[k], at(l.tokens, k+2)
	if string(l.norm[it.from:it.to]) != "valve" || l.one || at(l.tokens, k+1).mark != ',' || sort.to == sort.from || sort.figure != nil && !sort.glued {
		return
	}
	to := k + 2
	for to+1 < len(l.tokens) && l.tokens[to+1].mark != ',' && to < k+5 {
		to++
	}
	for ; to > k+1; to-- {
		name := string(l.norm[sort.from:l.tokens[to].to])
		if m := l.lex.word(wordKey(name + " valve")); m != nil && m.has&(1<<classKind) != 0 {
			it.word = m
			for j := k + 2; j <= to; j++ {
				if f := l.tokens[j].figure; f != nil {
					f.drop(asCount)
					f.used = true
				}
				l.tokens[j].word, l.tokens[j].unread = l.lex.word("the"), false
			}
			return
		}
	}
}

// notIncluded takes a seal that the words behind it say does not come with the part for none of its ends.
func (l *line) notIncluded(k int) {
	it := &l.tokens[k]
	v := it.value(classAttr)
	m := it.is(classKind)
	if l.one || v != "o-ring" && v != "washer" && !(m != nil && m.shape.traits&ring != 0) {
		return
	}
	rest := strings.TrimLeft(string(l.norm[it.to:]), " ,(-")
	if slices.ContainsFunc(notWithItList.words(), func(w string) bool { return strings.HasPrefix(rest, w) }) {
		l.ignore(l.words(it.from, it.to), "it does not come with the part")
		it.word, it.unread = l.lex.word("the"), false
	}
}

// dashWordBefore reads a dash that is written out before plain digits of a line whose flare has no size of its own, and the word size right beside
// the flare's name: dash 6.
func (l *line) dashWordBefore(k int) {
	it, f := &l.tokens[k], at(l.tokens, k+1).figure
	word := string(l.norm[it.from:it.to])
	if l.one || word != "dash" && word != "size" || !f.digits() || !dashNumbers[f.v] || l.shape == nil && word == "size" {
		return
	}
	named := false
	for j := range l.tokens {
		if !dashWord(l.tokens[j].is(classFamily)) {
			continue
		}
		if j != k-1 && j+1 < len(l.tokens) && l.tokens[j+1].figure != nil || j > 0 && j-1 != k+1 && l.tokens[j-1].figure != nil || at(l.tokens, j+1).mark == '-' && at(l.tokens, j+2).figure != nil {
			return // it has its size
		}
		named = named || word == "dash" || j == k-1 || j == k+2
	}
	if named {
		it.word, it.unread = l.lex.word("the"), false
		f.dashed, f.kind = true, dashSize
	}
}

// taperOfCock takes taper before plug, behind the name of a valve, for how the valve is made: a plug cock. A taper plug by itself is a plug with a taper
// thread.
func (l *line) taperOfCock(k int) {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	text := string(l.norm[it.from:it.to])
	if l.one || l.shape == nil || text != "taper" && text != "tapered" || string(l.norm[next.from:next.to]) != "plug" || !l.is(valve) && !l.is(wall) && !l.is(ownThread) && l.shape.kind != "seacock" {
		return
	}
	it.word, next.word = l.lex.word("the"), l.lex.word("the")
	it.unread, next.unread = false, false
	l.ignore(l.words(it.from, next.to), "how the part is made inside, which is not judged")
}
