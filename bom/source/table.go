package source

import (
	"maps"
	"slices"
	"strings"

	"handtight/pressure/nearest"
)

const noIndex = -1

// Table is one table of a document under reading: the file itself, a [section],
// an element of a [[list]], or what stands between braces. It remembers the keys
// it was asked for, so that [Table.Done] can name the rest.
type Table struct {
	reader *Reader
	up     *Table // nil for the file itself
	key    string // within up
	index  int    // within the list of that key, or noIndex
	values map[string]any
	asked  []string
}

// get looks a key up and remembers that it was asked for.
func (t *Table) get(key string) (any, bool) {
	if t.asked == nil {
		t.asked = t.reader.borrow()
	}
	t.asked = append(t.asked, key)
	v, ok := t.values[key]
	return v, ok
}

// Has says whether the table holds the key, of whatever type.
func (t *Table) Has(key string) bool {
	t.tell(key, AsAny, nil, false)
	_, ok := t.get(key)
	return ok
}

// Keys gives the keys that the table holds, sorted. It does not count as reading them.
func (t *Table) Keys() []string {
	return slices.Sorted(maps.Keys(t.values))
}

// Known names keys that may stand here although they are not read: Done takes
// them, and offers them for a misspelt one.
func (t *Table) Known(keys ...string) {
	for _, key := range keys {
		t.Has(key)
	}
}

// path leads to the table, or below it by the steps given.
func (t *Table) path(below ...any) Path {
	depth := 0
	for up := t; up.up != nil; up = up.up {
		depth += 2
	}
	path := make(Path, depth, depth+len(below))
	at := depth
	for up := t; up.up != nil; up = up.up {
		if up.index != noIndex {
			at--
			path[at] = up.index
		}
		at--
		path[at] = up.key
	}
	return append(path[at:], below...)
}

// Here is the place of the table: its header, or its key. For the file itself it
// is the file as a whole.
func (t *Table) Here() Place { return t.reader.doc.key(t.path()) }

// keyPlace is the place of a key of the table.
func (t *Table) keyPlace(key string) Place {
	if _, ok := t.values[key]; !ok {
		return t.Here()
	}
	return t.reader.doc.key(t.path(key))
}

// Place is the place of the value of a key, or of an element of it when the steps
// into its list or table are given. Without the key it is the place of the table.
func (t *Table) Place(key string, below ...any) Place {
	return t.reader.doc.place(t.offset(key, below...))
}

// offset finds a value of the table, or the table itself when it has no such key.
func (t *Table) offset(key string, below ...any) int {
	if _, ok := t.values[key]; !ok {
		return t.reader.doc.offset(t.path(), true)
	}
	return t.reader.doc.offset(append(t.path(key), below...), false)
}

// Fault notes what is wrong with the value of a key, or with the table when it
// has no such key.
func (t *Table) Fault(key, reason, remedy string) {
	t.reader.fault(t.offset(key), reason, remedy)
}

// FaultHere notes what is wrong with the table as a whole.
func (t *Table) FaultHere(reason, remedy string) {
	t.reader.fault(t.reader.doc.offset(t.path(), true), reason, remedy)
}

// FaultAt notes what is wrong with a part of a value: the steps lead from the key
// to it, as in FaultAt(reason, remedy, "path", 2).
func (t *Table) FaultAt(reason, remedy, key string, below ...any) {
	t.reader.fault(t.offset(key, below...), reason, remedy)
}

// Unknown gives the keys that were not asked for and not named by [Table.Known] so far, sorted.
func (t *Table) Unknown() []string {
	var out []string
	for key := range t.values {
		if !slices.Contains(t.asked, key) {
			out = append(out, key)
		}
	}
	slices.Sort(out)
	return out
}

// Done notes each key that was not asked for and not named by [Table.Known], with
// the nearest one that was. It says nothing of the tables within.
func (t *Table) Done() { t.DoneWith(nil) }

// DoneWith is [Table.Done] for a reader that knows what people mean by some unknown keys:
// meant gives the remedy for one, and false where it knows nothing of it.
func (t *Table) DoneWith(meant func(key string) (remedy string, ok bool)) {
	for _, key := range t.Unknown() {
		t.unknown(key, meant)
	}
	if t.asked != nil {
		clear(t.asked)
		t.reader.spare = append(t.reader.spare, t.asked[:0])
		t.asked = nil
	}
}

// unknown notes one such key.
func (t *Table) unknown(key string, meant func(key string) (string, bool)) {
	reason := "unknown key `" + clip(keyText(key), 60) + "`"
	t.misspelt(key, reason)
	if meant != nil {
		if remedy, ok := meant(key); ok {
			t.reader.fault(t.reader.doc.offset(t.path(key), true), reason, remedy)
			return
		}
	}
	remedy := "remove it"
	near, ok := nearest.Of(key, t.asked)
	switch {
	case ok && strings.EqualFold(near, key):
		reason += ": capitals count in a key"
		remedy = "write `" + keyText(near) + "`"
	case ok:
		remedy = "write `" + keyText(near) + "`"
	case len(t.asked) > 0:
		known := slices.Clone(t.asked)
		slices.Sort(known)
		remedy = "remove it; the keys here are " + strings.Join(slices.Compact(known), ", ")
	}
	t.reader.fault(t.reader.doc.offset(t.path(key), true), reason, remedy)
}

// name is how a message calls the table.
func (t *Table) name() string {
	if t.up == nil {
		return "this file"
	}
	var words []string
	for up := t; up.up != nil; up = up.up {
		words = append(words, keyText(up.key))
	}
	slices.Reverse(words)
	path := strings.Join(words, ".")
	if t.index != noIndex {
		return "this [[" + path + "]]"
	}
	return "[" + path + "]"
}

// keyText writes a key as it stands in a file: bare, or in quotes.
func keyText(key string) string {
	bare := key != ""
	for i := range len(key) {
		bare = bare && key[i] < 0x80 && isBare(key[i])
	}
	if bare {
		return key
	}
	if q, ok := quote(key); ok {
		return q
	}
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`, "\n", `\n`, "\r", `\r`).Replace(key) + `"`
}
