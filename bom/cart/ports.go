package cart

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"handtight/pressure/pattern"
)

// Words beside the ends call them by the port that they are: inlet 1/4 NPT male, 3/8 NPT female outlet. A part with the right
// ends at the wrong ports does not go in.

// portForms find the word for a port at the end of what stands before an end, at the beginning of what stands behind it, and
// in the words that the end was read from.
var portForms = sync.OnceValue(func() struct{ before, behind, within, listed *pattern.Pattern } {
	var list []string
	for w := range portNames() {
		list = append(list, regexp.QuoteMeta(w))
	}
	longestFirst(list)
	words := `(` + strings.Join(list, "|") + `)`
	plain := `(?:\s+(?:ports?|connections?|side|thread|anschluss|seite|gewinde|côté|raccord|filetage|attacco|lato|connessione|conexión|rosca|lado|conexão|aansluiting|zijde|anslutning|tilslutning|liitäntä|przyłącze))?`
	var out struct{ before, behind, within, listed *pattern.Pattern }
	out.listed = pattern.New(`(?i)(?:^|[^\pL])((?:(?:` + strings.Join(list, "|") + `)\s*(?:/|x|×|&|\+|-|–)\s*)+(?:` + strings.Join(list, "|") + `))` + plain + `\s*[:=)]?\s*$`)
	out.before = pattern.New(`(?i)(?:^|[^\pL])` + words + plain + `\s*[:=]?\s*(?:of|is|de|di|with|mit|with)?\s*[(]?\s*$`)
	out.behind = pattern.New(`(?i)^[\s(/–-]*(?:(?:at|on|as|am|an|als|à l['’]|en|in)\s+)?(?:the\s+)?` + words + `(?:[^\pL]|$)`)
	out.within = pattern.New(`(?i)(?:^|[^\pL])` + words + `(?:[^\pL]|$)`)
	return out
})

// portNames are the ports by the words for them.
var portNames = sync.OnceValue(func() map[string]string {
	out := map[string]string{}
	for _, r := range readTable("port.csv") {
		for _, w := range strings.Split(r[1], "|") {
			out[w] = r[0]
			if first, _, more := strings.Cut(w, " "); more && out[first] == "" {
				panic("cart: port.csv has " + w + " and not " + first) // a line is looked at for single words first
			}
		}
	}
	return out
})

// portsOf notes which port each end is called. The words stand all before the ends or all behind them, and those before the
// first one tell which. "in" and "out" are small words too, so that the one counts only beside another port.
func (f *facts) portsOf(text string, s *wording) {
	if len(f.ends) < 2 || !slices.ContainsFunc(s.words, func(w string) bool { return portNames()[w] != "" }) {
		return
	}
	forms := portForms()
	from, stop := 0, make([]int, len(f.ends))
	start := make([]int, len(f.ends))
	for i := range f.ends {
		words := f.ends[i].words
		at := strings.Index(text[from:], words)
		if at < 0 || words == "" {
			start[i], stop[i] = from, from
			continue
		}
		start[i], stop[i] = from+at, from+at+len(words)
		from = stop[i]
	}
	got := make([][3]string, len(f.ends)) // before, behind, within
	for i := range f.ends {
		last, next := 0, len(text)
		if i > 0 {
			last = stop[i-1]
		}
		if i+1 < len(f.ends) {
			next = max(start[i+1], stop[i])
		}
		for k, one := range []struct {
			form *pattern.Pattern
			text string
		}{{forms.before, text[min(last, start[i]):start[i]]}, {forms.behind, text[stop[i]:next]}, {forms.within, f.ends[i].words}} {
			if m := one.form.FindStringSubmatch(one.text); m != nil {
				got[i][k] = strings.ToLower(m[1])
			}
		}
	}
	first := f.ends[0].words
	if size := strings.IndexAny(first, "0123456789"); size >= 0 {
		first = first[:size] // in/out may be of the end's own words
	}
	if names := portList(text[:start[0]]+first, text[start[len(start)-1]:], len(f.ends)); names != nil && got[0][1] == "" && got[len(got)-1][0] == "" {
		for i := range names {
			f.ends[i].port = names[i]
		}
		return
	}
	side := 1
	if got[0][0] != "" {
		side = 0
	}
	names := make([]string, len(f.ends))
	small := 0
	for i := range got {
		word := orWords(got[i][side], got[i][2])
		names[i] = portNames()[word]
		if word == "in" || word == "out" {
			small++
		}
	}
	named := len(names) - len(slices.DeleteFunc(slices.Clone(names), func(s string) bool { return s != "" }))
	if small > 0 && named < 2 {
		return
	}
	for i := range names {
		if names[i] != "" && slices.Index(names, names[i]) == i && !slices.Contains(names[i+1:], names[i]) {
			f.ends[i].port = names[i]
		}
	}
}

// portList gives the ports in the order of the ends, where their names stand together before the first of them or behind the
// last, which begins the text behind: in/out 1/4 NPT male / 3/8 NPT female. Nil where they are not as many.
func portList(before, behind string, ends int) []string {
	m := portForms().listed.FindStringSubmatch(before)
	if m == nil {
		if to := strings.IndexAny(behind, ",);"); to >= 0 {
			behind = behind[:to]
		}
		if m = portForms().listed.FindStringSubmatch(behind); m == nil {
			return nil
		}
	}
	words := strings.FieldsFunc(strings.ToLower(m[1]), func(r rune) bool { return strings.ContainsRune("/x×&+-– ", r) })
	var out []string
	for _, w := range words {
		if name := portNames()[w]; name != "" {
			out = append(out, name)
		}
	}
	if len(out) != ends {
		return nil
	}
	return out
}

// portAt finds an item's end by the name that a line has for it: the inlet of a vessel is its feed. -1 for none.
func (f *facts) portAt(name string) int {
	for i := range f.ends {
		if f.ends[i].port == name {
			return i
		}
	}
	if other := map[string]string{"in": "feed", "feed": "in"}[name]; other != "" {
		return slices.IndexFunc(f.ends, func(e ending) bool { return e.port == other })
	}
	return -1
}

// comparePorts holds the ports that a line names to the planned ones, where its ends are those of the part.
func (m *match) comparePorts(l, n *facts) {
	if m.fit != fitSame && m.fit != fitOpen {
		return
	}
	if _, _, wrong := l.wrongPort(n); wrong {
		m.differs.add(inPort)
	}
}

// wrongPort finds the first end of a line that is not that of the port which it is called.
func (f *facts) wrongPort(n *facts) (line, item int, wrong bool) {
	for k := range f.ends {
		if f.ends[k].port == "" {
			continue
		}
		if i := n.portAt(f.ends[k].port); i >= 0 && fitEnd(&f.ends[k], &n.ends[i]) >= fitNear {
			return k, i, true
		}
	}
	return 0, 0, false
}

// swapped says which port is another than planned.
func (f *facts) swapped(n *need, where string) string {
	k, i, _ := f.wrongPort(&n.facts)
	return fmt.Sprintf("Its %s is %s, and that of %s is %s%s.", portWord(f.ends[k].port), openText(f.ends[k].readings), n.Key, openText(n.facts.ends[i].readings), where)
}

func portWord(port string) string {
	switch port {
	case "in":
		return "inlet"
	case "out":
		return "outlet"
	}
	return port
}
