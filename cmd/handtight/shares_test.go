package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// shares is a build of oil alone: a pack of ten and single bottles at one shop, single ones at another.
const shares = `[build]
name = "Oil alone"
currency = "NZD"
[[vendor]]
id = "near"
currency = "NZD"
minimum = "23.00"
[[vendor]]
id = "far"
currency = "NZD"
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "out"
kind = "drain"
[[run]]
name = "the boat's own, never bought"
path = ["sea", "out"]
[[item]]
id = "oil"
kind = "oil"
extra = 13
[[offer]]
item = "oil"
vendor = "near"
code = "N-10"
price = "2.00"
pack = 10
[[offer]]
item = "oil"
vendor = "near"
code = "N-1"
price = "3.10"
[[offer]]
item = "oil"
vendor = "far"
code = "F"
price = "3.00"
`

// Thirteen: ten in a pack at near are 20.00, and its minimum of 23.00 is reached by one bottle of
// 3.10; the other two are 6.00 at far. 29.10 in all.
func TestSharesOnTheListAndBack(t *testing.T) {
	dir := t.TempDir()
	build, list := filepath.Join(dir, "build.toml"), filepath.Join(dir, "list.xlsx")
	do := func(exit int, args ...string) {
		t.Helper()
		var out, errOut bytes.Buffer
		require.Equal(t, exit, run(args, strings.NewReader(""), &out, &errOut), errOut.String())
	}
	write := func(text string) { require.NoError(t, os.WriteFile(build, []byte(text), 0o644)) }
	write(shares)
	got := jsonOf(t, exitClear, "", "order", build, "--choose", "-o", list)
	require.Equal(t, "29.10", got["total"])
	rows := func() (*excelize.File, map[string]int, [][]string) {
		f, err := excelize.OpenFile(list)
		require.NoError(t, err)
		rows, err := f.GetRows("Buy")
		require.NoError(t, err)
		at := map[string]int{}
		for n, r := range rows {
			if len(r) > 0 {
				at[r[len(r)-1]] = n
			}
		}
		return f, at, rows
	}
	const pack, far = "line|near|oil || N-10", "line|far|oil"
	put := func(key, ordered, paid, received string) {
		f, at, _ := rows()
		require.Contains(t, at, key)
		for col, v := range map[int]string{7: ordered, 8: paid, 9: received} {
			cell, err := excelize.CoordinatesToCellName(col, at[key]+1)
			require.NoError(t, err)
			require.NoError(t, f.SetCellValue("Buy", cell, cellOf(t, v)))
		}
		require.NoError(t, f.Save())
		require.NoError(t, f.Close())
	}
	// the plain key is that of the offer that would be cheapest for all: the pack of ten is, in
	// two packs (40.00), against thirteen single ones (40.30)
	_, at, _ := rows()
	require.Contains(t, at, "line|near|oil || N-1")
	require.NotContains(t, at, pack)
	put("line|near|oil", "10", "1.9", "10")
	put("line|near|oil || N-1", "1", "3.3", "")
	put(far, "2", "", "1")
	do(exitClear, "order", build, "--choose", "-o", list)
	typed := func(key string) []string {
		_, at, r := rows()
		require.Contains(t, at, key)
		return r[at[key]][6:9]
	}
	require.Equal(t, []string{"10", "1.90", "10"}, typed("line|near|oil"))
	require.Equal(t, []string{"1", "3.30", ""}, typed("line|near|oil || N-1"))
	require.Equal(t, []string{"2", "", "1"}, typed(far))

	came := jsonOf(t, exitClear, "", "receive", build, list)
	require.Len(t, came["in"], 1)
	require.Len(t, came["out"], 2, "one bottle of near and one of far")
	diff := came["diff"].(string)
	require.Contains(t, diff, `+price = "1.90"`)
	require.Contains(t, diff, `+price = "3.30"`)
	require.NotContains(t, diff, `-price = "3.00"`)

	// a build that is changed: the bottle of near is no longer bought, and what was typed there is set aside
	write(strings.Replace(shares, "minimum = \"23.00\"\n", "", 1))
	do(exitClear, "order", build, "--choose", "-o", list)
	require.Equal(t, []string{"10", "1.90", "10"}, typed("line|near|oil"))
	require.Equal(t, []string{"2", "", "1"}, typed(far))
	f, at, _ := rows()
	require.NotContains(t, at, "line|near|oil || N-1")
	aside, err := f.GetRows("Set aside")
	require.NoError(t, err)
	text := ""
	for _, r := range aside {
		text += strings.Join(r, "|") + "\n"
	}
	require.Contains(t, text, "oil, N-1, near")
	require.Contains(t, text, "3.3")

}

// cellOf is a cell's number, and no text nothing.
func cellOf(t *testing.T, text string) any {
	if text == "" {
		return nil
	}
	f, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return f
}
