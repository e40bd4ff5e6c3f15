package title

import (
	"bytes"
	"slices"

	"handtight/threads"
)

// hands takes the left hand from a word that speaks of a shaft, a lever or a side of the part: pump, LH shaft; valve, lever left;
// inlet left. A word that says thread itself stays, and so does LH beside a port, whose thread it may be.
func (l *line) hands() {
	if l.one || !l.seen.word(classAttr) {
		return
	}
	for k := range l.tokens {
		it := &l.tokens[k]
		if it.value(classAttr) != "left" || l.saysThreadItself(it) || at(l.tokens, k+1).value(classFamily) == "THREAD" {
			continue
		}
		if string(l.norm[it.from:it.to]) == "l/h" && !l.capital(it.to-1) {
			l.ignore(l.words(it.from, it.to), "a flow")
			it.word, it.unread = l.lex.word("the"), false // L/h: litres an hour
			continue
		}
		words := turningList.words()
		if text := l.norm[it.from:it.to]; !bytes.HasPrefix(text, []byte("lh")) && !bytes.HasPrefix(text, []byte("l.h")) && !bytes.HasPrefix(text, []byte("left")) || string(text) == "left" {
			words = slices.Concat(words, portWordList.words(), inletList.words(), outletList.words())
		}
		for _, j := range l.wordsBeside(k) {
			word := string(l.norm[l.tokens[j].from:l.tokens[j].to])
			if !slices.Contains(words, word) {
				continue
			}
			from, to := min(j, k), max(j, k)
			l.ignore(l.words(l.tokens[from].from, l.tokens[to].to), threads.SideOfThePart)
			it.word, it.unread = l.lex.word("the"), false
			break
		}
	}
}

// saysThreadItself reports a word for the left hand that names the thread.
func (l *line) saysThreadItself(it *token) bool {
	text := l.norm[it.from:it.to]
	return threadStemList.in(text)
}

// wordsBeside are the tokens beside k that nothing parts from it, with small words passed over.
func (l *line) wordsBeside(k int) []int {
	var out []int
	for _, step := range [...]int{-1, 1} {
		for j, n := k+step, 0; j >= 0 && j < len(l.tokens) && n < 2; j += step {
			it := &l.tokens[j]
			if it.mark != 0 && it.mark != '-' || it.figure != nil || it.is(classSep) != nil && it.value(classSep) == "x" || it.is(classFamily) != nil || it.is(classSex) != nil {
				break
			}
			out = append(out, j)
			if it.to-it.from > 3 {
				n++
			}
		}
	}
	return out
}

// rightHand reads RH where another word says left hand; in Spanish lists it is a female thread.
func (l *line) rightHand(k int) {
	it := &l.tokens[k]
	if word := string(l.norm[it.from:it.to]); l.one || word != "rh" && word != "r.h" && word != "r.h." {
		return
	}
	if anyToken(l.tokens, func(o *token) bool { return o.value(classAttr) == "left" }) {
		it.word, it.unread = l.lex.word("right hand"), false
	}
}

// bothHands reports left and right said in one breath, of which neither is an end's own: links/rechts, LH/RH.
func (l *line) bothHands() bool {
	for k := range l.tokens {
		a, b := at(l.tokens, k-1).value(classAttr), at(l.tokens, k+1).value(classAttr)
		if l.tokens[k].mark != 0 && (a == "left" && b == "right" || a == "right" && b == "left") {
			return true
		}
	}
	return false
}

// plainLeft reports that left is said and no more, as an elbow's outlet goes to the left too.
func (l *line) plainLeft() bool {
	return anyToken(l.tokens, func(it *token) bool {
		return it.value(classAttr) == "left" && leftAloneList.has(l.norm[it.from:it.to])
	})
}
