package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"handtight/bom/facts"
	"handtight/bom/rule"
	"handtight/pressure/nearest"
)

type whyFacts struct {
	Slug  string `json:"slug"`
	Title string `json:"title"`
	Why   string `json:"why"`
	Wrong string `json:"wrong"`
	Right string `json:"right"`
}

func (a *app) whyCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "why [SLUG]",
		Short: "A finding explained, with a wrong and a right example",
		Example: `  handtight why flank-angles-differ
  handtight why always                 the cautions that stand on every run
  handtight why                        all findings, a line each`,
		Args:      func(cmd *cobra.Command, args []string) error { return atMostOne(cmd, args) },
		ValidArgs: append(rule.Slugs(), always),
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return a.allRules()
			}
			if args[0] == always {
				return a.whyAlways()
			}
			r, ok := rule.Find(args[0])
			if !ok {
				return noFinding(args[0])
			}
			if a.json {
				return a.ui.printJSON(whyOf(r))
			}
			u := a.ui
			u.line("%s", u.paint(bold, r.Slug))
			u.say("", "%s", r.Title)
			u.line("")
			for _, l := range wrap(r.Why, u.width) {
				u.line("%s", l)
			}
			for _, example := range [][2]string{{"Wrong", r.Wrong}, {"Right", r.Right()}} {
				u.line("")
				u.line("%s", example[0])
				for l := range strings.Lines(indent(example[1])) {
					u.line("%s", strings.TrimRight(l, "\n"))
				}
			}
			return nil
		},
	}
}

// noFinding says that no finding has a name, and which may be meant.
func noFinding(slug string) error {
	hint := "`handtight why` lists them all"
	if n, ok := nearest.Of(slug, rule.Slugs()); ok {
		hint = fmt.Sprintf("did you mean `%s`? %s", n, hint)
	}
	return fmt.Errorf("there is no finding `%s`: %s", slug, hint)
}

// always is the word for the cautions that stand on every run.
const always = "always"

func (a *app) whyAlways() error {
	list := facts.AlwaysCautions()
	if a.json {
		return a.ui.printJSON(map[string][]string{"always": list})
	}
	a.printCautions(list)
	return nil
}

func atMostOne(cmd *cobra.Command, args []string) error {
	if len(args) > 1 {
		return fmt.Errorf("`%s` takes one finding's name, and %d were given", cmd.CommandPath(), len(args))
	}
	return nil
}

func whyOf(r rule.Rule) whyFacts {
	return whyFacts{r.Slug, r.Title, strings.Join(strings.Fields(r.Why), " "), strings.TrimSpace(r.Wrong), strings.TrimSpace(r.Right())}
}

func (a *app) allRules() error {
	if a.json {
		out := []whyFacts{}
		for _, r := range rule.All() {
			out = append(out, whyOf(r))
		}
		return a.ui.printJSON(out)
	}
	var rows [][]string
	for _, r := range rule.All() {
		rows = append(rows, []string{r.Slug, r.Title})
	}
	if !a.ui.table([]column{{}, {flex: true}}, rows) {
		for _, r := range rows {
			a.ui.fold("  -", r[0]+": "+r[1])
		}
	}
	return nil
}

func indent(text string) string {
	return "  " + strings.ReplaceAll(strings.TrimSpace(text), "\n", "\n  ")
}
