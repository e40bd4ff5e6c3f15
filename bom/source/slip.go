package source

import (
	"cmp"
	"slices"
	"strings"

	"handtight/pressure/nearest"
)

// slip is a key that is written wrong, and the one that is meant by it.
type slip struct {
	offset            int
	key, want, reason string
}

// misspelt notes an unknown key that is a slip of one that is asked for, and that is not there.
func (t *Table) misspelt(key, reason string) {
	if t.up == nil {
		return // a whole section: what hangs on it is not looked at
	}
	want, ok := nearest.Of(key, t.asked)
	if _, there := t.values[want]; !ok || there {
		return
	}
	t.note(key, want, reason)
}

func (t *Table) note(key, want, reason string) {
	at := t.reader.doc.offset(t.path(key), true)
	if at >= 0 && strings.HasPrefix(t.reader.doc.text[at:], keyText(key)) {
		t.reader.slips = append(t.reader.slips, slip{at, keyText(key), keyText(want), reason})
	}
}

// Misspelt looks for a key that is a slip of one that is needed before the others are asked for, and
// notes it; others are the keys that may stand here as well.
func (t *Table) Misspelt(want string, others []string) bool {
	for _, key := range t.Unknown() {
		if near, ok := nearest.Of(key, append([]string{want}, others...)); ok && near == want && key != want && !slices.Contains(others, key) {
			reason := "unknown key `" + clip(keyText(key), 60) + "`"
			t.note(key, want, reason)
			t.reader.fault(t.reader.doc.offset(t.path(key), true), reason, "write `"+keyText(want)+"`")
			return true
		}
	}
	return false
}

// Mended gives the text with each misspelt key as it was meant, and the faults of those keys: read
// again, it tells what else is wrong, and not what comes of the slip. It is not ok where no
// key of the text is misspelt.
func (r *Reader) Mended() (text []byte, slips Faults, ok bool) {
	if len(r.slips) == 0 {
		return nil, nil, false
	}
	list := slices.Clone(r.slips)
	slices.SortFunc(list, func(a, b slip) int { return cmp.Compare(a.offset, b.offset) })
	for _, f := range r.pending {
		if slices.ContainsFunc(list, func(s slip) bool { return s.offset == f.offset && strings.HasPrefix(f.reason, s.reason) }) {
			slips = append(slips, Fault{r.doc.place(f.offset), f.reason, f.remedy})
		}
	}
	last := 0
	for _, s := range list {
		text = append(text, r.doc.text[last:s.offset]...)
		text = append(text, s.want...)
		last = s.offset + len(s.key)
	}
	return append(text, r.doc.text[last:]...), slips, true
}
