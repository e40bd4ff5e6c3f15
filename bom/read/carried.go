package read

import (
	"embed"
	"fmt"
	"slices"
	"strings"
	"sync"

	"handtight/bom/build"
	"handtight/bom/source"
	"handtight/catalog"
	"handtight/pressure/rows"
)

//go:embed carried.csv
var carriedTable embed.FS

// carriedRow says of some keys of some kinds that nothing here uses them, or only where something
// else is said.
type carriedRow struct {
	kinds, keys []string
	usedWhere   string // "": nowhere; "stated:KEY"; "absent:KEY"; "@" and a name: see [used]
	note        bool   // a statement that one may take for weighed: it is named in a finding
	why         string
}

var carriedRows = sync.OnceValue(func() []carriedRow {
	var out []carriedRow
	for _, r := range rows.Each[map[string]string]("read", carriedTable, "carried.csv") {
		out = append(out, carriedRow{strings.Split(r["kinds"], "|"), strings.Split(r["keys"], "|"), r["used_where"], r["note"] == "yes", r["why"]})
	}
	return out
})

func (c *carriedRow) speaksOf(k *catalog.Kind) bool {
	return slices.Contains(c.kinds, k.Name) || slices.Contains(c.kinds, "@all") ||
		k.Boats && slices.Contains(c.kinds, "@boats") || k.Loose && slices.Contains(c.kinds, "@loose")
}

// carriedOf are the rows that speak of a kind, listed once a build.
func (r *reader) carriedOf(k *catalog.Kind) []*carriedRow {
	list, ok := r.rows[k]
	if !ok {
		rows := carriedRows()
		for i := range rows {
			if rows[i].speaksOf(k) {
				list = append(list, &rows[i])
			}
		}
		r.rows[k] = list
	}
	return list
}

// carried notes each key of an item that is read, and that nothing uses.
func (r *reader) carried(t *source.Table, it *build.Item) {
	for _, row := range r.carriedOf(it.Kind) {
		for _, key := range row.keys {
			if t.Written(key) == "" || r.used(t, it, row.usedWhere) || slices.ContainsFunc(it.Carried, func(c build.Carried) bool { return c.Key == key }) {
				continue
			}
			it.Carried = append(it.Carried, build.Carried{Key: key, Value: t.Written(key), Why: row.why, Note: row.note, Place: build.MarkOf(t, key)})
		}
	}
}

// used reports whether what a row of the table asks for is so.
func (r *reader) used(t *source.Table, it *build.Item, where string) bool {
	sort, key, _ := strings.Cut(where, ":")
	switch sort {
	case "":
		return false
	case "stated":
		return t.Written(key) != ""
	case "absent":
		return t.Written(key) == ""
	case "@wall": // of tube with its outside, and of a threaded part that nothing rates
		return it.Kind.Length || it.Outside != nil || it.Rated == nil && it.Class == ""
	case "@length":
		return it.Kind.Length
	case "@tube":
		return it.Kind.Length || t.Written("wall") != ""
	case "@cut":
		return it.Of != ""
	case "@radius": // of the hose, or of its standard
		return it.BendRadius != nil || it.Spec != "" || it.Of != ""
	}
	panic(fmt.Sprintf("read: carried.csv asks for %q", where))
}
