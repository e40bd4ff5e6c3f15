package source

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"sort"
	"strings"
	"sync"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/require"
)

func parsed(t require.TestingT, text string) *Document {
	doc, faults := Parse("k.toml", []byte(text))
	require.NoError(t, faults.Err())
	return doc
}

func TestPlaces(t *testing.T) {
	rows := []struct {
		why, text  string
		path       Path
		key, value [2]int // line and column
	}{
		{"a pair", "a = 1", Path{"a"}, [2]int{1, 1}, [2]int{1, 5}},
		{"indented, with tabs", "\n\t a\t=\t1", Path{"a"}, [2]int{2, 3}, [2]int{2, 7}},
		{"behind letters beyond ASCII", "'ä°' = { b = 1 }", Path{"ä°", "b"}, [2]int{1, 10}, [2]int{1, 14}},
		{"a section", " [ duty ]\na = 1", Path{"duty"}, [2]int{1, 4}, [2]int{1, 2}},
		{"a key of a section", "[duty]\na = 1", Path{"duty", "a"}, [2]int{2, 1}, [2]int{2, 5}},
		{"a parent that is only implied", "[a.b]\nc = 1", Path{"a"}, [2]int{1, 2}, [2]int{1, 2}},
		{"and one that is named later", "[a.b]\nc = 1\n[a]\nd = 2", Path{"a"}, [2]int{3, 2}, [2]int{3, 1}},
		{"a list of tables", "[[i]]\n[[i]]\n", Path{"i"}, [2]int{1, 3}, [2]int{1, 1}},
		{"its second element", "[[i]]\n[[i]]\n", Path{"i", 1}, [2]int{2, 3}, [2]int{2, 1}},
		{"a key of the second element", "[[i]]\na = 1\n[[i]]\na = 2", Path{"i", 1, "a"}, [2]int{4, 1}, [2]int{4, 5}},
		{"a section of the newest element", "[[i]]\n[i.p]\na = 1\n[[i]]\n[i.p]\na = 2", Path{"i", 1, "p", "a"}, [2]int{6, 1}, [2]int{6, 5}},
		{"a list within the newest element", "[[i]]\n[[i.j]]\n[[i]]\n[[i.j]]\n[[i.j]]\nx = 1", Path{"i", 1, "j", 1, "x"}, [2]int{6, 1}, [2]int{6, 5}},
		{"braces over lines, with comments", "a = { # }\n  b = 1,\n  # c = 2\n  c = [ # ]\n 7 ],\n}", Path{"a", "c", 0}, [2]int{5, 2}, [2]int{5, 2}},
		{"a dotted key", "a . \"b c\" .d = 1", Path{"a", "b c", "d"}, [2]int{1, 12}, [2]int{1, 16}},
		{"the middle of a dotted key", "a.b.c = 1", Path{"a", "b"}, [2]int{1, 3}, [2]int{1, 3}},
		{"dotted within braces", "a = { b.c = 1 }", Path{"a", "b", "c"}, [2]int{1, 9}, [2]int{1, 13}},
		{"a quoted key with an escape", `"a\tb" = 1`, Path{"a\tb"}, [2]int{1, 1}, [2]int{1, 10}},
		{"an empty key", `"" = 1`, Path{""}, [2]int{1, 1}, [2]int{1, 6}},
		{"a key that holds a bracket", "['a]b'.c]\nd = 1", Path{"a]b", "c", "d"}, [2]int{2, 1}, [2]int{2, 5}},
		{"behind a text that holds everything", `a = "\"]}#\\"` + "\nb = 1", Path{"b"}, [2]int{2, 1}, [2]int{2, 5}},
		{"behind a literal text", `a = 'x\'` + "\nb = 1", Path{"b"}, [2]int{2, 1}, [2]int{2, 5}},
		{"behind a long text", "a = \"\"\"\n[x]\nb = 2\\\"\"\" \"\"\\\n\"\"\"\"\"\nb = 1", Path{"b"}, [2]int{5, 1}, [2]int{5, 5}},
		{"behind a long literal text", "a = '''\n'' # [\nb = 2'''''\nb = 1", Path{"b"}, [2]int{4, 1}, [2]int{4, 5}},
		{"behind a day and a time", "a = 1979-05-27 07:32:00\nb = [1979-05-27, 07:32]", Path{"b", 1}, [2]int{2, 18}, [2]int{2, 18}},
		{"a list over lines with comments", "p = [ # one\r\n 'a', # ]\r\n\r\n 'b'\r\n]", Path{"p", 1}, [2]int{4, 2}, [2]int{4, 2}},
		{"tables in a list", "p = [{a=1},\n {a=2}]", Path{"p", 1, "a"}, [2]int{2, 3}, [2]int{2, 5}},
		{"lists in a list", "p = [[1],\n [2, 3]]", Path{"p", 1, 1}, [2]int{2, 6}, [2]int{2, 6}},
		{"no such key: the nearest parent", "[[i]]\n[[i]]\na = 1", Path{"i", 1, "b", "c"}, [2]int{2, 3}, [2]int{2, 1}},
		{"no such element: the list", "p = [1]", Path{"p", 1}, [2]int{1, 1}, [2]int{1, 5}},
		{"an index below 0", "p = [1]", Path{"p", -1}, [2]int{1, 1}, [2]int{1, 5}},
		{"an index of a table: the table", "[p]\na = 1", Path{"p", 0}, [2]int{1, 2}, [2]int{1, 1}},
		{"a step of no kind: the parent", "[p]\na = 1", Path{"p", 1.5}, [2]int{1, 2}, [2]int{1, 1}},
		{"nothing at all: the file", "a = 1", Path{"b"}, [2]int{}, [2]int{}},
		{"the empty path: the file", "a = 1", nil, [2]int{}, [2]int{}},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			doc := parsed(t, row.text)
			key, value := doc.key(row.path), doc.value(row.path)
			require.Equal(t, row.key, [2]int{key.Line, key.Column}, "key")
			require.Equal(t, row.value, [2]int{value.Line, value.Column}, "value")
			if key.Line > 0 {
				require.Equal(t, strings.TrimSuffix(strings.Split(row.text, "\n")[key.Line-1], "\r"), key.Text)
			}
		})
	}
}

func TestPathString(t *testing.T) {
	require.Equal(t, `item[3].ports."in let"[0].x`, Path{"item", 3, "ports", "in let", 0, "x"}.String())
	require.Equal(t, "", Path(nil).String())
}

func TestPlacesFromManyGoroutines(t *testing.T) {
	doc := parsed(t, manyItems(50))
	var group sync.WaitGroup
	for i := range 8 {
		group.Go(func() { doc.key(Path{"item", i, "id"}) })
	}
	group.Wait()
	require.Equal(t, "[[item]]", doc.key(Path{"item", 49}).Text)
}

// How fast it is BenchmarkLocate says.
func TestLocatorOfManyItems(t *testing.T) {
	place := parsed(t, manyItems(10_000)).value(Path{"item", 9_999, "ports", "b", "seal"})
	require.Equal(t, 3+1+9_999*11+4, place.Line)
}

// paths lists every path of a decoded tree, in order.
func paths(v any, at Path, see func(Path)) {
	if len(at) > 0 {
		see(slices.Clone(at))
	}
	switch value := v.(type) {
	case map[string]any:
		keys := make([]string, 0, len(value))
		for key := range value {
			keys = append(keys, key)
		}
		sort.Strings(keys)
		for _, key := range keys {
			paths(value[key], append(at, key), see)
		}
	case []map[string]any:
		for i, element := range value {
			paths(element, append(at, i), see)
		}
	case []any:
		for i, element := range value {
			paths(element, append(at, i), see)
		}
	}
}

// located checks one path: it has a spot of its own, and a bare key stands at its
// place. It says whether the path ends in a bare key.
func located(t require.TestingT, doc *Document, path Path) bool {
	doc.locate()
	id := doc.index.find(path)
	require.NotEqual(t, doc.index.find(path[:len(path)-1]), id, "%v has no place", path)
	key, ok := path[len(path)-1].(string)
	if !ok || keyText(key) != key {
		return false
	}
	place := doc.key(path)
	rest := string([]rune(place.Text)[place.Column-1:])
	if strings.HasPrefix(rest, `"`) || strings.HasPrefix(rest, "'") { // quoted without need
		return false
	}
	require.True(t, strings.HasPrefix(rest, key), "%v: %q does not begin with the key", path, rest)
	return true
}

func TestLocatorOnCorpus(t *testing.T) {
	out, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "github.com/BurntSushi/toml").Output()
	if err != nil || strings.TrimSpace(string(out)) == "" {
		t.Skip("the TOML library's sources are not at hand")
	}
	root := filepath.Join(strings.TrimSpace(string(out)), "internal", "toml-test", "tests", "valid")
	if _, err := os.Stat(root); err != nil {
		t.Skip("the TOML library has no test corpus here")
	}
	files, all, bare := 0, 0, 0
	require.NoError(t, filepath.WalkDir(root, func(path string, _ os.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".toml") {
			return err
		}
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		files++
		doc, faults := Parse(filepath.Base(path), text)
		if doc == nil {
			require.True(t, onlyComments(string(text)), "%s", faults.Error())
			return nil
		}
		paths(doc.values, nil, func(p Path) {
			all++
			if located(t, doc, p) {
				bare++
			}
		})
		return nil
	}))
	t.Logf("%d files, %d paths placed, %d bare keys in their lines", files, all, bare)
	require.Greater(t, files, 200)
	require.Greater(t, bare, 1000)
}

// onlyComments says whether the library finds no key in a text.
func onlyComments(text string) bool {
	var values map[string]any
	_, err := toml.Decode(text, &values)
	return err == nil && len(values) == 0
}

// value returns the place of a value: behind the = of a key, or at the bracket
// that opens a [table]. It falls back as key does.
func (d *Document) value(path Path) Place {
	return d.place(d.offset(path, false))
}
