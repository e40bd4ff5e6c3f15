package draft

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom/cart"
)

// writer writes a draft as a build file.
type writer struct {
	d      *Draft
	s      *solved
	r      *router
	o      Options
	carts  []*cart.Cart
	b      strings.Builder
	done   map[*Part]bool
	filled map[*Part]int   // inches of elements in each of a part's vessels
	sold   map[string]bool // items whose offer stands
}

func (w *writer) line(format string, args ...any) { fmt.Fprintf(&w.b, format+"\n", args...) }

// comment writes a comment, folded.
func (w *writer) comment(format string, args ...any) {
	text := strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f {
			return ' '
		}
		return r
	}, fmt.Sprintf(format, args...))
	for _, l := range fold(text, 98) {
		w.line("# %s", l)
	}
}

// fold breaks a text at blanks.
func fold(text string, width int) []string {
	var out []string
	now := ""
	for _, word := range strings.Fields(text) {
		if now != "" && len([]rune(now))+1+len([]rune(word)) > width {
			out = append(out, now)
			now = "  " + word
			continue
		}
		if now != "" {
			now += " "
		}
		now += word
	}
	return append(out, now)
}

func (w *writer) write() string {
	w.done, w.sold, w.filled = map[*Part]bool{}, map[string]bool{}, map[*Part]int{}
	w.head()
	w.duty()
	w.vendors()
	runs := w.r.runs()
	for i := range runs {
		w.section(&runs[i])
	}
	w.loose()
	w.left()
	w.buys()
	w.asides()
	return w.b.String()
}

// head writes what the file is, and the build's own table.
func (w *writer) head() {
	var names []string
	for _, c := range w.carts {
		names = append(names, c.Name)
	}
	w.comment("Drafted from %s: a start to check, not a checked build.", strings.Join(names, ", "))
	w.comment("ASSUMED is what no list says and was taken; ASK is what must be asked first; MISSING is to buy.")
	w.comment("Taken for %s.", strings.Join(w.d.Why, "; "))
	if len(w.d.Others) > 0 {
		w.comment("It could be drafted otherwise: --like %q.", strings.Join(w.d.Others, "\" or --like \""))
	}
	if !w.d.Proven {
		w.comment("Not every way of putting the pieces together was tried: up to %d fewer might be missing.", max(0, w.d.Short))
	}
	w.line("")
	w.line("[build]")
	w.line("name     = %s", quote(orElse(w.o.Name, "Drafted plant")))
	w.line("currency = %s", quote(w.d.currency(w.carts, w.o)))
	w.line("")
}

// duty writes what was answered; what was not stays a comment, since a guess clears nothing.
func (w *writer) duty() {
	var said, open []string
	for _, key := range []string{"pressure", "product", "salinity", "water", "supply"} {
		i := slices.IndexFunc(w.d.Questions, func(q Question) bool { return q.Key == key })
		if i < 0 {
			continue
		}
		q := &w.d.Questions[i]
		switch {
		case q.Answer != "":
			said = append(said, fmt.Sprintf("%-8s = %s", key, quote(q.Answer)))
		case key == "pressure": // a pump does not read without it
			said = append(said, fmt.Sprintf("%-8s = %-14s # ASSUMED. ASK: %s", key, quote(q.Default), q.Ask))
		default:
			open = append(open, fmt.Sprintf("# %-8s = %-14s # ASK: %s", key, quote(orElse(q.Default, "…")), q.Ask))
		}
	}
	if len(said) > 0 {
		w.line("[duty]")
	} else {
		w.line("# [duty]")
	}
	for _, l := range append(said, open...) {
		w.line("%s", l)
	}
	w.line("")
	if w.rated() {
		w.line("[rates]")
		w.line("date = %s", w.o.RateDay)
		for _, code := range w.currencies() {
			if rate := w.o.rate(code); rate != "" {
				w.line("%s = %s", code, quote(rate))
			}
		}
		w.line("")
	}
}

func (w *writer) currencies() []string {
	var out []string
	for _, c := range w.carts {
		if c.Currency != "" && !slices.Contains(out, c.Currency) {
			out = append(out, c.Currency)
		}
	}
	slices.Sort(out)
	return out
}

func (w *writer) rated() bool {
	return slices.ContainsFunc(w.currencies(), func(c string) bool { return w.o.rate(c) != "" })
}

// loose writes what is counted and not joined.
func (w *writer) loose() {
	first := true
	for _, p := range w.d.Parts {
		if p.Aside != "" || !p.Kind.Loose || w.done[p] || p.isStock() {
			continue
		}
		if first {
			w.line("# --- Contents and stores %s\n", strings.Repeat("-", 52))
			first = false
		}
		w.part(p)
	}
}

// left writes what no run takes.
func (w *writer) left() {
	first := true
	for _, p := range w.d.Parts {
		if p.Aside != "" || w.done[p] {
			continue
		}
		if first {
			w.line("# --- Left over: no place of the plant takes them %s\n", strings.Repeat("-", 28))
			first = false
		}
		for _, m := range w.d.Misfits {
			if m.Where == p.Where() {
				w.comment("DOES NOT FIT: %s%s.", m.Why, map[bool]string{true: " (" + m.Place + ")"}[m.Place != ""])
			}
		}
		w.part(p)
	}
}

// buys writes what is missing.
func (w *writer) buys() {
	if len(w.d.Missing) == 0 {
		return
	}
	w.line("# --- Missing %s\n", strings.Repeat("-", 64))
	for _, m := range w.d.Missing {
		text := "MISSING: " + m.What
		if m.Where != "" {
			text += " at " + m.Where
		}
		if len(m.Buy) > 0 {
			text += "; buy " + strings.Join(m.Buy, " and ")
		}
		if m.Role {
			text += ", which a plant has (" + m.Need + ")"
		}
		if m.Note != "" {
			text += ". " + m.Note
		}
		w.comment("%s.", text)
	}
	w.line("")
	for _, b := range w.r.buys {
		if b.cut != nil {
			w.hose(b.cut)
			continue
		}
		w.line("%s", b.item)
	}
}

// asides keeps every line that is no item: generic parts with their offers, and comments.
func (w *writer) asides() {
	first := true
	for _, p := range w.d.Parts {
		if p.Aside == "" || w.done[p] {
			continue
		}
		if first {
			w.line("# --- Lines that are no item %s\n", strings.Repeat("-", 49))
			first = false
		}
		w.done[p] = true
		w.comment("%s: %s", p.Where(), orElse(p.Line.Text, "(no text)"))
		w.comment("  %s", p.Aside)
		if p.Kind != nil && p.Kind.Generic {
			if item := p.genericName(); item != "" {
				w.offer(p, item)
			}
		}
		w.line("")
	}
}
