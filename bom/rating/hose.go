package rating

import (
	"strings"

	"handtight/bom/build"
	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// hose looks up what one end of a hose holds: the hose, by its standard, else by what is
// written of a pipe, else by the wall of a tube; and the end fitting. An assembly is no
// better than its ends (SAE J517 section 1). An end that is only estimated is given apart:
// it may lower the hose, and clears nothing. An end alone rates no hose, and lowers one
// whose data sheet rates it.
func (c table) hose(i *build.Item, port int) (standard, guess pressure.Rating) {
	hose, known := c.hoseItself(i)
	end, said := c.hoseEnd(i, port)
	switch {
	case !said, !known && i.Rated == nil:
		return hose, guess
	case end.Basis == pressure.Estimate:
		return hose, end
	}
	standard, _ = pressure.Lower(hose, end)
	if hose.Basis.Guess() {
		standard.Basis = hose.Basis // good ends make no better hose
	}
	return standard, guess
}

// hoseItself looks a hose up, without its ends, once for all of one make.
func (c table) hoseItself(i *build.Item) (pressure.Rating, bool) {
	said := func(l *quantity.Length) quantity.Length {
		if l == nil {
			return -1
		}
		return *l
	}
	kind := hoseKind{i.Pipe, i.Spec, i.Material, said(i.Bore), said(i.Outside), said(i.Wall)}
	got, ok := c.hoses[kind]
	if !ok {
		got.rating, got.ok = hoseRating(i)
		c.hoses[kind] = got
	}
	return got.rating, got.ok
}

// hoseRating looks the hose itself up, without its ends.
func hoseRating(i *build.Item) (pressure.Rating, bool) {
	if spec, ok := pressure.HoseSpec(i.Spec); ok {
		if i.Bore == nil {
			return pressure.Rating{}, false
		}
		return pressure.HoseRating(spec, *i.Bore)
	}
	if r, ok := pressure.PipeRating(strings.Join([]string{i.Pipe, i.Spec, i.Material}, ", ")); ok {
		return r, true
	}
	return tubeRating(i)
}

// hoseEnd looks an end fitting of a made-up hose up, by the material of the ends and by
// the class that the hose says of them; ok is false for the cut end of a hose.
func (c table) hoseEnd(i *build.Item, port int) (pressure.Rating, bool) {
	if !madeUp(i) {
		return pressure.Rating{}, false
	}
	var all []pressure.Rating
	for _, material := range endMaterials(i.Material) {
		if r, ok := c.end(i, port, material); ok {
			all = append(all, r)
		}
	}
	return pressure.Lower(all...)
}

// madeUp reports whether a hose has end fittings of its own, and is not just cut square.
func madeUp(i *build.Item) bool { return i.Of == "" || i.Has(threads.Family.Threaded) }

// endWords are what a text calls the ends of a hose.
var endWords = pattern.New(`(?i)\b(?:ends?|fittings?|couplings?|tails?|inserts?)\b`)

// endMaterials gives the materials of a hose's ends, from a text that may speak of the
// hose as well: "nylon core, 316 ends" is 316. Where a text names several metals of its
// ends, each of them counts.
func endMaterials(text string) []string {
	for _, part := range strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ';' }) {
		if endWords.MatchString(part) {
			text = part
		}
	}
	var metals []string
	for _, m := range catalog.MaterialsIn(text) {
		if m.Metal() {
			metals = append(metals, m.Name)
		}
	}
	if len(metals) < 2 {
		return []string{text}
	}
	return metals
}
