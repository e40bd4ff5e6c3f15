package read

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// One too many is one fault with its place, whichever file holds it, and nothing is
// said of what was not read.
func TestABuildHoldsSoManyParts(t *testing.T) {
	if testing.Short() {
		t.Skip("twenty thousand parts, twice")
	}
	dir := t.TempDir()
	var shop strings.Builder
	for i := range mostParts - 1 {
		fmt.Fprintf(&shop, "[[item]]\nid = 'n%d'\nkind = 'nipple'\nports = { a = '1/2 NPT male', b = '1/2 NPT male' }\n", i)
	}
	require.NoError(t, os.WriteFile(filepath.Join(dir, "shop.toml"), []byte(shop.String()), 0o644))
	main := "[build]\nname = 'x'\ncurrency = 'EUR'\ninclude = ['shop.toml']\n[[item]]\nid = 'own'\nkind = 'nipple'\nports = { a = '1/2 NPT male', b = '1/2 NPT male' }\n[[run]]\nname = 'r'\npath = ['own', 'n1']\n"

	b, faults := Parse(filepath.Join(dir, "build.toml"), []byte(main))
	require.Empty(t, faults)
	require.Len(t, b.Items, mostParts)

	require.NoError(t, os.WriteFile(filepath.Join(dir, "shop.toml"), []byte(shop.String()+"[[hose]]\nid = 'h'\n[[hose]]\nid = 'h2'\n"), 0o644))
	_, faults = Parse(filepath.Join(dir, "build.toml"), []byte(main))
	require.Len(t, faults, 1)
	require.Contains(t, faults[0].Error(), "more than 20000 items and hoses")
	require.Equal(t, 4*(mostParts-1)+1, faults[0].Line)
}

func TestPathsHoldSoManyUnits(t *testing.T) {
	if testing.Short() {
		t.Skip("a hundred thousand units")
	}
	text := "[build]\nname = 'x'\ncurrency = 'EUR'\n[[item]]\nid = 'n'\nkind = 'nipple'\nports = { a = '1/2 NPT male', b = '1/2 NPT female' }\n[[run]]\nname = 'r'\npath = ['n/a', 'n/b', 'n/c']\n[[run]]\nname = 's'\npath = ['n/c'" +
		strings.Repeat(",'n/+'", mostSteps-3) + "]\n"
	_, faults := Parse("build.toml", []byte(text))
	require.Len(t, faults, 1)
	require.Contains(t, faults[0].Error(), "the runs of the build have 100001 units, and the most is 100000")
	require.Equal(t, 13, faults[0].Line)
}

// Included files count together: a thousand of the largest would be eight gigabytes.
func TestFilesOfABuildAreBoundedTogether(t *testing.T) {
	dir := t.TempDir()
	half := []byte("[[vendor]]\nid = \"NAME\"\nname = \"an invented shop\"\ncurrency = \"EUR\"\n" + strings.Repeat("# a shop's whole list, and nothing in it is used\n", 70_000))
	for _, name := range []string{"a.toml", "b.toml"} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), bytes.Replace(half, []byte("NAME"), []byte(name[:1]), 1), 0o644))
	}
	text := "[build]\nname = 'x'\ncurrency = 'EUR'\ninclude = ['a.toml', 'b.toml']\n[[run]]\nname = 'r'\npath = ['n', 'm']\n"
	_, faults := Parse(filepath.Join(dir, "build.toml"), []byte(text))
	require.NotEmpty(t, faults)
	require.Contains(t, faults[0].Error(), "the files of this build are larger than 6 MiB")
	require.Equal(t, 4, faults[0].Line)
}
