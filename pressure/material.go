package pressure

import (
	"slices"
	"strings"
	"sync"
)

type materialWords struct {
	material string
	words    []string
}

var materials = sync.OnceValue(func() []materialWords {
	var out []materialWords
	for _, r := range readTable("material") {
		out = append(out, materialWords{r["material"], r.list("words")})
	}
	return out
})

// materialNamed finds the material in what people write: "316L stainless",
// "DZR brass CW602N", "uPVC". The first in the table's order rules, so that
// "316/316L" is the weaker 316L. It is "" if none is known.
func materialNamed(text string) string {
	plain := " " + strings.TrimSpace(separator.ReplaceAllString(strings.ToLower(text), " ")) + " "
	for _, m := range materials() {
		for _, w := range m.words {
			if strings.Contains(plain, " "+separator.ReplaceAllString(w, " ")+" ") {
				return m.material
			}
		}
	}
	return ""
}

// stands lists the table materials that a material may be: "stainless" alone may
// be any of three.
func stands(material string) []string {
	if material == "stainless" {
		return []string{"304", "316", "316L"}
	}
	return []string{material}
}

// plastics are the materials that heat weakens and whose tables a hose is held against.
var plastics = []string{"CPVC", "PVC", "PVDF", "PP", "PE100", "PE80", "PE"}

// plasticsIn lists the plastics that a text names.
func plasticsIn(text string) []string {
	plain := " " + strings.TrimSpace(separator.ReplaceAllString(strings.ToLower(text), " ")) + " "
	var out []string
	for _, m := range materials() {
		if slices.Contains(plastics, m.material) && slices.ContainsFunc(m.words, func(w string) bool {
			return strings.Contains(plain, " "+separator.ReplaceAllString(w, " ")+" ")
		}) {
			out = append(out, m.material)
		}
	}
	return out
}
