package handtight_test

import (
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// May is what each package of a stage may import of ours, directly. What is not listed is
// not held; a package that is listed imports nothing else of ours.
var may = map[string]string{
	"pressure/network/connected": "",
	"pressure/network":           "pressure/network/connected pressure/quantity",
	"bom/build":                  "bom/source bom/money catalog threads threads/title pressure/quantity pressure/nearest",
	"bom/read":                   "bom/build bom/source bom/file bom/money pressure pressure/process/pump catalog threads threads/title pressure/quantity pressure/nearest",
	"bom/graph":                  "bom/build bom/source catalog threads pressure/nearest",
	"bom/circuit":                "bom/graph bom/build catalog pressure/network pressure/network/connected pressure/quantity",
	"bom/wetting":                "bom/circuit bom/graph bom/build catalog pressure/quantity",
	"bom/rating":                 "bom/graph bom/build catalog pressure pressure/quantity threads",
	"bom/joint":                  "bom/graph bom/build catalog pressure pressure/quantity threads threads/makeup",
	"bom/state":                  "bom/wetting bom/circuit bom/graph bom/build catalog pressure/network pressure/quantity",
	"bom/segment":                "bom/state bom/rating bom/circuit bom/graph bom/build catalog pressure pressure/quantity pressure/network/connected",
	"bom/running":                "bom/segment bom/state bom/wetting bom/circuit bom/graph bom/build catalog pressure pressure/quantity pressure/network pressure/network/connected",
	"bom/order":                  "bom/source bom/state bom/rating bom/joint bom/graph bom/build bom/money bom/spares bom/cut catalog threads threads/makeup pressure/quantity",
	"threads":                    "pressure/quantity threads/internal/table",
}

// Imports point downward only: the packages of the stages, bottom to top.
func TestImportsPointDownward(t *testing.T) {
	out, err := exec.Command("go", "list", "-f", "{{.ImportPath}}{{range .Imports}} {{.}}{{end}}", "./...").Output()
	require.NoError(t, err)
	seen := 0
	for line := range strings.Lines(string(out)) {
		words := strings.Fields(line)
		name := strings.TrimPrefix(words[0], "handtight/")
		allowed, held := may[name]
		if !held {
			continue
		}
		seen++
		for _, w := range words[1:] {
			if of, ours := strings.CutPrefix(w, "handtight/"); ours {
				require.Contains(t, strings.Fields(allowed), of, "%s may not import it", name)
			}
		}
	}
	require.Equal(t, len(may), seen, "a package of the table is gone")
}
