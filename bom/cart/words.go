package cart

import (
	"embed"
	"encoding/csv"
	"strings"
	"sync"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

//go:embed table/*.csv
var tables embed.FS

// readTable reads an embedded table; a fault in it is a fault of the program.
func readTable(name string) [][]string {
	f, err := tables.Open("table/" + name)
	if err != nil {
		panic("cart: " + err.Error())
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		panic("cart: " + name + ": " + err.Error())
	}
	return rows[1:]
}

// words are the words of one class, by their normal form.
type words map[string]string

var classes = sync.OnceValue(func() map[string]words {
	out := map[string]words{}
	for _, r := range readTable("words.csv") {
		if out[r[0]] == nil {
			out[r[0]] = words{}
		}
		for _, w := range strings.Split(r[2], "|") {
			key := normal(w)
			if r[0] == "currency" || r[0] == "unknown" {
				key = strings.ToLower(w)
			}
			if _, taken := out[r[0]][key]; !taken {
				out[r[0]][key] = r[1]
			}
		}
	}
	return out
})

// is reports whether a text is, as a whole, one of the words of a class.
func is(class, text string) bool {
	_, ok := classes()[class][normal(text)]
	return ok
}

// begins reports whether a text begins with one of the words of a class, and what
// follows is no more than figures, percent and currency.
func begins(class, text string) bool {
	list := strings.Fields(normal(text))
	for n := min(len(list), 4); n > 0; n-- {
		if _, ok := classes()[class][strings.Join(list[:n], " ")]; !ok {
			continue
		}
		for _, rest := range list[n:] {
			if strings.IndexFunc(rest, unicode.IsLetter) >= 0 && currencyOf(rest) == "" && !is("sum", rest) {
				return false
			}
		}
		return true
	}
	return false
}

// startsWith reports whether a text begins with one of the words of a class.
func startsWith(class, text string) bool {
	list := strings.Fields(normal(text))
	for n := min(len(list), 4); n > 0; n-- {
		if _, ok := classes()[class][strings.Join(list[:n], " ")]; ok {
			return true
		}
	}
	return false
}

// within reports whether a phrase of a class stands in a text, as whole words.
func within(class, text string) bool {
	padded := " " + normal(text) + " "
	for phrase := range classes()[class] {
		if strings.Contains(padded, " "+phrase+" ") {
			return true
		}
	}
	return false
}

// unitOf names the unit that a word stands for; "" if it is none.
func unitOf(word string) string { return classes()["unit"][normal(word)] }

// currencyOf finds the currency that a text names by code or sign; "" if none, or if
// its sign is that of several.
func currencyOf(text string) string {
	lower := strings.ToLower(text)
	list := classes()["currency"]
	if c, ok := list[strings.TrimSpace(lower)]; ok {
		return c
	}
	for _, w := range strings.FieldsFunc(lower, func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.Is(unicode.Sc, r)
	}) {
		if c, ok := list[w]; ok {
			return c
		}
	}
	for _, r := range lower {
		if c, ok := list[string(r)]; ok && unicode.Is(unicode.Sc, r) {
			return c
		}
	}
	return ""
}

// normal gives a text's words in small letters, with single blanks and without marks:
// "Artikel-Nr." and "ARTIKEL NR" are one.
func normal(s string) string {
	var b strings.Builder
	gap := false
	for _, r := range norm.NFC.String(s) {
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '№' && !unicode.Is(unicode.Mn, r) {
			gap = true
			continue
		}
		if gap && b.Len() > 0 {
			b.WriteByte(' ')
		}
		gap = false
		b.WriteRune(unicode.ToLower(r))
	}
	return b.String()
}
