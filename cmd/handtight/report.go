package main

import (
	"cmp"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"handtight/bom/facts"
	"handtight/bom/finding"
)

// report lays out what a check says, in lines no wider than the terminal.
type report struct {
	ui      *ui
	f       *facts.Facts
	entries []*entry
}

// depth is how much is said of an entry.
type depth int

const (
	untold     depth = iota // it is counted at the top
	named                   // its name, in a line with others
	headed                  // a line: name, place, line of the file
	doing                   // and what to do, in brief
	telling                 // and why, in brief
	explaining              // and why, in two lines
	fuller                  // both in full, and what to buy
	whole                   // each finding by itself
)

// detail is how much is said of each sort of thing.
type detail struct {
	stops, cautions, notes depth
	last                   int  // stops at the end of which no more than a line is said
	full                   int  // stops at the beginning of which the remedy is said in full
	questions              bool // with their words, and not their ports alone
	pressures              bool // a table of what overloads a segment
	makes                  bool // what the plant makes, in lines and not in one
}

var (
	leastDetail = detail{stops: doing}
	mostDetail  = detail{stops: whole, cautions: whole, notes: whole, questions: true}
)

// fit finds how much may be said so that all stands in so many lines: what is worth most
// is given room first. What cannot be said shorter is said all the same.
func (r *report) fit(room int) detail {
	stops := len(r.of(finding.Stop))
	d := leastDetail
	for d.questions = true; d.last < stops/2 && len(r.lines(d))+linesAround > room; {
		d.last++
	}
	for d.questions = len(r.lines(d))+linesAround <= room; d.last < stops && len(r.lines(d))+linesAround > room; {
		d.last++
	}
	for _, step := range []func(*detail){
		func(d *detail) { d.cautions = named },
		func(d *detail) { d.notes = min(d.cautions, named) },
		func(d *detail) { d.full = stops },
		func(d *detail) { d.stops = telling },
		func(d *detail) { d.stops = explaining },
		func(d *detail) { d.cautions = headed },
		func(d *detail) { d.stops = fuller },
		func(d *detail) { d.cautions = doing },
		func(d *detail) { d.cautions = telling },
		func(d *detail) { d.notes = headed },
		func(d *detail) { d.cautions = explaining },
		func(d *detail) { d.cautions = fuller },
		func(d *detail) { d.pressures = true },
		func(d *detail) { d.makes = true },
		func(d *detail) { d.notes = telling },
		func(d *detail) { d.notes = fuller },
	} {
		next := d
		step(&next)
		for next.full > d.full && len(r.lines(next))+linesAround > room {
			next.full-- // in full for the gravest, as far as there is room
		}
		if len(r.lines(next))+linesAround <= room {
			d = next
		}
	}
	return d
}

// linesAround are those that stand before and behind: the title and the verdict, what
// stands always, and where to read on.
const linesAround = 8

// lines are the whole report.
func (r *report) lines(d detail) []string {
	var out []string
	out = append(out, r.stops(d.stops, d.last, d.full)...)
	out = append(out, r.questions(d.questions)...)
	out = append(out, r.lesser(finding.Caution, yellow, d.cautions)...)
	out = append(out, r.lesser(finding.Note, cyan, d.notes)...)
	if d == mostDetail {
		return out
	}
	out = append(out, r.pressures(d.pressures)...)
	return append(out, r.makes(d.makes)...)
}

// stops are the entries that stop, under what comes of them; of the last a line each, and of the
// first what to do in full.
func (r *report) stops(d depth, last, full int) []string {
	var out []string
	heading := ""
	list := r.of(finding.Stop)
	for i, e := range list {
		if i >= len(list)-last {
			d = min(d, headed)
		}
		if e.heading != heading {
			heading = e.heading
			out = append(out, r.ui.paint(red, r.ui.cut(heading, r.ui.width)))
		}
		out = append(out, r.entry(e, d, i < full)...)
	}
	return out
}

func (r *report) of(s finding.Severity) []*entry {
	var out []*entry
	for _, e := range r.entries {
		if e.severity == s.String() {
			out = append(out, e)
		}
	}
	return out
}

// lesser are the entries that do not stop.
func (r *report) lesser(s finding.Severity, colour string, d depth) []string {
	list := r.of(s)
	if len(list) == 0 || d == untold {
		return nil
	}
	title := strings.ToUpper(s.String()) + "S"
	if d > named {
		out := []string{r.ui.paint(colour, title)}
		for _, e := range list {
			out = append(out, r.entry(e, d, false)...)
		}
		return out
	}
	var slugs []string
	for _, e := range list {
		for _, slug := range e.slugs {
			if !slices.Contains(slugs, slug) {
				slugs = append(slugs, slug)
			}
		}
	}
	return r.hung(r.ui.paint(colour, title), len(title), hang, strings.Join(slugs, ", "))
}

// entry is one entry: its head, and so much of why and what to do, that in full if asked.
func (r *report) entry(e *entry, d depth, full bool) []string {
	if d == whole {
		return r.wholeEntry(e)
	}
	out := []string{r.head(e)}
	room := r.ui.width - hang
	switch {
	case d >= fuller:
		out = append(out, r.hung("   why", 6, hang, e.why())...)
	case d >= telling:
		out = append(out, hungLines("   why", 6, hang, brief(e.why(), room, 1+int(d-telling), reasons))...)
	}
	switch {
	case full || d >= fuller:
		out = append(out, r.hung("   do", 5, hang, e.do())...)
	case d >= doing:
		out = append(out, hungLines("   do", 5, hang, brief(e.do(), room, 1, ways))...)
	}
	if d >= fuller && e.buy() != "" {
		out = append(out, r.hung("   buy", 6, hang, e.buy())...)
	}
	return out
}

// wholeEntry has every finding by itself, with all that is said of it.
func (r *report) wholeEntry(e *entry) []string {
	var out []string
	for i, f := range e.findings {
		one := *e
		one.findings, one.slugs = []*facts.Finding{f}, []string{f.Slug}
		head := r.head(&one)
		if i > 0 {
			head = "  " + head[2:] // the number stands once
		}
		out = append(out, head)
		if strings.Contains(head, "…") {
			out = append(out, r.hung("   at", 5, hang, f.At)...)
		}
		out = append(out, r.hung("   why", 6, hang, f.Reason)...)
		out = append(out, r.hung("   do", 5, hang, f.Remedy)...)
		out = append(out, r.remedies(f)...)
		if f.MayStay != "" {
			out = append(out, r.hung("   leave", 8, hang, "May I leave it? "+f.MayStay)...)
		}
	}
	return out
}

// pasteAt says where what is to be pasted belongs, and what is written beside it.
func pasteAt(r *facts.Remedy) string {
	if strings.HasPrefix(r.Step, "in the path") {
		return r.Step + ", and in the file"
	}
	return cmp.Or(r.Step, "in the file")
}

// remedies are the parts that mend a finding, the best first and with the text to paste, which is
// not folded: a file would not take it back.
func (r *report) remedies(f *facts.Finding) []string {
	var out []string
	label := "   buy"
	for i := range f.Remedies {
		one := &f.Remedies[i]
		if one.Do == "ask" {
			out = append(out, r.hung("   ask", 6, hang, one.Why)...)
		}
		if len(one.Buy) == 0 {
			continue
		}
		out = append(out, r.hung(label, len(label), hang, boughtAt(f, one))...)
		if label == "   buy" && one.Paste != "" {
			out = append(out, r.hung("   paste", 8, hang, pasteAt(one)+":")...)
			for line := range strings.Lines(one.Paste) {
				out = append(out, strings.TrimRight(strings.Repeat(" ", hang)+line, "\n "))
			}
		}
		label = "   or"
	}
	return out
}

// head names an entry: its number, rules and places, the pressure at stake, and where it
// stands in the file.
func (r *report) head(e *entry) string {
	f := e.findings[0]
	right := e.stake()
	if where := short(f); where != "" {
		right = strings.TrimSpace(right + "  " + where)
	}
	room := r.ui.width - widthOf(right) - len(gap) - len("12 ") - len(gap)
	slugs := r.fitting(e.rules(), room-leastPlace)
	place := r.fitting(e.places(), room-widthOf(slugs))
	lead := fmt.Sprintf("%2d %s  ", e.number, slugs)
	pad := strings.Repeat(" ", max(len(gap), r.ui.width-widthOf(lead)-widthOf(place)-widthOf(right)))
	return strings.TrimRight(strings.Replace(lead, slugs, r.ui.paint(bold, slugs), 1)+place+pad+right, " ")
}

// leastPlace is the room that a place has at least.
const leastPlace = 12

// fitting is the first that fits the width, or the last, cut.
func (r *report) fitting(list []string, width int) string {
	for _, text := range list {
		if widthOf(text) <= width {
			return text
		}
	}
	return r.ui.cut(list[len(list)-1], width)
}

// short is where a finding stands, as file and line.
func short(f *facts.Finding) string {
	if f.Line == 0 {
		return ""
	}
	return fmt.Sprintf("%s:%d", filepath.Base(f.File), f.Line)
}

// How far text is hung under its label, and under the dash of a list.
const (
	hang     = 8
	dashHang = 4
)

// hung is text behind a label of a width, its further lines hung under it.
func (r *report) hung(label string, width, hang int, text string) []string {
	return hungLines(label, width, hang, wrap(text, r.ui.width-max(width+1, hang)))
}

// hungLines puts lines behind a label of a width.
func hungLines(label string, width, hang int, lines []string) []string {
	lead := label + strings.Repeat(" ", max(1, hang-width))
	out := make([]string, len(lines))
	for i, l := range lines {
		if i > 0 {
			lead = strings.Repeat(" ", hang)
		}
		out[i] = lead + l
	}
	return out
}

// dash is an entry of a list.
func (r *report) dash(text string) []string { return r.hung("  -", 3, dashHang, text) }

// questions are asked once each, with the ports that they are about and the joints that the answer
// settles.
func (r *report) questions(whole bool) []string {
	var out []string
	at := map[string]int{}
	var asked []facts.Question
	for _, q := range r.f.Questions {
		if k, ok := at[q.Ask]; ok {
			asked[k].Port += ", " + q.Port
			asked[k].At = append(slices.Clone(asked[k].At), q.At...)
			continue
		}
		at[q.Ask] = len(asked)
		asked = append(asked, q)
	}
	if len(asked) > 0 {
		out = append(out, r.ui.paint(bold, "ASK BEFORE BUYING"))
	}
	for _, q := range asked {
		text := fmt.Sprintf("%s (settles %s)", q.Port, r.settles(&q))
		if !whole {
			out = append(out, r.dash(text)...)
			continue
		}
		out = append(out, r.dash(text+": "+q.Ask)...)
	}
	if len(asked) > 0 && !whole {
		out = append(out, r.dash("What to ask of each: --all")...)
	}
	return out
}

// settles names the joints that an answer decides, and how many stops stand at them.
func (r *report) settles(q *facts.Question) string {
	const most = 4
	slices.Sort(q.At)
	var names []string
	for _, n := range slices.Compact(q.At) {
		names = append(names, fmt.Sprintf("J%d", n))
	}
	text := strings.Join(names[:min(most, len(names))], ", ")
	if len(names) > most {
		text += fmt.Sprintf(" and %d more", len(names)-most)
	}
	stops := 0
	for i := range r.f.Findings {
		f := &r.f.Findings[i]
		if f.Severity == finding.Stop.String() && f.Subject.Joint > 0 && slices.Contains(q.At, f.Subject.Joint) {
			stops++
		}
	}
	if stops > 0 {
		text += "; " + counted(stops, "stop")
	}
	return text
}

// pressures says of the segments what the tightest has left, and which are overloaded or not
// all rated.
func (r *report) pressures(table bool) []string {
	var over, unknown []*facts.Segment
	var tight *facts.Segment
	for i := range r.f.Segments {
		g := &r.f.Segments[i]
		switch {
		case g.Worst.Unbounded() || g.Margin.Known && g.Margin.Value < 0:
			over = append(over, g)
		case !g.Margin.Known:
			unknown = append(unknown, g)
		case tight == nil || g.Margin.Value < tight.Margin.Value:
			tight = g
		}
	}
	if len(r.f.Segments) == 0 {
		return nil
	}
	var says []string
	if len(over) > 0 {
		says = append(says, fmt.Sprintf("%d of %s overloaded", len(over), counted(len(r.f.Segments), "segment")))
	}
	if len(unknown) > 0 {
		says = append(says, fmt.Sprintf("nothing says what all parts of %s hold", counted(len(unknown), "segment")))
	}
	if tight != nil && len(over) == 0 {
		says = append(says, fmt.Sprintf("least margin %s bar in %s (worst %s, %s holds %s)", figure(tight.Margin), tight.Name, bars(tight.Worst), tight.Weakest, bars(tight.Bar)))
	}
	for i := range r.f.Segments {
		if text := clearedFromMemory(&r.f.Segments[i]); text != "" {
			says = append(says, r.f.Segments[i].Name+" is "+text)
		}
	}
	out := r.hung(r.ui.paint(bold, "PRESSURES"), 9, hang, strings.Join(says, "; ")+" (all: --pressures)")
	if !table {
		return out
	}
	for _, g := range append(over, unknown...) {
		holds := "not all known"
		if g.Bar.Known {
			holds = fmt.Sprintf("%s, %s", bars(g.Bar), g.Weakest)
		}
		out = append(out, r.dash(fmt.Sprintf("%s: normal %s, worst %s, holds %s", g.Name, bars(g.Normal), bars(g.Worst), holds))...)
	}
	return out
}

// makes says what each plant makes and takes.
func (r *report) makes(lines bool) []string {
	var out []string
	for i := range r.f.Duty {
		list := r.f.Duty[i].FourLines()
		if len(list) == 0 {
			continue
		}
		title := "MAKES"
		if len(r.f.Duty) > 1 {
			title = "MAKES (" + r.f.Duty[i].Name + ")"
		}
		if !lines {
			out = append(out, r.hung(r.ui.paint(bold, title), len(title), hang, list[0]+" (more: handtight duty)")...)
			continue
		}
		out = append(out, r.ui.paint(bold, title)+" (more: handtight duty)")
		for _, l := range list {
			out = append(out, r.dash(l)...)
		}
	}
	return out
}
