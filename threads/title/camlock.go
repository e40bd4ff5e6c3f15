package title

import (
	"handtight/threads"
)

// camOthers are the other ends of cam couplings by the letter of their type: a thread by its sex, or a tail for a hose.
// Source: A-A-59326, as memory has it.
var camOthers = map[byte]threads.Sex{'a': threads.Female, 'b': threads.Male, 'c': threads.NoSex, 'd': threads.Female, 'e': threads.NoSex, 'f': threads.Male}

// camLetter keeps the letter of a type, which is no sex and no short word: camlock type F 2".
func (l *line) camLetter(k int) {
	it, prev := &l.tokens[k], at(l.tokens, k-1)
	cam := func(it *token) bool { return it.value(classEnd) == "CAMLOCK" }
	if prev.mark == ':' {
		prev = at(l.tokens, k-2) // type: F
	}
	if !l.one && string(l.norm[it.from:it.to]) == "type b" && anyToken(l.tokens, cam) {
		l.camType, it.word = 'b', l.lex.word("the") // elsewhere a stud's form
		return
	}
	if l.one || it.to-it.from != 1 || l.norm[it.from] < 'a' || l.norm[it.from] > 'f' {
		return
	}
	if size := prev.figure; size != nil && l.capital(it.from) && anyToken(l.tokens, cam) {
		prev = at(l.tokens, k-2) // camlock part 2" C
	}
	typed := camTypeList.has(l.norm[prev.from:prev.to])
	if !typed && !(l.capital(it.from) && (cam(prev) || cam(at(l.tokens, k-2)) && prev.is(classKind) != nil)) {
		return
	}
	if anyToken(l.tokens, cam) {
		l.camType = l.norm[it.from]
	}
	it.word, it.unread = l.lex.word("the"), false
}

// camOther adds the other end of a cam coupling whose type is said and whose size stands alone.
func (l *line) camOther(ends []*phrase) []*phrase {
	sex, ok := camOthers[l.camType]
	if e := ends[0]; ok && len(ends) == 1 && (e.end == "" || e.end == "CAMLOCK") && e.fam != nil && len(e.sexes) == 0 && sex != threads.NoSex {
		e.end, e.sexes = "", []threads.Sex{sex} // camlock type F 2" NPT
		l.unjudged = append(l.unjudged, "the other end ("+notJudged["CAMLOCK"]+")")
		return ends
	}
	if ok && len(ends) == 1 && ends[0].bare() && l.says("CAMLOCK") {
		ends[0].end = "CAMLOCK" // type: F 2"
	}
	if !ok || len(ends) != 1 || ends[0].end != "CAMLOCK" || ends[0].fig == nil || ends[0].fam != nil {
		return ends
	}
	ends[0].sexes = nil // of the coupling
	other := &phrase{from: ends[0].from, to: ends[0].to, fig: ends[0].fig}
	switch {
	case sex == threads.NoSex:
		other.end = "BARB"
	case ends[0].millimetres():
		if l.lex.bores[int(other.fig.v)] == 0 {
			return ends
		}
		other.fig, other.sexes, other.thread = l.nominalBore(other.fig), []threads.Sex{sex}, true
	default:
		other.sexes, other.thread = []threads.Sex{sex}, true
	}
	return append(ends, other)
}
