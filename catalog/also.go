package catalog

import (
	"slices"
	"strings"
	"sync"
)

// Instead is what to write in place of a word that people use. Write is empty where
// nothing takes the word's place; Note then says what to do.
type Instead struct {
	Write, Note string
}

// alsoRow is a line of the table: words that people write for a kind, a port or a key, of
// which kinds (for a key), and what to write instead: of ports, the first that the kind has.
type alsoRow struct {
	what                 string
	of, written, instead []string
	note                 string
}

var alsoRows = sync.OnceValue(func() []alsoRow {
	var out []alsoRow
	for _, l := range eachRow("also") {
		r := alsoRow{what: l["what"], of: strings.Split(l["of"], "|"), instead: strings.Split(l["write"], "|"), note: l["note"]}
		for _, w := range strings.Split(l["written"], "|") {
			r.written = append(r.written, plainWord(w))
		}
		out = append(out, r)
	}
	return out
})

// plainWord brings the ways of writing one word together: "Sea-Chest", "sea chest".
func plainWord(w string) string {
	return strings.Join(strings.Fields(strings.NewReplacer("-", " ", "_", " ").Replace(strings.ToLower(w))), " ")
}

// KindMeant tells which kind a word of the trade means that names none: "sea chest" is
// drawn as a manifold. ok is false for a word that the table does not know.
//
// Source: table/also.csv, words of the trade: common practice.
func KindMeant(word string) (Instead, bool) {
	for _, r := range alsoRows() {
		if r.what == "kind" && slices.Contains(r.written, plainWord(word)) {
			return Instead{r.instead[0], r.note}, true
		}
	}
	return Instead{}, false
}

// PortMeant tells which port of the kind a word means that names none: "inlet" is the
// common port of a selector valve, and `in` of most parts. ok is false where the table
// does not know the word, or the kind has no such port.
//
// Source: table/also.csv, words of the trade: common practice.
func (k *Kind) PortMeant(word string) (port string, ok bool) {
	for _, r := range alsoRows() {
		if r.what != "port" || !slices.Contains(r.written, plainWord(word)) {
			continue
		}
		if i := slices.IndexFunc(r.instead, func(p string) bool { return k.PortIndex(p) >= 0 }); i >= 0 {
			return r.instead[i], true
		}
	}
	return "", false
}

// KeyMeant tells what to write for a key that parts of the kind do not have: `pressure` of
// a feed pump is its `shutoff`. ok is false for a key that the table does not know.
//
// Source: table/also.csv; what stands for any kind is for those of an [[item]].
func (k *Kind) KeyMeant(key string) (Instead, bool) {
	for _, r := range alsoRows() {
		of := slices.Contains(r.of, k.Name) || slices.Contains(r.of, "*") && !k.Is(Hose)
		if r.what == "key" && of && slices.Contains(r.written, plainWord(key)) {
			return Instead{r.instead[0], r.note}, true
		}
	}
	return Instead{}, false
}
