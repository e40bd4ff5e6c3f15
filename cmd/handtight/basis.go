package main

import (
	"slices"

	"handtight/bom"
	"handtight/pressure"
)

// basisOf names what a rating rests on, what lowered it, and that nobody has read the
// figure where it is so.
func basisOf(h bom.Hold) string {
	text := h.Rating.Basis.String()
	if h.Derated {
		text += ", warm"
	}
	if remembered(h) {
		text += ", from memory"
	}
	return text
}

// remembered reports whether a figure rests on memory: it is the least sure of all.
func remembered(h bom.Hold) bool { return h.Known && h.Rating.Status == pressure.Memory }

// printBasisNotes explains the words of [basisOf] that the holds of a table use.
func (a *app) printBasisNotes(holds []bom.Hold) {
	for _, n := range []struct {
		is   func(bom.Hold) bool
		text string
	}{
		{func(h bom.Hold) bool { return h.Derated }, "warm = lowered for the water and the air that [duty] says"},
		{func(h bom.Hold) bool { return h.Estimate }, "estimate = reckoned, and not stated by anyone: never enough on high pressure"},
		{func(h bom.Hold) bool { return h.Known && h.Rating.Basis == pressure.Claim }, "common claim = what such parts are commonly sold for, by no standard: ask for the data sheet"},
		{remembered, "from memory = nobody has looked the figure up in its source: less sure, so ask for the data sheet"},
	} {
		if slices.ContainsFunc(holds, n.is) {
			a.ui.say("", "%s", n.text)
		}
	}
}
