package starter

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/joint"
	"handtight/bom/read"
	"handtight/bom/rule"
	"handtight/threads/identify"
)

// Every plant that can be asked for is a whole build: it reads, walks, and checks without a
// stop and without a question; its money can be counted.
func TestEveryStarterChecks(t *testing.T) {
	places := [][]string{{"DE"}, {"US"}, {"NZ", "US"}, {"JP"}}
	for _, volts := range []string{"12", "24 V", "230"} {
		for _, elements := range []string{"1", "2", "3"} {
			for _, d := range drives() {
				for k, place := range places {
					if k > 1 && elements != "2" {
						continue // the money of the other places does not go by the number of elements
					}
					name := fmt.Sprintf("%s, %s, %s, %s", volts, elements, d.Name, strings.Join(place, "+"))
					t.Run(name, func(t *testing.T) {
						var a Answers
						require.NoError(t, a.Take("volts", volts))
						require.NoError(t, a.Take("elements", elements))
						require.NoError(t, a.Take("drive", d.Name))
						require.NoError(t, a.Take("country", strings.Join(place, ", ")))
						text, err := Write(a)
						if d.Name == "dc" && a.Volts > mostBattery {
							require.ErrorContains(t, err, "no battery gives 230 V")
							return
						}
						require.NoError(t, err)
						build, faults := read.Parse("build.toml", text)
						require.NoError(t, faults.Err())
						sys, faults := bom.Walk(build)
						require.NoError(t, faults.Err())
						for _, f := range rule.Check(sys) {
							require.NotEqual(t, finding.Stop, f.Severity, "%s: %s: %s", f.Slug, f.At(), f.Reason)
							t.Log(f.Severity, f.Slug, f.At(), f.Reason)
						}
						require.Empty(t, joint.Questions(sys.Graph))
						_, err = sys.Order()
						require.NoError(t, err)
						require.Contains(t, string(text), "ask the maker")
						require.NotContains(t, string(text), "{{")
						require.Equal(t, a.Countries[0].Threads == "NPT", strings.Contains(string(text), "NPT male"))
					})
				}
			}
		}
	}
}

// The threads of a country are those that `identify` expects to meet there.
func TestThreadsAgree(t *testing.T) {
	for _, c := range countries() {
		at := slices.IndexFunc(identify.Countries(), func(region []string) bool { return slices.Contains(region[1:], c.Code) })
		require.GreaterOrEqual(t, at, 0, c.Code)
		require.Equal(t, identify.Countries()[at][0] == "North America", c.Threads == "NPT", c.Code)
	}
}

func TestAnswers(t *testing.T) {
	a := Usual()
	require.Equal(t, []any{24, 1, "dc", "DE"}, []any{a.Volts, a.Elements, a.Drive.Name, a.Countries[0].Code})
	require.NoError(t, a.Take("country", "New Zealand; us"))
	require.Equal(t, []string{"NZ", "US"}, []string{a.Countries[0].Code, a.Countries[1].Code})
	require.EqualError(t, a.Take("volts", "48"), `volts: "48" is not offered: answer one of 12, 24, 230`)
	require.ErrorContains(t, a.Take("drive", "recovry"), "did you mean `recovery`?")
	require.ErrorContains(t, a.Take("country", "Atlantis"), `"Atlantis" is not offered`)
	require.ErrorContains(t, a.Take("country", " , "), "is not offered")
	require.ErrorContains(t, a.Take("colour", "red"), "nothing of that name is asked")
	_, err := Write(Answers{})
	require.ErrorContains(t, err, "country: nothing is answered")
	for _, q := range Questions() {
		require.Contains(t, q.Choices, q.Usual)
	}
}

// A build saved with the line ends of another system is the same build, with its findings at
// the same lines.
func TestLineEnds(t *testing.T) {
	text, err := Write(Usual())
	require.NoError(t, err)
	check := func(text string) []finding.Finding {
		build, faults := read.Parse("build.toml", []byte(text))
		require.NoError(t, faults.Err())
		sys, faults := bom.Walk(build)
		require.NoError(t, faults.Err())
		return rule.Check(sys)
	}
	require.Equal(t, check(string(text)), check(strings.ReplaceAll(string(text), "\n", "\r\n")))
}
