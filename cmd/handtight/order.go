package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/rule"
	"handtight/bom/workbook"
)

func (a *app) orderCommand() *cobra.Command {
	var out string
	var force bool
	cmd := &cobra.Command{
		Use:   "order BUILD",
		Short: "The priced shopping list with spares, as a workbook",
		Long: `Checks the build, counts what to buy with spares and planned changes, prices it by shop,
and writes a workbook that works without the tool. Writing over a workbook of ours
re-issues it and keeps what the buyer typed under ordered, received and remark. A file
that is not ours is refused without --force. Without -o the list is printed only.

The list is written also when stops are found: its first sheet says so, and the exit
status is 1.`,
		Example: `  handtight order testdata/clean/build.toml -o list.xlsx
  handtight order build.toml --json`,
		Args: exactly(1, "one build file"),
		RunE: func(_ *cobra.Command, args []string) error {
			sys, err := load(args[0])
			if err != nil {
				return err
			}
			order, err := sys.Order()
			if err != nil {
				return err
			}
			findings := rule.Check(sys)
			a.judge(findings)
			var report *workbook.Report
			if out != "" {
				r, err := workbook.Save(out, workbook.From(sys, order, findings, cautions), force)
				if err != nil {
					return err
				}
				report = &r
			}
			if a.json {
				return a.ui.printJSON(orderFactsOf(sys, order))
			}
			a.printOrder(sys, order, findings)
			if report != nil {
				a.printWritten(out, report)
			}
			return a.ui.broken
		},
	}
	cmd.Flags().StringVarP(&out, "output", "o", "", "write the workbook to this file (.xlsx)")
	cmd.Flags().BoolVar(&force, "force", false, "write over a file that is not a workbook of ours")
	return cmd
}

func (a *app) printOrder(sys *bom.System, order *bom.Order, findings []finding.Finding) {
	u := a.ui
	u.line("%s  (%s)\n", u.paint(bold, sys.Build.Name), sys.Build.File)
	for _, f := range findings {
		if f.Severity != finding.Note {
			a.printFinding(f)
		}
	}
	for _, v := range order.Vendors {
		u.line("%s", u.paint(bold, v.Vendor.Name))
		for _, l := range v.Lines {
			a.printLine(l)
		}
		s := v.Sums
		u.line("  goods %s, freight %s, customs %s, tax %s: %s", s.Goods.Number(), s.Freight.Number(), s.Customs.Number(), s.Tax.Number(), amount(s.Total))
		if v.Vendor.Currency != sys.Build.Currency {
			u.line("  in %s: %s", sys.Build.Currency, v.InBuild.Number())
		}
		u.line("")
	}
	if list := order.Unoffered(); len(list) > 0 {
		u.line("%s", u.paint(bold, "No shop named for these"))
		for _, l := range list {
			a.printLine(l)
		}
		u.line("")
	}
	a.printCounts(sys, findings)
	u.line("%s", u.paint(bold, "Total "+amount(order.Total)))
	if order.Unpriced > 0 {
		u.line("without %s that no price is known of", counted(order.Unpriced, "line"))
	}
}

// printLine prints one line of the list; what is aboard already stays in it.
func (a *app) printLine(l *bom.Line) {
	n := l.Need
	text := fmt.Sprintf("%s %s  %s", l.Order, n.Unit, n.About)
	if n.Item != nil {
		text = fmt.Sprintf("%s %s  %s: %s", l.Order, n.Unit, n.Key, n.About)
	}
	if n.Spare > 0 || n.Planned > 0 {
		text += fmt.Sprintf(" (%s to place", n.Placed)
		if n.Planned > 0 {
			text += fmt.Sprintf(" + %s to change", n.Planned)
		}
		if n.Spare > 0 {
			text += fmt.Sprintf(" + %s spare", n.Spare)
		}
		text += ")"
	}
	if l.Offer != nil && l.Offer.Code != "" {
		text += "  [" + l.Offer.Code + "]"
	}
	if l.Total != nil {
		text += "  " + amount(*l.Total)
	}
	a.ui.fold("", text)
}

func (a *app) printWritten(path string, r *workbook.Report) {
	u := a.ui
	if r.Reissued {
		u.line("Re-issued: %s (%s of the buyer's kept, %d set aside)", path, counted(r.Kept, "mark"), r.SetAside)
		for _, c := range r.Changed {
			u.fold("  changed", c)
		}
	} else {
		u.line("Written: %s", path)
	}
}
