package main

import (
	"context"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"handtight/bom/choose"
	"handtight/bom/facts"
	"handtight/bom/money"
	"handtight/bom/order"
)

func (a *app) chooseCommand() *cobra.Command {
	var goal string
	cmd := &cobra.Command{
		Use:   "choose BUILD",
		Short: "From which shop to buy each line, so that all of it costs least landed",
		Long: `Where several shops offer an item, chooses the shop of each line so that the whole comes
to least, landed: prices by the pack, minimum orders, each shop's freight and the value
from which it is free, customs, tax and rates. It is set against everything from one shop
and against each line where it is cheapest by itself. An order is filled up to a shop's
minimum, and to free freight where that costs less than the freight.

An [[option]] is taken where it saves, and only if the build checks without a stop that it
did not have before. It may name hose stock for hose stock, of which all hoses are cut then, or a
hose cut from stock for one made up. The plan is exact; where the search had to end early, that is said,
with what no plan can cost less than.

Where there are options, or with --for, the build is set beside itself in one standard
throughout: as it is, all NPT, all BSP, and the best of all ways for the landed cost, the
fewest adaptors or the fewest families of thread. Small parts are bought with other ends from
the generic stock, and adaptors are put in where ends do not join; what has no offer is counted
and never taken for free. An [[option]] may say family = "NPT" or "BSP" where its item's ends do
not, and per = "unit" where each unit may be chosen by itself.

A line is divided between offers where that costs less: so many packs at one, the rest at
another, of the same shop or of several. Hose that is cut stays at one offer, and so does a
line of more than a thousand pieces.

In the build file a [[vendor]] may say minimum = "50.00" and free_from = "300.00" beside
its freight; an [[offer]] of hose may say lengths = ["5 m", "10 m"] with per = "m".

With --json: {"plan" (as of order), "proved", "bounded" (lines not divided in every way), "no_less_than", "currency", "line_by_line":
{"total", "saved"}, "one_shop": [{"vendor", "total", "saved", "lacks"}], "swaps": [{"for",
"item", "cautions"}], "refused": [{"for", "item", "saves", "reason"}], "arrivals":
[{"vendor", "days", "items", "without_lead"}], "cuts": [{"item", "vendor", "bought_m",
"waste_m", "proved", "lengths": [{"m", "aboard", "waste_m", "pieces": [{"hose", "m"}]}]}],
"standards": [{"name", "none", "only", "total", "no_offer", "joints", "adaptors", "families",
"cautions", "stops", "proved", "no_less_than", "taken", "joints_need": [{"joint", "buy"}]}]}.

Exit status 0, or 1 when the build has stops, or 2 when the file cannot be taken.`,
		Example: `  handtight choose testdata/shops/build.toml
  handtight order testdata/shops/build.toml --choose -o list.xlsx`,
		Args: exactly(1, "one build file"),
		RunE: func(_ *cobra.Command, args []string) error { return a.choose(args[0], goal) },
	}
	cmd.Flags().StringVar(&goal, "for", "", "what the best of all ways has least of: landed (the cost), adaptors or families")
	return cmd
}

// choose runs the command.
func (a *app) choose(path, goal string) error {
	sys, err := a.load(path)
	if err != nil {
		return err
	}
	c, err := choose.Shops(context.Background(), sys)
	if err != nil {
		return err
	}
	f := facts.ChoiceOf(c)
	if f.Standards, err = standardsOf(sys, goal); err != nil {
		return err
	}
	a.judge(c.Findings)
	if a.json {
		return a.ui.printJSON(f)
	}
	a.printChoice(c)
	a.printStandards(f.Standards, f.Currency, goal)
	return nil
}

func (a *app) printChoice(c *choose.Choice) {
	u := a.ui
	f, list := facts.Of(c.System, c.Findings), facts.OrderOf(c.System, c.Order)
	a.printTitle(f)
	a.printAnswer(c, list)
	a.printAgainst(c)
	a.printSwaps(c)
	a.printBrief(f)
	a.printShops(list)
	a.printCuts(c.Order, func(*order.Line) bool { return true })
	a.printArrivals(c.Order)
	if c.Order.Unpriced > 0 {
		u.say("", "No price is known of %s: no sum has them.", counted(c.Order.Unpriced, "line"))
	}
	u.say(bold, "Total %s", amount(c.Order.Total))
}

// printAnswer says in a sentence what to buy where.
func (a *app) printAnswer(c *choose.Choice, list *facts.Order) {
	var shops []string
	for i := range list.Shops {
		v := &list.Shops[i]
		text := fmt.Sprintf("%s for %s", v.Name, amount(v.Total.Amount))
		if v.Currency != list.Currency {
			text += fmt.Sprintf(" (%s %s)", v.InBuild.Amount.Number(), list.Currency)
		}
		shops = append(shops, text)
	}
	if len(shops) == 0 {
		a.ui.say(bold, "Nothing can be bought: no offer has a price.")
		a.ui.line("")
		return
	}
	a.ui.say(bold, "Buy all for %s, landed: %s.", amount(c.Order.Total), strings.Join(shops, "; "))
	for _, s := range c.Swaps {
		a.ui.say("", "Take %s in place of %s.", s.Item, s.For)
	}
	for _, l := range c.Order.Lines {
		if len(l.Shares) > 0 {
			a.ui.say("", "%s", divides(l))
		}
	}
	a.ui.line("")
}

// divides says how a line is divided: "Divide oil: 10 pc from near (N-10), 2 pc from far."
func divides(l *order.Line) string {
	var parts []string
	for _, s := range l.Shares {
		parts = append(parts, fmt.Sprintf("%s %s from %s", s.Order, l.Need.Unit, offerName(s.Offer.Vendor.ID, s.Offer.Code)))
	}
	return fmt.Sprintf("Divide %s: %s.", l.Need.Key, strings.Join(parts, ", "))
}

// offerName names an offer by its shop and code.
func offerName(shop, code string) string {
	if code == "" {
		return shop
	}
	return shop + " (" + code + ")"
}

// againstColumns are the columns of what the plan is set against.
var againstColumns = []column{{}, {title: "total", right: true}, {title: "this plan saves", right: true}}

// printAgainst sets the plan against one shop for all and the cheapest line by line,
// and says how far it is proved.
func (a *app) printAgainst(c *choose.Choice) {
	u := a.ui
	u.say(bold, "What it saves, in %s", c.System.Build.Currency)
	as := ""
	if len(c.Swaps) > 0 {
		as = ", no alternative taken"
	}
	rows := [][]string{{"this plan", c.Order.Total.Number(), ""}, {"each line where it is cheapest" + as, c.Cheapest.Total.Number(), facts.SavedOn(c, c.Cheapest)}}
	var partly []choose.OneShop
	for _, one := range c.One {
		if one.Order == nil {
			partly = append(partly, one)
			continue
		}
		rows = append(rows, []string{"all from " + one.Vendor.Name + as, one.Order.Total.Number(), facts.SavedOn(c, one.Order)})
	}
	if !u.table(againstColumns, rows) {
		for _, r := range rows {
			u.fold("  -", strings.TrimSpace(r[0]+": "+r[1]+saving(r[2])))
		}
	}
	var much []string
	for _, one := range partly {
		if n := len(one.Lacks); n > handful {
			much = append(much, fmt.Sprintf("%s lacks %d", one.Vendor.Name, n))
			continue
		}
		u.say("", "%s does not have all: it lacks %s.", one.Vendor.Name, few(keys(one.Lacks)))
	}
	if len(much) > 0 {
		u.say("", "Far from having all lines: %s.", strings.Join(much, ", "))
	}
	switch {
	case c.Proved && len(c.Bounded) > 0:
		u.say(green, "Proved: no other plan with these offers costs less, but for %s: with so many ways to divide it, only those over two shops were looked at, or none.", few(keys(c.Bounded)))
	case c.Proved:
		u.say(green, "Proved: no other plan with these offers costs less.")
	default:
		u.say(yellow, "Not proved: the search ended at its bound. No plan costs less than %s.", amount(c.Bound))
	}
	u.line("")
}

func saving(text string) string {
	if text == "" {
		return ""
	}
	return ", saves " + text
}

func keys(needs []*order.Need) []string {
	var out []string
	for _, n := range needs {
		out = append(out, n.Key)
	}
	return out
}

// handful is how many names are listed; those beyond it are counted.
const handful = 6

// few lists names, and counts those beyond a handful.
func few(names []string) string {
	if len(names) > handful {
		return fmt.Sprintf("%s and %d more", strings.Join(names[:handful], ", "), len(names)-handful)
	}
	return strings.Join(names, ", ")
}

// printSwaps says which options were taken, and which would have saved and were not.
func (a *app) printSwaps(c *choose.Choice) {
	u := a.ui
	if len(c.Swaps)+len(c.Refused) == 0 {
		return
	}
	u.say(bold, "Alternatives")
	for _, s := range c.Swaps {
		u.fold("  taken", fmt.Sprintf("%s in place of %s: the build checks without a new stop", s.Item, s.For))
		for _, f := range s.Cautions {
			u.fold("", fmt.Sprintf("new caution: %s, %s", f.Slug, f.At()))
		}
	}
	for _, r := range c.Refused {
		u.fold("  not", fmt.Sprintf("%s in place of %s: %s", r.Item, r.For, refusal(r)))
	}
	u.line("")
}

// refusal says why an option was not taken.
func refusal(r choose.Refusal) string {
	text := facts.RefusedFor(&r)
	if r.Saves.IsPositive() {
		text = fmt.Sprintf("it would save %s, but %s", amount(r.Saves), text)
	}
	return text
}

// printCuts says how hose is cut from what is bought, for lines that are asked for.
func (a *app) printCuts(o *order.Order, wanted func(*order.Line) bool) {
	u := a.ui
	head := true
	for _, l := range o.Lines {
		if l.Cut == nil || len(l.Cut.Lengths) == 0 || !wanted(l) {
			continue
		}
		if head {
			u.say(bold, "How the hoses are cut")
			head = false
		}
		u.fold("  -", cutLine(l))
		for i := range l.Cut.Lengths {
			length := &l.Cut.Lengths[i]
			var pieces []string
			for _, p := range length.Pieces {
				pieces = append(pieces, fmt.Sprintf("%s %s", p.Name, metres(p.Long)))
			}
			from := metres(length.Long)
			if length.Aboard {
				from += " aboard"
			}
			u.fold("", fmt.Sprintf("from %s: %s; %s left", from, strings.Join(pieces, ", "), metres(length.Waste())))
		}
	}
	if !head {
		u.line("")
	}
}

// cutLine heads the plan of one stock.
func cutLine(l *order.Line) string {
	text := fmt.Sprintf("%s: %s bought, %s of it left over", l.Need.Key, metres(l.Cut.Bought), metres(l.Cut.Waste()))
	if !l.Cut.Proved {
		text += " (first-fit decreasing; not proved to be the least)"
	}
	return text
}

// metres writes millimetres as metres: "1.4 m".
func metres(mm int) string { return money.Quantity(mm).String() + " m" }

// arrivalColumns are the columns of what arrives last.
var arrivalColumns = []column{{title: "shop"}, {title: "after"}, {title: "last to come", flex: true}}

// printArrivals says what comes last, by shop, and last of all.
func (a *app) printArrivals(o *order.Order) {
	u := a.ui
	list := choose.Arrivals(o)
	if len(list) == 0 {
		return
	}
	u.say(bold, "What arrives last")
	var rows [][]string
	for _, r := range list {
		row := []string{r.Vendor.Name, "not known", few(facts.LineKeys(r.Unknown))}
		if r.Last != nil {
			row[1], row[2] = r.Last.Calendar(), few(facts.LineKeys(r.Lines))
			if len(r.Unknown) > 0 {
				row[2] += fmt.Sprintf(" (and %s without a lead time)", counted(len(r.Unknown), "line"))
			}
		}
		rows = append(rows, row)
	}
	if !u.table(arrivalColumns, rows) {
		for _, r := range rows {
			u.fold("  -", fmt.Sprintf("%s, %s: %s", r[0], r[1], r[2]))
		}
	}
	if last, ok := choose.Last(list); ok {
		u.say("", "Last of all: %s, %s after ordering.", last.Vendor.Name, last.Last.Calendar())
	}
	u.line("")
}
