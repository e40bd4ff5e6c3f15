package source

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

// Whole messages are compared: they are what a person gets.
var syntaxRows = []struct{ why, text, want string }{
	{"a value with its unit needs quotes",
		"a = 1\npressure = 55 bar\nb = 1\n",
		"k.toml line 2, column 15: `pressure` is not in quotes\n" +
			"    pressure = 55 bar\n" +
			"  write `pressure = \"55 bar\"`"},
	{"a comment is no part of the value shown",
		"rated = 55 bar # as sold\n",
		"k.toml line 1, column 12: `rated` is not in quotes\n" +
			"    rated = 55 bar # as sold\n" +
			"  write `rated = \"55 bar\"`"},
	{"a size is text",
		"bore = 1/2 NPT\n",
		"k.toml line 1, column 9: `bore` is not in quotes\n" +
			"    bore = 1/2 NPT\n" +
			"  write `bore = \"1/2 NPT\"`"},
	{"columns count code points",
		"a = '°°' 17 °C\n",
		"k.toml line 1, column 10: more follows the text\n" +
			"    a = '°°' 17 °C\n" +
			"  put all of it between the quotes; behind them only a comment with # may stand"},
	{"a word needs quotes",
		"name = Kittiwake\n",
		"k.toml line 1, column 8: a text without quotes: Kittiwake\n" +
			"    name = Kittiwake\n" +
			"  write `name = \"Kittiwake\"`"},
	{"an inch mark ends a text in double quotes",
		"bore = \"3/8\"\"\n",
		"k.toml line 1, column 13: an inch mark ends the text too early\n" +
			"    bore = \"3/8\"\"\n" +
			"  write `bore = '3/8\"'`"},
	{"and does so within braces",
		"p = { in = \"1/2\" NPT\", out = 1 }\n",
		"k.toml line 1, column 18: an inch mark ends the text too early\n" +
			"    p = { in = \"1/2\" NPT\", out = 1 }\n" +
			"  write `'1/2\" NPT'`"},
	{"two feet marks end a text in single quotes",
		"a = '3/8'' NPT'\n",
		"k.toml line 1, column 10: a quote mark ends the text too early\n" +
			"    a = '3/8'' NPT'\n" +
			"  write `a = \"3/8'' NPT\"`"},
	{"words behind a text",
		"id = \"b\" x\n",
		"k.toml line 1, column 10: more follows the text\n" +
			"    id = \"b\" x\n" +
			"  put all of it between the quotes; behind them only a comment with # may stand"},
	{"a day that the calendar lacks",
		"d = 2026-13-40\n",
		"k.toml line 1, column 5: this is no date of the calendar, and no time\n" +
			"    d = 2026-13-40\n" +
			"  write a date as 2026-11-20 (year, month, day), or put the text in quotes"},
	{"a key written twice in one part: the next header was forgotten",
		"[[item]]\nid = \"a\"\nprice = 1\nid = \"b\"\n",
		"k.toml line 4, column 1: `id` is already written on line 2\n" +
			"    id = \"b\"\n" +
			"  keep one of the two; if another part begins here, write [[item]] above it"},
	{"a key written twice outside any part",
		"a = \"b\" # c\na = 2",
		"k.toml line 2, column 1: `a` is already written on line 1\n" +
			"    a = 2\n" +
			"  keep one of the two"},
	{"a section written twice",
		"[duty]\na = 1\n[duty]\nb = 1\n",
		"k.toml line 3, column 2: [duty] is already written on line 1\n" +
			"    [duty]\n" +
			"  put the keys of both under one header; of a list of parts, each header has two brackets"},
	{"a section and a list of one name",
		"[item]\n[[item]]\n",
		"k.toml line 2, column 3: `item` is already written, without two brackets, on line 1\n" +
			"    [[item]]\n" +
			"  write [[item]] both times, or rename one of the two"},
	{"a value and a section of one name",
		"item = 1\n[item.ports]\na = 1\n",
		"k.toml line 2, column 2: `item` is already given a value, and cannot hold keys too\n" +
			"    [item.ports]\n" +
			"  rename one of the two"},
	{"a value and a dotted key of one name",
		"item = 1\nitem.ports = 1\n",
		"k.toml line 2, column 1: `item` is already written\n" +
			"    item.ports = 1\n" +
			"  keep one of the two"},
	{"a list and a list of tables of one name",
		"item = []\n[[item]]\n",
		"k.toml line 2, column 3: `item` is already written, without two brackets, on line 1\n" +
			"    [[item]]\n" +
			"  write [[item]] both times, or rename one of the two"},
	{"twice within braces",
		"a = { b = 1, b = 2 }",
		"k.toml line 1, column 14: `b` is already written on line 1\n" +
			"    a = { b = 1, b = 2 }\n" +
			"  keep one of the two"},
	{"a length that is cut",
		"a = ['x' y \"z\" w]",
		"k.toml line 1, column 10: a comma or a closing bracket is missing before this\n" +
			"    a = ['x' y \"z\" w]\n" +
			"  put a comma between one value and the next"},
	{"a date in a list without a comma",
		"a = [2026-11-20 b]",
		"k.toml line 1, column 17: a value with its unit is not in quotes\n" +
			"    a = [2026-11-20 b]\n" +
			"  write `\"2026-11-20 b\"`"},
	{"not a literal quote: a word then an inch mark in single quotes",
		"a = \"it's 3/8\" NPT\"",
		"k.toml line 1, column 16: an inch mark ends the text too early\n" +
			"    a = \"it's 3/8\" NPT\"\n" +
			"  put the text in three single quotes: '''…'''"},
	{"a section of a table in braces",
		"a = { b = 1 }\n[a]\n",
		"k.toml line 2, column 2: [a] is already written on line 1\n" +
			"    [a]\n" +
			"  put the keys of both under one header; of a list of parts, each header has two brackets"},
	{"a bad bracket at the left margin of a list",
		"p = [\n[1]\n[2]\n]\n[a]\nb = 5 bar",
		"k.toml line 3, column 1: a comma or a closing bracket is missing before this\n" +
			"    [2]\n" +
			"  put a comma between one value and the next\n" +
			"\n" +
			"k.toml line 6, column 7: `b` is not in quotes\n" +
			"    b = 5 bar\n" +
			"  write `b = \"5 bar\"`"},
	{"a bracket too many for a part",
		"[[item]]]\n",
		"k.toml line 1, column 9: a bracket too many\n" +
			"    [[item]]]\n" +
			"  write [[item]]"},
	{"words in a header",
		"[item hp pump]\n",
		"k.toml line 1, column 7: the name in the brackets is not one word\n" +
			"    [item hp pump]\n" +
			"  write [item_hp_pump]"},
	{"a value of brackets, then more",
		"a = [1] 2",
		"k.toml line 1, column 9: more follows the value\n" +
			"    a = [1] 2\n" +
			"  write one key = value on a line, a section as [name], a part as [[name]], and text in quotes"},
	{"nothing in a list's place",
		"a = [1,,2]",
		"k.toml line 1, column 8: a comma with nothing before it\n" +
			"    a = [1,,2]\n" +
			"  remove the comma"},
	{"a text that holds both quotes, without any around it",
		"a = it's 3/8\"",
		"k.toml line 1, column 5: a text without quotes: it's 3/8\"\n" +
			"    a = it's 3/8\"\n" +
			"  put the text in three single quotes: '''…'''"},
	{"a sign without a number",
		"a = +",
		"k.toml line 1, column 5: this is not a number as TOML writes one\n" +
			"    a = +\n" +
			"  write digits, with a point between digits; or, as text, `a = \"+\"`"},
	{"the text ends behind =",
		"a =",
		"k.toml line 1, column 3: `a` has no value\n" +
			"    a =\n" +
			"  write one behind the =, or remove the line"},
	{"the text ends within a header",
		"[a",
		"k.toml line 1, column 2: the header is not closed\n" +
			"    [a\n" +
			"  write [a]"},
	{"a colon and nothing behind it",
		"a:",
		"k.toml line 1, column 2: a colon stands where = is due\n" +
			"    a:\n" +
			"  write `a = …`"},
	{"words that are no pair",
		"some words",
		"k.toml line 1, column 6: this line has no =\n" +
			"    some words\n" +
			"  write one key = value on a line, a section as [name], a part as [[name]], and text in quotes"},
	{"a word processor's quotes",
		"p = “55 bar”\n",
		"k.toml line 1, column 5: curly quotes do not hold a text\n" +
			"    p = “55 bar”\n" +
			"  write straight quotes: `p = \"55 bar\"`"},
	{"a colon for an equals sign, before a number",
		"key: 5\n",
		"k.toml line 1, column 4: a colon stands where = is due\n" +
			"    key: 5\n" +
			"  write `key = 5`"},
	{"a colon for an equals sign, before a text",
		"key: some text\n",
		"k.toml line 1, column 4: a colon stands where = is due\n" +
			"    key: some text\n" +
			"  write `key = \"some text\"`"},
	{"a decimal comma",
		"price = 1,90\n",
		"k.toml line 1, column 10: `price` is a number with a decimal comma\n" +
			"    price = 1,90\n" +
			"  write `price = \"1.90\"`"},
	{"a comma at the end of a line",
		"n = \"x\",\n",
		"k.toml line 1, column 8: a comma ends this line\n" +
			"    n = \"x\",\n" +
			"  remove the comma: `n = \"x\"`"},
	{"a quote that is not closed",
		"n = \"abc\nb = 1\n",
		"k.toml line 1, column 9: the text on this line has no closing quote\n" +
			"    n = \"abc\n" +
			"  close it with the quote that it began with; text over several lines takes three"},
	{"a quote that is not closed on the last line",
		"n = \"abc",
		"k.toml line 1, column 8: the text on this line has no closing quote\n" +
			"    n = \"abc\n" +
			"  close it with the quote that it began with; text over several lines takes three"},
	{"a long text that is not closed: all that follows is in it",
		"a = 1 bar\nn = \"\"\"abc\nb = 1 bar\n",
		"k.toml line 1, column 7: `a` is not in quotes\n" +
			"    a = 1 bar\n" +
			"  write `a = \"1 bar\"`\n" +
			"\n" +
			"k.toml line 2, column 5: the text that begins here is never closed\n" +
			"    n = \"\"\"abc\n" +
			"  close it with the three quotes that it began with"},
	{"a list that is not closed, told at its bracket; the next fault is found",
		"p = [\"a\",\n\"b\"\n[[run]]\nq = 1\nz = 5 bar\n",
		"k.toml line 1, column 5: the list that opens here is not closed before line 3\n" +
			"    p = [\"a\",\n" +
			"  close it with ]\n" +
			"\n" +
			"k.toml line 5, column 7: `z` is not in quotes\n" +
			"    z = 5 bar\n" +
			"  write `z = \"5 bar\"`"},
	{"a list that is not closed before a key",
		"p = [\"a\",\n\"b\"\nq = 1\nz = 5 bar\n",
		"k.toml line 1, column 5: the list that opens here is not closed before line 3\n" +
			"    p = [\"a\",\n" +
			"  close it with ]\n" +
			"\n" +
			"k.toml line 4, column 7: `z` is not in quotes\n" +
			"    z = 5 bar\n" +
			"  write `z = \"5 bar\"`"},
	{"a list that is not closed at the end",
		"p = [\"a\",\n",
		"k.toml line 1, column 5: the list that opens here is never closed\n" +
			"    p = [\"a\",\n" +
			"  close it with ]"},
	{"braces that are not closed",
		"[[item]]\nports = { in = '1/2 NPT'\nmaterial = \"316\"\n[[item]]\nid = 5 bar\n",
		"k.toml line 2, column 9: the table that opens here is not closed before line 3\n" +
			"    ports = { in = '1/2 NPT'\n" +
			"  close it with }\n" +
			"\n" +
			"k.toml line 5, column 8: `id` is not in quotes\n" +
			"    id = 5 bar\n" +
			"  write `id = \"5 bar\"`"},
	{"braces that are not closed at the end",
		"p = { a = 1",
		"k.toml line 1, column 5: the table that opens here is never closed\n" +
			"    p = { a = 1\n" +
			"  close it with }"},
	{"nothing but a comment behind = within braces",
		"p = {\n  a = # b\n}\nz = 5 bar\n",
		"k.toml line 2, column 7: `a` has no value\n" +
			"    a = # b\n" +
			"  write one behind the =, or remove the line\n" +
			"\n" +
			"k.toml line 4, column 7: `z` is not in quotes\n" +
			"    z = 5 bar\n" +
			"  write `z = \"5 bar\"`"},
	{"a comma missing between lines brings no false follower",
		"p = [\n\"a\"\n\"b\",\n]\nz = 5 bar\n",
		"k.toml line 3, column 1: a comma or a closing bracket is missing before this\n" +
			"    \"b\",\n" +
			"  put a comma between one value and the next\n" +
			"\n" +
			"k.toml line 5, column 7: `z` is not in quotes\n" +
			"    z = 5 bar\n" +
			"  write `z = \"5 bar\"`"},
	{"a comma missing within braces over lines",
		"a = {b=1\nc=2}",
		"k.toml line 2, column 1: a comma or a closing bracket is missing before this\n" +
			"    c=2}\n" +
			"  put a comma between one value and the next"},
	{"a value without quotes in a list over lines",
		"x = [\n  \"a\",\n  55 bar,\n  \"b\",\n]\ny = 5 bar\n",
		"k.toml line 3, column 6: a value with its unit is not in quotes\n" +
			"    55 bar,\n" +
			"  write `\"55 bar\"`\n" +
			"\n" +
			"k.toml line 6, column 7: `y` is not in quotes\n" +
			"    y = 5 bar\n" +
			"  write `y = \"5 bar\"`"},
	{"comments of another language",
		"// hi\n; hi\n",
		"k.toml line 1, column 1: this line is neither a key nor a comment\n" +
			"    // hi\n" +
			"  begin a comment with #\n" +
			"\n" +
			"k.toml line 2, column 1: this line is neither a key nor a comment\n" +
			"    ; hi\n" +
			"  begin a comment with #"},
	{"a header without its last bracket, twice",
		"[[item]\nid = 1\n[item\nid = 1\n",
		"k.toml line 1, column 7: the header is not closed\n" +
			"    [[item]\n" +
			"  write [[item]]\n" +
			"\n" +
			"k.toml line 3, column 6: the header is not closed\n" +
			"    [item\n" +
			"  write [item]"},
	{"a lost header does not make what follows seem to be given twice",
		"[[item]]\nid = 1\n[item.p]\na = 1\n[[item\nid = 2\n[item.p]\na = 2\n",
		"k.toml line 5, column 7: the header is not closed\n" +
			"    [[item\n" +
			"  write [[item]]"},
	{"a bracket too many",
		"[item]]\n",
		"k.toml line 1, column 7: a bracket too many\n" +
			"    [item]]\n" +
			"  write [item]"},
	{"a key behind its header",
		"[a] x = 1\n",
		"k.toml line 1, column 5: more follows the header\n" +
			"    [a] x = 1\n" +
			"  put it on a line of its own"},
	{"a header without a name",
		"[]\n",
		"k.toml line 1, column 2: the brackets hold no name, or a point stands alone\n" +
			"    []\n" +
			"  write a name, such as [build] or [[item]]"},
	{"a backslash in double quotes",
		"p = \"C:\\path\"\n",
		"k.toml line 1, column 6: in double quotes a backslash begins a special character, and this is none\n" +
			"    p = \"C:\\path\"\n" +
			"  write single quotes: `p = 'C:\\path'`"},
	{"a backslash in a long text; the next fault is found",
		"p = \"\"\"a\n \\p\n\"\"\"\nz = 5 bar",
		"k.toml line 1, column 8: in double quotes a backslash begins a special character, and this is none\n" +
			"    p = \"\"\"a\n" +
			"  put the text in single quotes, or write the backslash twice\n" +
			"\n" +
			"k.toml line 4, column 7: `z` is not in quotes\n" +
			"    z = 5 bar\n" +
			"  write `z = \"5 bar\"`"},
	{"half a code in double quotes",
		"n = \"\\u12\"",
		"k.toml line 1, column 6: in double quotes a backslash begins a special character, and this is none\n" +
			"    n = \"\\u12\"\n" +
			"  write single quotes: `n = '\\u12'`"},
	{"true with a capital",
		"b = True\n",
		"k.toml line 1, column 5: `True` is not how TOML writes it\n" +
			"    b = True\n" +
			"  write `b = true`"},
	{"yes in a list",
		"a = [\"x\", yes]",
		"k.toml line 1, column 11: `yes` is not how TOML writes it\n" +
			"    a = [\"x\", yes]\n" +
			"  write `true`"},
	{"a number that begins with 0",
		"n = 007\n",
		"k.toml line 1, column 5: this is not a number as TOML writes one\n" +
			"    n = 007\n" +
			"  write digits, with a point between digits; or, as text, `n = \"007\"`"},
	{"a number that begins with a point",
		"n = .5\n",
		"k.toml line 1, column 5: this is not a number as TOML writes one\n" +
			"    n = .5\n" +
			"  write digits, with a point between digits; or, as text, `n = \".5\"`"},
	{"a key with nothing behind =",
		"n =\nb = 1\n",
		"k.toml line 1, column 4: `n` has no value\n" +
			"    n =\n" +
			"  write one behind the =, or remove the line"},
	{"a key alone",
		"n\n",
		"k.toml line 1, column 2: `n` has no value\n" +
			"    n\n" +
			"  write `n = \"…\"`, or remove the line"},
	{"no key",
		"= 5\n",
		"k.toml line 1, column 1: no key stands before the =\n" +
			"    = 5\n" +
			"  write key = value"},
	{"two equals signs",
		"a = == 1\n",
		"k.toml line 1, column 5: two equals signs stand here\n" +
			"    a = == 1\n" +
			"  write one"},
	{"a number too large",
		"x = 9999999999999999999\n",
		"k.toml line 1, column 5: the number is too large to be held exactly\n" +
			"    x = 9999999999999999999\n" +
			"  if it is a code, write `x = \"9999999999999999999\"`"},
	{"a key of two words",
		"full flow = 1\n",
		"k.toml line 1, column 6: a key is one word\n" +
			"    full flow = 1\n" +
			"  write `full_flow = …`"},
	{"a key with an accent",
		"größe = 1\n",
		"k.toml line 1, column 3: a key without quotes holds only the letters a to z, digits, - and _\n" +
			"    größe = 1\n" +
			"  write the key in quotes: \"größe\" = …"},
	{"two pairs on a line",
		"a = 1 b = 2\n",
		"k.toml line 1, column 7: more follows the value\n" +
			"    a = 1 b = 2\n" +
			"  write one key = value on a line, a section as [name], a part as [[name]], and text in quotes"},
	{"a comma missing on a line",
		"a = [1 2]\n",
		"k.toml line 1, column 8: a comma or a closing bracket is missing before this\n" +
			"    a = [1 2]\n" +
			"  put a comma between one value and the next"},
	{"a comma with nothing before it",
		"a = [,1]\n",
		"k.toml line 1, column 6: a comma with nothing before it\n" +
			"    a = [,1]\n" +
			"  remove the comma"},
}

func TestSyntaxFaults(t *testing.T) {
	for _, row := range syntaxRows {
		t.Run(row.why, func(t *testing.T) {
			doc, faults := Parse("k.toml", []byte(row.text))
			require.Nil(t, doc, "nothing is half-read")
			require.Equal(t, row.want, faults.Error())
		})
	}
}

// The library has panics of its own; none is known to be reached by a text, so the
// search for its line is tried with a reader that gives up on purpose.
func TestUnforeseenPanicIsPlaced(t *testing.T) {
	text := "a = 1\nb = 2\nc = boom\nd = 4"
	offset := unforeseenAt(text, func(front string) bool { return strings.Contains(front, "boom") })
	require.Equal(t, strings.Index(text, "c ="), offset)
	faults := syntaxFaults("k.toml", "a = 1", errUnforeseen)
	require.Equal(t, "k.toml line 1, column 1: this is not TOML: the TOML reader gave up\n    a = 1\n  "+generally, faults.Error())
}
