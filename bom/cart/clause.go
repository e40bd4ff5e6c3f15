package cart

import (
	"strings"
	"sync"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// wording is a line taken apart into its words, each with the clause that it stands in: what is said of one thing
// mostly stands between two commas.
type wording struct {
	text   string
	words  []string // in small letters
	clause []int    // of each word
	at, to []int    // where each begins and ends in the text
}

// speak takes a text apart. A comma or a point between two figures is one of a number.
func speak(text string) *wording {
	text = norm.NFC.String(text)
	s := &wording{text: text}
	clause, from := 0, -1
	end := func(to int) {
		if from >= 0 {
			s.words, s.clause = append(s.words, strings.ToLower(text[from:to])), append(s.clause, clause)
			s.at, s.to = append(s.at, from), append(s.to, to)
			from = -1
		}
	}
	for i, r := range text {
		switch {
		case unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.Is(unicode.Mn, r):
			if from < 0 {
				from = i
			}
			continue
		}
		end(i)
		switch {
		case strings.ContainsRune(";()[]|•", r), r == ',' && !withinNumber(text, i), (r == '-' || r == '–' || r == '—') && apart(text, i), r == '.' && !withinNumber(text, i) && apart(text, i-1):
			clause++
		}
	}
	end(len(text))
	return s
}

// withinNumber reports whether a sign stands between two digits.
func withinNumber(text string, i int) bool {
	return i > 0 && i+1 < len(text) && text[i-1] >= '0' && text[i-1] <= '9' && text[i+1] >= '0' && text[i+1] <= '9'
}

// apart reports whether a blank stands behind a sign, and before it too unless that is the end of a word.
func apart(text string, i int) bool {
	return i >= 0 && i+1 < len(text) && (text[i] == '.' || i > 0 && text[i-1] == ' ') && strings.HasPrefix(text[i+1:], " ")
}

// between gives the text from one word to another, both with it.
func (s *wording) between(i, k int) string {
	return s.text[s.at[i]:s.to[k]]
}

// last is the last word of the clause that a word stands in.
func (s *wording) last(i int) int {
	for i+1 < len(s.words) && s.clause[i+1] == s.clause[i] {
		i++
	}
	return i
}

// first is the first word of the clause.
func (s *wording) first(i int) int {
	for i > 0 && s.clause[i-1] == s.clause[i] {
		i--
	}
	return i
}

// doubtGroup is a group of words of table/doubt.csv.
type doubtGroup uint8

const (
	saysNot doubtGroup = iota
	linksTo
	claims
	saysFor
	saysOf
	isSpare
	fillsIn
	isWhole
	isPiece
	isVital
	isAbsent
	isIncomplete
	isUsed
	usedFor
	isMedium
	noMedium
	saysWater
	asidePart
	looksLike
	saysBody
	plainStuff
	makesSort
	saysOnly
	outerPart
	doubtGroups
)

var doubtNames = [doubtGroups]string{"not", "link", "claim", "for", "of", "spare", "filler", "whole", "piece", "vital", "absent", "incomplete", "used", "usedfor", "medium", "nomedium", "water", "aside", "lookalike", "body", "plain", "sort", "only", "outer"}

// doubtPhrase is a phrase of the table: how many words it has, and its groups.
type doubtPhrase struct {
	words  []string
	groups uint32
	first  bool   // a piece that is named without more before what it is of
	behind bool   // a piece that is named behind what it is of
	but    string // the kind that has its name from the piece
}

// doubtWords are the phrases by their first word; those of one text are one.
var doubtWords = sync.OnceValue(func() map[string][]doubtPhrase {
	byText := map[string]*doubtPhrase{}
	for _, r := range readTable("doubt.csv") {
		group := uint32(0)
		for g, name := range doubtNames {
			if name == r[0] {
				group = 1 << g
			}
		}
		if group == 0 {
			panic("cart: doubt.csv has no group " + r[0])
		}
		for _, w := range strings.Split(r[2], "|") {
			key := normal(w)
			p := byText[key]
			if p == nil {
				p = &doubtPhrase{words: strings.Fields(key)}
				byText[key] = p
			}
			p.groups |= group
			how, but, _ := strings.Cut(r[1], " but ")
			p.first, p.behind = p.first || strings.Contains(how, "first"), p.behind || strings.Contains(how, "behind")
			p.but = orWords(p.but, but)
		}
	}
	out := map[string][]doubtPhrase{}
	for _, p := range byText {
		out[p.words[0]] = append(out[p.words[0]], *p)
	}
	return out
})

// hit is a phrase of the table at a place in a line: from its first word to its last.
type hit struct {
	from, to int
	of       *doubtPhrase
}

// hits are the phrases of a line by group, the longest of each group at each word.
type hits [doubtGroups][]hit

func (s *wording) hits() *hits {
	var out hits
	table := doubtWords()
	for i, w := range s.words {
		list := table[w]
		for k := range list {
			p := &list[k]
			if !s.has(i, p.words) {
				continue
			}
			h := hit{i, i + len(p.words) - 1, p}
			for g := range doubtGroups {
				if p.groups&(1<<g) == 0 {
					continue
				}
				if n := len(out[g]); n > 0 && out[g][n-1].from == i {
					if h.to > out[g][n-1].to {
						out[g][n-1] = h
					}
					continue
				}
				out[g] = append(out[g], h)
			}
		}
	}
	return &out
}

// has reports whether some words stand one behind the other at a place, in one clause.
func (s *wording) has(i int, words []string) bool {
	if i+len(words) > len(s.words) {
		return false
	}
	for k, w := range words {
		if s.words[i+k] != w || s.clause[i+k] != s.clause[i] {
			return false
		}
	}
	return true
}

// at gives the phrase of a group that a word begins.
func (h *hits) at(g doubtGroup, i int) (hit, bool) {
	for _, one := range h[g] {
		if one.from == i {
			return one, true
		}
	}
	return hit{}, false
}

// ending gives the phrase of a group that a word ends.
func (h *hits) ending(g doubtGroup, i int) (hit, bool) {
	for _, one := range h[g] {
		if one.to == i {
			return one, true
		}
	}
	return hit{}, false
}

// over reports whether a word is one of a phrase of a group.
func (h *hits) over(g doubtGroup, i int) bool {
	for _, one := range h[g] {
		if one.from <= i && i <= one.to {
			return true
		}
	}
	return false
}
