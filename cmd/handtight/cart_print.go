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

// cartShown is how much of a report is printed.
type cartShown struct {
	all bool // every line
	why bool // and what each was matched by, with its points
}

// printCart prints what the carts come to: the verdict, what is wrong by the pressure of its
// place, what is missing, what must be asked, and then the rest; all of what covers only
// where it is wanted.
func (a *app) printCart(sys *bom.System, r *cart.Report, show cartShown) {
	u := a.ui
	a.printHead(sys.Build.Name, sys.Build.File)
	a.printCartCounts(r)
	for _, c := range r.Carts {
		u.say("", "%s: %s%s", c.Name, counted(len(c.Lines), "line"), inCurrency(c.Currency))
		for _, n := range c.Notes {
			u.fold("  -", capitalised(n)+".")
		}
	}
	u.line("")
	a.printCartGroup(r, cartWrong, show)
	a.printTallies(r, show.all)
	a.printCartQuestions(r, show)
	for _, g := range cartRest {
		a.printCartGroup(r, g, show)
	}
	a.printCovers(r, show)
	a.printOut(r, show.all)
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
func (a *app) printCartGroup(r *cart.Report, g cartGroup, show cartShown) {
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
	u.say(g.colour, "%s", g.title)
	for _, v := range list {
		a.printVerdict(v, show)
		a.printPassedOver(v) // a line covers at another price too, and what was not looked at is named there as well
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

// textColumns is how much of a line's own words is shown, unless all is.
const textColumns = 40

// entryOf names a line in short, or whole where all is wanted.
func (a *app) entryOf(v *cart.Verdict, show cartShown) string {
	what := v.Line.Text
	if !show.all {
		what = a.ui.cut(what, textColumns)
	}
	if v.Line.Code != "" {
		what = strings.TrimSpace(v.Line.Code + "  " + what)
	}
	return fmt.Sprintf("%s: %s", v.Line.Where(), what)
}

func (a *app) printVerdict(v *cart.Verdict, show cartShown) {
	u := a.ui
	if v.Status == cart.NoEnd {
		u.fold("  -", a.entryOf(v, show))
		return
	}
	u.fold("  -", fmt.Sprintf("%s [%s]", a.entryOf(v, show), v.Status))
	u.fold("    why", v.Reason)
	if v.Remedy != "" {
		u.fold("    do", v.Remedy)
	}
	a.printEvidence(v, show)
}

// printEvidence prints what a line was matched by, where it is asked for.
func (a *app) printEvidence(v *cart.Verdict, show cartShown) {
	if !show.why || len(v.Evidence) == 0 {
		return
	}
	var says []string
	for _, e := range v.Evidence {
		says = append(says, fmt.Sprintf("%s (%+.2f)", e.Says, float64(e.Points)/100))
	}
	a.ui.fold("    by", fmt.Sprintf("%s; sum %.2f", strings.Join(says, ", "), v.Confidence))
}

// printCovers prints what covers: one line a cart, or each line.
func (a *app) printCovers(r *cart.Report, show cartShown) {
	all := show.all
	u := a.ui
	headed := all
	for _, c := range r.Carts {
		n := 0
		var passed []string
		for _, v := range r.Lines {
			if v.Line.Cart != c.Name || v.Status != cart.Covers {
				continue
			}
			if len(v.PassedOver) > 0 {
				passed = append(passed, fmt.Sprintf("line %d: %s", v.Line.Row, strings.Join(v.PassedOver, ", ")))
			}
			if n++; n == 1 && all {
				u.line("%s", u.paint(green, "Covers"))
			}
			if all {
				u.fold("  -", fmt.Sprintf("%s = %s %s of %s", cartPlace(v), v.Quantity, v.Unit, strings.Join(v.Items, " or ")))
				a.printPassedOver(v)
				a.printEvidence(v, show)
			}
			if len(v.Also) > 0 {
				if !headed {
					u.say(yellow, "Covers, but look")
					headed = true
				}
				if !all {
					u.fold("  -", a.entryOf(v, show))
				}
				u.fold("    why", v.Reason)
				u.fold("    do", v.Remedy)
			}
		}
		if n > 0 && !all {
			u.say(green, "Covered: %s of %s (--all lists %s).", counted(n, "line"), c.Name, map[bool]string{true: "it", false: "them"}[n == 1])
			if len(passed) > 0 {
				u.fold("  not understood, so not checked:", strings.Join(passed, "; "))
			}
		}
	}
}

// printPassedOver names the words of a line that nothing understands.
func (a *app) printPassedOver(v *cart.Verdict) {
	if len(v.PassedOver) > 0 {
		a.ui.fold("    not understood, so not checked:", strings.Join(v.PassedOver, ", "))
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
				u.fold("  -", cartPlace(v))
				u.fold("    why", v.Reason)
				continue
			}
			rows = append(rows, v.Line.Row)
		}
		if len(rows) > 0 {
			u.say("", "%s", fmt.Sprintf("Read as no part, or marked as not wanted, in %s: %s %s.", c.Name, plural(len(rows), "row"), ranges(rows)))
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
	u.line("%s", u.paint(red, "Missing or short"))
	for _, t := range short {
		u.fold("  -", fmt.Sprintf("%s [%s]: %s", t.Item, t.Status, t.Reason))
		u.fold("    do", t.Remedy)
	}
	var names []string
	for _, t := range missing {
		if all || len(missing) <= mostMissing {
			u.fold("  -", fmt.Sprintf("%s [%s]: %s", t.Item, t.Status, t.Remedy))
			continue
		}
		names = append(names, fmt.Sprintf("%s (%s %s)", t.Item, t.Need, t.Unit))
	}
	if len(names) > 0 {
		u.fold("  -", fmt.Sprintf("nothing at all of %d (--all says what to order): %s.", len(names), strings.Join(names, ", ")))
	}
	u.line("")
}

// printCartQuestions prints each question once; with all, why each line is asked about.
func (a *app) printCartQuestions(r *cart.Report, show cartShown) {
	u := a.ui
	if show.all {
		a.printCartGroup(r, cartAsk, show)
	}
	if len(r.Questions) == 0 {
		return
	}
	u.line("%s", u.paint(bold, "Ask before buying"))
	for i, q := range r.Questions {
		what := ""
		for _, v := range r.Lines {
			if v.Line.Cart == q.Cart && v.Line.Row == q.Line {
				what = u.cut(strings.TrimSpace(v.Line.Code+" "+v.Line.Text), textColumns) + ": "
				break
			}
		}
		u.fold(fmt.Sprintf("  %d.", i+1), fmt.Sprintf("%s line %d: %s%s (settles %s)", q.Cart, q.Line, what, q.Ask, counted(q.Settles, "line")))
	}
	u.line("")
}

// printCartCounts says whether the carts may be sent, and counts what the answer rests on.
func (a *app) printCartCounts(r *cart.Report) {
	u := a.ui
	wrong := 0
	for _, v := range r.Lines {
		if v.IsWrong() {
			wrong++
		}
	}
	missing := r.CountItems(cart.Short) + r.CountItems(cart.Missing)
	text := fmt.Sprintf("%d wrong, %d short or missing, %d short of spares only, %d to ask", wrong, missing, r.CountItems(cart.ShortOfSpares), len(r.Questions))
	switch {
	case wrong > 0:
		u.say(red, "DO NOT SEND IT: %s", text)
	case r.Builds():
		u.say(green, "This can build it: %s", text)
	default:
		u.say(red, "This cannot build it yet: %s", text)
	}
	u.say("", "%s: %d covered; %s", counted(len(r.Items), "item"), r.CountItems(cart.Covered)+r.CountItems(cart.Surplus), counted(len(r.Lines), "line"))
}
