package source

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func root(t require.TestingT, text string) (*Reader, *Table) {
	r := NewReader(parsed(t, text))
	return r, r.Root()
}

func TestReadingPlainCode(t *testing.T) {
	r, file := root(t, `
[build]
name = "Kittiwake"
include = ["a.toml", "b.toml"]
[[item]]
id = "pump"
have = 1
below = true
ports = { in = "1/2 NPT", out = "3/8 NPT" }
[[item]]
id = "tee"
[rates]
date = 2026-11-20
`)
	build, ok := file.Table("build")
	require.True(t, ok)
	name, ok := build.RequiredText("name")
	require.True(t, ok)
	require.Equal(t, "Kittiwake", name)
	require.Equal(t, []string{"a.toml", "b.toml"}, build.Texts("include"))
	require.Equal(t, Place{"k.toml", 4, 22, `include = ["a.toml", "b.toml"]`}, build.Place("include", 1))
	build.Done()

	items := file.Tables("item")
	require.Len(t, items, 2)
	id, _ := items[0].RequiredText("id")
	have, ok := items[0].Whole("have")
	require.True(t, ok)
	below, ok := items[0].Bool("below")
	require.True(t, ok)
	require.Equal(t, []any{"pump", 1, true}, []any{id, have, below})
	ports, ok := items[0].Table("ports")
	require.True(t, ok)
	require.Equal(t, []string{"in", "out"}, ports.Keys())
	require.Equal(t, Path{"item", 0, "ports", "out"}, ports.path("out"))
	require.Equal(t, 27, ports.keyPlace("out").Column)
	require.Equal(t, 33, ports.Place("out").Column)
	require.Equal(t, Path{"item", 0, "ports"}, ports.path())
	for _, key := range ports.Keys() {
		_, ok := ports.Text(key)
		require.True(t, ok)
	}
	ports.Done()
	items[0].Done()

	_, ok = items[1].Text("about")
	require.False(t, ok, "a missing key is no fault unless it is required")
	_, ok = items[1].Whole("have")
	require.False(t, ok)
	_, ok = items[1].Bool("below")
	require.False(t, ok)
	_, ok = items[1].Table("ports")
	require.False(t, ok)
	_, ok = items[1].Date("date")
	require.False(t, ok)
	require.Nil(t, items[1].Texts("ends"))
	require.Nil(t, items[1].Tables("part"))
	require.True(t, items[1].Has("id"))
	require.Equal(t, 10, items[1].Here().Line)
	require.Equal(t, items[1].Here(), items[1].Place("about"), "without the key, the place is the table's")
	require.Equal(t, items[1].Here(), items[1].keyPlace("about"))
	items[1].Done()

	rates, _ := file.Table("rates")
	date, ok := rates.Date("date")
	require.True(t, ok)
	require.Equal(t, "2026-11-20T00:00:00Z", date.Format("2006-01-02T15:04:05Z07:00"))
	rates.Done()
	file.Done()
	require.Empty(t, r.Faults())
	require.Equal(t, Place{File: "k.toml"}, file.Here())
	require.Equal(t, "k.toml", r.Document().File())
}

func TestDone(t *testing.T) {
	rows := []struct {
		why, text string
		read      func(*Table)
		want      string
	}{
		{"a misspelt key gets the nearest that was asked for", "ports_ = 1", func(f *Table) { f.Text("ports") },
			"k.toml line 1, column 1: unknown key `ports_`\n    ports_ = 1\n  write `ports`"},
		{"capitals count", "ID = 1", func(f *Table) { f.Text("id") },
			"k.toml line 1, column 1: unknown key `ID`: capitals count in a key\n    ID = 1\n  write `id`"},
		{"nothing near: the keys that were asked for, once each and sorted", "colour = 1", func(f *Table) { f.Text("id"); f.Text("id"); f.Text("about") },
			"k.toml line 1, column 1: unknown key `colour`\n    colour = 1\n  remove it; the keys here are about, id"},
		{"nothing was asked for", "a = 1", func(*Table) {}, "k.toml line 1, column 1: unknown key `a`\n    a = 1\n  remove it"},
		{"a key that is known but not read is taken, and offered", "micron = 5\nmicrn = 5", func(f *Table) { f.Known("micron", "scale") },
			"k.toml line 2, column 1: unknown key `micrn`\n    micrn = 5\n  write `micron`"},
		{"a key that needs quotes", `"in let" = 1`, func(f *Table) { f.Text("inlet") },
			"k.toml line 1, column 1: unknown key `\"in let\"`\n    \"in let\" = 1\n  write `inlet`"},
		{"a misspelt section, at its name", "[dutty]\na = 1", func(f *Table) { f.Table("duty") },
			"k.toml line 1, column 2: unknown key `dutty`\n    [dutty]\n  write `duty`"},
		{"a misspelt list, once", "[[itm]]\n[[itm]]", func(f *Table) { f.Tables("item") },
			"k.toml line 1, column 3: unknown key `itm`\n    [[itm]]\n  write `item`"},
		{"the tables within speak for themselves", "[a]\nx = 1", func(f *Table) { f.Table("a") }, ""},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			r, file := root(t, row.text)
			row.read(file)
			file.Done()
			require.Equal(t, row.want, r.Faults().Error())
		})
	}
}

func TestFaultsOfTheCaller(t *testing.T) {
	r, file := root(t, "[[run]]\nname = \"raw\"\npath = [\"a\",\n  \"b\"]\n[[run]]\nname = \"b\"\n")
	runs := file.Tables("run")
	runs[1].FaultHere("a run without a path", "add one")
	runs[1].Fault("path", "no path", "add it")
	runs[0].FaultAt("no item `b`", "name an item", "path", 1)
	runs[0].FaultAt("no item `c`", "name an item", "path", 7)
	runs[0].Fault("name", "a name that is taken", "take another")
	runs[0].Fault("name", "a name that is taken", "take another")
	require.Equal(t, Faults{
		{Place{"k.toml", 2, 8, `name = "raw"`}, "a name that is taken", "take another"},
		{Place{"k.toml", 3, 8, `path = ["a",`}, "no item `c`", "name an item"},
		{Place{"k.toml", 4, 3, `  "b"]`}, "no item `b`", "name an item"},
		{Place{"k.toml", 5, 3, `[[run]]`}, "a run without a path", "add one"},
		{Place{"k.toml", 5, 3, `[[run]]`}, "no path", "add it"},
	}, r.Faults(), "in the order of the text, each once")
}

func TestReadingKeepsGoingAfterDone(t *testing.T) {
	r, file := root(t, "[[i]]\na = 1\n[[i]]\nb = 2\n")
	for _, item := range file.Tables("i") {
		item.Known("a")
		item.Done()
		item.Known("b")
		item.Done()
	}
	require.Equal(t, []string{
		"unknown key `a`", "unknown key `b`",
	}, []string{r.Faults()[0].Reason, r.Faults()[1].Reason}, "each table has its own list of asked keys")
	require.Len(t, r.Faults(), 2)
}

// A reader that knows what a key means says so; the other unknown keys are answered as ever.
func TestDoneWithWhatIsMeant(t *testing.T) {
	r, file := root(t, "size = 1\nbroe = 2\nbore = 3\n")
	file.Known("bore")
	file.DoneWith(func(key string) (string, bool) { return "write `bore`, the inside", key == "size" })
	var got []string
	for _, f := range r.Faults() {
		got = append(got, f.Reason+": "+f.Remedy)
	}
	require.ElementsMatch(t, []string{"unknown key `size`: write `bore`, the inside", "unknown key `broe`: write `bore`"}, got)
}
