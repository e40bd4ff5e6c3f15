package rule

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/finding"
)

const demos = "../../testdata"

// faultLine is a comment that names a fault seeded on purpose, of the line below it.
var faultLine = regexp.MustCompile(`^\s*# fault: ([a-z-]+) \((stop|caution|note)\) - \S.*$`)

// seeded lists the faults that a file's comments name, each with the first line below
// it that is no comment: "build.toml line 31: same-sex (stop)".
func seeded(t *testing.T, path string) []string {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	var out, waiting []string
	for i, line := range strings.Split(string(text), "\n") {
		if m := faultLine.FindStringSubmatch(line); m != nil {
			waiting = append(waiting, fmt.Sprintf("%s (%s)", m[1], m[2]))
			continue
		}
		require.NotContains(t, line, "# fault:", "%s line %d names no fault in the form `# fault: slug (severity) - what`", path, i+1)
		if strings.HasPrefix(strings.TrimSpace(line), "#") {
			continue
		}
		for _, w := range waiting {
			out = append(out, fmt.Sprintf("%s line %d: %s", filepath.Base(path), i+1, w))
		}
		waiting = nil
	}
	require.Empty(t, waiting, path)
	return out
}

func checkDemo(t *testing.T, name string) []finding.Finding {
	t.Helper()
	build, faults := bom.Read(filepath.Join(demos, name, "build.toml"))
	require.NoError(t, faults.Err())
	sys, faults := bom.Walk(build)
	require.NoError(t, faults.Err())
	return Check(sys)
}

// lines gives each finding as the comments of the careless build would name it.
func lines(list []finding.Finding) []string {
	var out []string
	for _, f := range list {
		out = append(out, fmt.Sprintf("%s line %d: %s (%s)", filepath.Base(f.Place.File), f.Place.Line, f.Slug, f.Severity))
	}
	return out
}

// The careless build has the faults that its comments name: each at its line, with its
// severity, and no other.
func TestCarelessBuild(t *testing.T) {
	var want []string
	for _, file := range []string{"build.toml", "bought.toml"} {
		want = append(want, seeded(t, filepath.Join(demos, "careless", file))...)
	}
	got := lines(checkDemo(t, "careless"))
	slices.Sort(want)
	slices.Sort(got)
	require.Equal(t, want, got)
	sorts := map[string]bool{}
	for _, w := range want {
		sorts[w[strings.Index(w, ": "):strings.Index(w, " (")]] = true
	}
	require.GreaterOrEqual(t, len(sorts), 18, "the careless build shows fewer sorts of faults than it is for")
}

// The clean build has no stop and no caution, and the two notes that no high-pressure
// side of 316 is without: rinse it, and do not let its threads gall.
func TestCleanBuild(t *testing.T) {
	var got []string
	for _, f := range checkDemo(t, "clean") {
		got = append(got, fmt.Sprintf("%s (%s)", f.Slug, f.Severity))
	}
	require.Equal(t, []string{"material-not-for-seawater (note)", "stainless-galls (note)"}, got)
}
