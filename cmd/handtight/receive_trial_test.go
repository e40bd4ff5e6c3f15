package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// trial is one thing that a buyer did to the list of the clean build, and the right answer, written
// before the command saw it.
type trial struct {
	what string
	key  string // of a line; "" of a row of what was bought besides
	row  int    // of those, from 1
	put  map[string]any
	want string // the list of the answer that the item stands in, with what it says of it
}

var trials = []trial{
	{"ordered and here, in a word", "line|wharf|strainer", 0, map[string]any{"G": "yes", "I": "yes"}, "in strainer"},
	{"two ordered, one came", "line|elbe|hp-hose-feed", 0, map[string]any{"G": 2, "I": 1}, "out hp-hose-feed short 1"},
	{"here in full, and nobody wrote that it was ordered", "line|elbe|tail-n38", 0, map[string]any{"I": 3}, "in tail-n38"},
	{"fewer ordered than the list asks, and all of those came: eight are still to be had", "line|elbe|bonded washer G 3/4", 0, map[string]any{"G": 2, "I": 2}, "out bonded washer G 3/4 short 8"},
	{"paid more than the offer says", "line|elbe|tail-g34", 0, map[string]any{"G": 3, "H": 7.1, "I": 3}, "in tail-g34; price tail-g34 6.35 7.1"},
	{"ordered, none came, as a number", "line|pier|hp-pump", 0, map[string]any{"G": 1, "I": 0}, "out hp-pump short 1"},
	{"ordered, none came, in a word", "line|pier|relief", 0, map[string]any{"G": "yes", "I": "no"}, "out relief short 2"},
	{"a number in letters is asked about, not guessed", "line|wharf|cartridge-25", 0, map[string]any{"G": "yes", "I": "two"}, "unclear cartridge-25 two"},
	{"a price with a comma, as text", "line|elbe|hp-gauge", 0, map[string]any{"G": 1, "H": "33,50", "I": 1}, "in hp-gauge; price hp-gauge 31.20 33.50"},
	{"more came than was ordered", "line|wharf|tail-n34", 0, map[string]any{"G": 3, "I": 4}, "in tail-n34"},
	{"in the place of one that was not ordered, and it does", "", 1, map[string]any{"A": "elbe EUR", "B": "Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar", "D": 3, "E": 12.1}, "besides jic-n12 not ordered true"},
	{"in the place of one, with the thread of another continent", "", 2, map[string]any{"A": "wharf NZD", "B": "Tee G 3/8 female x G 3/8 male x 1/4 NPT female, 316, class 3000, forged", "D": 1, "E": 19}, "besides hp-tee not ordered false"},
}

// Twelve things that buyers do, each answered as was written down before.
func TestReceiveTrial(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"build.toml", "fittings.toml"} {
		text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "clean", name))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), text, 0o644))
	}
	build, list := filepath.Join(dir, "build.toml"), filepath.Join(dir, "list.xlsx")
	var out, errOut bytes.Buffer
	require.Equal(t, exitClear, run([]string{"order", build, "-o", list}, strings.NewReader(""), &out, &errOut), errOut.String())
	f, err := excelize.OpenFile(list)
	require.NoError(t, err)
	rows, err := f.GetRows("Buy")
	require.NoError(t, err)
	at := map[string]int{}
	for n, r := range rows {
		if len(r) > 0 {
			at[r[len(r)-1]] = n + 1
		}
	}
	for _, x := range trials {
		row := at[x.key]
		if x.key == "" {
			row = at["besides"] + x.row
		}
		require.Positive(t, row, x.key)
		for col, v := range x.put {
			require.NoError(t, f.SetCellValue("Buy", fmt.Sprint(col, row), v))
		}
	}
	require.NoError(t, f.Save())
	require.NoError(t, f.Close())
	got := answers(jsonOf(t, exitStops, "", "receive", build, list))
	right := 0
	for _, x := range trials {
		found := true
		for _, want := range strings.Split(x.want, "; ") {
			found = found && slices.Contains(got, want)
		}
		if found {
			right++
		} else {
			t.Errorf("%s: %q is not among\n%s", x.what, x.want, strings.Join(got, "\n"))
		}
	}
	t.Logf("%d of %d right", right, len(trials))
}

// answers are what the command says, a line each.
func answers(got map[string]any) []string {
	var out []string
	each := func(key string, say func(m map[string]any) string) {
		for _, x := range got[key].([]any) {
			out = append(out, strings.TrimSpace(say(x.(map[string]any))))
		}
	}
	each("in", func(m map[string]any) string { return fmt.Sprint("in ", m["item"]) })
	each("out", func(m map[string]any) string { return fmt.Sprintf("out %v short %v", m["item"], m["short"]) })
	each("unclear", func(m map[string]any) string { return fmt.Sprintf("unclear %v %v", m["item"], m["said"]) })
	each("besides", func(m map[string]any) string {
		return fmt.Sprintf("besides %v %v %v", m["item"], m["place"], m["does"])
	})
	each("prices", func(m map[string]any) string { return fmt.Sprintf("price %v %v %v", m["item"], m["was"], m["paid"]) })
	return out
}
