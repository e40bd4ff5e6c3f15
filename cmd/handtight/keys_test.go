package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

const keysFile = "testdata/keys.txt"

// keyed are the commands whose JSON is held: what each is called with.
var keyed = [][]string{
	{"check", carelessBuild, "--states"}, {"check", "../../testdata/arrows/build.toml"}, {"order", cleanBuild}, {"order", carelessBuild},
	{"choose", "../../testdata/shops/build.toml"}, {"spares", cleanBuild}, {"compare", carelessBuild, cleanBuild},
	{"cart", carelessBuild, "../../testdata/carts/elbe.csv"}, {"cart", cleanBuild, "../../testdata/carts/wharf.csv"},
	{"thread", "Hose tail 3/4 BSPP female swivel x 19 mm barb, bronze, PN16"}, {"thread", "1/2 NPT male"}, {"mate", "1/2 NPT male", "1/2 NPT female"},
	{"mate", "1/2 BSP male", "Rc 1/2"}, {"identify", "--od", "20.9 mm", "--tpi", "14"}, {"catalog"}, {"catalog", "bronze"}, {"why", "same-sex"}, {"why"},
	{"audit", "../../testdata/oldplant/build.toml", "--on", "2026-11-28", "--why"}, {"mate", "1/2 male", "G 1/2 female", "--turns", "5"},
	{"duty", cleanBuild, "--log", "../../testdata/logs/summer.csv"}, {"duty", "../../testdata/engine-careless/build.toml"},
}

// keysOf lists the paths of all keys of a value: "segments[].name".
func keysOf(at string, v any, into map[string]bool) {
	switch x := v.(type) {
	case map[string]any:
		for k, e := range x {
			into[at+k] = true
			keysOf(at+k+".", e, into)
		}
	case []any:
		for _, e := range x {
			keysOf(strings.TrimSuffix(at, ".")+"[].", e, into)
		}
	}
}

// The names of the JSON fields do not change: each that was there is there. A new one is
// written into the list with -update, which takes none off it.
func TestJSONKeys(t *testing.T) {
	found := map[string]bool{}
	for _, args := range keyed {
		var out, errOut bytes.Buffer
		status := run(append(slices.Clone(args), "--json"), strings.NewReader(""), &out, &errOut)
		require.NotEqual(t, exitFault, status, "%v: %s", args, errOut.String())
		var v any
		require.NoError(t, json.Unmarshal(out.Bytes(), &v), args)
		keysOf(args[0]+" ", v, found)
	}
	text, err := os.ReadFile(filepath.FromSlash(keysFile))
	require.NoError(t, err)
	held := slices.DeleteFunc(strings.Split(string(text), "\n"), func(line string) bool { return line == "" })
	for _, key := range held {
		require.True(t, found[key], "the JSON of %q is gone", key)
		delete(found, key)
	}
	if *update {
		for key := range found {
			held = append(held, key)
		}
		slices.Sort(held)
		require.NoError(t, os.WriteFile(filepath.FromSlash(keysFile), []byte(strings.Join(held, "\n")+"\n"), 0o644))
		return
	}
	for key := range found {
		t.Logf("%q is new in the JSON: -update holds it in %s", key, keysFile)
	}
}
