package cart

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"handtight/threads/title"
)

// A shop calls a spare by the part that it is for, with all of the part's figures: Handle for needle valve 3/8 NPT, 210
// bar. A piece of a part is not the part, and a part without one of its pieces is not whole: both are asked about.

// piece gives the words of a line that make it a piece of a part, or something for one; "" for none.
func (f *facts) piece(s *wording, h *hits) string {
	if p, ok := h.headPiece(s); ok {
		return s.between(p.from, min(p.to+3, s.last(p.to)))
	}
	if p, ok := h.clauseOf(s); ok {
		return s.between(0, p.to)
	}
	for _, p := range h[isPiece] {
		if p.of.behind && p.from > 0 && s.clause[p.from] == 0 && p.of.but != f.kind && h.endsWhole(s, p.from-1) && !ofKind(s.words, p) && !h.goesOn(s, p.to+1) {
			return s.between(p.from-1, p.to)
		}
	}
	if k, to := forWhat(s, h); k > 0 && !f.forPart {
		return s.between(0, to-1)
	}
	return ""
}

// headKind takes the kind of what stands before "for", where another kind stands behind it: an adaptor for a pressure vessel is
// an adaptor.
func (f *facts) headKind(s *wording, h *hits) {
	k, _ := forWhat(s, h)
	if k == 0 {
		return
	}
	if kind := orWords(kindIn(s.words[:k]), title.Read(s.between(0, k-1)).Kind); kind != "" {
		f.kind, f.forPart = kind, true
	}
}

// forWhat is the word "for" that the name of a part stands behind, and the word behind that name; 0 for none.
func forWhat(s *wording, h *hits) (at, to int) {
	if len(h[saysFor]) == 0 {
		return 0, 0
	}
	name, kind, to := kindFound(s.words)
	if name == "" {
		if len(h[isWhole]) == 0 {
			return 0, 0
		}
		kind, to = h[isWhole][0].from, h[isWhole][0].to+1
	}
	for _, w := range h[saysFor] {
		if w.from > 0 && w.to < kind && kind-w.to <= mostBetween && s.clause[w.to] == s.clause[kind] && slices.ContainsFunc(s.words[:w.from], wordy) && !h.at2(isSpare, w.from-1) && !h.over(linksTo, w.from-1) {
			return w.from, to
		}
	}
	return 0, 0
}

// mostBetween is how many words may stand between a "for" and the name of what it is for: for 3/8 NPT female needle valve.
const mostBetween = 8

// wordy reports whether a word has letters, more than a unit has.
func wordy(w string) bool { return len(w) > 2 && !strings.ContainsFunc(w, unicode.IsDigit) }

// at2 reports whether a phrase of a group ends at a word.
func (h *hits) at2(g doubtGroup, i int) bool { _, ok := h.ending(g, i); return ok }

// headPiece finds a piece that a line begins with, and that the words behind it make one of a part.
func (h *hits) headPiece(s *wording) (hit, bool) {
	i := 0
	for i < len(s.words) && (h.over(fillsIn, i) || !strings.ContainsFunc(s.words[i], unicode.IsLetter)) {
		i++
	}
	p, ok := h.at(isPiece, i)
	if !ok || ofKind(s.words, p) || p.to+1 >= len(s.words) {
		return p, false
	}
	for {
		q, more := h.at(isPiece, p.to+1)
		if !more || q.to+1 >= len(s.words) {
			break
		}
		p.to = q.to // handle and stem for
	}
	next := p.to + 1
	for next+1 < len(s.words) && h.over(fillsIn, next) && !h.over(saysOf, next) && !h.over(isSpare, next) {
		next++ // end cap set for
	}
	_, whole := h.at(isWhole, next)
	_, kind := kindWords().at(s.words, next)
	if h.over(saysFor, next) || h.over(saysOf, next) || h.over(isSpare, next) {
		return p, h.partFrom(s, next)
	}
	return p, p.of.first && (whole || kind)
}

// clauseOf finds a piece that is all the first clause is about: Thread protector, 1/2 NPT male adaptor.
func (h *hits) clauseOf(s *wording) (hit, bool) {
	if len(s.words) == 0 {
		return hit{}, false
	}
	end := s.last(0)
	p, ok := h.ending(isPiece, end)
	if !ok || end+1 == len(s.words) || kindIn(s.words[:end+1]) != "" {
		return p, false
	}
	for i := 0; i <= end; i++ {
		if h.over(isWhole, i) || strings.ContainsFunc(s.words[i], unicode.IsDigit) {
			return p, false
		}
	}
	return p, title.Read(s.between(0, end)).Kind == ""
}

// partFrom reports whether a part is named from a word on: a nut for a tube is no piece of one.
func (h *hits) partFrom(s *wording, i int) bool {
	kind, _, _ := kindFound(s.words[i:])
	return kind != "" || len(h[isWhole]) > 0 && h[isWhole][len(h[isWhole])-1].from >= i
}

// endsWhole reports whether the name of a part ends at a word.
func (h *hits) endsWhole(s *wording, i int) bool {
	if h.at2(isWhole, i) {
		return true
	}
	for k := s.first(i); k <= i; k++ {
		if p, ok := kindWords().at(s.words, k); ok && k+len(p.words)-1 == i {
			return true
		}
	}
	return false
}

// ofKind reports whether a phrase is within the name of a kind: a diaphragm pump, a basket strainer.
func ofKind(words []string, p hit) bool {
	for k := max(0, p.from-4); k <= p.from; k++ {
		if q, ok := kindWords().at(words, k); ok && k+len(q.words) > p.to {
			return true
		}
	}
	return false
}

// goesOn reports whether a word behind a piece makes it the sort of a part: spring loaded, diaphragm type.
func (h *hits) goesOn(s *wording, i int) bool {
	return i < len(s.words) && s.clause[i] == s.clause[i-1] && h.over(makesSort, i)
}

// unwhole gives the words of a line that say that something of the part is not with it; "" for none.
func (f *facts) unwhole(s *wording, h *hits) string {
	for _, p := range h[isIncomplete] {
		return s.between(p.from, p.to)
	}
	for _, o := range h[saysOnly] {
		if p, ok := h.at(isPiece, o.to+1); ok && s.clause[p.from] == s.clause[o.from] {
			return s.between(o.from, p.to)
		}
	}
	for _, n := range h[saysNot] {
		if v, ok := h.at(isVital, h.behindLinks(s, n.to+1)); ok && s.clause[v.from] == s.clause[n.from] && !ofKind(s.words, v) {
			return s.between(n.from, v.to)
		}
	}
	for _, a := range h[isAbsent] {
		for k := max(a.from-3, 0); k < a.from; k++ {
			if v, ok := h.ending(isVital, k); ok && s.clause[k] >= s.clause[a.from]-1 {
				return s.between(v.from, a.to)
			}
		}
	}
	return ""
}

// behindLinks is the first word from one on that is more than a link.
func (h *hits) behindLinks(s *wording, i int) int {
	for k := 0; k < mostLinks && i < len(s.words) && h.over(linksTo, i) && !h.over(isVital, i); k++ {
		i++
	}
	return i
}

// mostLinks is how many small words may stand between a "not" and what it denies.
const mostLinks = 5

// doubted asks what is doubted of a line by its words.
func (f *facts) doubted(form, words string) {
	if words != "" {
		f.said = append(f.said, fmt.Sprintf(form, words))
	}
}
