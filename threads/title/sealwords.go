package title

import (
	"slices"
	"strings"

	"handtight/threads"
)

// takeBack drops a word of a seal, a nut or a part behind "without" and its like.
func (l *line) takeBack(k int) {
	it := &l.tokens[k]
	if k > 0 && it.unread && withoutList.has(l.norm[l.tokens[k-1].from:l.tokens[k-1].to]) {
		l.taken = k // sans bague ni écrou
		return
	}
	weakSex := it.is(classSex) != nil && it.is(classSex).weak() // гайки: of a nut
	if it.is(classAttr) == nil && it.is(classKind) == nil && it.is(classEnd) == nil && it.is(classFamily) == nil && !weakSex || k == 0 {
		return
	}
	if l.goesOn(k) {
		l.ignore(l.words(l.tokens[l.taken+1].from, it.to), "the text says that there is none")
		it.word, l.taken = nil, k
		return
	}
	first := k - 1
	if at(l.tokens, k-2).mark == '/' {
		first = max(0, k-3) // w/o
	}
	prev := &l.tokens[first]
	short := prev.to-prev.from == 1 && l.norm[prev.from] == 'o' && byteAt(l.norm, prev.to) == '.' && !l.capital(prev.from) && l.capital(it.from) && l.bothCases() // o. Mutter
	if prev.figure != nil || prev.mark != 0 || !short && !withoutList.has(l.norm[prev.from:l.tokens[k-1].to]) {
		return
	}
	l.ignore(l.words(prev.from, it.to), "the text says that there is none")
	it.word, l.taken = nil, k
}

// goesOn reports a word that "and" joins to one that the text says there is none of: без муфты и к/гайки.
func (l *line) goesOn(k int) bool {
	j := k - 1
	if at(l.tokens, j).mark == '/' && at(l.tokens, j-1).to-at(l.tokens, j-1).from <= 2 {
		j -= 2 // к/гайки
	}
	if m := l.tokens[k].is(classKind); m != nil && m.shape.ends > 1 && at(l.tokens, j).mark == ',' && l.shape == nil {
		return false // without seal, elbow G 1/2 female: the part itself
	}
	return l.taken > 0 && j == l.taken+1 && (l.tokens[j].mark == ',' || andMoreList.has(l.norm[l.tokens[j].from:l.tokens[j].to]))
}

// carries reports whether an end shows a word of how it closes or turns.
var carries = map[string]func(threads.End) bool{
	"washer":    func(e threads.End) bool { return e.Seal == threads.Washer || e.Family == threads.NH },
	"flat-face": func(e threads.End) bool { return e.Seal == threads.FlatFace || e.Seal == threads.Washer },
	"o-ring": func(e threads.End) bool {
		return e.Seal == threads.ORing || e.Seal == threads.ConeRing || e.Family == threads.ORB
	},
	"chamfer": func(e threads.End) bool { return e.Seal == threads.Chamfer },
	"cone-60": func(e threads.End) bool {
		return e.Seal == threads.Cone60 || e.Seal == threads.ConeRing || e.Seal == threads.Chamfer
	},
	"cone-30":     func(e threads.End) bool { return e.Seal == threads.Cone30 },
	"cone-24":     func(e threads.End) bool { return e.Seal == threads.Cone24 },
	"cone-o-ring": func(e threads.End) bool { return e.Seal == threads.ConeRing },
	"ed":          func(e threads.End) bool { return e.Seal == threads.StudRing },
	"metal-edge":  func(e threads.End) bool { return e.Seal == threads.MetalEdge },
	"left":        func(e threads.End) bool { return e.Left },
	"swivel":      func(e threads.End) bool { return e.Swivel },
	"nut":         func(e threads.End) bool { return e.Swivel || e.Sex == threads.Female },
	"long":        func(e threads.End) bool { return e.Long },
}

// namedSeals notes the words of a seal, a swivel or a hand that no end shows.
func (l *line) namedSeals(ends []threads.EndReading) {
	if len(ends) == 0 {
		l.endsOfNone()
		l.endsUnsized()
	}
	for k := range l.tokens {
		m := l.tokens[k].is(classAttr)
		if m == nil || carries[m.value] == nil || l.tokens[k].is(classKind) != nil {
			continue
		}
		shown := len(ends) == 0
		for _, e := range ends {
			shown = shown || slices.ContainsFunc(e.Candidates, carries[m.value])
		}
		if !shown {
			why := threads.NoEndTakesIt
			if m.value == "long" {
				why = "no tail is called so"
			}
			l.ignore(l.words(l.tokens[k].from, l.tokens[k].to), why)
		}
	}
}

// whyUnsized is why words of an end are not used where no size stands with them.
const whyUnsized = "no size is read with it"

// endsUnsized notes the words of an end in a line that gives no size with them, so that no end is read.
func (l *line) endsUnsized() {
	if l.one || l.shape != nil && l.shape.ends < 0 || len(l.unjudged) > 0 || l.shape == nil && (l.says("TUBE") || l.says("HOSE")) {
		return // of a pipe or a hose the letters for outside are its own
	}
	says := func(k int) bool {
		it := at(l.tokens, k)
		return it.is(classKind) == nil && it.is(classUnit) == nil && (it.is(classSex) != nil || it.is(classFamily) != nil || it.value(classEnd) == "PUSH" || it.value(classEnd) == "COMPRESSION")
	}
	for k := 0; k < len(l.tokens); k++ {
		if !says(k) {
			continue
		}
		from := k
		for says(k+1) || at(l.tokens, k+1).mark == '/' && says(k+2) {
			k++
		}
		l.ignore(l.words(l.tokens[from].from, l.tokens[k].to), whyUnsized)
	}
}

// endsOfNone notes the words of an end in a title whose part is sold without ends. A word of a sex
// counts beside a thread, a hand or a swivel only: alone it mostly is a hose's inside.
func (l *line) endsOfNone() {
	if l.shape == nil || l.shape.ends >= 0 || l.shape.kind == "" {
		return
	}
	var found, sexes []string
	for k := range l.tokens {
		it := &l.tokens[k]
		words := l.words(it.from, it.to)
		if len(words) < 2 || it.is(classUnit) != nil || it.is(classKind) != nil || it.is(classNoise) != nil {
			continue
		}
		attr := it.is(classAttr)
		switch {
		case it.is(classFamily) != nil, attr != nil && (attr.value == "left" || attr.value == "swivel"):
			found = append(found, words)
		case it.is(classSex) != nil:
			sexes = append(sexes, words)
		}
	}
	if len(found) > 0 {
		l.ignore(strings.Join(append(found, sexes...), ", "), threads.SpeaksOfAnEnd)
	}
}
