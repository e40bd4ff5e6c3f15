package main

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"handtight/bom"
	"handtight/bom/facts"
	"handtight/bom/kit"
)

func (a *app) sparesCommand() *cobra.Command {
	var aboard bool
	cmd := &cobra.Command{
		Use:   "spares BUILD",
		Short: "Spares by class with the chance of being without, and what more money buys",
		Long: `Counts what stays aboard when the build is fitted: spares, planned changes, and what packs
leave over; by class, each part with the chance of being without it all the same before
the next shop. Then which packs lower that chance most for their money: one more of the
first, then of the next with that one aboard, and so on. A cost is landed with customs and
tax, without freight.

--kit lists only what to stow. The chances rest on [spares] and on the lives (fails = "…")
in the build file, and take parts as independent.

With --json: {"spares": [{"item", "about", "class", "placed", "planned", "spares", "aboard",
"unit", "chance_without", "why"}], "chance_without_any" (by what fails while it runs), "chance_while_fitting", "no_life"
(items that wear and state no life: no chance has them), "next": [{"item", "pieces", "cost",
"chance_before", "chance_after", "fall_per_unit"}], "currency", "unpriced"}; a chance is
null for what is not known to fail.`,
		Example: `  handtight spares testdata/clean/build.toml
  handtight spares build.toml --kit`,
		Args: exactly(1, "one build file"),
		RunE: func(_ *cobra.Command, args []string) error {
			sys, err := a.load(args[0])
			if err != nil {
				return err
			}
			order, err := sys.Order()
			if err != nil {
				return err
			}
			k, err := kit.Of(sys, order)
			if err != nil {
				return err
			}
			next, unpriced, err := k.Next(nextBuys)
			if err != nil {
				return err
			}
			switch {
			case a.json:
				return a.ui.printJSON(facts.KitOf(sys, k, next, unpriced))
			case aboard:
				a.printKit(sys, k)
			default:
				a.printSpares(sys, k, next, unpriced)
			}
			return nil
		},
	}
	cmd.Flags().BoolVar(&aboard, "kit", false, "list only what stays aboard, to stow")
	return cmd
}

// nextBuys is how many packs are ranked: the best, and the five after it.
const nextBuys = 6

// spareColumns are the columns of a class.
var spareColumns = []column{
	{title: "part", flex: true}, {title: "placed", right: true}, {title: "to change", right: true}, {title: "spare", right: true}, {title: "without", right: true},
}

func (a *app) printSpares(sys *bom.System, k *kit.Kit, next []kit.Buy, unpriced int) {
	u := a.ui
	a.printHead(sys.Build.Name, sys.Build.File)
	w := &sys.Build.Spares
	u.say("", "%s away, %s running; chance of being without: before the next shop, with these spares.", w.Away.Calendar(), w.Hours)
	u.line("")
	for class := kit.Wear; class <= kit.Rest; class++ {
		var rows [][]string
		for _, p := range k.Parts {
			if p.Class == class {
				rows = append(rows, spareRow(p))
			}
		}
		if len(rows) == 0 {
			continue
		}
		u.say(bold, "%s", strings.ToUpper(class.String()[:1])+class.String()[1:])
		if !u.table(spareColumns, rows) {
			for _, r := range rows {
				u.fold("  -", fmt.Sprintf("%s: %s placed, %s to change, %s spare, without %s", r[0], r[1], r[2], r[3], r[4]))
			}
		}
		u.line("")
	}
	a.printNext(sys, next, unpriced)
	if len(k.Unknown) > 0 {
		var names []string
		for _, it := range k.Unknown {
			names = append(names, it.ID)
		}
		u.fold("  mind", fmt.Sprintf("no life is stated of %s: no chance has them (write fails = \"… h\" or life = \"… h\").", strings.Join(names, ", ")))
	}
	u.say("", "Chance that a fitting is spoiled and lacks while fitting, before leaving: %s", chance(k.Fitting))
	u.say(bold, "Chance to have to turn back for some part that fails: %s", chance(k.Without))
}

func spareRow(p *kit.Part) []string {
	n := p.Line.Need
	row := []string{n.Key, n.Placed.String(), "", fmt.Sprint(p.Spare), ""}
	if n.Item != nil && n.Item.About != "" {
		row[0] += ": " + n.Item.About
	}
	if n.Unit == "m" {
		row[1], row[3] = row[1]+" m", p.Aboard.String()+" m"
	}
	if p.Planned > 0 {
		row[2] = p.Planned.String()
	}
	if p.Risk {
		row[4] = chance(p.Without)
	}
	return row
}

// chance writes a share in percent, never as nothing or certainty unless it is.
func chance(share float64) string {
	percent := share * 100
	switch {
	case percent <= 0:
		return "0 %"
	case percent < 0.01:
		return "under 0.01 %"
	case percent > 99.99:
		return "over 99.99 %"
	case percent < 1:
		return fmt.Sprintf("%.2f %%", percent)
	}
	return fmt.Sprintf("%.1f %%", percent)
}

// nextColumns are the columns of what more money buys.
var nextColumns = []column{
	{}, {title: "one more pack of", flex: true}, {title: "pieces", right: true}, {title: "costs", right: true}, {title: "without", right: true}, {title: "falls to", right: true},
	{title: "% a unit", right: true},
}

func (a *app) printNext(sys *bom.System, next []kit.Buy, unpriced int) {
	u := a.ui
	if len(next) > 0 {
		u.say(bold, "What one more %s buys: the fall of the chance for the money, best first", sys.Build.Currency)
		var rows [][]string
		for i, b := range next {
			rows = append(rows, []string{
				fmt.Sprintf("%d.", i+1), b.Part.Line.Need.Key, fmt.Sprint(b.Pieces), b.Cost.Number(), chance(b.Before), chance(b.After), perUnit(b.PerUnit),
			})
		}
		if !u.table(nextColumns, rows) {
			for _, r := range rows {
				u.fold("  "+r[0], fmt.Sprintf("%s, %s for %s: %s -> %s", r[1], r[2], r[3], r[4], r[5]))
			}
		}
	}
	if unpriced > 0 {
		u.say("", "No price is known of %s that may fail or be spoiled.", counted(unpriced, "part"))
	}
	if len(next) > 0 || unpriced > 0 {
		u.line("")
	}
}

// perUnit writes the fall of a chance for one unit of money, in percent to two figures.
func perUnit(fall float64) string {
	v, err := strconv.ParseFloat(strconv.FormatFloat(math.Round(fall*1e8)/1e6, 'e', 1, 64), 64)
	if err != nil {
		v = 0
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// kitColumns are the columns of what is stowed.
var kitColumns = []column{{title: "stow", right: true}, {}, {title: "what", flex: true}, {title: "for"}}

func (a *app) printKit(sys *bom.System, k *kit.Kit) {
	u := a.ui
	a.printHead(sys.Build.Name, sys.Build.File)
	u.say(bold, "What stays aboard")
	var rows [][]string
	for _, p := range k.Aboard() {
		n := p.Line.Need
		what := n.About
		if n.Item != nil {
			what = n.Key + ": " + n.About
		}
		rows = append(rows, []string{p.Aboard.String(), n.Unit, what, p.Class.String()})
	}
	if !u.table(kitColumns, rows) {
		for _, r := range rows {
			u.fold(r[0]+" "+r[1], r[2]+"; "+r[3])
		}
	}
}
