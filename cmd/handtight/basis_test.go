package main

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/facts"
	"handtight/bom/rating"
	"handtight/pressure"
)

// What a rating rests on is said in words, least sure last, and the words that are used
// are explained once.
func TestBasisWords(t *testing.T) {
	hold := func(b pressure.Basis, s pressure.Status, warm bool) facts.Allowable {
		return facts.AllowableOf(rating.Allowable{Known: true, Rating: pressure.Rating{Basis: b, Status: s}, Derated: warm, Estimate: b == pressure.Estimate})
	}
	for _, c := range []struct {
		hold facts.Allowable
		want string
	}{
		{hold(pressure.HoseStandard, pressure.Seen, false), "hose standard"},
		{hold(pressure.HoseStandard, pressure.Memory, false), "hose standard, from memory"},
		{hold(pressure.DataSheet, pressure.Stated, true), "data sheet, warm"},
		{hold(pressure.Estimate, pressure.Memory, true), "estimate, warm, from memory"},
		{hold(pressure.Claim, pressure.Memory, false), "common claim, from memory"},
	} {
		require.Equal(t, c.want, basisOf(&c.hold))
	}
	notes := func(list ...facts.Allowable) string {
		var out bytes.Buffer
		(&app{ui: &ui{out: &out, width: plainWidth}}).printBasisNotes(list)
		return out.String()
	}
	require.Empty(t, notes(hold(pressure.HoseStandard, pressure.Seen, false), facts.AllowableOf(rating.Allowable{Rating: pressure.Rating{Status: pressure.Memory}})))
	require.Contains(t, notes(hold(pressure.HoseStandard, pressure.Memory, false)), "from memory = ")
	all := notes(hold(pressure.Claim, pressure.Memory, true), hold(pressure.Estimate, pressure.Computed, false))
	for _, word := range []string{"warm = ", "estimate = ", "common claim = ", "from memory = "} {
		require.Contains(t, all, word)
	}
}
