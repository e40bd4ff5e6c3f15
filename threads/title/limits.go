package title

import (
	"bytes"
	"strings"
	"sync"
	"unicode/utf8"

	"handtight/threads"
)

// limits are the words of the line that say what the part may not be used for, or only for: not for pressure, air only, low pressure.
func (l *line) limits() []threads.Limit {
	if l.one {
		return nil
	}
	var out []threads.Limit
	end := 0
	text := l.norm
	limits, around := limitWords(), aroundWords()
	for k := range l.tokens {
		at := l.tokens[k].from
		if at < end {
			continue
		}
		for _, w := range limits.at(text, at) {
			if !hasText(text, at, w) || w[len(w)-1] < 0x80 && alnum(byteAt(text, at+len(w))) {
				continue
			}
			low := lowPressureList.hasWord(w)
			if low && l.watches(k, len(w)) {
				continue // low pressure switch
			}
			end = at + len(w)
			for n := 0; end < len(text) && n < longestLimit && !low && !strings.Contains(w, "only") && bytes.IndexByte([]byte(",;|()."), text[end]) < 0; n++ {
				end++ // not suitable for seawater: what it speaks of stands behind it
			}
			for end < len(text) && end > at+len(w) && alnum(text[end]) && alnum(text[end-1]) {
				end-- // no word is cut
			}
			out = append(out, threads.Limit{Words: strings.TrimSpace(l.words(at, end)), LowPressure: low})
			break
		}
		if at < end || around.at(text, at) == nil {
			continue
		}
		if from, to := l.limitAround(k); to > from && from >= end {
			end = to
			out = append(out, threads.Limit{Words: strings.TrimSpace(l.words(from, to)), LowPressure: lowPressureList.in(text[from:to])})
		}
	}
	return out
}

// watches reports a gauge, a switch or a sensor right behind words of so many bytes that begin with the token at k, or right before them: a low pressure is what it
// watches.
func (l *line) watches(k, size int) bool {
	end := l.tokens[k].from + size
	dialed := func(it *token) bool {
		m := it.is(classKind)
		return m != nil && (m.shape.traits&(dial|scaled) != 0 || m.shape.name == "sensor" || m.shape.name == "probe")
	}
	for j := k; j < len(l.tokens); j++ {
		if l.tokens[j].to > end {
			return dialed(&l.tokens[j]) || dialed(at(l.tokens, k-1))
		}
	}
	return dialed(at(l.tokens, k-1))
}

// limitAround gives the stretch around a word for only or not that speaks of what is in a pipe, of where a part stands or of its use: cold
// water only, no para vapor, ikke egnet for sjøvann. Nothing if the word at k is none, or speaks of something else.
func (l *line) limitAround(k int) (from, to int) {
	it := &l.tokens[k]
	if it.mark != 0 {
		return 0, 0
	}
	word := l.norm[it.from:it.to]
	only := onlyList.has(word)
	if !only && !notList.has(word) {
		return 0, 0
	}
	from, to = it.from, it.to
	if only {
		for j := k - 1; j >= max(0, k-wordsOfLimit) && !l.tokens[j].endsLimit(); j-- {
			from = l.tokens[j].from
		}
	}
	for j := k + 1; j < min(len(l.tokens), k+wordsOfLimit+1) && !l.tokens[j].endsLimit(); j++ {
		to = l.tokens[j].to
	}
	if string(word) == "pas" && (hasText(l.norm, it.to, " gaz") || hasText(l.norm, it.to, " du gaz") || hasText(l.norm, it.to, " de gaz")) || !speaksOf(l.norm[from:to], mediumList.words()) {
		return 0, 0 // pas gaz: the thread
	}
	return from, to
}

// wordsOfLimit is how many words beside an only or a not are taken to belong to it.
const wordsOfLimit = 5

// endsLimit reports a token that such words end at.
func (it *token) endsLimit() bool {
	return it.figure != nil || it.mark != 0 && it.mark != '-' && it.mark != '/' || it.is(classKind) != nil && it.is(classKind).shape.ends >= 0 || it.is(classSex) != nil || it.value(classSep) == "x"
}

// speaksOf reports a word of a list in a text: a long one anywhere, as German compounds have it, one of four or five letters where a word begins, and a
// shorter one by itself.
func speaksOf(text []byte, words []string) bool {
	for _, w := range words {
		for from := 0; ; {
			at := bytes.Index(text[from:], []byte(w))
			if at < 0 {
				break
			}
			at += from
			begins, ends := !alnum(byteAt(text, at-1)), !alnum(byteAt(text, at+len(w)))
			if letters := utf8.RuneCountInString(w); letters > 5 || begins && (ends || letters > 3) {
				return true
			}
			from = at + 1
		}
	}
	return false
}

// limitWords are the words of the limits of use, and of low pressure, and aroundWords those that stand in the midst of one.
var (
	limitWords  = sync.OnceValue(func() *begunWords { return begunBy(limitOfUseList, lowPressureList) })
	aroundWords = sync.OnceValue(func() *begunWords { return begunBy(onlyList, notList) })
)

// longestLimit is how many bytes behind such words are told with them at most.
const longestLimit = 30

// asides names what a line says of the part's inside: a way past, the bore of a valve of three ways, the grade of a hose.
func (l *line) asides() []threads.NotUsed {
	if l.one {
		return nil
	}
	var out []threads.NotUsed
	asides := asideList.begun()
	for k := range l.tokens {
		at := l.tokens[k].from
		for _, w := range asides.at(l.norm, at) {
			if hasText(l.norm, at, w) && !alnum(byteAt(l.norm, at+len(w))) && !l.told(at, at+len(w)) {
				out = append(out, threads.NotUsed{Words: l.words(at, at+len(w)), Why: "how the part is made inside, which is not judged"})
				break
			}
		}
	}
	for k := range l.tokens {
		if hoseGradeWord(&l.tokens[k]) && len(l.tokens[k].word.all()) == 1 && !(at(l.tokens, k+1).figure != nil && at(l.tokens, k+1).figure.role == asGrade) {
			out = append(out, threads.NotUsed{Words: l.words(l.tokens[k].from, l.tokens[k].to), Why: "a grade of hose"})
		}
	}
	return out
}

// told reports that a stretch of the text is told already, among what is not used or not understood or as a pressure's role, or that the
// part has more ends than its kind, of which it names one.
func (l *line) told(from, to int) bool {
	for _, n := range l.ignored {
		if strings.Contains(strings.ToLower(n.Words), strings.ToLower(l.words(from, to))) {
			return true
		}
	}
	for k := range l.tokens {
		it := &l.tokens[k]
		if it.from < to && it.to > from && (it.unread || it.is(classPress) != nil && len(l.pressures) > 0) {
			return true
		}
	}
	return l.sided || l.surplus
}
