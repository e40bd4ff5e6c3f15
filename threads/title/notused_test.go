package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What was understood and changes nothing is named with its unit, and with what it is.
func TestWhatIsNotUsedIsNamedWithItsUnit(t *testing.T) {
	const elbow = "NPT 1/2 female; NPT 1/2 female"
	readMeanings(t, []meaning{
		{"a code of letters and figures", `Elbow 1/2 NPT female AB-1234`, elbow, "AB-1234: taken for a code"},
		{"a code that begins with figures", `Elbow 1/2 NPT female 1234-AB`, elbow, "1234-AB: taken for a code"},
		{"a code of three pieces", `Elbow 1/2 NPT female QZ12-3456-QZ`, elbow, "QZ12-3456-QZ: taken for a code"},
		{"a stroke in it", `Elbow 1/2 NPT female QZ/1234`, elbow, "QZ/1234: taken for a code"},
		{"the hyphen behind it is not its own", `Elbow 1/2 NPT female QZ1234-`, elbow, "QZ1234: taken for a code"},
		{"letters alone are a word that is not understood", `Elbow 1/2 NPT female QZ-QX`, elbow, "QZ?; QX?"},
		{"the unit apart belongs to its figure", `Elbow 1/2 NPT female 24 V`, elbow, "24 V: a voltage"},
		{"so does a word behind it", `Elbow 1/2 NPT female 63 mm dial`, elbow, "63 mm dial: a dial"},
		{"a part without any end", `Hose clamp 20 mm`, "", "20 mm: a clamp has no end"},
		{"millimetres of nothing", `20 mm`, "", "20 mm: a measure: nothing says that it is of an end"},
		{"words that name no part with an end", `Cable 20 mm`, "", "20 mm: no end: the words name no part with one"},
	})
}

// A code of letters that mean nothing and figures is named whole at either end of a line, and changes no end.
func TestACodeChangesNoEnd(t *testing.T) {
	lines := map[string]string{"Elbow 1/2 NPT female": "NPT 1/2 female; NPT 1/2 female", "Hose tail 3/4 BSPP male x 20 mm": "G 3/4 male; BARB 20 mm", "Tee 10 mm push-in": "PUSH 10 mm; PUSH 10 mm; PUSH 10 mm"}
	texts := []string{"Elbow 1/2 NPT female", "Hose tail 3/4 BSPP male x 20 mm", "Tee 10 mm push-in"}
	rapid.Check(t, func(t *rapid.T) {
		code := rapid.StringMatching(`[QZ][QZ][QZ]-?[1-9][0-9]{3,5}(-[1-9][0-9]{2})?`).Draw(t, "code")
		line := rapid.SampledFrom(texts).Draw(t, "line")
		text := line + " " + code
		if rapid.Bool().Draw(t, "first") {
			text = code + " " + line
		}
		r := Read(text)
		require.Equal(t, lines[line], brief(r.Ends), text)
		named := ""
		for _, n := range r.NotUsed {
			named += n.Words + "|"
		}
		require.Contains(t, named, code, text)
		require.Empty(t, r.Unread, text)
		require.Equal(t, 1, strings.Count(named, "|"), "once: %s", named)
	})
}
