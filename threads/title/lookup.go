package title

import (
	"unicode"
	"unicode/utf8"
)

// phrase finds the longest lexicon phrase that begins at i and ends where a word
// ends. Letters and digits run together first (cw617n), then apart (npt3/8).
func (sc *scanner) lookUp(i int) (int, *meanings) {
	end, m := sc.lookUpRun(i, true)
	if m != nil || !sc.blended || !sc.mixed {
		return end, m
	}
	return sc.lookUpRun(i, false)
}

func (sc *scanner) lookUpRun(i int, mixed bool) (int, *meanings) {
	key, end := sc.key[:0], i
	var best *meanings
	bestEnd := 0
	sc.mixed = false
	for pieces := 0; pieces < 5 && end < len(sc.norm); pieces++ {
		stop := sc.run(end, mixed)
		sc.mixed = sc.mixed || mixed && sc.blended && sc.run(end, false) != stop
		if wide(sc.norm, end) {
			if e, m := sc.wideMatch(key, end); m != nil {
				return e, m
			}
			break
		}
		if stop == end {
			break
		}
		key = append(key, sc.norm[end:stop]...)
		known := sc.lex.words[string(key)]
		if m := known.means(); m != nil && !(digit(sc.norm[stop-1]) && stop > i+1 && byteAt(sc.norm, stop) == '/') {
			best, bestEnd = m, stop // NPTF 1/8 is no NPTF-1
		}
		if wide(sc.norm, stop) && pieces == 0 {
			if e, m := sc.wideMatch(key, stop); m != nil {
				best, bestEnd = m, e
			}
		}
		if known == nil || known.goesOn == 0 {
			break
		}
		next := stop
		mark := byte(' ')
		for next < len(sc.norm) && (joint(sc.norm[next]) || mark == ' ' && (sc.norm[next] == '/' || sc.norm[next] == '&')) {
			if !joint(sc.norm[next]) {
				mark = sc.norm[next]
			}
			next++
		}
		if next == stop || next == len(sc.norm) || !known.goesOn.has(sc.norm[next]) || len(key) > sc.lex.longest {
			break
		}
		key = append(key, mark)
		end = next
	}
	sc.key = key
	return bestEnd, best
}

// run is the end of the run of letters, of digits, or of both that begins at i.
func (sc *scanner) run(i int, mixed bool) int {
	if i < len(sc.norm) && (sc.norm[i] == '%' || sc.norm[i] == '=') {
		return i + 1
	}
	taken := ofDigit | ofLetter
	if !mixed {
		taken &= sortOf[byteAt(sc.norm, i)]
	}
	for i < len(sc.norm) && sortOf[sc.norm[i]]&taken != 0 && !wide(sc.norm, i) {
		i++
	}
	return i
}

// wideMatch finds the longest phrase of a script written without blanks.
func (sc *scanner) wideMatch(key []byte, i int) (int, *meanings) {
	stop := i
	for n := 0; n < 12 && wide(sc.norm, stop); n++ {
		_, size := utf8.DecodeRune(sc.norm[stop:])
		stop += size
	}
	base := len(key)
	key = append(key, sc.norm[i:stop]...)
	for stop > i {
		if m := sc.lex.words[string(key[:base+stop-i])].means(); m != nil {
			return stop, m
		}
		_, size := utf8.DecodeLastRune(sc.norm[i:stop])
		stop -= size
	}
	return 0, nil
}

// wideUnread takes one letter that no phrase begins with; a run of them is one word.
func (sc *scanner) wideUnread(i int, glued bool) int {
	_, size := utf8.DecodeRune(sc.norm[i:])
	if n := len(sc.tokens); n > 0 && sc.tokens[n-1].unread && sc.tokens[n-1].to == i {
		sc.tokens[n-1].to = i + size
		return i + size
	}
	sc.tokens = append(sc.tokens, token{from: i, to: i + size, glued: glued, unread: true})
	return i + size
}

// byStem tries the word's beginnings and ends, longest first.
func (sc *scanner) byStem(word []byte) *meanings {
	for n := len(word); n >= 4; n-- {
		if m := sc.lex.starts[string(word[:n])].means(); m != nil {
			return m
		}
	}
	for k := 0; len(word)-k >= 4; k++ {
		if m := sc.lex.finals[string(word[k:])].means(); m != nil {
			return m
		}
	}
	return nil
}

// wide reports whether the letter at i belongs to a script written without blanks.
func wide(norm []byte, i int) bool { return i < len(norm) && norm[i] >= 0xE0 && wideAt(norm[i:]) }

func wideAt(text []byte) bool {
	r, _ := utf8.DecodeRune(text)
	return r > 0x2E80 || unicode.Is(unicode.Thai, r)
}
