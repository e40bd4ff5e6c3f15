package draft

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"handtight/catalog"
)

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
	w.line("%s", f.write(p.tableOf()))
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
	units := func(role string) []*unit { return w.s.plant.all(role) }
	pick := func(list []*unit) string {
		if len(list) > 0 && list[0].part != nil {
			return list[0].id
		}
		return ""
	}
	switch {
	case p.Kind.Is(catalog.Element):
		return w.insideVessel(p, units("vessel"))
	case p.Kind.Is(catalog.SealKit):
		return pick(units("pump")), 1
	case p.Kind.Is(catalog.Cartridge):
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

// insideVessel finds the vessels that an element goes into, as far as sizes are said: with no
// more inches of elements than a vessel has inside. One that goes into none is a part that does
// not fit.
func (w *writer) insideVessel(p *Part, vessels []*unit) (id string, each int) {
	long := func(q *Part) int { return int(math.Round(float64(q.Says.Long))) }
	why := ""
	for _, v := range vessels {
		if v.part == nil {
			continue
		}
		n := 0
		for _, o := range vessels {
			n += boolToInt(o.part == v.part)
		}
		each = max(1, p.Pieces/max(n, len(vessels)))
		sized := long(p) > 0 && long(v.part) > 0 && p.Says.Across > 0 && v.part.Says.Across > 0
		switch {
		case sized && p.Says.Across > v.part.Says.Across:
			why = fmt.Sprintf("it is wider than %s", v.id)
		case sized && w.filled[v.part]+long(p)*each > long(v.part):
			why = fmt.Sprintf("%s has %d inches inside, and %d of elements would be in it", v.id, long(v.part), w.filled[v.part]+long(p)*each)
		default:
			w.filled[v.part] += long(p) * each
			return v.id, each
		}
	}
	if why != "" {
		w.comment("DOES NOT FIT: %s.", why)
		w.d.Misfits = append(w.d.Misfits, Misfit{Where: p.Where(), Text: p.Line.Text, Why: why})
	}
	return "", 0
}

// hose writes a piece that is cut or made up.
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
	f = append(f, h.made...)
	f.text("length", length)
	text := strings.TrimSuffix(f.write(tableHose), "\n")
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
