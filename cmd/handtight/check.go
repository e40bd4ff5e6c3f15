package main

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/spf13/cobra"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/rule"
)

func (a *app) checkCommand() *cobra.Command {
	var state string
	var states, parts bool
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
pressure that it sees, what brings them about, what it holds, and the margin.`,
		Example: `  handtight check testdata/clean/build.toml
  handtight check build.toml --state "throttle shut"
  handtight check build.toml --parts
  handtight check build.toml --json > facts.json`,
		Args: exactly(1, "one build file"),
		RunE: func(_ *cobra.Command, args []string) error {
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
			if a.json {
				facts := checkFactsOf(sys, findings)
				facts.States = stateFactsOf(views)
				return a.ui.printJSON(facts)
			}
			switch {
			case states:
				a.printTitle(sys)
				a.printStates(views)
				a.printCounts(sys, findings)
			case state != "":
				a.printTitle(sys)
				a.printState(views[0])
				a.printCounts(sys, findings)
			case parts:
				a.printTitle(sys)
				a.printParts(sys)
				a.printCounts(sys, findings)
			default:
				a.printCheck(sys, findings)
			}
			return nil
		},
	}
	cmd.Flags().StringVar(&state, "state", "", "show the pressures of one state, by its name")
	cmd.Flags().BoolVar(&states, "states", false, "show the pressures of every state")
	cmd.Flags().BoolVar(&parts, "parts", false, "show what each hose, fitting and other part sees and holds")
	cmd.MarkFlagsMutuallyExclusive("state", "states", "parts")
	return cmd
}

// judge sets the exit status by the findings.
func (a *app) judge(findings []finding.Finding) {
	if finding.Count(findings, finding.Stop) > 0 {
		a.status = exitStops
	}
}

func (a *app) printCheck(sys *bom.System, findings []finding.Finding) {
	u := a.ui
	a.printTitle(sys)
	for _, f := range findings {
		a.printFinding(f)
	}
	a.printSegments(sys)
	a.printCautions(sys)
	a.printQuestions(sys)
	if len(findings) > 0 {
		u.say("", "Explained: handtight why %s", findings[0].Slug)
	}
	a.printCounts(sys, findings)
}

func (a *app) printTitle(sys *bom.System) {
	a.ui.say(bold, "%s", sys.Build.Name)
	a.ui.say("", "(%s)", sys.Build.File)
	a.ui.line("")
}

func (a *app) printFinding(f finding.Finding) {
	u := a.ui
	word := strings.ToUpper(f.Severity.String())
	where := ""
	if f.Place.Line > 0 {
		where = fmt.Sprintf("%s line %d", f.Place.File, f.Place.Line)
	}
	head := fmt.Sprintf("%s %s", u.paint(severityColour(f.Severity), fmt.Sprintf("%-8s", word)), u.paint(bold, f.Slug))
	if 9+len(f.Slug)+2+utf8.RuneCountInString(where) <= u.width {
		u.line("%s  %s", head, where)
	} else {
		u.line("%s", head)
		u.fold("", where)
	}
	u.fold("", f.At())
	u.fold("  why", f.Reason)
	u.fold("  do", f.Remedy)
	u.line("")
}

// segmentColumns are the columns of the pressure table; all figures are in bar.
var segmentColumns = []column{
	{title: ""}, {title: "segment (bar)", flex: true}, {title: "normal", right: true}, {title: "worst", right: true},
	{title: "holds", right: true}, {title: "margin", right: true}, {title: "weakest member"},
}

// printSegments prints a line a segment, and under the table what brings the worst
// about; on a narrow terminal each segment is folded.
func (a *app) printSegments(sys *bom.System) {
	u := a.ui
	if len(sys.Segments) == 0 {
		return
	}
	u.say(bold, "Pressure by segment: normal and worst, and what the weakest member holds")
	var rows [][]string
	for _, g := range sys.Segments {
		rows = append(rows, segmentRow(g))
	}
	if !u.table(segmentColumns, rows) {
		for _, g := range sys.Segments {
			a.foldSegment(g)
		}
	}
	u.say("", "H = high pressure: above %.0f bar in normal running", bom.HighPressure)
	holds := make([]bom.Hold, len(sys.Segments))
	for i, g := range sys.Segments {
		holds[i] = g.Hold
	}
	a.printBasisNotes(holds)
	u.line("")
	a.printWorst(sys)
}

func segmentRow(g *bom.Segment) []string {
	worst, _ := g.Load.Worst()
	row := []string{" ", g.Name, figure(g.Load.Normal), figure(worst), "?", "", "not known"}
	if g.High() {
		row[0] = "H"
	}
	if g.Hold.Known {
		row[4], row[6] = figure(g.Hold.Rating.Pressure.Bar()), fmt.Sprintf("%s (%s)", g.Hold.What, basisOf(g.Hold))
	}
	switch m, ok := g.Margin(); {
	case ok:
		row[5] = figure(m)
	case g.Hold.Known:
		row[5] = "none"
	}
	return row
}

func (a *app) foldSegment(g *bom.Segment) {
	row := segmentRow(g)
	worst, _ := g.Load.Worst()
	a.ui.fold("  "+row[0], g.Name)
	a.ui.fold("", fmt.Sprintf("%s, worst %s", bars(g.Load.Normal), bars(worst)))
	if g.Hold.Known {
		a.ui.fold("", fmt.Sprintf("%s holds %s bar, margin %s", row[6], row[4], row[5]))
	} else {
		a.ui.fold("", "what it holds is not known")
	}
}

// printWorst says what brings about the worst pressures and the vacuum, once for
// each cause.
func (a *app) printWorst(sys *bom.System) {
	u := a.ui
	var causes []string
	reach := map[string][]string{}
	add := func(cause, segment string) {
		if reach[cause] == nil {
			causes = append(causes, cause)
		}
		reach[cause] = append(reach[cause], segment)
	}
	for _, g := range sys.Segments {
		worst, state := g.Load.Worst()
		if state != nil && worst > g.Load.Normal+0.001 {
			add(fmt.Sprintf("%s, with %s", bars(worst), state.Cause), g.Name)
		}
		if g.Load.Low < 0 {
			add("vacuum, with "+g.Load.ByLow.Cause, g.Name)
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
func figure(v float64) string {
	if math.IsInf(v, 1) {
		return "no bound"
	}
	return string(jsonFloat(math.Round(v*10) / 10))
}

func (a *app) printQuestions(sys *bom.System) {
	u := a.ui
	questions := sys.Questions()
	if len(questions) == 0 {
		return
	}
	u.say(bold, "Ask before buying")
	for i, q := range questions {
		u.fold(fmt.Sprintf("  %d.", i+1), fmt.Sprintf("%s: %s (settles %s)", q.Port, q.Ask, counted(q.Joints, "joint")))
	}
	u.line("")
}

// cautions are the usual ones, said with every check.
func cautions(sys *bom.System) []string {
	start := "Start the high-pressure pump with the throttle open, then raise the pressure slowly; stop in the reverse order."
	if slices.ContainsFunc(sys.Units, func(u *bom.Unit) bool { return u.Item.Kind.Name == "feed pump" }) {
		start = "Start the feed pump, then the high-pressure pump, then raise the pressure slowly; stop in the reverse order."
	}
	return []string{
		"High-pressure water injects through skin: no hands near a leak, and no joint is tightened under pressure.",
		"A failed fitting below the waterline sinks boats: seacocks shut when you leave.",
		start,
		"New membranes carry preservative: product goes to the drain for the first hour, and never to the tank.",
		"A fresh-water flush at the dock wets most joints; the rest see water first under way: look at them then.",
		"This is a check and not a certificate: data sheets, local codes and licensed practice come first.",
	}
}

func (a *app) printCautions(sys *bom.System) {
	a.ui.say(bold, "Always")
	for _, c := range cautions(sys) {
		a.ui.fold("  -", c)
	}
	a.ui.line("")
}

func (a *app) printCounts(sys *bom.System, findings []finding.Finding) {
	u := a.ui
	stops := finding.Count(findings, finding.Stop)
	text := fmt.Sprintf("%s, %s, %s; %s, %s.", counted(stops, "stop"), counted(finding.Count(findings, finding.Caution), "caution"),
		counted(finding.Count(findings, finding.Note), "note"), counted(len(sys.Joints), "joint"), counted(len(sys.Segments), "segment"))
	if stops > 0 {
		u.say(red, "%s Do not order or pressurise before the stops are settled.", text)
		return
	}
	u.say(green, "%s Nothing stops.", text)
}

// bars writes a pressure for people.
func bars(v float64) string {
	if math.IsInf(v, 1) {
		return "pressure without bound"
	}
	return figure(v) + " bar"
}
