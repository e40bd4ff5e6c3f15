package main

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"handtight/bom"
	"handtight/bom/compare"
	"handtight/bom/facts"
	"handtight/bom/finding"
)

// cartFiles are the endings of what is a cart and no build.
var cartFiles = []string{".csv", ".tsv", ".txt", ".xlsx", ".xlsm"}

func (a *app) compareCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "compare OLD NEW",
		Short: "What changed between two builds, and what changed for the worse",
		Long: `Reads two build files and reports what was added, removed and replaced (the same place,
another item), what items say that they did not say before, which joints and which
segments' pressures, ratings and margins changed and whether for the worse, which
findings are new and which are gone, and what became of the money: rates, shops' terms,
prices, how many to order and how many of them spare, each shop's total and the whole.

Where NEW is a cart (CSV or XLSX), it is set against the build as by the command cart.

With --json: {"old", "new", "added": [{"name", "item", "about", "run"}], "removed",
"replaced": [{"run", "old", "new"}], "changed": [{"item", "what", "old", "new"}],
"joints": [{"number", "old", "new", "old_verdict", "new_verdict", "worse"}], "segments":
[{"old", "new", "worse", "better"}], "sums": [{"what", "of", "shop", "old", "new"}], "new_findings", "gone_findings", "counts"}.

Exit status 0, 1 when the new build has stops that the old one had not, 2 when a file
cannot be taken.`,
		Example: `  handtight compare testdata/careless/build.toml testdata/clean/build.toml
  handtight compare before.toml after.toml --json`,
		Args: exactly(2, "two build files, the old one first"),
		RunE: func(_ *cobra.Command, args []string) error {
			if slices.Contains(cartFiles, strings.ToLower(filepath.Ext(args[1]))) {
				return a.cart(args[0], args[1:], cartFlags{})
			}
			before, err := a.load(args[0])
			if err != nil {
				return err
			}
			after, err := a.load(args[1])
			if err != nil {
				return err
			}
			r := compare.Builds(before, after)
			if !r.Cleared {
				a.status = exitStops
			}
			if a.json {
				return a.ui.printJSON(facts.CompareOf(before, after, r))
			}
			a.printCompare(before, after, r)
			return nil
		},
	}
}

func (a *app) printCompare(before, after *bom.System, r *compare.Report) {
	u := a.ui
	u.say(bold, "%s", after.Build.Name)
	u.say("", "(%s, against %s)", after.Build.File, before.Build.File)
	u.line("")
	if r.Same() {
		u.say("", "Nothing changed that is built, joined or judged.")
		return
	}
	a.printThings("Added", r.Added)
	a.printThings("Removed", r.Removed)
	a.printReplaced(r)
	a.printJoints(r)
	a.printSegmentChanges(r)
	a.printFindingChanges("Findings that are gone", r.Gone)
	a.printFindingChanges("New findings", r.New)
	a.printSums(r)
	a.printCompareCounts(r)
}

// printSums prints what changed of the money and the counts, the total last.
func (a *app) printSums(r *compare.Report) {
	u := a.ui
	if r.NoSums != nil {
		u.fold("  mind", "the totals cannot be compared: "+r.NoSums.Error())
	}
	if len(r.Sums) == 0 {
		return
	}
	u.say(bold, "Money, counts and spares")
	for _, s := range r.Sums {
		what := s.What
		if s.Of != "" {
			what += " of " + s.Of
		}
		if s.Shop != "" && s.Shop != s.Of {
			what += " at " + s.Shop
		}
		u.fold("  -", fmt.Sprintf("%s: %s -> %s", what, s.Old, s.New))
	}
	u.line("")
}

func (a *app) printThings(title string, list []compare.Thing) {
	u := a.ui
	if len(list) == 0 {
		return
	}
	u.say(bold, "%s", title)
	for _, t := range list {
		u.fold("  -", t.Name+about(t)+in(t.Run))
	}
	u.line("")
}

// about says what a thing is, by its kind and words.
func about(t compare.Thing) string {
	text := " (" + t.Item.Kind.Name
	for _, w := range []string{t.Item.About, t.Item.Title} {
		if w != "" {
			text += ", " + w
		}
	}
	return text + ")"
}

func in(run string) string {
	if run == "" {
		return ""
	}
	return fmt.Sprintf(", in %q", run)
}

func (a *app) printReplaced(r *compare.Report) {
	u := a.ui
	if len(r.Replaced) > 0 {
		u.say(bold, "Replaced")
		for _, x := range r.Replaced {
			u.fold("  -", fmt.Sprintf("%s%s by %s%s%s", x.Old.Name, about(x.Old), x.New.Name, about(x.New), in(x.New.Run)))
		}
		u.line("")
	}
	if len(r.Changed) > 0 {
		u.say(bold, "Items that say other things")
		for _, c := range r.Changed {
			u.fold("  -", fmt.Sprintf("%s, %s: %s -> %s", c.Item, c.What, c.Old, c.New))
		}
		u.line("")
	}
}

// printJoints lists the joints whose verdict changed, those for the worse last.
func (a *app) printJoints(r *compare.Report) {
	u := a.ui
	for _, part := range []struct {
		title string
		worse bool
	}{{"Joints that changed, not for the worse", false}, {"Joints that changed for the worse", true}} {
		head := true
		for _, j := range r.Joints {
			if j.Worse != part.worse {
				continue
			}
			if head {
				u.say(bold, "%s", part.title)
				head = false
			}
			was := j.OldVerdict
			if j.Old == "" {
				was = "no such joint"
			}
			u.fold("  -", fmt.Sprintf("J%d %s: %s -> %s", j.Number, j.New, was, j.NewVerdict))
		}
		if !head {
			u.line("")
		}
	}
}

func (a *app) printSegmentChanges(r *compare.Report) {
	u := a.ui
	if len(r.Segments) == 0 {
		return
	}
	u.say(bold, "Pressures and ratings that changed")
	for _, g := range r.Segments {
		u.fold("  -", g.New.Name)
		for _, w := range g.Worse {
			u.fold("  worse", w)
		}
		for _, b := range g.Better {
			u.fold("  other", b)
		}
	}
	u.line("")
}

func (a *app) printFindingChanges(title string, list []finding.Finding) {
	u := a.ui
	if len(list) == 0 {
		return
	}
	u.say(bold, "%s", title)
	for _, f := range list {
		word := u.paint(severityColour(f.Severity), fmt.Sprintf("%-8s", strings.ToUpper(f.Severity.String())))
		u.line("%s %s", word, f.Slug)
		u.fold("", f.At())
		if title == "New findings" {
			u.fold("  why", f.Reason)
			u.fold("  do", f.Remedy)
		}
	}
	u.line("")
}

func (a *app) printCompareCounts(r *compare.Report) {
	joints, segments := r.Worse()
	text := fmt.Sprintf("%d added, %d removed, %d replaced; %s and %s for the worse; %s, %d gone.", len(r.Added), len(r.Removed), len(r.Replaced),
		counted(joints, "joint"), counted(segments, "segment"), counted(len(r.New), "new finding"), len(r.Gone))
	if !r.Cleared {
		a.ui.say("", "%s", text)
		a.ui.say(red, "The new build has stops that the old one had not.")
		return
	}
	a.ui.say("", "%s", text)
	a.ui.say(green, "No new stop.")
}
