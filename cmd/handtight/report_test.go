package main

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom/facts"
	"handtight/bom/finding"
	"handtight/bom/rule"
	"handtight/pressure/quantity"
)

// printed runs a command at 80 columns and gives its lines.
func printed(t *testing.T, args ...string) []string {
	t.Setenv("COLUMNS", "80")
	var out, errOut bytes.Buffer
	require.NotEqual(t, exitFault, run(args, strings.NewReader(""), &out, &errOut), "%v: %s", args, errOut.String())
	return strings.Split(strings.TrimSuffix(out.String(), "\n"), "\n")
}

// A plant of many stops stands on two screens: every entry with its number, in order, under
// what comes of it, each with what to do.
func TestManyStopsOnTwoScreens(t *testing.T) {
	for _, build := range []string{carelessBuild, "../../testdata/refit/build.toml", "../../testdata/engine-careless/build.toml", "../../testdata/arrows/build.toml", cleanBuild} {
		lines := printed(t, "check", build)
		require.LessOrEqual(t, len(lines), 2*plainHeight, build)
	}
	lines := printed(t, "check", carelessBuild)
	head := regexp.MustCompile(`^ ?(\d+) [a-z-]+ `)
	var numbers []int
	for i, l := range lines {
		if m := head.FindStringSubmatch(l); m != nil {
			n, err := strconv.Atoi(m[1])
			require.NoError(t, err)
			numbers = append(numbers, n)
			if len(numbers) <= 15 { // where it is very many, the least grave at the end have a line each; the questions are whole before them
				require.Regexp(t, `^   (why|do)   `, lines[i+1])
			}
		}
	}
	require.NotEmpty(t, numbers)
	for i, n := range numbers {
		require.Equal(t, i+1, n)
	}
	require.Contains(t, lines[:3], "DO NOT ORDER, DO NOT PRESSURISE", "the verdict stands first, behind the name and the file")
	require.Regexp(t, `\b\d+ stops, \d+ cautions, \d+ notes`, strings.Join(lines[:4], " "))
}

// With --all nothing is cut and nothing left out: each finding's reason and remedy stand there.
func TestAllIsSaid(t *testing.T) {
	sys, err := new(app).load(carelessBuild)
	require.NoError(t, err)
	text := strings.Join(strings.Fields(strings.Join(printed(t, "check", carelessBuild, "--all"), " ")), " ")
	for _, f := range facts.Of(sys, rule.Check(sys)).Findings {
		require.Contains(t, text, strings.Join(strings.Fields(f.Reason), " "))
		require.Contains(t, text, strings.Join(strings.Fields(f.Remedy), " "))
		require.Contains(t, text, fmt.Sprintf("build.toml:%d", f.Line))
	}
	require.NotContains(t, text, "handtight why always", "what stands always is said itself")
}

// The report in order of danger, as a property: whatever the findings, their headings never
// go back to a worse one, known to be wrong stands before not known, within a heading the
// pressure falls, each group is printed once, and no line is wider than the terminal, also
// with letters of two columns and marks that combine.
func TestReportProperty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := rapid.SliceOfN(rapid.Custom(drawnFinding), 1, 40).Draw(t, "findings")
		f := &facts.Facts{Findings: facts.Findings(list)}
		u := &ui{width: rapid.IntRange(leastWidth, widestLines).Draw(t, "width")}
		r := &report{ui: u, f: f, entries: entriesOf(f.Findings)}
		var severities []string
		for i, e := range r.entries {
			require.Equal(t, i+1, e.number)
			severities = append(severities, e.severity)
		}
		require.True(t, slices.IsSortedFunc(severities, func(a, b string) int { return rank(a) - rank(b) }))
		var worst, at []finding.Finding
		for _, e := range r.entries {
			for k := range list {
				if f.Findings[k].Group == e.number {
					at = append(at, list[k])
				}
			}
			worst = append(worst, at[finding.Entries(at)[0][0]])
			at = nil
		}
		for i := range len(worst) - 1 {
			require.Zero(t, finding.Entries(worst[i : i+2])[0][0], "the worst of each entry, by danger")
		}
		for _, d := range []detail{leastDetail, r.fit(48), mostDetail} {
			text := strings.Join(r.lines(d), "\n")
			for _, l := range r.lines(d) {
				require.LessOrEqual(t, widthOf(l), u.width, l)
			}
			for _, e := range r.entries {
				if e.severity == "stop" || d == mostDetail {
					require.Regexp(t, fmt.Sprintf(`(?m)^ *%d `, e.number), text)
				}
			}
		}
	})
}

func rank(severity string) int {
	return slices.Index([]string{"stop", "caution", "note"}, severity)
}

func drawnFinding(t *rapid.T) finding.Finding {
	name := rapid.SampledFrom([]string{"pump", "三通-ホース", "호스/links", "gro\u0308sse", "a-long-name-of-a-part/+12"})
	subject := finding.Subject{Kind: finding.Unit, Unit: name.Draw(t, "unit")}
	if rapid.Bool().Draw(t, "joint") {
		subject = finding.Subject{Kind: finding.Joint, Joint: rapid.IntRange(1, 200).Draw(t, "number"), Unit: subject.Unit, Port: "a", Unit2: name.Draw(t, "other"), Port2: "b"}
	}
	words := rapid.StringMatching(`([a-z三通ホ]{1,9} ){0,40}[a-z]{1,9}`)
	return finding.Finding{
		Severity: rapid.SampledFrom([]finding.Severity{finding.Stop, finding.Caution, finding.Note}).Draw(t, "severity"),
		Slug:     rapid.SampledFrom([]string{"same-sex", "under-rated", "chlorine-on-membrane", "material-not-for-seawater"}).Draw(t, "slug"),
		Subject:  subject, Reason: words.Draw(t, "reason"), Remedy: words.Draw(t, "remedy"),
		Consequence: finding.Consequence(rapid.IntRange(int(finding.Bursts), int(finding.Money)).Draw(t, "consequence")),
		NotKnown:    rapid.Bool().Draw(t, "not known"), Stake: finding.Stake{Pressure: quantity.Bar * quantity.Pressure(rapid.IntRange(0, 100).Draw(t, "bar")), Known: rapid.Bool().Draw(t, "known")},
		Place: finding.Place{File: "build.toml", Line: rapid.IntRange(0, 9999).Draw(t, "line")},
	}
}

// A question that several ports raise is asked once, with every joint that it settles.
func TestQuestionsOnce(t *testing.T) {
	r := &report{ui: &ui{width: plainWidth}, f: &facts.Facts{
		Findings: facts.Findings([]finding.Finding{{Severity: finding.Stop, Subject: finding.Subject{Kind: finding.Joint, Joint: 9}}}),
		Questions: []facts.Question{
			{Port: "pump.in", Ask: "Has it a chamfer?", Joints: 2, At: []int{10, 9}}, {Port: "meter.in", Ask: "Which end?", Joints: 1, At: []int{4}},
			{Port: "pump.out", Ask: "Has it a chamfer?", Joints: 1, At: []int{3}},
		},
	}}
	require.Equal(t, []string{
		"ASK BEFORE BUYING", "  - pump.in, pump.out (settles J3, J9, J10; 1 stop): Has it a chamfer?", "  - meter.in (settles J4): Which end?",
	}, r.questions(true))
}
