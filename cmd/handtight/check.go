package main

import (
	"errors"

	"github.com/spf13/cobra"

	"handtight/bom/facts"
	"handtight/bom/finding"
	"handtight/bom/rule"
)

func (a *app) checkCommand() *cobra.Command {
	var show checkShown
	var watch bool
	var mend fixFlags
	cmd := &cobra.Command{
		Use:   "check BUILD",
		Short: "What does not mate, seal or hold, and what to ask before buying",
		Long: `Reads a build file, walks it port by port, and reports: the verdict with the counts; what
stops, by what comes of it and the pressure behind it, what is wrong apart from what is
not known; the questions to ask before buying; cautions and notes. It says as much of
each as two screens hold, and --all everything. Exit status 0 when nothing stops, 1 when
stops are found, 2 when the file cannot be taken.

--pressures adds a line for each pressure segment: normal and worst, and what it holds.

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
  handtight check build.toml --watch
  handtight check build.toml --fix mended.toml
  handtight check build.toml --json > facts.json`,
		Args: exactly(1, "one build file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if mend.out != "" || mend.dry {
				return a.fixBuild(args[0], &mend)
			}
			if !watch {
				_, err := a.checkOnce(args[0], &show)
				return err
			}
			if args[0] == stdin || a.json {
				return errors.New("--watch looks at a file, and prints text: leave - and --json out")
			}
			return a.watch(cmd.Context(), args[0], watchEvery, func() ([]string, error) { return a.checkOnce(args[0], &show) })
		},
	}
	cmd.Flags().StringVar(&show.state, "state", "", "show the pressures of one state, by its name")
	cmd.Flags().BoolVar(&show.states, "states", false, "show the pressures of every state")
	cmd.Flags().BoolVar(&show.parts, "parts", false, "show what each hose, fitting and other part sees and holds")
	cmd.Flags().BoolVar(&show.all, "all", false, "say everything: each finding by itself, every pressure, what stands always")
	cmd.Flags().BoolVar(&show.pressures, "pressures", false, "show the pressures of every segment as well")
	cmd.Flags().BoolVar(&watch, "watch", false, "check again whenever a file of the build is saved, until it is interrupted")
	mend.add(cmd)
	cmd.MarkFlagsMutuallyExclusive("state", "states", "parts", "fix")
	cmd.MarkFlagsMutuallyExclusive("watch", "fix")
	return cmd
}

// checkShown is what is printed of a check.
type checkShown struct {
	state                         string
	states, parts, all, pressures bool
}

// checkOnce reads, checks and prints, and gives the files that were read.
func (a *app) checkOnce(path string, show *checkShown) ([]string, error) {
	sys, err := a.load(path)
	if err != nil {
		return nil, err
	}
	files := sys.Build.Files
	views, err := viewsAsked(sys, show.state, show.states)
	if err != nil {
		return files, err
	}
	findings := rule.Check(sys)
	a.judge(findings)
	f := facts.Of(sys, findings)
	f.States = facts.States(views)
	if a.json {
		return files, a.ui.printJSON(f)
	}
	a.printTitle(f)
	switch {
	case show.states:
		a.printStates(f.States)
	case show.state != "":
		a.printState(&f.States[0])
	case show.parts:
		a.printParts(f)
	default:
		a.printCheck(f, show.all, show.pressures)
	}
	return files, nil
}

// judge sets the exit status by the findings.
func (a *app) judge(findings []finding.Finding) {
	if finding.Count(findings, finding.Stop) > 0 {
		a.status = exitStops
	}
}
