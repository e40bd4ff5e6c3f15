package pressure

import (
	"bytes"
	"encoding/csv"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write the counts of marks anew")

// The marks of a row, what is surest first: what its source is, or that it has none.
var marks = []string{"standard", "page or book", "page, not named", "file", "file, not named", "computed", "definition", "common practice", "judgement", "memory"}

// rates are the tables whose figures may clear a line of high pressure.
var rates = []string{"pressure/table/fittings.csv", "pressure/table/hose.csv", "pressure/table/joint.csv", "pressure/table/stress.csv", "pressure/table/tube.csv"}

// markOfKind turns the kind of a source of this package's tables into a mark.
var markOfKind = map[string]string{
	"standard": "standard", "handbook": "page or book", "page": "page or book", "unnamed page": "page, not named", "file": "file", "unnamed file": "file, not named",
	"formula": "computed", "common practice": "common practice", "judgement": "judgement", "memory": "memory",
}

var (
	sourcePage     = regexp.MustCompile(`(?i)\b(?:pages?|article|manuals?|encyclopedia|handbook|sheet|sheets|catalogues?|thread|text "|hosted copy|lists?|listing|listings|extract|chart|tables?|quiz|survey|report|review|guide|guidelines|note|journal|calculator|station data|hose end codes)\b`)
	sourceTitle    = regexp.MustCompile("[\"“「]|Machinery's Handbook")
	sourceFile     = regexp.MustCompile(`\b[A-Za-z0-9_.-]+/[A-Za-z0-9_.-]+\b.*\.[a-z]+\b|\brepositor(?:y|ies) [A-Za-z0-9_.-]+/`)
	sourceStandard = regexp.MustCompile(`\b(?:ISO|ASME|EN|DIN|SAE|JIS|BS|UNI|ASTM|NSF|AS/NZS|BIPM|IEC|UN/ECE|Unicode|FED-STD|GOST|GB/T|MSS)\b`)
)

// markOfText tells the mark of a source that is written out on the row: the least sure of
// what it names. A page or a book has a title; without one nobody can look it up. "" is a
// text that names nothing.
func markOfText(source string) string {
	s := strings.ToLower(source)
	for _, m := range []string{"memory", "not named", "judgement", "definition"} {
		if strings.Contains(s, m) {
			return strings.Replace(m, "not named", "file, not named", 1)
		}
	}
	if strings.Contains(s, "common practice") {
		return "common practice"
	}
	found := ""
	for part := range strings.SplitSeq(source, ";") {
		found = lessSure(found, markOfPart(part))
	}
	return found
}

func markOfPart(part string) string {
	switch {
	case sourceFile.MatchString(part):
		return "file"
	case sourcePage.MatchString(part) && !sourceTitle.MatchString(part):
		return "page, not named"
	case sourcePage.MatchString(part):
		return "page or book"
	case sourceStandard.MatchString(part):
		return "standard"
	}
	return ""
}

// lessSure is the mark of two that is less sure: a page that nobody can look up, a file in a
// public repository, a page with its title, a standard.
func lessSure(a, b string) string {
	for _, m := range []string{"page, not named", "file", "page or book", "standard"} {
		if a == m || b == m {
			return m
		}
	}
	return ""
}

func TestMarkOfText(t *testing.T) {
	for source, want := range map[string]string{
		"ISO 4217":                       "standard",
		"MSS SP-83":                      "standard",
		`page "Studs and port forms"`:    "page or book",
		"Machinery's Handbook, table 5":  "page or book",
		"operator's manual of a reaper":  "page, not named",
		`a manual; page "Hose"`:          "page, not named",
		"some/repository design/file.go": "file",
		"ISO 724; some/repo x.csv":       "file",
		"a file (repository not named)":  "file, not named",
		"common practice":                "common practice",
		"ISO 6149: memory":               "memory",
		"our own":                        "",
		"28 mil":                         "",
	} {
		require.Equal(t, want, markOfText(source), source)
	}
}

// count is what a table's rows rest on.
type count map[string]int

// tablesOf counts every table of the project under a root: all that is data and not a test's.
func tablesOf(t *testing.T, root string) map[string]count {
	out := map[string]count{}
	require.NoError(t, filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		dir := filepath.Base(filepath.Dir(path))
		if d.IsDir() && (strings.HasPrefix(d.Name(), ".") && path != root || d.Name() == "testdata") {
			return fs.SkipDir
		}
		name, _ := filepath.Rel(root, path)
		if name = filepath.ToSlash(name); d.IsDir() || dir != "table" && dir != "lexicon" || name == "pressure/table/source.csv" {
			return nil
		}
		switch filepath.Ext(path) {
		case ".csv":
			out[name] = countRows(t, path, name)
		case ".toml":
			out[name] = countKinds(t, path)
		}
		return nil
	}))
	return out
}

func countRows(t *testing.T, path, name string) count {
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	lines, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	require.NoError(t, err, name)
	source, status, own := slices.Index(lines[0], "source"), slices.Index(lines[0], "status"), slices.Index(lines[0], "mark")
	require.GreaterOrEqual(t, source, 0, "%s: every row names its source", name)
	kinds := map[string]string{}
	if strings.HasPrefix(name, "pressure/table/") {
		for _, r := range readTable("source") {
			require.Contains(t, markOfKind, r["kind"], r["key"])
			kinds[r["key"]] = markOfKind[r["kind"]]
		}
	}
	c := count{}
	for i, l := range lines[1:] {
		mark, known := kinds[l[source]]
		if !known {
			mark = markOfText(l[source])
		}
		require.NotEmpty(t, l[source], "%s row %d", name, i+2)
		if status >= 0 {
			switch s := l[status]; s {
			case "memory", "mixed":
				mark = "memory"
			case "common practice", "judgement", "computed":
				mark = s
			case "seen":
				require.NotContains(t, []string{"memory", "judgement", "common practice"}, mark, "%s row %d is said to be seen, in %q", name, i+2, l[source])
			default:
				require.Fail(t, "no status", "%s row %d: %q", name, i+2, s)
			}
		}
		if own >= 0 && (l[own] == "memory" || l[own] == "part seen") {
			mark = "memory"
		}
		require.Contains(t, marks, mark, "%s row %d rests on nothing that has a name: %q", name, i+2, l[source])
		c[mark]++
	}
	return c
}

// countKinds counts the tables of a TOML file that says once for all what it rests on.
func countKinds(t *testing.T, path string) count {
	var file map[string]any
	_, err := toml.DecodeFile(path, &file)
	require.NoError(t, err)
	source, _ := file["source"].(string)
	require.NotEmpty(t, source, "%s says what it rests on", path)
	n := 0
	for _, v := range file {
		if list, ok := v.([]map[string]any); ok {
			n += len(list)
		}
	}
	return count{markOfText(source): n}
}

// Marks of a block of README.md that this test holds against the tables.
const blockStart, blockEnd = "<!-- counts -->\n", "<!-- end of counts -->\n"

// Every row of every table is counted by what it rests on. A new row from memory changes a
// count here, and so is noticed; `go test ./pressure -run Marks -update` writes them again.
func TestMarksAreCounted(t *testing.T) {
	tables := tablesOf(t, "..")
	for _, name := range append([]string{"catalog/table/kind.toml", "catalog/table/material.csv", "threads/table/npt.csv"}, rates...) {
		require.Contains(t, tables, name)
	}
	got := writeMarks(tables)
	const golden = "testdata/marks.md"
	if *update {
		require.NoError(t, os.WriteFile(golden, []byte(got), 0o644))
		writeBlock(t, got)
	}
	want, err := os.ReadFile(golden)
	require.NoError(t, err)
	require.Equal(t, string(want), got, "count again with -update, and say in the commit what changed")

	readme, err := os.ReadFile("../README.md")
	require.NoError(t, err)
	_, after, ok := strings.Cut(string(readme), blockStart)
	require.True(t, ok, "README.md has no block of counts")
	block, _, ok := strings.Cut(after, blockEnd)
	require.True(t, ok, "README.md: the block of counts has no end")
	require.Equal(t, got, block, "README.md prints the counts of pressure/testdata/marks.md")
}

// writeBlock puts the counts into README.md.
func writeBlock(t *testing.T, got string) {
	readme, err := os.ReadFile("../README.md")
	require.NoError(t, err)
	before, rest, ok := strings.Cut(string(readme), blockStart)
	require.True(t, ok)
	_, after, ok := strings.Cut(rest, blockEnd)
	require.True(t, ok)
	require.NoError(t, os.WriteFile("../README.md", []byte(before+blockStart+got+blockEnd+after), 0o644))
}

func writeMarks(tables map[string]count) string {
	var names []string
	all, clearing := count{}, count{}
	for name, c := range tables {
		names = append(names, name)
		for m, n := range c {
			all[m] += n
			if slices.Contains(rates, name) {
				clearing[m] += n
			}
		}
	}
	slices.Sort(names)
	var b strings.Builder
	rows := func(c count) (n int) {
		for _, v := range c {
			n += v
		}
		return n
	}
	fmt.Fprintf(&b, "Of %d rows in %d tables %d are from memory; of the %d rows whose figures may clear a line of high pressure (*)\n", rows(all), len(names), all["memory"], rows(clearing))
	fmt.Fprintf(&b, "%d are, and `check` says so on the line; %d more rest on files and %d on pages and books that are not known by name.\n\n", clearing["memory"], clearing["file, not named"], clearing["page, not named"])
	fmt.Fprintf(&b, "| table | rows | %s |\n| --- | --: |%s\n", strings.Join(marks, " | "), strings.Repeat(" --: |", len(marks)))
	line := func(name string, c count) {
		fmt.Fprintf(&b, "| %s | %d |", name, rows(c))
		for _, m := range marks {
			if c[m] == 0 {
				b.WriteString(" |")
				continue
			}
			fmt.Fprintf(&b, " %d |", c[m])
		}
		b.WriteString("\n")
	}
	for _, name := range names {
		shown := name
		if slices.Contains(rates, name) {
			shown += " *"
		}
		line(shown, tables[name])
	}
	line("all", all)
	return b.String()
}
