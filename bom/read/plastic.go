package read

import (
	"slices"

	"handtight/bom/build"
	"handtight/catalog"
	"handtight/threads"
)

// mould says of the threads of an item that is of plastic, and of nothing else, that
// they are: what a metal taper does to them decides the joint. An insert of metal is said
// by the material ("PP, brass insert").
func (r *reader) mould(it *build.Item) {
	if !r.isPlastic(it.Material) {
		return
	}
	for i := range it.Ports {
		end := &it.Ports[i].End
		if !slices.ContainsFunc(end.Candidates, func(e threads.End) bool { return e.Family.Threaded() && !e.Plastic }) {
			continue
		}
		end.Candidates = slices.Clone(end.Candidates) // the reading is shared by all that have the same words
		for k := range end.Candidates {
			if e := &end.Candidates[k]; e.Family.Threaded() {
				e.Plastic = true
			}
		}
	}
}

// isPlastic reports whether a material is plastic and nothing else.
func (r *reader) isPlastic(material string) bool {
	list := r.materials(material)
	return len(list) > 0 && !slices.ContainsFunc(list, func(m *catalog.Material) bool { return m.Group != "plastic" })
}

// materials lists what a text names, looked up once.
func (r *reader) materials(text string) []*catalog.Material {
	if text == "" {
		return nil
	}
	list, known := r.made[text]
	if !known {
		list = catalog.MaterialsIn(text)
		r.made[text] = list
	}
	return list
}
