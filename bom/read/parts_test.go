package read

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/source"
)

// manyItems is a list of as many items, some alike, with a wrong line at some of them.
func manyItems(n int, wrong map[int]string) string {
	var b strings.Builder
	b.WriteString("[build]\nname = \"many\"\ncurrency = \"NZD\"\n")
	for i := range n {
		fmt.Fprintf(&b, "[[item]]\nid = \"elbow-%d\"\nkind = \"elbow\"\nabout = \"class %d, 24 V\"\nmaterial = \"316\"\nports = { a = '%d/8 NPT male', b = '1/4 BSPP female' }\n%s\n", i, 150*(i%3+1), i%2*2+1, wrong[i])
	}
	for i := range n / 4 {
		fmt.Fprintf(&b, "[[hose]]\nid = \"hose-%d\"\nspec = \"SAE 100R8\"\nbore = \"3/8 in\"\nlength = \"%d.5 m\"\nends = ['3/8 NPT male', '1/4 BSPP male']\n", i, i%5+1)
	}
	b.WriteString("[[run]]\nname = \"line\"\npath = [\"elbow-0\", \"hose-0\", \"elbow-2\"]\n")
	return b.String()
}

// Parts that several read at the same time are what one reads, one after the other: in their order, with what
// is noted of each; and so are the faults.
func TestManyReadAsOne(t *testing.T) {
	inTurn := Options{Listen: func(source.Asked) {}}
	text := []byte(manyItems(3*manyParts, nil))
	many, faults := Parse("many.toml", text)
	require.NoError(t, faults.Err())
	one, faults := ParseWith("many.toml", text, inTurn)
	require.NoError(t, faults.Err())
	require.Len(t, many.Items, 3*manyParts*5/4)
	require.Len(t, many.ByID, len(many.Items))
	for i, it := range many.Items {
		want := one.Items[i]
		require.Equal(t, want.ID, it.ID)
		require.Equal(t, want.Ports[0].End, it.Ports[0].End)
		require.Equal(t, want.NotUsed, it.NotUsed)
		require.Equal(t, want.Worded, it.Worded)
		require.Equal(t, want.Place.Place(), it.Place.Place())
	}
	for name, wrong := range map[string]map[int]string{
		"kinds are told once": {20: "material2 = 3", 500: "kinds = 1", 700: "each = 0"},
		"an id twice":         {600: "[[item]]\nid = \"elbow-3\"\nkind = \"elbow\"\nports = { a = '1/8 NPT male', b = '1/8 NPT male' }"},
		"no kind that is known": {
			100: "[[item]]\nid = \"x\"\nkind = \"gizmo\"",
			650: "[[item]]\nid = \"y\"\nkind = \"gizmo\"",
		},
	} {
		text := []byte(manyItems(3*manyParts, wrong))
		_, many := Parse("many.toml", text)
		_, one := ParseWith("many.toml", text, inTurn)
		require.NotEmpty(t, many, name)
		require.Equal(t, one, many, name)
	}
}
