package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"handtight/catalog"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/title"
)

type threadFacts struct {
	Text     string     `json:"text"`
	Kind     string     `json:"kind"`
	Material string     `json:"material"`
	Rated    number     `json:"rated_bar"`
	Ends     []endFacts `json:"ends"`
	Unread   []string   `json:"unread"`

	Class     string          `json:"class,omitempty"`
	Schedule  string          `json:"schedule,omitempty"`
	Grade     string          `json:"grade,omitempty"`
	Standards []string        `json:"standards,omitempty"`
	Materials []string        `json:"materials,omitempty"`
	Celsius   *float64        `json:"temperature_c,omitempty"`
	Pressures []pressureFacts `json:"other_pressures,omitempty"`
	NotUsed   []notUsedFacts  `json:"not_used"`
	Limits    []string        `json:"limits,omitempty"`
}

// pressureFacts is a pressure that is no rating.
type pressureFacts struct {
	What  string  `json:"what"`
	Bar   float64 `json:"bar"`
	Words string  `json:"words"`
}

// notUsedFacts is what was understood of a text and changes nothing.
type notUsedFacts struct {
	Words string `json:"words"`
	Why   string `json:"why"`
}

type endFacts struct {
	Sex        string           `json:"sex"`
	Seal       string           `json:"seal"`
	Swivel     bool             `json:"swivel"`
	Candidates []candidateFacts `json:"candidates"`
	Question   string           `json:"question,omitempty"`
}

type candidateFacts struct {
	Family      string  `json:"family"`
	Size        string  `json:"size"`
	Designation string  `json:"designation"`
	Pitch       number  `json:"pitch_mm"`
	TPI         number  `json:"tpi"`
	Major       number  `json:"major_mm"`
	PitchDia    number  `json:"pitch_diameter_mm"`
	Minor       number  `json:"minor_mm"`
	Flank       number  `json:"flank_angle_deg"`
	Taper       *string `json:"taper"`
	HandTight   number  `json:"hand_tight_mm"`
	HandTurns   number  `json:"hand_tight_turns"`
	Left        bool    `json:"left,omitempty"`
	Nose        number  `json:"nose_mm,omitzero"`
	Source      string  `json:"source"`
}

func (a *app) threadCommand() *cobra.Command {
	var family string
	var card bool
	cmd := &cobra.Command{
		Use:   "thread TEXT",
		Short: "What is this thread?",
		Long: `Reads a designation or a shop's whole line and says which ends it names, with their
dimensions. An open one gives its readings, likeliest first, and the one question that
settles it. With - it reads a text a line from standard input, an object a line with
--json.`,
		Example: `  handtight thread 'G 3/4 female'
  handtight thread 'Hose tail 3/4 BSPP female x 19 mm barb, bronze'
  handtight thread - --json < titles.txt
  handtight thread --card 'G 1/2 male'      what it is mistaken for, and what it goes with
  handtight thread --list JIC               a family's whole table`,
		Args: func(cmd *cobra.Command, args []string) error {
			if family != "" {
				return exactly(0, "no text beside --list")(cmd, args)
			}
			return exactly(1, "one text (quote it)")(cmd, args)
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if family != "" {
				return a.threadList(family)
			}
			if args[0] == "-" && card {
				return errors.New("--card takes one text: give it in the place of -")
			}
			if args[0] == "-" {
				return a.threadLines()
			}
			r := title.Read(strings.TrimSpace(args[0]))
			if card {
				return a.threadCard(r)
			}
			if a.json {
				return a.ui.printJSON(threadFactsOf(r))
			}
			a.printReading(r)
			return nil
		},
	}
	cmd.Flags().StringVar(&family, "list", "", "print the whole table of a family: NPT, G, JIC, ...")
	cmd.Flags().BoolVar(&card, "card", false, "the long form: limits, look-alikes, what it goes with, make-up")
	return cmd
}

func (a *app) threadLine(r threads.Reading) error {
	if a.json {
		return a.ui.writeJSON(threadFactsOf(r), "")
	}
	a.printReading(r)
	return nil
}

func threadFactsOf(r threads.Reading) threadFacts {
	f := threadFacts{Text: r.Text, Kind: r.Kind, Material: r.Material, Ends: []endFacts{}, Unread: r.Unread}
	if r.HasRated {
		f.Rated = known(r.Rated.Bar())
	}
	if f.Unread == nil {
		f.Unread = []string{}
	}
	f.Class, f.Schedule, f.Grade, f.Standards, f.Materials = r.Class, r.Schedule, r.Grade, r.Standards, r.Materials
	if r.HasTemperature {
		f.Celsius = new(r.Temperature.Celsius())
	}
	for _, p := range r.Pressures {
		f.Pressures = append(f.Pressures, pressureFacts{p.What, p.Pressure.Bar(), p.Words})
	}
	for _, limit := range r.Limits {
		f.Limits = append(f.Limits, limit.Words)
	}
	f.NotUsed = []notUsedFacts{}
	for _, n := range r.NotUsed {
		f.NotUsed = append(f.NotUsed, notUsedFacts(n))
	}
	for _, e := range r.Ends {
		end := endFacts{Sex: e.Sex.String(), Seal: e.Seal.String(), Swivel: e.Swivel, Candidates: []candidateFacts{}, Question: e.Question}
		for _, c := range e.Candidates {
			end.Candidates = append(end.Candidates, candidateOf(c))
		}
		f.Ends = append(f.Ends, end)
	}
	return f
}

// materialsSaid lists the materials that a line names, the one that rules first. A general word that
// another one makes exact, as stainless steel beside 316, is left out.
func materialsSaid(r threads.Reading) string {
	said := r.Material
	rules, known := catalog.MaterialNamed(r.Material)
	for _, name := range r.Materials {
		general := known && (name == "plastic" && rules.Group == "plastic" || (name == "stainless steel" || name == "carbon steel") && rules.Stainless())
		if name == r.Material || general {
			continue
		}
		if said != "" {
			said += ", "
		}
		said += name
	}
	return said
}

func candidateOf(e threads.End) candidateFacts {
	c := candidateFacts{Family: e.Family.String(), Size: e.Size, Designation: e.String(), Source: e.Family.Facts().Source}
	f := e.Form
	if f == nil {
		return c
	}
	c.Designation, c.Source, c.Left = f.Designation, f.Source, e.Left
	if e.Nose > 0 {
		c.Nose = known(e.Nose.Millimetres())
	}
	c.Pitch, c.TPI = known(f.Pitch.Millimetres()), known(f.TPI)
	c.Major, c.PitchDia, c.Minor = known(f.Major.Millimetres()), known(f.PitchDia.Millimetres()), known(f.Minor.Millimetres())
	c.Flank = known(float64(f.Flank))
	if f.Taper > 0 {
		taper := "1:16"
		c.Taper, c.HandTight, c.HandTurns = &taper, known(f.HandTight.Millimetres()), known(float64(f.HandTightTurns()))
	}
	return c
}

func (a *app) printReading(r threads.Reading) {
	u := a.ui
	u.line("%s", u.paint(bold, r.Text))
	said := ""
	for _, p := range []struct{ label, text string }{
		{"kind", r.Kind}, {"material", materialsSaid(r)}, {"grade", r.Grade}, {"class", strings.TrimPrefix(r.Class, "class ")},
		{"wall", r.Schedule}, {"standard", strings.Join(r.Standards, ", ")},
	} {
		if p.text != "" {
			said += fmt.Sprintf("  %s: %s", p.label, p.text)
		}
	}
	if r.HasRated {
		said += "  rated: " + r.Rated.String()
	}
	if r.HasTemperature {
		said += fmt.Sprintf("  up to: %s C", quantity.Significant(r.Temperature.Celsius(), 4))
	}
	if said != "" {
		u.line("%s", said)
	}
	if len(r.Ends) == 0 {
		u.line("  no end found in these words")
	}
	for i, e := range r.Ends {
		a.printEnd(i, e)
	}
	if len(r.Unread) > 0 {
		u.fold("  unread", strings.Join(r.Unread, ", "))
	}
	var limits []string
	for _, limit := range r.Limits {
		limits = append(limits, limit.Words)
	}
	if len(limits) > 0 {
		u.fold("  limits", strings.Join(limits, ", ")+" (ask whether it suits its place)")
	}
	printNotUsed(u, r)
	u.line("")
}

// printNotUsed names what was understood and changes nothing.
func printNotUsed(u *ui, r threads.Reading) {
	var said []string
	for _, p := range r.Pressures {
		said = append(said, fmt.Sprintf("%s (%s: no rating)", p.Words, p.What))
	}
	for _, n := range r.NotUsed {
		said = append(said, fmt.Sprintf("%s (%s)", n.Words, n.Why))
	}
	if len(said) > 0 {
		u.fold("  unused", strings.Join(said, ", "))
	}
}

func (a *app) printEnd(i int, e threads.EndReading) {
	u := a.ui
	label := fmt.Sprintf("  end %d", i+1)
	switch len(e.Candidates) {
	case 0:
		u.fold(label, fmt.Sprintf("seen in %q and not read", e.Words))
	case 1:
		u.fold(label, inFull(e.Candidates[0]))
	default:
		var names []string
		for _, c := range e.Candidates {
			names = append(names, c.String())
		}
		u.fold(label, "open, likeliest first: "+strings.Join(names, "; "))
	}
	if e.Question != "" {
		u.fold("  ask", e.Question)
	}
}

// inFull is one unambiguous end with its dimensions.
func inFull(c threads.End) string {
	f := c.Form
	if f == nil {
		return c.String() + ": " + c.Family.Facts().Title
	}
	text := fmt.Sprintf("%s: %s, pitch %.3f mm (%s an inch), major %.3f mm, %.0f degree flanks", c, c.Family.Facts().Title,
		f.Pitch.Millimetres(), quantity.Decimals(f.TPI, 2), f.Major.Millimetres(), f.Flank)
	if f.Taper > 0 {
		turns, depth := float64(f.HandTightTurns()), f.HandTight.Millimetres()
		if c.Short {
			turns, depth = turns-1, depth-f.Pitch.Millimetres()
		}
		text += fmt.Sprintf(", taper 1:16, hand tight at %.1f turns (%.1f mm)", turns, depth)
	}
	return text
}
