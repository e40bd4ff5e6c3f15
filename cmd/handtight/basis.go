package main

import (
	"slices"

	"handtight/bom/facts"
)

// basisOf names what a rating rests on, what lowered it, and that nobody has read the
// figure where it is so.
func basisOf(h *facts.Allowable) string {
	text := h.Basis
	if h.Derated {
		text += ", warm"
	}
	if h.Memory {
		text += ", from memory"
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
		{func(h facts.Allowable) bool { return h.Estimate }, "estimate = reckoned, and not stated by anyone: never enough on high pressure"},
		{func(h facts.Allowable) bool { return h.Claim }, "common claim = what such parts are commonly sold for, by no standard: ask for the data sheet"},
		{func(h facts.Allowable) bool { return h.Memory }, "from memory = nobody has looked the figure up in its source: less sure, so ask for the data sheet"},
	} {
		if slices.ContainsFunc(holds, n.is) {
			a.ui.say("", "%s", n.text)
		}
	}
}
