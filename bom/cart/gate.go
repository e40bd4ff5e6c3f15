package cart

import (
	"strings"
	"sync"
	"unicode/utf8"
)

// Most lines say few of the things that a pattern looks for, and a pattern over a whole line
// costs more than all else of reading it. A look for a word of it comes first.

// packSigns are the words of packs and sets, lower case.
var packSigns = sync.OnceValue(func() []string {
	var out []string
	for _, r := range readTable("words.csv") {
		if r[0] != "unit" || r[1] != "pack" && r[1] != "set" {
			continue
		}
		for _, w := range strings.Split(r[2], "|") {
			out = append(out, strings.ToLower(w))
		}
	}
	return out
})

// mayPack reports whether a text may speak of packs: a word of it and a figure near it.
func mayPack(lower string) bool {
	if !strings.ContainsAny(lower, "0123456789") {
		return false
	}
	for _, w := range packSigns() {
		for rest := lower; ; {
			i := strings.Index(rest, w)
			if i < 0 {
				break
			}
			from, to := max(0, i-16), min(len(rest), i+len(w)+16)
			if alone(rest, startOf(rest, i), endOf(rest, i+len(w))) && (strings.ContainsAny(rest[from:i], "0123456789") || strings.ContainsAny(rest[i+len(w):to], "0123456789")) {
				return true
			}
			rest = rest[i+len(w):]
		}
	}
	return false
}

// startOf is where the word of a pack that begins at i begins with its count: 10erpack is one word.
func startOf(text string, i int) int {
	if count, ok := strings.CutSuffix(text[:i], "er"); ok && count != strings.TrimRight(count, "0123456789") {
		return len(count)
	}
	return i
}

// endOf is where the word of a pack that ends at i ends with the x of its count: bolsax25 is one word.
func endOf(text string, i int) int {
	if i+1 < len(text) && text[i] == 'x' && text[i+1] >= '0' && text[i+1] <= '9' {
		return i + 1
	}
	return i
}

// alone reports whether no letter stands before or behind a part of a text. Letters beyond
// ASCII count as none: in some writings words stand side by side.
func alone(text string, from, to int) bool {
	letter := func(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }
	return (from == 0 || !letter(text[from-1])) && (to == len(text) || !letter(text[to]))
}

// mayLength reports whether a figure with a metre or a foot behind it may stand in a text.
func mayLength(text string) bool {
	for i := 0; i < len(text); i++ {
		if text[i] < '0' || text[i] > '9' {
			continue
		}
		k := i + 1
		for k < len(text) && text[k] == ' ' {
			k++
		}
		if k >= len(text) {
			return false
		}
		switch c := text[k]; {
		case c == 'm' || c == 'M' || c == 'l' || c == 'L' || c == 'f' || c == 'F' || c >= utf8.RuneSelf:
			return true
		}
	}
	return false
}

// lengthIn finds a length in metres or feet; nil for none.
func lengthIn(text string) []string {
	if !mayLength(text) {
		return nil
	}
	return inText().length.FindStringSubmatch(text)
}

// saysAny reports whether one of some words stands in a text in small letters.
func saysAny(lower string, words ...string) bool {
	for _, w := range words {
		if strings.Contains(lower, w) {
			return true
		}
	}
	return false
}

// mayTail reports whether a quantity may stand at the end of a text: where a bare figure
// ends it, x or qty is before the figure.
func mayTail(text string) bool {
	t := strings.TrimRight(text, " )")
	bare := strings.TrimRight(t, "0123456789")
	if len(bare) == len(t) {
		return t != "" && strings.ContainsAny(t[max(0, len(t)-tailLength):], "0123456789")
	}
	bare = strings.TrimRight(bare, " ")
	return bare != "" && strings.IndexByte("xX:.yY", bare[len(bare)-1]) >= 0
}

// tailLength is how much of a text a quantity behind it may take.
const tailLength = 40

// lastOf gives the end of a text, and where it begins.
func lastOf(text string, n int) (string, int) {
	from := max(0, len(text)-n)
	for from > 0 && !utf8.RuneStart(text[from]) {
		from--
	}
	return text[from:], from
}
