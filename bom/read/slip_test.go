package read

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

var (
	tableLine = regexp.MustCompile(`^\[+(\w+)\]+`)
	keyLine   = regexp.MustCompile(`^(\w+)\s*=`)
)

// One misspelt key is one fault, at its own line: what misses the key is not told besides.
func TestMisspeltKeyIsOneFault(t *testing.T) {
	tried := 0
	for _, demo := range []string{"recovery", "engine", "oldplant", "standing"} {
		path := filepath.Join("../../testdata", demo, "build.toml")
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		lines, table, seen := strings.Split(string(text), "\n"), "", map[string]bool{}
		for i, line := range lines {
			if m := tableLine.FindStringSubmatch(line); m != nil {
				table = m[1]
			}
			m := keyLine.FindStringSubmatch(line)
			if m == nil || seen[table+"."+m[1]] || table == "rates" {
				continue
			}
			seen[table+"."+m[1]] = true
			for _, slip := range slipsOf(m[1]) {
				tried++
				wrong := append([]string(nil), lines...)
				wrong[i] = slip + line[len(m[1]):]
				_, faults := Parse(path, []byte(strings.Join(wrong, "\n")))
				require.Len(t, faults, 1, "%s line %d, %s in [%s]: %v", demo, i+1, slip, table, faults)
				require.Equal(t, i+1, faults[0].Line, "%s, %s in [%s]: %v", demo, slip, table, faults)
				require.Contains(t, faults[0].Reason, "unknown key `"+slip+"`")
			}
		}
	}
	require.Greater(t, tried, 200)
}

// slipsOf are words that a key becomes by one slip of the finger.
func slipsOf(key string) []string {
	if len(key) < 4 {
		return []string{key + "x"}
	}
	swapped := []byte(key)
	n := len(swapped)
	swapped[n-1], swapped[n-2] = swapped[n-2], swapped[n-1]
	out := []string{key[:1] + key[2:]}
	if string(swapped) != key {
		out = append(out, string(swapped))
	}
	return out
}

// What else is wrong is told beside a slip, on other lines and on none twice.
func TestSlipHidesNothingElse(t *testing.T) {
	_, faults := Parse("build.toml", []byte("[build]\nname = \"x\"\ncurrncy = \"EUR\"\n\n[[item]]\nid = \"a\"\nkind = \"tee\"\nrated = \"much\"\n\n[[run]]\npat = [\"a\", \"b\"]\nname = \"r\"\n"))
	var lines []int
	for _, f := range faults {
		lines = append(lines, f.Line)
	}
	require.Equal(t, []int{3, 8, 11}, lines, "%v", faults)
}
