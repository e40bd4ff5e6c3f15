package title

import (
	"bytes"
	"slices"
	"strings"

	"handtight/threads"
)

// oneWords are the words for one that stand before the sex of an end; the other numbers are in lexicon/number.csv.
var oneWords = map[string]bool{
	"one": true, "a": true, "ein": true, "eine": true, "einmal": true, "un": true, "une": true, "uno": true, "una": true, "um": true, "uma": true, "een": true, "en": true,
	"ett": true, "et": true, "yksi": true, "jeden": true, "один": true, "одна": true, "bir": true,
}

// spokenCounts reads how many ends have each sex where the numbers and the sexes are words of a sentence, of a part with three ends or more: tee
// 1/4 NPT, two females and one male; 2 female 1 male; one end male, the others female. They must come to as many as it has.
func (l *line) spokenCounts() {
	if l.one || l.shape == nil || l.shape.ends < 3 {
		return
	}
	type group struct{ from, sex, n int }
	var groups []group
	total, rest := 0, -1
	for k := range l.tokens {
		m := l.tokens[k].is(classSex)
		if m == nil || len(m.sexes) != 1 {
			continue
		}
		from, n := l.countBeforeSex(k)
		if from < 0 {
			from, n = k, l.portsOfSex(k)
		}
		if n < 0 {
			return // a sex that no number counts
		}
		if n == 0 {
			rest = len(groups)
		}
		groups, total = append(groups, group{from, k, n}), total+n
	}
	if rest >= 0 {
		groups[rest].n = l.shape.ends - total
		total = l.shape.ends
	}
	if len(groups) < 2 || total != l.shape.ends || slices.ContainsFunc(groups, func(g group) bool { return g.n < 1 }) {
		return
	}
	all := &sense{class: classSex, tongue: "en"}
	first := groups[0].sex
	for n, g := range groups {
		sex := l.tokens[g.sex].is(classSex).sexes[0]
		all.sexes = append(all.sexes, slices.Repeat([]threads.Sex{sex}, g.n)...)
		for j := g.from; j < g.sex; j++ {
			if f := l.tokens[j].figure; f != nil {
				f.drop(asCount)
			}
			l.tokens[j].word, l.tokens[j].unread = l.lex.word("the"), false
		}
		if n > 0 {
			l.tokens[g.sex].word = l.lex.word("the")
			if before := at(l.tokens, g.from-1); before.figure == nil && betweenCountsList.has(l.norm[before.from:before.to]) {
				before.word, before.unread, before.mark = l.lex.word("the"), false, 0
			}
		}
	}
	l.tokens[first].word, l.both = meaningOf(all), false
}

// countBeforeSex gives the place of the number before the sex at k, and the number; 0 for a word for the rest. -1 if none stands there.
func (l *line) countBeforeSex(k int) (from, n int) {
	if first, _, more := strings.Cut(string(l.norm[l.tokens[k].from:l.tokens[k].to]), " "); more && l.numberOfWord(first) > 0 {
		return k, l.numberOfWord(first) // two females
	}
	for j := k - 1; j >= max(0, k-4); j-- {
		it := &l.tokens[j]
		word, _, _ := strings.Cut(string(l.norm[it.from:it.to]), " ") // two ends
		switch {
		case it.figure.digits() && it.figure.v >= 1 && it.figure.v <= 4 && !it.glued:
			return j, int(it.figure.v)
		case l.numberOfWord(word) > 0:
			return j, l.numberOfWord(word)
		case theRestList.hasWord(word):
			return j, 0
		case endMarkList.hasWord(word), hoseEndsList.hasWord(word):
		case it.figure != nil, it.mark != 0, it.unread, it.is(classFamily) != nil, it.is(classSex) != nil:
			return -1, 0
		}
	}
	return -1, 0
}

// numberOfWord is a small number in words or digits, 0 if the word is none.
func (l *line) numberOfWord(word string) int {
	switch {
	case l.lex.numbers[word] > 0:
		return l.lex.numbers[word]
	case oneWords[word]:
		return 1
	case len(word) == 1 && word >= "1" && word <= "4":
		return int(word[0] - '0')
	case word == "to":
		return 2 // in Danish and Norwegian
	}
	return 0
}

// portsOfSex is how many ends the port beside the sex at k is: one for an inlet or an outlet, 0 for the rest where it is named in the plural. -1
// if no port is named there.
func (l *line) portsOfSex(k int) int {
	for _, j := range [...]int{k + 1, k - 1} {
		if !l.portNoun(j) {
			continue
		}
		it := at(l.tokens, j)
		if outletPluralList.has(l.norm[it.from:it.to]) || inletPluralList.has(l.norm[it.from:it.to]) {
			return 0
		}
		return 1
	}
	return -1
}

// countWords reads how many ports there are of a size from the word before it: two 1/4 NPT female outlets.
func (l *line) countWords() {
	if l.one || !l.is(manifold) && !l.is(vessel) && !l.is(tee) {
		return
	}
	for k := range l.tokens {
		it := &l.tokens[k]
		n, from := l.numberBefore(k), k+1
		if f := it.figure; f.digits() && f.v > 1 && f.v < 13 && l.is(manifold) && !bytes.Contains(l.norm, []byte("inlet")) {
			n = int(f.v) // 3 outlets G 3/4 male
		}
		named := outletPluralList.has(l.norm[at(l.tokens, from).from:at(l.tokens, from).to])
		if !named && l.portNoun(from+1) && at(l.tokens, from).figure == nil && at(l.tokens, from).mark == 0 && at(l.tokens, from).to > 0 {
			named = true
			from++ // two permeate ports 1/4
		}
		if named {
			from++
		}
		if at(l.tokens, from).is(classFamily) != nil {
			from++
		}
		size := at(l.tokens, from).figure
		if at(l.tokens, from+1).value(classSep) == "x" {
			continue // 4 outlets 3/4 x 1/2: the first is the inlet
		}
		if n < 2 || it.figure != nil && !named || size == nil || !size.frac && !size.marked && !(named && size.whole) || size.times > 0 {
			continue
		}
		l.countsAs(k, n, size)
	}
}

// nordicNumbers are the numbers of the north that are other words too, of English or of a sex.
var nordicNumbers = map[string]int{"to": 2, "fire": 4, "fem": 5}

// numberBefore is the number that a word before ports says, 0 if none. Those of [nordicNumbers] are numbers only before a word of the north: to afgange.
func (l *line) numberBefore(k int) int {
	word := l.norm[l.tokens[k].from:l.tokens[k].to]
	if len(word) < 2 || !l.lex.counting[word[0]] {
		return 0
	}
	if n := nordicNumbers[string(word)]; n > 0 {
		if next := at(l.tokens, k+1); nordicOutletList.has(l.norm[next.from:next.to]) {
			return n
		}
		return 0
	}
	return l.lex.numbers[string(word)]
}

// countedSexes reads how many ends have each sex, said together: cross 1/4 NPT, 3F 1M.
func (l *line) countedSexes() {
	if l.one || l.shape == nil || l.shape.ends < 3 {
		return
	}
	total, first, last := 0, -1, -1
	for k := 0; k+1 < len(l.tokens); k++ {
		f, sex := l.tokens[k].figure, l.sexCounted(k)
		if !f.digits() || f.v < 1 || f.v > 4 || sex == nil {
			continue
		}
		if first < 0 {
			first = k
		}
		total, last = total+int(f.v), k
	}
	if total != l.shape.ends || first == last {
		return
	}
	all := &sense{class: classSex, tongue: "en"}
	for k := first; k <= last; k++ {
		if f, sex := l.tokens[k].figure, l.sexCounted(k); f.digits() && f.v >= 1 && f.v <= 4 && sex != nil {
			for range int(f.v) {
				all.sexes = append(all.sexes, sex.sexes[0])
			}
			f.drop(asCount)
			if l.tokens[k+1].value(classSep) == "x" {
				l.tokens[k+2].word = l.lex.word("the")
			}
			l.tokens[k+1].word = l.lex.word("the")
		}
	}
	l.tokens[first+1].word = meaningOf(all)
}

// sexCounted is the sex that a number counts: 3F, 2x Aussen; nil if it counts none.
func (l *line) sexCounted(k int) *sense {
	next := at(l.tokens, k+1)
	m := next.is(classSex)
	if x := next; x.value(classSep) == "x" && x.glued {
		m = at(l.tokens, k+2).is(classSex)
	} else if !next.glued {
		return nil
	}
	if m == nil || len(m.sexes) != 1 {
		return nil
	}
	return m
}
