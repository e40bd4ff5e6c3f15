package rule

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/finding"
)

// A class that is worked out from the wall, and ends of a hose that are estimated, clear no
// high pressure; a data sheet does.
func TestAnEstimateClearsNoHighPressure(t *testing.T) {
	plant := Rule{block: "none, the plant as it is"}.Example("")
	const tee, hose = "id = \"tee\"\nkind = \"tee\"\nmaterial = \"super duplex\"\nrated = \"200 bar\"", "material = \"super duplex ends\"\nspec = \"SAE 100R8\""
	for _, c := range []struct{ why, from, to, reason, remedy string }{
		{"class 2000 of 316", tee, "id = \"tee\"\nkind = \"tee\"\nmaterial = \"316\"\nclass = \"class 2000\"",
			"tee stands in a line of high pressure (55 bar), and only an estimate, of 210 bar, says what it holds.",
			"Write `rated` on `tee` from its data sheet; it needs 71.5 bar or more."},
		{"class 2000 with a data sheet", tee, "id = \"tee\"\nkind = \"tee\"\nmaterial = \"316\"\nclass = \"class 2000\"\nrated = \"200 bar\"", "", ""},
		{"class 3000 of 316", tee, "id = \"tee\"\nkind = \"tee\"\nmaterial = \"316\"\nclass = \"class 3000\"", "", ""},
		{"ends that are estimated below the hose", hose, "material = \"316 ends\"\nclass = \"class 2000\"\nspec = \"SAE 100R8\"",
			"hose stands in a line of high pressure (55 bar), and its end fittings are known by an estimate only, of 210 bar, which is less than the hose holds.",
			"Write `rated` on `hose` as the shop that makes it up states it; it needs 71.5 bar or more."},
		{"the same with what the shop states", hose, "material = \"316 ends\"\nclass = \"class 2000\"\nspec = \"SAE 100R8\"\nrated = \"250 bar\"", "", ""},
	} {
		t.Run(c.why, func(t *testing.T) {
			list := check(t, swap(t, plant, c.from, c.to))["rating-unknown"]
			if c.reason == "" {
				require.Empty(t, list)
				return
			}
			require.Len(t, list, 1)
			require.Equal(t, finding.Stop, list[0].Severity)
			require.Equal(t, c.reason, list[0].Reason)
			require.Equal(t, c.remedy, list[0].Remedy)
		})
	}
}
