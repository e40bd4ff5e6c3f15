package bom_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The figures that everybody in the trade repeats (common practice, no source):
// they check answers, and no demo, starter, page of the project or message rests
// on them. Each in the ways that people write it.
var tradeFigure = regexp.MustCompile(`(?i)(?:^|[^\d.,])(?:` +
	`55(?:[.,]0)? ?(?:bar\b|\* ?bar\b)|bar\(55\)|5[.,]5 ?MPa|` +
	`8(?:[.,]0)? ?(?:L/min|lpm|lt/min|lit(?:re|er)s? (?:a|per) min)|` +
	`800 ?psi|2[.,]1 ?(?:US )?(?:gpm|gal)|` +
	`60(?: to 65)? ?(?:L/h|lph|lit(?:re|er)s? an hour))`)

// The kinds of files that people or the program write.
var written = []string{".go", ".toml", ".md", ".csv", ".tsv", ".txt", ".txtar", ".tmpl", ".golden", ".json", ".svg", ".html"}

// Hand cases, and what makes builds for tests, that are solved with the trade's figures, so that they can be held
// against what others reckon.
const (
	handCases   = "testdata/states/"
	testHelpers = "bom/internal/built/"
)

// What a maker prints on a product sheet is a figure of its own source.
var sourced = map[string]string{
	"pressure/process/membrane/table/common.csv": "the pressure at which product sheets say that an element was tested",
}

func TestTradeFiguresAreCheckValuesAndSaySo(t *testing.T) {
	root, seen := "..", 0
	require.NoError(t, filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name, _ := filepath.Rel(root, path)
		name = filepath.ToSlash(name)
		if d.IsDir() && strings.HasPrefix(d.Name(), ".") && name != "." {
			return filepath.SkipDir
		}
		if d.IsDir() || !slices.Contains(written, filepath.Ext(name)) {
			return nil
		}
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		found := strings.TrimSpace(tradeFigure.FindString(string(text)))
		if found == "" {
			return nil
		}
		seen++
		says := strings.Contains(strings.ToLower(string(text)), "common practice")
		if sourced[name] != "" || says && (strings.HasSuffix(name, "_test.go") || strings.HasPrefix(name, handCases) || strings.HasPrefix(name, testHelpers)) {
			return nil
		}
		t.Errorf("%s: %s is a figure of the trade, where one of our own belongs, or a test that says `common practice`", name, found)
		return nil
	}))
	require.Greater(t, seen, 10, "the tests that check the trade's figures are found")
}

// The pattern finds the figures as people write them, and nothing that only looks alike.
func TestTradeFigureIsFound(t *testing.T) {
	for _, text := range []string{"55 bar", "55bar", "at 55.0 bar", "5.5 MPa", "5,5 MPa", "Pressure: 55 * bar", "8 L/min", "8 l/min", "8 litres a minute", "800 psi", "2.1 gpm", "2.1 US gal", "60 L/h", "5-60 L/h", "60 to 65 L/h", "60 litres an hour"} {
		require.True(t, tradeFigure.MatchString(text), text)
	}
	for _, text := range []string{"155 bar", "5.55 bar", "55.2 bar", "55 degrees", "18 L/min", "0.8 L/min", "1,800 psi", "12.1 gpm", "160 L/h", "60 L/min", "55 barrels"} {
		require.False(t, tradeFigure.MatchString(text), text)
	}
}

// Order and fineness of the filters are the trade's too (common practice: 20 micron, then
// 5): no demo and no basket of the project has them so.
func TestNoDemoHasTheTradesFilters(t *testing.T) {
	demos, err := filepath.Glob("../testdata/*/*")
	require.NoError(t, err)
	require.NotEmpty(t, demos)
	for _, path := range demos {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		require.NotRegexp(t, `(?i)\b20 ?(micron|µm)`, string(text), path)
	}
	text, err := os.ReadFile("starter/starter.toml.tmpl")
	require.NoError(t, err)
	require.NotContains(t, string(text), "20 micron")
}
