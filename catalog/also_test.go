package catalog

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// What the table says to write exists, and what it takes for a slip is none.
func TestAlsoNamesWhatThereIs(t *testing.T) {
	for _, l := range eachRow("also") {
		require.NotEmpty(t, l["source"], "%s names no source", l["written"])
	}
	seen := map[string]bool{}
	for _, r := range alsoRows() {
		for _, w := range r.written {
			switch r.what {
			case "kind":
				require.False(t, seen[w], "%q stands twice", w)
				seen[w] = true
				_, is := KindNamed(w)
				require.False(t, is, "%q is a kind", w)
				_, is = KindNamed(r.instead[0])
				require.True(t, is, r.instead[0])
			case "port":
				for _, p := range r.instead {
					require.True(t, slices.ContainsFunc(KindNames(), func(name string) bool { k, _ := KindNamed(name); return k.PortIndex(p) >= 0 }), p)
				}
			case "key":
				require.True(t, r.instead[0] != "" || r.note != "", w)
			default:
				t.Errorf("the table speaks of a %s", r.what)
			}
		}
		if r.what == "key" && !slices.Contains(r.of, "*") {
			for _, name := range r.of {
				k, ok := KindNamed(name)
				require.True(t, ok, name)
				for _, w := range r.written {
					require.NotContains(t, k.Keys, w, "%s of a %s is a key", w, name)
				}
			}
		}
	}
}

func TestPortMeant(t *testing.T) {
	for _, c := range []struct{ kind, word, want string }{
		{"plunger pump", "inlet", "in"}, {"plunger pump", "Outlet", "out"},
		{"selector valve", "inlet", "common"}, {"seacock", "outlet", "inboard"},
		{"pressure vessel", "inlet", "feed"}, {"pressure vessel", "permeate", "product"}, {"pressure vessel", "concentrate", "brine"},
		{"pressure vessel", "outlet", ""}, // brine or product
		{"elbow", "in", "a"}, {"elbow", "out", "b"}, {"tee", "side", "branch"}, {"gauge", "out", ""}, {"strainer", "a", ""},
	} {
		k, ok := KindNamed(c.kind)
		require.True(t, ok, c.kind)
		port, ok := k.PortMeant(c.word)
		require.Equal(t, c.want, port, "%s of a %s", c.word, c.kind)
		require.Equal(t, c.want != "", ok)
	}
}

func TestKeyMeant(t *testing.T) {
	for _, c := range []struct{ kind, key, want string }{
		{"feed pump", "pressure", "shutoff"}, {"plunger pump", "pressure", "rated"}, {"elbow", "pressure", "rated"},
		{"hose stock", "size", "bore"}, {"hose", "size", "bore"}, {"elbow", "size", "ports"}, {"hose", "description", ""},
	} {
		k, ok := KindNamed(c.kind)
		require.True(t, ok, c.kind)
		got, ok := k.KeyMeant(c.key)
		require.Equal(t, c.want, got.Write, "%s of a %s", c.key, c.kind)
		require.Equal(t, c.want != "", ok)
	}
}
