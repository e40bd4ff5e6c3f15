package main

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"handtight/bom/facts"
	"handtight/bom/finding"
	"handtight/bom/rule"
	"handtight/bom/state"
)

func (a *app) checkCommand() *cobra.Command {
	var state string
	var states, parts bool
	var mend fixFlags
	cmd := &cobra.Command{
		Use:   "check BUILD",
		Short: "What does not mate, seal or hold, and what to ask before buying",
		Long: `Reads a build file, walks it port by port, and reports: findings, worst first, each with
its remedy; a line for each pressure segment; the questions to ask before buying; and
the counts. Exit status 0 when nothing stops, 1 when stops are found, 2 when the file
cannot be taken.

A state is one way the build can stand: normal, flush, one valve left shut, one part that
fails. --state shows the pressures of one, --states of all, instead of the findings.

--parts shows each hose, fitting and other part instead: the highest and the lowest
pressure that it sees, what brings them about, what it holds, and the margin.

--fix OUT writes a copy of the build with the parts put in that mend its joints, and shows
what it changes first: comments and order stay, and the copy is checked again after each
change. Questions are not answered by it, and no rating is typed in.`,
		Example: `  handtight check testdata/clean/build.toml
  handtight check build.toml --state "throttle shut"
  handtight check build.toml --parts
  handtight check build.toml --fix mended.toml
  handtight check build.toml --json > facts.json`,
		Args: exactly(1, "one build file"),
		RunE: func(_ *cobra.Command, args []string) error {
			if mend.out != "" || mend.dry {
				return a.fixBuild(args[0], &mend)
			}
			sys, err := a.load(args[0])
			if err != nil {
				return err
			}
			views, err := viewsAsked(sys, state, states)
			if err != nil {
				return err
			}
			findings := rule.Check(sys)
			a.judge(findings)
			f := facts.Of(sys, findings)
			f.States = facts.States(views)
			if a.json {
				return a.ui.printJSON(f)
			}
			a.printTitle(f)
			switch {
			case states:
				a.printStates(f.States)
			case state != "":
				a.printState(&f.States[0])
			case parts:
				a.printParts(f)
			default:
				a.printCheck(f)
			}
			a.printCounts(&f.Counts)
			return nil
		},
	}
	cmd.Flags().StringVar(&state, "state", "", "show the pressures of one state, by its name")
	cmd.Flags().BoolVar(&states, "states", false, "show the pressures of every state")
	cmd.Flags().BoolVar(&parts, "parts", false, "show what each hose, fitting and other part sees and holds")
	mend.add(cmd)
	cmd.MarkFlagsMutuallyExclusive("state", "states", "parts", "fix")
	return cmd
}

// judge sets the exit status by the findings.
func (a *app) judge(findings []finding.Finding) {
	if finding.Count(findings, finding.Stop) > 0 {
		a.status = exitStops
	}
}

func (a *app) printCheck(f *facts.Facts) {
	for i := range f.Findings {
		a.printFinding(&f.Findings[i])
	}
	a.printSegments(f.Segments)
	a.printMakes(f.Duty)
	a.printCautions(f.Cautions)
	a.printQuestions(f.Questions)
	if len(f.Findings) > 0 {
		a.ui.say("", "Explained: handtight why %s", f.Findings[0].Slug)
	}
}

func (a *app) printTitle(f *facts.Facts) { a.printHead(f.Build, f.File) }

func (a *app) printHead(name, file string) {
	a.ui.say(bold, "%s", name)
	a.ui.say("", "(%s)", file)
	a.ui.line("")
}

func (a *app) printFinding(f *facts.Finding) {
	u := a.ui
	where := ""
	if f.Line > 0 {
		where = fmt.Sprintf("%s line %d", f.File, f.Line)
	}
	head := fmt.Sprintf("%s %s", u.severity(f.Severity), u.paint(bold, f.Slug))
	if 9+len(f.Slug)+2+widthOf(where) <= u.width {
		u.line("%s  %s", head, where)
	} else {
		u.line("%s", head)
		u.fold("", where)
	}
	u.fold("", f.At)
	u.fold("  why", f.Reason)
	u.fold("  do", f.Remedy)
	if len(f.Remedies) > 0 {
		r := &f.Remedies[0]
		where := "between the two"
		if r.Do == "change" {
			where = "in the place of " + r.At
		}
		u.fold("  buy", strings.Join(r.Buy, "; and ")+": "+where)
	}
	u.line("")
}

// segmentColumns are the columns of the pressure table; all figures are in bar.
var segmentColumns = []column{
	{title: ""}, {title: "segment (bar)", flex: true}, {title: "normal", right: true}, {title: "worst", right: true},
	{title: "holds", right: true}, {title: "margin", right: true}, {title: "weakest member"},
}

// printSegments prints a line a segment, and under the table what brings the worst
// about; on a narrow terminal each segment is folded.
func (a *app) printSegments(list []facts.Segment) {
	u := a.ui
	if len(list) == 0 {
		return
	}
	u.say(bold, "Pressure by segment: normal and worst, and what the weakest member holds")
	var rows [][]string
	var holds []facts.Allowable
	for i := range list {
		rows, holds = append(rows, segmentRow(&list[i])), append(holds, list[i].Allowable)
	}
	if !u.table(segmentColumns, rows) {
		for i := range list {
			a.foldSegment(&list[i])
		}
	} else {
		for i := range list {
			if text := unrated(&list[i]); text != "" {
				u.fold("?", fmt.Sprintf("%s: %s", list[i].Name, text))
			}
		}
	}
	u.say("", "H = high pressure: above %.0f bar in normal running", state.HighPressure)
	a.printBasisNotes(holds)
	u.line("")
	a.printWorst(list)
}

func segmentRow(g *facts.Segment) []string {
	row := []string{" ", g.Name, figure(g.Normal), figure(g.Worst), "?", "", "not known"}
	if g.High {
		row[0] = "H"
	}
	if g.Bar.Known {
		row[4], row[6] = figure(g.Bar), fmt.Sprintf("%s (%s)", g.Weakest, basisOf(&g.Allowable))
	} else if g.AtMost.Known {
		row[6] = "not all known"
	}
	row[5] = marginText(g.Margin, &g.Allowable)
	return row
}

// marginText is a margin in a table: nothing where it is not known what is held, and "none"
// where no pressure bounds what it sees.
func marginText(m facts.Number, held *facts.Allowable) string {
	switch {
	case m.Known:
		return figure(m)
	case held.Bar.Known:
		return "none"
	}
	return ""
}

// unrated says of which members of a segment nothing tells what they hold, and what the
// others do; "" where all are known.
func unrated(g *facts.Segment) string {
	if len(g.Unrated) == 0 {
		return ""
	}
	text := "nothing says what " + strings.Join(g.Unrated, ", ") + " holds"
	if len(g.Unrated) > 1 {
		text = "nothing says what " + strings.Join(g.Unrated, ", ") + " hold"
	}
	if g.AtMost.Known {
		text += fmt.Sprintf("; of the others the weakest is %s, %s bar (%s)", g.Weakest, figure(g.AtMost), basisOf(&g.Allowable))
	}
	return text
}

func (a *app) foldSegment(g *facts.Segment) {
	row := segmentRow(g)
	a.ui.fold("  "+row[0], g.Name)
	a.ui.fold("", fmt.Sprintf("%s, worst %s", bars(g.Normal), bars(g.Worst)))
	if g.Bar.Known {
		a.ui.fold("", fmt.Sprintf("%s holds %s bar, margin %s", row[6], row[4], row[5]))
	} else {
		a.ui.fold("", "what it holds is not known")
		if text := unrated(g); text != "" {
			a.ui.fold("", text)
		}
	}
}

// printWorst says what brings about the worst pressures and the vacuum, once for
// each cause.
func (a *app) printWorst(list []facts.Segment) {
	u := a.ui
	var causes []string
	reach := map[string][]string{}
	add := func(cause, segment string) {
		if reach[cause] == nil {
			causes = append(causes, cause)
		}
		reach[cause] = append(reach[cause], segment)
	}
	for i := range list {
		g := &list[i]
		if g.Raised {
			add(fmt.Sprintf("%s, with %s", bars(g.Worst), g.Cause), g.Name)
		}
		if g.LowCause != "" {
			add("vacuum, with "+g.LowCause, g.Name)
		}
	}
	if len(causes) == 0 {
		return
	}
	u.say(bold, "What brings the worst about")
	for _, c := range causes {
		u.fold("  -", c+": in "+strings.Join(reach[c], "; "))
	}
	u.line("")
}

// figure is a pressure in a table.
func figure(n facts.Number) string {
	if n.Unbounded() {
		return "no bound"
	}
	return strconv.FormatFloat(math.Round(n.Value*10)/10+0, 'f', -1, 64)
}

func (a *app) printQuestions(questions []facts.Question) {
	u := a.ui
	if len(questions) == 0 {
		return
	}
	u.say(bold, "Ask before buying")
	for i, q := range questions {
		u.fold(fmt.Sprintf("  %d.", i+1), fmt.Sprintf("%s: %s (settles %s)", q.Port, q.Ask, counted(q.Joints, "joint")))
	}
	u.line("")
}

func (a *app) printCautions(list []string) {
	a.ui.say(bold, "Always")
	for _, c := range list {
		a.ui.fold("  -", c)
	}
	a.ui.line("")
}

func (a *app) printCounts(n *facts.Counts) {
	u := a.ui
	text := fmt.Sprintf("%s, %s, %s; %s, %s.", counted(n.Stop, "stop"), counted(n.Caution, "caution"), counted(n.Note, "note"),
		counted(n.Joints, "joint"), counted(n.Segments, "segment"))
	if n.Stop > 0 {
		u.say(red, "%s Do not order or pressurise before the stops are settled.", text)
		return
	}
	u.say(green, "%s Nothing stops.", text)
}

// bars writes a pressure for people.
func bars(n facts.Number) string {
	if n.Unbounded() {
		return "pressure without bound"
	}
	return figure(n) + " bar"
}
