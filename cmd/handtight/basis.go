package main

import (
	"slices"

	"handtight/bom/facts"
)

// basisOf names what a rating rests on, what lowered it, and that nobody has read the
// figure where it is so.
func basisOf(h *facts.Allowable) string {
	text := h.Basis
	switch { // short, so that a table holds them: the notes below it say the whole
	case h.Series:
		text = "maker's series"
	case h.Other:
		text = "another size's"
	}
	if h.Derated {
		text += ", warm"
	}
	switch {
	case h.Memory:
		text += ", from memory"
	case h.Mixed:
		text += ", size from memory"
	}
	return text
}

// printBasisNotes explains the words of [basisOf] that the holds of a table use.
func (a *app) printBasisNotes(holds []facts.Allowable) {
	for _, n := range []struct {
		is   func(facts.Allowable) bool
		text string
	}{
		{func(h facts.Allowable) bool { return h.Derated }, "warm = lowered for the water and the air that [duty] says"},
		{func(h facts.Allowable) bool { return h.Estimate && !h.Series && !h.Other }, "estimate = reckoned, and not stated by anyone: never enough on high pressure"},
		{func(h facts.Allowable) bool { return h.Series }, "maker's series = a maker's series, not the standard, which is not known to say anything of the size: never enough on high pressure"},
		{func(h facts.Allowable) bool { return h.Other }, "another size's = size not in the table, and the figure that of another: never enough on high pressure"},
		{func(h facts.Allowable) bool { return h.Claim }, "common claim = what such parts are commonly sold for, by no standard: ask for the data sheet"},
		{func(h facts.Allowable) bool { return h.Memory || h.Mixed }, "from memory = nobody has looked the figure up in its source: less sure, so ask for the data sheet"},
	} {
		if slices.ContainsFunc(holds, n.is) {
			a.ui.say("", "%s", n.text)
		}
	}
}
