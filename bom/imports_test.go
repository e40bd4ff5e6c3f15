package bom_test

import (
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// May is what each package may import of ours, directly, from the foundations up. A new arrow
// is written here on purpose, or it is a fault; so is a package that is not listed.
var may = map[string]string{}

// Imports point downward only.
func TestImportsPointDownward(t *testing.T) {
	out, err := exec.Command("go", "list", "-f", "{{.ImportPath}}{{range .Imports}} {{.}}{{end}}", "handtight/...").Output()
	require.NoError(t, err)
	seen := 0
	for line := range strings.Lines(string(out)) {
		words := strings.Fields(line)
		name := strings.TrimPrefix(words[0], "handtight/")
		allowed, held := may[name]
		require.True(t, held, "%s is not in the table: say here what it may import", name)
		seen++
		for _, w := range words[1:] {
			if of, ours := strings.CutPrefix(w, "handtight/"); ours {
				require.Contains(t, strings.Fields(allowed), of, "%s may not import it", name)
			}
		}
	}
	require.Equal(t, len(may), seen, "a package of the table is gone")
}
