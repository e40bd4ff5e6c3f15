package draft

import (
	"strings"
	"unicode"

	"handtight/catalog"
)

// idOf makes a name that a path can hold.
func idOf(text string) string {
	var b strings.Builder
	dash := false
	for _, r := range strings.ToLower(text) {
		switch {
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			if dash && b.Len() > 0 {
				b.WriteByte('-')
			}
			b.WriteRune(r)
			dash = false
		default:
			dash = true
		}
	}
	return b.String()
}

// name gives every part an id: its kind, with its ends where it is a fitting, its fineness
// where it filters, and a number where two are alike.
func name(all []*Part, taken map[string]bool) {
	for _, p := range all {
		if p.Aside != "" {
			continue
		}
		id := chain().Short[p.Kind.Name]
		if id == "" {
			id = p.Kind.Name
		}
		switch {
		case p.isStock():
			id = "stock-" + orElse(millimetres(p.Says.Bore.Millimetres()), "open")
		case fittingKind(p.Kind) || p.isHose():
			for _, e := range p.ends {
				id += "-" + slug(e)
			}
		case p.Says.Micron > 0:
			id += "-" + figure(p.Says.Micron.Millimetres()*1000)
		case p.Kind.Is(catalog.Gauge) && p.Says.Scale > 0:
			id += "-" + figure(p.Says.Scale.Bar())
		case p.Kind.Loose && p.Says.Carbon:
			id = "carbon-" + id
		}
		id = idOf(id)
		base := id
		for n := 1; taken[id]; n++ {
			id = base + "-" + letters(n)
		}
		taken[id] = true
		p.ID = id
	}
}

// letters counts in letters: b, c, ... z, ba.
func letters(n int) string {
	if n < 26 {
		return string(rune('a' + n))
	}
	return letters(n/26) + letters(n%26)
}
