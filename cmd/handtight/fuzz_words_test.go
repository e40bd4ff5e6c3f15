package main

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Any words as ends and as a shop's line: each command that takes them ends in one of its
// ways, drives no terminal and says the same twice; the two ways round of a joint are one
// verdict.
func FuzzWords(f *testing.F) {
	for _, pair := range [][2]string{
		{"1/2 NPT male", "Rc 1/2"}, {"G 3/4 female swivel", "3/4 NPT male left hand"}, {"M22x1.5 24 cone DKOL", "15 mm tube"},
		{"7/16-20 JIC male", "1/4 SAE 45 flare"}, {"10 mm push-in", "hose 1/2"}, {"", "-"}, {"\u202e1/2", "½\u0000 NPT"}, {"1/2 NPT F x M", "2 x G 1/2"},
		{"--json", "-h"}, {"999999999999/1 NPT", "1e999 mm"},
	} {
		f.Add(pair[0], pair[1])
	}
	f.Fuzz(func(t *testing.T, one, two string) {
		if len(one) > 200 || len(two) > 200 {
			return
		}
		do := func(args ...string) (int, string) {
			var out, errOut bytes.Buffer
			status := run(args, strings.NewReader(""), &out, &errOut)
			require.Contains(t, []int{exitClear, exitStops, exitFault}, status)
			require.False(t, strings.ContainsFunc(out.String()+errOut.String(), drives), "%q", out.String()+errOut.String())
			return status, out.String()
		}
		for _, command := range [][]string{{"mate"}, {"adapt", "--bar", "60"}, {"adapt", "--below", "--water", "sea"}} {
			words := append(append([]string{}, command...), "--", one, two)
			status, said := do(words...)
			again, same := do(words...)
			require.Equal(t, status, again)
			require.Equal(t, said, same)
		}
		there, _ := do("mate", "--", one, two)
		back, _ := do("mate", "--", two, one)
		require.Equal(t, there, back, "a joint is the same from both sides")
		if status, said := do("mate", "--json", "--", one, two); status != exitFault {
			require.True(t, json.Valid([]byte(said)), said)
		}
		first, _ := do("thread", "--", one)
		second, said := do("thread", "--json", "--", one)
		require.Equal(t, first, second)
		if first != exitFault {
			require.True(t, json.Valid([]byte(said)), said)
		}
		_, _ = do("catalog", "--", one)
		_, _ = do("why", "--", one)
	})
}
