package cart

import (
	"handtight/catalog"
	"handtight/pressure/pattern"
	"handtight/threads"
	"slices"
)

// doubts asks about what the words of a line say against its being the part that its figures describe: another medium,
// used goods, a piece of it, one without its pieces, a claim that is denied.
func (f *facts) doubts(s *wording, h *hits, r *threads.Reading) {
	f.doubted("is it the part itself, and whole (its words say %q)", orWords(f.piece(s, h), f.unwhole(s, h)))
	var limits []string
	for _, l := range r.Limits {
		limits = append(limits, l.Words)
	}
	f.denied(s, h, limits)
	f.ofPieces(s, h, r)
	f.outerMetals(s, h)
	f.plain = f.plainMetal(s, h)
	f.doubted("is it new and sound (its words say %q)", usedIn(s, h))
	if !listed(limits, f.medium(s, h)) {
		f.doubted("is it for water (its words say %q)", f.medium(s, h))
	}
	if numbered.MatchString(s.text) {
		f.traits = f.traits.withoutOne("open at rest") // valve No. 4471
	}
	if isA(f.kind, catalog.Electric) && !f.traits.has("open at rest") {
		f.doubted("is it shut without current (its words say %q)", bareOpen.FindString(s.text))
	}
}

// wellUsed are words before used that say how common a thing is.
var wellUsed = []string{"most", "widely", "commonly", "often"}

// usedIn gives the words that say that a thing is not new; "" for none. Used for and used in say what it is used for.
func usedIn(s *wording, h *hits) string {
	for _, u := range h[isUsed] {
		if u.to+1 < len(s.words) && s.clause[u.to+1] == s.clause[u.to] && h.over(usedFor, u.to+1) || u.from > 0 && s.clause[u.from-1] == s.clause[u.from] && (h.over(saysNot, u.from-1) || is("being", s.words[u.from-1]) || slices.Contains(wellUsed, s.words[u.from-1])) {
			continue
		}
		return s.between(u.from, u.to)
	}
	return ""
}

// medium gives the word of a line for something else than water that is to go through the part; "" for none, or where water
// is named beside it.
func (f *facts) medium(s *wording, h *hits) string {
	if isA(f.kind, catalog.Oil|catalog.Accumulator|catalog.SealKit|catalog.Tape) || f.traits.otherTrade() || f.traits.has("air") {
		return ""
	}
	for _, m := range h[isMedium] {
		before, behind := m.from-1, m.to+1
		for before > 0 && h.over(saysOf, before) {
			before-- // purge d'air
		}
		same := func(i int) bool { return i >= 0 && i < len(s.words) && s.clause[i] == s.clause[m.from] }
		switch {
		case ofKind(s.words, m), same(behind) && h.over(noMedium, behind), same(before) && (h.over(noMedium, before) || is("with", s.words[before])):
			continue
		case deniedBefore(s, h, m.from), len(h[saysWater]) > 0 && !callsKind(s, h, m):
			continue
		}
		return s.between(m.from, m.to)
	}
	return ""
}

// callsKind reports whether a medium stands in the name of a part: an air flow meter is none for water, whatever else it says.
func callsKind(s *wording, h *hits, m hit) bool {
	next := m.to + 1
	if next >= len(s.words) || s.clause[next] != 0 {
		return false
	}
	_, kind := kindWords().at(s.words, next)
	_, whole := h.at(isWhole, next)
	return kind || whole
}

// deniedBefore reports whether a word that denies stands before another in its clause.
func deniedBefore(s *wording, h *hits, i int) bool {
	for _, n := range h[saysNot] {
		if n.to < i && s.clause[n.to] == s.clause[i] {
			return true
		}
	}
	return false
}

// bareOpen is NO in capitals, which on a coil stands for normally open, and elsewhere for a number.
var bareOpen = pattern.New(`(?:^|[^\pL0-9])(?:NO|НО)(?:[\s,;)/]*$|[\s,;)/]+(?:[^0-9\s]|[0-9]{1,2}(?:[^0-9]|$)|[0-9]/))`)

// numbered is a number that is called so.
var numbered = pattern.New(`(?i)(?:^|[^\pL0-9])no[.:°]?\s*[0-9]{3,}`)
