package main

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom/facts"
)

// printHead prints what was read, and printCounts what it comes to: what matters most
// stands first.
func (a *app) printHead(name, file string) {
	a.ui.say(bold, "%s (%s)", name, file)
}

func (a *app) printTitle(f *facts.Facts) {
	a.printHead(f.Build, f.File)
	a.printCounts(&f.Counts)
	a.ui.line("")
}

// printCounts says whether to order, and counts everything; the count of stops is that of
// single ones, however they are put together below.
func (a *app) printCounts(n *facts.Counts) {
	text := fmt.Sprintf("%s, %s, %s; %s, %s", counted(n.Stop, "stop"), counted(n.Caution, "caution"), counted(n.Note, "note"),
		counted(n.Joints, "joint"), counted(n.Segments, "segment"))
	if n.Stop > 0 {
		a.ui.say(red, "DO NOT ORDER, DO NOT PRESSURISE")
		a.ui.say(red, "%s", text)
		return
	}
	a.ui.say(green, "Nothing stops: %s", text)
}

// printCheck prints what a check says: of each thing as much as two screens hold, or
// everything.
func (a *app) printCheck(f *facts.Facts, all, pressures bool) {
	u := a.ui
	r := &report{ui: u, f: f, entries: entriesOf(f.Findings)}
	d := r.fit(u.screens())
	if all {
		d = mostDetail
	}
	for _, l := range r.lines(d) {
		u.line("%s", l)
	}
	if all || pressures {
		a.printSegments(f.Segments)
	}
	if all {
		a.printMakes(f.Duty)
		a.printCautions(f.Cautions)
		return
	}
	u.line("%s", u.cut(alwaysLine, u.width))
	if len(f.Findings) > 0 {
		u.say("", "Everything: handtight check %s --all", f.File)
		u.say("", "Explained: handtight why %s", r.entries[0].slugs[0])
	}
}

// printFindings prints every finding by itself, the most dangerous first.
func (a *app) printFindings(list []facts.Finding) {
	if len(list) == 0 {
		return
	}
	r := &report{ui: a.ui, f: &facts.Facts{Findings: list}, entries: entriesOf(list)}
	for _, l := range r.lines(mostDetail) {
		a.ui.line("%s", l)
	}
	a.ui.line("")
}

// alwaysLine points at the cautions that stand on every run.
const alwaysLine = "Always: water at this pressure goes through skin; handtight why always"

func (a *app) printCautions(list []string) {
	a.ui.say(bold, "Always")
	for _, c := range list {
		a.ui.fold("  -", c)
	}
	a.ui.line("")
}

// entry is what people read as one thing: the findings of a group.
type entry struct {
	number   int
	severity string
	heading  string
	slugs    []string
	findings []*facts.Finding
}

// entriesOf gathers findings by their group, in the order of danger.
func entriesOf(list []facts.Finding) []*entry {
	var out []*entry
	for _, i := range facts.InOrder(list) {
		f := &list[i]
		if len(out) == 0 || out[len(out)-1].number != f.Group {
			out = append(out, &entry{number: f.Group, severity: f.Severity, heading: f.Heading})
		}
		e := out[len(out)-1]
		e.findings = append(e.findings, f)
		if !slices.Contains(e.slugs, f.Slug) {
			e.slugs = append(e.slugs, f.Slug)
		}
	}
	return out
}

// stake is the highest pressure at any of its places; "" where they have none.
func (e *entry) stake() string {
	f := e.findings[0]
	switch {
	case f.Unbounded:
		return "no bound"
	case f.Stake.Known:
		return figure(f.Stake) + " bar"
	}
	return ""
}

// places names what the entry is about, from the longest to the shortest way of saying it:
// one by its name, several by as many names as there is room for, the rest counted.
func (e *entry) places() []string {
	f := e.findings[0]
	if len(e.findings) == 1 || onePlace(e.findings) {
		if f.Subject.Unit2 == "" {
			return []string{f.At}
		}
		more := ""
		if len(f.Also) > 0 {
			more = fmt.Sprintf(" and %d more", len(f.Also))
		}
		return []string{f.At, fmt.Sprintf("%s %s - %s%s", f.Short, f.Subject.Unit, f.Subject.Unit2, more), f.Short + more}
	}
	all := 0
	for _, f := range e.findings {
		all += 1 + len(f.Also)
	}
	var out []string
	for most := min(6, len(e.findings)); most > 0; most-- {
		var names []string
		for _, f := range e.findings[:most] {
			names = append(names, f.Short)
		}
		text := strings.Join(names, ", ")
		if all > most {
			text += fmt.Sprintf(" and %d more", all-most)
		}
		out = append(out, text)
	}
	return out
}

// rules names the entry's rules, from the longest to the shortest way of saying it.
func (e *entry) rules() []string {
	if len(e.slugs) == 1 {
		return e.slugs
	}
	return []string{strings.Join(e.slugs, ", "), fmt.Sprintf("%s and %d more", e.slugs[0], len(e.slugs)-1)}
}

func onePlace(list []*facts.Finding) bool {
	return !slices.ContainsFunc(list, func(f *facts.Finding) bool { return f.At != list[0].At })
}

// said joins what is said of each finding of the entry, once, each with its place where
// several places have different things said of them.
func (e *entry) said(of func(*facts.Finding) string) string {
	var texts, names []string
	for _, f := range e.findings {
		text := of(f)
		if text == "" || slices.Contains(texts, text) {
			continue
		}
		texts, names = append(texts, text), append(names, f.Short)
	}
	if len(texts) == 0 {
		return ""
	}
	if len(texts) == 1 || onePlace(e.findings) {
		return strings.Join(texts, " ")
	}
	for i := range texts {
		if !strings.Contains(texts[i], names[i]) {
			texts[i] = names[i] + ": " + texts[i]
		}
	}
	return strings.Join(texts, " ")
}

func (e *entry) why() string { return e.said(func(f *facts.Finding) string { return f.Reason }) }
func (e *entry) do() string  { return e.said(func(f *facts.Finding) string { return f.Remedy }) }
func (e *entry) buy() string { return e.said(buyText) }

// buyText is the best of the parts that mend a joint; "" where none does.
func buyText(f *facts.Finding) string {
	buys := slices.IndexFunc(f.Remedies, func(r facts.Remedy) bool { return len(r.Buy) > 0 })
	if buys < 0 {
		return ""
	}
	return boughtAt(f, &f.Remedies[buys])
}

// boughtAt is what a remedy buys, and for where.
func boughtAt(f *facts.Finding, r *facts.Remedy) string {
	where := "between the two"
	switch {
	case strings.HasPrefix(r.Buy[0], r.At+" "):
		return r.Buy[0] + "." // a hose made up with another end
	case r.Do == "change":
		where = "in the place of " + r.At
	case f.Subject.Joint == 0:
		where = "on " + r.At
	}
	return strings.Join(r.Buy, "; and ") + ": " + where + "."
}
