package title

import "strings"

// strange reports a part whose name is not understood and that has a size of a
// pipe thread: a fraction of an inch. Its ends are read, and are asked about.
func (l *line) strange() bool {
	if l.one || l.shape != nil {
		return false
	}
	unread, size := false, false
	for k := range l.tokens {
		it := &l.tokens[k]
		unread = unread || it.unread && !l.inCode(k)
		if f := it.figure; f != nil && f.kind == inchSize {
			if !f.frac || f.v > 2 {
				return false
			}
			size = true
		}
	}
	return unread && size
}

// strangeWords are the words that are not understood, quoted.
func (l *line) strangeWords() string {
	var out []string
	for _, w := range l.unknown() {
		if len(out) < 3 {
			out = append(out, quote(w))
		}
	}
	return strings.Join(out, ", ")
}
