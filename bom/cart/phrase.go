package cart

import (
	"cmp"
	"slices"
	"strings"
	"sync"

	"handtight/catalog"
)

// phraseBook finds the phrases of a table in a text: by their first word, the longest first. A
// phrase that begins with * has a first word that only ends so: *filtergehäuse; one word with a *
// behind it only begins so: trinkwasser*.
type phraseBook map[string][]phrase

type phrase struct {
	words []string
	row   int // of the table
}

func newPhraseBook(rows [][]string, column int) phraseBook {
	book := phraseBook{}
	for i, r := range rows {
		for _, p := range strings.Split(r[column], "|") {
			words := strings.Fields(normal(p))
			if len(words) == 0 {
				continue
			}
			first := words[0]
			switch {
			case strings.HasPrefix(p, "*"):
				first, words[0] = "*", "*"+words[0]
			case strings.HasSuffix(p, "*") && len(words) == 1:
				first = "*begins"
			}
			book[first] = append(book[first], phrase{words, i})
		}
	}
	for _, list := range book {
		slices.SortStableFunc(list, func(a, b phrase) int { return cmp.Or(len(b.words)-len(a.words), len(b.words[0])-len(a.words[0])) })
	}
	return book
}

// at gives the longest phrase that begins at a word.
func (b phraseBook) at(words []string, i int) (phrase, bool) {
	for _, p := range b[words[i]] {
		if i+len(p.words) <= len(words) && slices.Equal(p.words, words[i:i+len(p.words)]) {
			return p, true
		}
	}
	for _, p := range b["*begins"] {
		if head := p.words[0]; len(words[i]) >= len(head) && strings.HasPrefix(words[i], head) {
			return p, true
		}
	}
	for _, p := range b["*"] {
		if tail := p.words[0][1:]; len(words[i]) >= len(tail) && strings.HasSuffix(words[i], tail) && i+len(p.words) <= len(words) && slices.Equal(p.words[1:], words[i+1:i+len(p.words)]) {
			return p, true
		}
	}
	return phrase{}, false
}

// trait is something that sets parts of one kind apart and that no figure says: carbon or
// sediment, sea water or brackish.
type trait struct {
	group, name string
	both        bool // one that the part has not is a fault
}

type traitTable struct {
	list  []trait
	words phraseBook
}

var traitWords = sync.OnceValue(func() *traitTable {
	rows := readTable("trait.csv")
	t := &traitTable{words: newPhraseBook(rows, 3)}
	for _, r := range rows {
		t.list = append(t.list, trait{r[0], r[1], r[2] == "both"})
	}
	return t
})

// traits are rows of table/trait.csv, as bits.
type traits uint64

func traitsIn(words []string) traits {
	var out traits
	table := traitWords()
	for i := range words {
		if p, ok := table.words.at(words, i); ok {
			out |= 1 << p.row
		}
	}
	return out
}

// without takes out what a part is not: of what closes between two faces only a washer is one.
func (t traits) without(group string) traits {
	for i, one := range traitWords().list {
		if one.group == group {
			t &^= 1 << i
		}
	}
	return t
}

// withoutOne takes out one trait by its name.
func (t traits) withoutOne(name string) traits {
	for i, one := range traitWords().list {
		if one.name == name {
			t &^= 1 << i
		}
	}
	return t
}

func (t traits) has(name string) bool {
	for i, one := range traitWords().list {
		if one.name == name && t&(1<<i) != 0 {
			return true
		}
	}
	return false
}

// differ names the first trait of a line that a part has not: another of its group, or
// one that only both can have.
func (t traits) differ(part traits) (has, wants string, ok bool) {
	table := traitWords().list
	for i, one := range table {
		if t&(1<<i) == 0 || part&(1<<i) != 0 {
			continue
		}
		for k, other := range table {
			if other.group == one.group && part&(1<<k) != 0 && t&(1<<k) == 0 {
				return one.name, other.name, true
			}
		}
		if one.both {
			return one.name, "", true
		}
	}
	return "", "", false
}

var kindWords = sync.OnceValue(func() phraseBook { return newPhraseBook(readTable("kind.csv"), 1) })

var kindNames = sync.OnceValue(func() []string {
	var out []string
	for _, r := range readTable("kind.csv") {
		out = append(out, r[0])
	}
	return out
})

// kindIn finds a kind that shops name in words of their own; the longest phrase rules,
// the first of like ones. Oil and seals that a line begins with are for the pump behind them. A
// washer or a clamp that something comes with is not what it is, and a ring only where the line
// begins with it: fittings are called by their O-rings and olives too.
func kindIn(words []string) string {
	kind, _, _ := kindFound(words)
	return kind
}

// kindFound gives the kind with the first word of its phrase and the one behind its last.
func kindFound(words []string) (kind string, from, to int) {
	longest := 0
	for i := range words {
		p, ok := kindWords().at(words, i)
		switch {
		case !ok || len(p.words) <= longest:
		case i > 1 && is("with", words[i-1]) && isA(kindNames()[p.row], catalog.Washer|catalog.Clamp|catalog.ORing):
		case isRing(kindNames()[p.row]) && i > 0 && !isMaterial(words[i-1]):
		case kind == "" && isA(kindNames()[p.row], catalog.Oil|catalog.SealKit):
			return kindNames()[p.row], i, i + len(p.words)
		default:
			kind, longest, from, to = kindNames()[p.row], len(p.words), i, i+len(p.words)
		}
	}
	return kind, from, to
}

// isMaterial reports whether a word is of what a ring is made of.
func isMaterial(word string) bool { return is("rubber", word) || materialWord(word) != "" }
