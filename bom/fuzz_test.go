package bom_test

import (
	"testing"

	"handtight/bom"
	"handtight/bom/internal/built"
	"handtight/bom/read"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

// FuzzParseWalk reads and walks any text: faults or a system, and no panic. Its seeds are small,
// so that many texts are tried; FuzzCheck of package rule starts from whole builds.
func FuzzParseWalk(f *testing.F) {
	for _, text := range []string{
		built.Head + built.Any,
		built.Head + built.Any + "[[item]]\nid = \"m\"\nkind = \"manifold\"\nports = { a = '1/2 NPT female', b = '1/2 NPT female', branch = '1/2 NPT female', d = '1/4 NPT female' }\n[[run]]\nname = \"m\"\npath = [\"m.d\", \"m/2.a>branch\", \"m/+\"]\n",
		built.Head + built.Any + "[[item]]\nid = \"t\"\nkind = \"tank\"\ninside = \"sink\"\n",
		built.Head + built.Any + "[[item]]\nid = \"c\"\nkind = \"passage\"\nports = { left = '1/2 BSP', right = '19 mm barb' }\nopen = [\"left>right\"]\none_way = [\"right>left\"]\n[[run]]\nname = \"c\"\npath = [\"c.left\", \"c/2.left>right\", \"c/+.right\"]\n",
		built.Head + "[duty]\npressure = \"55 bar\"\n[[item]]\nid = \"p\"\nkind = \"plunger pump\"\n[[item]]\nid = \"f\"\nkind = \"feed pump\"\nshutoff = \"2 bar\"\n[[run]]\nname = \"ring\"\npath = [\"p\", \"f\", \"p\"]\n",
	} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		build, faults := read.Parse("fuzz.toml", text)
		if (build == nil) != (len(faults) > 0) {
			t.Fatal("a build or faults, and never both")
		}
		if build == nil {
			return
		}
		sys, faults := bom.Walk(build)
		if (sys == nil) != (len(faults) > 0) {
			t.Fatal("a system or faults, and never both")
		}
		if sys == nil {
			return
		}
		if _, err := sys.Order(); err != nil && err.Error() == "" {
			t.Fatal("an error says what is wrong")
		}
	})
}
