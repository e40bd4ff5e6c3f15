package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// boughtList is the clean build in a folder of its own, with a list that somebody bought by.
func boughtList(t *testing.T) (build, list string) {
	t.Helper()
	dir := t.TempDir()
	for _, name := range []string{"build.toml", "fittings.toml"} {
		text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "clean", name))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), text, 0o644))
	}
	build, list = filepath.Join(dir, "build.toml"), filepath.Join(dir, "list.xlsx")
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
	type cells map[string]any
	put := func(row int, c cells) {
		require.Positive(t, row)
		for col, v := range c {
			require.NoError(t, f.SetCellValue("Buy", fmt.Sprint(col, row), v))
		}
	}
	put(at["line|elbe|hp-gauge"], cells{"G": "yes", "H": 33.5, "I": 1})
	put(at["line|elbe|tail-g34"], cells{"G": 3, "I": 2, "L": "third on Monday"})
	put(at["line|pier|relief"], cells{"G": "soon"})
	put(at["line|elbe|jic-n12"], cells{"G": 0})
	put(at["line|wharf|oil"], cells{"E": 17.5, "G": 1, "I": "yes"}) // written over the list's price
	put(at["besides"]+1, cells{"A": "elbe EUR", "B": "Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar", "D": 3, "E": 12.1})
	put(at["besides"]+2, cells{"A": "wharf NZD", "B": "Adaptor R 1/2 male x 9/16-18 JIC male, 316, 270 bar", "D": 1, "E": 9})
	put(at["besides"]+3, cells{"B": "sun hat", "D": 1, "I": "1", "L": "for Ana"})
	put(at["line|elbe|hp-tee"], cells{"G": 1, "I": 3})
	put(at["line|wharf|strainer"], cells{"G": 1, "I": 1, "L": "came as 3/4 NPT"})
	require.NoError(t, f.RemoveRow("Buy", at["line|wharf|tape 12 mm"])) // the last line: nothing else moves
	require.NoError(t, f.Save())
	require.NoError(t, f.Close())
	return build, list
}

func TestReceive(t *testing.T) {
	build, list := boughtList(t)
	got := jsonOf(t, exitStops, "", "receive", build, list)
	line := func(key string, n int) map[string]any { return got[key].([]any)[n].(map[string]any) }
	require.Len(t, got["out"], 1)
	require.Equal(t, []any{"tail-g34", "3", "2", "1", "third on Monday"}, []any{line("out", 0)["item"], line("out", 0)["ordered"], line("out", 0)["received"], line("out", 0)["short"], line("out", 0)["remark"]})
	require.Len(t, got["in"], 4)
	require.Equal(t, []any{"hp-gauge", "hp-tee", "strainer", "oil"}, []any{line("in", 0)["item"], line("in", 1)["item"], line("in", 2)["item"], line("in", 3)["item"]})
	require.Equal(t, []any{"", "2", ""}, []any{line("in", 0)["over"], line("in", 1)["over"], line("in", 2)["over"]})
	require.Len(t, got["missing"], 1)
	require.Equal(t, []any{"tape 12 mm", "wharf", "1"}, []any{line("missing", 0)["item"], line("missing", 0)["vendor"], line("missing", 0)["order"]})
	require.Equal(t, []any{"relief", "soon"}, []any{line("unclear", 0)["item"], line("unclear", 0)["said"]})
	require.Len(t, got["not_ordered"], 43, "50 lines less those six, and one that lost its row")
	require.Equal(t, []any{"jic-n12", "not ordered", true}, []any{line("besides", 0)["item"], line("besides", 0)["place"], line("besides", 0)["does"]})
	require.Equal(t, []any{"jic-n12", "wrong-thread", false}, []any{line("besides", 1)["item"], line("besides", 1)["status"], line("besides", 1)["does"]})
	require.Contains(t, line("besides", 1)["reason"], "55 degree")
	require.Equal(t, []any{"", "1", "for Ana"}, []any{line("besides", 2)["item"], line("besides", 2)["received"], line("besides", 2)["remark"]})
	prices := map[string]string{}
	for _, p := range got["prices"].([]any) {
		m := p.(map[string]any)
		prices[fmt.Sprint(m["item"], " at ", m["vendor"])] = fmt.Sprint(m["was"], " ", m["paid"])
	}
	require.Equal(t, map[string]string{"hp-gauge at elbe": "31.20 33.5", "jic-n12 at elbe": "11.75 12.1", "oil at wharf": "18.90 17.5"}, prices)
	require.Contains(t, got["diff"], `+price  = "33.50"`)
	require.Empty(t, got["written"])

	before, err := os.ReadFile(filepath.Join(filepath.Dir(build), "fittings.toml"))
	require.NoError(t, err)
	var out, errOut bytes.Buffer
	require.Equal(t, exitStops, run([]string{"receive", build, list, "--amend"}, strings.NewReader(""), &out, &errOut), errOut.String())
	require.Contains(t, out.String(), "Written: ")
	kept, err := os.ReadFile(filepath.Join(filepath.Dir(build), "fittings.issue-1.toml"))
	require.NoError(t, err)
	require.Equal(t, string(before), string(kept))
	now, err := os.ReadFile(filepath.Join(filepath.Dir(build), "fittings.toml"))
	require.NoError(t, err)
	require.Len(t, strings.Split(string(now), "\n"), len(strings.Split(string(before), "\n")), "three prices, and nothing else")
	again := jsonOf(t, exitStops, "", "receive", build, list)
	require.Empty(t, again["prices"], "the offers know them now")
	require.Empty(t, again["diff"])

	out.Reset()
	require.Equal(t, exitStops, run([]string{"receive", build, list}, strings.NewReader(""), &out, &errOut))
	for _, want := range []string{"4 here, 1 still out, 43 not ordered, 1 unclear, 3 bought besides", "no row of this book - 1 of tape 12 mm", "2 more of hp-tee at elbe", "strainer at wharf (came as 3/4 NPT)", "sun hat, received: 1 (for Ana)", "- 1 of tail-g34 at elbe, 2 came (third on Monday)", "does as jic-n12, which is not ordered"} {
		require.Contains(t, strings.Join(strings.Fields(out.String()), " "), want)
	}
}

func TestReceiveRefuses(t *testing.T) {
	build, list := boughtList(t)
	for _, args := range [][]string{{"receive", build, build}, {"receive", build, list + "x"}, {"receive", "-", list}, {"receive", build}} {
		var out, errOut bytes.Buffer
		require.Equal(t, exitFault, run(args, strings.NewReader(""), &out, &errOut))
		require.Empty(t, out.String())
		require.NotEmpty(t, errOut.String())
	}
}
