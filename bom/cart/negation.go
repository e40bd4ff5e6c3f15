package cart

import (
	"strings"
	"unicode"

	"handtight/catalog"
)

// A word that denies makes a claim of none: not for drinking water says nothing for it. What is denied, and what else
// would be counted for the part, is asked about; all other denials are named as not used.

// denied goes through what the words of a line deny.
func (f *facts) denied(s *wording, h *hits, limits []string) {
	for _, n := range h[saysNot] {
		if ofKind(s.words, n) || n.to+1 < len(s.words) && s.words[n.from] == "no" && !wordyAt(s, n.to+1) || f.rests(s, n) {
			continue
		}
		to := h.behindLinks(s, n.to+1)
		within := to < len(s.words) && s.clause[to] == s.clause[n.from]
		words, touches := "", false
		if within {
			words = s.between(n.from, min(to+1, s.last(to)))
			touches = to < s.last(to) && wordyAt(s, to+1) && !wordyAt(s, to) && perPressure[s.words[to+1]] > 0 // not set to 65 bar
			for k := n.to + 1; k <= to && !touches; k++ {
				touches = f.unclaim(s, h, k, -1)
			}
		}
		if !touches && (!within || to > n.to+1 || n.to == s.last(n.to)) {
			for k := s.first(n.from); k < n.from && !touches; k++ {
				if touches = f.unclaim(s, h, k, n.from-1); touches {
					words = s.between(k, n.to)
				}
			}
		}
		switch {
		case touches && !listed(limits, words):
			f.doubted("may it be used here (its words say %q)", words)
		case !touches && words != "":
			f.notes = append(f.notes, words)
		}
	}
}

// rests reports whether a NO is one of a valve that is open at rest.
func (f *facts) rests(s *wording, n hit) bool {
	return s.words[n.from] == "no" && isA(f.kind, catalog.Electric) && s.between(n.from, n.to) == "NO"
}

func wordyAt(s *wording, i int) bool { return strings.ContainsFunc(s.words[i], unicode.IsLetter) }

// listed reports whether some words are among those that the reader of titles asks about already.
func listed(limits []string, words string) bool {
	for _, l := range limits {
		if strings.Contains(l, words) || strings.Contains(words, l) {
			return true
		}
	}
	return false
}

// unclaim takes back what the words at a place would be counted for, where they end at a word (-1 for anywhere). It reports
// whether there is something that a part is bought by.
func (f *facts) unclaim(s *wording, h *hits, i, last int) bool {
	table := traitWords()
	if p, ok := table.words.at(s.words, i); ok && (last < 0 || i+len(p.words)-1 == last) {
		f.traits &^= 1 << p.row
		group := table.list[p.row].group
		return group == "hose" || group == "drinking" || group == "water"
	}
	if c, ok := h.at(claims, i); ok && (last < 0 || c.to == last) {
		return isA(f.kind, catalog.Hose|catalog.HoseStock)
	}
	return false
}

// specDenied reports whether the standard of a hose is denied: not SAE 100R8, not to SAE 100R8.
func specDenied(text string) string {
	at := specWords.FindStringIndex(text)
	if at == nil {
		return ""
	}
	s := speak(text[:at[0]])
	h := s.hits()
	for _, n := range h[saysNot] {
		if h.behindLinks(s, n.to+1) == len(s.words) && s.clause[n.from] == s.clause[len(s.words)-1] && !strings.ContainsAny(text[s.to[len(s.words)-1]:at[0]], ",;(") {
			return text[s.at[n.from]:at[1]]
		}
	}
	return ""
}

// otherUse reports whether some words deny no more than another trade's use or another medium: not for fuel. That says
// nothing against a part for water.
func otherUse(words string) bool {
	s := speak(words)
	h := s.hits()
	if len(h[saysNot]) == 0 {
		return false
	}
	if used := h[isUsed]; len(used) > 0 && used[len(used)-1].to == len(s.words)-1 {
		return true // never used; not to be used with sea water speaks of the medium
	}
	i := h.behindLinks(s, h[saysNot][0].to+1)
	if i >= len(s.words) {
		return false
	}
	to := i
	if p, ok := traitWords().words.at(s.words, i); ok && traitWords().list[p.row].group == "use" {
		to += len(p.words)
	} else if m, ok := h.at(isMedium, i); ok {
		to = m.to + 1
	}
	return to > i && to == len(s.words)
}
