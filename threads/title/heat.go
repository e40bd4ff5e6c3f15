package title

import (
	"strings"
)

// fahrenheit takes the F behind a number for degrees also right behind a pressure, before a word for the most, and at the end of a range. It
// reads the F behind a number that is no size for degrees: 150 psi at 70F, 33-150F, max 400 F. Behind a nominal bore it is a
// sex, but where a word before the number says a temperature.
func (l *line) fahrenheit() {
	if l.one || !l.seen.alone.has('f') {
		return
	}
	for k := range l.tokens {
		f, letter := l.tokens[k].figure, at(l.tokens, k+1)
		if !f.digits() || f.v < coldest || f.v > hottest || letter.to-letter.from != 1 || l.norm[letter.from] != 'f' || !l.capital(letter.from) || at(l.tokens, k+2).mark == '/' || at(l.tokens, k+2).value(classSep) == "x" || at(l.tokens, k-1).value(classSep) == "x" && !l.wordsBefore(k, heatToList) && !l.rangeTo(k) {
			continue
		}
		before := at(l.tokens, k-1)
		called := l.heatBefore(k) || l.heatBehind(k+2) || k > 0 && l.sizeElsewhere(k) && at(l.tokens, k+2).is(classFamily) == nil && (l.isPressure(k-1) || before.mark == ',' && l.isPressure(k-2) || before.mark == '(' && l.isPressure(k-2))
		_, bore := l.lex.bores[int(f.v)]
		ranged := before.mark == '-' && before.glued && at(l.tokens, k-2).figure.digits() || l.rangeTo(k)
		if !called && !ranged && (bore || tubeOutsides[f.v] || !letter.glued && !(at(l.tokens, k+2).to == at(l.tokens, k+2).from || at(l.tokens, k+2).mark != 0)) {
			continue
		}
		f.drop(asFahrenheit)
		letter.word, letter.unread = l.lex.word("the"), false
		if ranged {
			l.tokens[k-2].figure.drop(asScale)
		}
		if from := at(l.tokens, k-3); called && from.figure.digits() && from.figure.role == noRole && at(l.tokens, k-2).to-at(l.tokens, k-2).from == 1 && l.norm[at(l.tokens, k-2).from] == 'f' {
			from.figure.drop(asScale) // -40F to 212F
			l.tokens[k-2].word, l.tokens[k-2].unread = l.lex.word("the"), false
		}
	}
}

// celsius reads the C behind a number, where a word for a temperature or a pressure stands right before it and another size in the line, for degrees:
// 6 bar at 28C, PN16 15C. Elsewhere, and beside compression ends of that tube, it may be copper pipe.
func (l *line) celsius() {
	if l.one || !l.seen.alone.has('c') {
		return
	}
	for k := range l.tokens {
		f, letter := l.tokens[k].figure, at(l.tokens, k+1)
		if !f.digits() || f.v > warmest || !letter.glued || letter.to-letter.from != 1 || l.norm[letter.from] != 'c' || letter.role(classUnit) != asCelsius && letter.is(classUnit) == nil || at(l.tokens, k+2).value(classSep) == "x" || at(l.tokens, k-1).value(classSep) == "x" {
			continue
		}
		before := at(l.tokens, k-1)
		called := warmthList.has(l.norm[before.from:before.to]) || l.at[l.tokens[k].from] > 0 && l.as[l.at[l.tokens[k].from]-1] == '@'
		if !l.sizeElsewhere(k) || l.material == "copper" || l.says("COMPRESSION") && tubeOutsides[f.v] {
			continue // copper elbow 16 bar 22C
		}
		if !called && !(k > 0 && (l.isPressure(k-1) || before.figure != nil && l.behindNominal(k-1))) {
			continue
		}
		f.drop(asCelsius)
		letter.word, letter.unread = l.lex.word("the"), false
	}
}

// rangeTo reports plain digits before the word to at k-1, so that the figure at k is the end of a range: 40 to 125 F.
func (l *line) rangeTo(k int) bool {
	f := at(l.tokens, k-2).figure
	if !l.sizeElsewhere(k) {
		return false // reducer 20 to 25 F
	}
	return f.digits() && f.v < l.tokens[k].figure.v && hasText(l.norm, at(l.tokens, k-1).from, "to") && !at(l.tokens, k-3).parted() || f.digits() && hasText(l.norm, at(l.tokens, k-1).from, "to") && at(l.tokens, k-3).mark == '-'
}

// heatBefore reports a word for a temperature right before the figure at k, or a sign for at.
func (l *line) heatBefore(k int) bool {
	before := at(l.tokens, k-1)
	if heatList.has(l.norm[before.from:before.to]) || l.wordsBefore(k, heatList) {
		return true
	}
	return strings.HasSuffix(strings.TrimRight(l.as[:l.at[l.tokens[k].from]], " "), "@")
}

// heatBehind reports a word for the most, the least or the temperature at k, behind the letter of a temperature: 140 F max.
func (l *line) heatBehind(k int) bool {
	it := at(l.tokens, k)
	return it.to > it.from && heatBehindList.has(l.norm[it.from:it.to])
}

// warmest is the most degrees Celsius that such lines give. A judgement.
const warmest = 400

// coldest and hottest are the degrees of Fahrenheit that such lines give. A judgement.
const (
	coldest = 20
	hottest = 600
)
