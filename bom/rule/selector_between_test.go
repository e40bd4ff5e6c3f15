package rule

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// drawn is the flushed plant with a selector before its pump: the pump draws the sea by one way and
// the house's water by the other, and no one-way valve stands in the flush line.
func drawn(t *testing.T, between string) string {
	t.Helper()
	text := seaReachesHouse.Example(seaReachesHouse.Right())
	for _, e := range []amend{
		{`"hose/+", "feed", "tee", "pump"]`, `"hose/+", "feed", "into-a", "ways.a"]` + "\n[[run]]\nname = \"to the pump\"\npath = [\"ways.common\", \"pump\"]"},
		{`"valve", "check", "tee.branch"]`, `"valve", "ways.b"]`},
		{"id = \"check\"\n", "id = \"check\"\nextra = 1\n"}, {"id = \"tee\"\n", "id = \"tee\"\nextra = 1\n"},
	} {
		require.Contains(t, text, e.from)
		text = strings.Replace(text, e.from, e.to, 1)
	}
	return text + part("ways", "selector valve", between, `material = "bronze"`, `rated = "16 bar"`, "ports = { common = '1/2 NPT male', a = '1/2 NPT female', b = '1/2 NPT male' }") +
		part("into-a", "adaptor", `material = "bronze"`, `rated = "16 bar"`, "ports = { a = '1/2 NPT female swivel', b = '1/2 NPT male' }")
}

// A selector that shuts between its ways keeps the sea out of the house; one that is open between
// them, or of which nothing is said, does not.
func TestSelectorKeepsTheSeaOut(t *testing.T) {
	for between, kept := range map[string]bool{`between = "shut"`: true, `between = "open"`: false, "": false} {
		list, err := seen(drawn(t, between))
		require.NoError(t, err)
		reaches := false
		for _, f := range list {
			reaches = reaches || f.Slug == seaReachesHouse.Slug
		}
		require.Equal(t, !kept, reaches, "%q", between)
	}
}
