package bom_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The figures that everybody in the trade repeats (common practice, no source):
// they check answers, and no demo, starter, page of the project or message rests
// on them.
var tradeFigure = regexp.MustCompile(`\b55 ?bar\b|\b8 L/min\b|\b800 ?psi\b|\b2\.1 (US )?gal|\b60 L/h\b|\b60 to 65 L/h`)

// Hand cases that are solved with the trade's figures, so that they can be held
// against what others reckon.
const handCases = "testdata/states/"

func TestTradeFiguresAreCheckValuesAndSaySo(t *testing.T) {
	root := ".."
	require.NoError(t, filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name, _ := filepath.Rel(root, path)
		name = filepath.ToSlash(name)
		if d.IsDir() && strings.HasPrefix(d.Name(), ".") && name != "." {
			return filepath.SkipDir
		}
		ours := name == "README.md" || strings.HasSuffix(name, ".toml") || strings.HasSuffix(name, ".go")
		if d.IsDir() || !ours {
			return nil
		}
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		found := tradeFigure.FindString(string(text))
		if found == "" {
			return nil
		}
		if strings.HasSuffix(name, "_test.go") || strings.HasPrefix(name, handCases) {
			if !strings.Contains(strings.ToLower(string(text)), "common practice") {
				t.Errorf("%s has %s and does not say `common practice`", name, found)
			}
			return nil
		}
		t.Errorf("%s: %s is a figure of the trade, where one of our own belongs", name, found)
		return nil
	}))
}
