package rule

import (
	"fmt"
	"strings"
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
			"tee stands in a line of high pressure (56 bar), and only an estimate, of 210 bar, says what it holds.",
			"Write `rated` on `tee` from its data sheet; it needs 71.5 bar or more."},
		{"class 2000 with a data sheet", tee, "id = \"tee\"\nkind = \"tee\"\nmaterial = \"316\"\nclass = \"class 2000\"\nrated = \"200 bar\"", "", ""},
		{"class 3000 of 316", tee, "id = \"tee\"\nkind = \"tee\"\nmaterial = \"316\"\nclass = \"class 3000\"", "", ""},
		{"ends that are estimated below the hose", hose, "material = \"316 ends\"\nclass = \"class 2000\"\nspec = \"SAE 100R8\"",
			"hose stands in a line of high pressure (56 bar), and its end fittings are known by an estimate only, of 210 bar, which is less than the hose holds.",
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

// A class that has no row for the thread or the metal says which it has, and asks for the
// data sheet; the metal may be written in any country's way.
func TestAClassIsOfOneStandard(t *testing.T) {
	plant := Rule{block: "none, the plant as it is"}.Example("")
	const tee = "id = \"tee\"\nkind = \"tee\"\nmaterial = \"super duplex\"\nrated = \"200 bar\""
	for _, c := range []struct{ why, material, class, family, reason string }{
		{"SUS316L on NPT", "SUS316L", "class 3000", "NPT", ""},
		{"V4A on NPT", "V4A", "class 3000", "NPT", ""},
		{"SUS316 on R, as a male Rc is read", "SUS316", "class 3000", "Rc", "class 3000 is of a standard for NPT threads, and says nothing of R"},
		{"bronze", "bronze", "class 3000", "NPT", "class 3000 is known in 316, 316L, 304 and steel, and not in bronze"},
	} {
		t.Run(c.why, func(t *testing.T) {
			text := swap(t, plant, tee, fmt.Sprintf("id = \"tee\"\nkind = \"tee\"\nmaterial = %q\nclass = %q", c.material, c.class))
			if c.family != "NPT" {
				before, rest, _ := strings.Cut(text, "id = \"tee\"")
				block, after, _ := strings.Cut(rest, "[[")
				text = before + "id = \"tee\"" + strings.ReplaceAll(block, "NPT", c.family) + "[[" + after
			}
			list := check(t, text)["rating-unknown"]
			if c.reason == "" {
				require.Empty(t, list)
				return
			}
			require.Len(t, list, 1)
			require.Equal(t, "tee stands in a line of high pressure (56 bar), and "+c.reason+".", list[0].Reason)
			require.Equal(t, "Write `rated` on `tee` from its data sheet; it needs 71.5 bar or more.", list[0].Remedy)
		})
	}
}
