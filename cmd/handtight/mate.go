package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"handtight/bom/facts"
	"handtight/threads"
	"handtight/threads/makeup"
	"handtight/threads/title"
)

type mateFacts struct {
	A        string       `json:"a"`
	B        string       `json:"b"`
	Verdict  string       `json:"verdict"`
	Reason   string       `json:"reason"`
	Remedy   string       `json:"remedy"`
	Hand     *facts.Turns `json:"hand_turns"`
	Binding  *facts.Turns `json:"binding_turns"`
	First    string       `json:"first_contact"`
	Depth    number       `json:"depth_share"`
	Virtual  number       `json:"virtual_diameter_mm"`
	Limit    number       `json:"limit_bar"`
	Closes   string       `json:"closes_by"`
	Makeup   string       `json:"makeup"`
	MayStay  string       `json:"may_stay"`
	Open     bool         `json:"open"`
	Contrary bool         `json:"contrary,omitempty"`
	Question string       `json:"question,omitempty"`
	Source   string       `json:"source,omitempty"`

	NotUsed []notUsedFacts `json:"not_used,omitempty"`
}

func (a *app) mateCommand() *cobra.Command {
	var turns string
	var inMind bool
	cmd := &cobra.Command{
		Use:   "mate END END",
		Short: "Will these two ends seal?",
		Long: `Joins two ends by their geometry and their seals: turns by hand, what meets first,
whether it seals, and what to buy instead. Exit status 0 when the joint seals, or
seals with a washer or sealant; else 1, and 1 where the words of an end contradict
each other, whatever each of the meanings would do.

With --turns it weighs the readings of the two ends by how far they were screwed
together by hand, and judges the likeliest pair and the worst that is not excluded.
With --in-mind the words are only what somebody has in mind, and every pipe thread of
their size is weighed too.`,
		Example: `  handtight mate '1/2 NPT male' 'Rc 1/2'
  handtight mate 'G 3/4 male' 'G 3/4 female swivel'
  handtight mate '19 mm barb' '19 mm bore' --json
  handtight mate '1/4 NPT male' '1/4 NPT female' --turns 1.5 --in-mind`,
		Args: exactly(2, "two ends"),
		RunE: func(_ *cobra.Command, args []string) error {
			x, y, err := twoEnds(args)
			if err != nil {
				return err
			}
			if turns != "" {
				return a.mateByTurns(x, y, turns, inMind)
			}
			if inMind {
				return errors.New("--in-mind goes with --turns: how far did the two screw together by hand?")
			}
			m, open := threads.Worst(x, y)
			facts := mateFactsOf(&m, open, x, y)
			if !m.Verdict.Holds() || facts.Contrary {
				a.status = exitStops
			}
			if a.json {
				return a.ui.printJSON(facts)
			}
			a.printMate(&m, facts)
			return nil
		},
	}
	cmd.Flags().StringVar(&turns, "turns", "", "turns by hand before it stopped: 5, 2.5, 'about 3'")
	cmd.Flags().BoolVar(&inMind, "in-mind", false, "the words are a guess: weigh every pipe thread of their size")
	return cmd
}

// twoEnds reads the ends of a joint given on the command line.
func twoEnds(args []string) (x, y threads.EndReading, err error) {
	if x, err = oneEnd(strings.TrimSpace(args[0])); err != nil {
		return x, y, err
	}
	y, err = oneEnd(strings.TrimSpace(args[1]))
	return x, y, err
}

// oneEnd reads an end given on the command line; its Words are the whole text, with what is said of the part.
func oneEnd(text string) (threads.EndReading, error) {
	end, err := title.ReadEnd(text)
	var re *title.ReadError
	if errors.As(err, &re) {
		return end, fmt.Errorf("%q: %s\n  %s", text, re.Reason, re.Remedy)
	}
	switch {
	case err == nil && len(end.Candidates) == 0:
		return end, fmt.Errorf("%q: an end was seen and not read\n  %s", text, end.Question)
	case err == nil && end.Torn:
		return end, fmt.Errorf("%q: its words contradict each other\n  %s", text, end.Question)
	}
	end.Words = text
	return end, err
}

func mateFactsOf(m *threads.Mating, open bool, x, y threads.EndReading) mateFacts {
	f := mateFacts{
		A: m.A.String(), B: m.B.String(), Verdict: m.Verdict.String(), Reason: m.Reason(), Remedy: m.Remedy(),
		Hand: facts.TurnsOf(m.Hand), Binding: facts.TurnsOf(m.Binding), First: m.First.String(),
		Closes: m.Closes(), MayStay: m.MayStay(), Open: open, Contrary: x.Contrary || y.Contrary, Source: m.Source(),
	}
	for _, end := range []threads.EndReading{x, y} {
		for _, n := range end.NotUsed {
			if title.Read(n.Words).Material == "" { // a material is the make-up's
				f.NotUsed = append(f.NotUsed, notUsedFacts(n))
			}
		}
	}
	if m.A.Family.Threaded() && m.B.Family.Threaded() && m.Verdict != threads.SameSex {
		f.Depth, f.Virtual = known(m.Depth), known(m.Virtual.Millimetres())
	}
	if m.HasLimit {
		f.Limit = known(m.Limit.Bar())
	}
	if m.Verdict <= threads.LowPressureOnly {
		mk := makeup.Of(m)
		if mk.Washer != "" {
			mk.Torque.Known = false // printed for steel studs; the material is not said here
		}
		if a, b := title.Read(x.Words).Material, title.Read(y.Words).Material; a != "" || b != "" {
			mk = mk.ForMetals(a, b)
		}
		f.Makeup = mk.String()
	}
	if f.Question = x.Question; f.Question == "" {
		f.Question = y.Question
	}
	if f.Question == "" {
		f.Question = m.Question()
	}
	return f
}

func (a *app) printMate(m *threads.Mating, f mateFacts) {
	u := a.ui
	code := green
	switch {
	case m.Verdict == threads.LowPressureOnly:
		code = yellow
	case !m.Verdict.Holds():
		code = red
	}
	word := verdictWords[m.Verdict]
	if f.Contrary && m.Verdict.Holds() {
		code, word = yellow, "ASK FIRST: the words of an end contradict each other"
	}
	u.line("%s", u.paint(code, word))
	if f.Open {
		u.line("  judged by the worst of the readings that the words leave open")
	}
	u.fold("  ends", f.A+"  with  "+f.B)
	u.fold("  why", f.Reason)
	if m.Hand.Known && m.Hand.Tightest < tooManyTurns {
		u.fold("  hand", fmt.Sprintf("%.1f to %.1f turns, by the tolerance of the parts; first to meet: %s", m.Hand.Tightest, m.Hand.Loosest, m.First))
	}
	if m.HasLimit {
		u.fold("  limit", m.Limit.String())
	}
	if f.Makeup != "" {
		u.fold("  make", f.Makeup)
	}
	if !m.Verdict.Holds() {
		u.fold("  buy", f.Remedy)
	}
	if !f.Contrary {
		u.fold("  leave", f.MayStay)
	}
	if f.Question != "" {
		u.fold("  ask", f.Question)
	}
	if len(f.NotUsed) > 0 {
		var said []string
		for _, n := range f.NotUsed {
			said = append(said, fmt.Sprintf("%s (%s)", n.Words, n.Why))
		}
		u.fold("  unused", strings.Join(said, ", "))
	}
}

// tooManyTurns is more than any port is deep: such ends slide into each other.
const tooManyTurns = 30

// verdictWords are the verdicts as people say them.
var verdictWords = map[threads.Verdict]string{
	threads.Seals: "SEALS", threads.SealsWith: "SEALS, with what closes it", threads.LowPressureOnly: "LOW PRESSURE ONLY",
	threads.Leaks: "LEAKS", threads.Binds: "BINDS", threads.Loose: "LOOSE", threads.WillNotStart: "WILL NOT START", threads.SameSex: "SAME SEX",
}
