package catalog_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/catalog"
)

// otherSense are the files in which a word that is also a kind's name means something else,
// or is no more than a word that is written.
var otherSense = map[string]string{
	"bom/draft/buy.go":                      "sea",                                                                 // a water
	"bom/draft/item.go":                     "hose",                                                                // the table [[hose]] of a build
	"bom/draft/solve.go":                    "sea",                                                                 // a water
	"bom/drawing/symbol.go":                 "passage",                                                             // the row of a plain box
	"bom/drawing/view.go":                   "sea",                                                                 // a water's class of lines
	"bom/duty/readings/readings.go":         "sea",                                                                 // a heading of a log
	"bom/audit/cost.go":                     "sea",                                                                 // a row of a table of judgements
	"bom/audit/lines.go":                    "nipple",                                                              // a closing
	"bom/read/item.go":                      "elbow",                                                               // an example in a message
	"bom/read/money.go":                     "tape clamp O-ring washer strainer",                                   // words of offers for what joints ask for; an example
	"bom/read/read.go":                      "hose",                                                                // the table [[hose]] of a build
	"bom/read/parts.go":                     "hose",                                                                // the table [[hose]]
	"bom/request/words.go":                  "brine throttle through-hull",                                         // how a shop calls it
	"bom/rule/joints.go":                    "adaptor",                                                             // a word of a remedy
	"bom/rule/nothing_turns.go":             "sea",                                                                 // a port's name
	"bom/rule/one_clamp_below_waterline.go": "clamp",                                                               // a cause
	"bom/workshop/tools.go":                 "tape",                                                                // the begin of a line's key
	"catalog/role.go":                       "sea drain strainer gauge hose clamp tape oil washer bush elbow plug", // words of roles
	"bom/cart/facts.go":                     "oil",                                                                 // a trait of its table
	"bom/cart/negation.go":                  "hose",                                                                // a group of its traits
	"catalog/stock/stock.go":                "nipple adaptor gauge",                                                // columns of its own patterns
	"cmd/handtight/adapt.go":                "sea",                                                                 // a water
	"cmd/handtight/draft_print.go":          "hose",                                                                // a word of a question
	"cmd/handtight/duty.go":                 "hose",                                                                // a heading
	"bom/repair/adapt.go":                   "sea",                                                                 // a water
	"bom/repair/query.go":                   "sea",                                                                 // a water
	"bom/repair/remedy.go":                  "sea",                                                                 // a water
	"bom/repair/strong.go":                  "sea",                                                                 // a water
}

// No code knows a kind by its name: a role, a passage or a column of the table answers what
// it asks. A key of a rule's example may be a word that is also a kind's; what builds plants for tests writes
// kinds as a person does.
func TestNoCodeNamesAKind(t *testing.T) {
	names := catalog.KindNames()
	for _, root := range []string{"../bom", "../catalog", "../cmd"} {
		require.NoError(t, filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
			if err != nil || filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") || strings.Contains(filepath.ToSlash(path), "bom/internal/built/") {
				return err
			}
			set := token.NewFileSet()
			file, err := parser.ParseFile(set, path, nil, parser.SkipObjectResolution)
			require.NoError(t, err)
			short := strings.TrimPrefix(filepath.ToSlash(path), "../")
			allowed := otherSense[short]
			ast.Inspect(file, func(n ast.Node) bool {
				if kv, ok := n.(*ast.KeyValueExpr); ok {
					key, named := kv.Key.(*ast.Ident)
					return !named || key.Name != "block"
				}
				lit, ok := n.(*ast.BasicLit)
				if !ok || lit.Kind != token.STRING {
					return true
				}
				word, err := strconv.Unquote(lit.Value)
				require.NoError(t, err)
				if slices.Contains(names, word) && !strings.Contains(allowed, word) {
					t.Errorf("%s names the kind %q: ask for a role of it", set.Position(lit.Pos()), word)
				}
				return true
			})
			return nil
		}))
	}
}

// A table with a word that nothing knows is refused, and says which.
func TestFaultsOfTheKindTable(t *testing.T) {
	for text, want := range map[string]string{
		"[[kind]]\nname = \"x\"\nroles = [\"pomp\"]":                                                            "pomp",
		"[[kind]]\nname = \"x\"\nports = [\"a\"]\nboundary = [\"b\"]":                                           "lacks",
		"[[kind]]\nname = \"x\"\nports = [\"a\"]\n[[kind.passage]]\nfrom = \"a\"\nto = \"b\"\nis = \"open\"":    "lacks",
		"[[kind]]\nname = \"x\"\nports = [\"a\"]\n[[kind.passage]]\nfrom = \"a\"\nto = \"a\"\nis = \"leaking\"": "leaking",
		"[[kind]": "expected",
	} {
		_, err := catalog.ParseKinds(text)
		require.ErrorContains(t, err, want)
	}
}

// The kinds that a part of so many ends mostly is stand in the table, the likeliest first.
func TestLikelyKinds(t *testing.T) {
	require.Equal(t, []string{"plug", "cap", "gauge"}, catalog.LikelyKinds(1))
	require.Equal(t, []string{"adaptor", "elbow", "nipple", "hose tail"}, catalog.LikelyKinds(2))
	require.Equal(t, []string{"tee", "selector valve"}, catalog.LikelyKinds(3))
	require.Equal(t, []string{"cross", "manifold"}, catalog.LikelyKinds(5))
}
