package main

import (
	"fmt"
	"strings"

	"handtight/bom"
	"handtight/bom/cart"
)

// The parts of the printed report, worst last but for the counts: what can be left
// alone scrolls away first.
var cartGroups = []struct {
	title  string
	colour string
	of     []cart.Status
}{
	{"Stays out", cyan, []cart.Status{cart.Out}},
	{"Covers", green, []cart.Status{cart.Covers}},
	{"Nothing to do with the build", cyan, []cart.Status{cart.NotNeeded}},
	{"No end found in these words; if one belongs to the build, write the item's id or code into its line", yellow, []cart.Status{cart.NoEnd}},
	{"Another price than the offer", yellow, []cart.Status{cart.OtherPrice}},
	{"More than is needed", yellow, []cart.Status{cart.Surplus, cart.BoughtTwice}},
	{"Not sure", yellow, []cart.Status{cart.Unsure, cart.NoQuantity}},
	{"Wrong: do not order these", red, []cart.Status{cart.WrongMaterial, cart.LowRating, cart.WrongSize, cart.WrongSex, cart.WrongThread}},
}

func (a *app) printCart(sys *bom.System, r *cart.Report) {
	u := a.ui
	u.line("%s  (%s)", u.paint(bold, sys.Build.Name), sys.Build.File)
	for _, c := range r.Carts {
		u.line("%s: %s%s", c.Name, counted(len(c.Lines), "line"), inCurrency(c.Currency))
		for _, n := range c.Notes {
			u.fold("", capitalised(n)+".")
		}
	}
	u.line("")
	for _, g := range cartGroups {
		a.printCartGroup(r, g.title, g.colour, g.of)
	}
	a.printTallies(r)
	a.printCartQuestions(r)
	a.printCartCounts(r)
}

func inCurrency(code string) string {
	if code == "" {
		return ", currency not said"
	}
	return ", in " + code
}

func capitalised(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

func (a *app) printCartGroup(r *cart.Report, title, colour string, of []cart.Status) {
	u := a.ui
	first := true
	for _, s := range of {
		for _, v := range r.Lines {
			if v.Status != s {
				continue
			}
			if first {
				u.line("%s", u.paint(colour, title))
				first = false
			}
			a.printVerdict(v)
		}
	}
	if !first {
		u.line("")
	}
}

// printVerdict prints a line; one that simply covers takes one line.
func (a *app) printVerdict(v *cart.Verdict) {
	u := a.ui
	what := v.Line.Text
	if v.Line.Code != "" {
		what = strings.TrimSpace(v.Line.Code + "  " + what)
	}
	where := fmt.Sprintf("%s: %s", v.Line.Where(), what)
	switch v.Status {
	case cart.Covers:
		u.fold("", fmt.Sprintf("%s = %s %s of %s (%.2f)", where, v.Quantity, v.Unit, strings.Join(v.Items, " or "), v.Confidence))
		if len(v.Also) == 0 {
			return
		}
	case cart.Out:
		u.fold("", where)
		u.fold("  why", v.Reason)
		return
	case cart.NoEnd:
		u.fold("", where)
		return
	default:
		u.fold("", fmt.Sprintf("%s  [%s]", where, v.Status))
	}
	u.fold("  why", v.Reason)
	if v.Remedy != "" {
		u.fold("  do", v.Remedy)
	}
}

// printTallies prints what the carts do not cover.
func (a *app) printTallies(r *cart.Report) {
	u := a.ui
	first := true
	for _, s := range []cart.Status{cart.ShortOfSpares, cart.Short, cart.Missing} {
		for _, t := range r.Items {
			if t.Status != s {
				continue
			}
			if first {
				u.line("%s", u.paint(red, "Short"))
				first = false
			}
			if t.Status == cart.Missing && len(t.Unsure) == 0 {
				u.fold("", fmt.Sprintf("%s  [%s]: %s", t.Item, t.Status, t.Remedy))
				continue
			}
			u.fold("", fmt.Sprintf("%s  [%s]: %s", t.Item, t.Status, t.Reason))
			u.fold("  do", t.Remedy)
		}
	}
	if !first {
		u.line("")
	}
}

func (a *app) printCartQuestions(r *cart.Report) {
	u := a.ui
	if len(r.Questions) == 0 {
		return
	}
	u.line("%s", u.paint(bold, "Ask before buying"))
	for i, q := range r.Questions {
		u.fold(fmt.Sprintf("  %d.", i+1), fmt.Sprintf("%s line %d: %s (settles %s)", q.Cart, q.Line, q.Ask, counted(q.Settles, "line")))
	}
	u.line("")
}

func (a *app) printCartCounts(r *cart.Report) {
	u := a.ui
	wrong := 0
	for _, s := range []cart.Status{cart.WrongThread, cart.WrongSex, cart.WrongSize, cart.LowRating, cart.WrongMaterial} {
		for _, v := range r.Lines {
			if v.Status == s {
				wrong++
			}
		}
	}
	short := r.CountItems(cart.Short) + r.CountItems(cart.Missing)
	text := fmt.Sprintf("%s: %d covered, %d short or missing, %d short of spares only; %s: %d wrong, %s.",
		counted(len(r.Items), "item"), r.CountItems(cart.Covered)+r.CountItems(cart.Surplus), short, r.CountItems(cart.ShortOfSpares),
		counted(len(r.Lines), "line"), wrong, counted(len(r.Questions), "question"))
	if r.Builds() {
		u.line("%s", u.paint(green, text+" This can build it."))
		return
	}
	u.line("%s", u.paint(red, text+" This cannot build it yet."))
}
