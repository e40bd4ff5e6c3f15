package title

import "slices"

// symbols finds a fitting symbol of EN 10242 in brackets, such as (A4, n. 92),
// and takes the bracket out of the line.
func (l *line) symbols() {
	if !l.seen.marks.has('(') {
		return
	}
	for k := 0; k < len(l.tokens); k++ {
		if l.tokens[k].mark != '(' {
			continue
		}
		end, found := k+1, symbol{}
		described := false
		for end < len(l.tokens) && l.tokens[end].mark != ')' {
			if s, ok := l.symbolAt(end); ok {
				found = s
			}
			described = described || l.tokens[end].is(classKind) != nil && l.tokens[end].to-l.tokens[end].from > 2 || l.tokens[end].value(classSep) == "x"
			end++
		}
		if found.shape == nil || described || end-k > 8 || end == len(l.tokens) {
			continue
		}
		said := *found.shape
		said.sexes, said.traits = found.sexes, said.traits|plain // A4 is male and female, and not mostly so
		l.malleable, l.shape, l.evidence = true, &said, true
		strange := slices.DeleteFunc(slices.Clone(l.tokens[k:end]), func(it token) bool { return !it.unread || it.to-it.from < 3 })
		l.tokens = slices.Replace(l.tokens, k, end+1, strange...)
		l.seen = look(l.tokens, l.norm)
	}
}

func (l *line) symbolAt(k int) (symbol, bool) {
	it := l.tokens[k]
	if f := it.figure; f != nil && f.kind == bare {
		s, ok := l.lex.symbols[string(l.norm[it.from:it.to])]
		return s, ok && l.inBrackets(k)
	}
	if k+1 < len(l.tokens) && l.tokens[k+1].figure != nil && l.tokens[k+1].glued {
		s, ok := l.lex.symbols[string(l.norm[it.from:l.tokens[k+1].to])]
		return s, ok
	}
	return symbol{}, false
}

// inBrackets reports whether a bare number in brackets can be a symbol's: it
// stands beside a symbol letter, an R for reducing, or n.
func (l *line) inBrackets(k int) bool {
	next := l.tokens[k+1 : min(k+2, len(l.tokens))]
	prev := l.tokens[max(k-1, 0):k]
	if len(next) == 1 && next[0].glued && next[0].to-next[0].from == 1 && l.norm[next[0].from] == 'r' {
		return true
	}
	return len(prev) == 1 && prev[0].mark == 0 && prev[0].to-prev[0].from <= 2
}
