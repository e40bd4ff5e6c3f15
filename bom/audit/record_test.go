package audit

import (
	"bytes"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/read"
)

func planOf(t *testing.T, path string, text []byte, on time.Time) *Plan {
	t.Helper()
	b, faults := read.Parse(path, text)
	require.NoError(t, faults.Err())
	sys, faults := bom.Walk(b)
	require.NoError(t, faults.Err())
	p, err := Of(sys, on)
	require.NoError(t, err)
	return p
}

// The record is written into a block of its own: everything else stays byte for byte, with
// either line ending; written again it is the same; and a later audit knows what was said.
func TestRecord(t *testing.T) {
	const path = "../../testdata/oldplant/build.toml"
	plain, err := os.ReadFile(path)
	require.NoError(t, err)
	on := cases(t).On
	for _, text := range [][]byte{plain, bytes.ReplaceAll(plain, []byte("\n"), []byte("\r\n")), bytes.TrimSuffix(plain, []byte("\n"))} {
		p := planOf(t, path, text, on)
		once, err := p.Record(path, text)
		require.NoError(t, err)
		require.True(t, bytes.HasPrefix(once, text), "what stood there stands")
		require.Equal(t, bytes.Contains(text, []byte("\r\n")), bytes.Count(once, []byte("\n")) == bytes.Count(once, []byte("\r\n")))
		again := planOf(t, path, once, time.Time{})
		require.Equal(t, on, again.On, "the day is that of the record")
		twice, err := again.Record(path, once)
		require.NoError(t, err)
		require.Equal(t, string(once), string(twice))
		for i, x := range again.Joints {
			require.Equal(t, p.Joints[i].Section, x.Section)
			if x.Section == Fine {
				require.Nil(t, x.Prior)
				continue
			}
			require.Equal(t, x.Section.String(), x.Prior.Is)
		}
		// A year on: the watched joints are overdue, and the block alone is another.
		later := planOf(t, path, once, on.AddDate(1, 1, 0))
		overdue := 0
		for _, l := range later.Lines {
			overdue += strings.Count(l.Do, "overdue")
		}
		require.NotZero(t, overdue)
		third, err := later.Record(path, once)
		require.NoError(t, err)
		require.True(t, bytes.HasPrefix(third, text))
		require.NotEqual(t, string(once), string(third))
		after := append(bytes.Clone(once), "# a note of the owner below it\n"...)
		fourth, err := later.Record(path, after)
		require.NoError(t, err)
		require.True(t, bytes.HasSuffix(fourth, []byte("# a note of the owner below it\n")))
	}
}

// A record that is not marked as the tool's own is not touched, nor one without an end; and
// without a day none is written.
func TestRecordRefuses(t *testing.T) {
	const path = "case.toml"
	c := oneCase{Plant: "house", A: "1/2 NPT male", B: "1/2 NPT female"}
	text, _ := c.build()
	_, err := planOf(t, path, []byte(text), time.Time{}).Record(path, []byte(text))
	require.ErrorContains(t, err, "--on")
	own := text + "[audit]\non = 2026-01-01\n"
	_, err = planOf(t, path, []byte(own), time.Time{}).Record(path, []byte(own))
	require.ErrorContains(t, err, "no line marks")
	open := text + recordBegins + "\n[audit]\non = 2026-01-01\n"
	_, err = planOf(t, path, []byte(open), time.Time{}).Record(path, []byte(open))
	require.ErrorContains(t, err, "does not end")
}

// A day before something that has been is refused, and without a day no time counts.
func TestDays(t *testing.T) {
	c := oneCase{Plant: "house", A: "R 1/2 male", B: "G 1/2 female", Facts: "[[joint]]\nat = JOINT\ndry_since = 2020-05-01"}
	text, _ := c.build()
	b, faults := read.Parse("case.toml", []byte(text))
	require.NoError(t, faults.Err())
	sys, faults := bom.Walk(b)
	require.NoError(t, faults.Err())
	_, err := Of(sys, time.Date(2019, 1, 1, 0, 0, 0, 0, time.UTC))
	require.ErrorContains(t, err, "lies before")
	p, err := Of(sys, time.Time{})
	require.NoError(t, err)
	require.Equal(t, "2020-05-01", DayText(p.On))
	require.Contains(t, p.From, "the latest day")
	bare := oneCase{Plant: "house", A: "R 1/2 male", B: "G 1/2 female"}
	text, _ = bare.build()
	p = planOf(t, "case.toml", []byte(text), time.Time{})
	require.True(t, p.On.IsZero())
	require.Empty(t, DayText(p.In(Watch)[0].Look))
}

// No section clears what nobody looked at, and no word promises more than a check can.
func TestNothingIsPromised(t *testing.T) {
	_, p := oldPlant(t, "oldplant")
	seen := map[int]bool{}
	for _, l := range p.Lines {
		text := strings.ToLower(l.Do + l.Why + l.Stay)
		require.NotContains(t, text, "certified")
		require.NotRegexp(t, `\bsafe\b`, text)
		for _, x := range l.Joints {
			seen[x.Joint.Number] = true
		}
		if l.Section != Fine {
			require.NotEmpty(t, l.Do)
			require.NotEmpty(t, l.Cost)
			require.NotEmpty(t, l.Stay)
		}
		require.NotEmpty(t, l.Why)
	}
	require.Len(t, seen, len(p.Joints), "a joint stands in no section")
	for _, x := range p.In(Fine) {
		require.True(t, x.Read)
		for _, pair := range x.Belief.Pairs {
			require.False(t, pair.Probability >= 0.05 && x.bad(&pair.Mating), "J%d", x.Joint.Number)
		}
	}
}

// A part that the record speaks of is changed, as the audit asked: the file is still taken, and the
// next audit says which joints are no more.
func TestAChangedPartLeavesTheRecord(t *testing.T) {
	_, p := oldPlant(t, "oldplant")
	text, err := os.ReadFile(plants["oldplant"])
	require.NoError(t, err)
	withRecord, err := p.Record("build.toml", text)
	require.NoError(t, err)
	changed := strings.ReplaceAll(string(withRecord), "\"throttle-nipple\"", "\"new-nipple\"")
	changed = strings.ReplaceAll(changed, "at = [\"gauge-tee.b\", \"new-nipple.a\"]", "at = [\"gauge-tee.b\", \"throttle-nipple.a\"]")
	b, faults := read.Parse("build.toml", []byte(changed))
	require.NoError(t, faults.Err())
	sys, faults := bom.Walk(b)
	require.NoError(t, faults.Err())
	next, err := Of(sys, cases(t).On)
	require.NoError(t, err)
	require.Equal(t, []string{"gauge-tee.b - throttle-nipple.a (prove by test)", "throttle-nipple.b - throttle.in (prove by test)"}, next.Gone)
	again, err := next.Record("build.toml", []byte(changed))
	require.NoError(t, err)
	require.NotContains(t, string(again), "\"throttle-nipple.a\"")
}
