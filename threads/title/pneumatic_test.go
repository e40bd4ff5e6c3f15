package title

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Codes of push-in fittings say a tube and a thread where the line gives no sizes of its own. Common practice of the
// trade; the answers are written from memory of its lists.
func TestCodesOfPushInFittings(t *testing.T) {
	readTitled(t, []titled{
		{`PC6-01`, "PUSH 6 mm; PIPE 1/8 male", "adaptor", ""},
		{`Push-in fitting PL12-04`, "PUSH 12 mm; PIPE 1/2 male", "elbow", ""},
		{`PCF8-02 push in`, "PUSH 8 mm; PIPE 1/4 female", "adaptor", ""},
		{`PC4-M5`, "PUSH 4 mm; M M5x0.8 male", "adaptor", ""},
		{`气动三通 PE-10`, "PUSH 10 mm; PUSH 10 mm; PUSH 10 mm", "tee", ""},
		{`PV8 push in`, "PUSH 8 mm; PUSH 8 mm", "elbow", ""},
		{`PC8-02 8 mm push-in x 1/4 BSPT male`, "PUSH 8 mm; R 1/4 male", "", ""},
	})
	for _, text := range []string{`PE 8`, `PC8-09`, `PC9-02`, `XPC8-02`, `PE-8 tee`} {
		require.NotContains(t, brief(Read(text).Ends), "PUSH 8 mm", text)
	}
	for code := range readLexicon().air {
		require.LessOrEqual(t, len(code), 3, "a code is two or three letters")
		require.GreaterOrEqual(t, len(code), 2, code)
	}
}
