package pressure

import (
	"slices"
	"strings"
	"sync"
)

type materialWords struct {
	material string
	words    []string // each between blanks, as [spaced] writes a text
}

var materials = sync.OnceValue(func() []materialWords {
	var out []materialWords
	for _, r := range eachRow("material") {
		m := materialWords{material: r["material"]}
		for _, w := range r.list("words") {
			m.words = append(m.words, " "+separator.ReplaceAllString(w, " ")+" ")
		}
		out = append(out, m)
	}
	return out
})

// materialNamed finds the material in what people write: "316L stainless",
// "DZR brass CW602N", "uPVC". The first in the table's order rules, so that
// "316/316L" is the weaker 316L. It is "" if none is known.
func materialNamed(text string) string {
	plain := spaced(text)
	for _, m := range materials() {
		if m.in(plain) {
			return m.material
		}
	}
	return ""
}

// spaced writes a text in small letters with one blank between its words and around them.
func spaced(text string) string {
	return " " + strings.TrimSpace(separator.ReplaceAllString(strings.ToLower(text), " ")) + " "
}

// in reports whether a spaced text names the material.
func (m *materialWords) in(plain string) bool {
	return slices.ContainsFunc(m.words, func(w string) bool { return strings.Contains(plain, w) })
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
	plain := spaced(text)
	var out []string
	for _, m := range materials() {
		if slices.Contains(plastics, m.material) && m.in(plain) {
			out = append(out, m.material)
		}
	}
	return out
}
