package draft

import (
	"bytes"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"handtight/bom/build"
	"handtight/pressure/pattern"
)

// edit changes the steps of a run where they are written: nothing else of the text moves.
func (l *layer) edit(g *gap, steps []string) bool {
	from, _, ok := l.literal(&g.run.Steps[g.a])
	to, _, ok2 := l.literal(&g.run.Steps[g.b])
	if !ok || !ok2 || to < from || bytes.ContainsRune(l.text[from:to], '#') {
		return false
	}
	gap := " "
	if g.a < g.b { // as the steps that give way stood apart from the next
		_, end, _ := l.literal(&g.run.Steps[g.b-1])
		gap = strings.TrimPrefix(strings.TrimLeft(string(l.text[end:to]), " "), ",")
	}
	l.text = slices.Concat(l.text[:from], []byte(strings.Join(steps, ", ")+","+gap), l.text[to:])
	return true
}

// literal finds the quoted text of a step.
func (l *layer) literal(s *build.Step) (from, to int, ok bool) {
	p := s.Place.Place()
	if p.File != l.file || p.Line < 1 || p.Column < 1 {
		return 0, 0, false
	}
	for range p.Line - 1 {
		i := bytes.IndexByte(l.text[from:], '\n')
		if i < 0 {
			return 0, 0, false
		}
		from += i + 1
	}
	row, _, _ := strings.Cut(string(l.text[from:]), "\n")
	letters := []rune(row)
	if p.Column > len(letters) {
		return 0, 0, false
	}
	from += len(string(letters[:p.Column-1]))
	for _, q := range []string{`"`, `'`} {
		if text := q + s.Text + q; bytes.HasPrefix(l.text[from:], []byte(text)) {
			return from, from + len(text), true
		}
	}
	return 0, 0, false
}

// missingAt reads between which parts a comment of a draft says that pieces are missing.
var missingAt = pattern.New(`(?m)^# MISSING: [^\n]*(?:\n#   [^\n]*)*\n`)

var missingPlace = pattern.New(` at (\S+)\.[^\s.]+ - (\S+)\.[^\s.;]+; buy `)

var missingBranch = pattern.New(`: a branch for \S+ .* at (\S+)\.([^\s.;]+); buy `)

var extraLine = pattern.New(`^extra *= *[0-9]+[ \t]*(?:#.*)?\r?\n`)

var leftOver = pattern.New(`(?m)^# LEFT OVER: [^\n]*\n(\[\[item\]\]\r?\n)`)

// takeExtra writes how many of the build's own pieces are still extra.
func (l *layer) takeExtra() {
	for _, p := range l.own {
		if p.isStock() || l.used[p] == 0 {
			continue
		}
		head := regexp.MustCompile(`(?m)^id *= *"` + regexp.QuoteMeta(p.ID) + `"`).FindIndex(l.text)
		if head == nil {
			continue
		}
		at := head[0]
		for at < len(l.text) && l.text[at] != '[' && l.text[at] != '\n' {
			if m := extraLine.FindStringIndex(string(l.text[at:])); m != nil {
				row := ""
				if n := p.Pieces - l.used[p]; n > 0 {
					row = regexp.MustCompile(`[0-9]+`).ReplaceAllString(string(l.text[at:at+m[1]]), strconv.Itoa(n))
				} else if c := leftOver.FindAllStringSubmatchIndex(string(l.text[:at]), -1); len(c) > 0 && c[len(c)-1][3] == head[0] {
					k := c[len(c)-1]
					l.text = slices.Concat(l.text[:k[0]], l.text[k[2]:])
					at -= k[2] - k[0]
				}
				l.text = slices.Concat(l.text[:at], []byte(row), l.text[at+m[1]:])
				break
			}
			i := bytes.IndexByte(l.text[at:], '\n')
			if i < 0 {
				break
			}
			at += i + 1
		}
	}
}

// drop takes out what was to buy and stands nowhere any longer, and the comment that says so.
func (l *layer) drop() {
	placed := map[string]bool{}
	for _, u := range l.sys.Graph.Units {
		placed[u.Item.ID] = true
		placed[u.Item.Of] = true
	}
	text := string(l.text)
	nl := strings.Contains(text, "\r\n")
	text = strings.ReplaceAll(text, "\r\n", "\n")
	before := text
	for id := range l.bought {
		if !placed[id] {
			text = regexp.MustCompile(`(?m)(?:^# ASSUMED: [^\n]*\n)?^\[\[(?:item|hose)\]\]\nid *= "`+regexp.QuoteMeta(id)+`"[^\n]*\n(?:[a-z_]+ *= [^\n]*\n)*\n?`).ReplaceAllString(text, "")
		}
	}
	text = missingAt.ReplaceAllStringFunc(text, func(c string) string {
		flat := strings.Join(strings.Fields(strings.ReplaceAll(c, "\n#", " ")), " ")
		if m := missingPlace.FindStringSubmatch(flat); m != nil && !l.lacks(m[1], m[2]) {
			return ""
		}
		if m := missingBranch.FindStringSubmatch(flat); m != nil && l.hung(m[1], m[2]) {
			return ""
		}
		return c
	})
	if text == before {
		return
	}
	if nl {
		text = strings.ReplaceAll(text, "\n", "\r\n")
	}
	l.text = []byte(text)
}

// hung reports whether a port is joined to what is not to buy.
func (l *layer) hung(unit, port string) bool {
	u, ok := l.sys.Graph.Unit(unit)
	if !ok || u.Item.PortIndex(port) < 0 {
		return false
	}
	p := l.sys.Graph.Port(u, u.Item.PortIndex(port))
	if p.Joint == nil {
		return false
	}
	other := p.Joint.A
	if &l.sys.Graph.Ports[other] == p {
		other = p.Joint.B
	}
	return !l.bought[l.sys.Graph.Ports[other].Unit.Item.ID]
}

// lacks reports whether something to buy stands in a run between two units, or no run has both.
func (l *layer) lacks(a, b string) bool {
	for _, run := range l.sys.Build.Runs {
		x := slices.IndexFunc(run.Steps, func(s build.Step) bool { return unitName(&s) == a })
		y := slices.IndexFunc(run.Steps, func(s build.Step) bool { return unitName(&s) == b })
		if x < 0 || y < 0 {
			continue
		}
		return slices.ContainsFunc(run.Steps[min(x, y):max(x, y)], func(s build.Step) bool { return l.bought[s.Item.ID] })
	}
	return true
}
