package compare

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/read"
)

// figureLine is a line of a build whose figure may change and the build stays one.
var figureLine = regexp.MustCompile(`(?m)^(\s*(?:price|freight|extra|have|length|rated|flow|set)\s*=\s*"?)([0-9]+)`)

// Whatever figures change between two builds, no finding is told as gone and as new at once.
func TestNoFindingIsGoneAndNew(t *testing.T) {
	for _, name := range []string{"refit", "careless", "engine-careless", "arrows"} {
		path := filepath.Join("..", "..", "testdata", name, "build.toml")
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		walk := func(text string) *bom.System {
			b, faults := read.ParseWith(path, []byte(text), read.Options{})
			if len(faults) > 0 {
				return nil
			}
			sys, faults := bom.Walk(b)
			if len(faults) > 0 {
				return nil
			}
			return sys
		}
		before := walk(string(text))
		require.NotNil(t, before)
		tried := 0
		for seed := range uint64(3) {
			r := rand.New(rand.NewPCG(seed, 1))
			after := walk(figureLine.ReplaceAllStringFunc(string(text), func(line string) string {
				m := figureLine.FindStringSubmatch(line)
				n, err := strconv.Atoi(m[2])
				if err != nil || r.IntN(4) > 0 {
					return line
				}
				return m[1] + strconv.Itoa(n+1+r.IntN(3))
			}))
			if after == nil {
				continue
			}
			tried++
			report := Builds(before, after)
			type words struct {
				severity     finding.Severity
				slug, reason string
			}
			gone := map[words]bool{}
			for _, f := range report.Gone {
				gone[words{f.Severity, f.Slug, f.Reason}] = true
			}
			for _, f := range report.New {
				require.False(t, gone[words{f.Severity, f.Slug, f.Reason}], "%s: %s is told as gone and as new", name, f.Reason)
			}
		}
		require.Positive(t, tried, name)
	}
}
