package cart

import (
	"slices"
	"strings"
	"unicode"

	"handtight/catalog"
	"handtight/pressure/pattern"
	"handtight/threads"
)

// A line may name the material of a piece, of a coat or of another make of the part: 316 stem, bronze plated, 316 on request.
// That is not what the part itself is of.

// ofPieces takes back a material that is said of nothing but pieces of the part and of looks.
func (f *facts) ofPieces(s *wording, h *hits, r *threads.Reading) {
	if f.material == "" || isA(f.kind, catalog.Hose|catalog.HoseStock|catalog.Element|catalog.Cartridge|catalog.SealKit) {
		return
	}
	marked := map[int]bool{}
	words := ""
	for _, g := range []doubtGroup{asidePart, looksLike} {
		for _, a := range h[g] {
			if ofKind(s.words, a) || g == asidePart && (saysBodyIn(s, h, a.from) || !ownClause(s, a.from)) {
				continue
			}
			for _, i := range []int{a.from - 1, h.behindOf(s, a.to+1), a.from - 2} {
				if i == a.from-2 && (i < 0 || g == asidePart || len(marked) > 0 || materialWord(s.words[i+1]) != "") {
					continue // 316 version on request
				}
				if i >= 0 && i < len(s.words) && s.clause[i] == s.clause[a.from] && f.isOf(s, i) {
					marked[i] = true
					words = orWords(words, s.between(min(i, a.from), max(i, a.to)))
				}
			}
		}
	}
	if len(marked) == 0 {
		return
	}
	for i := range s.words {
		if !marked[i] && !slices.Contains(steelWords, s.words[i]) && f.isOf(s, i) {
			return
		}
	}
	f.material = ""
	for _, name := range r.Materials {
		if f.materialIsNot(name, r.Material) {
			f.material = name
			break
		}
	}
	if f.material == "" {
		f.pieceOf = words
	}
}

// outerMetals takes out of the materials beside the part's own those of pieces that no water rests on, or that are
// bought so with it: the case of a gauge, a handle, the basket of a strainer (common practice).
func (f *facts) outerMetals(s *wording, h *hits) {
	if len(f.others) == 0 || len(h[outerPart]) == 0 {
		return
	}
	f.others = slices.DeleteFunc(slices.Clone(f.others), func(name string) bool {
		one, found := facts{material: name}, false
		for i := range s.words {
			if slices.Contains(steelWords, s.words[i]) && i+1 < len(s.words) && s.clause[i+1] == s.clause[i] && one.isOf(s, i+1) || !one.isOf(s, i) {
				continue
			}
			found = true
			beside := i > 0 && s.clause[i-1] == s.clause[i] && h.at2(outerPart, i-1)
			if k := i + 1; k < len(s.words) && s.clause[k] == s.clause[i] && h.over(outerPart, k) {
				beside = true
			}
			for k := i - 1; k > 0 && slices.Contains(steelWords, s.words[k]) && !beside; k-- {
				beside = s.clause[k-1] == s.clause[i] && h.at2(outerPart, k-1)
			}
			if !beside {
				return false
			}
		}
		return found
	})
}

// ownClause reports whether a piece is spoken of apart from the part: behind a comma, or with a "with" before it. Where it
// stands in the name of the part its material may be that of either.
func ownClause(s *wording, i int) bool {
	for k := s.first(i); k < i; k++ {
		if is("with", s.words[k]) && s.words[k] != "à" { // à ressort is a sort of valve
			return true
		}
	}
	return s.clause[i] > 0
}

// materialIsNot reports whether a material is another one than that which was taken back.
func (f *facts) materialIsNot(name, taken string) bool {
	same, open := sameMaterial(name, taken)
	m, ok := catalog.MaterialNamed(name)
	return ok && m.Metal() && !same && !open
}

// isOf reports whether a word names the line's material.
func (f *facts) isOf(s *wording, i int) bool {
	word := s.text[s.at[i]:s.to[i]]
	if strings.HasPrefix(word, "4") && s.at[i] > 1 && s.text[s.at[i]-2:s.at[i]] == "1." {
		word = "1." + word // 1.4404
	}
	if !strings.ContainsFunc(word, unicode.IsLetter) && !steelGrade.MatchString(word) {
		return false
	}
	same, open := sameMaterial(materialWord(word), f.material)
	return same || open
}

var steelGrade = pattern.New(`^(?:3[01][0-9]|2205|2507|904|1\.4[0-9]{3})$`)

// behindOf is the word behind "of", "in" and their like, or the word itself.
func (h *hits) behindOf(s *wording, i int) int {
	for k := 0; k < 2 && i < len(s.words) && (h.over(saysOf, i) || s.words[i] == "in" || s.words[i] == "aus" || s.words[i] == "en" || s.words[i] == "1" || slices.Contains(steelWords, s.words[i])); k++ {
		i++
	}
	return i
}

// steelWords are words before the grade of a steel.
var steelWords = []string{"inox", "aisi", "rvs", "stainless", "steel", "ss", "acier", "acciaio", "acero", "edelstahl", "inoxidable", "inoxydable"}

// saysBodyIn reports whether the clause of a word speaks of the body too: 316 body and stem.
func saysBodyIn(s *wording, h *hits, i int) bool {
	for k := s.first(i); k <= s.last(i); k++ {
		if h.over(saysBody, k) {
			return true
		}
	}
	return false
}

// plainMetal gives a metal that a line names and no table of materials has, where it is not that of a piece: zamak, CuZn.
func (f *facts) plainMetal(s *wording, h *hits) string {
	if isA(f.kind, catalog.Hose|catalog.HoseStock) {
		return ""
	}
	for _, p := range h[plainStuff] {
		side := func(i int) bool {
			return i >= 0 && i < len(s.words) && s.clause[i] == s.clause[p.from] && (h.over(asidePart, i) || h.over(looksLike, i) || s.words[i] == "anode" || s.words[i] == "free" || s.words[i] == "frei")
		}
		if !side(p.from-1) && !side(p.to+1) && !deniedBefore(s, h, p.from) {
			return s.between(p.from, p.to)
		}
	}
	return ""
}
