package audit

import (
	"encoding/csv"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
)

// plants are old plants with the order of work on each, written by hand before the tool was run on
// it: a section for every joint in a CSV, and what the lines say in a text.
var plants = map[string]string{"oldplant": "../../testdata/oldplant/build.toml", "pilot": "testdata/pilot.toml"}

func oldPlant(t *testing.T, name string) (*bom.System, *Plan) {
	t.Helper()
	b, faults := bom.Read(plants[name])
	require.NoError(t, faults.Err())
	sys, faults := bom.Walk(b)
	require.NoError(t, faults.Err())
	p, err := Of(sys, cases(t).On)
	require.NoError(t, err)
	return sys, p
}

// Each joint of an old plant stands in the section that a fitter put it into by hand, before
// the tool was run on it.
func TestOldPlantByHand(t *testing.T) {
	for name := range plants {
		t.Run(name, func(t *testing.T) { byHand(t, name) })
	}
}

func byHand(t *testing.T, name string) {
	_, p := oldPlant(t, name)
	text, err := os.ReadFile("testdata/" + name + ".csv")
	require.NoError(t, err)
	r := csv.NewReader(strings.NewReader(string(text)))
	r.Comment = '#'
	rows, err := r.ReadAll()
	require.NoError(t, err)
	right := 0
	words := map[string]string{"wrong": "known wrong", "open": "open this first", "measure": "measure this", "prove": "prove by test", "watch": "leave and watch", "fine": "fine"}
	for i, row := range rows {
		x := p.Joints[i]
		if got := x.Section.String(); got != words[row[3]] {
			t.Errorf("J%s %s - %s: by hand %s (%s), the tool %s: %s", row[0], row[1], row[2], row[3], row[4], got, x.Why)
			continue
		}
		right++
	}
	require.Len(t, p.Joints, len(rows))
	t.Logf("%d of %d joints", right, len(rows))
}

// The lines stand in the order and say what was written by hand.
func TestOldPlantLines(t *testing.T) {
	for name := range plants {
		t.Run(name, func(t *testing.T) { linesByHand(t, name) })
	}
}

func linesByHand(t *testing.T, name string) {
	_, p := oldPlant(t, name)
	text, err := os.ReadFile("testdata/" + name + ".txt")
	require.NoError(t, err)
	at, right, want := 0, 0, 0
	for row := range strings.Lines(string(text)) {
		if strings.HasPrefix(row, "#") {
			continue
		}
		f := strings.Split(strings.TrimSpace(row), " | ")
		want++
		found := false
		for i := at; i < len(p.Lines); i++ {
			l := &p.Lines[i]
			said := strings.Join([]string{l.Do, l.Why, DayText(l.Look)}, "\n")
			if l.Section.String() == f[0] && (l.At == f[1] || strings.HasPrefix(l.At, f[1]+" ") || strings.HasPrefix(l.At, f[1]+":")) && strings.Contains(said, f[2]) {
				found, at = true, i+1
				break
			}
		}
		if !found {
			t.Errorf("not found, or not in this order: %s", row)
			continue
		}
		right++
	}
	t.Logf("%d of %d lines", right, want)
	if t.Failed() {
		for _, l := range p.Lines {
			if l.Section != Fine {
				t.Logf("%s | %s\n   do %s\n   why %s\n   worth %.2f %s %s", l.Section, l.At, l.Do, l.Why, l.Worth, l.Cost, DayText(l.Look))
			}
		}
	}
}
