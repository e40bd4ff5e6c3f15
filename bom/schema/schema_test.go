package schema

import (
	"bytes"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/BurntSushi/toml"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"

	"handtight/bom/read"
	"handtight/bom/source"
	"handtight/bom/starter"
)

// compiled is the schema as a library for JSON Schema understands it, which first holds it
// against the meta-schema of draft 7.
func compiled(t *testing.T) *jsonschema.Schema {
	text, err := Of()
	require.NoError(t, err)
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("build.json", doc))
	s, err := c.Compile("build.json")
	require.NoError(t, err)
	return s
}

// values are those of a TOML file as JSON has them.
func values(t *testing.T, text string) any {
	var v map[string]any
	_, err := toml.Decode(text, &v)
	require.NoError(t, err)
	return plain(v)
}

func plain(v any) any {
	switch x := v.(type) {
	case map[string]any:
		out := map[string]any{}
		for k, e := range x {
			out[k] = plain(e)
		}
		return out
	case []map[string]any:
		out := []any{}
		for _, e := range x {
			out = append(out, plain(e))
		}
		return out
	case []any:
		out := []any{}
		for _, e := range x {
			out = append(out, plain(e))
		}
		return out
	case int64:
		return float64(x)
	case time.Time:
		return x.Format(time.DateOnly)
	}
	return v
}

// demos are all build files of the examples, with what they include, and starters.
func demos(t *testing.T) map[string]string {
	out := map[string]string{}
	paths, err := filepath.Glob("../../testdata/*/*.toml")
	require.NoError(t, err)
	for _, p := range paths {
		text, err := os.ReadFile(p)
		require.NoError(t, err)
		out[filepath.ToSlash(p)] = string(text)
	}
	for _, drive := range []string{"dc", "belt", "ac", "recovery"} {
		a := starter.Usual()
		require.NoError(t, a.Take("drive", drive))
		text, err := starter.Write(a)
		require.NoError(t, err)
		out["starter "+drive] = string(text)
	}
	return out
}

// Every example is valid.
func TestDemosAreValid(t *testing.T) {
	s := compiled(t)
	list := demos(t)
	require.Greater(t, len(list), 15)
	for name, text := range list {
		require.NoError(t, s.Validate(values(t, text)), name)
	}
}

// What the reader refuses and a schema can see is refused by the schema: every key of every
// example misspelt, and every value of another type. The same change is made before both.
func TestWhatTheReaderRefuses(t *testing.T) {
	s := compiled(t)
	tried := 0
	seen := map[string]bool{}
	list := demos(t)
	for _, name := range slices.Sorted(maps.Keys(list)) {
		var v map[string]any
		_, err := toml.Decode(list[name], &v)
		require.NoError(t, err)
		alone(v, func(doc map[string]any, section string, element map[string]any) {
			each(element, "."+section, func(at string, table map[string]any, key string) {
				kind, _ := element["kind"].(string)
				mark := at + "|" + kind + "|" + key
				if seen[mark] || section == "rates" {
					return
				}
				seen[mark] = true
				old := table[key]
				for what, change := range map[string]func(){
					"misspelt":     func() { delete(table, key); table[key+"x"] = old },
					"another type": func() { table[key] = another(old) },
				} {
					change()
					var changed bytes.Buffer
					require.NoError(t, toml.NewEncoder(&changed).Encode(doc))
					if readerRefuses(changed.String(), key) {
						tried++
						require.Error(t, s.Validate(values(t, changed.String())), "%s: %s of %s is %s", name, key, at, what)
					}
					delete(table, key+"x")
					table[key] = old
				}
			})
		})
	}
	require.Greater(t, tried, 500, "refused by both")
}

// readerRefuses reports whether the reader refuses the file for the key: its name or its type.
func readerRefuses(text, key string) bool {
	_, faults := read.Parse("changed.toml", []byte(text))
	return slices.ContainsFunc(faults, func(f source.Fault) bool {
		return strings.Contains(f.Reason, "unknown key `"+key+"x`") || strings.Contains(f.Reason, " is due")
	})
}

// alone gives every element of every section as a file of its own, so that a change is soon
// read: what it names is then not there, which is another fault.
func alone(v map[string]any, visit func(doc map[string]any, section string, element map[string]any)) {
	for _, section := range slices.Sorted(maps.Keys(v)) {
		switch x := v[section].(type) {
		case map[string]any:
			visit(map[string]any{section: x}, section, x)
		case []map[string]any:
			for _, e := range x {
				visit(map[string]any{section: []map[string]any{e}}, section, e)
			}
		}
	}
}

// another is a value of another type.
func another(v any) any {
	if _, ok := v.(bool); ok {
		return int64(7)
	}
	return true
}

// each visits all keys of all tables in a fixed order.
func each(table map[string]any, at string, visit func(at string, table map[string]any, key string)) {
	for _, key := range slices.Sorted(maps.Keys(table)) {
		switch v := table[key].(type) {
		case map[string]any:
			each(v, at+"."+key, visit)
		case []map[string]any:
			for _, e := range v {
				each(e, at+"."+key, visit)
			}
		}
		if at != "" {
			visit(at, table, key)
		}
	}
}

// Faults by hand: each is refused by both, and what stands beside it is taken.
func TestFaultsByHand(t *testing.T) {
	s := compiled(t)
	for name, c := range map[string]struct{ wrong, right string }{
		"a section that there is not":  {"[[itme]]\nid = 'a'", "[[item]]\nid = 'a'"},
		"a figure without its unit":    {"[duty]\npressure = '58'", "[duty]\npressure = '58 bar'"},
		"a figure that is no text":     {"[duty]\npressure = 58", "[duty]\npressure = '840 psi'"},
		"a length in inches":           {"[[hose]]\nid='a'\nbore='wide'", "[[hose]]\nid='a'\nbore='3/8\"'"},
		"a kind that there is not":     {"[[item]]\nid = 'a'\nkind = 'elbo'", "[[item]]\nid = 'a'\nkind = 'elbow'"},
		"a key of another kind":        {"[[item]]\nid = 'a'\nkind = 'tee'\nmicron = '5 micron'", "[[item]]\nid = 'a'\nkind = 'filter housing'\nmicron = '5 micron'"},
		"a port of another kind":       {"[[item]]\nid = 'a'\nkind = 'tee'\nports = { in = '1/2 NPT male' }", "[[item]]\nid = 'a'\nkind = 'tee'\nports = { branch = '1/2 NPT male' }"},
		"a word that is not taken":     {"[[item]]\nid = 'a'\nkind = 'shut-off valve'\nnormal = 'closed'", "[[item]]\nid = 'a'\nkind = 'shut-off valve'\nnormal = 'shut'"},
		"a language that is not known": {"[[vendor]]\nid='a'\ncurrency='EUR'\nlanguage='ru'", "[[vendor]]\nid='a'\ncurrency='EUR'\nlanguage='de'"},
		"an item without an id":        {"[[item]]\nkind = 'tee'", "[[item]]\nid = 'a'\nkind = 'tee'"},
		"a count in words":             {"[[item]]\nid='a'\neach='two'", "[[item]]\nid='a'\neach=2"},
		"hose aboard in pieces":        {"[[item]]\nid='a'\nkind='hose stock'\nhave=2", "[[item]]\nid='a'\nkind='hose stock'\nhave='2 m'"},
		"a path that is no list":       {"[[run]]\nname='a'\npath='b'", "[[run]]\nname='a'\npath=['b']"},
		"a run that is one table":      {"[run]\nname='a'\npath=['b']", "[[run]]\nname='a'\npath=['b']"},
		"a price as a number":          {"[[offer]]\nitem='a'\nvendor='b'\nprice=9.5", "[[offer]]\nitem='a'\nvendor='b'\nprice='9.50'"},
		"a year that is no date":       {"[[joint]]\nat=['a.b','c.d']\nmade_up=true", "[[joint]]\nat=['a.b','c.d']\nmade_up=2019"},
		"a rate as a number":           {"[rates]\ndate=2026-11-20\nUSD=0.9", "[rates]\ndate=2026-11-20\nUSD='0.9'"},
		"a curve of single figures":    {"[[item]]\nid='a'\nkind='feed pump'\ncurve=['0 L/min']", "[[item]]\nid='a'\nkind='feed pump'\ncurve=[['0 L/min','2 bar']]"},
		"ports of one's own, badly":    {"[[item]]\nid='a'\nkind='passage'\nports={ left=2 }", "[[item]]\nid='a'\nkind='passage'\nports={ left='1/2 NPT male' }"},
	} {
		t.Run(name, func(t *testing.T) {
			require.Error(t, s.Validate(values(t, c.wrong)), "wrong")
			require.NoError(t, s.Validate(values(t, c.right)), "right")
			_, faults := read.Parse("a.toml", []byte("[build]\nname='a'\ncurrency='EUR'\n"+c.wrong))
			require.NotEmpty(t, faults)
		})
	}
}

// The same program writes the same bytes, and every kind of the catalogue has its keys.
func TestSame(t *testing.T) {
	first, err := Of()
	require.NoError(t, err)
	second, err := Of()
	require.NoError(t, err)
	require.Equal(t, string(first), string(second))
	for _, kind := range kindNames() {
		require.Contains(t, string(first), fmt.Sprintf("%q", kind))
	}
}
