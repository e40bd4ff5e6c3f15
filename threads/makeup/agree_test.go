package makeup_test

import (
	"maps"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
	"handtight/threads/internal/endtest"
	"handtight/threads/makeup"
)

// parts names what a text says goes between two ends, each sort once.
func parts(text string) map[string]bool {
	text = strings.ToLower(text)
	out := map[string]bool{}
	for word, part := range map[string]string{
		"washer": "washer", "gasket": "washer", "o-ring": "o-ring", "cutting ring": "cutting ring", "olive": "olive",
		"clamp": "clamp", "tape": "tape", "paste": "tape", "bedding": "bedding",
	} {
		if strings.Contains(text, word) {
			out[part] = true
		}
	}
	return out
}

// placed names what a make-up has put between two ends.
func placed(mk makeup.Makeup) map[string]bool {
	out := map[string]bool{}
	for part, is := range map[string]bool{
		"washer": mk.Washer != "", "o-ring": mk.ORing != "", "cutting ring": strings.HasPrefix(mk.Ring, "cutting ring"),
		"olive": strings.HasPrefix(mk.Ring, "olive"), "clamp": mk.Clamps > 0, "tape": mk.Wraps > 0, "bedding": strings.Contains(mk.Sealant, "bedding"),
	} {
		if is {
			out[part] = true
		}
	}
	return out
}

// What closes a joint, why, and how it is made up are three tellings of one fact, over
// every pair of ends of one size that can be said: each family with each, each seal
// with each, fixed and swivel, metal and plastic. What closes is what is put in; no
// reason names a part that is not there; a joint that holds is made up, and one that
// does not is not.
func TestReasonAndMakeupAgree(t *testing.T) {
	pairs, closed := 0, 0
	faults := map[string]string{}
	for _, a := range everyEnd(t, threads.Male) {
		for _, b := range everyEnd(t, threads.Female) {
			if a.Form.Pitch != b.Form.Pitch || a.Form.Major-b.Form.Major > 1 || b.Form.Major-a.Form.Major > 1 {
				continue
			}
			pairs++
			m := threads.Mate(a, b)
			mk := makeup.Of(&m)
			name := a.String() + " in " + b.String()
			if m.Verdict > threads.LowPressureOnly {
				require.Empty(t, m.Closes(), name)
				require.Empty(t, placed(mk), name)
				require.False(t, mk.Torque.Known || mk.TurnsPast.Known, name)
				continue
			}
			closed++
			require.NotEmpty(t, m.Closes(), name)
			has := placed(mk)
			said := parts(m.Closes())
			switch {
			case strings.Contains(m.Closes(), "no sealant"):
				require.Zero(t, mk.Wraps, name)
			case strings.Contains(m.Closes(), "with sealant"):
				said["tape"] = true
			case m.Makes() == "stud-ring":
				said = nil // the stud brings its own
			}
			if len(said) == 0 {
				said = map[string]bool{}
			}
			if !maps.Equal(said, has) {
				faults[m.Closes()+" is made with "+mk.String()] = name
			}
			why := strings.NewReplacer(a.String(), "", b.String(), "").Replace(m.Reason())
			for part := range parts(why) {
				if !has[part] && part != "tape" && m.Question() == "" && !strings.Contains(why, "need not have a face") {
					faults[why+" is made with "+mk.String()] = name
				}
			}
		}
	}
	t.Logf("%d pairs, %d of them close", pairs, closed)
	require.Empty(t, faults)
	require.Greater(t, closed, 1000)
}

// everyEnd lists one size of each family with every seal, fixed and swivel, metal and
// plastic: 1/2 or what has its like in other families.
func everyEnd(t *testing.T, sex threads.Sex) []threads.End {
	size := map[threads.Family]string{
		threads.M: "M22x1.5", threads.MT: "M22x1.5", threads.ISO6149: "M22x1.5", threads.Cone24L: "15L", threads.Cone24S: "14S",
		threads.JIC: "-8", threads.SAE45: "-8", threads.ORB: "-8", threads.ORFS: "-6", threads.UN: "3/4-16", threads.NH: "3/4", threads.PG: "PG16",
	}
	var out []threads.End
	for _, family := range endtest.ThreadFamilies() {
		if only := family.Facts().Only; only != threads.NoSex && only != sex {
			continue
		}
		name := size[family]
		if name == "" {
			name = "1/2"
		}
		form, ok := threads.Find(family, name)
		require.True(t, ok, "%s %s", family, name)
		for _, seal := range append(threads.AllSeals(), threads.NoSeal) {
			for n := range 4 {
				e := threads.Threaded(form, sex)
				e.Seal, e.Swivel, e.Plastic = seal, n&1 != 0, n&2 != 0
				out = append(out, e)
			}
		}
	}
	return out
}
