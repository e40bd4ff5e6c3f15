package build

import "strings"

// InWords writes names as people do: `a`, `b` and `c`.
func InWords(names []string) string {
	quoted := make([]string, len(names))
	for i, n := range names {
		quoted[i] = "`" + n + "`"
	}
	switch len(quoted) {
	case 0:
		return "none"
	case 1:
		return quoted[0]
	}
	return strings.Join(quoted[:len(quoted)-1], ", ") + " and " + quoted[len(quoted)-1]
}
