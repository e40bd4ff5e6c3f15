package bom_test

import (
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// May is what each package may import of ours, directly, from the foundations up. A new arrow
// is written here on purpose, or it is a fault; so is a package that is not listed.
var may = map[string]string{
	"bom/choose/leastcost":       "",
	"bom/cut":                    "",
	"bom/each":                   "",
	"bom/finding":                "pressure/quantity",
	"bom/sheet":                  "pressure/pattern",
	"bom/spares":                 "",
	"bom/worth":                  "pressure/rows",
	"pressure/pattern":           "",
	"pressure/rows":              "",
	"pressure/nearest":           "",
	"pressure/network/connected": "",
	"pressure/process/span":      "",
	"threads/internal/table":     "pressure/rows",
	"bom/file":                   "pressure/nearest",
	"bom/letter":                 "",
	"bom/money":                  "pressure/nearest pressure/pattern",
	"pressure/quantity":          "pressure/nearest pressure/pattern",
	"bom/source":                 "bom/each bom/file pressure/nearest pressure/pattern",
	"pressure":                   "pressure/nearest pressure/pattern pressure/quantity pressure/rows",
	"pressure/network":           "pressure/network/connected pressure/quantity",
	"pressure/process/power":     "pressure/process/span pressure/quantity",
	"pressure/process/sea":       "pressure/quantity",
	"threads":                    "pressure/quantity pressure/rows threads/internal/table",
	"pressure/process/line":      "pressure/process/sea pressure/quantity",
	"pressure/process/membrane":  "pressure/process/sea pressure/process/span pressure/quantity pressure/rows",
	"pressure/process/pump":      "pressure/process/power pressure/process/span pressure/quantity",
	"threads/adapt":              "pressure/quantity threads",
	"threads/identify":           "pressure/quantity threads threads/internal/table",
	"threads/identify/measure":   "pressure/pattern pressure/quantity threads threads/identify",
	"threads/evidence":           "pressure/quantity threads threads/identify threads/internal/table",
	"threads/internal/endtest":   "threads threads/internal/table",
	"threads/makeup":             "pressure/quantity threads threads/internal/table",
	"threads/title":              "pressure/nearest pressure/quantity pressure/rows threads",
	"catalog":                    "pressure/quantity pressure/rows threads/title",
	"catalog/stock":              "pressure/rows threads threads/title",
	"pressure/process/flow":      "pressure/network/connected pressure/process/line pressure/process/pump pressure/quantity",
	"pressure/process/trend":     "pressure/process/membrane pressure/process/sea pressure/quantity",
	"threads/card":               "pressure/quantity threads threads/identify threads/makeup",
	"bom/build":                  "bom/money bom/source catalog pressure/pattern pressure/quantity threads threads/evidence threads/identify",
	"bom/duty/readings":          "bom/sheet bom/source pressure/pattern pressure/process/membrane pressure/process/trend pressure/quantity pressure/rows",
	"bom/graph":                  "bom/build bom/source catalog pressure/nearest threads threads/evidence threads/identify",
	"bom/read":                   "bom/build bom/each bom/file bom/money bom/source catalog pressure pressure/nearest pressure/pattern pressure/process/pump pressure/quantity pressure/rows threads threads/evidence threads/identify threads/identify/measure threads/title",
	"bom/circuit":                "bom/build bom/graph catalog pressure/network pressure/network/connected pressure/quantity",
	"bom/joint":                  "bom/build bom/graph catalog pressure pressure/quantity threads threads/makeup",
	"bom/rating":                 "bom/build bom/graph catalog pressure pressure/pattern pressure/quantity threads",
	"bom/wetting":                "bom/circuit bom/graph catalog",
	"bom/state":                  "bom/circuit bom/graph bom/wetting catalog pressure/network pressure/quantity",
	"bom/order":                  "bom/build bom/cut bom/graph bom/joint bom/money bom/rating bom/source bom/spares bom/state catalog threads threads/makeup",
	"bom/segment":                "bom/build bom/circuit bom/graph bom/rating bom/state catalog pressure pressure/network/connected pressure/quantity",
	"bom/request":                "bom/build bom/money bom/order catalog pressure/quantity pressure/rows threads",
	"bom/running":                "bom/circuit bom/graph bom/rating bom/segment bom/state bom/wetting catalog pressure pressure/network pressure/network/connected pressure/quantity",
	"bom":                        "bom/build bom/circuit bom/each bom/graph bom/order bom/rating bom/read bom/running bom/segment bom/source bom/state bom/wetting",
	"bom/internal/built":         "bom bom/read bom/state",
	"bom/cart":                   "bom bom/build bom/file bom/finding bom/graph bom/money bom/order bom/request bom/sheet bom/source bom/state bom/wetting catalog pressure pressure/pattern pressure/quantity threads threads/title",
	"bom/draft/assign":           "",
	"bom/draft":                  "bom bom/build bom/cart bom/draft/assign bom/finding bom/graph bom/money bom/read bom/repair bom/rule catalog catalog/stock pressure pressure/pattern pressure/quantity threads threads/title",
	"bom/drawing":                "bom bom/finding bom/graph bom/letter bom/segment bom/state catalog pressure/quantity pressure/rows threads",
	"bom/duty":                   "bom bom/build bom/circuit bom/each bom/graph catalog pressure/nearest pressure/network/connected pressure/pattern pressure/process/flow pressure/process/line pressure/process/membrane pressure/process/power pressure/process/pump pressure/process/sea pressure/process/span pressure/quantity",
	"bom/audit":                  "bom bom/build bom/graph bom/segment bom/source pressure/quantity pressure/rows threads threads/evidence threads/identify",
	"bom/kit":                    "bom bom/build bom/money bom/order catalog",
	"bom/repair":                 "bom bom/build bom/finding bom/graph bom/money catalog catalog/stock pressure pressure/quantity threads threads/adapt",
	"bom/stages":                 "bom bom/graph bom/segment catalog pressure/quantity",
	"bom/workshop":               "bom bom/graph bom/joint bom/money catalog pressure pressure/quantity pressure/rows threads",
	"bom/facts":                  "bom bom/audit bom/cart bom/choose bom/circuit bom/compare bom/duty bom/finding bom/graph bom/joint bom/kit bom/money bom/order bom/rating bom/repair bom/request bom/segment bom/stages bom/state bom/workshop catalog pressure pressure/process/span pressure/process/trend pressure/quantity threads threads/evidence",
	"bom/rule":                   "bom bom/audit bom/build bom/circuit bom/duty bom/each bom/finding bom/graph bom/joint bom/rating bom/running bom/segment bom/source bom/state bom/wetting bom/workshop bom/worth catalog pressure pressure/network/connected pressure/pattern pressure/process/power pressure/process/sea pressure/process/span pressure/quantity threads threads/evidence",
	"bom/choose":                 "bom bom/build bom/choose/leastcost bom/finding bom/graph bom/money bom/order bom/repair bom/rule catalog catalog/stock pressure/quantity threads threads/title",
	"bom/compare":                "bom bom/build bom/finding bom/graph bom/money bom/order bom/rule bom/segment pressure/quantity",
	"bom/page":                   "bom bom/drawing bom/duty bom/facts bom/finding bom/graph bom/order bom/stages bom/workshop pressure/quantity",
	"bom/schema":                 "bom/read bom/source catalog",
	"bom/starter":                "pressure/nearest pressure/pattern pressure/quantity pressure/rows",
	"bom/repair/fix":             "bom bom/build bom/finding bom/read bom/repair bom/rule bom/source",
	"bom/receive":                "bom bom/build bom/cart bom/money bom/order bom/source bom/workbook",
	"bom/workbook":               "bom/each bom/facts bom/file bom/finding bom/letter bom/sheet pressure/pattern",
	"cmd/handtight":              "bom bom/audit bom/build bom/cart bom/choose bom/compare bom/draft bom/drawing bom/duty bom/duty/readings bom/facts bom/file bom/finding bom/kit bom/money bom/order bom/page bom/read bom/receive bom/repair bom/repair/fix bom/request bom/rule bom/schema bom/segment bom/source bom/starter bom/state bom/workbook catalog catalog/stock pressure/nearest pressure/pattern pressure/process/trend pressure/quantity threads threads/card threads/evidence threads/identify threads/identify/measure threads/makeup threads/title",
}

// Imports point downward only.
func TestImportsPointDownward(t *testing.T) {
	out, err := exec.Command("go", "list", "-f", "{{.ImportPath}}{{range .Imports}} {{.}}{{end}}", "handtight/...").Output()
	require.NoError(t, err)
	seen := 0
	for line := range strings.Lines(string(out)) {
		words := strings.Fields(line)
		name := strings.TrimPrefix(words[0], "handtight/")
		room, _, _ := strings.Cut(name, "/")
		require.Contains(t, []string{"cmd", "bom", "threads", "pressure", "catalog"}, room, "the rooms at the top are fixed")
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
