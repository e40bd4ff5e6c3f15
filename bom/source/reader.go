package source

import (
	"cmp"
	"slices"
)

// Reader asks a document typed questions and collects the faults of the answers.
type Reader struct {
	doc     *Document
	pending []pending
	spare   [][]string // lists of asked keys, to be used again
	known   map[any]any
	listen  func(Asked) // nil: nobody does
	slips   []slip
}

// pending is a fault whose line is not worked out yet; offset -1 is the whole file.
type pending struct {
	offset         int
	reason, remedy string
}

// NewReader begins to read a document.
func NewReader(doc *Document) *Reader { return &Reader{doc: doc} }

// Fork is a reader of the same document that has found nothing yet: one for each goroutine that asks
// tables of its own ([Table.With]). What it finds is its own.
func (r *Reader) Fork() *Reader { return &Reader{doc: r.doc} }

// With is the table, not asked yet, under another reader of the same document.
func (t *Table) With(r *Reader) *Table {
	other := *t
	other.reader, other.asked = r, nil
	return &other
}

// Clean reports whether a reader has found neither a fault nor a slip.
func (r *Reader) Clean() bool { return len(r.pending) == 0 && len(r.slips) == 0 }

// Recall gives what was remembered under a key, such as what a text was read as before: the
// same few texts stand in many tables.
func (t *Table) Recall(key any) (any, bool) {
	v, ok := t.reader.known[key]
	return v, ok
}

// Remember keeps a value for [Table.Recall], for all tables of the document.
func (t *Table) Remember(key, value any) {
	if t.reader.known == nil {
		t.reader.known = map[any]any{}
	}
	t.reader.known[key] = value
}

// Root is the table that is the whole file.
func (r *Reader) Root() *Table {
	return &Table{reader: r, index: noIndex, values: r.doc.values}
}

// Document is what is read.
func (r *Reader) Document() *Document { return r.doc }

// Faults gives all faults found so far in the order of the text, each once.
func (r *Reader) Faults() Faults {
	if len(r.pending) == 0 {
		return nil
	}
	slices.SortStableFunc(r.pending, func(a, b pending) int {
		return cmp.Or(cmp.Compare(a.offset, b.offset), cmp.Compare(a.reason, b.reason), cmp.Compare(a.remedy, b.remedy))
	})
	r.pending = slices.Compact(r.pending)
	faults := make(Faults, len(r.pending))
	for i, p := range r.pending {
		faults[i] = Fault{r.doc.place(p.offset), p.reason, p.remedy}
	}
	return faults
}

// fault notes one.
func (r *Reader) fault(offset int, reason, remedy string) {
	r.pending = append(r.pending, pending{offset, reason, remedy})
}

// borrow gives an empty list for the keys that a table is asked for.
func (r *Reader) borrow() []string {
	const keys = 24
	if n := len(r.spare); n > 0 {
		list := r.spare[n-1]
		r.spare = r.spare[:n-1]
		return list
	}
	return make([]string, 0, keys)
}
