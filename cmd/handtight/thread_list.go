package main

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom/source"
	"handtight/threads"
)

type familyFacts struct {
	Family   string      `json:"family"`
	Title    string      `json:"title"`
	Standard string      `json:"standard"`
	Note     string      `json:"note"`
	Source   string      `json:"source"`
	Sizes    []sizeFacts `json:"sizes"`
}

type sizeFacts struct {
	candidateFacts
	Tube    number     `json:"tube_mm"`
	Outside *bandFacts `json:"outside_mm"` // of a male across the crests, where the thread begins
	Inside  *bandFacts `json:"inside_mm"`  // of a female
	Note    string     `json:"note"`
}

type bandFacts struct {
	Least number `json:"least"`
	Most  number `json:"most"`
}

// threadList prints the table of a family.
func (a *app) threadList(name string) error {
	family, err := familyCalled(name)
	if err != nil {
		return err
	}
	facts := family.Facts()
	f := familyFacts{family.String(), facts.Title, facts.Standard, facts.Note, facts.Source, []sizeFacts{}}
	for _, form := range threads.Forms(family) {
		f.Sizes = append(f.Sizes, sizeOf(form))
	}
	if a.json {
		return a.ui.printJSON(f)
	}
	a.printFamily(f, facts)
	return nil
}

// familyCalled finds a threaded family by its name, in any case.
func familyCalled(name string) (threads.Family, error) {
	var names []string
	for _, f := range threads.Families() {
		if strings.EqualFold(f.String(), strings.TrimSpace(name)) {
			if !f.Threaded() {
				return f, fmt.Errorf("%s (%s) has no table: its size is that of the hose or tube", f, f.Facts().Title)
			}
			return f, nil
		}
		if f.Threaded() {
			names = append(names, f.String())
		}
	}
	hint := "the families are " + strings.Join(names, ", ")
	if near, ok := source.Nearest(strings.ToUpper(name), names); ok {
		hint = fmt.Sprintf("did you mean `%s`? %s", near, hint)
	}
	return 0, fmt.Errorf("there is no thread family %q: %s", name, hint)
}

func sizeOf(form *threads.Form) sizeFacts {
	s := sizeFacts{candidateFacts: candidateOf(threads.Threaded(form, threads.NoSex)), Note: form.Note}
	if form.Tube > 0 {
		s.Tube = known(form.Tube.Millimetres())
	}
	only := form.Family.Facts().Only
	if only != threads.Female {
		s.Outside = crestOf(form, threads.Male)
	}
	if only != threads.Male {
		s.Inside = crestOf(form, threads.Female)
	}
	return s
}

func crestOf(form *threads.Form, sex threads.Sex) *bandFacts {
	band := threads.CrestBand(form, sex)
	return &bandFacts{known(band.Least.Millimetres()), known(band.Most.Millimetres())}
}

func (a *app) printFamily(f familyFacts, facts threads.FamilyFacts) {
	u := a.ui
	u.line("%s", u.paint(bold, f.Family+": "+f.Title))
	u.fold("", fmt.Sprintf("%s; %.0f degree flanks; %s", f.Standard, facts.Flank, f.Note))
	u.line("")
	columns := []column{
		{title: "size"}, {title: "thread"}, {title: "pitch", right: true}, {title: "an inch", right: true}, {title: "major", right: true},
		{title: "pitch dia", right: true}, {title: "minor", right: true}, {title: "outside", right: true}, {title: "inside", right: true},
	}
	last, label := func(s sizeFacts) string { return figure(s.HandTurns) }, "hand turns"
	if !facts.Tapered {
		last, label = func(s sizeFacts) string { return figure(s.Tube) }, "tube"
	}
	if slices.ContainsFunc(f.Sizes, func(s sizeFacts) bool { return last(s) != "" }) {
		columns = append(columns, column{title: label, right: true})
	}
	var rows [][]string
	for _, s := range f.Sizes {
		row := []string{
			s.Size, s.Designation, figure(s.Pitch), trimmed(s.TPI.value), figure(s.Major), figure(s.PitchDia), figure(s.Minor),
			bandWords(s.Outside), bandWords(s.Inside),
		}
		rows = append(rows, append(row, last(s))[:len(columns)])
	}
	if !u.table(columns, rows) {
		for _, r := range rows {
			u.fold("  "+r[0], foldedRow(columns, r))
		}
	}
	u.line("")
	u.fold("", "All in mm, threads an inch apart. Major, pitch and minor diameters are basic (of a taper, at its gauge plane). Outside (of a male) and inside (of a female) are the limits across the crests where the thread begins.")
	for _, s := range sourcesOf(f) {
		u.fold("  source", s)
	}
}

// foldedRow is a row on a narrow terminal.
func foldedRow(columns []column, cells []string) string {
	var parts []string
	for i := 1; i < len(cells); i++ {
		if cells[i] != "" {
			parts = append(parts, columns[i].title+" "+cells[i])
		}
	}
	return strings.Join(parts, ", ")
}

func figure(n number) string {
	if !n.known {
		return ""
	}
	return fmt.Sprintf("%.3f", n.value)
}

func bandWords(b *bandFacts) string {
	if b == nil {
		return ""
	}
	return fmt.Sprintf("%.2f-%.2f", b.Least.value, b.Most.value)
}

// sourcesOf lists each source of a family's rows once, in the order of the rows.
func sourcesOf(f familyFacts) []string {
	var out []string
	for _, s := range f.Sizes {
		for _, part := range strings.Split(s.Source, "; ") {
			if !slices.Contains(out, part) {
				out = append(out, part)
			}
		}
	}
	return out
}
