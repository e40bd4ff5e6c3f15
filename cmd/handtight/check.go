package main

import (
	"fmt"
	"math"
	"strings"

	"github.com/spf13/cobra"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/rule"
)

func (a *app) checkCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "check BUILD",
		Short: "What does not mate, seal or hold, and what to ask before buying",
		Long: `Reads a build file, walks it port by port, and reports: findings, worst first, each with
its remedy; a line for each pressure segment; the questions to ask before buying; and
the counts. Exit status 0 when nothing stops, 1 when stops are found, 2 when the file
cannot be taken.`,
		Example: `  handtight check testdata/clean/build.toml
  handtight check build.toml --json > facts.json`,
		Args: exactly(1, "one build file"),
		RunE: func(_ *cobra.Command, args []string) error {
			sys, err := load(args[0])
			if err != nil {
				return err
			}
			findings := rule.Check(sys)
			a.judge(findings)
			if a.json {
				return a.ui.printJSON(checkFactsOf(sys, findings))
			}
			a.printCheck(sys, findings)
			return a.ui.broken
		},
	}
}

// judge sets the exit status by the findings.
func (a *app) judge(findings []finding.Finding) {
	if finding.Count(findings, finding.Stop) > 0 {
		a.status = exitStops
	}
}

func (a *app) printCheck(sys *bom.System, findings []finding.Finding) {
	u := a.ui
	u.line("%s  (%s)\n", u.paint(bold, sys.Build.Name), sys.Build.File)
	for _, f := range findings {
		a.printFinding(f)
	}
	a.printSegments(sys)
	a.printQuestions(sys)
	a.printCautions()
	a.printCounts(sys, findings)
}

func (a *app) printFinding(f finding.Finding) {
	u := a.ui
	word := strings.ToUpper(f.Severity.String())
	where := ""
	if f.Place.Line > 0 {
		where = fmt.Sprintf("%s line %d", f.Place.File, f.Place.Line)
	}
	u.line("%s %s  %s", u.paint(severityColour(f.Severity), fmt.Sprintf("%-8s", word)), u.paint(bold, f.Slug), where)
	u.fold("", f.At)
	u.fold("  why", f.Reason)
	u.fold("  do", f.Remedy)
	u.line("")
}

// printSegments prints a line a segment; folded where the terminal is narrow.
func (a *app) printSegments(sys *bom.System) {
	u := a.ui
	if len(sys.Segments) == 0 {
		return
	}
	u.line("%s", u.paint(bold, "Segments: pressure normal and worst, the weakest member and what it holds"))
	for _, g := range sys.Segments {
		worst, state := g.Load.Worst()
		holds, margin := "not known", ""
		if g.Hold.Known {
			holds = fmt.Sprintf("%s holds %s (%s)", g.Hold.What, bars(g.Hold.Rating.Pressure.Bar()), g.Hold.Rating.Basis)
		}
		if m, ok := g.Margin(); ok {
			margin = fmt.Sprintf(", margin %s", bars(m))
		}
		cause := ""
		if state != nil && worst > g.Load.Normal+0.001 {
			cause = ": " + state.Cause
		}
		if g.Load.Low < 0 {
			cause += fmt.Sprintf("; vacuum when %s", g.Load.ByLow.Cause)
		}
		mark := " "
		if g.High() {
			mark = "H"
		}
		u.fold(fmt.Sprintf("  %s", mark), fmt.Sprintf("%s | %s, worst %s%s | %s%s", g.Name, bars(g.Load.Normal), bars(worst), cause, holds, margin))
	}
	u.line("  H = high pressure (above %.0f bar in normal running)\n", bom.HighPressure)
}

func (a *app) printQuestions(sys *bom.System) {
	u := a.ui
	questions := sys.Questions()
	if len(questions) == 0 {
		return
	}
	u.line("%s", u.paint(bold, "Ask before buying"))
	for i, q := range questions {
		u.fold(fmt.Sprintf("  %d.", i+1), fmt.Sprintf("%s: %s (settles %s)", q.Port, q.Ask, counted(q.Joints, "joint")))
	}
	u.line("")
}

// cautions are the usual ones, said with every check.
var cautions = []string{
	"High-pressure water injects through skin: no hands near a leak, and no joint is tightened under pressure.",
	"A failed fitting below the waterline sinks boats: seacocks shut when you leave.",
	"Start the feed pump, then the high-pressure pump, then raise the pressure slowly; stop in the reverse order.",
	"New membranes carry preservative: product goes to the drain for the first hour, and never to the tank.",
	"A fresh-water flush at the dock wets most joints; the rest see water first under way: look at them then.",
	"This is a check and not a certificate: data sheets, local codes and licensed practice come first.",
}

func (a *app) printCautions() {
	for _, c := range cautions {
		a.ui.fold("  !", c)
	}
	a.ui.line("")
}

func (a *app) printCounts(sys *bom.System, findings []finding.Finding) {
	u := a.ui
	stops := finding.Count(findings, finding.Stop)
	text := fmt.Sprintf("%s, %s, %s; %s, %s.", counted(stops, "stop"), counted(finding.Count(findings, finding.Caution), "caution"),
		counted(finding.Count(findings, finding.Note), "note"), counted(len(sys.Joints), "joint"), counted(len(sys.Segments), "segment"))
	if stops > 0 {
		u.line("%s", u.paint(red, text+" Do not order or pressurise before the stops are settled."))
		u.line("Explained: handtight why %s", findings[0].Slug)
		return
	}
	u.line("%s", u.paint(green, text+" Nothing stops."))
}

// bars writes a pressure for people.
func bars(v float64) string {
	if math.IsInf(v, 1) {
		return "without bound"
	}
	return string(jsonFloat(math.Round(v*10)/10)) + " bar"
}
