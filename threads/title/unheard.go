package title

import (
	"slices"
	"strings"

	"handtight/threads"
)

// unheard asks about the ends of a line that says what none of them has: the name of a thread, a sex where no end
// has a thread, or so much that is not understood that it may be no part's line. An end that has its question keeps it.
func (l *line) unheard(ends []threads.EndReading) {
	if l.one || len(ends) == 0 {
		return
	}
	why, said, hand := "", true, false // a thread that is named by its letters is one, whatever else the text speaks of
	switch name, sex, outside, other := l.nameOfNone(ends), l.sexOfNone(ends), l.hoseOutside(ends), l.otherwise(); {
	case name != "":
		l.ignore(name, "no end read has such a thread")
		why = "The text says " + name + ", and no end is read that has such a thread."
	case sex != "":
		l.ignore(sex, "no end read has a thread")
		why = "The text says " + sex + ", and no end is read that has a thread."
	case slices.ContainsFunc(ends, func(e threads.EndReading) bool {
		return len(e.Candidates) > 0 && e.Candidates[0].Family == threads.JIC
	}) && l.containsWord(flarelessWordList):
		why = "The text says flareless, which has the thread of a flare and another seat."
	case l.sexLost(ends) != threads.NoSex:
		why = "The text says " + l.sexLost(ends).String() + " too, and no end is read so."
	case l.portsUncounted() != "":
		why = "The text counts ports (" + l.portsUncounted() + "), and they are not read as so many."
	case outside != "":
		l.ignore(outside, threads.HoseOutside)
		why, said = "The text gives the outside of the hose ("+outside+"), and a tail goes by its inside.", false
	case other != "":
		why = "The text says " + quote(other) + ", and whose end and which size that speaks of is not read."
	case l.letteredSizes() != "":
		why = "The text gives its sizes by letters, and " + l.letteredSizes() + " again where it says the ends."
	case l.handOfOne(ends):
		why, hand = "The text says left hand, of one side only.", true
	case l.babble():
		why, said = "Of the text so much is not understood that it may speak of something else: "+l.strangeWords()+" and more.", false
	default:
		return
	}
	for k := range ends {
		if e := &ends[k]; e.Question == "" && len(e.Candidates) > 0 && (said || !e.Candidates[0].Family.Threaded()) {
			if hand {
				e.Question = "Is the " + strings.TrimSpace(sizesOf(e.Candidates)+" "+e.Sex.String()) + " the left-hand end? " + why + " Look at the part, or ask the shop."
				continue
			}
			e.Question = "Is " + strings.TrimSpace(sizesOf(e.Candidates)+" "+e.Sex.String()) + " an end of the part? " + why + " Look at the picture, or ask the shop."
		}
	}
}

// hoseOutside is the word by which a line gives the outside of a hose and not its bore, where it has a tail: pour tuyau Ø ext. 19 mm. "" if it gives none.
func (l *line) hoseOutside(ends []threads.EndReading) string {
	if !slices.ContainsFunc(ends, func(e threads.EndReading) bool {
		return len(e.Candidates) == 1 && e.Candidates[0].Family == threads.Barb && e.Candidates[0].Diameter > 0
	}) {
		return ""
	}
	found := ""
	for k := range l.tokens {
		it := &l.tokens[k]
		word := l.norm[it.from:it.to]
		if it.to == it.from || it.mark != 0 || it.figure != nil || it.is(classSex) != nil && !l.besideHose(k) {
			continue // an outside thread
		}
		if string(word) != "ø" && hoseInsideList.has(word) {
			return ""
		}
		for _, w := range hoseOutsideList.begun().at(l.norm, it.from) {
			if hasText(l.norm, it.from, w) && !alnum(byteAt(l.norm, it.from+len(w))) && !alnum(byteAt(l.norm, it.from-1)) {
				found = l.words(it.from, it.from+len(w))
			}
		}
	}
	return found
}

// besideHose reports the word for a hose or the sign of a diameter right beside the token at k.
func (l *line) besideHose(k int) bool {
	for _, j := range [...]int{k - 1, k - 2, k + 1} {
		it := at(l.tokens, j)
		if it.hosed() || it.value(classEnd) == "TUBE" || it.value(classEnd) == "ROUND" || it.to > it.from && string(l.norm[it.from:it.to]) == "ø" {
			return true
		}
	}
	return false
}

// otherwise is the first word of the line that makes its sizes or sexes those of something else, or others than they stand: except, one size smaller, turns
// into, the same as; or an or between two threads of one size. "" if there is none.
func (l *line) otherwise() string {
	for k := range l.tokens {
		it := &l.tokens[k]
		if it.mark != 0 || it.figure != nil {
			continue
		}
		for _, w := range otherwiseList.begun().at(l.norm, it.from) {
			if hasText(l.norm, it.from, w) && !alnum(byteAt(l.norm, it.from+len(w))) && (k == 0 || !alnum(byteAt(l.norm, it.from-1))) {
				return l.words(it.from, it.from+len(w))
			}
		}
		if orList.has(l.norm[it.from:it.to]) && it.to-it.from > 1 && l.orOfThreads(k) {
			return l.words(it.from, it.to)
		}
	}
	return ""
}

// orOfThreads reports the name of a thread or a size right before and right behind the or at k.
func (l *line) orOfThreads(k int) bool {
	told := func(it *token) bool {
		return it.is(classFamily) != nil || it.figure != nil && (it.figure.frac || it.figure.sized()) || it.is(classSex) != nil
	}
	return told(at(l.tokens, k-1)) && told(at(l.tokens, k+1))
}

// endless tells what the line leaves out of a part that has ends, and of which none is read: the ends of a hose that is no hose by the metre, and a
// thread that is said of a part that has none by its name.
func (l *line) endless(ends []threads.EndReading) {
	if l.one || len(ends) > 0 || len(l.unjudged) > 0 {
		return
	}
	if l.shape != nil && l.shape.name == "hose" {
		for k := range l.tokens {
			if it := &l.tokens[k]; it.figure == nil && !l.besideHose(k) && (it.is(classSex) != nil && !it.is(classSex).weak() || it.is(classFamily) != nil && it.to-it.from > 1) {
				l.unjudged = append(l.unjudged, l.words(it.from, it.to)+" (an end of which no size is said)")
			}
		}
		l.unjudged = append(l.unjudged, "its ends (nothing is said of them)")
		return
	}
	if l.shape == nil || l.shape.ends >= 0 || l.is(beside) || l.shape.name == "O-ring" {
		return
	}
	for k := range l.tokens {
		f := l.tokens[k].figure
		if l.meantFor(k) {
			return // bracket for 1/2 NPT valve
		}
		if f == nil || f.kind != inchSize || !f.frac && !f.marked {
			continue
		}
		for _, j := range [...]int{k - 1, k + 1} {
			if m := at(l.tokens, j).is(classFamily); m != nil && at(l.tokens, j).to-at(l.tokens, j).from > 1 {
				l.unjudged = append(l.unjudged, l.words(min(l.tokens[k].from, l.tokens[j].from), max(l.tokens[k].to, l.tokens[j].to))+" (a thread is said, and the part has none by its name)")
				return
			}
		}
	}
}

// nameOfNone is the first name of a thread, as the line writes it, that no end can be of; "" if each has its end.
func (l *line) nameOfNone(ends []threads.EndReading) string {
	for k := 0; k < len(l.tokens); k++ {
		if end := l.codeEnd(k); end > k {
			k = end - 1
			continue
		}
		it := &l.tokens[k]
		m := it.is(classFamily)
		if m == nil || m.meant == nil || l.heard(m, ends) || it.to-it.from == 1 && at(l.tokens, k+1).figure == nil || l.fuelWord(k) {
			continue
		}
		return l.words(it.from, it.to)
	}
	return ""
}

// heard reports an end that can be of a thread of that name, or that has no reading, and says so.
func (l *line) heard(m *sense, ends []threads.EndReading) bool {
	return slices.ContainsFunc(ends, func(e threads.EndReading) bool {
		return len(e.Candidates) == 0 || e.Torn || slices.ContainsFunc(e.Candidates, func(c threads.End) bool { return slices.Contains(m.meant, c.Family) })
	})
}

// sexOfNone is a word for a sex, as the line writes it, where no end has a thread and none is left unjudged; else "".
func (l *line) sexOfNone(ends []threads.EndReading) string {
	if len(l.unjudged) > 0 || slices.ContainsFunc(ends, func(e threads.EndReading) bool {
		return len(e.Candidates) == 0 || e.Candidates[0].Family.Threaded()
	}) {
		return ""
	}
	for k := range l.tokens {
		if it := &l.tokens[k]; it.is(classSex) != nil && !it.is(classSex).weak() && it.figure == nil && at(l.tokens, k+1).mark != '/' {
			return l.words(it.from, it.to)
		}
	}
	return ""
}

// babble reports more words that are not understood than a shop's line of a part has.
func (l *line) babble() bool {
	n := 0
	for k := range l.tokens {
		if l.tokens[k].unread && !l.inCode(k) {
			n++
		}
	}
	return n >= mostUnread
}

// mostUnread is how many words that are not understood make a line doubtful as a whole. A judgement.
const mostUnread = 6

// handOfOne reports a left hand that the text gives one side of the part, of which both ends are read left-hand.
func (l *line) handOfOne(ends []threads.EndReading) bool {
	left := 0
	for _, e := range ends {
		if len(e.Candidates) > 0 && e.Candidates[0].Left {
			left++
		}
	}
	return left > 1 && l.contains(oneSideList) || left > 0 && (l.bothHands() || l.is(elbow) && l.plainLeft())
}

// fuelWord reports the word for gas that no size stands beside: what a hose or a fitting is for.
func (l *line) fuelWord(k int) bool {
	word := string(l.norm[l.tokens[k].from:l.tokens[k].to])
	return (word == "gas" || word == "gaz" || word == "gás") && at(l.tokens, k-1).figure == nil && at(l.tokens, k+1).figure == nil
}

// sexLost is a sex that the line says and no end has, where each end has the other: inlet M, flush F, outlet M of three ends that are all male.
func (l *line) sexLost(ends []threads.EndReading) threads.Sex {
	if len(ends) == 0 || len(ends) < 2 && l.shape != nil {
		return threads.NoSex
	}
	one := ends[0].Sex
	if one == threads.NoSex || slices.ContainsFunc(ends, func(e threads.EndReading) bool {
		return e.Sex != one || len(e.Candidates) == 0 || !e.Candidates[0].Family.Threaded()
	}) {
		return threads.NoSex
	}
	for k := range l.tokens {
		it := &l.tokens[k]
		if m := it.is(classSex); m != nil && (m.weak() || it.is(classKind) != nil) || it.figure != nil {
			continue
		}
		for _, sex := range it.saidSexes() {
			if sex != one {
				return sex
			}
		}
	}
	return threads.NoSex
}
