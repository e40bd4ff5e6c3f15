package fix

import (
	"strings"

	"handtight/bom/source"
)

type faultList = source.Faults

// addItems puts new items behind the last of the file's own, in its style of line ends.
func addItems(text string, items []string) string {
	if len(items) == 0 {
		return text
	}
	end := "\n"
	if strings.Contains(text, "\r\n") {
		end = "\r\n"
	}
	block := ""
	for _, it := range items {
		block += end + strings.ReplaceAll(strings.TrimSuffix(it, "\n"), "\n", end) + end
	}
	if text != "" && !strings.HasSuffix(text, "\n") {
		text += end
	}
	return text + block
}
