package read

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/starter"
)

// One misspelt section is one fault, however much hangs on it: what names its parts is not
// looked at before it has its name.
func TestMisspeltSectionIsOneFault(t *testing.T) {
	good, err := starter.Write(starter.Usual())
	require.NoError(t, err)
	for section, wrong := range map[string]string{
		"[build]": "[biuld]", "[duty]": "[dutty]", "[spares]": "[spare]", "[[vendor]]": "[[vendors]]", "[[item]]": "[[items]]",
		"[[hose]]": "[[hoses]]", "[[run]]": "[[runs]]", "[[offer]]": "[[ofer]]",
	} {
		text := strings.ReplaceAll("\n"+string(good), "\n"+section+"\n", "\n"+wrong+"\n")
		_, faults := Parse("build.toml", []byte(text))
		require.Len(t, faults, 1, "%s: %v", wrong, faults)
		require.Contains(t, faults[0].Reason, "unknown key `"+strings.Trim(wrong, "[]")+"`")
		require.Contains(t, faults[0].Remedy, strings.Trim(section, "[]"))
	}
}
