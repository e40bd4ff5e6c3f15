package read

import (
	"fmt"
	"runtime"

	"handtight/bom/build"
	"handtight/bom/each"
	"handtight/bom/source"
	"handtight/catalog"
)

// manyParts is from how many parts on a file's items are read by several goroutines.
const manyParts = 256

// part is the table of an item or a hose, and how it is read.
type part struct {
	table *source.Table
	read  func(*reader, *source.Table) *build.Item
}

// parts reads the items and hoses of a file. False: there are too many, and no more
// was read.
func (r *reader) parts(root *source.Table) bool {
	var all []part
	for _, t := range root.Tables("item") {
		all = append(all, part{t, (*reader).item})
	}
	for _, t := range root.Tables("hose") {
		all = append(all, part{t, (*reader).hose})
	}
	ok := true
	if left := mostParts - r.read; len(all) > left {
		all[left].table.FaultHere(fmt.Sprintf("the build has more than %d items and hoses, and that is the most", mostParts), "include a list of what this build uses, not a whole shop's; nothing beyond this line was read")
		all, ok = all[:left], false
	}
	r.read += len(all)
	items := r.together(all)
	if items == nil {
		for _, p := range all {
			items = append(items, p.read(r, p.table))
		}
	}
	for i, it := range items {
		r.add(all[i].table, it)
	}
	return ok
}

// together reads parts with several readers at the same time, each a piece of the list; nil where they are
// few, where somebody listens to what is asked, and where one has a fault: then they are read one after the
// other, so that what is told once is told at the first of them.
func (r *reader) together(all []part) []*build.Item {
	if len(all) < manyParts || r.listen != nil {
		return nil
	}
	items := make([]*build.Item, len(all))
	pieces := 2 * runtime.GOMAXPROCS(0)
	clean := make([]bool, pieces)
	main := r.readers[len(r.readers)-1]
	each.Of(pieces, func(k int) {
		one, src := r.beside(), main.Fork()
		for i := k * len(all) / pieces; i < (k+1)*len(all)/pieces; i++ {
			items[i] = all[i].read(one, all[i].table.With(src))
		}
		clean[k] = src.Clean() && !one.misspelt && len(one.faults) == 0
	})
	for _, c := range clean {
		if !c {
			return nil
		}
	}
	return items
}

// beside is a reader of parts of the same build, that remembers for itself what texts were read as.
func (r *reader) beside() *reader {
	return &reader{
		build: r.build, kinds: r.kinds, ends: map[string]endRead{}, unsure: map[string]unsureEnd{},
		rows: map[*catalog.Kind][]*carriedRow{}, made: map[string][]*catalog.Material{},
	}
}
