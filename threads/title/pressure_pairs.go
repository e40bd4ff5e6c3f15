package title

import (
	"math"
	"slices"

	"handtight/pressure/quantity"
	"handtight/threads"
)

// pairPressures gives each of several pressures with strokes between them the word that stands at its place among as many words with strokes
// between them, before the pressures or behind: working / burst: 70 / 280 bar, 4000/1000 psi burst/working.
func (l *line) pairPressures() {
	if l.one {
		return
	}
	for k := 0; k < len(l.tokens); k++ {
		if !l.isPressure(k) {
			continue
		}
		last, many := k, 1
		for l.joinsPressures(last+1) && l.isPressure(last+2) {
			last, many = last+2, many+1
		}
		if many > 1 {
			words := l.wordsBeforePressures(k, many)
			if words == nil {
				words = l.wordsBehindPressures(last, many)
			}
			for n, w := range words {
				l.tokens[k+2*n].figure.called = w
			}
		}
		k = last
	}
}

func (l *line) isPressure(k int) bool {
	f := at(l.tokens, k).figure
	return f != nil && f.kind == pressureFigure
}

// joinsPressures reports a stroke or a sign for and between two of a row.
func (l *line) joinsPressures(k int) bool {
	it := at(l.tokens, k)
	return it.mark == '/' || it.mark == '&' || it.mark == '-' || it.to > it.from && betweenCountsList.has(l.norm[it.from:it.to])
}

// wordsBeforePressures are the words of a row that ends before k, as many as asked for; nil if there are not as many.
func (l *line) wordsBeforePressures(k, many int) []string {
	j := k - 1
	for j >= 0 && (l.tokens[j].mark == ':' || l.tokens[j].mark == '=' || l.tokens[j].mark == '(' || l.plainPressureWord(j)) {
		j--
	}
	out := l.rowOfWords(j, -1)
	slices.Reverse(out)
	if len(out) != many {
		return nil
	}
	return out
}

// wordsBehindPressures are the words of a row that begins behind k, as many as asked for; nil if there are not as many.
func (l *line) wordsBehindPressures(k, many int) []string {
	j := k + 1
	for j < len(l.tokens) && l.tokens[j].mark == '(' {
		j++
	}
	if out := l.rowOfWords(j, 1); len(out) == many {
		return out
	}
	return nil
}

// rowOfWords gives what the words of a row make of pressures, from j on in a direction.
func (l *line) rowOfWords(j, step int) []string {
	var out []string
	word := ""
	for ; j >= 0 && j < len(l.tokens); j += step {
		if w := l.pressureWord(j); w != "" {
			word = w
			continue
		}
		if word == "" || !l.joinsPressures(j) {
			break
		}
		out, word = append(out, word), ""
	}
	if word != "" {
		out = append(out, word)
	}
	return out
}

// pressureWord is what a word makes of a pressure, "" if it speaks of none.
func (l *line) pressureWord(k int) string {
	it := at(l.tokens, k)
	if m := it.is(classPress); m != nil {
		return m.value
	}
	if it.to > it.from && workingShortList.has(l.norm[it.from:it.to]) {
		return "rated"
	}
	return ""
}

// plainPressureWord reports a word between the words of a row and its figures that says nothing: pressure.
func (l *line) plainPressureWord(k int) bool {
	it := at(l.tokens, k)
	word := string(l.norm[it.from:it.to])
	return word == "pressure" || word == "pressures" || word == "druck" || onlyUnit(it.word) && len(it.word.all()) > 0
}

// guardRating takes a rating back that lies more than a fiftieth above what the same line calls a burst, a test or a peak: its words and its figures are not paired
// as they are read.
func (l *line) guardRating() {
	if !l.hasRated || l.one {
		return
	}
	for _, p := range l.pressures {
		if p.What != "burst" && p.What != "test" && p.What != "peak" || p.Pressure >= l.rated*0.98 {
			continue
		}
		k := indexToken(l.tokens, func(it *token) bool { return it.figure == l.ratedBy })
		if k < 0 {
			return
		}
		l.ratedBy.role = asPressure
		l.pressures = append(l.pressures, threads.StatedPressure{What: threads.Unclear, Pressure: l.rated, Words: l.words(l.tokens[k].from, l.pressureEnd(k))})
		l.rated, l.hasRated, l.ratedBy = 0, false, nil
		return
	}
}

// ofAnother gives the stretch that says a pressure of another part or of the plant: with 3000 psi hose, next to the 1000 psi gauge, the system
// runs at 52 bar. "" if it is the part's own.
func (l *line) ofAnother(k int) string {
	if l.one || l.shape == nil {
		return ""
	}
	end := l.pressureEnd(k)
	for j := k - 1; j >= max(0, k-pressureWords-1); j-- {
		o := &l.tokens[j]
		if o.figure != nil || o.mark == ',' || o.mark == ';' || o.mark == '(' {
			break
		}
		if notItsOwnList.has(l.norm[o.from:o.to]) {
			return l.words(o.from, end)
		}
		if m := o.is(classKind); m != nil && j > 0 && m.shape.kind != l.shape.kind && l.meantFor(j-1) {
			return l.words(l.tokens[j-1].from, end) // for pumps up to 270 bar
		}
	}
	before, next := at(l.tokens, k-1), at(l.tokens, k+1)
	if !theOtherList.has(l.norm[before.from:before.to]) || k == 0 {
		return ""
	}
	m := next.is(classKind)
	other := m != nil && m.shape.kind != l.shape.kind || next.value(classEnd) == "HOSE" && !l.is(hose) || string(l.norm[next.from:next.to]) == "one"
	if !other || len(sizesIn(l.tokens[:k])) == 0 {
		return ""
	}
	return l.words(before.from, next.to)
}

// sameAgain reports a pressure in brackets that says the one before it again in another unit, and makes of it what that was made: set 943 psi (65 bar) is no
// rating of 65 bar.
func (l *line) sameAgain(k int, p quantity.Pressure) bool {
	if l.one || at(l.tokens, k-1).mark != '(' {
		return false
	}
	j := k - 2
	for j >= 0 && onlyUnit(l.tokens[j].word) && l.tokens[j].word != nil {
		j--
	}
	first := at(l.tokens, j).figure
	if first == nil || first.per == 0 {
		return false
	}
	before := quantity.Pressure(first.v) * first.per
	if math.Abs(float64(p-before)) > 0.03*float64(before) {
		return false
	}
	f := l.tokens[k].figure
	for _, stated := range l.pressures {
		if stated.Pressure == before {
			f.drop(first.role)
			f.used = true // it is told with the other
			return true
		}
	}
	return false
}
