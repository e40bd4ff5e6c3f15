package catalog

import (
	"strings"
	"sync"
)

var potable = sync.OnceValue(func() [][3]string {
	var out [][3]string
	for _, r := range eachRow("potable") {
		for _, word := range strings.Split(r["words"], "|") {
			out = append(out, [3]string{word, r["what"], r["source"]})
		}
	}
	return out
})

// Potable reports whether a part's words declare it for drinking water, and by
// what: the words themselves, or the standard that they name. "Food grade" alone does
// not: it speaks of food and not of what a part gives to water in a year.
//
// Source: scopes of NSF/ANSI/CAN 61, AS/NZS 4020:2018 and BS 6920; table/potable.csv.
func Potable(text string) (by string, ok bool) {
	t := strings.Join(strings.Fields(strings.ToLower(text)), " ")
	for _, p := range potable() {
		if i := strings.Index(t, p[0]); i >= 0 && !strings.HasSuffix(t[:i], "not for ") && !strings.HasSuffix(t[:i], "non-") {
			return p[1], true
		}
	}
	return "", false
}
