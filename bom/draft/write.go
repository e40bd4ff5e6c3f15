package draft

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"handtight/bom/cart"
	"handtight/bom/money"
)

// writer writes a draft as a build file.
type writer struct {
	d     *Draft
	s     *solved
	r     *router
	o     Options
	carts []*cart.Cart
	b     strings.Builder
	done  map[*Part]bool
	sold  map[string]bool // items whose offer stands
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
	w.done, w.sold = map[*Part]bool{}, map[string]bool{}
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

// vendors writes the shop of each list.
func (w *writer) vendors() {
	for _, c := range w.carts {
		var f fields
		f.text("id", shopOf(c))
		f.text("name", strings.TrimSuffix(filepath.Base(c.Name), filepath.Ext(c.Name)))
		f.text("currency", orElse(c.Currency, w.d.currency(w.carts, w.o)))
		w.comment("The shop of %s. ASK: its freight, customs and tax.", c.Name)
		w.line("%s", f.write("vendor"))
	}
}

// shopOf names the shop of a list.
func shopOf(c *cart.Cart) string {
	return orElse(idOf(strings.TrimSuffix(filepath.Base(c.Name), filepath.Ext(c.Name))), "list")
}

// section writes a run, with the items that first stand in it.
func (w *writer) section(r *run) {
	w.line("# --- %s %s", strings.ToUpper(r.name[:1])+r.name[1:], strings.Repeat("-", max(3, 72-len(r.name))))
	w.line("")
	for i := range r.path {
		e := &r.path[i]
		switch {
		case e.cut != nil:
			if e.part != nil {
				w.part(e.part)
			}
			w.hose(e.cut)
		case e.part != nil:
			w.part(e.part)
		case e.unit != nil:
			w.boats(e.unit)
		}
	}
	w.line("[[run]]")
	w.line("name = %s", quote(r.name))
	if r.line.Below {
		w.line("below_waterline = true                   # ASSUMED: up to the pump")
	}
	w.path(r.path)
	w.line("")
}

// path writes the steps, folded.
func (w *writer) path(list []element) {
	lead, row := "path = [", ""
	for i := range list {
		step := quote(list[i].text(i == 0, i == len(list)-1))
		if i < len(list)-1 {
			step += ","
		}
		if row != "" && len(lead)+len(row)+1+len(step) > 98 {
			w.line("%s%s", lead, row)
			lead, row = strings.Repeat(" ", 8), ""
		}
		if row != "" {
			row += " "
		}
		row += step
	}
	w.line("%s%s]", lead, row)
}

// part writes an item once, with its line, what was assumed, what to ask, and its offer.
func (w *writer) part(p *Part) {
	if w.done[p] {
		return
	}
	w.done[p] = true
	w.comment("%s: %s", p.Where(), p.Line.Text)
	f := p.fields()
	for _, a := range p.Assume {
		w.comment("ASSUMED: %s", a)
	}
	for _, a := range p.Ask {
		w.comment("ASK: %s", a)
	}
	w.more(p, &f)
	head := "item"
	if p.isHose() {
		head = "hose"
	}
	w.line("%s", f.write(head))
	w.offer(p, p.ID)
}

// more adds what only the plant knows: what lies inside, what is left over.
func (w *writer) more(p *Part, f *fields) {
	if unit, each := w.inside(p); unit != "" {
		f.text("inside", unit)
		if each > 1 {
			f.add("each", fmt.Sprint(each))
		}
	}
	if n := p.Pieces - w.r.used[p]; !p.Kind.Loose && n > 0 {
		f.add("extra", fmt.Sprint(n))
		if w.r.used[p] == 0 {
			w.comment("LEFT OVER: no place of the plant takes it.")
		} else {
			w.comment("LEFT OVER: the list has %d, and the plant takes %d.", p.Pieces, w.r.used[p])
		}
	}
}

// inside is the unit whose contents a part is: of the fineness that the housing has, the one
// vessel, the pump.
func (w *writer) inside(p *Part) (id string, each int) {
	units := func(role string) []*unit { return w.s.plant.units[role] }
	pick := func(list []*unit) string {
		if len(list) > 0 && list[0].part != nil {
			return list[0].id
		}
		return ""
	}
	switch p.Kind.Name {
	case "membrane element":
		v := units("vessel")
		if len(v) == 0 || v[0].part == nil {
			return "", 0
		}
		return v[0].id, max(1, p.Pieces/len(v))
	case "seal kit":
		return pick(units("pump")), 1
	case "filter cartridge":
		if p.Says.Carbon {
			return pick(units("carbon")), 1
		}
		for _, u := range units("filter") {
			if u.part.Says.Micron == p.Says.Micron && p.Says.Micron > 0 {
				return u.id, 1
			}
		}
		if f := units("filter"); len(f) == 1 {
			return f[0].id, 1
		}
	}
	return "", 0
}

// hose writes a piece that is cut.
func (w *writer) hose(h *cutHose) {
	var f fields
	length := metresText(h.length)
	note := "ASSUMED: measure it"
	if i := slices.IndexFunc(w.d.Questions, func(q Question) bool { return q.Key == "length "+h.id }); i >= 0 && w.d.Questions[i].Answer != "" {
		length, note = w.d.Questions[i].Answer, ""
		if length == w.d.Questions[i].Default {
			note = "the default was taken: measure it"
		}
	}
	f.text("id", h.id)
	f.text("of", h.of)
	f.text("length", length)
	text := strings.TrimSuffix(f.write("hose"), "\n")
	if note != "" {
		text += "                     # " + note
	}
	w.line("%s\n", text)
}

// boats writes the boat's own part.
func (w *writer) boats(u *unit) {
	if w.sold["boat "+u.id] {
		return
	}
	w.sold["boat "+u.id] = true
	w.comment("ASSUMED: the boat has its own. ASK: which end it has, and write `ports`.")
	w.line("%s", u.boatItem().write("item"))
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

// genericName is what joints call a clamp, a washer or a tape; "" where the line says too
// little.
func (p *Part) genericName() string {
	switch p.Kind.Name {
	case "clamp":
		if p.Says.Bore > 0 {
			return "clamp for " + millimetres(p.Says.Bore.Millimetres()) + " mm hose"
		}
	case "washer":
		if len(p.Says.Ends) == 1 && len(p.Says.Ends[0].Candidates) > 0 {
			size := p.Says.Ends[0].Candidates[0].Form.Designation
			switch {
			case p.Says.Bonded:
				return "bonded washer " + size
			case p.Says.Flat:
				return "flat gasket " + size
			}
		}
	case "tape":
		return "tape 12 mm"
	}
	return ""
}

// offer writes what the shop asks; a price of a currency without a rate stays a comment.
func (w *writer) offer(p *Part, item string) {
	i := slices.IndexFunc(w.carts, func(c *cart.Cart) bool { return c.Name == p.Line.Cart })
	if i < 0 || p.Line.Code == "" && p.Line.Price == "" {
		return
	}
	c := w.carts[i]
	code := orElse(p.Line.Currency, c.Currency)
	shop := orElse(c.Currency, w.d.currency(w.carts, w.o))
	var f fields
	f.text("item", item)
	f.text("vendor", shopOf(c))
	f.text("code", p.Line.Code)
	price, pack, note := p.price()
	if price != "" && (code == "" || code == shop) {
		f.text("price", price)
	}
	if p.isStock() {
		f.text("per", "m")
	} else if pack > 1 {
		f.add("pack", fmt.Sprint(pack))
	}
	if note != "" {
		w.comment("ASK: %s", note)
	}
	text := f.write("offer")
	if rate := w.o.rate(shop); shop != w.d.currency(w.carts, w.o) && rate == "" {
		for _, l := range strings.Split(strings.TrimSuffix(text, "\n"), "\n") {
			w.line("# %s", l)
		}
		w.line("# ASK: the rate of %s, written in [rates]: then this offer can stand\n", shop)
		return
	}
	w.line("%s", text)
}

// price is that of one piece or metre: what the line says, divided by its pack.
func (p *Part) price() (price string, pack int, note string) {
	l := p.Line
	if l.Price == "" {
		return "", 0, ""
	}
	n := int(l.Pack / money.Piece)
	if n <= 1 {
		return l.PriceText(), 0, ""
	}
	if l.Unit != "pack" && !l.Bundle {
		return l.PriceText(), n, "whether the price is of one or of the pack"
	}
	each, ok := perPiece(l.PriceText(), n)
	if !ok {
		return "", n, fmt.Sprintf("a pack of %d costs %s: what one costs does not come out even", n, l.PriceText())
	}
	return each, n, ""
}
