package title

import (
	"bytes"
	"strings"

	"handtight/threads"
)

// unclearPressure gives the stretch that makes of a pressure something else than a rating, or that nobody can tell it from: a word
// beside it that is not understood (blew at 400 bar, 400 bar surge), a doubt (1000 psi?, maybe 1000 psi) or a share (half of 1000 psi).
// "" if its words are plain.
func (l *line) unclearPressure(k int) (words string) {
	if l.one {
		return ""
	}
	it := &l.tokens[k]
	end := l.pressureEnd(k)
	if text := l.norm[it.from:end]; bytes.Contains(text, []byte("wog")) || bytes.Contains(text, []byte("cwp")) {
		return "" // a working pressure by its unit
	}
	if strings.HasPrefix(strings.TrimLeft(l.as[l.at[end]:], " )"), "?") {
		return l.words(it.from, end) + "?"
	}
	if made := at(l.tokens, k-2); string(l.norm[at(l.tokens, k-1).from:at(l.tokens, k-1).to]) == "at" && (hasText(l.norm, made.from, "crimped") || hasText(l.norm, made.from, "swaged")) {
		return l.words(made.from, end)
	}
	for j := k - 1; j >= max(0, k-pressureWords); j-- {
		o := &l.tokens[j]
		if before := at(l.tokens, j-1); o.figure != nil && doubtList.has(l.norm[before.from:before.to]) {
			return l.words(before.from, end) // safety factor 4 at 270 bar
		}
		if o.apartFromPressure() {
			break
		}
		if o.unread && !l.inCode(j) || doubtList.has(l.norm[o.from:o.to]) || j == k-1 && outletList.has(l.norm[o.from:o.to]) {
			return l.words(o.from, end) // outlet 5 bar: of a regulator
		}
	}
	for j := k + 1; j < min(len(l.tokens), k+1+pressureWords); j++ {
		o := &l.tokens[j]
		if o.apartFromPressure() {
			break
		}
		if o.unread && !l.inCode(j) || doubtList.has(l.norm[o.from:o.to]) {
			return l.words(it.from, o.to)
		}
	}
	return ""
}

// pressureWords is how many words beside a pressure are taken to speak of it.
const pressureWords = 3

// apartFromPressure reports a token that ends the words of a pressure: a figure, a mark, or a word that speaks of the part itself.
func (it *token) apartFromPressure() bool {
	return it.figure != nil || it.mark != 0 || it.is(classKind) != nil || it.is(classFamily) != nil || it.is(classSex) != nil || it.is(classEnd) != nil || it.is(classMaterial) != nil || it.is(classPress) != nil || it.value(classSep) == "x"
}

// pressureEnd is where the unit of the pressure at k ends.
func (l *line) pressureEnd(k int) int {
	end := l.tokens[k].to
	for j := k + 1; j < len(l.tokens) && onlyUnit(l.tokens[j].word) && len(l.tokens[j].word.all()) > 0; j++ {
		end = l.tokens[j].to
	}
	return end
}

// notClear keeps a pressure that is no rating by its words, with those words.
func (l *line) notClear(f *figure, pressure threads.StatedPressure) {
	f.role = asPressure
	l.pressures = append(l.pressures, pressure)
}
