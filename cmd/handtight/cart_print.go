package main

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"handtight/bom"
	"handtight/bom/cart"
)

// cartGroup is a part of the printed report.
type cartGroup struct {
	title  string
	colour string
	of     []cart.Status
}

// What leads: what is wrong. What may be left alone stands behind what is short.
var (
	cartWrong = cartGroup{"Wrong: do not order these", red, cart.Wrong()}
	cartRest  = []cartGroup{
		{"Another price than the offer", yellow, []cart.Status{cart.OtherPrice}},
		{"Bought twice", yellow, []cart.Status{cart.BoughtTwice}},
		{"More than is needed", yellow, []cart.Status{cart.Surplus}},
		{"Nothing to do with the build", cyan, []cart.Status{cart.NotNeeded}},
		{"No end found in these words; if one belongs to the build, write the item's id or code into its line", yellow, []cart.Status{cart.NoEnd}},
	}
	cartAsk = cartGroup{"To ask", yellow, []cart.Status{cart.Unsure, cart.NoQuantity}}
)

// printCart prints what the carts come to: the verdict, what is wrong by the pressure of its
// place, what must be asked, what is short, and then the rest; all of what covers only
// where it is wanted.
func (a *app) printCart(sys *bom.System, r *cart.Report, all bool) {
	u := a.ui
	u.line("%s  (%s)", u.paint(bold, sys.Build.Name), sys.Build.File)
	a.printCartCounts(r)
	for _, c := range r.Carts {
		u.line("%s: %s%s", c.Name, counted(len(c.Lines), "line"), inCurrency(c.Currency))
		for _, n := range c.Notes {
			u.fold("", capitalised(n)+".")
		}
	}
	u.line("")
	a.printCartGroup(r, cartWrong)
	a.printCartQuestions(r, all)
	a.printTallies(r, all)
	for _, g := range cartRest {
		a.printCartGroup(r, g)
	}
	a.printCovers(r, all)
	a.printOut(r, all)
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

// printCartGroup prints the lines of a group, those under the highest pressure first.
func (a *app) printCartGroup(r *cart.Report, g cartGroup) {
	u := a.ui
	var list []*cart.Verdict
	for _, v := range r.Lines {
		if slices.Contains(g.of, v.Status) {
			list = append(list, v)
		}
	}
	if len(list) == 0 {
		return
	}
	slices.SortStableFunc(list, func(x, y *cart.Verdict) int { return cmp.Compare(y.Worst, x.Worst) })
	u.line("%s", u.paint(g.colour, g.title))
	for _, v := range list {
		a.printVerdict(v)
	}
	u.line("")
}

// cartPlace names a line: where it stands, its code and its words.
func cartPlace(v *cart.Verdict) string {
	what := v.Line.Text
	if v.Line.Code != "" {
		what = strings.TrimSpace(v.Line.Code + "  " + what)
	}
	return fmt.Sprintf("%s: %s", v.Line.Where(), what)
}

func (a *app) printVerdict(v *cart.Verdict) {
	u := a.ui
	if v.Status == cart.NoEnd {
		u.fold("", cartPlace(v))
		return
	}
	u.fold("", fmt.Sprintf("%s  [%s]", cartPlace(v), v.Status))
	u.fold("  why", v.Reason)
	if v.Remedy != "" {
		u.fold("  do", v.Remedy)
	}
}

// printCovers prints what covers: one line a cart, or each line.
func (a *app) printCovers(r *cart.Report, all bool) {
	u := a.ui
	for _, c := range r.Carts {
		n := 0
		for _, v := range r.Lines {
			if v.Line.Cart != c.Name || v.Status != cart.Covers {
				continue
			}
			if n++; n == 1 && all {
				u.line("%s", u.paint(green, "Covers"))
			}
			if all {
				u.fold("", fmt.Sprintf("%s = %s %s of %s (%.2f)", cartPlace(v), v.Quantity, v.Unit, strings.Join(v.Items, " or "), v.Confidence))
			}
			if len(v.Also) > 0 {
				u.fold("  why", v.Reason)
				u.fold("  do", v.Remedy)
			}
		}
		if n > 0 && !all {
			u.line("%s", u.paint(green, fmt.Sprintf("%s of %s: nothing to say of them (--all lists them).", counted(n, "line"), c.Name)))
		}
	}
}

// printOut prints what does not count: one line a cart, or each line.
func (a *app) printOut(r *cart.Report, all bool) {
	u := a.ui
	for _, c := range r.Carts {
		var rows []int
		for _, v := range r.Lines {
			if v.Status != cart.Out || v.Line.Cart != c.Name {
				continue
			}
			if all {
				u.fold("", cartPlace(v))
				u.fold("  why", v.Reason)
				continue
			}
			rows = append(rows, v.Line.Row)
		}
		if len(rows) > 0 {
			u.fold("", fmt.Sprintf("Read as no part, or marked as not wanted, in %s: %s %s.", c.Name, plural(len(rows), "row"), ranges(rows)))
		}
	}
}

func plural(n int, word string) string {
	if n == 1 {
		return word
	}
	return word + "s"
}

// ranges writes numbers in rising order, those in a row as one: "21 to 26, 36".
func ranges(list []int) string {
	var out []string
	for i := 0; i < len(list); {
		k := i
		for k+1 < len(list) && list[k+1] == list[k]+1 {
			k++
		}
		text := fmt.Sprint(list[i])
		if k > i {
			text += fmt.Sprintf(" to %d", list[k])
		}
		out = append(out, text)
		i = k + 1
	}
	return strings.Join(out, ", ")
}

// mostMissing is how many things that are wholly missing are each given their line.
const mostMissing = 8

// printTallies prints what the carts do not cover. A cart is often one of several: a long
// list of what none has is one line, unless all is wanted.
func (a *app) printTallies(r *cart.Report, all bool) {
	u := a.ui
	var short, missing []*cart.Tally
	for _, s := range []cart.Status{cart.Missing, cart.Short, cart.ShortOfSpares} {
		for _, t := range r.Items {
			switch {
			case t.Status != s:
			case s == cart.Missing && len(t.Unsure) == 0:
				missing = append(missing, t)
			default:
				short = append(short, t)
			}
		}
	}
	if len(short)+len(missing) == 0 {
		return
	}
	u.line("%s", u.paint(red, "Short"))
	for _, t := range short {
		u.fold("", fmt.Sprintf("%s  [%s]: %s", t.Item, t.Status, t.Reason))
		u.fold("  do", t.Remedy)
	}
	var names []string
	for _, t := range missing {
		if all || len(missing) <= mostMissing {
			u.fold("", fmt.Sprintf("%s  [%s]: %s", t.Item, t.Status, t.Remedy))
			continue
		}
		names = append(names, fmt.Sprintf("%s (%s %s)", t.Item, t.Need, t.Unit))
	}
	if len(names) > 0 {
		u.fold("", fmt.Sprintf("Nothing at all of %d (--all says what to order): %s.", len(names), strings.Join(names, ", ")))
	}
	u.line("")
}

// printCartQuestions prints each question once; with all, why each line is asked about.
func (a *app) printCartQuestions(r *cart.Report, all bool) {
	u := a.ui
	if all {
		a.printCartGroup(r, cartAsk)
	}
	if len(r.Questions) == 0 {
		return
	}
	u.line("%s", u.paint(bold, "Ask before buying"))
	for i, q := range r.Questions {
		what := ""
		for _, v := range r.Lines {
			if v.Line.Cart == q.Cart && v.Line.Row == q.Line {
				what = shorten(strings.TrimSpace(v.Line.Code+" "+v.Line.Text), 40) + ": "
				break
			}
		}
		u.fold(fmt.Sprintf("  %d.", i+1), fmt.Sprintf("%s line %d: %s%s (settles %s)", q.Cart, q.Line, what, q.Ask, counted(q.Settles, "line")))
	}
	u.line("")
}

// shorten cuts a text at whole letters.
func shorten(text string, most int) string {
	list := []rune(text)
	if len(list) <= most {
		return text
	}
	return strings.TrimSpace(string(list[:most-1])) + "…"
}

func (a *app) printCartCounts(r *cart.Report) {
	u := a.ui
	wrong := 0
	for _, v := range r.Lines {
		if v.IsWrong() {
			wrong++
		}
	}
	short := r.CountItems(cart.Short) + r.CountItems(cart.Missing)
	text := fmt.Sprintf("%s: %d covered, %d short or missing, %d short of spares only; %s: %d wrong, %s.",
		counted(len(r.Items), "item"), r.CountItems(cart.Covered)+r.CountItems(cart.Surplus), short, r.CountItems(cart.ShortOfSpares),
		counted(len(r.Lines), "line"), wrong, counted(len(r.Questions), "question"))
	if r.Builds() {
		u.fold("", u.paint(green, "This can build it. "+text))
		return
	}
	u.fold("", u.paint(red, "This cannot build it yet. "+text))
}
