package main

import (
	"fmt"
	"slices"
	"strings"

	"handtight/pressure/nearest"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/title"
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
	Memory  bool       `json:"memory"` // some figure of the row is from memory
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

// familyCalled finds a threaded family by its name, in any case, or by a trade name
// that stands for one family.
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
	meant := familiesMeant(name)
	if len(meant) == 1 {
		return meant[0], nil
	}
	hint := "the families are " + strings.Join(names, ", ")
	if near, ok := nearest.Of(strings.ToUpper(name), names); ok && len(meant) == 0 {
		hint = fmt.Sprintf("did you mean `%s`? %s", near, hint)
	}
	if len(meant) > 1 {
		names = nil
		for _, f := range meant {
			names = append(names, fmt.Sprintf("%s (%s)", f, f.Facts().Title))
		}
		hint = "it stands for " + strings.Join(names, ", ") + ": write one of them"
	}
	return 0, fmt.Errorf("there is no one thread family %q: %s", name, hint)
}

// familiesMeant reads a trade name, such as BSPP, with a size that most have.
func familiesMeant(name string) []threads.Family {
	var out []threads.Family
	read := title.Read("3/4 " + name)
	if len(read.Unread) > 0 {
		read.Ends = nil
	}
	for _, e := range read.Ends {
		for _, c := range e.Candidates {
			if c.Family.Threaded() && !slices.Contains(out, c.Family) {
				out = append(out, c.Family)
			}
		}
	}
	return out
}

func sizeOf(form *threads.Form) sizeFacts {
	s := sizeFacts{candidateFacts: candidateOf(threads.Threaded(form, threads.NoSex)), Note: form.Note, Memory: form.Memory}
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
	band := form.CrestAt(sex, 0)
	return &bandFacts{known(band.Least.Millimetres()), known(band.Most.Millimetres())}
}

func (a *app) printFamily(f familyFacts, facts threads.FamilyFacts) {
	u := a.ui
	u.say(bold, "%s: %s", f.Family, f.Title)
	u.fold("", fmt.Sprintf("%s; %.0f degree flanks; %s", f.Standard, facts.Flank, f.Note))
	u.line("")
	columns := []column{
		{title: "size"}, {title: "thread"}, {title: "pitch", right: true}, {title: "an inch", right: true}, {title: "major", right: true},
		{title: "pitch dia", right: true}, {title: "minor", right: true}, {title: "outside", right: true}, {title: "inside", right: true},
	}
	last := func(s sizeFacts) string { return threePlaces(s.Tube) }
	columns = append(columns, column{title: "tube", right: true})
	if facts.Tapered {
		last = func(s sizeFacts) string { return threePlaces(s.HandTurns) }
		columns[len(columns)-1].title = "hand turns"
	}
	var rows [][]string
	for _, s := range f.Sizes {
		rows = append(rows, []string{
			s.Size, s.Designation, threePlaces(s.Pitch), quantity.Decimals(s.TPI.Value, 2), threePlaces(s.Major), threePlaces(s.PitchDia), threePlaces(s.Minor),
			bandWords(s.Outside), bandWords(s.Inside), last(s),
		})
	}
	columns, rows = withoutEmpty(columns, rows)
	if !u.table(columns, rows) {
		for _, r := range rows {
			u.fold("  "+r[0], foldedRow(columns, r))
		}
	}
	u.line("")
	u.fold("", "All in mm, threads an inch apart. Major, pitch and minor diameters are basic (of a taper, at its gauge plane; the major of NPT is its pipe's outside). Outside (of a male) and inside (of a female) are the limits across the crests where the thread begins.")
	for _, s := range sourcesOf(f) {
		u.fold("  source", s)
	}
	if names := fromMemory(f); names != "" {
		u.fold("  memory", "some figure is from memory: "+names)
	}
}

// withoutEmpty leaves out the columns that no row fills.
func withoutEmpty(columns []column, rows [][]string) ([]column, [][]string) {
	var kept []column
	out := make([][]string, len(rows))
	for i, c := range columns {
		if !slices.ContainsFunc(rows, func(r []string) bool { return r[i] != "" }) {
			continue
		}
		kept = append(kept, c)
		for n, r := range rows {
			out[n] = append(out[n], r[i])
		}
	}
	return kept, out
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

func threePlaces(n number) string {
	if !n.Known {
		return ""
	}
	return fmt.Sprintf("%.3f", n.Value)
}

func bandWords(b *bandFacts) string {
	if b == nil {
		return ""
	}
	return fmt.Sprintf("%.2f-%.2f", b.Least.Value, b.Most.Value)
}

// fromMemory names the sizes of which some figure was not seen in a source.
func fromMemory(f familyFacts) string {
	var names []string
	for _, s := range f.Sizes {
		if s.Memory {
			names = append(names, s.Designation)
		}
	}
	return strings.Join(names, ", ")
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
