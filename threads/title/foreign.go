package title

// namesForeign reports an end that gives a sex and no size, and before the sex a code or a number behind the part's name that nobody
// understands: adapter W21.8 female x 1/4 NPT male. It is the name of a thread, and no size of another end is its own. A word there, as in adapter
// ACME female, may be one too, and is asked.
func (l *line) namesForeign(c *phrase, tokens []token) (code, word bool) {
	if c.fig != nil || c.fam != nil || c.end != "" || len(c.sexes) != 1 || c.attr&isNut != 0 {
		return false, false
	}
	later, strange := c.from > l.tokens[0].from, false
	noun := c.strong || !later && (l.shape == nil || tokens[0].unread && at(tokens, 1).is(classSex) != nil)
	for k := range tokens {
		it := &tokens[k]
		switch {
		case it.is(classSex) != nil && (it.to-it.from > 1 || at(tokens, k-1).figure == nil):
			return noun && code, noun && strange
		case it.is(classKind) != nil:
			noun, strange, code = true, false, false
		case it.unread && it.to-it.from >= shortestForeign:
			strange = true
		case it.figure != nil && it.glued && (it.figure.role == asCode || it.figure.role == asNothing):
			noun, code = noun || later, true
		}
	}
	return false, false
}

// shortestForeign is how many letters a name of a thread has at least that is not one of those known. A judgement.
const shortestForeign = 3

// sunder reports whether a word that is not understood stands between the size of an end and the word that
// says what takes it: 3/4 straght tap connector comp.
func (l *line) sunder(tokens []token) bool {
	seen, strange := false, false
	for k := range tokens {
		it := &tokens[k]
		switch {
		case it.figure != nil && it.figure.sized(), it.is(classEnd) != nil:
			if seen && strange {
				return true
			}
			seen, strange = true, false
		case it.unread && !it.code && it.to-it.from >= shortestMisspelt:
			strange = true
		}
	}
	return false
}
