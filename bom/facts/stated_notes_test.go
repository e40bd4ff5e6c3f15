package facts_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/read"
)

// notes are two values of each key of what was seen of a joint, and of an end.
var notes = map[string][2]string{
	"joint.made_up": {"2019", "2020"}, "joint.dry_since": {"2025", "2020"}, "joint.wept": {`"2024, a drop"`, `"2025, a drop"`},
	"joint.tested":  {`{ pressure = "4 bar", on = 2020 }`, `{ pressure = "1 bar", on = 2020 }`},
	"joint.sealant": {`"none"`, `"tape"`}, "joint.turns": {`"1"`, `"6"`}, "joint.access": {`"behind"`, `"haul out"`},
	"end.said": {`"G 3/4"`, `"R 3/4"`}, "end.od": {`"26.2 mm"`, `"33.2 mm"`}, "end.id": {`"24.2 mm"`, `"30.3 mm"`}, "end.tpi": {`"14"`, `"11"`},
	"end.pitch": {`"1.8 mm"`, `"2.3 mm"`}, "end.taper": {`"yes"`, `"no"`}, "end.angle": {`"55"`, `"60"`}, "end.seat": {`"plain"`, `"60"`},
}

// Every key of what was seen, with either value, on joints and ends all over two plants, changes
// something of what check, order, duty or audit say; or the file is at fault, which says so.
func TestEveryNoteAnywhereIsUsed(t *testing.T) {
	if testing.Short() {
		t.Skip("some hundred builds")
	}
	standing, err := os.ReadFile(filepath.Join("..", "..", "testdata", "standing", "build.toml"))
	require.NoError(t, err)
	bare, _, _ := strings.Cut(string(standing), "[[joint]]")
	all, swallowed := 0, 0
	took := map[string]bool{}
	say := func(text string) (string, error) {
		a, err := told(text)
		if err != nil {
			return "", err
		}
		b, err := audited(text)
		return a + b, err
	}
	for name, text := range map[string]string{"standing": bare, "clean": plants(t)["clean"]} {
		b, faults := read.Parse("build.toml", []byte(text))
		require.NoError(t, faults.Err())
		sys, faults := bom.Walk(b)
		require.NoError(t, faults.Err())
		plain, err := say(text)
		require.NoError(t, err)
		try := func(table, at, key string) {
			v, ok := notes[table+"."+key]
			require.True(t, ok, "%s.%s has no case", table, key)
			for _, value := range v {
				got, err := say(text + "\n[[" + table + "]]\nat = " + at + "\n" + key + " = " + value + "\n")
				if err != nil {
					continue
				}
				all, took[table+"."+key] = all+1, true
				if got == plain {
					swallowed++
					t.Errorf("%s: [[%s]] at %s: %s = %s changes nothing", name, table, at, key, value)
				}
			}
		}
		for i, j := range sys.Graph.Joints {
			if name == "clean" && i%20 != 0 {
				continue
			}
			a, c, _ := strings.Cut(sys.Graph.JointName(j), " - ")
			for _, key := range keysOf(t, "[[joint]]\nat = [\"a.b\", \"c.d\"]\n") {
				if key != "at" {
					try("joint", `["`+a+`", "`+c+`"]`, key)
				}
			}
			for _, key := range keysOf(t, "[[end]]\nat = \"a.b\"\n") {
				if key != "at" {
					try("end", `"`+a+`"`, key)
					try("end", `"`+c+`"`, key)
				}
			}
		}
	}
	for key := range notes {
		require.True(t, took[key], "no plant takes %s", key)
	}
	t.Logf("%d of %d notes were used", all-swallowed, all)
}
