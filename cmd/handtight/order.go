package main

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"handtight/bom"
	"handtight/bom/choose"
	"handtight/bom/facts"
	"handtight/bom/finding"
	"handtight/bom/money"
	"handtight/bom/order"
	"handtight/bom/rule"
	"handtight/bom/workbook"
)

// orderFlags are the flags of order.
type orderFlags struct {
	out         string
	force, best bool
	ask         requestFlags
}

func (a *app) orderCommand() *cobra.Command {
	var o orderFlags
	cmd := &cobra.Command{
		Use:   "order BUILD",
		Short: "The priced shopping list with spares, as a workbook",
		Long: `Checks the build, counts what to buy with spares and planned changes, prices it by shop,
and writes a workbook that works without the tool. Each line is bought at the shop where its
goods are cheapest, there in the packs that come to least; where choose finds a plan that costs less landed, with
freight, customs, tax and minimum orders, that is said with the difference, and --choose
takes it. Writing over a workbook of ours
re-issues it and keeps all that the buyer typed, with rows, columns, comments, colours and
sheets of the buyer's; what has no place any more stands on its sheet "Set aside", and the
book of before is kept beside as list.issue-1.xlsx. A file that is not ours, or open in
another program, is refused without --force. Without -o the list is printed only. What came
back in the book is read by receive.

--text SHOP prints what that shop is asked for, to paste into a mail: in the shop's
language (vendor key language), or in --language en, de, fr, es, it or nl; prices only with
--prices. --csv DIR writes such a table for each shop, SHOP.csv, which cart reads back.

The list is written also when stops are found: its first sheet says so, and the exit
status is 1.`,
		Example: `  handtight order testdata/clean/build.toml -o list.xlsx
  handtight order testdata/clean/build.toml --text elbe --language de
  handtight order build.toml --csv quotes
  handtight order build.toml --json`,
		Args: exactly(1, "one build file"),
		RunE: func(_ *cobra.Command, args []string) error { return a.order(args[0], &o) },
	}
	cmd.Flags().StringVarP(&o.out, "output", "o", "", "write the workbook to this file (.xlsx)")
	cmd.Flags().BoolVar(&o.best, "choose", false, "choose shops and options so that the whole costs least (see choose)")
	o.ask.add(cmd)
	cmd.Flags().BoolVar(&o.force, "force", false, "write over a file that is not a workbook of ours")
	return cmd
}

// order runs the command.
func (a *app) order(path string, o *orderFlags) error {
	if err := o.ask.alone(o.out); err != nil {
		return err
	}
	sys, err := a.load(path)
	if err != nil {
		return err
	}
	sys, order, findings, err := a.ordered(sys, o.best)
	if err != nil {
		return err
	}
	a.judge(findings)
	if o.ask.wanted() {
		return a.request(sys, order, o.ask)
	}
	f, list := facts.Of(sys, findings), facts.OrderOf(sys, order)
	if list.Cheaper, err = cheaper(sys, order, o.best); err != nil {
		return err
	}
	if list.Splits, err = splits(sys, order); err != nil {
		return err
	}
	var report *workbook.Report
	if o.out != "" {
		r, err := workbook.Save(o.out, workbook.From(f, list, facts.BoatOf(sys)), o.force, sys.Build.Files...)
		if err != nil {
			return err
		}
		report = &r
	}
	if a.json {
		return a.ui.printJSON(list)
	}
	a.printOrder(f, list, order)
	if report != nil {
		a.printWritten(o.out, report)
	}
	return nil
}

// ordered makes the order: each line where it is cheapest, or the plan that costs least.
func (a *app) ordered(sys *bom.System, best bool) (*bom.System, *order.Order, []finding.Finding, error) {
	if best {
		c, err := choose.Shops(context.Background(), sys)
		if err != nil {
			return nil, nil, nil, err
		}
		return c.System, c.Order, c.Findings, nil
	}
	order, err := sys.Order()
	return sys, order, rule.Check(sys), err
}

// cheaper is the plan that costs less landed than the order; nil where none does, or where
// the order is that plan.
func cheaper(sys *bom.System, order *order.Order, best bool) (*facts.Plan, error) {
	if best {
		return nil, nil
	}
	c, less, err := choose.Against(context.Background(), sys, order)
	if err != nil || !less {
		return nil, err
	}
	p := &facts.Plan{
		Total: facts.Sum(c.Total), Saves: facts.Sum(c.Saves), Percent: c.Share, Swaps: len(c.Swaps), Proved: c.Proved, Currency: sys.Build.Currency,
	}
	already := map[string]bool{}
	for _, l := range order.Lines {
		already[l.Need.Key] = len(l.Shares) > 0
	}
	for _, l := range c.Order.Lines {
		if len(l.Shares) > 0 && !already[l.Need.Key] {
			p.Divided = append(p.Divided, l.Need.Key)
		}
	}
	return p, nil
}

// splits are the lines that cost less when they are bought at two offers.
func splits(sys *bom.System, o *order.Order) ([]facts.Split, error) {
	list, err := choose.Splits(sys, o)
	if err != nil {
		return nil, err
	}
	var out []facts.Split
	for _, s := range list {
		out = append(out, facts.Split{
			Item: s.Item, First: s.First.Vendor.ID, Code: s.First.Code, AtFirst: facts.Quantity(s.AtFirst),
			Second: s.Second.Vendor.ID, Other: s.Second.Code, AtSecond: facts.Quantity(s.AtSecond), Total: facts.Sum(s.Total), Saves: facts.Sum(s.Saves),
		})
	}
	return out, nil
}

func (a *app) printOrder(f *facts.Facts, list *facts.Order, sum *order.Order) {
	u := a.ui
	a.printTitle(f)
	a.printBrief(f)
	a.printShops(list)
	a.printCuts(sum, func(l *order.Line) bool { return l.Offer != nil && len(l.Offer.Lengths) > 0 })
	if sum.Unpriced > 0 {
		u.say("", "No price is known of %s: the total is without them.", counted(sum.Unpriced, "line"))
	}
	u.say(bold, "Total %s", amount(sum.Total))
	if c := list.Cheaper; c != nil {
		how := ""
		if c.Swaps > 0 {
			how = fmt.Sprintf(", with %s taken", counted(c.Swaps, "alternative"))
		}
		if len(c.Divided) > 0 {
			how += fmt.Sprintf(", dividing %s between offers", few(c.Divided))
		}
		u.say(yellow, "Landed, it can be had for %s: %s (%s %%) less%s.", amount(c.Total.Amount), amount(c.Saves.Amount), c.Percent, how)
		u.say("", "See how: handtight choose %s; buy so: handtight order %s --choose", f.File, f.File)
	}
}

// printShops prints what is bought from each shop, and what no shop is named for.
func (a *app) printShops(order *facts.Order) {
	u := a.ui
	for i := range order.Shops {
		v := &order.Shops[i]
		u.say(bold, "%s", v.Name)
		a.printLines(v.Lines)
		u.say("", "goods %s, freight %s, customs %s, tax %s: %s", v.Goods.Amount.Number(), v.Freight.Amount.Number(), v.Customs.Amount.Number(),
			v.Tax.Amount.Number(), amount(v.Total.Amount))
		if v.Currency != order.Currency {
			u.say("", "in %s: %s", order.Currency, v.InBuild.Amount.Number())
		}
		u.line("")
	}
	if len(order.Unoffered) > 0 {
		u.say(bold, "No shop named for these")
		a.printLines(order.Unoffered)
		u.line("")
	}
}

// printBrief names what stops, a line each, and the cautions: their reasons are in `check` and
// in the workbook. A note on money is told whole, since the sums rest on what it asks.
func (a *app) printBrief(f *facts.Facts) {
	r := &report{ui: a.ui, f: f, entries: entriesOf(f.Findings)}
	lines := append(r.stops(headed, 0, 0), r.lesser(finding.Caution, yellow, named)...)
	for _, e := range r.of(finding.Note) {
		if e.findings[0].Consequence == finding.Money.String() {
			lines = append(lines, r.entry(e, telling, true)...)
		}
	}
	if len(lines) == 0 {
		return
	}
	for _, l := range lines {
		a.ui.line("%s", l)
	}
	a.ui.say("", "Why, and what to do: handtight check %s", f.File)
	a.ui.line("")
}

// lineColumns are the columns of the list.
var lineColumns = []column{{title: "order", right: true}, {}, {title: "what", flex: true}, {title: "code"}, {title: "total", right: true}}

// printLines prints the lines of one shop, aligned; folded on a narrow terminal.
func (a *app) printLines(lines []facts.Line) {
	u := a.ui
	var rows [][]string
	for i := range lines {
		rows = append(rows, lineRow(&lines[i]))
	}
	columns := lineColumns
	if !slices.ContainsFunc(lines, func(l facts.Line) bool { return l.Shop != "" }) {
		columns = columns[:3] // no shop: neither codes nor prices
	}
	if u.table(columns, rows) {
		return
	}
	for _, r := range rows {
		u.fold(r[0]+" "+r[1], strings.Join(slices.DeleteFunc(r[2:], func(s string) bool { return s == "" }), "; "))
	}
}

// lineRow is one line of the list; what is aboard already stays in it.
func lineRow(l *facts.Line) []string {
	row := []string{l.Order.String(), l.Unit, l.About, l.Code, ""}
	if l.Named {
		row[2] = l.Item + ": " + l.About
	}
	row[2] += parts(l)
	if l.Shares > 0 {
		row[2] += fmt.Sprintf(", share %d of %d", l.Share, l.Shares)
	}
	if l.Pack > facts.Quantity(money.Piece) {
		row[2] += fmt.Sprintf(", in packs of %s", l.Pack)
	}
	if l.Total.Known {
		row[4] = l.Total.Amount.Number()
	}
	return row
}

// parts says what a number to order is made of, where it is more than what is placed.
func parts(l *facts.Line) string {
	var out []string
	add := func(q facts.Quantity, what string) {
		if q > 0 {
			out = append(out, q.String()+" "+what)
		}
	}
	add(l.Placed, "to place")
	add(l.Planned, "to change")
	add(l.Spare-l.Rest, "spare")
	add(l.Rest, "left over by cutting")
	add(l.Extra, "extra")
	if l.Have == 0 && len(out) < 2 && l.Planned == 0 {
		return ""
	}
	text := strings.Join(out, " + ")
	if l.Have > 0 {
		text += fmt.Sprintf(" - %s aboard", l.Have)
	}
	return " (" + text + ")"
}

func (a *app) printWritten(path string, r *workbook.Report) {
	u := a.ui
	if !r.Reissued {
		u.say("", "Written: %s", path)
		return
	}
	u.say("", "Re-issued: %s (%s of the buyer's kept, %d set aside)", path, counted(r.Kept, "cell"), r.SetAside)
	if r.Before != "" {
		u.fold("  before", r.Before+" is the last issue, as the buyer left it: formats other than colours are in it alone.")
	}
	if len(r.Lost) > 0 {
		u.fold("  mind", "not carried over, and in the last issue alone: "+strings.Join(r.Lost, ", ")+".")
	}
	if r.Partial != "" {
		u.fold("  mind", r.Partial+".")
	}
	if r.Other != "" {
		u.fold("  mind", fmt.Sprintf("the workbook was that of another build, %q: what was typed was kept where a line has the same name.", r.Other))
	}
	if r.SetAside > 0 {
		u.fold("  mind", "what no longer has its place, and figures typed over the build file's, stand on the sheet \"Set aside\".")
	}
	for _, c := range r.Ask {
		u.fold("  ask", c+".")
	}
	for _, c := range r.Changed {
		u.fold("  changed", c)
	}
}
