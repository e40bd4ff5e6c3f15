package source

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

func text(hint ...string) func(*Table) { return func(t *Table) { t.Text("k", hint...) } }

func TestWrongTypes(t *testing.T) {
	texts := func(hint ...string) func(*Table) { return func(t *Table) { t.Texts("k", hint...) } }
	whole := func(t *Table) { t.Whole("k") }
	truth := func(t *Table) { t.Bool("k") }
	date := func(t *Table) { t.Date("k") }
	table := func(t *Table) { t.Table("k") }
	tables := func(t *Table) { t.Tables("k") }
	rows := []struct {
		why, text string
		read      func(*Table)
		reason    string
		remedy    string
	}{
		{"a bare number where a unit is due", "k = 55", text("60 bar"),
			"`k` is the number 55 without its unit", "write the unit, in quotes: for example `k = \"55 bar\"`"},
		{"the number keeps its sign, loses its strokes", "k = -1_000.50 # C", text("45 C"),
			"`k` is the number -1_000.50 without its unit", "write the unit, in quotes: for example `k = \"-1000.50 C\"`"},
		{"a unit that stands close", "k = 5", text("7%"), "`k` is the number 5 without its unit", "write the unit, in quotes: for example `k = \"5%\"`"},
		{"money keeps the decimals that were typed", "k = 1.90", text("12.50"),
			"`k` is the number 1.90, and a text is due", "write it in quotes: `k = \"1.90\"`"},
		{"no hint: the number in quotes", "k = 7", text(), "`k` is the number 7, and a text is due", "write it in quotes: `k = \"7\"`"},
		{"a number of another base is no example", "k = 0xFF", text("5 bar"), "`k` is the number 0xFF, and a text is due", "write a text in quotes, for example `k = \"5 bar\"`"},
		{"a hint that is a word", "k = 7", text("NZD"), "`k` is the number 7, and a text is due", "write a text in quotes, for example `k = \"NZD\"`"},
		{"a hint with an inch mark", "k = 7", text(`G 3/8" male`), "`k` is the number 7, and a text is due", "write a text in quotes, for example `k = 'G 3/8\" male'`"},
		{"no number at all", "k = nan", text("5 bar"), "`k` is nan, which is no number of anything, and a text is due", "write a text in quotes, for example `k = \"5 bar\"`"},
		{"and none without end", "k = -inf", whole, "`k` is -inf, which is no number of anything, and a whole number is due", "write the number without quotes, for example `k = 1`"},
		{"true for a text", "k = true", text(), "`k` is true, and a text is due", "write it in quotes: `k = \"true\"`"},
		{"a day for a text", "k = 2026-11-20", text(), "`k` is the date or time 2026-11-20, and a text is due", "write it in quotes: `k = \"2026-11-20\"`"},
		{"a list for a text", "k = ['a']", text("5 bar"), "`k` is a list, and a text is due", "write a text in quotes, for example `k = \"5 bar\"`"},
		{"a table for a text, no hint", "k = { a = 1 }", text(), "`k` is a table, and a text is due", "write a text in quotes, for example `k = \"…\"`"},
		{"a list of tables for a text", "[[k]]", text(), "`k` is a list of tables, and a text is due", "write a text in quotes, for example `k = \"…\"`"},
		{"one text for a list", "k = 'a'", texts(), "`k` is the text \"a\", and a list of texts is due", "write `k = [\"a\"]`"},
		{"a number for a list", "k = 1", texts("pump"), "`k` is the number 1, and a list of texts is due", "write `k = [\"pump\"]`"},
		{"a number in a list", "k = ['a', 12]", texts(), "element 2 of `k` is the number 12, and a text is due", "write it in quotes: `\"12\"`"},
		{"a number in a list of sizes", "k = ['a', 12]", texts("5 mm"), "element 2 of `k` is the number 12 without its unit", "write the unit, in quotes: for example `\"12 mm\"`"},
		{"a whole number in quotes", "k = '2'", whole, "`k` is the text \"2\", and a whole number is due", "write the number without quotes, for example `k = 2`"},
		{"a whole number with decimals", "k = 2.0", whole, "`k` is the number 2.0, and a whole number is due", "write the number without quotes, for example `k = 2`"},
		{"half a part", "k = 2.5", whole, "`k` is the number 2.5, and a whole number is due", "write the number without quotes, for example `k = 1`"},
		{"yes in quotes", "k = 'yes'", truth, "`k` is the text \"yes\", and true or false is due", "write `k = true` or `k = false`"},
		{"a day in quotes", "k = '2026-01-02'", date, "`k` is the text \"2026-01-02\", and a day is due", "write year, month and day without quotes, for example `k = 2026-01-02`"},
		{"a day with its time", "k = 2026-01-02T10:00:00Z", date, "`k` is the date or time 2026-01-02T10:00:00Z, and a day is due", "write year, month and day without quotes, for example `k = 2026-01-02`"},
		{"a time without a day", "k = 10:00:00", date, "`k` is the date or time 10:00:00, and a day is due", "write year, month and day without quotes, for example `k = 2026-11-20`"},
		{"two brackets for a section", "[[k]]", table, "`k` is a list of tables, and one table is due", "write [k] once, and the keys below it"},
		{"a value for braces", "k = 5", table, "`k` is the number 5, and one table is due", "write `k = { name = value }`"},
		{"one bracket for a list of tables", "[k]", tables, "`k` is a table, and a list of tables is due", "write [[k]] with two brackets, and its keys below it"},
		{"a text in a list of tables", "k = ['a', {b=1}]", tables, "element 1 of `k` is the text \"a\", and a table is due", "write its keys between braces, { name = value }"},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			r, file := root(t, row.text)
			row.read(file)
			faults := r.Faults()
			require.Len(t, faults, 1)
			require.Equal(t, []string{row.reason, row.remedy}, []string{faults[0].Reason, faults[0].Remedy})
			require.Equal(t, 1, faults[0].Line)
		})
	}
}

func TestRequired(t *testing.T) {
	id := func(t *Table) { t.RequiredText("id", "hp-pump") }
	path := func(t *Table) { t.RequiredTexts("path", "intake") }
	rows := []struct {
		why, text string
		read      func(*Table)
		want      string
	}{
		{"missing from the file", "a = 1", id,
			"k.toml: `id` is missing from this file\n  add `id = \"hp-pump\"`"},
		{"missing from a section", "[k]", func(f *Table) { s, _ := f.Table("k"); id(s) },
			"k.toml line 1, column 2: `id` is missing from [k]\n    [k]\n  add `id = \"hp-pump\"`"},
		{"missing from an element", "[[k]]\n[[k]]\nid = '1'", func(f *Table) { all := f.Tables("k"); id(all[0]); id(all[1]) },
			"k.toml line 1, column 3: `id` is missing from this [[k]]\n    [[k]]\n  add `id = \"hp-pump\"`"},
		{"missing from a table within", "[[k]]\np = {}", func(f *Table) { p, _ := f.Tables("k")[0].Table("p"); p.RequiredText("id") },
			"k.toml line 2, column 1: `id` is missing from [k.p]\n    p = {}\n  add `id = \"…\"`"},
		{"empty", "id = ' '", id, "k.toml line 1, column 6: `id` is empty\n    id = ' '\n  write `id = \"hp-pump\"`"},
		{"of a wrong type", "id = 5", id, "k.toml line 1, column 6: `id` is the number 5, and a text is due\n    id = 5\n  write a text in quotes, for example `id = \"hp-pump\"`"},
		{"a list missing", "a = 1", path, "k.toml: `path` is missing from this file\n  add `path = [\"intake\"]`"},
		{"a list that is empty", "path = []", path, "k.toml line 1, column 8: `path` is an empty list\n    path = []\n  write `path = [\"intake\"]`"},
		{"a list of a wrong type", "path = [1]", path,
			"k.toml line 1, column 9: element 1 of `path` is the number 1, and a text is due\n    path = [1]\n  write a text in quotes, for example `\"intake\"`"},
		{"a list as it should be", "path = ['a']", path, ""},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			r, file := root(t, row.text)
			row.read(file)
			require.Equal(t, row.want, r.Faults().Error())
		})
	}
}

func TestAFaultyListIsNotHalfRead(t *testing.T) {
	r, file := root(t, "k = ['a', 1, 2]")
	list, ok := file.RequiredTexts("k")
	require.False(t, ok)
	require.Nil(t, list)
	require.Len(t, r.Faults(), 2, "each element that is wrong is named")
}
