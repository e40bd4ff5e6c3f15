package build

import (
	"fmt"
	"strings"
)

// Described says what the item is, so that it can be asked for in a shop: its kind, its
// size, and the figures that tell it from others of its kind.
func (i *Item) Described() string {
	var words []string
	if !strings.HasPrefix(strings.ToLower(i.Title), strings.ToLower(i.Kind.Name)) {
		words = append(words, i.Kind.Name)
	}
	if i.IsHose() && i.Length != nil {
		words = append(words, i.Length.String())
	}
	for _, w := range []string{i.Spec, i.Class, i.Type} {
		if w != "" {
			words = append(words, w)
		}
	}
	words = append(words, i.figures()...)
	for _, w := range []string{i.About, i.Title} {
		if w != "" {
			words = append(words, w)
		}
	}
	return strings.Join(words, ", ")
}

// figures are the sizes and settings of the item that a shop must know.
func (i *Item) figures() []string {
	var out []string
	add := func(label string, known bool, figure fmt.Stringer) {
		if known {
			out = append(out, strings.TrimSpace(label+" "+figure.String()))
		}
	}
	add("bore", i.Bore != nil && i.BoreText == "", i.Bore)
	if i.BoreText != "" {
		out = append(out, "bore "+i.BoreText)
	}
	add("ratio", i.Process.Ratio != nil, i.Process.Ratio)
	add("outside", i.Outside != nil, i.Outside)
	add("", i.Micron != nil, i.Micron)
	add("set at", i.Set != nil, i.Set)
	add("passes", i.Flow != nil && i.Set != nil, i.Flow)
	add("", i.Flow != nil && i.Set == nil, i.Flow)
	add("shut-off", i.Shutoff != nil, i.Shutoff)
	add("reads to", i.Scale != nil, i.Scale)
	add("vacuum", i.Vacuum != nil, i.Vacuum)
	add("rated", i.Kind.Loose && i.Rated != nil, i.Rated)
	return out
}
