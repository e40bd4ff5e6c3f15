package main

import (
	"bufio"
	"cmp"
	"fmt"
	"os"
	"strings"

	"golang.org/x/term"

	"handtight/bom/draft"
)

// draftFacts is a draft as JSON.
type draftFacts struct {
	Lines     int              `json:"lines"`
	Joints    int              `json:"joints"`
	Made      int              `json:"made"`
	Plant     string           `json:"plant"`
	Why       []string         `json:"why"`
	Others    []string         `json:"others"`
	None      string           `json:"none"`
	Missing   []draft.Missing  `json:"missing"`
	Misfits   []draft.Misfit   `json:"misfits"`
	Left      []draft.Left     `json:"left"`
	Questions []draft.Question `json:"questions"`
	Proven    bool             `json:"proven"`
	Stops     int              `json:"stops"`    // that a check of it finds
	Cautions  int              `json:"cautions"` // that a check of it finds
	Written   string           `json:"written"`
}

func draftFactsOf(d *draft.Draft) *draftFacts {
	return &draftFacts{
		Lines: d.Lines, Joints: d.Joints, Made: d.Made, Plant: d.Plant, Why: orEmpty(d.Why), Others: orEmpty(d.Others), None: d.None, Missing: orEmpty(d.Missing),
		Misfits: orEmpty(d.Misfits), Left: orEmpty(d.Left), Questions: orEmpty(d.Questions), Proven: d.Proven,
	}
}

func orEmpty[T any](list []T) []T {
	if list == nil {
		return []T{}
	}
	return list
}

// How many lines of each sort stand on the one screen; the file has all of them.
const (
	draftWidth   = 80
	draftMissing = 6
	draftOthers  = 4
)

// printDraft prints what the lists came to, the gravest first, on one screen.
func (a *app) printDraft(d *draft.Draft, f *draftFacts) {
	u := a.ui
	if u.width > draftWidth {
		old := u.width
		u.width = draftWidth
		defer func() { u.width = old }()
	}
	if d.None != "" {
		u.say(red, "No plant: %s.", d.None)
		u.say("", "Nothing is written. All %s were read; `cart` holds them against a build that is there.", counted(d.Lines, "line"))
		return
	}
	u.say(bold, "Your %s make %d of %d joints.", counted(d.Lines, "line"), d.Made, d.Joints)
	u.entry("Taken for", []string{strings.Join(d.Why, "; ")}, 1)
	shown := []section{
		{"Missing", missingTexts(d), draftMissing}, {"Does not fit", misfitTexts(d), draftOthers},
		{"Left over", leftTexts(d), draftOthers}, {"Ask", askTexts(d), draftMissing},
	}
	if !d.Proven {
		shown = append(shown, section{"Search", []string{fmt.Sprintf("not every way was tried: up to %s fewer might be missing; --steps lets it go on", counted(max(0, d.Short), "piece"))}, 1})
	}
	u.fitScreen(shown, draftScreen)
	for _, s := range shown {
		u.entry(s.head, s.list, s.most)
	}
	next := "Nothing is written: name a file by -o."
	if f.Written != "" {
		u.entry("Written", []string{f.Written}, 1)
		next = "Next: handtight check " + f.Written
	}
	u.say("", "A check of it finds %s and %s. %s", counted(f.Stops, "stop"), counted(f.Cautions, "caution"), next)
}

func missingTexts(d *draft.Draft) (out []string) {
	for _, m := range d.Missing {
		out = append(out, missingText(&m))
	}
	return out
}

func misfitTexts(d *draft.Draft) (out []string) {
	for _, m := range d.Misfits {
		text := fmt.Sprintf("%s, %s: %s", m.Where, cutShort(m.Text), m.Why)
		if m.Place != "" {
			text += " (" + m.Place + ")"
		}
		out = append(out, text)
	}
	return out
}

// leftTexts tells what no place takes; what is a spare of the plant's own parts, or no part, is only counted.
func leftTexts(d *draft.Draft) (out []string) {
	spares, aside := 0, 0
	for _, l := range d.Left {
		if l.Spare {
			spares += l.Count
			continue
		}
		out = append(out, fmt.Sprintf("%s, %d x %s", l.Where, l.Count, cutShort(l.Text)))
	}
	if spares > 0 {
		out = append(out, fmt.Sprintf("%s more of what the plant takes, as `extra`", counted(spares, "piece")))
	}
	for _, p := range d.Parts {
		if p.Aside != "" && (p.Kind == nil || !p.Kind.Generic) {
			aside++
		}
	}
	switch aside {
	case 0:
	case 1:
		out = append(out, "1 line is no part of a plant: kept in the file as comments")
	default:
		out = append(out, fmt.Sprintf("%d lines are no part of a plant: kept in the file as comments", aside))
	}
	return out
}

// askTexts are the questions that nobody answered, those for lengths as one.
func askTexts(d *draft.Draft) (out []string) {
	lengths := 0
	for i := range d.Questions {
		q := &d.Questions[i]
		switch {
		case q.Answer != "":
		case strings.HasPrefix(q.Key, "length "):
			lengths++
		case q.Default != "":
			out = append(out, fmt.Sprintf("%s (%s?)", q.Ask, q.Default))
		default:
			out = append(out, q.Ask)
		}
	}
	if lengths > 0 {
		out = append(out, fmt.Sprintf("how long %s are", counted(lengths, "hose")))
	}
	return out
}

// section is a heading with its lines, and how many of them are shown.
type section struct {
	head string
	list []string
	most int
}

// draftScreen is how many lines the sections of a draft have on one screen: 24, less what stands
// above and below them.
const draftScreen = 24 - 6

// fitScreen shows fewer of the longest sections until all of them fit; one of each stays.
func (u *ui) fitScreen(list []section, most int) {
	lines := func(s *section) int {
		n := boolToInt(len(s.list) > s.most)
		for _, text := range s.list[:min(len(s.list), s.most)] {
			n += len(wrap(text, u.width-13))
		}
		return n
	}
	for {
		all, longest := 0, -1
		for i := range list {
			list[i].most = min(list[i].most, len(list[i].list))
			all += lines(&list[i])
			if list[i].most > 1 && (longest < 0 || lines(&list[i]) > lines(&list[longest])) {
				longest = i
			}
		}
		if all <= most || longest < 0 {
			return
		}
		list[longest].most--
	}
}

func boolToInt(b bool) int {
	if b {
		return 1
	}
	return 0
}

// missingText is one missing thing in a line.
func missingText(m *draft.Missing) string {
	switch {
	case m.Count:
		return m.What
	case m.Role && m.Where != "":
		return fmt.Sprintf("%s: a %s: %s", m.Where, m.What, m.Need)
	case m.Role:
		return fmt.Sprintf("a %s: %s", m.What, m.Need)
	case len(m.Buy) > 0:
		return fmt.Sprintf("%s: buy %s", m.Where, strings.Join(m.Buy, " and "))
	}
	return fmt.Sprintf("%s: %s; %s", m.Where, m.What, m.Note)
}

// cutShort cuts a text to what a line can show.
func cutShort(text string) string {
	const most = 60
	if r := []rune(text); len(r) > most {
		return string(r[:most-2]) + " …"
	}
	return text
}

// entry prints a heading with its lines, and how many more there are.
func (u *ui) entry(head string, list []string, most int) {
	if len(list) == 0 {
		return
	}
	for i, text := range list[:min(len(list), most)] {
		label := ""
		if i == 0 {
			label = head
		}
		lead := fmt.Sprintf("%-13s", label)
		for _, l := range wrap(text, u.width-len(lead)) {
			u.line("%s%s", lead, l)
			lead = strings.Repeat(" ", len(lead))
		}
	}
	if more := len(list) - most; more > 0 {
		u.line("%13sand %d more, in the file", "", more)
	}
}

// atTerminal reports whether a person can answer: both ends are a terminal.
func (a *app) atTerminal() bool {
	in, ok := a.in.(*os.File)
	if !ok || a.json || !term.IsTerminal(int(in.Fd())) {
		return false
	}
	return a.ui.colour || a.ui.width != plainWidth
}

// askDraft puts the questions that decide most. Enter takes the default, `?` tells what a question
// is for; a dot leaves the rest open, and so does the end of the input.
func (a *app) askDraft(d *draft.Draft) map[string]string {
	out := map[string]string{}
	answers := bufio.NewScanner(a.in)
	for _, q := range d.Talk() {
		hint := "Enter leaves it open"
		if q.Default != "" {
			hint = "Enter takes " + q.Default
		}
		a.ui.prompt(fmt.Sprintf("%s\n  %s; ? tells more, . leaves all the rest: ", q.Ask, hint))
		for {
			if !answers.Scan() {
				a.ui.prompt("\n")
				return out
			}
			text := strings.TrimSpace(answers.Text())
			if text == "." {
				return out
			}
			if text == "?" {
				more := cmp.Or(q.Why, "no list says it")
				if len(q.Choices) > 0 {
					more += "; such as " + strings.Join(q.Choices, ", ")
				}
				a.ui.prompt(fmt.Sprintf("  %s\n  again: ", more))
				continue
			}
			if text == "" {
				text = q.Default
			}
			if text == "" {
				break
			}
			if err := q.Check(text); err != nil {
				a.ui.prompt(fmt.Sprintf("  %s\n  again: ", err))
				continue
			}
			out[q.Key] = text
			break
		}
	}
	return out
}
