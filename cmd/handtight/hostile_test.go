package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
)

// hostileBuild is a build that every row of the table spoils in one place.
const hostileBuild = `[build]
name = "Petrel"
currency = "EUR"

[spares]
away = "6 months"
hours = "100 h"
confidence = "95 %"
spoil = "3 %"

[rates]
date = 2026-11-20
USD = "0.90"

[[vendor]]
id = "quay"
name = "Quay (invented)"
currency = "EUR"
freight = "10.00"
customs = "4 %"
tax = "20 %"

[[item]]
id = "a1"
kind = "adaptor"
about = "a reducing adaptor"
material = "316"
rated = "100 bar"
ports = { a = '1/2 NPT male', b = '1/2 NPT female' }
fails = "2000 h"
have = 1
extra = 2

[[item]]
id = "stock"
kind = "hose stock"
about = "hose by the metre"
material = "rubber"
bore = "13 mm"

[[hose]]
id = "h1"
of = "stock"
length = "1.2 m"

[[offer]]
item = "a1"
vendor = "quay"
code = "Q-1"
price = "2.40"
pack = 10

[[run]]
name = "all"
path = ["a1/1", "a1/2"]
`

// A hostile input: what is put in the place of a line of the build, and what the error
// says beside the line at which it stands.
type spoiled struct{ old, put, says string }

// Keys that hold a figure, with the line that stands in hostileBuild.
var figureLines = []string{
	`away = "6 months"`, `hours = "100 h"`, `confidence = "95 %"`, `spoil = "3 %"`, `USD = "0.90"`, `freight = "10.00"`,
	`customs = "4 %"`, `tax = "20 %"`, `rated = "100 bar"`, `fails = "2000 h"`, `have = 1`, `extra = 2`,
	`bore = "13 mm"`, `length = "1.2 m"`, `price = "2.40"`, `pack = 10`,
}

// Values that are no figure, too large a one, or one that drives the terminal.
var noFigures = []string{
	`"1e999"`, `"NaN"`, `"-1"`, `-1`, `99999999999999999999`, `"999999999999999999999999999"`, `[1]`, `{ a = 1 }`, `true`, `""`, `" "`,
	`"\u202e5 m"`, `"5 furlongs"`, `"\u001b[2J"`, `1979-05-27`, `inf`, `"９９９９９９９９９９９９"`, `"` + strings.Repeat("9", 100_000) + `"`,
}

// Texts and structure.
var structures = []spoiled{
	{`[build]`, `[built]`, "write `build`"},
	{`currency = "EUR"` + "\n\n[spares]", `currency = "EUX"` + "\n\n[spares]", "currency code"},
	{`name = "Petrel"`, `name = 5`, "name"},
	{`name = "Petrel"`, `name = "a" name = "b"`, ""},
	{`name = "Petrel"`, `name = """`, ""},
	{`name = "Petrel"`, "name = \"a\x00b\"", "a byte of value 0"},
	{`name = "Petrel"`, "name = \"a\xffb\"", ""},
	{`name = "Petrel"`, "name = \"Petrel\"\nnmae = \"x\"", "nmae"},
	{`name = "Petrel"`, "name = \"Petrel\"\ninclude = [\"../../../../etc/hosts\"]", "outside"},
	{`name = "Petrel"`, "name = \"Petrel\"\ninclude = [\"/etc/hosts\"]", "root of a disk"},
	{`name = "Petrel"`, "name = \"Petrel\"\ninclude = [\"C:\\\\boat\\\\a.toml\"]", "root of a disk"},
	{`name = "Petrel"`, "name = \"Petrel\"\ninclude = [\"build.toml\"]", "includes itself"},
	{`name = "Petrel"`, "name = \"Petrel\"\ninclude = [\"./x/../build.toml\"]", "includes itself"},
	{`name = "Petrel"`, "name = \"Petrel\"\ninclude = [\"absent\\nSTOP.toml\"]", "cannot be read"},
	{`name = "Petrel"`, "name = \"Petrel\"\ninclude = [" + strings.Repeat(`"a.toml",`, 1001) + "]", "the most is 1000"},
	{`name = "Petrel"`, "name = \"Petrel\"\nplugged = [\"nowhere\"]", "names no port"},
	{`date = 2026-11-20`, `date = "soon"`, "date"},
	{`date = 2026-11-20`, `date = 2026-13-45`, ""},
	{`USD = "0.90"`, `USX = "0.90"`, "not a currency code"},
	{`USD = "0.90"`, `EUR = "0.90"`, "own currency"},
	{`USD = "0.90"`, `USD = "0"`, ""},
	{`id = "quay"`, `id = "qu ay"`, ""},
	{`id = "quay"`, `id = ""`, ""},
	{`id = "a1"`, `id = "../a1"`, ""},
	{`id = "a1"`, `id = "a1.b"`, ""},
	{`id = "a1"`, `id = "=cmd()"`, ""},
	{`id = "a1"`, `id = "` + strings.Repeat("a", 70_000) + `"`, ""},
	{`id = "a1"`, "id = \"a\\nb\"", ""},
	{`kind = "adaptor"`, `kind = "adapter "`, "kind"},
	{`kind = "adaptor"`, `kind = "hose"`, "kind"},
	{`kind = "adaptor"`, `kind = ["adaptor"]`, "kind"},
	{`kind = "adaptor"`, `kind = "\u001b]0;x\u0007"`, "kind"},
	{`ports = { a = '1/2 NPT male', b = '1/2 NPT female' }`, `ports = { a = '1/2 NPT male', b = '1/2 XYZ' }`, ""},
	{`ports = { a = '1/2 NPT male', b = '1/2 NPT female' }`, `ports = { a = '1/2 NPT male', c = '1/2 NPT' }`, ""},
	{`ports = { a = '1/2 NPT male', b = '1/2 NPT female' }`, `ports = { a = '` + strings.Repeat("1/2 NPT ", 9000) + `', b = '1/2 NPT female' }`, ""},
	{`ports = { a = '1/2 NPT male', b = '1/2 NPT female' }`, `ports = ["1/2 NPT"]`, ""},
	{`ports = { a = '1/2 NPT male', b = '1/2 NPT female' }`, "ports = { a = '1/2 NPT male', b = '1/2 NPT female'", ""},
	{`of = "stock"`, `of = "stick"`, "stick"},
	{`of = "stock"`, `of = "h1"`, ""},
	{`item = "a1"`, `item = "a2"`, "a2"},
	{`vendor = "quay"`, `vendor = "kay"`, "kay"},
	{`path = ["a1/1", "a1/2"]`, `path = []`, ""},
	{`path = ["a1/1", "a1/2"]`, `path = ["a1/1"]`, ""},
	{`path = ["a1/1", "a1/2"]`, `path = ["a1/1", "a9"]`, "a9"},
	{`path = ["a1/1", "a1/2"]`, `path = ["a1/1", "a1/2\u0000"]`, ""},
	{`path = ["a1/1", "a1/2"]`, `path = ["a1#1", "a1#2"]`, "not a step"},
	{`path = ["a1/1", "a1/2"]`, `path = "a1"`, ""},
	{`path = ["a1/1", "a1/2"]`, `path = ` + strings.Repeat("[", 10_000), ""},
	{`path = ["a1/1", "a1/2"]`, `path = ["a1/1", "a1/2"` + strings.Repeat("\n# x", 3) + "\n", ""},
	{`[[run]]`, `[run]`, ""},
	{`[[run]]`, `[[run.run]]`, ""},
	{`[[item]]` + "\nid = \"stock\"", `[item]` + "\nid = \"stock\"", ""},
}

// commandsOfABuild are the commands that read a build, with what else they need.
func commandsOfABuild() map[string][]string {
	return map[string][]string{
		"check": {"check", "build.toml"}, "states": {"check", "build.toml", "--states"}, "order": {"order", "build.toml", "-o", "list.xlsx"},
		"spares": {"spares", "build.toml"}, "choose": {"choose", "build.toml"}, "cart": {"cart", "build.toml", "cart.csv"},
		"compare": {"compare", "build.toml", "sound.toml"}, "json": {"check", "build.toml", "--json"},
	}
}

// Every hostile build is refused by every command that reads one: exit status 2, at the
// line where the fault stands, with nothing printed and nothing written.
func TestHostileBuilds(t *testing.T) {
	var table []spoiled
	for _, key := range figureLines {
		name, _, _ := strings.Cut(key, " ")
		for _, v := range noFigures {
			table = append(table, spoiled{key, name + " = " + v, ""})
		}
	}
	table = append(table, structures...)
	require.GreaterOrEqual(t, len(table), 300, "inputs")
	t.Chdir(t.TempDir())
	require.NoError(t, os.WriteFile("cart.csv", []byte("Description;Qty\nadaptor 1/2 NPT;2\n"), 0o644))
	require.NoError(t, os.WriteFile("sound.toml", []byte(hostileBuild), 0o644))
	commands := commandsOfABuild()
	require.NoError(t, os.WriteFile("build.toml", []byte(hostileBuild), 0o644))
	for name, args := range commands {
		require.NotEqual(t, exitFault, run(args, strings.NewReader(""), io.Discard, os.Stderr), "%s: the build is sound until it is spoiled", name)
	}
	_ = os.Remove("list.xlsx")
	var other []string // what is reported where it is missed, and not where it was spoiled
	names := []string{"check", "states", "order", "spares", "choose", "cart", "compare", "json"}
	for i, row := range table {
		at := strings.Index(hostileBuild, row.old)
		require.GreaterOrEqual(t, at, 0, row.old)
		line := strings.Count(hostileBuild[:at], "\n") + 1
		require.NoError(t, os.WriteFile("build.toml", []byte(strings.Replace(hostileBuild, row.old, row.put, 1)), 0o644))
		// check and one other command each: the readers are one
		for _, name := range []string{"check", names[1+i%(len(names)-1)]} {
			why := fmt.Sprintf("%s: %.80q", name, row.put)
			errText := refused(t, why, commands[name], "")
			require.Contains(t, errText, row.says, why)
			if !strings.Contains(errText, fmt.Sprintf("build.toml line %d,", line)) && !strings.Contains(errText, fmt.Sprintf("build.toml line %d,", line+1)) {
				require.Contains(t, errText, "build.toml line ", why)
				other = append(other, fmt.Sprintf("%d: %.60s", line, row.put))
			}
		}
	}
	_, err := os.Stat("list.xlsx")
	require.ErrorIs(t, err, os.ErrNotExist, "nothing is written")
	for _, o := range other {
		require.Regexp(t, `^(16|24): id = `, o, "an id that nothing calls by its name is missed where it is called")
	}
	t.Logf("%d hostile builds, %d runs", len(table), 2*len(table))
}

// refused runs a command that must end as a fault, and gives what it says.
func refused(t *testing.T, why string, args []string, in string) string {
	t.Helper()
	var out, errOut bytes.Buffer
	require.Equal(t, exitFault, run(args, strings.NewReader(in), &out, &errOut), "%s\n%s%s", why, out.String(), errOut.String())
	require.Empty(t, out.String(), why)
	text := errOut.String()
	require.NotEmpty(t, text, why)
	require.Less(t, len(text), 40_000, "%s: what is quoted back is clipped", why)
	fit(t, why, text)
	return text
}

// fit checks that a text drives no terminal.
func fit(t *testing.T, why, text string) {
	t.Helper()
	require.True(t, utf8.ValidString(text), why)
	require.False(t, strings.ContainsFunc(text, drives), "%s: %q", why, text)
	require.NotContains(t, text, "\nSTOP.toml", why)
	require.NotContains(t, text, "goroutine ", why)
}

// Places that hold no build, no cart and no place to write to.
func TestHostilePlaces(t *testing.T) {
	t.Chdir(t.TempDir())
	for name, text := range map[string]string{
		"sound.toml": hostileBuild, "cart.csv": "Description;Qty\nadaptor 1/2 NPT;2\n",
		"empty.toml": "", "bytes.toml": "\x00\x01\x02\xff", "zip.toml": "PK\x03\x04", "utf16.toml": "\xff\xfe[\x00b\x00]\x00",
		"comments.toml": "# nothing\n", "a\nSTOP.toml": "x", "esc\x1b[2J.toml": "x", "folder.toml/x": "",
	} {
		require.NoError(t, os.MkdirAll(filepath.Dir(name), 0o755))
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Skipf("this disk does not take such names: %v", err)
		}
	}
	require.NoError(t, os.WriteFile("huge.toml", nil, 0o644))
	require.NoError(t, os.Truncate("huge.toml", 1<<34))
	require.NoError(t, os.Symlink("gone.toml", "dangling.toml"))
	require.NoError(t, os.Symlink("ring.toml", "ring.toml"))
	bad := []string{"", "absent.toml", "empty.toml", "bytes.toml", "zip.toml", "utf16.toml", "comments.toml", "a\nSTOP.toml", "esc\x1b[2J.toml",
		"folder.toml", "huge.toml", "dangling.toml", "ring.toml", "sound.toml/x", strings.Repeat("x", 5000), "no\x00name", "absent\nSTOP.toml", "absent\u202e.toml"}
	bad = append(bad, specialPlaces(t)...)
	runs := 0
	for _, path := range bad {
		for _, args := range [][]string{
			{"check", path}, {"order", path}, {"spares", path}, {"choose", path}, {"compare", path, "sound.toml"}, {"compare", "sound.toml", path},
			{"cart", path, "cart.csv"}, {"cart", "sound.toml", "cart.csv", "--accepted", path},
		} {
			if args[len(args)-1] == path && args[0] == "cart" && (path == "" || path == "comments.toml" || path == "empty.toml") {
				continue // nothing was confirmed yet
			}
			refused(t, fmt.Sprintf("%q", args), args, "")
			runs++
		}
		if path != "comments.toml" && path != "utf16.toml" && !strings.HasPrefix(path, "a\n") && !strings.HasPrefix(path, "esc") { // these are lists of one line
			refused(t, fmt.Sprintf("cart %q", path), []string{"cart", "sound.toml", path}, "")
			runs++
		}
	}
	for _, path := range append(specialPlaces(t), "sound.toml", "folder.toml", "no/where/list.xlsx", "list.csv", "sound.toml/list.xlsx", "ring.toml", "no\x00name.xlsx", strings.Repeat("x", 5000)+".xlsx", "absent\nSTOP.toml") {
		for _, force := range []string{"--force=false", "--force"} {
			refused(t, "to "+path, []string{"order", "sound.toml", "-o", path, force}, "")
			runs++
		}
		if path != "list.csv" && path != "absent\nSTOP.toml" {
			refused(t, "to "+path, []string{"cart", "sound.toml", "cart.csv", "--accept", path}, "")
			runs++
		}
	}
	text, err := os.ReadFile("sound.toml")
	require.NoError(t, err)
	require.Equal(t, hostileBuild, string(text), "an input is as it was")
	t.Logf("%d runs", runs)
}

// Words and figureLines that the commands of threads do not take.
func TestHostileWords(t *testing.T) {
	words := []string{"", " ", "\x00", "\x1b[2J", "a\nSTOP.toml", "\u202e1/2 NPT", "１／２", strings.Repeat("G ", 50_000), strings.Repeat("9", 5000), "-", "--", "%s%n", "=cmd()", "../..", "1/0 NPT", "99999999999 NPT", "NaN", "\xff\xfe"}
	runs := 0
	for _, w := range words {
		for _, args := range [][]string{
			{"mate", w, "1/2 NPT"}, {"mate", "1/2 NPT male", w}, {"why", w}, {"thread", "--list", w}, {"catalog", w, w}, {"nonsense" + w},
			{"check", "--" + w + "x"}, {"identify", "--od", w}, {"identify", "--pitch", w}, {"check"}, {"order"}, {"cart", w}, {"new"},
		} {
			var out, errOut bytes.Buffer
			status := run(args, strings.NewReader(""), &out, &errOut)
			why := fmt.Sprintf("%.80q", args)
			if args[0] == "thread" && (w == "" || strings.Contains(w, "NPT")) || strings.TrimSpace(w) == "" && args[0] == "identify" || args[0] == "why" && w == "--" {
				continue // as if it were not given
			}
			require.Equal(t, exitFault, status, "%s\n%s", why, out.String())
			require.Less(t, errOut.Len(), 60_000, why)
			fit(t, why, errOut.String())
			fit(t, why, out.String())
			runs++
		}
		for _, args := range [][]string{{"thread", w}, {"thread", "-"}, {"thread", w, "--json"}} {
			if w == "--" {
				continue
			}
			var out, errOut bytes.Buffer
			run(args, strings.NewReader(strings.ReplaceAll(w, "\n", " ")), &out, &errOut)
			fit(t, fmt.Sprintf("%.80q", args), out.String()+errOut.String())
			runs++
		}
	}
	t.Logf("%d runs", runs)
}
